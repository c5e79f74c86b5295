#include "sheets/changes_sheet.h"

#include <string.h>

#include "compare/change_text.h"
#include "sheets/changes_table.h"
#include "sheets/draw_floor.h"
#include "sheets/draw_tile.h"
#include "sheets/floor_plan.h"
#include "sheets/notes.h"
#include "sheets/part_marks.h"

/* Paper mm round the floor: room for clouds and triangles. */
static const double MARGIN = 14;

/* ---- the floor ---- */

static void draw_membrane(struct sheet *sheet, const struct lay_view *v)
{
	const struct strips *strips = v->lay->strips;
	for (size_t i = 0; i < strips->strip_count; i++) {
		const struct strip *strip = &strips->strips[i];
		struct paper_path path = lay_view_region(sheet->draft->arena, v, &strip->region);
		if (path.count == 0)
			continue;
		list_area(sheet->list, LAYER_MEMBRANE,
		          strip->pending ? AREA_STRIP_PENDING : AREA_STRIP, strip->id, path);
		sheet_use(sheet, strip->pending ? LEGEND_STRIP_PENDING : LEGEND_STRIP);
	}
	if (!strips->cover.is_full || strips->cover.membrane == NULL)
		return;
	list_area(sheet->list, LAYER_MEMBRANE, AREA_COVER, strips->cover.membrane->id,
	          lay_view_region(sheet->draft->arena, v, &strips->cover.region));
	sheet_use(sheet, LEGEND_COVER);
}

static void draw_room(struct sheet *sheet, const struct view *view, const struct site_room *room)
{
	const struct draft *draft = sheet->draft;
	const struct placed_lay *lay = lay_of_room(draft->placed, room);
	struct region ground = site_room_ground(draft->arena, room);
	if (lay != NULL) {
		struct lay_view v = lay_view_make(draft->arena, lay, view, room);
		draw_membrane(sheet, &v);
		draw_holds(sheet, &v, false);
		draw_joint_lines(sheet, &v);
	}
	draw_slab_joints(sheet, view, &ground);
	draw_cracks(sheet, view, &ground);
	draw_walls(sheet, view, room);
	draw_obstacles(sheet, view, room);
	draw_room_name(sheet, view, room);
}

/* ---- the text ---- */

/* Rooms as people call them; those that are gone by their id. */
static const char *rooms_of(const struct draft *draft, const char *ids)
{
	struct strbuf out = strbuf_in(draft->arena);
	for (const char *at = ids; *at != '\0';) {
		size_t length = strcspn(at, " ");
		const char *id = arena_strndup(draft->arena, at, length);
		const struct site_room *room = site_room_find(draft->site, id);
		strbuf_printf(&out, "%s%s", out.length > 0 ? ", " : "",
		              room != NULL ? room->name : draft_tag(draft, id));
		at += length + strspn(at + length, " ");
	}
	return out.length > 0 ? out.text : draft_word(draft, "change.everywhere");
}

static const char *what_of(const struct draft *draft, const struct change *change)
{
	return draft_text(draft, "changes.what",
	                  {"what", change_text_what(draft->arena, draft->words, change)},
	                  {"where", rooms_of(draft, change->where)});
}

static void add_change(struct notes *notes, const char *mark, const struct change *change)
{
	const struct draft *draft = notes->sheet->draft;
	const char *reason = change_text_reason(draft->arena, draft->words, change);
	notes_item(notes, NOTE_WORK, mark, what_of(draft, change));
	if (*reason != '\0')
		notes_item(notes, NOTE_MATERIAL, NOTE_DASH, reason);
	for (size_t i = 0; i < change->edit_count; i++)
		notes_item(notes, NOTE_MATERIAL, NOTE_DASH,
		           change_text_edit(draft->arena, draft->words, &change->edits[i]));
}

/* Something is asked, or was: what is only noted stands on the other sheets. */
static bool is_asked(const struct finding_change *change)
{
	return change->fate == FINDING_WAS_ANSWERED || change->finding->weight != RULE_NOTE;
}

/* What it says; what is to be done about it the other sheets say. */
static void add_finding(struct notes *notes, const struct finding_change *change)
{
	const struct draft *draft = notes->sheet->draft;
	struct finding finding = *change->finding;
	const char *stop = strstr(finding.text, ". ");
	if (stop != NULL)
		finding.text =
			arena_strndup(draft->arena, finding.text, (size_t)(stop - finding.text));
	struct finding_change told = {change->fate, &finding};
	notes_item(notes, NOTE_FINDING, NOTE_DASH,
	           change_text_finding(draft->arena, draft->words, &told));
}

/* By how much a line changes price and waiting. */
static const char *effect_of(const struct draft *draft, const struct difference *difference)
{
	const struct row_change *total = difference_total(difference), *days = &difference->days;
	const char *more =
		row_change_row(days) != NULL ? change_text_more(draft->arena, days) : "0";
	if (total == NULL)
		return draft_text(draft, "changes.effect-days", {"days", more});
	return draft_text(draft, "changes.effect", {"days", more},
	                  {"more", change_text_cents_more(draft->arena, total)},
	                  {"currency", difference->after->count->currency});
}

static void add_line(struct notes *notes, const struct comparison_line *line)
{
	const struct draft *draft = notes->sheet->draft;
	const char *mark = changes_mark(draft, line);
	for (size_t i = 0; i < line->change_count; i++)
		add_change(notes, i == 0 ? mark : "", line->changes[i]);
	if (line->change_count == 0)
		notes_item(notes, NOTE_WORK, mark, draft_word(draft, "change.order"));
	notes_item(notes, NOTE_MATERIAL, NOTE_DASH, effect_of(draft, &line->difference));
	for (size_t i = 0; i < line->difference.findings.list.count; i++)
		if (is_asked(&line->difference.findings.list.items[i]))
			add_finding(notes, &line->difference.findings.list.items[i]);
}

static const char *money_text(const struct draft *draft, const struct difference *difference)
{
	const struct row_change *total = difference_total(difference);
	if (total == NULL)
		return draft_word(draft, "changes.no-money");
	return draft_text(draft, "changes.money",
	                  {"before", change_text_cents(draft->arena, total, total->cents_before)},
	                  {"after", change_text_cents(draft->arena, total, total->cents_after)},
	                  {"more", change_text_cents_more(draft->arena, total)},
	                  {"currency", difference->after->count->currency});
}

static void add_total(struct notes *notes, const struct difference *total)
{
	const struct draft *draft = notes->sheet->draft;
	struct arena *arena = draft->arena;
	const struct row_change *days = &total->days;
	notes_heading(notes, NOTE_WORK, "heading.changes-total");
	notes_item(notes, NOTE_MATERIAL, NOTE_DASH, money_text(draft, total));
	if (row_change_row(days) != NULL)
		notes_item(
			notes, NOTE_MATERIAL, NOTE_DASH,
			draft_text(draft, "changes.days",
		                   {"before", change_text_amount(arena, days, days->amount_before)},
		                   {"after", change_text_amount(arena, days, days->amount_after)},
		                   {"more", change_text_more(arena, days)}));
	notes_item(notes, NOTE_MATERIAL, NOTE_DASH, draft_word(draft, "changes.order"));
}

static void add_text(struct notes *notes)
{
	const struct comparison *comparison = notes->sheet->draft->comparison;
	for (size_t i = 0; i < comparison->line_count; i++)
		add_line(notes, &comparison->lines[i]);
	add_total(notes, &comparison->total);
}

enum sheet_fit changes_sheet_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct margin margin = {.window = floor_plan_window(draft->arena, draft->site),
	                        .walls = floor_plan_walls(draft->arena, draft->site)};
	struct notes *notes = ARENA_NEW(draft->arena, struct notes);
	struct view view;
	for (int side = 0; side < SIDE_COUNT; side++)
		margin.need[side] = MARGIN;
	if (!margin_fit(sheet, &margin, &view))
		return SHEET_TOO_LARGE;
	/* All of the floor at a glance, however small: the sheets of parts have the rest. */
	sheet->margin = NULL;
	for (size_t i = 0; i < draft->site->room_count; i++)
		draw_room(sheet, &view, &draft->site->rooms[i]);
	part_marks_draw(sheet, &view);
	notes->sheet = sheet;
	notes_heading(notes, NOTE_WORK, "heading.changes");
	bool is_told = notes_of_parts(notes);
	if (is_told)
		add_text(notes);
	notes_missing(notes);
	notes_legend(notes);
	notes_draw(notes);
	if (is_told)
		sheet->more = changes_table(sheet);
	return SHEET_FITS;
}
