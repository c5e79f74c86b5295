#include "sheets/planned.h"

#include <math.h>

#include "drawing/finish.h"
#include "sheets/clouds.h"
#include "sheets/drawing_scale.h"
#include "sheets/install.h"
#include "sheets/legend.h"
#include "sheets/notes.h"
#include "sheets/parts.h"
#include "sheets/table.h"
#include "sheets/title_block.h"

/* A plan is drawn at 1:100 to 1:50 (1/8 in to 1/4 in to the foot), larger where it fits:
 * common practice. At a coarser scale it is divided; within these it is where labels crowd:
 * more than this share of them stand away from what they name, or badly. */
static const double PLAN_COARSEST = 100, PLAN_FINEST = 48, CROWDED_MOST = 0.3;
/* Where a label found no room at all, parts are drawn at up to 1:20 (1/2 in to the foot), before
 * any lettering is made smaller. */
static const double PLAN_UTMOST = 20;
/* A room more times as long as wide than this leaves its sheet empty: own design. */
static const double LONG_ROOM = 4;
/* With more small texts than this share of all, all are. */
static const double SMALL_MOST = 0.15;
/* Paper mm, own design: where the notes of a sheet do not fit, its column of text grows by
 * these steps into what its drawing does not need, or a strip under the drawing does. */
static const double ROOM_STEP = 12, WIDER_MOST = 60;
/* A view is divided into no more parts: where its labels crowd, and where it is too large. */
enum { PARTS_CROWDED_MOST = 16, PARTS_UTMOST_MOST = 6, PARTS_MOST = 64 };

/* How a sheet is tried: first as the style has it; with the small height for those labels
 * that found no room; for all, where those are many; and where that is not enough, with a
 * note of what could not be shown. */
enum attempt { ATTEMPT_PLAIN, ATTEMPT_FEW_SMALL, ATTEMPT_SMALL, ATTEMPT_NOTED, ATTEMPT_COUNT };

struct outcome {
	struct sheet *sheet;
	enum sheet_fit fit;
	struct label_report report;
};

/* A view on several sheets; no parts: it is on one. */
struct division {
	const struct draft *draft;
	struct parts *parts;
	struct outcome *outcomes;    /* of each part, as last drawn */
	bool is_crowded, lacks_room; /* labels stand away; one found no room at all */
};

/* The same draft with labels in the height of tables; dimensions keep their own. */
static const struct draft *small_draft(const struct draft *draft)
{
	static const enum text_role SHRUNK[] = {TEXT_TAG, TEXT_WARNING, TEXT_ROOM};
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

struct sheet *planned_begin(const struct draft *draft, const char *name, const char *title,
                            const char *subject)
{
	struct sheet *sheet = sheet_new(draft, name, title, subject);
	title_block_reserve(sheet);
	sheet_draw_frame(sheet);
	return sheet;
}

struct sheet *planned_table(const struct draft *draft, const char *name, const char *title,
                            const char *subject, struct table *table)
{
	struct sheet *sheet = sheet_new(draft, name, title, subject);
	title_block_reserve(sheet);
	sheet_release_band(sheet);
	sheet_open(sheet);
	if (table_enlarge(sheet, table)) {
		sheet_draw_frame(sheet);
		return sheet;
	}
	sheet = planned_begin(draft, name, title, subject);
	sheet_release_band(sheet);
	return sheet;
}

const char *planned_title(const struct draft *draft, const struct planned *planned)
{
	return draft_text(draft, planned->kind->title,
	                  {"room", planned->room ? planned->room->name : ""});
}

/* One part of a sheet's view; `parts` NULL: all of it. */
struct portion {
	const struct parts *parts;
	size_t index;
};

static const char *portion_title(const struct draft *draft, const struct planned *planned,
                                 struct portion portion)
{
	const char *title = planned_title(draft, planned);
	if (!portion.parts)
		return title;
	return draft_text(draft, "sheet.part", {"title", title},
	                  {"number", arena_printf(draft->arena, "%zu", portion.index + 1)},
	                  {"count", arena_printf(draft->arena, "%zu", portion.parts->count)});
}

static struct cloud_scope scope_of(const struct planned *planned, const struct sheet *sheet)
{
	const struct box *core = sheet->parts ? &sheet->parts->list[sheet->part].core : NULL;
	return (struct cloud_scope){planned->kind->shows, planned->room, core};
}

bool planned_is_changed(const struct draft *draft, const struct planned *planned,
                        const struct sheet *sheet)
{
	return !sheet->parts || sheet->part == 0 || clouds_any(draft, scope_of(planned, sheet));
}

static struct outcome draw_view(const struct set_facts *facts, const struct planned *planned,
                                const struct draft *draft, struct portion portion,
                                enum attempt attempt, const char *missing)
{
	const char *of = planned->room ? planned->room->name : "";
	const char *name = portion.parts ? portion.parts->list[portion.index].name : planned->name;
	struct sheet *sheet =
		planned_begin(draft, name, portion_title(draft, planned, portion),
	                      draft_text(draft, planned->kind->subject, {"room", of}));
	struct outcome outcome = {.sheet = sheet};
	sheet->parts = portion.parts;
	sheet->part = portion.index;
	sheet->missing = missing;
	if (attempt == ATTEMPT_FEW_SMALL)
		sheet->list->small_cap = draft->style->texts[TEXT_TABLE].cap;
	sheet->used = planned->kind->explains_all ? facts->used : 0;
	if (clouds_any(draft, scope_of(planned, sheet)))
		sheet_use(sheet, LEGEND_CHANGE);
	sheet->contents = facts->contents;
	sheet->contents_count = facts->contents_count;
	outcome.fit =
		planned->room ? install_draw(sheet, planned->room) : planned->kind->draw(sheet);
	return outcome;
}

/* The same draft with a wider column, or with text under the drawing. */
static const struct draft *roomier_draft(const struct draft *draft, double wider, double foot)
{
	struct paper_size *paper = ARENA_NEW(draft->arena, struct paper_size);
	struct draft *roomier = ARENA_NEW(draft->arena, struct draft);
	*paper = *draft->paper;
	paper->column += wider;
	paper->narrow += wider;
	*roomier = *draft;
	roomier->paper = paper;
	roomier->foot = foot;
	return roomier;
}

static bool is_roomy(const struct outcome *outcome, const struct outcome *before)
{
	return outcome->fit == SHEET_FITS && !outcome->sheet->is_squeezed &&
	       !(outcome->sheet->scale > before->sheet->scale);
}

static struct outcome draw_roomy(const struct set_facts *facts, const struct planned *planned,
                                 const struct draft *draft, enum attempt attempt,
                                 const char *missing, struct outcome before)
{
	const struct sheet *sheet = before.sheet;
	for (int wide = 1; wide >= 0; wide--) {
		double most = wide ? fmin(sheet->spare_wide, WIDER_MOST) : sheet->spare_high;
		for (double more = ROOM_STEP; more <= most; more += ROOM_STEP) {
			struct outcome outcome =
				draw_view(facts, planned,
			                  roomier_draft(draft, wide ? more : 0, wide ? 0 : more),
			                  (struct portion){0}, attempt, missing);
			if (is_roomy(&outcome, &before))
				return outcome;
		}
	}
	return before;
}

static struct outcome try_sheet(const struct set_facts *facts, const struct planned *planned,
                                const struct draft *draft, struct portion portion,
                                enum attempt attempt, const char *missing)
{
	struct outcome outcome = draw_view(facts, planned, draft, portion, attempt, missing);
	if (outcome.fit == SHEET_FITS && outcome.sheet->is_squeezed && !portion.parts)
		outcome = draw_roomy(facts, planned, draft, attempt, missing, outcome);
	struct sheet *sheet = outcome.sheet;
	if (outcome.fit != SHEET_FITS)
		return outcome;
	title_band_draw(sheet);
	if (legend_fits(sheet, title_band_middle(sheet)))
		legend_draw(sheet, title_band_middle(sheet));
	clouds_reserve(sheet, scope_of(planned, sheet));
	outcome.report = list_finish(sheet->list, sheet->drawing);
	return outcome;
}

/* The sheet as the style has it, in the narrow column where that gains a scale. */
static struct outcome try_plain(const struct set_facts *facts, const struct planned *planned,
                                const struct draft **draft)
{
	struct outcome outcome =
		try_sheet(facts, planned, *draft, (struct portion){0}, ATTEMPT_PLAIN, NULL);
	if (!outcome.sheet->is_cramped)
		return outcome;
	*draft = narrow_draft(*draft);
	return try_sheet(facts, planned, *draft, (struct portion){0}, ATTEMPT_PLAIN, NULL);
}

/* A few small texts among large ones are better than all of them small. */
static bool is_readable(const struct label_report *report)
{
	return report->unplaced == 0 &&
	       (double)report->small <= SMALL_MOST * (double)report->placed;
}

/* The further attempts, where labels found no room in the first. */
static struct outcome try_harder(const struct set_facts *facts, const struct planned *planned,
                                 const struct draft *draft, struct portion portion,
                                 struct outcome outcome)
{
	const char *missing = NULL;
	/* What a crew reads on the floor is never set smaller. */
	int first = planned->room ? ATTEMPT_NOTED : ATTEMPT_FEW_SMALL;
	for (int attempt = first; attempt < ATTEMPT_COUNT; attempt++) {
		if (outcome.fit != SHEET_FITS || is_readable(&outcome.report))
			break;
		if (attempt == ATTEMPT_SMALL)
			draft = small_draft(draft);
		if (attempt == ATTEMPT_NOTED)
			missing = list_missing(draft->arena, &outcome.report);
		outcome = try_sheet(facts, planned, draft, portion, (enum attempt)attempt, missing);
	}
	return outcome;
}

/* ---- a view too large for one sheet ---- */

static bool stand_badly(const struct label_report *report)
{
	return (double)report->badly > CROWDED_MOST * (double)report->tags;
}

/* Labels of a sheet that stand away from what they name, badly, or nowhere. */
static bool is_crowded(const struct label_report *report)
{
	return report->unplaced > 0 || stand_badly(report) ||
	       (double)report->led > CROWDED_MOST * (double)report->tags;
}

static struct division divide_in(const struct draft *draft, const struct planned *planned,
                                 const struct sheet *whole, double scale, size_t most)
{
	const struct sheet *sheet = planned_begin(draft, planned->name, "", "");
	struct division d = {.draft = draft, .parts = ARENA_NEW(draft->arena, struct parts)};
	*d.parts = parts_divide(draft, whole->margin, sheet->drawing, scale, planned->name, most);
	return d;
}

/* In the narrow column where that saves sheets. */
static struct division divide(const struct set_facts *facts, const struct planned *planned,
                              const struct sheet *whole, double scale, size_t most)
{
	struct division wide = divide_in(facts->draft, planned, whole, scale, most);
	struct division narrow = divide_in(narrow_draft(facts->draft), planned, whole, scale, most);
	bool is_saved = narrow.parts->count > 0 &&
	                (wide.parts->count == 0 || narrow.parts->count < wide.parts->count);
	return is_saved ? narrow : wide;
}

/* Of the whole floor the first part has the notes, of a room each part has its own. */
static bool is_squeezed(const struct set_facts *facts, const struct planned *planned,
                        const struct division *d)
{
	size_t told = planned->room ? d->parts->count : 1;
	bool is = false;
	for (size_t i = 0; i < told && !is; i++) {
		struct portion portion = {d->parts, i};
		is = draw_view(facts, planned, d->draft, portion, ATTEMPT_PLAIN, NULL)
		             .sheet->is_squeezed;
	}
	return is;
}

/* The same parts with a column as wide as their notes ask for, or with text under the drawing,
 * where that needs no more parts. */
static struct division divide_roomy(const struct set_facts *facts, const struct planned *planned,
                                    const struct sheet *whole, double scale, size_t most)
{
	struct division plain = divide(facts, planned, whole, scale, most);
	if (plain.parts->count == 0 || !is_squeezed(facts, planned, &plain))
		return plain;
	for (int wide = 1; wide >= 0; wide--)
		for (double more = ROOM_STEP; more <= WIDER_MOST; more += ROOM_STEP) {
			const struct draft *draft =
				roomier_draft(plain.draft, wide ? more : 0, wide ? 0 : more);
			struct division d = divide_in(draft, planned, whole, scale, most);
			if (d.parts->count != plain.parts->count)
				break;
			if (!is_squeezed(facts, planned, &d))
				return d;
		}
	return plain;
}

static struct division try_parts(const struct set_facts *facts, const struct planned *planned,
                                 const struct sheet *whole, double scale, size_t most)
{
	struct arena *arena = facts->draft->arena;
	struct division d = divide_roomy(facts, planned, whole, scale, most);
	d.outcomes = ARENA_ARRAY(arena, struct outcome, d.parts->count);
	for (size_t i = 0; i < d.parts->count; i++) {
		d.outcomes[i] = try_sheet(facts, planned, d.draft, (struct portion){d.parts, i},
		                          ATTEMPT_PLAIN, NULL);
		d.is_crowded = d.is_crowded || is_crowded(&d.outcomes[i].report);
		d.lacks_room = d.lacks_room || d.outcomes[i].report.unplaced > 0;
	}
	return d;
}

/* The coarsest standard scale finer than `scale`, down to `finest`; 0: there is none. */
static double finer_scale(const struct draft *draft, double scale, double finest)
{
	double best = 0;
	for (size_t i = 0; drawing_scale_at(draft->site->inches, i) > 0; i++) {
		double at = drawing_scale_at(draft->site->inches, i);
		if (at < scale - 1e-9 && at > finest - 1e-9)
			best = at;
	}
	return best;
}

/* As many parts at the largest scale that shows them: paper that is there is used. */
static struct division enlarged(const struct set_facts *facts, const struct planned *planned,
                                const struct sheet *whole, struct division found)
{
	size_t count = found.parts->count;
	double scale = found.parts->scale, finer;
	while (count > 0 && (finer = finer_scale(facts->draft, scale, PLAN_UTMOST)) > 0 &&
	       divide(facts, planned, whole, finer, count).parts->count == count)
		scale = finer;
	if (!(scale < found.parts->scale))
		return found;
	struct division d = try_parts(facts, planned, whole, scale, count);
	bool is_worse =
		d.parts->count != count || d.lacks_room || (d.is_crowded && !found.is_crowded);
	return is_worse ? found : d;
}

/* Its sheet is empty beside it. */
static bool is_long(struct box window)
{
	double wide = window.x1 - window.x0, deep = window.y1 - window.y0;
	return fmax(wide, deep) > LONG_ROOM * fmin(wide, deep);
}

/* Below PLAN_FINEST parts are few; where every label has its room they are those of a long room,
 * and no more of them than their scale is larger. */
static size_t most_parts(const struct outcome *whole, bool is_first, bool lacks_room, double scale)
{
	bool fits = whole->fit == SHEET_FITS;
	if (scale > PLAN_FINEST - 1e-9)
		return is_first && !(fits && whole->sheet->scale <= PLAN_COARSEST)
		               ? PARTS_MOST
		               : PARTS_CROWDED_MOST;
	if (lacks_room)
		return PARTS_UTMOST_MOST;
	return fits && is_long(whole->sheet->margin->window)
	               ? (size_t)floor(whole->sheet->scale / scale + 1e-9)
	               : 0;
}

/* Parts at the coarsest scale at which they are not crowded; count 0: in one is better. */
static struct division find_division(const struct set_facts *facts, const struct planned *planned,
                                     const struct outcome *whole)
{
	const struct draft *draft = facts->draft;
	struct division best = {.parts = ARENA_NEW(draft->arena, struct parts)};
	const struct sheet *sheet = whole->sheet;
	bool is_asked = draft->scale > 0, fits = whole->fit == SHEET_FITS;
	bool is_legible = fits && sheet->scale <= PLAN_COARSEST;
	bool lacks_room = fits && whole->report.unplaced > 0, is_first = true;
	if (!sheet->margin || (fits && is_asked) || (is_legible && !is_crowded(&whole->report)))
		return best;
	if (is_asked)
		return try_parts(facts, planned, sheet, draft->scale, facts->left);
	double scale = fits ? fmin(sheet->scale, PLAN_COARSEST + 1) : PLAN_COARSEST + 1;
	bool is_strained = fits && stand_badly(&whole->report), is_enough = false;
	while (!is_enough) {
		scale = finer_scale(draft, scale,
		                    lacks_room || is_strained ? PLAN_UTMOST : PLAN_FINEST);
		if (!(scale > 0))
			break;
		size_t most = most_parts(whole, is_first, lacks_room, scale);
		struct division d = try_parts(facts, planned, sheet, scale, most);
		bool is_divided = d.parts->count > 0;
		if (is_divided)
			best = d;
		lacks_room = is_divided ? d.lacks_room : lacks_room;
		is_enough = is_divided ? !d.is_crowded : !is_strained;
		is_first = false;
	}
	return enlarged(facts, planned, sheet, best);
}

/* What the first part has no room for in its column goes on in those of the others, before it
 * takes a further sheet. */
static void carry_notes(const struct draft *draft, const struct planned *planned,
                        const struct division *d)
{
	struct sheet *first = d->outcomes[0].sheet;
	for (size_t i = 1; i < d->parts->count && !planned->room; i++) {
		struct sheet *sheet = d->outcomes[i].sheet;
		/* Of a change order some parts are left out. */
		if (draft->comparison && !planned_is_changed(draft, planned, sheet))
			continue;
		if (first->rest && notes_carry(sheet, first->rest))
			first->rest = NULL;
		if (!first->rest && first->more && table_carry(sheet, first->more))
			first->more = NULL;
	}
}

/* The sheets, clouded where something of them has changed. */
static struct sheet **sheet_array(const struct set_facts *facts, const struct planned *planned,
                                  const struct outcome *outcomes, size_t count)
{
	struct sheet **items = ARENA_ARRAY(facts->draft->arena, struct sheet *, count);
	for (size_t i = 0; i < count; i++) {
		items[i] = outcomes[i].sheet;
		if (outcomes[i].fit == SHEET_FITS)
			clouds_draw(items[i], scope_of(planned, items[i]));
	}
	return items;
}

struct planned_sheets planned_draw(const struct set_facts *facts, const struct planned *planned)
{
	const struct draft *draft = facts->draft;
	struct outcome outcome = try_plain(facts, planned, &draft);
	struct division d = find_division(facts, planned, &outcome);
	for (size_t i = 0; i < d.parts->count; i++)
		d.outcomes[i] = try_harder(facts, planned, d.draft, (struct portion){d.parts, i},
		                           d.outcomes[i]);
	if (d.parts->count > 0)
		carry_notes(draft, planned, &d);
	if (d.parts->count > 0)
		return (struct planned_sheets){sheet_array(facts, planned, d.outcomes,
		                                           d.parts->count),
		                               d.parts->count, false};
	outcome = try_harder(facts, planned, draft, (struct portion){0}, outcome);
	return (struct planned_sheets){sheet_array(facts, planned, &outcome, 1), 1,
	                               outcome.fit == SHEET_TOO_LARGE};
}
