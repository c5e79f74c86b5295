#include "sheets/draw_tile.h"

#include <string.h>

#include "drawing/symbol.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "sheets/draw_floor.h"
#include "sheets/tile_lines.h"

/* Rows and columns of places that are tried for the warning in a hold. */
enum { HELD_GRID = 7 };
/* Paper mm: joints of tile that would be nearer are thinned (docs/sources.md R-D12, X05). */
static const double JOINTS_APART = 1;

void draw_tile_joints(struct sheet *sheet, const struct lay_view *v)
{
	const struct tiling *tiling = v->lay->tiling;
	struct arena *arena = sheet->draft->arena;
	for (size_t i = 0; i < tiling->panel_count; i++) {
		struct panel *panel = &tiling->panels[i];
		struct region ground = lay_view_seen(arena, v, &(struct region){&panel->ground, 1});
		size_t count;
		if (ground.count == 0)
			continue;
		struct line *lines =
			tile_lines(arena, tiling, panel, JOINTS_APART * v->view->scale, &count);
		list_stroke(sheet->list, LAYER_TILE, PEN_TILE, panel->id,
		            lay_view_lines_in(arena, v, lines, count, &ground));
	}
}

/* All cut tiles of a panel, with their half of the joints round them: beside one another they
 * are one area. */
static struct region cut_area(struct arena *arena, const struct panel *panel, double joint)
{
	struct region pieces = {ARENA_ARRAY(arena, struct polygon, panel->piece_count),
	                        panel->piece_count};
	for (size_t i = 0; i < panel->piece_count; i++) {
		const struct tile_piece *piece = &panel->pieces[i];
		pieces.polygons[i] = (struct polygon){piece->ring, piece->holes, piece->hole_count};
	}
	return overlay_offset(arena, &pieces, joint / 2 + TOLERANCE_WHOLE, OVERLAY_MITRE);
}

void draw_cut_tiles(struct sheet *sheet, const struct lay_view *v)
{
	struct arena *arena = sheet->draft->arena;
	const struct tiling *tiling = v->lay->tiling;
	for (size_t i = 0; i < tiling->panel_count; i++) {
		struct panel *panel = &tiling->panels[i];
		struct region ground = {&panel->ground, 1};
		if (lay_view_seen(arena, v, &ground).count == 0)
			continue;
		struct region cut = cut_area(arena, panel, tiling->module->joint);
		struct paper_path area = lay_view_region(arena, v, &cut);
		list_area(sheet->list, LAYER_CUTS, AREA_CUT_TILE, panel->id, area);
		list_stroke(sheet->list, LAYER_CUTS, PEN_CUT, panel->id,
		            lay_view_border(arena, v, &ground));
		if (area.count > 0)
			sheet_use(sheet, LEGEND_CUT_TILE);
	}
}

static void longest_piece(const struct lay_view *v, struct line line, struct paper_point *out_a,
                          struct paper_point *out_b)
{
	size_t best = 0;
	for (size_t i = 1; i + 1 < line.count; i++)
		if (point_distance(line.points[i], line.points[i + 1]) >
		    point_distance(line.points[best], line.points[best + 1]) + 1)
			best = i;
	*out_a = lay_view_point(v, line.points[best]);
	*out_b = lay_view_point(v, line.points[line.count > 1 ? best + 1 : best]);
}

static void draw_covered_crack(struct sheet *sheet, const struct lay_view *v,
                               const struct placed_crack *crack)
{
	const struct draft *draft = sheet->draft;
	const char *text = draft_text(draft, "tag.crack", {"id", draft_tag(draft, crack->id)},
	                              {"width", draft_width(draft, crack->crack->width)});
	for (size_t k = 0; k < crack->run_count; k++) {
		struct line seen = lay_view_named(draft->arena, v, crack->runs[k]);
		struct paper_point a, b;
		struct paper_path path = lay_view_line(draft->arena, v, crack->runs[k]);
		if (path.count == 0)
			continue;
		list_stroke(sheet->list, LAYER_CRACKS, PEN_CRACK_FINE, crack->id, path);
		sheet_use(sheet, LEGEND_CRACK_UNDER);
		if (placed_crack_is_filled(crack, draft->placed->rules)) {
			symbol_fill(sheet->list, crack->id, path);
			sheet_use(sheet, LEGEND_CRACK_FILL);
		}
		if (seen.count < 2)
			continue;
		longest_piece(v, seen, &a, &b);
		draw_tag(sheet, crack->id, LABEL_ROUND, a, b, &text, 1);
	}
}

void draw_covered_cracks(struct sheet *sheet, const struct lay_view *v)
{
	for (size_t i = 0; i < v->lay->cracks->crack_count; i++)
		draw_covered_crack(sheet, v, &v->lay->cracks->cracks[i]);
}

static void draw_seams(struct sheet *sheet, const struct lay_view *v, const struct strip *strip)
{
	struct arena *arena = sheet->draft->arena;
	for (size_t k = 0; k < strip->piece_count; k++) {
		struct polygon shape = strip->pieces[k].shape;
		struct region piece = {&shape, 1};
		list_stroke(sheet->list, LAYER_MEMBRANE, PEN_STRIP_SEAM, strip->id,
		            lay_view_border(arena, v, &piece));
	}
}

/* On a sheet of several rooms a strip through a doorway is named once. */
static bool is_named(const struct sheet *sheet, const struct strip *strip)
{
	for (size_t i = 0; i < sheet->list->labels.count; i++) {
		const struct label *label = &sheet->list->labels.items[i];
		if (label->link && label->element && strcmp(label->element, strip->id) == 0)
			return true;
	}
	return false;
}

static bool is_on(const struct lay_view *v, const struct polygon *shape, struct point at)
{
	return lay_view_has(v, at) && polygon_holds(shape, at);
}

/* What the name of a strip may point at: the middle of a piece, and up to half way from there to
 * its farthest corner, to either side, off the crack and the joints in the middle. Where a column
 * stands there, or the room ends: one point half way to a corner. */
static struct segment place_on(const struct lay_view *v, const struct polygon *shape)
{
	struct ring ring = shape->outline;
	struct point middle = ring_middle(ring), far = middle, half = middle;
	for (size_t i = 0; i < ring.count; i++) {
		struct point at = point_between(middle, ring.points[i], 0.5);
		if (is_on(v, shape, at) && !is_on(v, shape, half))
			half = at;
		if (point_distance(middle, ring.points[i]) > point_distance(middle, far) + 1)
			far = ring.points[i];
	}
	struct point left = point_between(middle, far, -0.5),
		     right = point_between(middle, far, 0.5);
	if (!is_on(v, shape, middle))
		return (struct segment){half, half};
	if (!is_on(v, shape, left) || !is_on(v, shape, right))
		return (struct segment){middle, middle};
	return (struct segment){middle, right};
}

/* Of what is named here of the strip's pieces the largest; NULL: nothing is. */
static const struct polygon *largest_seen(struct arena *arena, const struct lay_view *v,
                                          const struct strip *strip)
{
	const struct polygon *best = NULL;
	for (size_t k = 0; k < strip->piece_count; k++) {
		const struct region piece = {&strip->pieces[k].shape, 1};
		const struct polygon *seen = lay_view_named_most(arena, v, &piece);
		if (seen && (!best || polygon_area(seen) > polygon_area(best) + 1))
			best = seen;
	}
	return best;
}

/* The strip's name points at the largest of its pieces in the room. */
static void tag_strip(struct sheet *sheet, const struct lay_view *v, const struct strip *strip)
{
	const struct draft *draft = sheet->draft;
	const struct polygon *shape = NULL;
	if (!is_named(sheet, strip))
		shape = largest_seen(draft->arena, v, strip);
	if (!shape)
		return;
	struct segment place = place_on(v, shape);
	const char *lines[] = {
		draft_text(draft, "tag.strip", {"crack", draft_tag(draft, strip->cracks[0])},
	                   {"width", draft_length(draft, strip->width)}),
		draft_word(draft, "tag.pending"),
	};
	list_label(sheet->list, &(struct label){.lines = lines,
	                                        .line_count = strip->pending ? 2 : 1,
	                                        .role = TEXT_TAG,
	                                        .layer = LAYER_LABELS,
	                                        .element = strip->id,
	                                        .link = "membrane",
	                                        .where = LABEL_AROUND,
	                                        .a = lay_view_point(v, place.from),
	                                        .b = lay_view_point(v, place.to),
	                                        .priority = 6,
	                                        .can_lead = true,
	                                        .is_dotted = true,
	                                        .is_clear = true});
}

void draw_strips(struct sheet *sheet, const struct lay_view *v)
{
	struct arena *arena = sheet->draft->arena;
	for (size_t i = 0; i < v->lay->strips->strip_count; i++) {
		const struct strip *strip = &v->lay->strips->strips[i];
		struct paper_path path = lay_view_region(arena, v, &strip->region);
		if (path.count == 0)
			continue;
		list_area(sheet->list, LAYER_MEMBRANE,
		          strip->pending ? AREA_STRIP_PENDING : AREA_STRIP, strip->id, path);
		draw_seams(sheet, v, strip);
		list_stroke(sheet->list, LAYER_MEMBRANE,
		            strip->pending ? PEN_STRIP_PENDING : PEN_STRIP, strip->id,
		            lay_view_border(arena, v, &strip->region));
		tag_strip(sheet, v, strip);
		sheet_use(sheet, strip->pending ? LEGEND_STRIP_PENDING : LEGEND_STRIP);
	}
}

/* The warning's own height, or that of a tag where the hold is too small for it. */
static double held_cap(const struct sheet *sheet, const char *text, struct paper_box room)
{
	const struct style *style = sheet->draft->style;
	double width =
		list_text_width(sheet->list, TEXT_WARNING, text) + style->texts[TEXT_WARNING].cap;
	return width < room.x1 - room.x0 ? style->texts[TEXT_WARNING].cap
	                                 : style->texts[TEXT_TAG].cap;
}

/* Places all over the largest part of the hold where the warning fits in, the middle first. */
static size_t held_places(const struct lay_view *v, const struct polygon *seen,
                          struct paper_box room, double wide, double high,
                          struct label_place *places)
{
	struct paper_point middle = {(room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2};
	size_t count = 0;
	for (int i = 0; i < HELD_GRID * HELD_GRID; i++) {
		double x = room.x0 + (room.x1 - room.x0) * (i % HELD_GRID + 1) / (HELD_GRID + 1);
		double y = room.y0 + (room.y1 - room.y0) * (i / HELD_GRID + 1) / (HELD_GRID + 1);
		bool inside = true;
		for (int corner = 0; corner < 4; corner++) {
			struct paper_point p = {x + (corner & 1 ? wide : -wide) / 2,
			                        y + (corner & 2 ? high : -high) / 2};
			struct point at = frame_in(v->lay->field->frame, view_floor(v->view, p));
			inside = inside && polygon_holds(seen, at);
		}
		if (inside)
			places[count++] = (struct label_place){
				.at = {x, y}, .cost = paper_distance(middle, paper_at(x, y)) / 4};
	}
	return count;
}

static void tag_hold(struct sheet *sheet, const struct lay_view *v, const struct hold *hold,
                     struct paper_box room)
{
	const struct draft *draft = sheet->draft;
	const struct polygon *seen = lay_view_named_most(draft->arena, v, &hold->region);
	if (!seen)
		return;
	const char *lines[] = {draft_word(draft, "tag.held"), draft_word(draft, "tag.held-do-not")};
	double cap = held_cap(sheet, lines[1], room);
	double wide = list_text_width(sheet->list, TEXT_WARNING, lines[1]) * cap /
	              draft->style->texts[TEXT_WARNING].cap;
	struct label_place places[HELD_GRID * HELD_GRID];
	size_t count = held_places(v, seen, room, wide + 2 * cap, 4 * cap, places);
	struct paper_point at = lay_view_point(v, ring_middle(seen->outline));
	list_label(sheet->list, &(struct label){.lines = lines,
	                                        .line_count = 2,
	                                        .role = TEXT_WARNING,
	                                        .cap = cap,
	                                        .layer = LAYER_LABELS,
	                                        .element = hold->id,
	                                        .where = LABEL_FIXED,
	                                        .places = places,
	                                        .place_count = count,
	                                        .frame = LABEL_BOX,
	                                        .a = at,
	                                        .b = at,
	                                        .priority = 9,
	                                        .can_lead = true,
	                                        .is_dotted = true,
	                                        .is_clear = true});
}

void draw_holds(struct sheet *sheet, const struct lay_view *v, bool hatched)
{
	for (size_t i = 0; i < v->lay->cracks->hold_count; i++) {
		const struct hold *hold = &v->lay->cracks->holds[i];
		struct paper_path path = lay_view_region(sheet->draft->arena, v, &hold->region);
		if (path.count == 0)
			continue;
		if (hatched)
			list_area(sheet->list, LAYER_HOLDS, AREA_HOLD, hold->id, path);
		list_stroke(sheet->list, LAYER_HOLDS, PEN_HOLD, hold->id,
		            lay_view_border(sheet->draft->arena, v, &hold->region));
		tag_hold(sheet, v, hold, paper_path_box_of(path));
		sheet_use(sheet, hatched ? LEGEND_HOLD : LEGEND_HOLD_LINE);
	}
}
