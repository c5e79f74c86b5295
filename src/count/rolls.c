#include "count/rolls.h"

#include <math.h>
#include <stdlib.h>

#include "geometry/overlay.h"
#include "geometry/tolerance.h"

/* Packed in hundredths of a millimetre. */
static const double STEPS_PER_MM = 100;

static int by_length(const void *a, const void *b)
{
	const struct roll_piece *x = a, *y = b;
	if (x->length != y->length)
		return x->length > y->length ? -1 : 1;
	return x->wide > y->wide ? -1 : x->wide < y->wide;
}

/* A length of roll, across which pieces lie side by side. */
struct shelf {
	double length, left;
};

struct shelf_list {
	ARRAY_OF(struct shelf) shelves;
};

/* Longest first, so that a shelf is as long as its first piece. */
static struct shelf_list shelves_of(struct arena *arena, struct roll_piece *pieces, size_t count,
                                    double wide)
{
	struct shelf_list list = {0};
	qsort(pieces, count, sizeof *pieces, by_length);
	for (size_t i = 0; i < count; i++) {
		size_t s = 0;
		while (s < list.shelves.count &&
		       list.shelves.items[s].left < pieces[i].wide - TOLERANCE_SAME)
			s++;
		if (s == list.shelves.count)
			*array_push(arena, &list.shelves) = (struct shelf){pieces[i].length, wide};
		list.shelves.items[s].left -= pieces[i].wide;
	}
	return list;
}

struct packing rolls_for(struct arena *arena, const struct roll_list *list, struct roll_goods goods)
{
	size_t count = list->pieces.count;
	struct roll_piece *pieces = ARENA_ARRAY(arena, struct roll_piece, count + 1);
	double area = 0;
	for (size_t i = 0; i < count; i++) {
		pieces[i] = list->pieces.items[i];
		area += pieces[i].length * pieces[i].wide;
	}
	struct shelf_list shelves = shelves_of(arena, pieces, count, goods.wide);
	int64_t *lengths = ARENA_ARRAY(arena, int64_t, shelves.shelves.count + 1);
	for (size_t s = 0; s < shelves.shelves.count; s++)
		lengths[s] = llround(shelves.shelves.items[s].length * STEPS_PER_MM);
	struct packing packing = packing_of(arena, lengths, shelves.shelves.count,
	                                    llround(goods.length * STEPS_PER_MM));
	packing.bound = (size_t)ceil(area / (goods.wide * goods.length) - TOLERANCE_COUNT);
	return packing;
}

/* Ground of one lane: each of its parts is as long as its box. */
static void add_lane(struct arena *arena, const struct region *lane, struct roll_goods goods,
                     double wide, struct roll_list *list)
{
	for (size_t p = 0; p < lane->count; p++) {
		struct box box = ring_box(lane->polygons[p].outline);
		double left = box.x1 - box.x0;
		if (left <= TOLERANCE_DUST)
			continue;
		for (; left > goods.length + TOLERANCE_SAME; left -= goods.length - goods.lap)
			*array_push(arena, &list->pieces) = (struct roll_piece){goods.length, wide};
		*array_push(arena, &list->pieces) = (struct roll_piece){left, wide};
	}
}

void rolls_cover(struct arena *arena, const struct region *region, struct roll_goods goods,
                 struct roll_list *list)
{
	struct box box = region_box(region);
	double step = goods.wide - goods.lap;
	for (double y = box.y0; y < box.y1 - TOLERANCE_DUST; y += step) {
		double top = fmin(y + goods.wide, box.y1);
		struct point corners[] = {{box.x0, y}, {box.x1, y}, {box.x1, top}, {box.x0, top}};
		struct region band = region_from_ring(arena, (struct ring){corners, 4});
		struct region lane = overlay_intersection(arena, region, &band);
		add_lane(arena, &lane, goods, top - y, list);
		if (top >= box.y1)
			break;
	}
}
