#include "layout/soft_end.h"

#include <stdlib.h>
#include <string.h>

#include "geometry/tolerance.h"

static struct point way_end(const struct crack_part *part, int which)
{
	return part->way.points[which ? part->way.count - 1 : 0];
}

static struct point line_end(const struct crack_part *part, int which)
{
	return part->line.points[which ? part->line.count - 1 : 0];
}

static struct segment way_side(const struct crack_part *part, int which, size_t from_end)
{
	struct line way = part->way;
	if (!which)
		return (struct segment){way.points[from_end + 1], way.points[from_end]};
	return (struct segment){way.points[way.count - 2 - from_end],
	                        way.points[way.count - 1 - from_end]};
}

/* The last crossing of the outward segment with the domain's border. */
static bool leaves_domain(const struct corridor *corridor, struct segment outward,
                          struct soft_end *end)
{
	double last = -1;
	for (size_t r = 0; r < region_ring_count(&corridor->domain); r++) {
		struct ring ring = region_ring(&corridor->domain, r);
		for (size_t i = 0; i < ring.count; i++) {
			double share;
			if (!segment_crossing(outward, segment_of_ring(ring, i), &share) ||
			    share <= last)
				continue;
			last = share;
			end->ring = r;
			end->side = i;
		}
	}
	end->at = point_between(outward.from, outward.to, fmax(last, 0));
	end->out = point_unit(point_sub(outward.to, outward.from));
	return last >= 0;
}

/* Where the way leaves the domain for good at its end. */
static bool find_border_end(const struct corridor *corridor, struct soft_end *end)
{
	for (size_t k = 0; k + 1 < end->part->way.count; k++) {
		struct segment outward = way_side(end->part, end->which, k);
		struct point out = point_unit(point_sub(outward.to, outward.from));
		if (k == 0) /* it ends on the border, give or take */
			outward.to = point_add(outward.to, point_scale(out, TOLERANCE_WHOLE));
		if (leaves_domain(corridor, outward, end))
			return true;
	}
	return false;
}

static void find_across(struct soft_end *end)
{
	const struct crack_part *part = end->part;
	const struct strip_leg *leg = &part->legs[end->which ? part->leg_count - 1 : 0];
	double sign = end->which ? 1 : -1;
	struct point out = point_scale(leg->along, sign);
	struct point end_at = point_add(end->which ? leg->to : leg->from,
	                                point_scale(out, end->which ? leg->after : leg->before));
	struct point left = point_left(out);
	double to_left = end->which ? leg->left : leg->right;
	double to_right = end->which ? leg->right : leg->left;
	end->across = (struct segment){point_add(end_at, point_scale(left, to_left)),
	                               point_sub(end_at, point_scale(left, to_right))};
}

static void find_field_end(struct soft_end *end)
{
	struct segment last = way_side(end->part, end->which, 0);
	end->at = end->own;
	end->out = point_unit(point_sub(last.to, last.from));
}

static bool is_under(struct arena *arena, const struct tiling *tiling,
                     const struct crack_part *part, struct segment line)
{
	for (size_t t = 0; t < part->tile_count; t++) {
		struct ring cell = tile_ref_cell(arena, tiling, part->tiles[t]);
		if (ring_holds(cell, line.from) || ring_holds(cell, line.to))
			return true;
		for (size_t i = 0; i < cell.count; i++)
			if (segment_meets(segment_of_ring(cell, i), line))
				return true;
	}
	return false;
}

static bool shares_tile(const struct crack_part *part, const struct crack_part *other, size_t t)
{
	for (size_t k = 0; k < part->tile_count; k++)
		if (address_is_same(part->tiles[k].at, other->tiles[t].at))
			return true;
	return false;
}

/* An end whose prolongation runs under tile that another part crosses points inwards: the
 * group goes on there. */
static bool points_inwards(struct arena *arena, const struct corridor *corridor,
                           const struct soft_end *end, const struct crack_part *const *parts,
                           size_t part_count)
{
	struct segment ahead = {end->at, way_end(end->part, end->which)};
	for (size_t k = 0; k < part_count; k++) {
		if (parts[k] == end->part)
			continue;
		struct crack_part others = *parts[k];
		others.tiles = ARENA_ARRAY(arena, struct tile_ref, parts[k]->tile_count);
		others.tile_count = 0;
		for (size_t t = 0; t < parts[k]->tile_count; t++)
			if (!shares_tile(end->part, parts[k], t))
				others.tiles[others.tile_count++] = parts[k]->tiles[t];
		if (is_under(arena, corridor->tiling, &others, ahead))
			return true;
	}
	return false;
}

static int by_place_round(const void *a, const void *b)
{
	const struct soft_end *x = a, *y = b;
	if (fabs(x->round - y->round) > TOLERANCE_SAME)
		return x->round < y->round ? -1 : 1;
	if (x->part != y->part)
		return x->part < y->part ? -1 : 1;
	return x->which - y->which;
}

/* Where the way on from the crack's end leaves the crossed tile, or meets the border. */
static double place_round(struct ring outline, const struct soft_end *end)
{
	struct segment way = {end->own, end->at};
	if (end->at_border && soft_outline_is_at(outline, end->at)) {
		way.from = end->at;
	} else if (!end->at_border) {
		double far = point_dot(end->out, point_sub(end->across.from, way.from));
		way.to = point_add(way.from, point_scale(end->out, far));
	}
	return soft_outline_place(outline, way);
}

/* A crack that goes on under an obstacle with crossed tile all round does not end there. */
static bool is_enclosed(struct ring outline, const struct soft_end *end)
{
	return ring_holds(outline, end->at) && !soft_outline_is_at(outline, end->at);
}

/* Two ends at one border, so near each other that a joint could end at either. */
static bool are_near(const struct soft_setting *setting, const struct soft_end *a,
                     const struct soft_end *b)
{
	double flanks = 2 * (setting->reach.half_width + setting->reach.one_tile);
	return a->at_border && b->at_border && strcmp(a->border, b->border) == 0 &&
	       point_distance(a->at, b->at) <= flanks;
}

/* Where an end is alone, or two are near each other, a joint from one to the other must go
 * round the crack all the same. */
static void split_ends(const struct soft_setting *setting, struct soft_end *ends, size_t count)
{
	for (size_t k = 0; k < count; k++) {
		ends[k].is_split = !ends[k].at_border || count == 1;
		for (size_t n = 0; n < count; n++)
			if (n != k && are_near(setting, &ends[k], &ends[n]))
				ends[k].is_split = true;
	}
}

struct line soft_end_ahead(struct arena *arena, const struct soft_end *end)
{
	struct point to =
		point_add(way_end(end->part, end->which), point_scale(end->out, TOLERANCE_WHOLE));
	struct line line = {ARENA_ARRAY(arena, struct point, 2), 2};
	line.points[0] = end->own;
	line.points[1] = to;
	return line;
}

struct line soft_end_bar(struct arena *arena, const struct soft_end *end)
{
	const struct crack_part *part = end->part;
	const struct strip_leg *leg = &part->legs[end->which ? part->leg_count - 1 : 0];
	double on = end->which ? leg->after : leg->before;
	struct line line = {ARENA_ARRAY(arena, struct point, 2), 2};
	line.points[0] = end->at;
	line.points[1] = point_add(way_end(part, end->which), point_scale(end->out, on));
	return line;
}

struct soft_end *soft_ends(struct arena *arena, const struct soft_setting *setting,
                           const struct corridor *corridor, const struct crack_part *const *parts,
                           size_t part_count, struct ring outline, size_t *out_count)
{
	struct soft_end *ends = ARENA_ARRAY(arena, struct soft_end, 2 * part_count);
	size_t count = 0;
	for (size_t k = 0; k < 2 * part_count; k++) {
		struct soft_end end = {.part = parts[k / 2], .which = (int)(k % 2)};
		end.own = line_end(end.part, end.which);
		enum part_end kind = end.part->ends[end.which];
		if (kind == PART_END_JOINED)
			continue;
		end.at_border = kind == PART_END_BORDER;
		if (end.at_border &&
		    (!find_border_end(corridor, &end) || is_enclosed(outline, &end)))
			continue;
		if (!end.at_border) {
			find_field_end(&end);
			if (points_inwards(arena, corridor, &end, parts, part_count))
				continue;
		}
		find_across(&end);
		if (end.at_border)
			end.border = soft_setting_border_at(setting, end.at);
		end.round = place_round(outline, &end);
		ends[count++] = end;
	}
	split_ends(setting, ends, count);
	qsort(ends, count, sizeof *ends, by_place_round);
	*out_count = count;
	return ends;
}
