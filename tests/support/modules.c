#include "support/modules.h"

static struct ring rectangle(struct arena *arena, double x, double y, double wide, double high)
{
	const struct point corners[] = {{x, y}, {x + wide, y}, {x + wide, y + high}, {x, y + high}};
	return ring_copy(arena, corners, 4);
}

static struct module *empty_module(struct arena *arena, size_t faces, double joint)
{
	struct module *module = ARENA_NEW(arena, struct module);
	module->faces = ARENA_ARRAY(arena, struct face, faces);
	module->joint = joint;
	return module;
}

static void add_face(struct module *module, struct ring ring, struct ring cell)
{
	module->faces[module->face_count++] = (struct face){.ring = ring,
	                                                    .cell = cell,
	                                                    .area_mm2 = ring_area(ring),
	                                                    .box = ring_box(ring)};
}

static void add_rectangle(struct arena *arena, struct module *module, double x, double y,
                          double wide, double high)
{
	double half = module->joint / 2;
	add_face(module, rectangle(arena, x, y, wide, high),
	         rectangle(arena, x - half, y - half, wide + module->joint, high + module->joint));
}

const struct module *module_of_rectangles(struct arena *arena, double tile_long, double tile_wide,
                                          double joint, double shift)
{
	struct module *module = empty_module(arena, 1, joint);
	module->a = (struct point){tile_long + joint, 0};
	module->b = (struct point){shift * (tile_long + joint), tile_wide + joint};
	module->tile_width = tile_wide;
	module->tile_long = tile_long;
	module->course = tile_wide + joint;
	add_rectangle(arena, module, joint / 2, joint / 2, tile_long, tile_wide);
	return module;
}

static struct ring hexagon(struct arena *arena, double wide)
{
	double side = wide / sqrt(3);
	const struct point corners[] = {{wide / 2, -side / 2}, {wide / 2, side / 2},   {0, side},
	                                {-wide / 2, side / 2}, {-wide / 2, -side / 2}, {0, -side}};
	return ring_copy(arena, corners, 6);
}

const struct module *module_of_hexagons(struct arena *arena, double wide, double joint)
{
	struct module *module = empty_module(arena, 1, joint);
	double step = wide + joint;
	module->a = (struct point){step, 0};
	module->b = (struct point){step / 2, step * sqrt(3) / 2};
	module->tile_width = wide;
	module->tile_long = wide;
	add_face(module, hexagon(arena, wide), hexagon(arena, step));
	return module;
}

const struct module *module_of_pinwheel(struct arena *arena, double large, double small,
                                        double joint)
{
	struct module *module = empty_module(arena, 2, joint);
	double l = large + joint, s = small + joint;
	module->a = (struct point){l, s};
	module->b = (struct point){-s, l};
	module->tile_width = large;
	module->tile_long = large;
	add_rectangle(arena, module, joint / 2, joint / 2, large, large);
	add_rectangle(arena, module, l + joint / 2, joint / 2, small, small);
	return module;
}

const struct module *module_of_basketweave(struct arena *arena, double wide, double joint)
{
	struct module *module = empty_module(arena, 4, joint);
	double step = wide + joint, tile_long = 2 * wide + joint, half = joint / 2;
	module->a = (struct point){4 * step, 0};
	module->b = (struct point){2 * step, 2 * step};
	module->tile_width = wide;
	module->tile_long = tile_long;
	add_rectangle(arena, module, half, half, tile_long, wide);
	add_rectangle(arena, module, half, step + half, tile_long, wide);
	add_rectangle(arena, module, 2 * step + half, half, wide, tile_long);
	add_rectangle(arena, module, 3 * step + half, half, wide, tile_long);
	return module;
}
