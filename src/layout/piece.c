#include "layout/piece.h"

#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct piece_judge piece_judge_in(struct arena *arena, struct arena *scratch,
                                  const struct polygon *ground, double remainder)
{
	return (struct piece_judge){
		.arena = arena,
		.scratch = scratch,
		.ground = ground,
		.edges = border_edges_from_polygon(arena, ground),
		.remainder = fmax(remainder, 0),
	};
}

double piece_judge_reach(const struct piece_judge *judge)
{
	return fmax(judge->remainder, TOLERANCE_WHOLE) + TOLERANCE_SAME;
}

static double distance_to_edge(struct border_edge e, struct point p)
{
	return segment_distance((struct segment){e.from, e.to}, p);
}

static double distance_to_near(const struct piece_judge *judge, const size_t *near, size_t count,
                               struct point p)
{
	double least = INFINITY;
	for (size_t i = 0; i < count; i++)
		least = fmin(least, distance_to_edge(judge->edges.edges[near[i]], p));
	return least;
}

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

/* All of the face lies within TOLERANCE_WHOLE of the part. Most faces are settled by the
 * area that is missing, or by a corner; where it could be a thin rim or a small deep notch,
 * the part is grown by the tolerance to see. */
static bool is_whole(struct piece_judge *judge, struct ring face, const struct polygon *part)
{
	double missing = ring_area(face) - polygon_area(part);
	if (missing > TOLERANCE_WHOLE * ring_length(face))
		return false;
	if (missing < TOLERANCE_AREA_MM2)
		return true;
	if (lacks_corner(face, part))
		return false;
	struct region region = {(struct polygon *)part, 1};
	struct region grown =
		overlay_offset(judge->scratch, &region, TOLERANCE_WHOLE, OVERLAY_ROUND);
	struct region whole = region_from_ring(judge->scratch, face);
	struct region beyond = overlay_difference(judge->scratch, &whole, &grown);
	return beyond.count == 0;
}

static double reach_of_part(const struct polygon *part, struct border_edge edge)
{
	double most = 0;
	for (size_t i = 0; i < part->outline.count; i++)
		most = fmax(most, distance_to_edge(edge, part->outline.points[i]));
	return most;
}

/* All of the part lies within the remainder of one edge: the distance from a segment is
 * convex, so its corners tell. */
static bool hugs_an_edge(const struct piece_judge *judge, const struct polygon *part,
                         const size_t *near, size_t near_count)
{
	for (size_t i = 0; i < near_count; i++)
		if (reach_of_part(part, judge->edges.edges[near[i]]) <=
		    judge->remainder + TOLERANCE_SAME)
			return true;
	return false;
}

static double beyond_rim(const struct piece_judge *judge, const size_t *near, size_t near_count,
                         struct point p)
{
	return distance_to_near(judge, near, near_count, p) - judge->remainder;
}

/* A corner of the part, the middle of a side or of the whole is farther than the remainder
 * from the panel's border. */
static bool shows_core(const struct piece_judge *judge, const struct polygon *part,
                       const size_t *near, size_t near_count)
{
	struct ring outline = part->outline;
	for (size_t i = 0; i < outline.count; i++) {
		struct segment side = segment_of_ring(outline, i);
		struct point middle = point_between(side.from, side.to, 0.5);
		if (beyond_rim(judge, near, near_count, side.from) > TOLERANCE_SAME ||
		    beyond_rim(judge, near, near_count, middle) > TOLERANCE_WHOLE)
			return true;
	}
	struct point middle = ring_middle(outline);
	return polygon_holds(part, middle) &&
	       beyond_rim(judge, near, near_count, middle) > TOLERANCE_WHOLE;
}

/* What lies farther than the remainder from the edges that come near the part: no other edge
 * does. */
static struct region beyond_rims(struct piece_judge *judge, const struct polygon *part,
                                 const size_t *near, size_t near_count)
{
	struct region *rims = ARENA_ARRAY(judge->scratch, struct region, near_count);
	for (size_t i = 0; i < near_count; i++) {
		struct point ends[2] = {judge->edges.edges[near[i]].from,
		                        judge->edges.edges[near[i]].to};
		rims[i] = overlay_band(judge->scratch, (struct line){ends, 2}, judge->remainder);
	}
	struct region rim = overlay_union_all(judge->scratch, rims, near_count);
	struct region region = {(struct polygon *)part, 1};
	return overlay_difference(judge->scratch, &region, &rim);
}

/* Some point of the part is farther than the remainder from the panel's border. Most parts
 * show one that proves it, or hug one edge; the others, in corners, lose their rims. */
static bool reaches_core(struct piece_judge *judge, const struct polygon *part, const size_t *near,
                         size_t near_count)
{
	if (shows_core(judge, part, near, near_count))
		return true;
	if (hugs_an_edge(judge, part, near, near_count))
		return false;
	struct region inner = beyond_rims(judge, part, near, near_count);
	return region_area(&inner) > TOLERANCE_AREA_MM2;
}

/* The largest disc in a polygon has at least the radius area / border length. */
static bool holds_disc(struct piece_judge *judge, const struct polygon *part)
{
	const double radius = TOLERANCE_DUST / 2;
	struct region region = {(struct polygon *)part, 1};
	if (region_area(&region) > radius * region_length(&region))
		return true;
	struct region inner = overlay_offset(judge->scratch, &region, -radius, OVERLAY_MITRE);
	return inner.count > 0;
}

/* Where the border crosses itself within rounding, the general overlay decides. */
static struct region cut_by_overlay(struct piece_judge *judge, struct ring face)
{
	struct region panel = {(struct polygon *)judge->ground, 1};
	struct region window = region_from_ring(judge->scratch, face);
	return overlay_intersection(judge->scratch, &window, &panel);
}

static void sort_part(struct piece_judge *judge, const struct polygon *part, struct address at,
                      const size_t *near, size_t near_count, struct piece_list *out)
{
	if (!reaches_core(judge, part, near, near_count) || !holds_disc(judge, part)) {
		out->lost_mm2 += polygon_area(part);
		return;
	}
	struct tile_piece piece = {.at = at, .area_mm2 = polygon_area(part)};
	piece.ring = ring_copy(judge->arena, part->outline.points, part->outline.count);
	piece.hole_count = part->hole_count;
	piece.holes = ARENA_ARRAY(judge->arena, struct ring, part->hole_count);
	for (size_t h = 0; h < part->hole_count; h++)
		piece.holes[h] =
			ring_copy(judge->arena, part->holes[h].points, part->holes[h].count);
	*array_push(judge->arena, &out->pieces) = piece;
}

enum face_verdict piece_judge_face(struct piece_judge *judge, struct ring face, struct address at,
                                   const size_t *near, size_t near_count, struct piece_list *out)
{
	struct window_parts loops;
	struct region parts;
	if (!window_clip(judge->scratch, face, &judge->edges, near, near_count, &loops))
		parts = cut_by_overlay(judge, face);
	else if (loops.count)
		parts = window_region(judge->scratch, &loops);
	else
		return polygon_holds(judge->ground, ring_middle(face)) ? FACE_WHOLE : FACE_OUTSIDE;
	for (size_t i = 0; i < parts.count; i++)
		if (is_whole(judge, face, &parts.polygons[i]))
			return FACE_WHOLE;
	for (size_t i = 0; i < parts.count; i++)
		sort_part(judge, &parts.polygons[i], at, near, near_count, out);
	return FACE_CUT;
}
