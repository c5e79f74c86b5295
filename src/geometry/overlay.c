#include "geometry/overlay.h"

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "geometry/normal.h"
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
static GEOSGeometry *to_heap(geos g, const struct region *region)
{
	GEOSGeometry **parts = calloc(region->count + 1, sizeof *parts);
	if (!parts)
		arena_out_of_memory();
	for (size_t i = 0; i < region->count; i++)
		parts[i] = to_polygon(g, &region->polygons[i]);
	GEOSGeometry *heap = must(
		GEOSGeom_createCollection_r(g, GEOS_MULTIPOLYGON, parts, (unsigned)region->count));
	free(parts);
	return heap;
}

static GEOSGeometry *dissolve(geos g, GEOSGeometry *heap)
{
	GEOSGeometry *united = must(GEOSUnaryUnion_r(g, heap));
	GEOSGeom_destroy_r(g, heap);
	return united;
}

static struct box box_of(const struct polygon *polygon)
{
	return ring_box(polygon->outline);
}

static bool may_touch(const struct region *region)
{
	for (size_t i = 1; i < region->count; i++) {
		struct box box = box_grown(box_of(&region->polygons[i]), TOLERANCE_SAME);
		for (size_t k = 0; k < i; k++)
			if (box_meets(box, box_of(&region->polygons[k])))
				return true;
	}
	return false;
}

/* A valid operand: polygons of one region that touch along an edge become one. */
static GEOSGeometry *to_operand(geos g, const struct region *region)
{
	GEOSGeometry *heap = to_heap(g, region);
	return may_touch(region) ? dissolve(g, heap) : heap;
}

/* The polygons that may have to do with the ground of another region: of a large floor few. */
static struct region near_to(struct arena *arena, const struct region *region,
                             const struct region *other)
{
	struct box box = box_grown(region_box(other), TOLERANCE_SAME);
	struct region near = {ARENA_ARRAY(arena, struct polygon, region->count), 0};
	for (size_t i = 0; i < region->count; i++)
		if (box_meets(box, box_of(&region->polygons[i])))
			near.polygons[near.count++] = region->polygons[i];
	return near;
}

/* ---- back from GEOS ---- */

static double settled(double x)
{
	return nearbyint(x * TOLERANCE_STEPS_PER_MM) / TOLERANCE_STEPS_PER_MM;
}

/* `settle` where the coordinates were computed by sines and roots, not passed through. */
static struct ring from_ring(struct arena *arena, geos g, const GEOSGeometry *from, bool settle)
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
	return (struct ring){points, count};
}

static struct polygon from_polygon(struct arena *arena, geos g, const GEOSGeometry *from,
                                   bool settle)
{
	int count = GEOSGetNumInteriorRings_r(g, from);
	struct polygon polygon = {from_ring(arena, g, GEOSGetExteriorRing_r(g, from), settle),
	                          ARENA_ARRAY(arena, struct ring, (size_t)count), (size_t)count};
	for (int i = 0; i < count; i++)
		polygon.holes[i] = from_ring(arena, g, GEOSGetInteriorRingN_r(g, from, i), settle);
	return polygon;
}

/* Takes `from` over. Points and lines where borders only touch are no ground. */
static struct region from_geometry(struct arena *arena, geos g, GEOSGeometry *from, bool settle)
{
	int count = GEOSGetNumGeometries_r(g, from);
	struct region region = {ARENA_ARRAY(arena, struct polygon, (size_t)count), 0};
	for (int i = 0; i < count; i++) {
		const GEOSGeometry *part = GEOSGetGeometryN_r(g, from, i);
		if (GEOSGeomTypeId_r(g, part) == GEOS_POLYGON && !GEOSisEmpty_r(g, part))
			region.polygons[region.count++] = from_polygon(arena, g, part, settle);
	}
	GEOSGeom_destroy_r(g, from);
	return normal_region(arena, region);
}

/* ---- operations ---- */

/* All polygons of the regions side by side, their rings copied. */
static struct region side_by_side(struct arena *arena, const struct region *regions, size_t count)
{
	size_t total = 0;
	for (size_t i = 0; i < count; i++)
		total += regions[i].count;
	struct region all = {ARENA_ARRAY(arena, struct polygon, total), 0};
	for (size_t i = 0; i < count; i++)
		for (size_t k = 0; k < regions[i].count; k++)
			all.polygons[all.count++] = polygon_copy(arena, &regions[i].polygons[k]);
	return all;
}

struct region overlay_union_all(struct arena *arena, const struct region *regions, size_t count)
{
	struct region all = side_by_side(arena, regions, count);
	if (!may_touch(&all))
		return normal_region(arena, all);
	geos g = begin();
	struct region result = from_geometry(arena, g, dissolve(g, to_heap(g, &all)), false);
	GEOS_finish_r(g);
	return result;
}

struct region overlay_union(struct arena *arena, const struct region *a, const struct region *b)
{
	const struct region both[] = {*a, *b};
	return overlay_union_all(arena, both, 2);
}

/* A set operation as GEOS has it, and the same on a grid. */
struct operation {
	GEOSGeometry *(*plain)(geos, const GEOSGeometry *, const GEOSGeometry *);
	GEOSGeometry *(*on_grid)(geos, const GEOSGeometry *, const GEOSGeometry *, double);
	double apart; /* what the result measures where the two have no ground in common, mm2 */
};

/* Where borders nearly run one on the other GEOS 3.11 may find no ground in common, though there
 * is: such an answer is asked for again on a grid, which is slower and always right. */
static struct region operate(struct arena *arena, const struct region *a, const struct region *b,
                             struct operation operation)
{
	geos g = begin();
	GEOSGeometry *left = to_operand(g, a), *right = to_operand(g, b);
	struct region result =
		from_geometry(arena, g, must(operation.plain(g, left, right)), false);
	double common = fabs(region_area(&result) - operation.apart);
	if (a->count > 0 && b->count > 0 && common < TOLERANCE_AREA_MM2) {
		GEOSGeometry *again = operation.on_grid(g, left, right, 1 / TOLERANCE_STEPS_PER_MM);
		struct region sure = from_geometry(arena, g, must(again), false);
		if (fabs(region_area(&sure) - operation.apart) > TOLERANCE_DOUBT_MM2)
			result = sure;
	}
	GEOSGeom_destroy_r(g, left);
	GEOSGeom_destroy_r(g, right);
	GEOS_finish_r(g);
	return result;
}

struct region overlay_difference(struct arena *arena, const struct region *a,
                                 const struct region *b)
{
	struct region near = near_to(arena, b, a);
	return operate(arena, a, &near,
	               (struct operation){GEOSDifference_r, GEOSDifferencePrec_r, region_area(a)});
}

struct region overlay_intersection(struct arena *arena, const struct region *a,
                                   const struct region *b)
{
	struct region left = near_to(arena, a, b), right = near_to(arena, b, a);
	return operate(arena, &left, &right,
	               (struct operation){GEOSIntersection_r, GEOSIntersectionPrec_r, 0});
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
