#include "pattern/module.h"

#include "pattern/lanes.h"
#include "pattern/lattice.h"
#include "pattern/period.h"
#include "units/length.h"

static struct ring rectangle(struct arena *arena, double x, double y, double wide, double deep)
{
	struct point corners[] = {{x, y}, {x + wide, y}, {x + wide, y + deep}, {x, y + deep}};
	return ring_copy(arena, corners, 4);
}

static void add_face(struct module *module, int tile, struct ring ring, struct ring cell)
{
	struct face *face = &module->faces[module->face_count++];
	face->tile = tile;
	face->ring = ring;
	face->cell = cell;
	face->area_mm2 = ring_area(ring);
	face->length = ring_length(ring);
	face->box = ring_box(ring);
}

/* `at` is the lower left corner of the cell, half a joint before the face. */
static void add_rectangle(struct arena *arena, struct module *module, int tile, struct point at,
                          double wide, double deep)
{
	double half = module->joint / 2;
	add_face(module, tile, rectangle(arena, at.x + half, at.y + half, wide, deep),
	         rectangle(arena, at.x, at.y, wide + module->joint, deep + module->joint));
}

static struct module *module_start(struct arena *arena, const struct plan_lay *lay, size_t faces)
{
	struct module *module = ARENA_NEW(arena, struct module);
	module->faces = ARENA_ARRAY(arena, struct face, faces);
	module->joint = length_mm(lay->joint_nm);
	for (size_t i = 0; i < lay->tile_count; i++) {
		module->tile_long = fmax(module->tile_long, length_mm(lay->tiles[i]->long_nm));
		module->tile_width = fmax(module->tile_width, length_mm(lay->tiles[i]->wide_nm));
	}
	module->pitch = module->tile_long + module->joint;
	module->course = module->tile_width + module->joint;
	return module;
}

/* Courses of one tile, each next one `shift` of a pitch further along. */
static struct module *courses(struct arena *arena, const struct plan_lay *lay, struct share shift,
                              bool alternate)
{
	int count = alternate ? 2 : 1;
	struct module *module = module_start(arena, lay, (size_t)count);
	double step = module->pitch * (double)shift.num / (double)shift.den;
	for (int r = 0; r < count; r++)
		add_rectangle(arena, module, 0, (struct point){r * step, r * module->course},
		              module->tile_long, module->tile_width);
	module->a = (struct point){module->pitch, 0};
	module->b = (struct point){alternate ? 0 : step, count * module->course};
	module->offset_count = alternate ? 2 : (int)shift.den;
	module->offsets = ARENA_ARRAY(arena, double, (size_t)module->offset_count);
	for (int r = 0; r < module->offset_count; r++)
		module->offsets[r] = alternate
		                             ? r * step
		                             : module->pitch * (double)(r * shift.num % shift.den) /
		                                       (double)shift.den;
	return module;
}

/* Flats along v, points along u's normal: courses along u, each half a tile on. */
static struct ring hexagon(struct arena *arena, double across_flats, struct point middle)
{
	double half = across_flats / 2, side = across_flats / sqrt(3);
	const struct point corners[] = {{half, -side / 2}, {half, side / 2},   {0, side},
	                                {-half, side / 2}, {-half, -side / 2}, {0, -side}};
	struct ring ring = ring_copy(arena, corners, 6);
	for (size_t i = 0; i < ring.count; i++)
		ring.points[i] = point_add(ring.points[i], middle);
	return ring;
}

/* The origin is the lower left corner of a cell's flat: three joints meet there. */
static struct module *hexagons(struct arena *arena, const struct plan_lay *lay)
{
	struct module *module = module_start(arena, lay, 1);
	double step = module->pitch, side = step / sqrt(3);
	struct point middle = {step / 2, side / 2};
	add_face(module, 0, hexagon(arena, module->tile_width, middle),
	         hexagon(arena, step, middle));
	module->a = (struct point){step, 0};
	module->b = (struct point){step / 2, side * 3 / 2};
	return module;
}

static struct point in_mm(struct period_step step)
{
	return (struct point){length_mm(step.x), length_mm(step.y)};
}

static struct module *rectangles(struct arena *arena, const struct plan_lay *lay)
{
	const struct period *period = period_from_lay(arena, lay);
	struct module *module = module_start(arena, lay, period->count);
	module->a = in_mm(period->a);
	module->b = in_mm(period->b);
	for (size_t i = 0; i < period->count; i++) {
		const struct period_cell *cell = &period->cells[i];
		add_rectangle(arena, module, cell->tile,
		              (struct point){length_mm(cell->x), length_mm(cell->y)},
		              length_mm(cell->wide - lay->joint_nm),
		              length_mm(cell->deep - lay->joint_nm));
	}
	return module;
}

const struct module *module_from_lay(struct arena *arena, const struct plan_lay *lay)
{
	const struct share none = {0, 1};
	struct module *module;
	if (lay->pattern == PLAN_PATTERN_GRID)
		return courses(arena, lay, none, false);
	if (lay->pattern == PLAN_PATTERN_RUNNING)
		return courses(arena, lay, share_reduced(lay->shift),
		               lay->stagger == PLAN_STAGGER_ALTERNATE);
	module = lay->pattern == PLAN_PATTERN_HEXAGON ? hexagons(arena, lay)
	                                              : rectangles(arena, lay);
	module->lanes_u = lanes_from_module(arena, module, true);
	module->lanes_v = lanes_from_module(arena, module, false);
	return module;
}

static struct ring ring_at(struct arena *arena, const struct module *module, struct ring ring,
                           struct address at, struct point position)
{
	struct point by = module_place(module, at, position);
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
	struct ring cell = ring_at(arena, module, module->faces[at.face].cell, at, position);
	for (size_t i = 0; i < cell.count; i++)
		cell.points[i] = lattice_corner(cell.points[i]);
	return cell;
}
