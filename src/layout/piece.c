#include "layout/piece.h"

#include "geometry/normal.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct piece_judge piece_judge_in(struct arena *arena, struct arena *panel, struct arena *once,
                                  const struct polygon *ground, double remainder)
{
	return (struct piece_judge){
		.arena = arena,
		.once = once,
		.ground = ground,
		.edges = border_edges_from_polygon(panel, ground),
		.remainder = fmax(remainder, 0) + TOLERANCE_CUT,
		.work = {.arena = panel},
	};
}

double piece_judge_reach(const struct piece_judge *judge)
{
	return fmax(judge->remainder, TOLERANCE_WHOLE) + TOLERANCE_SAME;
}

static struct region region_of(const struct window_part *part)
{
	return (struct region){(struct polygon *)&part->shape, 1};
}

/* ---- whole? ---- */

/* Some corner of the face lies beyond the tolerance. What it loses may be less than the
 * overlay would show, so this is asked of the corner itself. */
static bool lacks_corner(struct ring face, const struct polygon *part)
{
	for (size_t i = 0; i < face.count; i++)
		if (!polygon_holds(part, face.points[i]) &&
		    polygon_distance(part, face.points[i]) > TOLERANCE_WHOLE + TOLERANCE_SAME)
			return true;
	return false;
}

static bool is_convex(struct ring ring)
{
	for (size_t i = 0; i < ring.count; i++) {
		struct segment side = segment_of_ring(ring, i);
		struct segment next = segment_of_ring(ring, i + 1 < ring.count ? i + 1 : 0);
		if (point_cross(point_sub(side.to, side.from), point_sub(next.to, next.from)) < 0)
			return false;
	}
	return true;
}

/* All of the face lies within TOLERANCE_WHOLE of the part. Most faces are settled by the area
 * that is missing, or by a corner; from a convex part nothing is farther than the corners. Where
 * it could be a small deep notch, the part is grown by the tolerance to see. */
static bool is_whole(struct piece_judge *judge, const struct piece_face *face,
                     const struct window_part *part)
{
	double missing = face->area_mm2 - part->area_mm2;
	if (missing > TOLERANCE_WHOLE * face->length)
		return false;
	if (missing < TOLERANCE_AREA_MM2)
		return true;
	if (lacks_corner(face->ring, &part->shape))
		return false;
	if (part->shape.hole_count == 0 && is_convex(part->shape.outline))
		return true;
	struct region region = region_of(part);
	struct region grown = overlay_offset(judge->once, &region, TOLERANCE_WHOLE, OVERLAY_ROUND);
	struct region whole = region_from_ring(judge->once, face->ring);
	struct region beyond = overlay_difference(judge->once, &whole, &grown);
	return beyond.count == 0;
}

/* ---- tile, or no tile? ---- */

static struct segment near_edge(const struct piece_judge *judge, const struct piece_face *face,
                                size_t i)
{
	const struct border_edge *edge = &judge->edges.edges[face->near[i]];
	return (struct segment){edge->from, edge->to};
}

/* Everywhere farther than `distance` from the border, as far as it comes near the face. */
static bool is_beyond(const struct piece_judge *judge, const struct piece_face *face,
                      struct point p, double distance)
{
	for (size_t i = 0; i < face->near_count; i++)
		if (segment_distance(near_edge(judge, face, i), p) <= distance)
			return false;
	return true;
}

/* A corner of the part, the middle of a side or of the whole is farther than the remainder
 * from the panel's border. A part begins on the border: its last corners are the likeliest. */
static bool shows_core(const struct piece_judge *judge, const struct piece_face *face,
                       const struct window_part *part)
{
	const double at_corner = judge->remainder;
	const double at_middle = judge->remainder + TOLERANCE_WHOLE;
	struct ring outline = part->shape.outline;
	for (size_t i = outline.count; i-- > 0;) {
		struct segment side = segment_of_ring(outline, i);
		if (is_beyond(judge, face, side.from, at_corner) ||
		    is_beyond(judge, face, point_between(side.from, side.to, 0.5), at_middle))
			return true;
	}
	struct point middle = ring_middle(outline);
	return polygon_holds(&part->shape, middle) && is_beyond(judge, face, middle, at_middle);
}

static double reach_of_part(const struct window_part *part, struct segment edge)
{
	double most = 0;
	for (size_t i = 0; i < part->shape.outline.count; i++)
		most = fmax(most, segment_distance(edge, part->shape.outline.points[i]));
	return most;
}

/* All of the part lies within the remainder of one edge: the distance from a segment is
 * convex, so its corners tell. */
static bool hugs_an_edge(const struct piece_judge *judge, const struct piece_face *face,
                         const struct window_part *part)
{
	for (size_t i = 0; i < face->near_count; i++)
		if (reach_of_part(part, near_edge(judge, face, i)) <= judge->remainder)
			return true;
	return false;
}

/* What lies farther than the remainder from the edges that come near the part: no other edge
 * does. */
static struct region beyond_rims(struct piece_judge *judge, const struct piece_face *face,
                                 const struct window_part *part)
{
	struct region *rims = ARENA_ARRAY(judge->once, struct region, face->near_count);
	for (size_t i = 0; i < face->near_count; i++) {
		struct segment edge = near_edge(judge, face, i);
		struct line line = {(struct point[]){edge.from, edge.to}, 2};
		rims[i] = overlay_band(judge->once, line, judge->remainder);
	}
	struct region rim = overlay_union_all(judge->once, rims, face->near_count);
	struct region region = region_of(part);
	return overlay_difference(judge->once, &region, &rim);
}

/* Some point of the part is farther than the remainder from the panel's border. Most parts
 * show one that proves it, or hug one edge; the others, in corners, lose their rims. */
static bool reaches_core(struct piece_judge *judge, const struct piece_face *face,
                         const struct window_part *part)
{
	if (shows_core(judge, face, part))
		return true;
	if (hugs_an_edge(judge, face, part))
		return false;
	struct region inner = beyond_rims(judge, face, part);
	return region_area(&inner) > TOLERANCE_AREA_MM2;
}

/* The largest disc in a polygon has at least the radius area / border length; a side is at most
 * half as long as the face's border. */
static bool holds_disc(struct piece_judge *judge, const struct piece_face *face,
                       const struct window_part *part)
{
	const double radius = TOLERANCE_DUST / 2;
	struct region region = region_of(part);
	if (part->shape.hole_count == 0 &&
	    part->area_mm2 > radius * (double)part->shape.outline.count * face->length / 2)
		return true;
	if (part->area_mm2 > radius * region_length(&region))
		return true;
	struct region inner = overlay_offset(judge->once, &region, -radius, OVERLAY_MITRE);
	return inner.count > 0;
}

/* ---- the judgement ---- */

static void sort_part(struct piece_judge *judge, const struct piece_face *face,
                      const struct window_part *part, struct piece_list *out)
{
	const struct polygon *shape = &part->shape;
	if (!reaches_core(judge, face, part) || !holds_disc(judge, face, part)) {
		out->lost_mm2 += part->area_mm2;
		return;
	}
	struct tile_piece piece = {.at = face->at, .area_mm2 = part->area_mm2};
	piece.ring = ring_copy(judge->arena, shape->outline.points, shape->outline.count);
	piece.ring.count = normal_corners(piece.ring.points, piece.ring.count, TOLERANCE_LEVEL);
	piece.box = ring_box(piece.ring);
	piece.hole_count = shape->hole_count;
	if (piece.hole_count > 0)
		piece.holes = ARENA_ARRAY(judge->arena, struct ring, piece.hole_count);
	for (size_t h = 0; h < piece.hole_count; h++)
		piece.holes[h] =
			ring_copy(judge->arena, shape->holes[h].points, shape->holes[h].count);
	*array_push(judge->arena, &out->pieces) = piece;
}

/* Where the border crosses itself within rounding, the general overlay decides. */
static void cut_by_overlay(struct piece_judge *judge, struct ring face)
{
	struct region panel = {(struct polygon *)judge->ground, 1};
	struct region window = region_from_ring(judge->once, face);
	struct region parts = overlay_intersection(judge->once, &window, &panel);
	judge->work.parts.count = 0;
	for (size_t i = 0; i < parts.count; i++)
		*array_push(judge->work.arena, &judge->work.parts) =
			(struct window_part){parts.polygons[i], polygon_area(&parts.polygons[i])};
}

enum face_verdict piece_judge_face(struct piece_judge *judge, const struct piece_face *face,
                                   struct piece_list *out)
{
	enum face_verdict verdict = FACE_CUT;
	bool is_clipped =
		window_clip(&judge->work, face->ring, &judge->edges, face->near, face->near_count);
	if (!is_clipped)
		cut_by_overlay(judge, face->ring);
	const struct window_part *parts = judge->work.parts.items;
	size_t count = judge->work.parts.count;
	if (is_clipped && judge->work.loops.count == 0)
		return face->is_inside ? FACE_WHOLE : FACE_OUTSIDE;
	for (size_t i = 0; i < count && verdict != FACE_WHOLE; i++)
		if (is_whole(judge, face, &parts[i]))
			verdict = FACE_WHOLE;
	for (size_t i = 0; i < count && verdict != FACE_WHOLE; i++)
		sort_part(judge, face, &parts[i], out);
	arena_clear(judge->once);
	return verdict;
}
