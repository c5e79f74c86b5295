/* membrane.c - strips with their corners and pieces, or full coverage. */
#include <string.h>

#include "sheets/draw_tile.h"
#include "sheets/floor_plan.h"
#include "sheets/notes.h"
#include "sheets/parts.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/strip_corners.h"
#include "sheets/strip_offsets.h"
#include "sheets/table.h"
#include "units/length.h"

static void draw_cover(struct sheet *sheet, const struct lay_view *v)
{
	const struct cover *cover = &v->lay->strips->cover;
	if (!cover->is_full || !cover->membrane)
		return;
	struct paper_path path = lay_view_region(sheet->draft->arena, v, &cover->region);
	list_area(sheet->list, LAYER_MEMBRANE, AREA_COVER, cover->membrane->id, path);
	list_stroke(sheet->list, LAYER_MEMBRANE, PEN_COVER, cover->membrane->id, path);
	sheet_use(sheet, LEGEND_COVER);
}

static const char *piece_tag(const struct draft *draft, const struct strip *strip, size_t index)
{
	return arena_printf(draft->arena, "%s.%d", draft_tag(draft, strip->cracks[0]),
	                    strip->pieces[index].order);
}

static bool is_tagged(const struct sheet *sheet, const char *text)
{
	for (size_t i = 0; i < sheet->list->labels.count; i++)
		if (strcmp(sheet->list->labels.items[i].lines[0], text) == 0)
			return true;
	return false;
}

/* A piece that goes on in another room is tagged once. */
static void tag_pieces(struct sheet *sheet, const struct lay_view *v, const struct strip *strip)
{
	for (size_t i = 0; i < strip->piece_count; i++) {
		const char *text = piece_tag(sheet->draft, strip, i);
		const struct region piece = {&strip->pieces[i].shape, 1};
		const struct polygon *seen = lay_view_named_most(sheet->draft->arena, v, &piece);
		if (!seen || is_tagged(sheet, text))
			continue;
		struct paper_point at = lay_view_point(v, ring_widest(seen->outline));
		list_label(sheet->list, &(struct label){.lines = &text,
		                                        .line_count = 1,
		                                        .role = TEXT_TAG,
		                                        .layer = LAYER_LABELS,
		                                        .element = strip->id,
		                                        .frame = LABEL_BOX,
		                                        .where = LABEL_AROUND,
		                                        .a = at,
		                                        .b = at,
		                                        .priority = 7,
		                                        .can_lead = true,
		                                        .is_dotted = true,
		                                        .is_clear = true});
	}
}

static void draw_room(struct sheet *sheet, const struct lay_view *v)
{
	const struct draft *draft = sheet->draft;
	struct strip_corners corners = strip_corners_find(draft->arena, draft->placed, v, true);
	draw_cover(sheet, v);
	draw_strips(sheet, v);
	draw_holds(sheet, v, false);
	draw_carried_joints(sheet, v);
	draw_covered_cracks(sheet, v);
	draw_controls(sheet, v);
	strip_corners_mark(sheet, v, &corners);
	for (size_t i = 0; i < v->lay->strips->strip_count; i++)
		tag_pieces(sheet, v, &v->lay->strips->strips[i]);
	for (size_t i = 0; i < v->lay->strips->strip_count; i++)
		strip_offsets_draw(sheet, v, &v->lay->strips->strips[i]);
}

/* What holds for a strip and those like it. */
static const char *strip_rule(const struct draft *draft, const struct strip *strip)
{
	return draft_text(draft, "strip.about", {"half", draft_measure(draft, strip->half_width)},
	                  {"over", draft_measure(draft, strip->overrun)});
}

static void add_strip(struct notes *notes, const struct strip *strip)
{
	const struct draft *draft = notes->sheet->draft;
	const char *key = strip->pending ? "strip.row-pending" : "strip.row";
	notes_half(notes, NOTE_WORK, draft_tag(draft, strip->cracks[0]),
	           draft_text(draft, key, {"width", draft_measure(draft, strip->width)}));
}

/* The rule once, then the strips that it holds for. */
static void add_strips(struct notes *notes, const struct strips *strips)
{
	const struct draft *draft = notes->sheet->draft;
	bool any_pending = false;
	for (size_t i = 0; i < strips->strip_count; i++) {
		const char *rule = strip_rule(draft, &strips->strips[i]);
		bool is_told = false;
		for (size_t k = 0; k < i && !is_told; k++)
			is_told = strcmp(strip_rule(draft, &strips->strips[k]), rule) == 0;
		if (is_told)
			continue;
		notes_item(notes, NOTE_WORK, NOTE_DASH, rule);
		for (size_t k = i; k < strips->strip_count; k++)
			if (strcmp(strip_rule(draft, &strips->strips[k]), rule) == 0)
				add_strip(notes, &strips->strips[k]);
	}
	for (size_t i = 0; i < strips->strip_count; i++)
		any_pending = any_pending || strips->strips[i].pending;
	if (any_pending)
		notes_item(notes, NOTE_WORK, NOTE_DASH, draft_word(draft, "step.pending"));
}

static void add_corners(struct notes *notes)
{
	const struct draft *draft = notes->sheet->draft;
	struct view plain = parts_extent(notes->sheet);
	for (size_t i = 0; i < draft->site->room_count; i++) {
		const struct site_room *room = &draft->site->rooms[i];
		const struct placed_lay *lay = lay_of_room(draft->placed, room);
		if (!lay)
			continue;
		struct lay_view v = lay_view_make(draft->arena, lay, &plain, room);
		struct strip_corners corners =
			strip_corners_find(draft->arena, draft->placed, &v, true);
		strip_corners_note(notes, &v, &corners);
	}
}

static struct table_row piece_row(const struct draft *draft, const struct strip *strip, size_t i)
{
	const struct strip_piece *piece = &strip->pieces[i];
	return (struct table_row){
		.cells = {piece_tag(draft, strip, i), draft_length(draft, piece->length),
	                  draft_length(draft, piece->wide),
	                  piece->lap > 0 ? draft_length(draft, piece->lap) : NULL,
	                  piece->roll > 0 ? arena_printf(draft->arena, "%d", piece->roll) : NULL,
	                  strip->pending ? draft_word(draft, "tag.pending") : NULL}};
}

static struct table piece_list(struct sheet *sheet)
{
	static const char *const HEADS[] = {"piece.tag", "piece.length", "piece.wide",
	                                    "piece.lap", "piece.roll",   "piece.note"};
	const struct draft *draft = sheet->draft;
	struct table table = {.column_count = sizeof HEADS / sizeof *HEADS,
	                      .right = 1u << 1 | 1u << 2 | 1u << 3 | 1u << 4};
	for (size_t k = 0; k < table.column_count; k++)
		table.heads[k] = draft_word(draft, HEADS[k]);
	for (size_t i = 0; i < draft->placed->lay_count; i++) {
		const struct strips *strips = draft->placed->lays[i].strips;
		for (size_t s = 0; s < strips->strip_count; s++)
			for (size_t k = 0; k < strips->strips[s].piece_count; k++)
				table_add(sheet, &table, piece_row(draft, &strips->strips[s], k));
	}
	table_drop_blank(&table);
	return table;
}

/* True where another lay has told of the same membrane. */
static bool is_covered_before(const struct placed *placed, size_t index)
{
	const struct cover *cover = &placed->lays[index].strips->cover;
	for (size_t i = 0; i < index; i++)
		if (placed->lays[i].strips->cover.membrane == cover->membrane &&
		    placed->lays[i].strips->cover.is_full == cover->is_full)
			return true;
	return false;
}

/* What is laid where no strips are. */
static void add_cover(struct notes *notes, const struct placed_lay *lay)
{
	const struct draft *draft = notes->sheet->draft;
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	if (!lay->strips->cover.is_full)
		return;
	const char *name =
		membrane->name ? membrane->name : draft_word(draft, "material.membrane-plain");
	notes_item(notes, NOTE_WORK, draft_tag(draft, membrane->id),
	           draft_text(draft, "cover.about", {"name", name}));
	if (membrane->kind == PLAN_MEMBRANE_LIQUID && membrane->wet_film_nm > 0)
		notes_item(notes, NOTE_WORK, NOTE_DASH,
		           draft_text(draft, "cover.film",
		                      {"film",
		                       draft_width(draft, length_mm(membrane->wet_film_nm))},
		                      {"coats", arena_printf(draft->arena, "%lld",
		                                             (long long)membrane->coats)}));
}

enum sheet_fit membrane_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct notes notes = {.sheet = sheet};
	if (floor_plan_draw(sheet, (struct floor_plan){.draw = draw_room}) != SHEET_FITS)
		return SHEET_TOO_LARGE;
	notes_heading(&notes, NOTE_WORK, "heading.membrane");
	bool is_told = notes_of_parts(&notes);
	for (size_t i = 0; is_told && i < draft->placed->lay_count; i++) {
		if (!is_covered_before(draft->placed, i))
			add_cover(&notes, &draft->placed->lays[i]);
		add_strips(&notes, draft->placed->lays[i].strips);
	}
	add_corners(&notes);
	notes_missing(&notes);
	notes_legend(&notes);
	notes_draw(&notes);
	if (!is_told)
		return SHEET_FITS;
	struct table *table = ARENA_NEW(draft->arena, struct table);
	*table = piece_list(sheet);
	table_place(sheet, table);
	return SHEET_FITS;
}
