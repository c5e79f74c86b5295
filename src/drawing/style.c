#include "drawing/style.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/embedded.h"
#include "drawing/style_value.h"

/* R-D01, in um. */
static const int widths_um[] = {130, 180, 250, 350, 500, 700, 1000, 1400, 2000};
enum {
	WIDTH_COUNT = sizeof widths_um / sizeof *widths_um,
	/* R-D11: twice the 0.7 mm of ISO 128-2, for prints at half size. */
	HATCH_CLEAR_UM = 1400,
	HATCH_WIDTH_UM = 250, /* a finer hatch line is lost at half size */
	CAP_LEAST_UM = 1800,  /* the smallest height of ISO 3098-1 */
	CAP_MOST_UM = 20000,
	LIKES_MOST = 4,
};

struct named_colour {
	const char *name;
	struct colour colour;
};

struct reader {
	struct arena *arena;
	struct diag_list *diags;
	struct style *style;
	ARRAY_OF(struct named_colour) colours;
	size_t kept_colours; /* the first ones are a derived style's: its base leaves them be */
	bool has_pen[PEN_COUNT], has_area[AREA_COUNT], has_text[TEXT_ROLE_COUNT];
	bool in_file_pen[PEN_COUNT], in_file_area[AREA_COUNT], in_file_text[TEXT_ROLE_COUNT];
	int line;
	int likes_left; /* a base may have a base of its own */
	bool has_failed;
	bool reads_colours_only;
};

static void fail(struct reader *r, const char *text)
{
	diag_error(r->diags, r->line, "%s", text);
	r->has_failed = true;
}

/* ---- parts of a value ---- */

static int take_thousandths(struct reader *r, struct style_value *v, const char *what)
{
	const char *word = style_value_next(v);
	int thousandths = 0;
	if (!word || !style_thousandths(word, &thousandths))
		fail(r, arena_printf(r->arena, "%s: expected a number such as 0.35, not \"%s\"",
		                     what, word ? word : ""));
	return thousandths;
}

static double take_width(struct reader *r, struct style_value *v)
{
	int um = take_thousandths(r, v, "width");
	for (int i = 0; i < WIDTH_COUNT; i++)
		if (widths_um[i] == um)
			return um / 1000.0;
	if (!r->has_failed)
		fail(r, "width: expected one of 0.13 0.18 0.25 0.35 0.5 0.7 1 1.4 2 (ISO 128-2)");
	return 1;
}

static bool find_colour(const struct reader *r, const char *name, struct colour *out)
{
	for (size_t i = 0; i < r->colours.count; i++)
		if (strcmp(r->colours.items[i].name, name) == 0) {
			*out = r->colours.items[i].colour;
			return true;
		}
	return false;
}

static struct colour take_colour(struct reader *r, struct style_value *v)
{
	struct colour colour = {0, 0, 0};
	const char *word = style_value_next(v);
	if (!word || !find_colour(r, word, &colour))
		fail(r, arena_printf(r->arena, "expected a name from [colours], not \"%s\"",
		                     word ? word : ""));
	return colour;
}

static void end_value(struct reader *r, struct style_value *v)
{
	if (v->next < v->count)
		fail(r, arena_printf(r->arena, "\"%s\" is not expected here", v->words[v->next]));
}

/* ---- one line of each section ---- */

static struct pen_style read_pen(struct reader *r, struct style_value *v)
{
	struct pen_style pen = {.width = take_width(r, v)};
	pen.colour = take_colour(r, v);
	while (v->next < v->count) {
		if (style_value_take(v, "round")) {
			pen.is_round = true;
		} else if (style_value_take(v, "core")) {
			pen.core = take_thousandths(r, v, "core") / 1000.0;
		} else if (style_value_take(v, "dash")) {
			int ignored;
			while (v->next < v->count && pen.dash_count < STYLE_DASHES &&
			       style_thousandths(v->words[v->next], &ignored))
				pen.dash[pen.dash_count++] =
					take_thousandths(r, v, "dash") / 1000.0 * pen.width;
			if (pen.dash_count == 0 || pen.dash_count % 2)
				fail(r, "dash: expected pairs of stroke and gap, such as 12 3");
		} else {
			end_value(r, v);
			break;
		}
	}
	if (pen.core >= pen.width)
		fail(r, "core: must be narrower than the line");
	return pen;
}

static const char *const hatch_names[HATCH_KIND_COUNT] = {
	[HATCH_NONE] = "none",     [HATCH_LINES] = "lines", [HATCH_CROSS] = "cross",
	[HATCH_DASHES] = "dashes", [HATCH_DOTS] = "dots",   [HATCH_WAVES] = "waves",
	[HATCH_PAIRS] = "pairs",
};

static void check_hatch(struct reader *r, const struct area_style *a)
{
	double clear = a->pitch - a->width - (a->hatch == HATCH_PAIRS ? a->gap : 0);
	/* Half a um below the limit is rounding of the subtraction, not a closer hatch. */
	if (clear < (HATCH_CLEAR_UM - 0.5) / 1000)
		fail(r, "hatch: less than 1.4 mm clear between lines closes up at half size");
	if (a->width < (HATCH_WIDTH_UM - 0.5) / 1000)
		fail(r, "hatch: lines thinner than 0.25 mm are lost at half size");
	if (a->angle_deg % 15)
		fail(r, "hatch: the angle must be a multiple of 15");
	if (a->hatch == HATCH_DASHES && (a->dash <= 0 || a->gap <= 0))
		fail(r, "dashes: expected `dash LENGTH` and `gap LENGTH`");
	if (a->hatch == HATCH_PAIRS && a->gap <= 0)
		fail(r, "pairs: expected `gap LENGTH` between the two lines");
}

static void read_hatch(struct reader *r, struct style_value *v, struct area_style *a)
{
	if (v->next < v->count && v->words[v->next][0] >= '0' && v->words[v->next][0] <= '9')
		a->angle_deg = take_thousandths(r, v, "angle") / 1000;
	while (v->next < v->count && !r->has_failed) {
		if (style_value_take(v, "pitch"))
			a->pitch = take_thousandths(r, v, "pitch") / 1000.0;
		else if (style_value_take(v, "width"))
			a->width = take_thousandths(r, v, "width") / 1000.0;
		else if (style_value_take(v, "dash"))
			a->dash = take_thousandths(r, v, "dash") / 1000.0;
		else if (style_value_take(v, "gap"))
			a->gap = take_thousandths(r, v, "gap") / 1000.0;
		else
			break;
	}
	a->colour = take_colour(r, v);
	if (!r->has_failed)
		check_hatch(r, a);
}

static struct area_style read_area(struct reader *r, struct style_value *v)
{
	struct area_style a = {0};
	if (style_value_take(v, "fill")) {
		a.has_fill = true;
		a.fill = take_colour(r, v);
	}
	for (int kind = 0; kind < HATCH_KIND_COUNT; kind++)
		if (style_value_take(v, hatch_names[kind])) {
			a.hatch = (enum hatch_kind)kind;
			break;
		}
	if (a.hatch != HATCH_NONE)
		read_hatch(r, v, &a);
	end_value(r, v);
	return a;
}

static struct text_style read_text(struct reader *r, struct style_value *v)
{
	int um = take_thousandths(r, v, "height of capitals");
	if (!r->has_failed && (um < CAP_LEAST_UM || um > CAP_MOST_UM))
		fail(r, "height of capitals: expected 1.8 to 20 mm");
	struct text_style text = {.cap = um / 1000.0};
	if (style_value_take(v, "bold"))
		text.weight = TEXT_BOLD;
	else if (!style_value_take(v, "regular"))
		fail(r, "expected regular or bold after the height");
	text.colour = take_colour(r, v);
	end_value(r, v);
	return text;
}

static void read_colour(struct reader *r, const char *name, struct style_value *v)
{
	const char *word = style_value_next(v);
	char *end = NULL;
	unsigned long rgb =
		word && word[0] == '#' && strlen(word) == 7 ? strtoul(word + 1, &end, 16) : 0;
	if (!end || *end) {
		fail(r, arena_printf(r->arena, "%s: expected a colour such as #1f4e8c", name));
		return;
	}
	struct colour colour = {(uint8_t)(rgb >> 16), (uint8_t)(rgb >> 8 & 255),
	                        (uint8_t)(rgb & 255)};
	end_value(r, v);
	for (size_t i = 0; i < r->colours.count; i++)
		if (strcmp(r->colours.items[i].name, name) == 0) {
			if (i >= r->kept_colours)
				r->colours.items[i].colour = colour;
			return;
		}
	*array_push(r->arena, &r->colours) = (struct named_colour){name, colour};
}

/* ---- sections ---- */

enum section { SECTION_TOP, SECTION_COLOURS, SECTION_PENS, SECTION_AREAS, SECTION_TEXTS };

static const char *pen_at(int i)
{
	return pen_name((enum pen)i);
}
static const char *area_at(int i)
{
	return area_name((enum area)i);
}
static const char *text_at(int i)
{
	return text_role_name((enum text_role)i);
}

/* Index of `name`, or -1 with an error; a role given twice is an error too. */
static int find_role(struct reader *r, const char *(*name_at)(int), int count, bool *in_file,
                     const char *name)
{
	for (int i = 0; i < count; i++) {
		if (strcmp(name_at(i), name) != 0)
			continue;
		if (in_file[i])
			fail(r, arena_printf(r->arena, "\"%s\" is given twice", name));
		in_file[i] = true;
		return i;
	}
	fail(r, arena_printf(r->arena, "unknown name \"%s\" in this section", name));
	return -1;
}

static enum status parse(struct reader *r, struct bytes text);

static void read_like(struct reader *r, struct style_value *v)
{
	const char *name = style_value_next(v);
	const struct embedded *file =
		name ? embedded_find(arena_printf(r->arena, "styles/%s.style", name)) : NULL;
	if (!file || r->likes_left <= 0) {
		fail(r, arena_printf(r->arena, "like: there is no style \"%s\" to start from",
		                     name ? name : ""));
		return;
	}
	/* The base is read with this file's colours, so that one changed colour reaches all
	 * that the base draws with it. */
	struct reader base = {.arena = r->arena,
	                      .diags = r->diags,
	                      .style = r->style,
	                      .likes_left = r->likes_left - 1};
	base.colours.items = r->colours.items;
	base.colours.count = base.kept_colours = base.colours.room = r->colours.count;
	(void)parse(&base, (struct bytes){file->data, file->length});
	r->colours.items = base.colours.items;
	r->colours.count = base.colours.count;
	r->colours.room = base.colours.room;
	memcpy(r->has_pen, base.has_pen, sizeof r->has_pen);
	memcpy(r->has_area, base.has_area, sizeof r->has_area);
	memcpy(r->has_text, base.has_text, sizeof r->has_text);
}

static void read_pair(struct reader *r, enum section section, const char *name,
                      struct style_value *v)
{
	int role = -1;
	r->has_failed = false;
	if (r->reads_colours_only && section != SECTION_COLOURS)
		return;
	switch (section) {
	case SECTION_TOP:
		if (strcmp(name, "like") == 0)
			read_like(r, v);
		else
			fail(r, "expected a section such as [pens] first");
		break;
	case SECTION_COLOURS:
		read_colour(r, name, v);
		break;
	case SECTION_PENS:
		role = find_role(r, pen_at, PEN_COUNT, r->in_file_pen, name);
		if (role >= 0)
			r->style->pens[role] = read_pen(r, v), r->has_pen[role] = true;
		break;
	case SECTION_AREAS:
		role = find_role(r, area_at, AREA_COUNT, r->in_file_area, name);
		if (role >= 0)
			r->style->areas[role] = read_area(r, v), r->has_area[role] = true;
		break;
	case SECTION_TEXTS:
		role = find_role(r, text_at, TEXT_ROLE_COUNT, r->in_file_text, name);
		if (role >= 0)
			r->style->texts[role] = read_text(r, v), r->has_text[role] = true;
		break;
	}
}

static enum section read_section(struct reader *r, enum section before, const char *line)
{
	static const char *const names[] = {"", "[colours]", "[pens]", "[areas]", "[texts]"};
	for (int i = SECTION_COLOURS; i <= SECTION_TEXTS; i++)
		if (strcmp(line, names[i]) == 0)
			return (enum section)i;
	fail(r, arena_printf(r->arena,
	                     "unknown section %s; expected [colours], [pens], [areas] or [texts]",
	                     line));
	return before;
}

static void read_line(struct reader *r, enum section *section, char *line)
{
	line = style_trimmed(line);
	if (!*line)
		return;
	if (*line == '[') {
		*section = read_section(r, *section, line);
		return;
	}
	char *equals = strchr(line, '=');
	struct style_value v = {0};
	if (!equals || !style_value_split(&v, equals + 1)) {
		fail(r, "expected NAME = VALUE");
		return;
	}
	*equals = '\0';
	read_pair(r, *section, style_trimmed(line), &v);
}

static void check_complete(struct reader *r, const char *kind, const char *(*name_at)(int),
                           int count, const bool *has)
{
	for (int i = 0; i < count; i++)
		if (!has[i])
			fail(r, arena_printf(r->arena, "%s \"%s\" is missing", kind, name_at(i)));
}

static void read_lines(struct reader *r, struct bytes text)
{
	enum section section = SECTION_TOP;
	char *rest = arena_strndup(r->arena, text.data, text.length);
	r->line = 0;
	while (rest) {
		char *line = rest;
		rest = strchr(line, '\n');
		if (rest)
			*rest++ = '\0';
		r->line++;
		read_line(r, &section, line);
	}
	r->line = 0;
}

static enum status parse(struct reader *r, struct bytes text)
{
	size_t faults = r->diags->diags.count;
	r->reads_colours_only = true;
	read_lines(r, text);
	r->reads_colours_only = false;
	read_lines(r, text);
	check_complete(r, "pen", pen_at, PEN_COUNT, r->has_pen);
	check_complete(r, "area", area_at, AREA_COUNT, r->has_area);
	check_complete(r, "text", text_at, TEXT_ROLE_COUNT, r->has_text);
	if (!find_colour(r, "paper", &r->style->paper))
		fail(r, "colour \"paper\" is missing");
	return r->diags->diags.count == faults ? STATUS_OK : STATUS_INPUT;
}

enum status style_parse(struct arena *arena, struct bytes text, const char *name,
                        struct diag_list *diags, struct style *out_style)
{
	*out_style = (struct style){.name = arena_strdup(arena, name)};
	struct reader reader = {.arena = arena,
	                        .diags = diags,
	                        .style = out_style,
	                        .likes_left = LIKES_MOST};
	return parse(&reader, text);
}

/* The embedded styles' names with blanks between. */
static const char *style_names(struct arena *arena)
{
	struct strbuf names = strbuf_in(arena);
	const struct embedded *file;
	for (size_t i = 0; (file = embedded_at(i)); i++)
		if (strncmp(file->name, "styles/", 7) == 0)
			strbuf_printf(&names, " %.*s", (int)strcspn(file->name + 7, "."),
			              file->name + 7);
	return names.text;
}

enum status style_embedded(struct arena *arena, const char *name, int line, struct diag_list *diags,
                           struct style *out_style)
{
	const struct embedded *file = embedded_find(arena_printf(arena, "styles/%s.style", name));
	if (!file) {
		diag_error(diags, line, "there is no style \"%s\"; expected one of%s, or a file",
		           name, style_names(arena));
		return STATUS_INPUT;
	}
	return style_parse(arena, (struct bytes){file->data, file->length}, name, diags, out_style);
}
