/* module.h - one period of a tile pattern: convex faces and two lattice vectors.
 * After this nothing knows which pattern it was. A face grown by half a joint is its
 * cell; cells tile the plane.
 * Units: mm in the lay's own axes (u along the courses, v across). Owns: arena.
 * Invariants: faces convex, anticlockwise; a has v = 0 for every pattern with straight
 * courses; the origin is a crossing of joint centre lines. */
#ifndef PATTERN_MODULE_H
#define PATTERN_MODULE_H
#include "base/diag.h"
#include "base/status.h"
#include "geometry/region.h"
#include "plan/plan.h"

struct lanes;

struct face {
	struct ring ring; /* at lattice position (0, 0) */
	struct ring cell;
	int tile; /* index into lay->tiles */
	double area_mm2;
	struct box box;
};

struct module {
	struct point a, b; /* lattice vectors */
	struct face *faces;
	size_t face_count;
	double joint;
	double tile_width; /* shorter side, of several sizes the greatest; hexagon: across flats */
	double tile_long;  /* longer side, of several the greatest: "one tile" as a distance */
	/* Straight courses along u: course r starts offsets[r mod offset_count] further along u.
	 * offset_count is 0 for patterns without courses: what their walls see is in `lanes`. */
	double pitch;  /* from tile to tile along a course; tile_long and a joint without */
	double course; /* from course to course along v; tile_width and a joint without */
	double *offsets;
	int offset_count;
	const struct lanes *lanes_u, *lanes_v; /* along u, along v; NULL where courses are */
};

static inline const struct lanes *module_lanes(const struct module *m, bool along_u)
{
	return along_u ? m->lanes_u : m->lanes_v;
}

/* Where one face lies: face index and lattice steps. */
struct address {
	int face, i, j;
};

static inline bool address_is_same(struct address a, struct address b)
{
	return a.face == b.face && a.i == b.i && a.j == b.j;
}

static inline struct point module_step(const struct module *m, int i, int j)
{
	return (struct point){i * m->a.x + j * m->b.x, i * m->a.y + j * m->b.y};
}

/* Builds the module of a lay whose pattern fills the plane (pattern_check.h). */
const struct module *module_from_lay(struct arena *, const struct plan_lay *);
/* Points of a face, or of its cell, at an address, with `position` added. */
struct ring module_face_at(struct arena *, const struct module *, struct address,
                           struct point position);
struct ring module_cell_at(struct arena *, const struct module *, struct address,
                           struct point position);

#endif
