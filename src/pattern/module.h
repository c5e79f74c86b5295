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
	double length; /* of its border */
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

/* The order of tile wherever it has one: by face, row, place in the row. */
static inline int address_compare(struct address a, struct address b)
{
	if (a.face != b.face)
		return a.face < b.face ? -1 : 1;
	if (a.j != b.j)
		return a.j < b.j ? -1 : 1;
	return (a.i > b.i) - (a.i < b.i);
}

static inline bool address_is_same(struct address a, struct address b)
{
	return address_compare(a, b) == 0;
}

static inline struct point module_step(const struct module *m, int i, int j)
{
	return (struct point){i * m->a.x + j * m->b.x, i * m->a.y + j * m->b.y};
}

/* Builds the module of a lay whose pattern fills the plane (pattern_check.h). */
const struct module *module_from_lay(struct arena *, const struct plan_lay *);
/* What has to be added to the points of a face or cell to lay it at an address. */
static inline struct point module_place(const struct module *m, struct address at,
                                        struct point position)
{
	return point_add(position, module_step(m, at.i, at.j));
}
/* Points of a face, or of its cell, at an address, with `position` added. */
struct ring module_face_at(struct arena *, const struct module *, struct address,
                           struct point position);
struct ring module_cell_at(struct arena *, const struct module *, struct address,
                           struct point position);

#endif
