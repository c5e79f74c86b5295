#include "geometry/overlay.h"

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "geometry/tolerance.h"

/* Of a round corner or end. */
#define QUARTER_SEGMENTS 16
/* A mitre longer than this many times the distance is cut off (corners under 12 degrees). */
#define MITRE_LIMIT 10.0

typedef GEOSContextHandle_t geos; /* GEOS's own handle, by a short name */

/* ---- into GEOS and its failures ---- */

/* The handler of GEOS's errors, which are what() of C++ exceptions. */
static void end_process(const char *message, void *unused)
{
	(void)unused;
	if (strcmp(message, "std::bad_alloc") == 0)
		arena_out_of_memory();
	fprintf(stderr, "jurystick: geometry: %s\n", message);
	abort();
}

/* GEOS lets an exception out where it has no memory for a handle: there must be some. */
static void make_sure_of_handle(void)
{
	enum { HANDLE_BYTES = 8192 };
	void *block = malloc(HANDLE_BYTES);
	if (!block)
		arena_out_of_memory();
	free(block);
}

static geos begin(void)
{
	make_sure_of_handle();
	geos g = GEOS_init_r();
	if (!g)
		arena_out_of_memory();
	GEOSContext_setErrorMessageHandler_r(g, end_process, NULL);
	return g;
}

/* Every call that can fail has told the handler; NULL without a word is no memory. */
static GEOSGeometry *must(GEOSGeometry *geometry)
{
	if (!geometry)
		arena_out_of_memory();
	return geometry;
}

static GEOSCoordSequence *to_sequence(geos g, const struct point *points, size_t count, bool close)
{
	GEOSCoordSequence *sequence = GEOSCoordSeq_create_r(g, (unsigned)(count + close), 2);
	if (!sequence)
		arena_out_of_memory();
	for (size_t i = 0; i < count + close; i++) {
		struct point p = points[i < count ? i : 0];
		GEOSCoordSeq_setXY_r(g, sequence, (unsigned)i, p.x, p.y);
	}
	return sequence;
}

static GEOSGeometry *to_ring(geos g, struct ring ring)
{
	return must(GEOSGeom_createLinearRing_r(g, to_sequence(g, ring.points, ring.count, true)));
}

static GEOSGeometry *to_polygon(geos g, const struct polygon *polygon)
{
	GEOSGeometry **holes = calloc(polygon->hole_count + 1, sizeof *holes);
	if (!holes)
		arena_out_of_memory();
	for (size_t i = 0; i < polygon->hole_count; i++)
		holes[i] = to_ring(g, polygon->holes[i]);
	GEOSGeometry *result = must(GEOSGeom_createPolygon_r(g, to_ring(g, polygon->outline), holes,
	                                                     (unsigned)polygon->hole_count));
	free(holes);
	return result;
}

/* All polygons side by side; they may overlap. */
static GEOSGeometry *to_heap(geos g, const struct region *regions, size_t count)
{
	size_t total = 0, filled = 0;
	for (size_t i = 0; i < count; i++)
		total += regions[i].count;
	GEOSGeometry **parts = calloc(total + 1, sizeof *parts);
	if (!parts)
		arena_out_of_memory();
	for (size_t i = 0; i < count; i++)
		for (size_t k = 0; k < regions[i].count; k++)
			parts[filled++] = to_polygon(g, &regions[i].polygons[k]);
	GEOSGeometry *heap =
		must(GEOSGeom_createCollection_r(g, GEOS_MULTIPOLYGON, parts, (unsigned)total));
	free(parts);
	return heap;
}

static GEOSGeometry *dissolve(geos g, GEOSGeometry *heap)
{
	GEOSGeometry *united = must(GEOSUnaryUnion_r(g, heap));
	GEOSGeom_destroy_r(g, heap);
	return united;
}

/* A valid operand: polygons of one region that touch along an edge become one. */
static GEOSGeometry *to_operand(geos g, const struct region *region)
{
	GEOSGeometry *heap = to_heap(g, region, 1);
	return region->count > 1 ? dissolve(g, heap) : heap;
}

/* ---- back from GEOS, normalised ---- */

static double settled(double x)
{
	return nearbyint(x * TOLERANCE_STEPS_PER_MM) / TOLERANCE_STEPS_PER_MM;
}

static bool is_needless(struct point before, struct point p, struct point after)
{
	struct point chord = point_sub(after, before);
	double length = point_length(chord);
	if (point_distance(before, p) <= TOLERANCE_SAME || length <= TOLERANCE_SAME)
		return true;
	return fabs(point_cross(chord, point_sub(p, before))) <= TOLERANCE_SAME * length;
}

/* Drops corners that are none, until every one left is needed. */
static size_t without_needless(struct point *points, size_t count)
{
	bool changed = true;
	while (changed && count >= 3) {
		changed = false;
		size_t kept = 0;
		for (size_t i = 0; i < count; i++) {
			struct point before = kept > 0 ? points[kept - 1] : points[count - 1];
			struct point after = i + 1 < count ? points[i + 1] : points[0];
			if (is_needless(before, points[i], after))
				changed = true;
			else
				points[kept++] = points[i];
		}
		count = kept;
	}
	return count < 3 ? 0 : count;
}

/* The start does not hang on the last bits of x: among the leftmost the lowest. */
static size_t least_point(const struct point *points, size_t count)
{
	double x0 = INFINITY;
	size_t least = count;
	for (size_t i = 0; i < count; i++)
		x0 = fmin(x0, points[i].x);
	for (size_t i = 0; i < count; i++)
		if (points[i].x <= x0 + TOLERANCE_SAME &&
		    (least == count || points[i].y < points[least].y))
			least = i;
	return least;
}

static struct ring normal_ring(struct arena *arena, const struct point *points, size_t count,
                               bool anticlockwise)
{
	struct ring ring =
		ring_turned(arena, (struct ring){(struct point *)points, count}, anticlockwise);
	ring.count = without_needless(ring.points, ring.count);
	if (ring.count == 0 || fabs(ring_area(ring)) < TOLERANCE_AREA_MM2)
		return (struct ring){NULL, 0};
	struct ring normal = {ARENA_ARRAY(arena, struct point, ring.count), ring.count};
	size_t first = least_point(ring.points, ring.count);
	for (size_t i = 0; i < ring.count; i++)
		normal.points[i] = ring.points[(first + i) % ring.count];
	return normal;
}

/* `settle` where the coordinates were computed by sines and roots, not passed through. */
static struct ring from_ring(struct arena *arena, geos g, const GEOSGeometry *from,
                             bool anticlockwise, bool settle)
{
	const GEOSCoordSequence *sequence = GEOSGeom_getCoordSeq_r(g, from);
	unsigned size = 0;
	GEOSCoordSeq_getSize_r(g, sequence, &size);
	size_t count = size > 0 ? size - 1 : 0; /* the first point is repeated */
	struct point *points = ARENA_ARRAY(arena, struct point, count);
	for (unsigned i = 0; i < count; i++) {
		GEOSCoordSeq_getXY_r(g, sequence, i, &points[i].x, &points[i].y);
		if (settle)
			points[i] = (struct point){settled(points[i].x), settled(points[i].y)};
	}
	return normal_ring(arena, points, count, anticlockwise);
}

/* Largest first, by areas and places rounded to their tolerance. */
static int compare_rings(struct ring a, struct ring b, double area_a, double area_b)
{
	struct box box_a = ring_box(a), box_b = ring_box(b);
	const double keys[][2] = {
		{nearbyint(area_b / TOLERANCE_AREA_MM2), nearbyint(area_a / TOLERANCE_AREA_MM2)},
		{nearbyint(box_a.x0 / TOLERANCE_SAME), nearbyint(box_b.x0 / TOLERANCE_SAME)},
		{nearbyint(box_a.y0 / TOLERANCE_SAME), nearbyint(box_b.y0 / TOLERANCE_SAME)},
		{nearbyint(box_a.x1 / TOLERANCE_SAME), nearbyint(box_b.x1 / TOLERANCE_SAME)},
		{nearbyint(box_a.y1 / TOLERANCE_SAME), nearbyint(box_b.y1 / TOLERANCE_SAME)},
	};
	for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
		if (keys[i][0] != keys[i][1])
			return keys[i][0] < keys[i][1] ? -1 : 1;
	return 0;
}

static int compare_polygons(const void *a, const void *b)
{
	const struct polygon *p = a, *q = b;
	return compare_rings(p->outline, q->outline, polygon_area(p), polygon_area(q));
}

static int compare_holes(const void *a, const void *b)
{
	const struct ring *p = a, *q = b;
	return compare_rings(*p, *q, -ring_area(*p), -ring_area(*q));
}

static struct polygon from_polygon(struct arena *arena, geos g, const GEOSGeometry *from,
                                   bool settle)
{
	struct polygon polygon = {
		.outline = from_ring(arena, g, GEOSGetExteriorRing_r(g, from), true, settle)};
	int count = GEOSGetNumInteriorRings_r(g, from);
	polygon.holes = ARENA_ARRAY(arena, struct ring, (size_t)count);
	for (int i = 0; i < count; i++) {
		struct ring hole =
			from_ring(arena, g, GEOSGetInteriorRingN_r(g, from, i), false, settle);
		if (hole.count > 0)
			polygon.holes[polygon.hole_count++] = hole;
	}
	if (polygon.hole_count > 1)
		qsort(polygon.holes, polygon.hole_count, sizeof *polygon.holes, compare_holes);
	return polygon;
}

/* Takes `from` over. Points and lines where borders only touch are no ground. */
static struct region from_geometry(struct arena *arena, geos g, GEOSGeometry *from, bool settle)
{
	ARRAY_OF(struct polygon) polygons = {0};
	int count = GEOSGetNumGeometries_r(g, from);
	for (int i = 0; i < count; i++) {
		const GEOSGeometry *part = GEOSGetGeometryN_r(g, from, i);
		if (GEOSGeomTypeId_r(g, part) != GEOS_POLYGON || GEOSisEmpty_r(g, part))
			continue;
		struct polygon polygon = from_polygon(arena, g, part, settle);
		if (polygon.outline.count > 0 && polygon_area(&polygon) >= TOLERANCE_AREA_MM2)
			*array_push(arena, &polygons) = polygon;
	}
	GEOSGeom_destroy_r(g, from);
	if (polygons.count > 1)
		qsort(polygons.items, polygons.count, sizeof *polygons.items, compare_polygons);
	return (struct region){polygons.items, polygons.count};
}

/* ---- operations ---- */

struct region overlay_union_all(struct arena *arena, const struct region *regions, size_t count)
{
	geos g = begin();
	struct region result =
		from_geometry(arena, g, dissolve(g, to_heap(g, regions, count)), false);
	GEOS_finish_r(g);
	return result;
}

struct region overlay_union(struct arena *arena, const struct region *a, const struct region *b)
{
	const struct region both[] = {*a, *b};
	return overlay_union_all(arena, both, 2);
}

typedef GEOSGeometry *operation(geos, const GEOSGeometry *, const GEOSGeometry *);

static struct region operate(struct arena *arena, const struct region *a, const struct region *b,
                             operation *operate_on)
{
	geos g = begin();
	GEOSGeometry *left = to_operand(g, a), *right = to_operand(g, b);
	struct region result = from_geometry(arena, g, must(operate_on(g, left, right)), false);
	GEOSGeom_destroy_r(g, left);
	GEOSGeom_destroy_r(g, right);
	GEOS_finish_r(g);
	return result;
}

struct region overlay_difference(struct arena *arena, const struct region *a,
                                 const struct region *b)
{
	return operate(arena, a, b, GEOSDifference_r);
}

struct region overlay_intersection(struct arena *arena, const struct region *a,
                                   const struct region *b)
{
	return operate(arena, a, b, GEOSIntersection_r);
}

/* Takes `from` over. */
static GEOSGeometry *grow(geos g, GEOSGeometry *from, double distance, enum overlay_join join)
{
	static const int styles[] = {
		[OVERLAY_MITRE] = GEOSBUF_JOIN_MITRE,
		[OVERLAY_ROUND] = GEOSBUF_JOIN_ROUND,
		[OVERLAY_BEVEL] = GEOSBUF_JOIN_BEVEL,
	};
	GEOSBufferParams *params = GEOSBufferParams_create_r(g);
	if (!params)
		arena_out_of_memory();
	GEOSBufferParams_setEndCapStyle_r(g, params, GEOSBUF_CAP_ROUND);
	GEOSBufferParams_setJoinStyle_r(g, params, styles[join]);
	GEOSBufferParams_setMitreLimit_r(g, params, MITRE_LIMIT);
	GEOSBufferParams_setQuadrantSegments_r(g, params, QUARTER_SEGMENTS);
	GEOSGeometry *grown = must(GEOSBufferWithParams_r(g, from, params, distance));
	GEOSBufferParams_destroy_r(g, params);
	GEOSGeom_destroy_r(g, from);
	return grown;
}

struct region overlay_offset(struct arena *arena, const struct region *region, double distance,
                             enum overlay_join join)
{
	geos g = begin();
	GEOSGeometry *grown = grow(g, to_operand(g, region), distance, join);
	struct region result = from_geometry(arena, g, grown, true);
	GEOS_finish_r(g);
	return result;
}

static GEOSGeometry *to_line(geos g, struct line line)
{
	GEOSCoordSequence *sequence = to_sequence(g, line.points, line.count, false);
	return must(line.count == 1 ? GEOSGeom_createPoint_r(g, sequence)
	                            : GEOSGeom_createLineString_r(g, sequence));
}

struct region overlay_band(struct arena *arena, struct line line, double distance)
{
	if (line.count == 0)
		return (struct region){NULL, 0};
	geos g = begin();
	GEOSGeometry *grown = grow(g, to_line(g, line), distance, OVERLAY_ROUND);
	struct region result = from_geometry(arena, g, grown, true);
	GEOS_finish_r(g);
	return result;
}

bool overlay_is_simple(struct ring ring)
{
	if (ring.count < 3 || fabs(ring_area(ring)) < TOLERANCE_AREA_MM2)
		return false;
	for (size_t i = 0; i < ring.count; i++)
		if (!isfinite(ring.points[i].x) || !isfinite(ring.points[i].y))
			return false;
	geos g = begin();
	GEOSGeometry *polygon = to_polygon(g, &(struct polygon){.outline = ring});
	bool simple = GEOSisValid_r(g, polygon) == 1;
	GEOSGeom_destroy_r(g, polygon);
	GEOS_finish_r(g);
	return simple;
}

const char *overlay_library(void)
{
	return "GEOS " GEOS_VERSION;
}
