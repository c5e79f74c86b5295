/* notes_setting.c - gathered notes, set in columns. */
#include <math.h>

#include "sheets/legend.h"
#include "sheets/notes.h"
#include "sheets/title_block.h"

/* Distances in mm of paper: own design. */
static const double INSET = 4, AFTER_ITEM = 1.2, AFTER_HEADING = 2, BEFORE_HEADING = 3.6;
static const double BOX_INSET = 2.5, MARK_GAP = 2.4, TOP = 2;
static const double ANSWER_ROW = 7.5;
/* Shares of the white round headings that are left where a column is short of room. */
static const double TIGHT[] = {1, 0.5, 0.35};
enum { TIGHT_COUNT = sizeof TIGHT / sizeof *TIGHT };

enum { COLUMNS_MOST = 8 };

/* A column being filled, or only measured. */
struct setting {
	struct sheet *sheet;
	const struct notes *notes;
	int tight;     /* how much white round headings: which of TIGHT */
	bool is_small; /* findings are set in the height of tables */
	bool is_dry;
	bool is_right; /* the next half stands beside the one before, on the row that ends at y */
	double x0, x1, y;
};

/* White round headings; items stand as close as lines already. */
static double white(const struct setting *s, double mm)
{
	return TIGHT[s->tight] * mm;
}

static double cap_of(const struct setting *s, enum text_role role)
{
	return s->sheet->draft->style->texts[role].cap;
}

static bool is_small(const struct setting *s, const struct note *note)
{
	return s->is_small && note->group == NOTE_FINDING;
}

static void set_text(struct setting *s, enum text_role role, double x, double y, const char *text)
{
	if (!s->is_dry)
		list_text(s->sheet->list, LAYER_NOTES, role, NULL, paper_at(x, y), ALIGN_START,
		          text);
}

/* Wraps between x and the right edge; gives the y under it. */
static double set_paragraph(struct setting *s, enum text_role role, double x, double width,
                            double y, const char *text)
{
	const struct draft *draft = s->sheet->draft;
	const struct text_style *style = &draft->style->texts[role];
	if (!s->is_dry)
		return list_paragraph(s->sheet->list, LAYER_NOTES, role, paper_at(x, y), width,
		                      text);
	struct text_lines wrapped =
		text_wrap(draft->text, draft->arena, style->weight, style->cap, width, text);
	if (wrapped.count == 0)
		return y;
	return y + style->cap + (double)(wrapped.count - 1) * text_pitch(style->cap) +
	       text_descent(draft->text, style->weight, style->cap);
}

static void set_heading(struct setting *s, const struct note *note)
{
	double top = s->y + white(s, BEFORE_HEADING), cap = cap_of(s, TEXT_STRONG);
	double under = set_paragraph(s, TEXT_STRONG, s->x0, s->x1 - s->x0, top, note->text);
	/* The rule keeps the same distance from the last line whatever hangs under it. */
	double y = under - text_descent(s->sheet->draft->text,
	                                s->sheet->draft->style->texts[TEXT_STRONG].weight, cap);
	y += white(s, AFTER_HEADING);
	if (!s->is_dry)
		list_stroke(s->sheet->list, LAYER_NOTES, PEN_RULE, NULL,
		            paper_path_segment(s->sheet->draft->arena, paper_at(s->x0, y),
		                               paper_at(s->x1, y)));
	s->y = y + white(s, AFTER_HEADING);
}

/* Texts under one heading line up behind the widest mark. */
static double indent_of(const struct setting *s, const struct note *note, enum text_role role)
{
	const struct note *first = note, *end = s->notes->list.items + s->notes->list.count;
	double widest = 0;
	while (first > s->notes->list.items && first[-1].kind != NOTE_HEADING)
		first--;
	for (; first < end && first->kind != NOTE_HEADING; first++)
		if (first->kind == NOTE_ITEM || first->kind == NOTE_HALF)
			widest = fmax(widest, list_text_width(s->sheet->list, role, first->mark));
	return widest > 0 ? widest + MARK_GAP : 0;
}

static void set_item(struct setting *s, const struct note *note)
{
	bool small = is_small(s, note);
	enum text_role mark = small ? TEXT_TABLE_HEAD : TEXT_STRONG;
	enum text_role body = small ? TEXT_TABLE : TEXT_BODY;
	double indent = indent_of(s, note, mark);
	double top = s->y;
	set_text(s, mark, s->x0, top + cap_of(s, body), note->mark);
	double under =
		set_paragraph(s, body, s->x0 + indent, s->x1 - s->x0 - indent, top, note->text);
	if (note->link && !s->is_dry)
		list_link(s->sheet->list, (struct paper_box){s->x0, top, s->x1, under}, note->link);
	s->y = under + AFTER_ITEM;
}

/* Where one of a run of halves is too long for half a row, each has a row of its own. */
static bool has_long_half(const struct setting *s, const struct note *note, enum text_role body,
                          double most)
{
	const struct note *first = note, *end = s->notes->list.items + s->notes->list.count;
	while (first > s->notes->list.items && first[-1].kind == NOTE_HALF)
		first--;
	for (; first < end && first->kind == NOTE_HALF; first++)
		if (list_text_width(s->sheet->list, body, first->text) > most)
			return true;
	return false;
}

static void set_half(struct setting *s, const struct note *note)
{
	bool small = is_small(s, note);
	enum text_role mark = small ? TEXT_TABLE_HEAD : TEXT_STRONG;
	enum text_role body = small ? TEXT_TABLE : TEXT_BODY;
	double indent = indent_of(s, note, mark), half = (s->x1 - s->x0) / 2;
	bool is_long = has_long_half(s, note, body, half - indent - MARK_GAP);
	s->is_right = s->is_right && !is_long;
	double x = s->x0 + (s->is_right ? half : 0);
	const struct draft *draft = s->sheet->draft;
	double row = cap_of(s, body) + AFTER_ITEM +
	             text_descent(draft->text, draft->style->texts[body].weight, cap_of(s, body));
	double base = s->y - (s->is_right ? row : 0) + cap_of(s, body);
	set_text(s, mark, x, base, note->mark);
	set_text(s, body, x + indent, base, note->text);
	s->y += s->is_right ? 0 : row;
	s->is_right = !s->is_right && !is_long;
}

static void set_warning(struct setting *s, const struct note *note)
{
	double top = s->y + white(s, BEFORE_HEADING);
	double y = set_paragraph(s, TEXT_STRONG, s->x0 + BOX_INSET, s->x1 - s->x0 - 2 * BOX_INSET,
	                         top + BOX_INSET, note->text) +
	           BOX_INSET - 0.5;
	if (!s->is_dry)
		list_stroke(s->sheet->list, LAYER_NOTES, PEN_WARNING, NULL,
		            paper_path_box(s->sheet->draft->arena,
		                           (struct paper_box){s->x0, top, s->x1, y}));
	s->y = y + AFTER_ITEM;
}

/* A word, and a line to write on from it to `to`. */
static void set_blank(struct setting *s, double from, double to, double y, const char *key)
{
	const char *word = draft_word(s->sheet->draft, key);
	double start = from + list_text_width(s->sheet->list, TEXT_TABLE, word) + MARK_GAP / 2;
	set_text(s, TEXT_TABLE, from, y, word);
	if (!s->is_dry)
		list_stroke(s->sheet->list, LAYER_NOTES, PEN_RULE, NULL,
		            paper_path_segment(s->sheet->draft->arena, paper_at(start, y + 0.8),
		                               paper_at(to, y + 0.8)));
}

static void set_answer(struct setting *s, const struct note *note)
{
	double wide = s->x1 - s->x0, first = s->y + ANSWER_ROW, second = first + ANSWER_ROW;
	(void)note;
	set_blank(s, s->x0, s->x1, first, "answer.decision");
	set_blank(s, s->x0, s->x0 + wide * 0.6, second, "answer.by");
	set_blank(s, s->x0 + wide * 0.63, s->x1, second, "answer.date");
	s->y = second + 2 * AFTER_HEADING;
}

static void set_swatch(struct setting *s, const struct note *note)
{
	if (!s->is_dry)
		legend_draw_entry(s->sheet, TEXT_BODY, note->swatch, s->x0, s->y);
	s->y += legend_row_height();
}

static void set_note(struct setting *s, const struct note *note)
{
	static void (*const SET[])(struct setting *, const struct note *) = {
		[NOTE_HEADING] = set_heading, [NOTE_ITEM] = set_item,
		[NOTE_HALF] = set_half,       [NOTE_WARNING] = set_warning,
		[NOTE_SWATCH] = set_swatch,   [NOTE_ANSWER] = set_answer};
	s->is_right = s->is_right && note->kind == NOTE_HALF;
	SET[note->kind](s, note);
}

/* How many notes from `first` fit between s->y and `bottom`; a heading not without the note
 * that it heads. */
static size_t count_fitting(struct setting s, size_t first, double bottom)
{
	const struct notes *notes = s.notes;
	const struct note *items = notes->list.items;
	size_t i = first;
	s.is_dry = true;
	for (; i < notes->list.count; i++) {
		set_note(&s, &notes->list.items[i]);
		if (s.y > bottom)
			break;
	}
	if (i == notes->list.count)
		return i - first;
	/* The last of a list does not stand alone over the next heading. */
	bool is_last = i + 1 == notes->list.count || items[i + 1].kind == NOTE_HEADING;
	if (is_last && i > first + 1 && items[i].kind == NOTE_ITEM &&
	    items[i - 1].kind == NOTE_ITEM)
		i--;
	/* Lines to answer on stay with their question. */
	if (items[i].kind == NOTE_ANSWER && i > first + 1)
		i--;
	if (i > first && items[i - 1].kind == NOTE_HEADING)
		i--;
	return i - first;
}

/* Fills one column from the first note that is not set yet. */
static void fill_column(struct setting *s, struct notes *notes, double bottom)
{
	size_t count = count_fitting(*s, notes->next, bottom);
	for (size_t i = 0; i < count; i++)
		set_note(s, &notes->list.items[notes->next++]);
}

/* On another sheet the heading of what goes on is said once more. */
static void set_heading_again(struct setting *s)
{
	const struct notes *notes = s->notes;
	const struct note *of = &notes->list.items[notes->next];
	if (of->kind == NOTE_HEADING)
		return;
	while (of > notes->list.items && of->kind != NOTE_HEADING)
		of--;
	if (of->kind != NOTE_HEADING)
		return;
	struct note again = *of;
	again.text = draft_text(s->sheet->draft, "heading.continued", {"heading", of->text});
	set_note(s, &again);
}

/* The first column of a sheet on which notes go on. */
static void begin_column(struct setting *s, struct notes *notes, double bottom)
{
	struct setting tried = *s;
	tried.is_dry = true;
	set_heading_again(&tried);
	if (notes->next == 0 || count_fitting(tried, notes->next, bottom) == 0)
		return;
	set_heading_again(s);
}

/* The column, then the columns under the drawing, where there are any. */
struct places_of_text {
	struct paper_box items[COLUMNS_MOST];
	int count;
};

static void add_columns(struct places_of_text *places, struct paper_box box, double width)
{
	int count = (int)fmax(1, round((box.x1 - box.x0) / width));
	for (int i = 0; i < count && places->count < COLUMNS_MOST; i++) {
		double wide = (box.x1 - box.x0) / count, left = box.x0 + wide * i;
		places->items[places->count++] =
			(struct paper_box){left + INSET, box.y0, left + wide - INSET, box.y1};
	}
}

static struct places_of_text places_of(const struct notes *notes)
{
	const struct sheet *sheet = notes->sheet;
	struct places_of_text places = {0};
	struct paper_box column = sheet->column;
	/* A heading keeps its own distance. */
	if (notes->list.count > 0 && notes->list.items[0].kind == NOTE_ITEM)
		column.y0 += BEFORE_HEADING;
	add_columns(&places, column, column.x1 - column.x0);
	if (sheet->foot.y1 > sheet->foot.y0)
		add_columns(&places, sheet->foot, column.x1 - column.x0);
	return places;
}

static void go_to(struct setting *s, struct paper_box place)
{
	s->x0 = place.x0;
	s->x1 = place.x1;
	s->y = place.y0;
	s->is_right = false;
}

/* Torn: a column begins within a list. */
static bool all_fit(struct setting s, const struct places_of_text *places, bool *out_is_torn)
{
	size_t next = 0, count = s.notes->list.count;
	*out_is_torn = false;
	for (int i = 0; i < places->count; i++) {
		if (next > 0 && next < count && s.notes->list.items[next].kind != NOTE_HEADING)
			*out_is_torn = true;
		go_to(&s, places->items[i]);
		next += count_fitting(s, next, places->items[i].y1);
	}
	return next == count;
}

/* The first of these in which all fit: as they are, tight, findings small, both. With a
 * further sheet there is room for the full height on both. False: not in full height. */
static bool find_setting(struct setting *s, const struct places_of_text *places)
{
	bool is_torn;
	for (int way = 0; way < 2 * TIGHT_COUNT; way++) {
		s->tight = way % TIGHT_COUNT;
		s->is_small = way >= TIGHT_COUNT;
		if (all_fit(*s, places, &is_torn))
			return !s->is_small;
	}
	s->tight = 0;
	s->is_small = false;
	return false;
}

void notes_draw(struct notes *notes)
{
	struct sheet *sheet = notes->sheet;
	struct setting s = {.sheet = sheet, .notes = notes};
	struct places_of_text places = places_of(notes);
	sheet->is_squeezed = !find_setting(&s, &places);
	for (int i = 0; i < places.count; i++) {
		go_to(&s, places.items[i]);
		fill_column(&s, notes, places.items[i].y1);
		if (i == 0)
			sheet->column.y0 = s.y;
	}
	if (notes->next < notes->list.count) {
		sheet->rest = ARENA_NEW(sheet->draft->arena, struct notes);
		*sheet->rest = *notes;
	}
}

/* All that is left fits the column that `s` begins. */
static bool rest_fits(struct setting s, double bottom)
{
	s.is_dry = true;
	set_heading_again(&s);
	return s.notes->next + count_fitting(s, s.notes->next, bottom) == s.notes->list.count;
}

bool notes_carry(struct sheet *sheet, struct notes *rest)
{
	struct setting s = {.sheet = sheet, .notes = rest};
	struct paper_box column = sheet->column;
	go_to(&s, (struct paper_box){column.x0 + INSET, column.y0, column.x1 - INSET, column.y1});
	while (s.tight + 1 < TIGHT_COUNT && !rest_fits(s, column.y1))
		s.tight++;
	if (!rest_fits(s, column.y1))
		s.tight = 0;
	begin_column(&s, rest, column.y1);
	fill_column(&s, rest, column.y1);
	sheet->column.y0 = s.y;
	return rest->next == rest->list.count;
}

/* All over the sheet: columns in the place of a drawing, then the column of text. */
static struct places_of_text places_all_over(const struct sheet *sheet)
{
	struct places_of_text places = {0};
	struct paper_box column = sheet->column;
	double left = sheet->frame.x0, top = sheet->frame.y0 + TOP;
	add_columns(&places, (struct paper_box){left, top, column.x0, sheet->foot.y1},
	            column.x1 - column.x0);
	column.y0 += TOP;
	add_columns(&places, column, column.x1 - column.x0);
	return places;
}

/* Notes that fill a few of many columns stand in all of them, as short as they can; higher
 * where that tears no list. */
static void balance(const struct setting *s, struct places_of_text *places)
{
	enum { STEPS = 24 };
	const struct places_of_text whole = *places;
	double top = places->items[0].y0, high = places->items[0].y1 - top;
	bool is_found = false, is_torn;
	for (int i = 1; i < STEPS; i++) {
		struct places_of_text shorter = whole;
		for (int k = 0; k < shorter.count; k++)
			shorter.items[k].y1 = fmin(shorter.items[k].y1, top + high * i / STEPS);
		if (!all_fit(*s, &shorter, &is_torn))
			continue;
		if (!is_torn || !is_found)
			*places = shorter;
		is_found = true;
		if (!is_torn)
			return;
	}
}

bool notes_continue(struct sheet *sheet, struct notes *rest)
{
	size_t first = rest->next;
	struct setting s = {.sheet = sheet, .notes = rest};
	struct places_of_text places = places_all_over(sheet);
	/* Rather less white round the headings than a further sheet. */
	bool is_torn;
	while (first == 0 && s.tight + 1 < TIGHT_COUNT && !all_fit(s, &places, &is_torn))
		s.tight++;
	if (!all_fit(s, &places, &is_torn))
		s.tight = 0;
	if (first == 0)
		balance(&s, &places);
	for (int i = 0; i < places.count; i++) {
		go_to(&s, places.items[i]);
		if (i == 0)
			begin_column(&s, rest, places.items[i].y1);
		fill_column(&s, rest, places.items[i].y1);
	}
	if (rest->next < rest->list.count)
		sheet->rest = rest;
	return rest->next > first;
}
