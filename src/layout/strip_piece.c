#include "layout/strip_piece.h"

#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"

struct polygon_list {
	ARRAY_OF(struct polygon) polygons;
};

static bool holds_crack(struct arena *arena, const struct region *part, struct line crack)
{
	size_t count;
	clip_line(arena, crack, part, &count);
	return count > 0;
}

static bool holds_anchor(const struct polygon *polygon, const struct strip_leg *leg)
{
	for (size_t k = 0; k < leg->anchor_count; k++)
		if (polygon_holds(polygon, leg->anchors[k]))
			return true;
	return false;
}

struct region strip_leg_ground(struct arena *arena, const struct strip_leg *leg,
                               const struct region *ground)
{
	struct polygon_list kept = {0};
	struct ring ring = strip_leg_ring(arena, leg, -leg->right, leg->left, -leg->before,
	                                  leg->length + leg->after);
	struct region rectangle = region_from_ring(arena, ring);
	struct region parts = overlay_intersection(arena, &rectangle, ground);
	for (size_t p = 0; p < parts.count; p++) {
		struct region part = {&parts.polygons[p], 1};
		if (holds_crack(arena, &part, leg->crack) || holds_anchor(&parts.polygons[p], leg))
			*array_push(arena, &kept.polygons) = parts.polygons[p];
	}
	return (struct region){kept.polygons.items, kept.polygons.count};
}

/* From one cut to the next: lanes beside each other, lengths behind each other. */
struct slice {
	double from, to;
};

struct slices {
	ARRAY_OF(struct slice) items;
};

/* Cuts from `from` to `to` into slices of at most `most` that overlap by `lap`; no cut comes
 * between `clear_from` and `clear_to` where the first slice can be made shorter instead. */
static struct slices cut_up(struct arena *arena, struct slice all, double most, double lap,
                            struct slice clear)
{
	struct slices slices = {0};
	double from = all.from;
	if (most > 0 && most > 2 * lap)
		while (all.to - from > most + TOLERANCE_SAME) {
			double to = from + most;
			bool in_clear = to > clear.from + TOLERANCE_SAME &&
			                to - lap < clear.to - TOLERANCE_SAME;
			if (in_clear && clear.from - from > lap + TOLERANCE_SAME)
				to = clear.from;
			*array_push(arena, &slices.items) = (struct slice){from, to};
			from = to - lap;
		}
	*array_push(arena, &slices.items) = (struct slice){from, all.to};
	return slices;
}

static double whole_steps(double length, double step)
{
	return ceil((length - TOLERANCE_SAME) / step) * step;
}

static struct strip_piece piece_of(const struct strip_leg *leg, struct polygon shape,
                                   const struct strip_goods *goods, struct slice lane,
                                   struct slice length)
{
	struct box box = box_empty();
	for (size_t k = 0; k < shape.outline.count; k++)
		box = box_with(box, strip_leg_own(leg, shape.outline.points[k]));
	struct strip_piece piece = {.shape = shape};
	/* Never wider than the lane: its edge may be the roll's own. */
	piece.wide = fmin(whole_steps(box.y1 - box.y0, goods->step),
	                  whole_steps(lane.to - lane.from, goods->step));
	if (goods->roll_wide > 0)
		piece.wide = fmin(piece.wide, goods->roll_wide);
	piece.length = fmin(whole_steps(box.x1 - box.x0, goods->step),
	                    whole_steps(length.to - length.from, goods->step));
	return piece;
}

static struct slice across_of(const struct strip_leg *leg)
{
	return (struct slice){-leg->right, leg->left};
}

static struct slice along_of(const struct strip_leg *leg)
{
	return (struct slice){-leg->before, leg->length + leg->after};
}

/* What is cut from the leg's own ground need not be cut again at its rim: a slice at the rim goes
 * on past it. */
static struct slice past_rim(struct slice slice, struct slice all, double past)
{
	if (slice.from <= all.from)
		slice.from -= past;
	if (slice.to >= all.to)
		slice.to += past;
	return slice;
}

static void add_pieces(struct arena *arena, const struct strip_leg *leg,
                       const struct region *ground, const struct strip_goods *goods,
                       struct slice lane, struct slice length, struct strip_piece_list *list)
{
	struct slice wide = past_rim(lane, across_of(leg), goods->step);
	struct slice far = past_rim(length, along_of(leg), goods->step);
	struct region cut = region_from_ring(arena, strip_leg_ring(arena, leg, wide.from, wide.to,
	                                                           far.from, far.to));
	struct region parts = overlay_intersection(arena, &cut, ground);
	for (size_t p = 0; p < parts.count; p++) {
		if (polygon_area(&parts.polygons[p]) < TOLERANCE_AREA_MM2)
			continue;
		struct strip_piece piece = piece_of(leg, parts.polygons[p], goods, lane, length);
		piece.lap = list->pieces.count > 0 ? goods->lap : 0;
		*array_push(arena, &list->pieces) = piece;
	}
}

void strip_leg_cut(struct arena *arena, const struct strip_leg *leg, const struct region *ground,
                   const struct strip_goods *goods, struct strip_piece_list *list)
{
	struct region mine = strip_leg_ground(arena, leg, ground);
	struct slice clear = {-leg->crack_right - goods->seam_clear,
	                      leg->crack_left + goods->seam_clear};
	/* Seams square to the crack cross it wherever they are. */
	struct slice nowhere = {INFINITY, -INFINITY};
	struct slices lanes = cut_up(arena, across_of(leg), goods->roll_wide, goods->lap, clear);
	struct slices lengths = cut_up(arena, along_of(leg), goods->roll_long, goods->lap, nowhere);
	for (size_t w = 0; w < lanes.items.count; w++)
		for (size_t l = 0; l < lengths.items.count; l++)
			add_pieces(arena, leg, &mine, goods, lanes.items.items[w],
			           lengths.items.items[l], list);
}
