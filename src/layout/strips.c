#include "layout/strips.h"

#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"
#include "layout/cover.h"
#include "units/length.h"

struct making {
	struct arena *arena;
	const struct tiling *tiling;
	const struct cracks *cracks;
	const struct rules *rules;
	const struct plan_membrane *membrane;
	bool is_full;         /* no strips, but their soft joints */
	struct region ground; /* where a strip can lie */
	struct region held;
	struct soft_setting setting;
	struct strip_goods goods;
	struct soft_joint_list softs;
	ARRAY_OF(struct strip) strips;
};

/* A group's parts and the ground their legs may cover. */
struct laying {
	size_t group;
	struct crack_part *parts;
	size_t part_count;
	struct region ground;
};

static struct strip_reach reach_of(const struct making *making)
{
	const struct module *module = making->tiling->module;
	const struct rules *rules = making->rules;
	double least = rules_figure(rules, FIGURE_STRIP_TILE_WIDTHS) * module->tile_width;
	double own = length_mm(making->membrane->overrun_nm);
	return (struct strip_reach){
		.half_width = fmax(length_mm(making->membrane->strip_nm), least) / 2,
		.overrun = own > 0 ? own
	                           : fmax(module->tile_long,
	                                  rules_figure(rules, FIGURE_OVERRUN_LEAST)),
		.one_tile = module->tile_long,
		.straight =
			rules_figure(rules, FIGURE_STRIP_STRAIGHT_TILE_WIDTHS) * module->tile_width,
	};
}

static struct strip_goods goods_of(const struct making *making)
{
	const struct plan_membrane *membrane = making->membrane;
	bool inches = making->tiling->field->site->inches;
	struct strip_goods goods = {
		.step = rules_figure(making->rules,
	                             inches ? FIGURE_STRIP_STEP_INCH : FIGURE_STRIP_STEP_METRIC),
		.seam_clear = rules_figure(making->rules, FIGURE_STRIP_SEAM_CLEAR),
	};
	if (membrane->kind == PLAN_MEMBRANE_LIQUID)
		return goods;
	goods.roll_wide = length_mm(membrane->roll_wide_nm);
	goods.roll_long = length_mm(membrane->roll_long_nm);
	goods.lap = length_mm(membrane->lap_nm);
	return goods;
}

static struct soft_setting setting_of(const struct making *making)
{
	struct soft_setting setting = {
		.tiling = making->tiling,
		.cracks = making->cracks,
		.held = &making->held,
		.reach = reach_of(making),
		.beyond = rules_figure(making->rules, FIGURE_STRIP_BEYOND_SOFT),
		.turn_penalty = rules_figure(making->rules, FIGURE_SOFT_TURN_PENALTY),
		.one_side = making->membrane->soft_joints == PLAN_SOFT_ONE,
	};
	setting.perimeter =
		perimeter_runs(making->arena, making->tiling->field, &setting.perimeter_count);
	setting.field_joints = field_joints(making->arena, making->tiling, making->cracks,
	                                    &setting.field_joint_count);
	return setting;
}

/* The crack's line, prolonged by the overrun and no more where it ends in the field. */
static struct line limit_line(struct arena *arena, const struct crack_part *part, double overrun)
{
	struct line way = part->way;
	struct line line = {ARENA_ARRAY(arena, struct point, way.count), way.count};
	for (size_t k = 0; k < way.count; k++)
		line.points[k] = way.points[k];
	struct point ends[] = {part->line.points[0], part->line.points[part->line.count - 1]};
	size_t last[] = {0, way.count - 1};
	for (int end = 0; end < 2; end++) {
		struct point past = point_sub(way.points[last[end]], ends[end]);
		double length = fmin(point_length(past), overrun);
		line.points[last[end]] =
			length > 0 ? point_add(ends[end], point_scale(point_unit(past), length))
				   : ends[end];
	}
	return line;
}

/* Never farther from the crack than half its width and one tile. */
static struct region limit_of(const struct making *making, const struct laying *laying)
{
	const struct strip_reach *reach = &making->setting.reach;
	const struct cracks *cracks = making->cracks;
	const struct crack_group *group = &cracks->groups[laying->group];
	double far = reach->half_width + reach->one_tile;
	ARRAY_OF(struct region) bands = {0};
	for (size_t k = 0; k < laying->part_count; k++)
		*array_push(making->arena, &bands) =
			overlay_band(making->arena,
		                     limit_line(making->arena, &laying->parts[k], reach->overrun),
		                     far);
	/* Where it goes on under an obstacle it is still the crack. */
	for (size_t k = 0; k < group->crack_count; k++) {
		struct line whole = cracks->cracks[group->cracks[k]].crack->line;
		whole = frame_line_in(making->arena, making->tiling->field->frame, whole);
		*array_push(making->arena, &bands) = overlay_band(making->arena, whole, far);
	}
	struct region limit = overlay_union_all(making->arena, bands.items, bands.count);
	return overlay_intersection(making->arena, &limit, &making->ground);
}

/* The part as it is cut: whole steps. */
static struct crack_part rounded(struct arena *arena, const struct crack_part *exact, double step)
{
	struct crack_part part = *exact;
	part.legs = ARENA_ARRAY(arena, struct strip_leg, part.leg_count);
	for (size_t k = 0; k < part.leg_count; k++) {
		part.legs[k] = exact->legs[k];
		strip_leg_round(&part.legs[k], step, k == 0 && part.ends[0] == PART_END_FREE);
	}
	return part;
}

static struct laying as_cut(const struct making *making, const struct laying *exact)
{
	struct laying laying = *exact;
	laying.parts = ARENA_ARRAY(making->arena, struct crack_part, laying.part_count);
	for (size_t k = 0; k < laying.part_count; k++)
		laying.parts[k] = rounded(making->arena, &exact->parts[k], making->goods.step);
	return laying;
}

/* Two pieces that follow each other overlap by the membrane's lap. */
static void lap_legs(struct crack_part *part, double lap)
{
	for (size_t k = 0; k + 1 < part->leg_count; k++) {
		part->legs[k].after = fmax(part->legs[k].after, lap / 2);
		part->legs[k + 1].before = fmax(part->legs[k + 1].before, lap / 2);
	}
}

static struct region laid_ground(const struct making *making, const struct laying *laying)
{
	ARRAY_OF(struct region) legs = {0};
	for (size_t p = 0; p < laying->part_count; p++)
		for (size_t k = 0; k < laying->parts[p].leg_count; k++)
			*array_push(making->arena, &legs) =
				strip_leg_ground(making->arena, &laying->parts[p].legs[k],
			                         &laying->ground);
	return overlay_union_all(making->arena, legs.items, legs.count);
}

static struct laying lay_group(const struct making *making, size_t index)
{
	const struct crack_group *group = &making->cracks->groups[index];
	struct laying laying = {.group = index};
	laying.parts = crack_parts(making->arena, making->tiling, making->cracks, group,
	                           &making->ground, &making->setting.reach, &laying.part_count);
	laying.ground = limit_of(making, &laying);
	for (size_t k = 0; k < laying.part_count; k++)
		lap_legs(&laying.parts[k], making->goods.lap);
	return laying;
}

static struct crack_part *nearest_part(const struct laying *laying, size_t panel, struct point p)
{
	struct crack_part *best = NULL;
	double least = INFINITY;
	for (size_t k = 0; k < laying->part_count; k++) {
		struct crack_part *part = &laying->parts[k];
		double distance = strip_leg_distance(crack_part_leg(part, p), p);
		if (part->panels[panel] && distance < least - TOLERANCE_SAME) {
			least = distance;
			best = part;
		}
	}
	return best;
}

/* The legs grow until they reach beyond the far edge of their soft joints. A joint is taken a
 * tile width at a time, each stretch by the leg beside it. */
static void reach_beyond(const struct making *making, struct laying *laying,
                         const struct soft_joint *joint)
{
	const struct module *module = making->tiling->module;
	double margin = making->setting.beyond + module->joint / 2;
	for (size_t k = 0; k + 1 < joint->line.count; k++) {
		struct segment side = {joint->line.points[k], joint->line.points[k + 1]};
		int steps = (int)ceil(segment_length(side) / module->tile_width);
		for (int s = 0; s < steps; s++) {
			struct point ends[] = {point_between(side.from, side.to, (double)s / steps),
			                       point_between(side.from, side.to,
			                                     (s + 1.0) / steps)};
			struct point middle = point_between(ends[0], ends[1], 0.5);
			struct crack_part *part = nearest_part(laying, joint->panel, middle);
			crack_part_hold(making->arena, part, ends, 2, margin);
		}
	}
}

/* Ground under a group, and what it is widened by. */
struct widening {
	const struct making *making;
	const struct laying *laying;
};

static struct soft_footing footing_of(const struct making *making, const struct laying *laying)
{
	struct region *laid = ARENA_NEW(making->arena, struct region);
	*laid = laid_ground(making, laying);
	return (struct soft_footing){laying->parts, laying->part_count, laid};
}

/* As far as strips ever reach: one tile more. */
static struct soft_footing widen(const void *context)
{
	const struct widening *w = context;
	struct laying wide = as_cut(w->making, w->laying);
	for (size_t p = 0; p < wide.part_count; p++)
		for (size_t k = 0; k < wide.parts[p].leg_count; k++) {
			wide.parts[p].legs[k].left += w->making->setting.reach.one_tile;
			wide.parts[p].legs[k].right += w->making->setting.reach.one_tile;
		}
	return footing_of(w->making, &wide);
}

/* The soft joints run on the strip as it would be cut without them. */
static void add_softs(struct making *making, struct laying *laying)
{
	size_t first = making->softs.softs.count;
	const char *origin = making->cracks->groups[laying->group].origin;
	struct laying cut = as_cut(making, laying);
	struct widening wider = {making, laying};
	making->setting.strip = arena_printf(making->arena, "%s.strip", origin);
	soft_joints_of_group(making->arena, &making->setting, laying->group,
	                     footing_of(making, &cut), (struct soft_widening){widen, &wider},
	                     &making->softs);
	for (size_t k = first; k < making->softs.softs.count; k++)
		reach_beyond(making, laying, &making->softs.softs.items[k]);
}

static void list_cracks(const struct making *making, struct strip *strip)
{
	const struct crack_group *group = &making->cracks->groups[strip->group];
	strip->cracks = ARENA_ARRAY(making->arena, const char *, group->crack_count);
	for (size_t k = 0; k < group->crack_count; k++)
		strip->cracks[strip->crack_count++] = making->cracks->cracks[group->cracks[k]].id;
}

static struct strip strip_from_laying(const struct making *making, const struct laying *laying)
{
	const struct crack_group *group = &making->cracks->groups[laying->group];
	struct strip strip = {
		.id = arena_printf(making->arena, "%s.strip", group->origin),
		.group = laying->group,
		.half_width = making->setting.reach.half_width,
		.overrun = making->setting.reach.overrun,
		.pending = group->pending,
		.region = laid_ground(making, laying),
	};
	struct strip_piece_list list = {0};
	for (size_t p = 0; p < laying->part_count; p++)
		for (size_t k = 0; k < laying->parts[p].leg_count; k++) {
			const struct strip_leg *leg = &laying->parts[p].legs[k];
			strip.width = fmax(strip.width, leg->left + leg->right);
			size_t before = list.pieces.count;
			strip_leg_cut(making->arena, leg, &laying->ground, &making->goods, &list);
			/* Another stretch of crack begins with an edge of its own. */
			if (k == 0 && before < list.pieces.count)
				list.pieces.items[before].lap = 0;
		}
	strip.pieces = list.pieces.items;
	strip.piece_count = list.pieces.count;
	list_cracks(making, &strip);
	return strip;
}

static bool overlap(const struct making *making, const struct strip *a, const struct strip *b)
{
	struct region common = overlay_intersection(making->arena, &a->region, &b->region);
	return region_area(&common) > TOLERANCE_AREA_MM2;
}

static struct strip merged(const struct making *making, const struct strip *a,
                           const struct strip *b)
{
	struct strip strip = *a;
	strip.cracks = ARENA_ARRAY(making->arena, const char *, a->crack_count + b->crack_count);
	strip.pieces =
		ARENA_ARRAY(making->arena, struct strip_piece, a->piece_count + b->piece_count);
	for (size_t k = 0; k < a->crack_count + b->crack_count; k++)
		strip.cracks[k] = k < a->crack_count ? a->cracks[k] : b->cracks[k - a->crack_count];
	for (size_t k = 0; k < a->piece_count + b->piece_count; k++)
		strip.pieces[k] = k < a->piece_count ? a->pieces[k] : b->pieces[k - a->piece_count];
	strip.crack_count += b->crack_count;
	strip.piece_count += b->piece_count;
	strip.width = fmax(a->width, b->width);
	strip.pending = a->pending || b->pending;
	strip.region = overlay_union(making->arena, &a->region, &b->region);
	return strip;
}

/* Strips that overlap become one, until none do. */
static void add_strip(struct making *making, struct strip strip)
{
	for (size_t k = 0; k < making->strips.count; k++) {
		struct strip *other = &making->strips.items[k];
		if (!overlap(making, other, &strip))
			continue;
		struct strip both = other->group < strip.group ? merged(making, other, &strip)
		                                               : merged(making, &strip, other);
		for (size_t m = k; m + 1 < making->strips.count; m++)
			making->strips.items[m] = making->strips.items[m + 1];
		making->strips.count--;
		add_strip(making, both);
		return;
	}
	*array_push(making->arena, &making->strips) = strip;
}

static int by_group(const struct strip *a, const struct strip *b)
{
	return a->group < b->group ? -1 : a->group > b->group;
}

static void sort_strips(struct making *making)
{
	struct strip *strips = making->strips.items;
	for (size_t k = 1; k < making->strips.count; k++)
		for (size_t m = k; m > 0 && by_group(&strips[m], &strips[m - 1]) < 0; m--) {
			struct strip swap = strips[m];
			strips[m] = strips[m - 1];
			strips[m - 1] = swap;
		}
}

/* Pieces in the order of laying, cut from the rolls one after the other. */
static void number_pieces(struct making *making)
{
	double left = making->goods.roll_long;
	int roll = making->goods.roll_wide > 0 ? 1 : 0;
	for (size_t s = 0; s < making->strips.count; s++) {
		struct strip *strip = &making->strips.items[s];
		for (size_t k = 0; k < strip->piece_count; k++) {
			struct strip_piece *piece = &strip->pieces[k];
			if (making->goods.roll_long > 0 && piece->length > left + TOLERANCE_SAME) {
				roll++;
				left = making->goods.roll_long;
			}
			left -= piece->length;
			piece->order = (int)k + 1;
			piece->roll = roll;
			strip->length += piece->length - piece->lap;
		}
	}
}

static struct cover cover_of(const struct making *making)
{
	const struct plan *plan = making->tiling->field->site->plan;
	struct cover cover = {.membrane = making->membrane};
	cover.is_full = making->is_full;
	cover.full_wanted = cover_is_wanted(plan, making->membrane);
	struct region *parts = ARENA_ARRAY(making->arena, struct region, making->strips.count);
	for (size_t k = 0; k < making->strips.count; k++)
		parts[k] = making->strips.items[k].region;
	cover.region = cover.is_full
	                       ? making->ground
	                       : overlay_union_all(making->arena, parts, making->strips.count);
	cover.area_mm2 = region_area(&cover.region);
	cover.ground = making->ground;
	cover.ground_mm2 = region_area(&making->ground);
	cover.alternate_mm2 = cover.full_wanted ? cover.ground_mm2 : 0;
	return cover;
}

static void place_all(struct making *making)
{
	making->held = cracks_held_ground(making->arena, making->cracks);
	making->ground =
		cover_ground(making->arena, making->tiling, making->cracks, making->membrane);
	making->setting = setting_of(making);
	making->goods = goods_of(making);
	for (size_t g = 0; g < making->cracks->group_count; g++) {
		if (making->cracks->groups[g].state != CRACK_ISOLATE)
			continue;
		struct laying laying = lay_group(making, g);
		if (laying.part_count == 0)
			continue;
		add_softs(making, &laying);
		laying = as_cut(making, &laying);
		if (!making->is_full)
			add_strip(making, strip_from_laying(making, &laying));
	}
	sort_strips(making);
	number_pieces(making);
}

static const struct strips *place(struct making *making)
{
	struct strips *strips = ARENA_NEW(making->arena, struct strips);
	place_all(making);
	*strips = (struct strips){.strips = making->strips.items,
	                          .strip_count = making->strips.count,
	                          .softs = making->softs.softs.items,
	                          .soft_count = making->softs.softs.count,
	                          .cover = cover_of(making)};
	return strips;
}

const struct strips *strips_place(struct arena *arena, const struct tiling *tiling,
                                  const struct cracks *cracks, const struct rules *rules)
{
	struct making making = {.arena = arena, .tiling = tiling, .cracks = cracks, .rules = rules};
	making.membrane = cover_membrane(tiling->field);
	if (!making.membrane)
		return ARENA_NEW(arena, struct strips);
	making.is_full = cover_is_full(tiling->field->site->plan, making.membrane);
	return place(&making);
}

const struct strips *strips_instead(struct arena *arena, const struct tiling *tiling,
                                    const struct cracks *cracks, const struct rules *rules)
{
	struct making making = {.arena = arena, .tiling = tiling, .cracks = cracks, .rules = rules};
	making.membrane = cover_membrane(tiling->field);
	return making.membrane ? place(&making) : ARENA_NEW(arena, struct strips);
}
