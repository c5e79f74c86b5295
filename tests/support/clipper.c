#include "support/clipper.h"

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>
#include <stdlib.h>

struct clipper {
	GEOSContextHandle_t geos;
	GEOSGeometry *ground;
};

static GEOSGeometry *to_ring(GEOSContextHandle_t geos, struct ring ring)
{
	GEOSCoordSequence *points = GEOSCoordSeq_create_r(geos, (unsigned)ring.count + 1, 2);
	for (size_t i = 0; i <= ring.count; i++)
		GEOSCoordSeq_setXY_r(geos, points, (unsigned)i, ring.points[i % ring.count].x,
		                     ring.points[i % ring.count].y);
	return GEOSGeom_createLinearRing_r(geos, points);
}

static GEOSGeometry *to_polygon(GEOSContextHandle_t geos, const struct polygon *polygon)
{
	GEOSGeometry **holes = calloc(polygon->hole_count + 1, sizeof *holes);
	for (size_t h = 0; h < polygon->hole_count; h++)
		holes[h] = to_ring(geos, polygon->holes[h]);
	GEOSGeometry *made = GEOSGeom_createPolygon_r(geos, to_ring(geos, polygon->outline), holes,
	                                              (unsigned)polygon->hole_count);
	free(holes);
	return made;
}

struct clipper *clipper_of_region(const struct region *region)
{
	struct clipper *clipper = calloc(1, sizeof *clipper);
	clipper->geos = GEOS_init_r();
	GEOSGeometry **parts = calloc(region->count + 1, sizeof *parts);
	for (size_t i = 0; i < region->count; i++)
		parts[i] = to_polygon(clipper->geos, &region->polygons[i]);
	clipper->ground = region->count == 1
	                          ? parts[0]
	                          : GEOSGeom_createCollection_r(clipper->geos, GEOS_MULTIPOLYGON,
	                                                        parts, (unsigned)region->count);
	free(parts);
	return clipper;
}

void clipper_free(struct clipper *clipper)
{
	GEOSGeom_destroy_r(clipper->geos, clipper->ground);
	GEOS_finish_r(clipper->geos);
	free(clipper);
}

static double area_of_face(struct clipper *clipper, const struct tiling *tiling,
                           const struct panel *panel, struct address at)
{
	struct box box = tiling->module->faces[at.face].box;
	struct point by = module_place(tiling->module, at, panel->position);
	GEOSGeometry *piece = GEOSClipByRect_r(clipper->geos, clipper->ground, box.x0 + by.x,
	                                       box.y0 + by.y, box.x1 + by.x, box.y1 + by.y);
	double mm2 = 0;
	GEOSArea_r(clipper->geos, piece, &mm2);
	GEOSGeom_destroy_r(clipper->geos, piece);
	return mm2;
}

static double area_of_panel(struct clipper *clipper, const struct tiling *tiling,
                            const struct panel *panel, long *faces)
{
	double sum = 0;
	for (size_t r = 0; r < panel->run_count; r++)
		for (int i = panel->runs[r].first; i <= panel->runs[r].last; i++, ++*faces)
			sum += area_of_face(clipper, tiling, panel,
			                    (struct address){panel->runs[r].face, i,
			                                     panel->runs[r].j});
	for (size_t p = 0; p < panel->piece_count; p++) {
		struct address at = panel->pieces[p].at;
		if (p > 0 && address_is_same(at, panel->pieces[p - 1].at))
			continue;
		sum += area_of_face(clipper, tiling, panel, at);
		++*faces;
	}
	return sum;
}

double clipper_area(struct clipper *clipper, const struct tiling *tiling, long *out_faces)
{
	double sum = 0;
	*out_faces = 0;
	for (size_t i = 0; i < tiling->panel_count; i++)
		sum += area_of_panel(clipper, tiling, &tiling->panels[i], out_faces);
	return sum;
}
