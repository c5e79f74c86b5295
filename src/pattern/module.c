#include "pattern/module.h"

#include "units/length.h"

static struct ring rectangle(struct arena *arena, double x, double y, double wide, double deep)
{
	struct point corners[] = {{x, y}, {x + wide, y}, {x + wide, y + deep}, {x, y + deep}};
	return ring_copy(arena, corners, 4);
}

static void add_rectangle(struct arena *arena, struct module *module, int tile, struct point at,
                          double wide, double deep)
{
	double half = module->joint / 2;
	struct face *face = &module->faces[module->face_count++];
	face->tile = tile;
	face->ring = rectangle(arena, at.x + half, at.y + half, wide, deep);
	face->cell = rectangle(arena, at.x, at.y, wide + module->joint, deep + module->joint);
	face->area_mm2 = ring_area(face->ring);
	face->box = ring_box(face->ring);
}

/* Courses of one tile, each next one `shift` of a pitch further along. */
static void lay_courses(struct arena *arena, struct module *module, struct share shift,
                        bool alternate)
{
	double step = module->pitch * (double)shift.num / (double)shift.den;
	int courses = alternate ? 2 : 1;
	module->faces = ARENA_ARRAY(arena, struct face, (size_t)courses);
	for (int r = 0; r < courses; r++)
		add_rectangle(arena, module, 0, (struct point){r * step, r * module->course},
		              module->tile_long, module->tile_width);
	module->a = (struct point){module->pitch, 0};
	module->b = (struct point){alternate ? 0 : step, courses * module->course};
	module->offset_count = alternate ? 2 : (int)shift.den;
	module->offsets = ARENA_ARRAY(arena, double, (size_t)module->offset_count);
	for (int r = 0; r < module->offset_count; r++)
		module->offsets[r] = alternate
		                             ? r * step
		                             : module->pitch * (double)(r * shift.num % shift.den) /
		                                       (double)shift.den;
}

const struct module *module_from_lay(struct arena *arena, const struct plan_lay *lay)
{
	const struct plan_tile *tile = lay->tiles[0];
	struct module *module = ARENA_NEW(arena, struct module);
	module->joint = length_mm(lay->joint_nm);
	module->tile_long = length_mm(tile->long_nm);
	module->tile_width = length_mm(tile->wide_nm);
	module->pitch = module->tile_long + module->joint;
	module->course = module->tile_width + module->joint;
	struct share none = {0, 1};
	bool runs = lay->pattern == PLAN_PATTERN_RUNNING;
	lay_courses(arena, module, runs ? share_reduced(lay->shift) : none,
	            runs && lay->stagger == PLAN_STAGGER_ALTERNATE);
	return module;
}

static struct ring ring_at(struct arena *arena, const struct module *module, struct ring ring,
                           struct address at, struct point position)
{
	struct point by = point_add(position, module_step(module, at.i, at.j));
	struct ring moved = {ARENA_ARRAY(arena, struct point, ring.count), ring.count};
	for (size_t i = 0; i < ring.count; i++)
		moved.points[i] = point_add(ring.points[i], by);
	return moved;
}

struct ring module_face_at(struct arena *arena, const struct module *module, struct address at,
                           struct point position)
{
	return ring_at(arena, module, module->faces[at.face].ring, at, position);
}

struct ring module_cell_at(struct arena *arena, const struct module *module, struct address at,
                           struct point position)
{
	return ring_at(arena, module, module->faces[at.face].cell, at, position);
}
