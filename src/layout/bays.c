#include "layout/bays.h"

#include "geometry/tolerance.h"

/* Union-find over parts, kept flat: there are few. */
static void join(size_t *classes, size_t count, size_t a, size_t b)
{
	size_t keep = classes[a] < classes[b] ? classes[a] : classes[b];
	size_t drop = classes[a] < classes[b] ? classes[b] : classes[a];
	for (size_t i = 0; i < count; i++)
		if (classes[i] == drop)
			classes[i] = keep;
}

/* A class is named by its first part; that name becomes its number, from 0 up. */
static size_t number_classes(size_t *classes, size_t count)
{
	size_t used = 0;
	for (size_t i = 0; i < count; i++)
		classes[i] = classes[i] == i ? used++ : classes[classes[i]];
	return used;
}

/* A border along the carried band: its part, and the stretch of it, measured along the joint. */
struct beside {
	size_t part;
	double from, to;
};

struct beside_all {
	struct beside *items;
	size_t count;
};

static struct beside_all borders_beside(struct arena *arena, const struct field *field,
                                        const struct field_carried *carried)
{
	struct beside_all all = {ARENA_ARRAY(arena, struct beside, field->border_count), 0};
	struct point along = point_unit(point_sub(carried->to, carried->from));
	for (size_t i = 0; i < field->border_count; i++) {
		const struct field_border *border = &field->borders[i];
		if (border->of != carried->of)
			continue;
		struct point middle = point_between(border->from, border->to, 0.5);
		if (region_distance(&carried->band, middle) >= TOLERANCE_WHOLE)
			continue;
		double from = point_dot(point_sub(border->from, carried->from), along);
		double to = point_dot(point_sub(border->to, carried->from), along);
		all.items[all.count++] =
			(struct beside){border->part, fmin(from, to), fmax(from, to)};
	}
	return all;
}

/* Two stretches of one joint face each other where they overlap: on one side of it no two
 * do. Parts farther along, beyond a joint that crosses, share nothing by this one. */
static bool face_each_other(struct beside a, struct beside b)
{
	return fmin(a.to, b.to) - fmax(a.from, b.from) > TOLERANCE_WHOLE;
}

static void join_across(struct arena *arena, struct bays *bays, const struct field *field,
                        const struct field_carried *carried)
{
	size_t count = field->region.count;
	bool is_free = carried->separates && carried->joint;
	bool free_u = is_free && carried->axis == FIELD_AXIS_V;
	bool free_v = is_free && carried->axis == FIELD_AXIS_U;
	struct beside_all all = borders_beside(arena, field, carried);
	for (size_t a = 0; a < all.count; a++)
		for (size_t b = a + 1; b < all.count; b++) {
			if (!face_each_other(all.items[a], all.items[b]))
				continue;
			if (!free_u)
				join(bays->u_of_part, count, all.items[a].part, all.items[b].part);
			if (!free_v)
				join(bays->v_of_part, count, all.items[a].part, all.items[b].part);
		}
}

struct bays bays_of_field(struct arena *arena, const struct field *field)
{
	size_t count = field->region.count;
	struct bays bays = {
		.u_of_part = ARENA_ARRAY(arena, size_t, count),
		.v_of_part = ARENA_ARRAY(arena, size_t, count),
	};
	for (size_t i = 0; i < count; i++)
		bays.u_of_part[i] = bays.v_of_part[i] = i;
	for (size_t i = 0; i < field->carried_count; i++)
		join_across(arena, &bays, field, &field->carried[i]);
	bays.u_count = number_classes(bays.u_of_part, count);
	bays.v_count = number_classes(bays.v_of_part, count);
	return bays;
}
