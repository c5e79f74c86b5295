#include "layout/field.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"
#include "layout/carried.h"
#include "layout/inset.h"
#include "layout/relocated.h"
#include "units/length.h"

/* Borders of the ground with the gap each one keeps. */
struct source {
	struct site_edge edge; /* in the lay's axes */
	struct point along;    /* its direction */
	double gap;
};

struct making {
	struct arena *arena;
	const struct site *site;
	const struct rules *rules;
	struct field *field;
	ARRAY_OF(struct source) sources;
	double *shares; /* room for the breaks of one edge */
};

static double gap_of_kind(const struct field *field, enum site_edge_kind kind)
{
	return kind == SITE_EDGE_OPEN || kind == SITE_EDGE_DRAIN ? 0 : field->gap;
}

static struct site_edge edge_in_frame(struct frame frame, struct site_edge edge)
{
	edge.from = frame_in(frame, edge.from);
	edge.to = frame_in(frame, edge.to);
	return edge;
}

static void add_room_sources(struct making *making, const struct site_room *room)
{
	size_t count;
	const struct site_edge *edges = site_room_borders(making->arena, room, &count);
	for (size_t i = 0; i < count; i++) {
		struct site_edge edge = edge_in_frame(making->field->frame, edges[i]);
		*array_push(making->arena, &making->sources) = (struct source){
			.edge = edge,
			.along = point_unit(point_sub(edge.to, edge.from)),
			.gap = gap_of_kind(making->field, edge.kind),
		};
	}
}

static void find_rooms(struct making *making)
{
	struct field *field = making->field;
	size_t count = field->lay->room_count;
	field->rooms = ARENA_ARRAY(making->arena, const struct site_room *, count);
	field->room_grounds = ARENA_ARRAY(making->arena, struct region, count);
	for (size_t i = 0; i < count; i++) {
		const struct site_room *room =
			site_room_find(making->site, field->lay->rooms[i]->id);
		struct region ground = site_room_ground(making->arena, room);
		field->room_grounds[i] = frame_region_in(making->arena, field->frame, &ground);
		field->rooms[field->room_count++] = room;
		add_room_sources(making, room);
	}
}

static struct region bare_slab(struct making *making)
{
	struct arena *arena = making->arena;
	ARRAY_OF(struct region) grounds = {0};
	ARRAY_OF(struct region) obstacles = {0};
	for (size_t i = 0; i < making->field->room_count; i++) {
		const struct site_room *room = making->field->rooms[i];
		*array_push(arena, &grounds) = site_room_ground(arena, room);
		for (size_t o = 0; o < room->obstacle_count; o++)
			*array_push(arena, &obstacles) =
				region_from_ring(arena, room->obstacles[o].ring);
	}
	struct region ground = overlay_union_all(arena, grounds.items, grounds.count);
	struct region taken = overlay_union_all(arena, obstacles.items, obstacles.count);
	struct region bare = overlay_difference(arena, &ground, &taken);
	return frame_region_in(arena, making->field->frame, &bare);
}

/* A source moved inwards by its gap (or not); a mitre carries the moved edge past its ends. */
static struct segment source_line(const struct source *source, bool moved, bool with_mitres)
{
	double gap = moved ? source->gap : 0;
	struct point in = point_scale(point_left(source->along), gap);
	struct point past = point_scale(source->along, with_mitres ? gap : 0);
	return (struct segment){point_sub(point_add(source->edge.from, in), past),
	                        point_add(point_add(source->edge.to, in), past)};
}

/* Distance of an edge from a source that runs the same way; infinite where it does not. */
static double distance_from_source(const struct source *source, bool moved, struct segment edge)
{
	double off = point_cross(source->along, point_sub(edge.from, source->edge.from));
	if (fabs(off - (moved ? source->gap : 0)) > TOLERANCE_ORIGIN ||
	    point_dot(source->along, point_sub(edge.to, edge.from)) <= 0)
		return INFINITY;
	struct segment line = source_line(source, moved, true);
	return fmax(segment_distance(line, point_between(edge.from, edge.to, 0.25)),
	            segment_distance(line, point_between(edge.from, edge.to, 0.75)));
}

/* The source an edge of the ground (or, `moved`, of the field) comes from. */
static const struct source *find_source(const struct making *making, bool moved,
                                        struct segment edge)
{
	const struct source *best = NULL;
	double least = TOLERANCE_ORIGIN;
	for (size_t i = 0; i < making->sources.count; i++) {
		const struct source *source = &making->sources.items[i];
		double distance = distance_from_source(source, moved, edge);
		if (distance < least) {
			least = distance;
			best = source;
		}
	}
	return best;
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

/* Shares of an edge at which it passes from one source to the next (a wall, a doorway in
 * line with it, the wall again): the overlay has made one edge of them. 0 is always the first
 * of making->shares. */
static size_t breaks_of_edge(const struct making *making, bool moved, struct segment edge)
{
	double length = segment_length(edge), *shares = making->shares;
	size_t count = 1;
	shares[0] = 0;
	for (size_t i = 0; i < making->sources.count; i++) {
		const struct source *source = &making->sources.items[i];
		double off = point_cross(source->along, point_sub(edge.from, source->edge.from));
		if (fabs(off - (moved ? source->gap : 0)) >
		    TOLERANCE_ORIGIN + length * TOLERANCE_PARALLEL)
			continue;
		struct segment line = source_line(source, moved, false);
		struct point ends[] = {line.from, line.to};
		for (int e = 0; e < 2; e++) {
			double along = point_dot(point_sub(ends[e], edge.from),
			                         point_sub(edge.to, edge.from)) /
			               length;
			if (along > TOLERANCE_ORIGIN && along < length - TOLERANCE_ORIGIN &&
			    segment_distance(edge, ends[e]) < TOLERANCE_ORIGIN)
				shares[count++] = along / length;
		}
	}
	qsort(shares, count, sizeof *shares, by_value);
	size_t kept = 1;
	for (size_t i = 1; i < count; i++)
		if ((shares[i] - shares[kept - 1]) * length > TOLERANCE_ORIGIN)
			shares[kept++] = shares[i];
	return kept;
}

/* The ring with a point wherever one source gives way to the next. */
static struct ring broken_ring(const struct making *making, bool moved, struct ring ring)
{
	ARRAY_OF(struct point) points = {0};
	const double *shares = making->shares;
	for (size_t i = 0; i < ring.count; i++) {
		struct segment edge = segment_of_ring(ring, i);
		size_t count = breaks_of_edge(making, moved, edge);
		const struct source *before = NULL;
		for (size_t k = 0; k < count; k++) {
			double end = k + 1 < count ? shares[k + 1] : 1;
			struct segment part = {point_between(edge.from, edge.to, shares[k]),
			                       point_between(edge.from, edge.to, end)};
			const struct source *source =
				count > 1 ? find_source(making, moved, part) : NULL;
			if (k == 0 || source != before)
				*array_push(making->arena, &points) = part.from;
			before = source;
		}
	}
	return (struct ring){points.items, points.count};
}

static struct region broken_region(const struct making *making, const struct region *region)
{
	struct arena *arena = making->arena;
	struct region broken = {ARENA_ARRAY(arena, struct polygon, region->count), region->count};
	for (size_t i = 0; i < region->count; i++) {
		const struct polygon *from = &region->polygons[i];
		struct polygon *to = &broken.polygons[i];
		*to = (struct polygon){broken_ring(making, false, from->outline),
		                       ARENA_ARRAY(arena, struct ring, from->hole_count),
		                       from->hole_count};
		for (size_t h = 0; h < from->hole_count; h++)
			to->holes[h] = broken_ring(making, false, from->holes[h]);
	}
	return broken;
}

static double gap_of_edge(const void *context, struct ring ring, size_t i)
{
	const struct source *source = find_source(context, false, segment_of_ring(ring, i));
	return source ? source->gap : 0;
}

bool field_is_askew(struct point from, struct point to)
{
	struct point along = point_unit(point_sub(to, from));
	return fmin(fabs(along.x), fabs(along.y)) > TOLERANCE_SQUARE;
}

bool field_has_askew(const struct field *field, const char *of)
{
	for (size_t i = 0; i < field->border_count; i++) {
		const struct field_border *border = &field->borders[i];
		if (strcmp(border->of, of) == 0 && field_is_askew(border->from, border->to))
			return true;
	}
	return false;
}

bool field_is_outdoor(const struct field *field)
{
	for (size_t i = 0; i < field->room_count; i++)
		if (site_room_is_exposed(field->rooms[i], PLAN_EXPOSURE_OUTDOOR))
			return true;
	return false;
}

static void take_carried(struct making *making)
{
	struct arena *arena = making->arena;
	struct field *field = making->field;
	field->relocated = relocated_place(arena, field, &field->relocated_count);
	field->carried = carried_place(arena, field, making->rules, field_is_outdoor(field),
	                               &field->carried_count);
	struct region *bands = ARENA_ARRAY(arena, struct region, field->carried_count);
	for (size_t i = 0; i < field->carried_count; i++)
		bands[i] = field->carried[i].band;
	struct region open = overlay_union_all(arena, bands, field->carried_count);
	if (open.count > 0)
		field->region = overlay_difference(arena, &field->region, &open);
}

static double rounded(double length)
{
	return nearbyint(length / TOLERANCE_LEVEL) * TOLERANCE_LEVEL;
}

static int south_west_first(const void *a, const void *b)
{
	struct box x = ring_box(((const struct polygon *)a)->outline);
	struct box y = ring_box(((const struct polygon *)b)->outline);
	double south = rounded(x.y0 - y.y0), west = rounded(x.x0 - y.x0);
	if (south != 0)
		return south < 0 ? -1 : 1;
	if (west != 0)
		return west < 0 ? -1 : 1;
	double area = ring_area(((const struct polygon *)a)->outline) -
	              ring_area(((const struct polygon *)b)->outline);
	return area > 0 ? -1 : area < 0;
}

static const struct field_carried *carried_beside(const struct field *field, struct segment edge)
{
	struct point middle = point_between(edge.from, edge.to, 0.5);
	for (size_t i = 0; i < field->carried_count; i++)
		if (region_distance(&field->carried[i].band, middle) < TOLERANCE_WHOLE)
			return &field->carried[i];
	return NULL;
}

static struct field_border border_of_edge(const struct making *making, size_t part,
                                          struct segment edge)
{
	struct field_border border = {.part = part, .from = edge.from, .to = edge.to, .show = true};
	const struct source *source = find_source(making, true, edge);
	if (source) {
		border.of = source->edge.id;
		border.kind = source->edge.kind;
		border.base = source->edge.base;
		border.show = source->edge.show;
		border.gap = source->gap;
		border.is_doorway =
			source->edge.kind == SITE_EDGE_JAMB || source->edge.kind == SITE_EDGE_STOP;
		return border;
	}
	const struct field_carried *carried = carried_beside(making->field, edge);
	border.is_carried = true;
	border.of = carried ? carried->of : making->field->lay->id;
	return border;
}

static void list_borders(struct making *making)
{
	struct arena *arena = making->arena;
	struct field *field = making->field;
	ARRAY_OF(struct field_border) borders = {0};
	for (size_t part = 0; part < field->region.count; part++) {
		const struct polygon *polygon = &field->region.polygons[part];
		for (size_t r = 0; r <= polygon->hole_count; r++) {
			struct ring ring =
				broken_ring(making, true,
			                    r ? polygon->holes[r - 1] : polygon->outline);
			for (size_t i = 0; i < ring.count; i++)
				*array_push(arena, &borders) =
					border_of_edge(making, part, segment_of_ring(ring, i));
		}
	}
	field->borders = borders.items;
	field->border_count = borders.count;
}

/* Which side of the carried line a border of its band runs on: 1 left, -1 right, 0 neither. */
static int side_of_carried(const struct field_carried *carried, const struct field_border *border)
{
	if (!border->is_carried || border->of != carried->of)
		return 0;
	struct point middle = point_between(border->from, border->to, 0.5);
	double off = point_cross(point_unit(point_sub(carried->to, carried->from)),
	                         point_sub(middle, carried->from));
	if (fabs(fabs(off) - carried->width / 2) > TOLERANCE_WHOLE)
		return 0;
	return off > 0 ? 1 : -1;
}

/* `sides`: room for one a part. */
static bool separates_parts(const struct field *field, const struct field_carried *carried,
                            int *sides)
{
	memset(sides, 0, field->region.count * sizeof *sides);
	for (size_t b = 0; b < field->border_count; b++) {
		int side = side_of_carried(carried, &field->borders[b]);
		int *known = &sides[field->borders[b].part];
		if (side * *known < 0)
			return false;
		if (side != 0)
			*known = side;
	}
	return true;
}

const struct field *field_place(struct arena *arena, const struct site *site,
                                const struct rules *rules, const struct plan_lay *lay,
                                const struct field *before)
{
	struct field *field = ARENA_NEW(arena, struct field);
	struct making making = {.arena = arena, .site = site, .rules = rules, .field = field};
	field->lay = lay;
	field->site = site;
	field->before = before;
	field->frame = frame_from_deg(lay->angle_deg);
	field->gap = length_mm(lay->gap_nm);
	field->gap_max = length_mm(lay->gap_max_nm);
	field->tolerance = length_mm(lay->tolerance_nm);
	find_rooms(&making);
	making.shares = ARENA_ARRAY(arena, double, 2 * making.sources.count + 1);
	field->ground = bare_slab(&making);
	struct region broken = broken_region(&making, &field->ground);
	field->region = inset_region(arena, &broken, gap_of_edge, &making);
	take_carried(&making);
	if (field->region.count)
		qsort(field->region.polygons, field->region.count, sizeof *field->region.polygons,
		      south_west_first);
	field->area_mm2 = region_area(&field->region);
	list_borders(&making);
	int *sides = ARENA_ARRAY(arena, int, field->region.count);
	for (size_t i = 0; i < field->carried_count; i++)
		field->carried[i].separates = separates_parts(field, &field->carried[i], sides);
	return field;
}

size_t field_room_at(const struct field *field, struct point p)
{
	size_t nearest = 0;
	double least = INFINITY;
	for (size_t i = 0; i < field->room_count && least > TOLERANCE_ORIGIN; i++) {
		const struct region *ground = &field->room_grounds[i];
		double distance = region_holds(ground, p) ? 0 : region_distance(ground, p);
		if (distance < least - TOLERANCE_ORIGIN) {
			least = distance;
			nearest = i;
		}
	}
	return nearest;
}
