/* setting_out.c - the tile as it is set out: lines, first tile, cuts, courses, diagonals. */
#include <math.h>
#include <string.h>

#include "geometry/segment.h"
#include "sheets/course_numbers.h"
#include "sheets/draw_cuts.h"
#include "sheets/draw_tile.h"
#include "sheets/floor_plan.h"
#include "sheets/notes.h"
#include "sheets/sheets_of_floor.h"
#include "units/number.h"

enum { REASONS_MOST = 4, TURN_DECIMALS = 2 }; /* lines for each lay; of degrees */
/* Of two cuts that differ by less (floor mm) the first is told. */
static const double SAME_CUT = 0.5;

static void draw_room(struct sheet *sheet, const struct lay_view *v)
{
	draw_cut_tiles(sheet, v);
	draw_tile_joints(sheet, v);
	draw_joint_lines(sheet, v);
	draw_holds(sheet, v, true);
	draw_controls(sheet, v);
	draw_first_tile(sheet, v);
	course_numbers_draw(sheet, v, true);
	if (v->lay->module->offset_count == 1)
		course_numbers_draw(sheet, v, false);
}

static const char *number(const struct draft *draft, long value)
{
	return arena_printf(draft->arena, "%ld", value);
}

/* Whole courses from the first tile's edge to the far walls of the room; nothing to say of a
 * pattern without courses. */
static void add_courses(struct notes *notes, const struct lay_view *v, bool along_u)
{
	const struct draft *draft = notes->sheet->draft;
	const struct control *control = lay_view_control(v, along_u);
	double pitch = along_u ? v->lay->module->course : v->lay->module->a.x;
	if (!control || v->lay->module->offset_count == 0)
		return;
	struct region ground = frame_region_in(draft->arena, v->lay->field->frame, &v->ground);
	struct box box = region_box(&ground);
	double at = along_u ? control->from.y : control->from.x;
	double least = along_u ? box.y0 : box.x0, most = along_u ? box.y1 : box.x1;
	notes_item(notes, NOTE_WORK, NOTE_DASH,
	           draft_text(draft, "courses.from",
	                      {"line", draft_word(draft, along_u ? "tag.line-u" : "tag.line-v")},
	                      {"more", number(draft, (long)((most - at) / pitch))},
	                      {"less", number(draft, (long)((at - least) / pitch))},
	                      {"pitch", draft_measure(draft, pitch)}));
}

/* The corner that is farthest from the first one: a tape between them checks the room. */
static void add_diagonal(struct notes *notes, const struct site_room *room)
{
	const struct draft *draft = notes->sheet->draft;
	struct ring outline = room->outline;
	size_t far = 0;
	for (size_t i = 1; i < outline.count; i++)
		if (point_distance(outline.points[0], outline.points[i]) >
		    point_distance(outline.points[0], outline.points[far]) + 1)
			far = i;
	notes_item(notes, NOTE_WORK, NOTE_DASH,
	           draft_text(draft, "diagonal.check",
	                      {"from", draft_tag(draft, room->edges[0].id)},
	                      {"to", draft_tag(draft, room->edges[far].id)},
	                      {"size", draft_measure(draft, point_distance(outline.points[0],
	                                                                   outline.points[far]))}));
}

static const struct field_border *border_of(const struct placed_lay *lay,
                                            const struct border_cut *cut)
{
	return &lay->field->borders[cut->border];
}

/* The border with the least cut that can be said: not at a slant, where cuts run down to
 * nothing. NULL: there is none. */
static const struct border_cut *least_cut(const struct placed_lay *lay)
{
	const struct position *position = lay->position;
	const struct border_cut *best = NULL;
	for (size_t i = 0; i < position->cut_count; i++)
		if (!field_has_askew(lay->field, border_of(lay, &position->cuts[i])->of) &&
		    (!best || position->cuts[i].least < best->least - SAME_CUT))
			best = &position->cuts[i];
	return best;
}

/* Least cut with a wall off by the tolerance, of the same borders. */
static double worst_cut(const struct placed_lay *lay)
{
	const struct position *position = lay->position;
	double worst = INFINITY;
	for (size_t i = 0; i < position->cut_count; i++)
		if (!field_has_askew(lay->field, border_of(lay, &position->cuts[i])->of))
			worst = fmin(worst, position->cuts[i].worst);
	return worst;
}

/* Walls and joints that cut the tile askew, each once. */
static const char *askew_ids(const struct draft *draft, const struct placed_lay *lay)
{
	struct strbuf list = strbuf_in(draft->arena);
	const struct position *position = lay->position;
	for (size_t i = 0; i < position->cut_count; i++) {
		const char *of = border_of(lay, &position->cuts[i])->of;
		bool is_new = field_has_askew(lay->field, of);
		for (size_t k = 0; k < i && is_new; k++)
			is_new = strcmp(border_of(lay, &position->cuts[k])->of, of) != 0;
		if (is_new)
			strbuf_printf(&list, "%s%s", list.length ? ", " : "", draft_tag(draft, of));
	}
	return list.text;
}

/* Where a setter might rather start: told where it leaves less than is left here. */
static void add_reasons(struct notes *notes, const struct alternatives *others)
{
	const struct draft *draft = notes->sheet->draft;
	int told = 0;
	for (size_t i = 0; i < others->count && told < REASONS_MOST; i++) {
		const struct alternative *other = &others->items[i];
		bool is_turned = other->kind == ALTERNATIVE_ALONG;
		if ((!is_turned && other->kind != ALTERNATIVE_START) || alternative_cures(other) ||
		    number_order(other->least.share, others->taken.share) >= 0)
			continue;
		told++;
		notes_item(notes, NOTE_WORK, NOTE_DASH,
		           draft_text(draft, is_turned ? "why.along" : "why.start",
		                      {"edge", draft_tag(draft, other->at)},
		                      {"turn", number_text(draft->arena, fabs(other->turn_deg),
		                                           TURN_DECIMALS)},
		                      {"cut", draft_measure(draft, other->least.cut->least)},
		                      {"where", draft_tag(draft, other->least.of)}));
	}
}

static void add_tiles(struct notes *notes, size_t index)
{
	const struct draft *draft = notes->sheet->draft;
	const struct placed_lay *lay = &draft->placed->lays[index];
	const struct border_cut *least = least_cut(lay);
	long whole = 0, cut = 0;
	for (size_t i = 0; i < lay->tiling->panel_count; i++) {
		whole += lay->tiling->panels[i].whole_count;
		cut += (long)lay->tiling->panels[i].piece_count;
	}
	notes_item(notes, NOTE_WORK, draft_tag(draft, lay->field->lay->id),
	           draft_text(draft, "tiles.told", {"whole", number(draft, whole)},
	                      {"cut", number(draft, cut)}));
	if (least)
		notes_item(notes, NOTE_WORK, NOTE_DASH,
		           draft_text(draft,
		                      draft_rounded(draft, least->least) > 0 ? "tiles.least"
		                                                             : "tiles.least-none",
		                      {"least", draft_measure(draft, least->least)},
		                      {"where", draft_tag(draft, border_of(lay, least)->of)},
		                      {"worst", draft_measure(draft, worst_cut(lay))},
		                      {"tolerance", draft_measure(draft, lay->field->tolerance)}));
	if (draft->findings->alternatives != NULL)
		add_reasons(notes, draft->findings->alternatives[index]);
	const char *askew = askew_ids(draft, lay);
	if (askew && *askew)
		notes_item(notes, NOTE_WORK, NOTE_DASH,
		           draft_text(draft, "tiles.askew", {"where", askew}));
}

/* Where along its wall a point of the room's border lies, as a tape has it. */
static const char *wall_place(const struct draft *draft, const struct site_room *room,
                              struct point p)
{
	const struct site_edge *nearest = NULL;
	double least = INFINITY;
	for (size_t i = 0; i < room->edge_count; i++) {
		const struct site_edge *edge = &room->edges[i];
		double distance = segment_distance((struct segment){edge->from, edge->to}, p);
		if (distance < least - SAME_CUT) {
			nearest = edge;
			least = distance;
		}
	}
	if (!nearest)
		return "";
	struct point start = nearest->reversed ? nearest->to : nearest->from;
	return draft_text(draft, "controls.place", {"wall", draft_tag(draft, nearest->id)},
	                  {"along", draft_measure(draft, point_distance(start, p))});
}

/* Lines askew to the walls beside them have no offsets to one wall: they are snapped between
 * two marks. */
static void add_ends(struct notes *notes, const struct lay_view *v, bool along_u)
{
	const struct draft *draft = notes->sheet->draft;
	const struct control *control = lay_view_control(v, along_u);
	if (!control || !lay_view_is_marked(v, control))
		return;
	notes_item(notes, NOTE_WORK, NOTE_DASH,
	           draft_text(draft, "controls.between",
	                      {"line", draft_word(draft, along_u ? "tag.line-u" : "tag.line-v")},
	                      {"from", wall_place(draft, v->room, lay_view_plan(v, control->from))},
	                      {"to", wall_place(draft, v->room, lay_view_plan(v, control->to))}));
}

static void add_room(struct notes *notes, const struct site_room *room)
{
	const struct draft *draft = notes->sheet->draft;
	const struct placed_lay *lay = lay_of_room(draft->placed, room);
	struct view plain = {.scale = 1};
	notes_title(notes, NOTE_WORK, room->name);
	add_diagonal(notes, room);
	if (!lay)
		return;
	struct lay_view v = lay_view_make(draft->arena, lay, &plain, room);
	for (int line = 1; line >= 0; line--) {
		add_ends(notes, &v, line);
		add_courses(notes, &v, line);
	}
}

enum sheet_fit setting_out_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct notes notes = {.sheet = sheet};
	if (floor_plan_draw(sheet, (struct floor_plan){true, draw_room}) != SHEET_FITS)
		return SHEET_TOO_LARGE;
	notes_heading(&notes, NOTE_WORK, "heading.setting-out");
	bool is_told = notes_of_parts(&notes);
	for (size_t i = 0; is_told && i < draft->placed->lay_count; i++)
		add_tiles(&notes, i);
	for (size_t i = 0; is_told && i < draft->site->room_count; i++)
		add_room(&notes, &draft->site->rooms[i]);
	notes_missing(&notes);
	notes_legend(&notes);
	notes_draw(&notes);
	return SHEET_FITS;
}
