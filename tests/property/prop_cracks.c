/* Random cracks on random tile: what E-C1, E-C2 and E-C3 promise holds, whatever was drawn. */
#include "support/program.h"

#include <string.h>

#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "support/laid.h"
#include "support/seed.h"

enum { FLOORS = 60, FLOORS_LONG = 1000 };
static const double NEAR = 1e-3;

static const char *const PATTERNS[] = {"pattern='grid'", "pattern='running' shift='1/2'",
                                       "pattern='running' shift='1/3' angle='90'",
                                       "pattern='grid' angle='45'"};

static int between(struct seed *seed, int from, int to)
{
	return from + seed_below(seed, to - from);
}

/* Two to four points; some begin at a wall. */
static const char *random_crack(struct arena *arena, struct seed *seed, int number, int wide,
                                int deep)
{
	int points = between(seed, 2, 5);
	int x = between(seed, 200, wide - 200);
	int y = seed_below(seed, 2) ? 0 : between(seed, 200, deep - 200);
	const char *text = arena_printf(arena, "<crack id='K%d' width='1mm'><at x='%d' y='%d'/>",
	                                number, x, y);
	for (int k = 1; k < points; k++) {
		x = between(seed, 60, wide - 60);
		y = between(seed, y + 60 < deep - 60 ? y + 59 : deep - 61, deep - 60);
		if (k + 1 == points && seed_below(seed, 2))
			y = deep;
		text = arena_printf(arena, "%s<at x='%d' y='%d'/>", text, x, y);
	}
	return arena_printf(arena, "%s</crack>", text);
}

static const struct placed_lay *random_floor(struct arena *arena, struct seed *seed)
{
	int wide = between(seed, 2500, 6000), deep = between(seed, 2500, 6000);
	int tile = 97 + 100 * seed_below(seed, 6);
	const char *more = "", *cracks = "";
	if (seed_below(seed, 2))
		more = arena_printf(arena,
		                    "<obstacle id='C1' kind='column' x='%d' y='%d' wide='300' "
		                    "deep='300'/>",
		                    between(seed, 500, wide - 500), between(seed, 500, deep - 500));
	for (int k = between(seed, 1, 4); k > 0; k--)
		cracks = arena_printf(arena, "%s%s", random_crack(arena, seed, k, wide, deep),
		                      cracks);
	if (seed_below(seed, 3) == 0) {
		int x = between(seed, 800, wide - 800);
		cracks = arena_printf(arena,
		                      "%s<slab-joint id='J1' kind='construction' width='8mm'>"
		                      "<at x='%d' y='0'/><at x='%d' y='%d'/></slab-joint>",
		                      cracks, x, x, deep);
	}
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='room' slab='S1'><corners>"
		"<corner id='south' x='0' y='0'/><corner id='east' x='%d' y='0'/>"
		"<corner id='north' x='%d' y='%d'/><corner id='west' x='0' y='%d'/>"
		"</corners>%s</room>"
		"%s<tile id='T1' kind='porcelain' wide='%dmm' long='%dmm' thick='10mm'/>"
		"<lay id='L1' rooms='room' tile='T1' joint='3mm' %s><start x='%d' y='%d'/></lay>"
		"<membrane id='M1' rooms='room' kind='sheet' movement='3mm' cover='partial' "
		"roll-wide='1000mm' roll-long='20m' lap='50mm'/></floor>",
		wide, wide, deep, deep, more, cracks, tile,
		seed_below(seed, 2) ? tile : 2 * tile + 3, PATTERNS[seed_below(seed, 4)],
		between(seed, 0, 300), between(seed, 0, 300));
	return laid_from_text(arena, text);
}

static struct region all_strips(struct arena *arena, const struct strips *strips)
{
	struct region *regions = ARENA_ARRAY(arena, struct region, strips->strip_count);
	for (size_t k = 0; k < strips->strip_count; k++)
		regions[k] = strips->strips[k].region;
	return overlay_union_all(arena, regions, strips->strip_count);
}

/* E-C1: every crossed piece lies on a strip. */
static void check_crossed(struct arena *arena, const struct placed_lay *lay, int floor)
{
	struct region strips = all_strips(arena, lay->strips);
	for (size_t c = 0; c < lay->cracks->crack_count; c++) {
		const struct placed_crack *crack = &lay->cracks->cracks[c];
		for (size_t t = 0; t < crack->crossed_count; t++) {
			struct region tile =
				region_from_ring(arena, tile_ref_ring(arena, lay->tiling,
			                                              crack->crossed[t]));
			/* A column inside a tile is no tile. */
			tile = overlay_intersection(arena, &tile, &lay->field->ground);
			struct region bare = overlay_difference(arena, &tile, &strips);
			if (region_area(&bare) > 1)
				fail_msg("floor %d: %s: a crossed tile lies %d mm2 off the strip",
				         floor, crack->id, (int)region_area(&bare));
		}
	}
}

/* E-C2: no corner of a strip is farther from its cracks, prolonged, than it may be; none lies
 * over a carried joint. */
static void check_reach(struct arena *arena, const struct placed_lay *lay, int floor)
{
	for (size_t s = 0; s < lay->strips->strip_count; s++) {
		const struct strip *strip = &lay->strips->strips[s];
		double most = strip->half_width + lay->module->tile_long;
		for (size_t r = 0; r < region_ring_count(&strip->region); r++) {
			struct ring ring = region_ring(&strip->region, r);
			for (size_t k = 0; k < ring.count; k++) {
				double least = INFINITY;
				for (size_t c = 0; c < lay->cracks->crack_count; c++)
					for (size_t n = 0; n < lay->cracks->cracks[c].run_count;
					     n++) {
						struct line run = lay->cracks->cracks[c].runs[n];
						for (size_t i = 0; i + 1 < run.count; i++)
							least = fmin(
								least,
								segment_distance(
									(struct segment){
										run.points[i],
										run.points[i + 1]},
									ring.points[k]));
					}
				if (least > most + strip->overrun + NEAR)
					fail_msg("floor %d: %s reaches %d mm", floor, strip->id,
					         (int)least);
			}
		}
		for (size_t c = 0; c < lay->field->carried_count; c++) {
			struct region both = overlay_intersection(arena, &strip->region,
			                                          &lay->field->carried[c].band);
			assert_near(region_area(&both), 0, 1);
		}
	}
}

static bool is_in_crossed(struct arena *arena, const struct placed_lay *lay, size_t panel,
                          struct point p)
{
	for (size_t c = 0; c < lay->cracks->crack_count; c++)
		for (size_t t = 0; t < lay->cracks->cracks[c].crossed_count; t++) {
			struct tile_ref tile = lay->cracks->cracks[c].crossed[t];
			if (tile.panel == panel &&
			    ring_holds(tile_ref_ring(arena, lay->tiling, tile), p))
				return true;
		}
	return false;
}

/* Crossed tile on both sides of a side of the joint, anywhere along it. */
static bool is_through_crossed(struct arena *arena, const struct placed_lay *lay, size_t panel,
                               struct segment side)
{
	const double step = 20, hair = 0.5; /* mm */
	struct point along = point_unit(point_sub(side.to, side.from));
	struct point aside = point_scale(point_left(along), lay->module->joint / 2 + hair);
	for (double at = step / 2; at < segment_length(side); at += step) {
		struct point p = point_add(side.from, point_scale(along, at));
		if (is_in_crossed(arena, lay, panel, point_add(p, aside)) &&
		    is_in_crossed(arena, lay, panel, point_sub(p, aside)))
			return true;
	}
	return false;
}

/* E-C3: on tile joints, on the strip, clear of crossed tile; each edge begins where the last
 * one ended; figures as the line has them. */
static void check_soft(struct arena *arena, const struct placed_lay *lay,
                       const struct soft_joint *joint, int floor)
{
	const struct network *network = lay->tiling->network;
	struct region strips = all_strips(arena, lay->strips);
	struct region grown = overlay_offset(arena, &strips, NEAR, OVERLAY_MITRE);
	struct point position = lay->tiling->panels[joint->panel].position, last = {0, 0};
	double length = 0;
	for (size_t k = 0; k < joint->place_count; k++) {
		struct segment edge =
			network_segment(network, lay->module, joint->places[k], position);
		struct point from = joint->reversed[k] ? edge.to : edge.from;
		if (k > 0)
			assert_near(point_distance(from, last), 0, 1e-6);
		last = joint->reversed[k] ? edge.from : edge.to;
	}
	for (size_t k = 0; k + 1 < joint->line.count; k++) {
		struct segment side = {joint->line.points[k], joint->line.points[k + 1]};
		length += segment_length(side);
		if (is_through_crossed(arena, lay, joint->panel, side))
			fail_msg("floor %d: %s runs through crossed tile", floor, joint->id);
		if (!clip_holds(arena, side, &grown))
			fail_msg("floor %d: %s leaves the strip", floor, joint->id);
	}
	assert_near(length, joint->length, 1e-3);
	assert_near(joint->cost, joint->length + 150 * joint->turns, 1e-2);
}

/* How much of the field's border lies along crossed cells: there is no room for a joint. */
static double border_along_crossed(struct arena *arena, const struct placed_lay *lay,
                                   const struct crack_group *group)
{
	double length = 0;
	for (size_t b = 0; b < lay->field->border_count; b++) {
		struct segment side = {lay->field->borders[b].from, lay->field->borders[b].to};
		size_t count;
		const struct stretch *on = clip_segment(arena, side, &group->crossed, &count);
		for (size_t k = 0; k < count; k++)
			length += (on[k].to - on[k].from) * segment_length(side);
	}
	return length;
}

/* A group has soft joints on both sides, save where its tile lies against the border, or where
 * it runs into a wall so slantwise that no joint has room between them: that is rare. */
struct tally {
	long groups, lacking, sides, strips;
};

static void check_sides(struct arena *arena, const struct placed_lay *lay, struct tally *tally)
{
	for (size_t g = 0; g < lay->cracks->group_count; g++) {
		const struct crack_group *group = &lay->cracks->groups[g];
		size_t served = 0;
		for (size_t k = 0; k < lay->strips->soft_count; k++)
			served += lay->strips->softs[k].group == g;
		tally->groups++;
		tally->sides += (long)served;
		if (group->crossed.count > 0 && served < 2 &&
		    border_along_crossed(arena, lay, group) < 2 * lay->module->tile_long)
			tally->lacking++;
	}
}

static void test_random_floors(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_cracks");
	int floors = getenv("JURYSTICK_LONG") ? FLOORS_LONG : FLOORS;
	struct tally tally = {0};
	for (int k = 0; k < floors; k++) {
		struct arena *arena = arena_new();
		const struct placed_lay *lay = random_floor(arena, &seed);
		check_crossed(arena, lay, k);
		check_reach(arena, lay, k);
		for (size_t s = 0; s < lay->strips->soft_count; s++)
			check_soft(arena, lay, &lay->strips->softs[s], k);
		check_sides(arena, lay, &tally);
		tally.strips += (long)lay->strips->strip_count;
		arena_free(arena);
	}
	assert_true(tally.strips >= floors && tally.sides >= 2 * tally.strips);
	assert_true(tally.lacking * 25 <= tally.groups);
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_random_floors)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
