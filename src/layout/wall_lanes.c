#include "layout/wall_lanes.h"

#include "geometry/tolerance.h"

/* A cell met by the wall, and how far into it the wall lies. */
struct meeting {
	const struct cut_profile *profile;
	double phase;
};

static const struct cut_profile *profile_of(const struct wall_lanes *w, double extent)
{
	for (size_t i = 0; i < w->profile_count; i++)
		if (fabs(w->profiles[i].period - extent) <= 2 * TOLERANCE_SAME)
			return &w->profiles[i];
	return NULL;
}

static struct meeting meet(const struct wall_lanes *w, const struct lane *lane, double at)
{
	double offset;
	const struct lane_cell *cell = lane_cell_at(w->lanes, lane, at, w->sign < 0, &offset);
	double extent = cell->to - cell->from;
	return (struct meeting){profile_of(w, extent), w->sign > 0 ? offset : extent - offset};
}

/* ---- the wall's lanes ---- */

bool wall_lanes_has_any(const struct wall_lanes *w)
{
	return w->lanes && w->lanes->lane_count > 0;
}

bool wall_lanes_is_slanted(const struct wall_lanes *w)
{
	for (size_t k = 0; k < w->lanes->lane_count; k++)
		if (!w->lanes->lanes[k].is_slanted)
			return false;
	return true;
}

struct wall_stretch wall_lanes_all(const struct wall_lanes *w)
{
	double from = w->lanes->lanes[0].from;
	return (struct wall_stretch){from, from + w->lanes->across};
}

/* A copy of the lane lies on the stretch by more than a hair. */
static bool is_crossed(const struct wall_lanes *w, const struct lane *lane, struct wall_stretch s)
{
	double first = ceil((s.low - lane->to + TOLERANCE_WHOLE) / w->lanes->across);
	return lane->from + first * w->lanes->across < s.high - TOLERANCE_WHOLE;
}

/* A lane of the stretch whose cut is a size to say: any, where all of them are slanted. */
static bool tells(const struct wall_lanes *w, const struct lane *lane, struct wall_stretch s)
{
	return is_crossed(w, lane, s) && (!lane->is_slanted || wall_lanes_is_slanted(w));
}

static double share_of(const struct wall_lanes *w, const struct lane *lane)
{
	return (lane->to - lane->from) / w->lanes->across;
}

double wall_lanes_penalty(const struct wall_lanes *w, double at)
{
	double sum = 0;
	for (size_t k = 0; k < w->lanes->lane_count; k++) {
		const struct lane *lane = &w->lanes->lanes[k];
		struct meeting met = meet(w, lane, at);
		sum += share_of(w, lane) * cut_profile_worst_penalty(met.profile, met.phase);
	}
	return sum;
}

static bool is_cut(struct meeting met)
{
	return cut_profile_cut(met.profile, met.phase) < met.profile->extent;
}

double wall_lanes_cut_share(const struct wall_lanes *w, double at)
{
	double share = 0;
	for (size_t k = 0; k < w->lanes->lane_count; k++)
		if (is_cut(meet(w, &w->lanes->lanes[k], at)))
			share += share_of(w, &w->lanes->lanes[k]);
	return share;
}

bool wall_lanes_starts_whole(const struct wall_lanes *w, double at, double reach)
{
	for (size_t k = 0; k < w->lanes->lane_count; k++) {
		struct meeting met = meet(w, &w->lanes->lanes[k], at);
		double off = met.phase - met.profile->joint / 2;
		if (fabs(off) <= reach || fabs(off - met.profile->period) <= reach)
			return true;
	}
	return false;
}

static struct wall_cut cut_in(const struct meeting *met)
{
	return (struct wall_cut){
		.cut = cut_profile_cut(met->profile, met->phase),
		.whole = met->profile->extent,
		.small = met->profile->small,
		.worst = cut_profile_worst_cut(met->profile, met->phase),
	};
}

static bool is_lesser(struct wall_cut a, struct wall_cut b)
{
	return a.cut / a.whole < b.cut / b.whole - TOLERANCE_SAME;
}

struct wall_cut wall_lanes_least(const struct wall_lanes *w, double at, struct wall_stretch stretch)
{
	double whole = w->profiles[0].extent;
	struct wall_cut least = {whole, whole, 0, whole};
	for (size_t k = 0; k < w->lanes->lane_count; k++) {
		if (!tells(w, &w->lanes->lanes[k], stretch))
			continue;
		struct meeting met = meet(w, &w->lanes->lanes[k], at);
		struct wall_cut cut = cut_in(&met);
		double worst = fmin(cut.worst, least.worst);
		if (is_lesser(cut, least))
			least = cut;
		least.worst = worst;
	}
	return least;
}

double *wall_lanes_cuts(struct arena *arena, const struct wall_lanes *w, double at,
                        struct wall_stretch stretch, size_t *out_count)
{
	double *cuts = ARENA_ARRAY(arena, double, w->lanes->lane_count);
	size_t count = 0;
	for (size_t k = 0; k < w->lanes->lane_count; k++) {
		if (!tells(w, &w->lanes->lanes[k], stretch))
			continue;
		struct meeting met = meet(w, &w->lanes->lanes[k], at);
		double cut = cut_profile_cut(met.profile, met.phase);
		size_t place = 0;
		while (place < count && cuts[place] > cut + TOLERANCE_WHOLE)
			place++;
		if (place < count && cuts[place] > cut - TOLERANCE_WHOLE)
			continue;
		for (size_t i = count++; i > place; i--)
			cuts[i] = cuts[i - 1];
		cuts[place] = cut;
	}
	*out_count = count;
	return cuts;
}

/* ---- setting up ---- */

/* The best least share that a wall anywhere in the period can have: best at the beginning of
 * a tile, where that one is whole. */
static double reachable_share(const struct wall_lanes *w, double joint)
{
	double best = 0;
	for (size_t b = 0; b < w->lanes->border_count; b++) {
		double at = w->lanes->borders[b] + w->sign * joint / 2;
		best = fmax(best, wall_lanes_least(w, at, wall_lanes_all(w)).cut /
		                          wall_lanes_least(w, at, wall_lanes_all(w)).whole);
	}
	return best;
}

static void add_profile(struct wall_lanes *w, const struct rules *rules, double extent,
                        double joint, double slack, double tolerance, double reachable)
{
	if (!profile_of(w, extent))
		w->profiles[w->profile_count++] =
			cut_profile_from(rules, extent, joint, slack, tolerance, reachable);
}

static void add_profiles(struct wall_lanes *w, const struct rules *rules, double joint,
                         double slack, double tolerance, double reachable)
{
	w->profile_count = 0;
	for (size_t k = 0; k < w->lanes->lane_count; k++) {
		const struct lane *lane = &w->lanes->lanes[k];
		for (size_t c = 0; c < lane->cell_count; c++)
			add_profile(w, rules, lane->cells[c].to - lane->cells[c].from, joint, slack,
			            tolerance, reachable);
	}
}

struct wall_lanes wall_lanes_from(struct arena *arena, const struct lanes *lanes,
                                  const struct rules *rules, double joint, double slack,
                                  double tolerance, double sign)
{
	struct wall_lanes w = {.lanes = lanes, .sign = sign};
	size_t most = 0;
	if (!wall_lanes_has_any(&w))
		return w;
	for (size_t k = 0; k < lanes->lane_count; k++)
		most += lanes->lanes[k].cell_count;
	w.profiles = ARENA_ARRAY(arena, struct cut_profile, most);
	add_profiles(&w, rules, joint, slack, tolerance, 1);
	add_profiles(&w, rules, joint, slack, tolerance, reachable_share(&w, joint));
	return w;
}
