#include "layout/soft_unit.h"

#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/sight.h"
#include "geometry/tolerance.h"

/* A stretch of a part in one panel. */
struct panel_part {
	size_t panel;
	struct crack_part part;
};

struct panel_part_list {
	ARRAY_OF(struct panel_part) stretches;
};

static bool is_end(struct line line, size_t index, struct point p)
{
	return point_distance(line.points[index], p) < TOLERANCE_SAME;
}

/* An end in the field whose way on leaves the panel ends at the panel's border. */
static enum part_end end_in_panel(struct arena *arena, const struct region *ground,
                                  const struct crack_part *whole, int which)
{
	struct line line = whole->line, way = whole->way;
	struct segment on = {line.points[which ? line.count - 1 : 0],
	                     way.points[which ? way.count - 1 : 0]};
	if (whole->ends[which] != PART_END_FREE || clip_holds(arena, on, ground))
		return whole->ends[which];
	return PART_END_BORDER;
}

/* The way along a stretch: prolonged where the part itself is; its other ends are borders of
 * the panel. */
static void cut_way(struct arena *arena, const struct region *ground,
                    const struct crack_part *whole, struct crack_part *part)
{
	struct line line = part->line;
	struct line way = {ARENA_ARRAY(arena, struct point, line.count + 2), 0};
	size_t last = whole->line.count - 1, last_way = whole->way.count - 1;
	bool first_is_end = is_end(whole->line, 0, line.points[0]);
	bool last_is_end = is_end(whole->line, last, line.points[line.count - 1]);
	if (first_is_end && !is_end(whole->way, 0, line.points[0]))
		way.points[way.count++] = whole->way.points[0];
	for (size_t k = 0; k < line.count; k++)
		way.points[way.count++] = line.points[k];
	if (last_is_end && !is_end(whole->way, last_way, line.points[line.count - 1]))
		way.points[way.count++] = whole->way.points[last_way];
	part->way = way;
	part->ends[0] = first_is_end ? end_in_panel(arena, ground, whole, 0) : PART_END_BORDER;
	part->ends[1] = last_is_end ? end_in_panel(arena, ground, whole, 1) : PART_END_BORDER;
}

/* Every tile goes with the nearest stretch of its panel, those first that no border parts from
 * it. */
static struct panel_part *nearest_panel_part(struct arena *arena, const struct region *ground,
                                             struct panel_part_list *list, size_t from,
                                             size_t panel, struct point p)
{
	struct panel_part *best = NULL;
	struct sight least = sight_none();
	for (size_t k = from; k < list->stretches.count; k++) {
		if (list->stretches.items[k].panel != panel)
			continue;
		struct sight sight = sight_of(arena, ground, p, list->stretches.items[k].part.line);
		if (sight_is_better(sight, least)) {
			least = sight;
			best = &list->stretches.items[k];
		}
	}
	return best;
}

static void cut_part(struct arena *arena, const struct tiling *tiling,
                     const struct crack_part *whole, struct panel_part_list *list)
{
	size_t count, first = list->stretches.count;
	const struct panel_line *lines = panel_lines(arena, tiling, whole->line, &count);
	for (size_t k = 0; k < count; k++) {
		struct panel_part stretch = {lines[k].panel, *whole};
		stretch.part.line = lines[k].line;
		struct region ground = {&tiling->panels[lines[k].panel].ground, 1};
		cut_way(arena, &ground, whole, &stretch.part);
		stretch.part.tiles = ARENA_ARRAY(arena, struct tile_ref, whole->tile_count);
		stretch.part.tile_count = 0;
		*array_push(arena, &list->stretches) = stretch;
	}
	for (size_t t = 0; t < whole->tile_count; t++) {
		struct tile_ref tile = whole->tiles[t];
		struct region ground = {&tiling->panels[tile.panel].ground, 1};
		struct panel_part *stretch =
			nearest_panel_part(arena, &ground, list, first, tile.panel,
		                           ring_middle(tile_ref_ring(arena, tiling, tile)));
		if (stretch)
			stretch->part.tiles[stretch->part.tile_count++] = tile;
	}
}

static bool lines_meet(struct line a, struct line b)
{
	for (size_t i = 0; i + 1 < a.count; i++)
		for (size_t k = 0; k + 1 < b.count; k++)
			if (segment_gap((struct segment){a.points[i], a.points[i + 1]},
			                (struct segment){b.points[k], b.points[k + 1]}) <
			    TOLERANCE_WHOLE)
				return true;
	return false;
}

static bool hang_together(struct arena *arena, const struct tiling *tiling,
                          const struct panel_part *a, const struct panel_part *b)
{
	struct region ground = {&tiling->panels[a->panel].ground, 1};
	return a->panel == b->panel &&
	       (lines_meet(a->part.line, b->part.line) ||
	        crossed_hang_together(arena, tiling, a->part.tiles, a->part.tile_count,
	                              b->part.tiles, b->part.tile_count, &ground));
}

/* Number of the first stretch that each hangs together with, itself where it is the first. */
static size_t *leaders_of(struct arena *arena, const struct tiling *tiling,
                          const struct panel_part *parts, size_t count)
{
	size_t *leaders = ARENA_ARRAY(arena, size_t, count);
	for (size_t b = 0; b < count; b++) {
		leaders[b] = b;
		for (size_t a = 0; a < b; a++) {
			size_t one = leaders[a], other = leaders[b];
			if (one == other || !hang_together(arena, tiling, &parts[a], &parts[b]))
				continue;
			size_t low = one < other ? one : other, high = one < other ? other : one;
			for (size_t k = 0; k <= b; k++)
				if (leaders[k] == high)
					leaders[k] = low;
		}
	}
	return leaders;
}

/* Ground near enough to the crack that the strip may still reach beyond a joint there. */
static struct region joint_limit(struct arena *arena, const struct soft_setting *setting,
                                 const struct soft_unit *unit)
{
	double distance = setting->reach.half_width + setting->reach.one_tile - setting->beyond -
	                  setting->tiling->module->joint / 2;
	struct region *bands = ARENA_ARRAY(arena, struct region, unit->part_count);
	for (size_t k = 0; k < unit->part_count; k++)
		bands[k] = overlay_band(arena, unit->parts[k]->way, distance);
	return overlay_union_all(arena, bands, unit->part_count);
}

/* Within a distance of the cracks, and of their ways on to a border. */
static struct region lines_band(struct arena *arena, const struct soft_unit *unit, double distance)
{
	ARRAY_OF(struct region) bands = {0};
	for (size_t k = 0; k < unit->part_count; k++)
		*array_push(arena, &bands) = overlay_band(arena, unit->parts[k]->line, distance);
	for (size_t k = 0; k < unit->end_count; k++)
		if (unit->ends[k].at_border)
			*array_push(arena, &bands) =
				overlay_band(arena, soft_end_ahead(arena, &unit->ends[k]),
			                     distance);
	return overlay_union_all(arena, bands.items, bands.count);
}

/* No tile is crossed: the tile joint the crack runs in. */
static struct region joint_ground(struct arena *arena, const struct soft_setting *setting,
                                  const struct soft_unit *unit)
{
	struct region *bands = ARENA_ARRAY(arena, struct region, unit->part_count);
	for (size_t k = 0; k < unit->part_count; k++) {
		double reach = setting->cracks->cracks[unit->parts[k]->crack].reach;
		bands[k] = overlay_band(arena, unit->parts[k]->way,
		                        fmax(reach, setting->tiling->module->joint / 2));
	}
	return overlay_union_all(arena, bands, unit->part_count);
}

static struct region corridor_ground(struct arena *arena, const struct soft_setting *setting,
                                     const struct soft_unit *unit, const struct region *strip,
                                     const struct region *domain)
{
	if (unit->crossed.count == 0) {
		struct region joint = joint_ground(arena, setting, unit);
		return overlay_intersection(arena, &joint, domain);
	}
	struct region limit = joint_limit(arena, setting, unit);
	struct region near = overlay_intersection(arena, strip, &limit);
	/* With the border of the crossed cells, half a joint outside the tile. */
	struct region cells = overlay_offset(arena, &unit->crossed, TOLERANCE_WHOLE, OVERLAY_MITRE);
	struct region both = overlay_union(arena, &near, &cells);
	return overlay_intersection(arena, &both, domain);
}

static void close_group(struct arena *arena, const struct cracks *cracks,
                        const struct crack_group *group, struct corridor *corridor)
{
	ARRAY_OF(struct tile_ref) tiles = {0};
	for (size_t k = 0; k < group->crack_count; k++) {
		const struct placed_crack *crack = &cracks->cracks[group->cracks[k]];
		for (size_t t = 0; t < crack->crossed_count; t++)
			*array_push(arena, &tiles) = crack->crossed[t];
	}
	corridor_close_tiles(corridor, tiles.items, tiles.count);
}

/* No joint runs through crossed tile of any group near by, over any crack, or past its end. */
static void close_cracks(struct arena *arena, const struct soft_setting *setting,
                         struct soft_unit *unit)
{
	const struct cracks *cracks = setting->cracks;
	struct box near = box_grown(region_box(&unit->corridor.ground), TOLERANCE_WHOLE);
	for (size_t g = 0; g < cracks->group_count; g++)
		if (box_meets(near, region_box(&cracks->groups[g].crossed)))
			close_group(arena, cracks, &cracks->groups[g], &unit->corridor);
	for (size_t c = 0; c < cracks->crack_count; c++)
		for (size_t r = 0; r < cracks->cracks[c].run_count; r++)
			corridor_close_line(&unit->corridor, cracks->cracks[c].runs[r]);
	for (size_t k = 0; k < unit->end_count; k++)
		if (!unit->ends[k].at_border)
			corridor_close_line(&unit->corridor, soft_end_bar(arena, &unit->ends[k]));
}

static const struct tile_ref *tiles_of(struct arena *arena, const struct soft_unit *unit,
                                       size_t *out_count)
{
	ARRAY_OF(struct tile_ref) tiles = {0};
	for (size_t k = 0; k < unit->part_count; k++)
		for (size_t t = 0; t < unit->parts[k]->tile_count; t++)
			*array_push(arena, &tiles) = unit->parts[k]->tiles[t];
	*out_count = tile_refs_unique(tiles.items, tiles.count);
	return tiles.items;
}

/* Along a stretch of the outline, as deep as what is no tile may be. */
static struct region rim_beyond(struct arena *arena, const struct tiling *tiling,
                                struct segment line)
{
	struct point along = point_unit(point_sub(line.to, line.from));
	struct point out = point_scale(point_left(along), -corridor_rim(tiling));
	struct point corners[] = {line.from, point_add(line.from, out), point_add(line.to, out),
	                          line.to};
	return region_from_ring(arena, (struct ring){corners, 4});
}

/* The crossed tile, and beyond it what lies against it and is too narrow for tile. */
static struct region taken_ground(struct arena *arena, const struct tiling *tiling,
                                  const struct soft_unit *unit)
{
	ARRAY_OF(struct region) taken = {0};
	*array_push(arena, &taken) = unit->crossed;
	for (size_t k = 0; k < unit->outline.count; k++) {
		const struct outline_stretch *stretch = &unit->outline.stretches[k];
		if (stretch->has_step && stretch->is_against)
			*array_push(arena, &taken) = rim_beyond(arena, tiling, stretch->line);
	}
	return overlay_union_all(arena, taken.items, taken.count);
}

static void set_grounds(struct arena *arena, const struct soft_setting *setting,
                        struct soft_unit *unit)
{
	struct corridor *corridor = &unit->corridor;
	struct region band = lines_band(arena, unit, setting->reach.one_tile);
	struct region taken = taken_ground(arena, setting->tiling, unit);
	corridor->beside = overlay_intersection(arena, &band, &corridor->ground);
	corridor->clear_ground = overlay_difference(arena, &corridor->ground, &taken);
	corridor->clear_beside = overlay_difference(arena, &corridor->beside, &taken);
}

static void finish_unit(struct arena *arena, const struct soft_setting *setting,
                        const struct region *strip, struct soft_unit *unit)
{
	struct region panel = {&setting->tiling->panels[unit->panel].ground, 1};
	struct region domain = overlay_difference(arena, &panel, setting->held);
	size_t tile_count;
	const struct tile_ref *tiles = tiles_of(arena, unit, &tile_count);
	unit->crossed = crossed_ground(arena, setting->tiling, tiles, tile_count);
	struct region ground = corridor_ground(arena, setting, unit, strip, &domain);
	unit->corridor = corridor_in(arena, setting->tiling, unit->panel, domain, ground);
	struct ring ring = soft_outline_ring(arena, &unit->corridor, tiles, tile_count);
	unit->ends = soft_ends(arena, setting, &unit->corridor, unit->parts, unit->part_count, ring,
	                       &unit->end_count);
	if (unit->crossed.count > 0)
		close_cracks(arena, setting, unit);
	unit->outline = soft_outline_in(arena, &unit->corridor, ring);
	set_grounds(arena, setting, unit);
}

struct soft_unit *soft_units(struct arena *arena, const struct soft_setting *setting, size_t group,
                             struct soft_footing footing, size_t *out_count)
{
	ARRAY_OF(struct soft_unit) units = {0};
	struct panel_part_list list = {0};
	for (size_t k = 0; k < footing.part_count; k++)
		cut_part(arena, setting->tiling, &footing.parts[k], &list);
	const struct panel_part *stretches = list.stretches.items;
	size_t count = list.stretches.count;
	const size_t *leaders = leaders_of(arena, setting->tiling, stretches, count);
	for (size_t first = 0; first < count; first++) {
		if (leaders[first] != first)
			continue;
		struct soft_unit unit = {.group = group, .panel = stretches[first].panel};
		unit.parts = ARENA_ARRAY(arena, const struct crack_part *, count);
		for (size_t k = first; k < count; k++)
			if (leaders[k] == first)
				unit.parts[unit.part_count++] = &stretches[k].part;
		finish_unit(arena, setting, footing.strip, &unit);
		*array_push(arena, &units) = unit;
	}
	*out_count = units.count;
	return units.items;
}

bool soft_unit_is_plain(const struct soft_unit *unit)
{
	return unit->end_count == 2 && unit->part_count == 1;
}

/* The joint first met from `p` towards one side, within one tile; NULL: none. */
static const char *joint_beside(const struct soft_setting *setting, const struct soft_unit *unit,
                                struct point p, struct point towards)
{
	const struct region *domain = &unit->corridor.domain;
	struct segment ray = {p, point_add(p, point_scale(towards, setting->reach.one_tile +
	                                                                   TOLERANCE_WHOLE))};
	double least = INFINITY;
	for (size_t r = 0; r < region_ring_count(domain); r++) {
		struct ring ring = region_ring(domain, r);
		for (size_t i = 0; i < ring.count; i++) {
			double share;
			if (segment_crossing(ray, segment_of_ring(ring, i), &share))
				least = fmin(least, share);
		}
	}
	if (least > 1)
		return NULL;
	return soft_setting_joint_at(setting, point_between(ray.from, ray.to, least));
}

/* Points close enough to each other that no border can be missed between them. */
static double sample_step(const struct soft_setting *setting)
{
	return setting->tiling->module->tile_width / 4;
}

const char *soft_unit_joint_beside(struct arena *arena, const struct soft_setting *setting,
                                   const struct soft_unit *unit, bool left)
{
	struct region domain = unit->corridor.domain;
	size_t count;
	const struct line *runs = clip_line(arena, unit->parts[0]->line, &domain, &count);
	const char *beside = NULL;
	for (size_t r = 0; r < count; r++)
		for (size_t i = 0; i + 1 < runs[r].count; i++) {
			struct segment side = {runs[r].points[i], runs[r].points[i + 1]};
			struct point along = point_unit(point_sub(side.to, side.from));
			struct point towards = point_scale(point_left(along), left ? 1 : -1);
			int steps = (int)ceil(segment_length(side) / sample_step(setting)) + 1;
			/* An end on a border is looked at from a hair inside. */
			double hair = fmin(0.5, 2 * TOLERANCE_WHOLE / segment_length(side));
			for (int k = 0; k <= steps; k++) {
				double share = fmin(fmax((double)k / steps, hair), 1 - hair);
				const char *joint =
					joint_beside(setting, unit,
				                     point_between(side.from, side.to, share),
				                     towards);
				if (!joint)
					return NULL;
				beside = beside ? beside : joint;
			}
		}
	return beside;
}
