#include "sheets/sheet_set.h"

#include <string.h>

#include "drawing/finish.h"
#include "sheets/install.h"
#include "sheets/legend.h"
#include "sheets/notes.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/slab.h"
#include "sheets/table.h"
#include "sheets/title_block.h"

/* Names of the contract; NULL: not built yet. */
static const struct sheet_kind {
	const char *name;
	const char *title;   /* key of its title */
	const char *subject; /* key of the sentence that describes it */
	bool is_per_room;
	bool explains_all;                      /* its legend has the marks of the whole set */
	enum sheet_fit (*draw)(struct sheet *); /* NULL: not built yet, or of a room */
} KINDS[] = {
	{"read-first", "sheet.read-first", "sheet.read-first.about", false, true, read_first_draw},
	{"install", "sheet.install", "sheet.install.about", true, false, NULL},
	{"slab", "sheet.slab", "sheet.slab.about", false, false, slab_draw},
	{"membrane", "sheet.membrane", "sheet.membrane.about", false, false, membrane_draw},
	{"setting-out", "sheet.setting-out", "sheet.setting-out.about", false, false,
         setting_out_draw},
	{"joints", "sheet.joints", "sheet.joints.about", false, false, joints_sheet_draw},
	{"details", "sheet.details", "sheet.details.about", false, false, details_sheet_draw},
	{"count", "sheet.count", "sheet.count.about", false, false, count_sheet_draw},
	{"changes", NULL, NULL, false, false, NULL},
};

enum { KIND_COUNT = sizeof KINDS / sizeof KINDS[0] };

static bool is_built(const struct sheet_kind *kind)
{
	return kind->title != NULL;
}

static const char *room_sheet(struct arena *arena, const struct sheet_kind *kind,
                              const struct site_room *room)
{
	return arena_printf(arena, "%s-%s", kind->name, room->id);
}

static const struct sheet_kind *find_kind(struct arena *arena, const struct site *site,
                                          const char *name)
{
	for (size_t i = 0; i < KIND_COUNT; i++) {
		if (strcmp(KINDS[i].name, name) == 0)
			return &KINDS[i];
		for (size_t k = 0; KINDS[i].is_per_room && k < site->room_count; k++)
			if (strcmp(room_sheet(arena, &KINDS[i], &site->rooms[k]), name) == 0)
				return &KINDS[i];
	}
	return NULL;
}

static const char *built_names(struct arena *arena)
{
	struct strbuf list = strbuf_in(arena);
	for (size_t i = 0; i < KIND_COUNT; i++)
		if (is_built(&KINDS[i]))
			strbuf_printf(&list, "%s%s%s", list.length ? ", " : "", KINDS[i].name,
			              KINDS[i].is_per_room ? ", install-ROOM" : "");
	return list.text;
}

enum status sheet_set_check(const struct site *site, const char *name, struct diag_list *diags)
{
	const struct sheet_kind *kind = find_kind(diags->arena, site, name);
	if (kind && is_built(kind))
		return STATUS_OK;
	if (kind)
		diag_error(diags, 0, "sheet %s: not built yet, expected %s", name,
		           built_names(diags->arena));
	else
		diag_error(diags, 0, "sheet %s: no such sheet, expected %s", name,
		           built_names(diags->arena));
	return STATUS_INPUT;
}

/* A sheet to be drawn. */
struct planned {
	const struct sheet_kind *kind;
	const struct site_room *room; /* NULL: of the whole floor */
	const char *name;
};

struct set_builder {
	const struct draft *draft;
	const char *const *wanted;
	size_t wanted_count;
	void (*on_sheet)(const char *name);
	struct diag_list *diags;
	ARRAY_OF(struct planned) plans;
	ARRAY_OF(const char *) contents; /* name and title of each */
	ARRAY_OF(struct sheet *) sheets; /* drawn so far, with those that go on */
	size_t count;                    /* of all sheets, once known */
	unsigned long used;              /* marks of all sheets, once known */
};

static bool is_wanted(const struct set_builder *b, const char *kind, const char *name)
{
	for (size_t i = 0; i < b->wanted_count; i++)
		if (strcmp(b->wanted[i], kind) == 0 || strcmp(b->wanted[i], name) == 0)
			return true;
	return b->wanted_count == 0;
}

static void plan_sheet(struct set_builder *b, const struct sheet_kind *kind,
                       const struct site_room *room)
{
	const char *name = room ? room_sheet(b->draft->arena, kind, room) : kind->name;
	if (is_wanted(b, kind->name, name))
		*array_push(b->draft->arena, &b->plans) = (struct planned){kind, room, name};
}

static void plan_sheets(struct set_builder *b)
{
	const struct site *site = b->draft->site;
	for (size_t i = 0; i < KIND_COUNT; i++) {
		if (!is_built(&KINDS[i]))
			continue;
		if (!KINDS[i].is_per_room)
			plan_sheet(b, &KINDS[i], NULL);
		for (size_t k = 0; KINDS[i].is_per_room && k < site->room_count; k++)
			plan_sheet(b, &KINDS[i], &site->rooms[k]);
	}
}

/* How a sheet is tried: first as the style has it; with the small texts where labels found
 * no room; and where that is not enough, with a note of what could not be shown. */
enum attempt { ATTEMPT_PLAIN, ATTEMPT_SMALL, ATTEMPT_NOTED, ATTEMPT_COUNT };

struct outcome {
	struct sheet *sheet;
	enum sheet_fit fit;
	struct label_report report;
};

/* The same draft with labels and dimensions in the height of tables. */
static const struct draft *small_draft(const struct draft *draft)
{
	static const enum text_role SHRUNK[] = {TEXT_DIMENSION, TEXT_TAG, TEXT_WARNING, TEXT_ROOM};
	struct style *style = ARENA_NEW(draft->arena, struct style);
	struct draft *small = ARENA_NEW(draft->arena, struct draft);
	*style = *draft->style;
	for (size_t i = 0; i < sizeof SHRUNK / sizeof *SHRUNK; i++)
		style->texts[SHRUNK[i]].cap = draft->style->texts[TEXT_TABLE].cap;
	*small = *draft;
	small->style = style;
	return small;
}

/* The same draft with the narrow column of text. */
static const struct draft *narrow_draft(const struct draft *draft)
{
	struct paper_size *paper = ARENA_NEW(draft->arena, struct paper_size);
	struct draft *narrow = ARENA_NEW(draft->arena, struct draft);
	*paper = *draft->paper;
	paper->column = paper->narrow;
	*narrow = *draft;
	narrow->paper = paper;
	return narrow;
}

static const char *list_missing(struct arena *arena, const struct label_report *report)
{
	struct strbuf list = strbuf_in(arena);
	for (size_t i = 0; i < report->unplaced; i++)
		for (size_t k = 0; k < report->missing[i]->line_count; k++)
			strbuf_printf(&list, "%s%s", list.length ? k ? " " : "; " : "",
			              report->missing[i]->lines[k]);
	return list.text;
}

static struct sheet *begin_sheet(const struct set_builder *b, const struct draft *draft,
                                 const char *name, const char *title, const char *subject)
{
	struct sheet *sheet = sheet_new(draft, name, title, subject);
	sheet->number = b->sheets.count + 1;
	sheet->count = b->count;
	sheet_draw_frame(sheet);
	title_block_reserve(sheet);
	return sheet;
}

static const char *title_of(const struct draft *draft, const struct planned *planned)
{
	return draft_text(draft, planned->kind->title,
	                  {"room", planned->room ? planned->room->name : ""});
}

static struct outcome try_sheet(const struct set_builder *b, const struct planned *planned,
                                const struct draft *draft, const char *missing)
{
	const char *of = planned->room ? planned->room->name : "";
	struct sheet *sheet = begin_sheet(b, draft, planned->name, title_of(draft, planned),
	                                  draft_text(draft, planned->kind->subject, {"room", of}));
	struct outcome outcome = {.sheet = sheet};
	sheet->missing = missing;
	sheet->used = planned->kind->explains_all ? b->used : 0;
	sheet->contents = b->contents.items;
	sheet->contents_count = b->contents.count;
	outcome.fit =
		planned->room ? install_draw(sheet, planned->room) : planned->kind->draw(sheet);
	if (outcome.fit != SHEET_FITS)
		return outcome;
	title_block_draw(sheet);
	title_band_draw(sheet);
	if (legend_fits(sheet, title_band_middle(sheet)))
		legend_draw(sheet, title_band_middle(sheet));
	outcome.report = list_finish(sheet->list, sheet->drawing);
	return outcome;
}

static struct sheet *draw_first(struct set_builder *b, const struct planned *planned)
{
	struct outcome outcome = {0};
	const char *missing = NULL;
	const struct draft *draft = b->draft;
	for (int attempt = ATTEMPT_PLAIN; attempt < ATTEMPT_COUNT; attempt++) {
		outcome = try_sheet(b, planned, draft, missing);
		if (outcome.sheet->is_cramped) {
			draft = narrow_draft(draft);
			outcome = try_sheet(b, planned, draft, missing);
		}
		if (outcome.fit != SHEET_FITS || outcome.report.unplaced == 0)
			break;
		if (attempt == ATTEMPT_PLAIN)
			draft = small_draft(draft);
		else
			missing = list_missing(draft->arena, &outcome.report);
	}
	if (outcome.fit == SHEET_TOO_LARGE)
		diag_error(b->diags, 0,
		           "sheet %s: does not fit %s paper%s, "
		           "expected larger paper or a smaller scale",
		           planned->name, draft->paper->name,
		           draft->scale > 0 ? " at the scale asked for" : "");
	return outcome.sheet;
}

/* What the sheet before had no room for: its notes first, then its details, then its table. */
static bool draw_rest(struct sheet *sheet, const struct sheet *before)
{
	if (before->rest) {
		sheet->more = before->more;
		sheet->details = before->details;
		return notes_continue(sheet, before->rest);
	}
	if (before->details)
		return details_sheet_continue(sheet, before->details);
	size_t first = before->more->next;
	table_draw(sheet, before->more, sheet->drawing);
	return before->more->next > first;
}

/* NAME-2 and on: what the sheet before had no room for. */
static struct sheet *draw_next(struct set_builder *b, const struct sheet *first,
                               const struct sheet *before, int part)
{
	const struct draft *draft = b->draft;
	const char *name = arena_printf(draft->arena, "%s-%d", first->name, part);
	const char *number = arena_printf(draft->arena, "%d", part);
	const char *title =
		draft_text(draft, "sheet.continued", {"title", first->title}, {"number", number});
	struct sheet *sheet = begin_sheet(b, draft, name, title, first->subject);
	if (!draw_rest(sheet, before)) {
		diag_error(b->diags, 0,
		           "sheet %s: the notes do not fit %s paper, expected a larger one", name,
		           draft->paper->name);
		sheet->rest = NULL;
		sheet->details = NULL;
		sheet->more = NULL;
	}
	title_block_draw(sheet);
	title_band_draw(sheet);
	list_finish(sheet->list, sheet->drawing);
	return sheet;
}

static void list_contents(struct set_builder *b)
{
	const struct draft *draft = b->draft;
	for (size_t i = 0; i < b->plans.count; i++)
		*array_push(draft->arena, &b->contents) =
			draft_text(draft, "contents.row", {"name", b->plans.items[i].name},
		                   {"title", title_of(draft, &b->plans.items[i])});
}

static void draw_planned(struct set_builder *b, const struct planned *planned)
{
	if (b->on_sheet)
		b->on_sheet(planned->name);
	struct sheet *first = draw_first(b, planned), *sheet = first;
	*array_push(b->draft->arena, &b->sheets) = first;
	for (int part = 2; sheet->rest || sheet->details || sheet->more; part++) {
		sheet = draw_next(b, first, sheet, part);
		*array_push(b->draft->arena, &b->sheets) = sheet;
	}
}

static unsigned long all_used(const struct set_builder *b)
{
	unsigned long used = 0;
	for (size_t i = 0; i < b->sheets.count; i++)
		used |= b->sheets.items[i]->used;
	return used;
}

/* True where a sheet tells of the set what was not known yet when it was drawn. */
static bool is_outdated(const struct set_builder *b)
{
	bool has_legend = b->plans.count > 0 && b->plans.items[0].kind->explains_all;
	return b->sheets.count != b->count || (has_legend && all_used(b) != b->used);
}

/* Every sheet prints how many there are, the first what the marks of all mean: where that
 * was not foreseen, all are drawn once more. */
static void draw_all(struct set_builder *b)
{
	size_t before = b->diags->diags.count;
	b->count = b->plans.count;
	do {
		if (b->sheets.count > 0)
			b->count = b->sheets.count;
		b->used = all_used(b);
		b->sheets.count = 0;
		for (size_t i = 0; i < b->plans.count; i++)
			draw_planned(b, &b->plans.items[i]);
	} while (is_outdated(b) && b->diags->diags.count == before);
}

static struct page page_of(const struct sheet *sheet)
{
	return (struct page){.name = sheet->name,
	                     .title = sheet->title,
	                     .about = sheet->subject,
	                     .language = words_language(sheet->draft->words),
	                     .list = sheet->list};
}

static struct document document_of(const struct draft *draft)
{
	const char *title = draft->site->plan->title;
	return (struct document){.title = title && *title ? title
	                                                  : draft_word(draft, "sheet.untitled"),
	                         .subject = draft_word(draft, "sheet.subject"),
	                         .creator = "jurystick"};
}

enum status sheet_set_draw(const struct draft *draft, const char *const *wanted,
                           size_t wanted_count, void (*on_sheet)(const char *name),
                           struct diag_list *diags, struct sheet_set *out_set)
{
	struct set_builder b = {.draft = draft,
	                        .wanted = wanted,
	                        .wanted_count = wanted_count,
	                        .on_sheet = on_sheet,
	                        .diags = diags};
	size_t before = diags->diags.count;
	plan_sheets(&b);
	list_contents(&b);
	draw_all(&b);
	size_t count = b.sheets.count;
	*out_set = (struct sheet_set){.document = document_of(draft),
	                              .page_count = count,
	                              .pages = ARENA_ARRAY(draft->arena, struct page, count)};
	for (size_t i = 0; i < count; i++)
		out_set->pages[i] = page_of(b.sheets.items[i]);
	const char *missing = text_missing(draft->text);
	if (missing)
		diag_error(diags, 0, "the font has no sign for: %s", missing);
	return diags->diags.count == before ? STATUS_OK : STATUS_INPUT;
}
