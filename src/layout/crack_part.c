#include "layout/crack_part.h"

#include "base/array.h"
#include "geometry/clip.h"
#include "geometry/line.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/sight.h"
#include "geometry/tolerance.h"

struct part_list {
	ARRAY_OF(struct crack_part) parts;
};

static double line_distance(struct line line, struct point p)
{
	double least = INFINITY;
	for (size_t i = 0; i + 1 < line.count; i++)
		least = fmin(least,
		             segment_distance((struct segment){line.points[i], line.points[i + 1]},
		                              p));
	return least;
}

static bool *panels_of(struct arena *arena, const struct tiling *tiling, struct line line)
{
	size_t count;
	const struct panel_line *lines = panel_lines(arena, tiling, line, &count);
	bool *panels = ARENA_ARRAY(arena, bool, tiling->panel_count);
	for (size_t k = 0; k < count; k++)
		panels[lines[k].panel] = true;
	return panels;
}

static enum part_end end_at(const struct part_list *list, size_t index, struct point end,
                            const struct region *ground)
{
	if (region_distance(ground, end) < TOLERANCE_WHOLE)
		return PART_END_BORDER;
	for (size_t k = 0; k < list->parts.count; k++)
		if (k != index && line_distance(list->parts.items[k].line, end) < TOLERANCE_WHOLE)
			return PART_END_JOINED;
	return PART_END_FREE;
}

/* Of the parts of a crack in a panel the nearest to `p`, those first that no border parts from
 * it. */
static struct crack_part *nearest_part(struct arena *arena, const struct region *ground,
                                       struct part_list *list, size_t crack, size_t panel,
                                       struct point p)
{
	struct crack_part *best = NULL;
	struct sight least = sight_none();
	for (size_t k = 0; k < list->parts.count; k++) {
		struct crack_part *part = &list->parts.items[k];
		if (part->crack != crack || !part->panels[panel])
			continue;
		struct sight sight = sight_of(arena, ground, p, part->line);
		if (sight_is_better(sight, least)) {
			least = sight;
			best = part;
		}
	}
	return best;
}

static void share_out_tiles(struct arena *arena, const struct tiling *tiling,
                            const struct cracks *cracks, size_t index, const struct region *ground,
                            struct part_list *list)
{
	const struct placed_crack *crack = &cracks->cracks[index];
	for (size_t t = 0; t < crack->crossed_count; t++) {
		struct tile_ref tile = crack->crossed[t];
		struct point middle = ring_middle(tile_ref_ring(arena, tiling, tile));
		struct crack_part *part =
			nearest_part(arena, ground, list, index, tile.panel, middle);
		if (!part)
			continue;
		if (!part->tiles)
			part->tiles = ARENA_ARRAY(arena, struct tile_ref, crack->crossed_count);
		part->tiles[part->tile_count++] = tile;
	}
}

static struct part_list list_parts(struct arena *arena, const struct tiling *tiling,
                                   const struct cracks *cracks, const struct crack_group *group,
                                   const struct region *ground)
{
	struct part_list list = {0};
	for (size_t c = 0; c < group->crack_count; c++) {
		const struct placed_crack *crack = &cracks->cracks[group->cracks[c]];
		for (size_t r = 0; r < crack->run_count; r++) {
			size_t count;
			const struct line *lines = clip_line(arena, crack->runs[r], ground, &count);
			for (size_t k = 0; k < count; k++)
				if (line_length(lines[k]) > TOLERANCE_WHOLE)
					*array_push(arena, &list.parts) = (struct crack_part){
						.crack = group->cracks[c],
						.line = lines[k],
						.panels = panels_of(arena, tiling, lines[k])};
		}
	}
	return list;
}

/* How far one can go from `from` before the ground ends; `far` where it does not. */
static double room_ahead(const struct region *ground, struct point from, struct point out,
                         double far)
{
	struct segment ray = {from, point_add(from, point_scale(out, far))};
	double least = 1;
	for (size_t p = 0; p < ground->count; p++) {
		const struct polygon *polygon = &ground->polygons[p];
		for (size_t r = 0; r <= polygon->hole_count; r++) {
			struct ring ring = r ? polygon->holes[r - 1] : polygon->outline;
			for (size_t i = 0; i < ring.count; i++) {
				double share;
				if (segment_crossing(ray, segment_of_ring(ring, i), &share))
					least = fmin(least, share);
			}
		}
	}
	return least * far;
}

/* Where the way ends past an end in the field; the end becomes one at a border where there is
 * one near enough. */
static struct point prolonged(const struct region *ground, const struct strip_reach *reach,
                              struct point before, struct point end, enum part_end *kind)
{
	struct point out = point_unit(point_sub(end, before));
	double wanted = fmax(reach->overrun, reach->half_width);
	double far = fmax(wanted, reach->one_tile), room = room_ahead(ground, end, out, far);
	if (room < far - TOLERANCE_SAME)
		*kind = PART_END_BORDER;
	else
		room = wanted;
	return point_add(end, point_scale(out, room));
}

static struct line way_of(struct arena *arena, struct crack_part *part, const struct region *ground,
                          const struct strip_reach *reach)
{
	struct line line = part->line;
	struct line way = {ARENA_ARRAY(arena, struct point, line.count + 2), 0};
	if (part->ends[0] == PART_END_FREE)
		way.points[way.count++] =
			prolonged(ground, reach, line.points[1], line.points[0], &part->ends[0]);
	for (size_t i = 0; i < line.count; i++)
		way.points[way.count++] = line.points[i];
	if (part->ends[1] == PART_END_FREE)
		way.points[way.count++] = prolonged(ground, reach, line.points[line.count - 2],
		                                    line.points[line.count - 1], &part->ends[1]);
	return way;
}

struct strip_leg *crack_part_leg(const struct crack_part *part, struct point p)
{
	struct strip_leg *best = NULL;
	double least = INFINITY;
	for (size_t k = 0; k < part->leg_count; k++) {
		double distance = strip_leg_distance(&part->legs[k], p);
		if (distance < least - TOLERANCE_SAME) {
			least = distance;
			best = &part->legs[k];
		}
	}
	return best;
}

static void add_anchor(struct arena *arena, struct strip_leg *leg, struct point p)
{
	struct point *anchors = ARENA_ARRAY(arena, struct point, leg->anchor_count + 1);
	for (size_t k = 0; k < leg->anchor_count; k++)
		anchors[k] = leg->anchors[k];
	anchors[leg->anchor_count++] = p;
	leg->anchors = anchors;
}

void crack_part_hold(struct arena *arena, struct crack_part *part, const struct point *points,
                     size_t count, double margin)
{
	struct point middle = ring_middle((struct ring){(struct point *)points, count});
	struct strip_leg *leg = crack_part_leg(part, middle);
	add_anchor(arena, leg, middle);
	strip_leg_hold(leg, points, count, margin);
}

/* The ground within half a width of all of the crack, as far as it hangs together with the part:
 * where a carried joint cuts the crack at a slant, or it goes on under an obstacle, more than the
 * part's own. */
static void hold_beside(struct arena *arena, const struct field *field,
                        const struct site_crack *crack, struct crack_part *part,
                        const struct region *ground, double half_width)
{
	struct region band =
		overlay_band(arena, frame_line_in(arena, field->frame, crack->line), half_width);
	struct region beside = overlay_intersection(arena, &band, ground);
	for (size_t p = 0; p < beside.count; p++) {
		struct region piece = {&beside.polygons[p], 1};
		size_t count;
		clip_line(arena, part->line, &piece, &count);
		struct ring outline = beside.polygons[p].outline;
		for (size_t k = 0; count > 0 && k < outline.count; k++)
			strip_leg_hold(crack_part_leg(part, outline.points[k]), &outline.points[k],
			               1, 0);
	}
}

static void lay_legs(struct arena *arena, const struct tiling *tiling, struct crack_part *part,
                     const struct strip_reach *reach)
{
	part->legs =
		strip_legs(arena, part->way, reach->straight, reach->half_width, &part->leg_count);
	struct strip_leg *first = &part->legs[0], *last = &part->legs[part->leg_count - 1];
	/* At a border the whole width runs up to it, however slantwise; the ground cuts it. */
	if (part->ends[0] != PART_END_FREE)
		first->before = fmax(first->before, reach->half_width);
	if (part->ends[1] != PART_END_FREE)
		last->after = fmax(last->after, reach->half_width);
	for (size_t t = 0; t < part->tile_count; t++) {
		struct ring ring = tile_ref_ring(arena, tiling, part->tiles[t]);
		crack_part_hold(arena, part, ring.points, ring.count, 0);
	}
}

/* A crack that comes back to its start has no end: its joint goes round it. */
static void join_ring(struct crack_part *part)
{
	struct point last = part->line.points[part->line.count - 1];
	if (part->ends[0] == PART_END_FREE && part->ends[1] == PART_END_FREE &&
	    part->line.count > 3 && point_distance(part->line.points[0], last) <= TOLERANCE_WHOLE)
		part->ends[0] = part->ends[1] = PART_END_JOINED;
}

struct crack_part *crack_parts(struct arena *arena, const struct tiling *tiling,
                               const struct cracks *cracks, const struct crack_group *group,
                               const struct region *ground, const struct strip_reach *reach,
                               size_t *out_count)
{
	struct part_list list = list_parts(arena, tiling, cracks, group, ground);
	for (size_t k = 0; k < list.parts.count; k++) {
		struct crack_part *part = &list.parts.items[k];
		part->ends[0] = end_at(&list, k, part->line.points[0], ground);
		part->ends[1] = end_at(&list, k, part->line.points[part->line.count - 1], ground);
		join_ring(part);
	}
	for (size_t c = 0; c < group->crack_count; c++)
		share_out_tiles(arena, tiling, cracks, group->cracks[c], ground, &list);
	for (size_t k = 0; k < list.parts.count; k++) {
		struct crack_part *part = &list.parts.items[k];
		part->way = way_of(arena, part, ground, reach);
		lay_legs(arena, tiling, part, reach);
		hold_beside(arena, tiling->field, cracks->cracks[part->crack].crack, part, ground,
		            reach->half_width);
	}
	*out_count = list.parts.count;
	return list.parts.items;
}
