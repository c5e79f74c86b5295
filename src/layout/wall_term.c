#include "layout/wall_term.h"

#include <stdlib.h>
#include <string.h>

#include "geometry/tolerance.h"

static int compare_offsets(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

/* The best smallest cut, as a share, that courses shifted like these can have at a wall
 * across them: with one course whole, the next to begin is cut by what lies between. */
static double reachable_share(struct arena *arena, const struct module *module)
{
	double extent = module->pitch - module->joint, best = 0;
	size_t count = (size_t)module->offset_count;
	if (count == 0)
		return 1;
	double *offsets = ARENA_ARRAY(arena, double, count);
	memcpy(offsets, module->offsets, count * sizeof *offsets);
	qsort(offsets, count, sizeof *offsets, compare_offsets);
	for (size_t i = 0; i < count; i++) {
		double next = i + 1 < count ? offsets[i + 1] : offsets[0] + module->pitch;
		double ahead = next - offsets[i];
		if (ahead >= TOLERANCE_SAME)
			best = fmax(best, (ahead - module->joint) / extent);
	}
	return best;
}

static double weight_of(const struct rules *rules, const struct field_border *border)
{
	if (border->is_carried)
		return rules_figure(rules, FIGURE_EDGE_WEIGHT_CARRIED);
	if (border->kind == SITE_EDGE_OBSTACLE || border->kind == SITE_EDGE_DRAIN)
		return rules_figure(rules, FIGURE_EDGE_WEIGHT_OBSTACLE);
	if (border->kind == SITE_EDGE_JAMB)
		return rules_figure(rules, FIGURE_EDGE_WEIGHT_JAMB);
	return rules_figure(rules,
	                    border->show ? FIGURE_EDGE_WEIGHT_WALL : FIGURE_EDGE_WEIGHT_HIDDEN);
}

struct wall_term wall_term_from_border(struct arena *arena, const struct field *field,
                                       const struct module *module, const struct rules *rules,
                                       size_t index)
{
	const struct field_border *border = &field->borders[index];
	struct point along = point_sub(border->to, border->from);
	struct point normal = point_unit(point_left(along));
	struct wall_term term = {.border = index, .part = border->part};
	/* Half way between the axes the cut is along u, whatever the last digits say. */
	term.along_u = fabs(normal.x) >= fabs(normal.y) - TOLERANCE_PARALLEL;
	double facing = term.along_u ? normal.x : normal.y;
	term.sign = facing > 0 ? 1 : -1;
	term.at[0] = term.along_u ? border->from.x : border->from.y;
	term.at[1] = term.along_u ? border->to.x : border->to.y;
	term.beside[0] = term.along_u ? border->from.y : border->from.x;
	term.beside[1] = term.along_u ? border->to.y : border->to.x;
	term.length = point_length(along);
	term.weight = weight_of(rules, border);
	term.is_straight = fabs(term.at[1] - term.at[0]) <= TOLERANCE_LEVEL;
	double period = term.along_u ? module->pitch : module->course;
	double reachable = term.along_u ? reachable_share(arena, module) : 1;
	double slack = border->gap > 0 ? field->gap_max - field->gap : 0;
	double tolerance = field->tolerance / fabs(facing);
	term.profile = cut_profile_from(rules, period, module->joint, slack, tolerance, reachable);
	term.lanes = wall_lanes_from(arena, module_lanes(module, term.along_u), rules,
	                             module->joint, slack, tolerance, term.sign);
	return term;
}

bool wall_term_has_lanes(const struct wall_term *term)
{
	return term->lanes.lanes != NULL;
}

bool wall_term_shows_lanes(const struct wall_term *term)
{
	return wall_lanes_has_any(&term->lanes) &&
	       fabs(term->at[1] - term->at[0]) <= term->profile.joint;
}

/* Where a wall that shows lanes lies from a lattice at `position`: its middle. */
static double lanes_at(const struct wall_term *term, double position)
{
	return (term->at[0] + term->at[1]) / 2 - position;
}

size_t wall_term_most_slots(const struct wall_term *term, const struct module *module)
{
	if (!term->along_u)
		return 1;
	double beside = fabs(term->beside[1] - term->beside[0]);
	return (size_t)(beside / module->course) + 3 + (size_t)module->offset_count;
}

/* Index into offsets of course r, for negative r too. */
static int shift_of_course(const struct module *module, int course)
{
	int rest = course % module->offset_count;
	return rest < 0 ? rest + module->offset_count : rest;
}

static void add_course(const struct wall_term *term, const struct module *module, double position_v,
                       int course, struct wall_slots *out)
{
	double low = fmin(term->beside[0], term->beside[1]),
	       high = fmax(term->beside[0], term->beside[1]);
	double from = fmax(low, position_v + course * module->course);
	double to = fmin(high, position_v + (course + 1) * module->course);
	if (to - from <= TOLERANCE_LEVEL)
		return;
	int shift = shift_of_course(module, course);
	double share = (to - from) / (high - low);
	if (term->is_straight) {
		out->slots[shift].length += share * term->length;
		return;
	}
	double slope = (term->at[1] - term->at[0]) / (term->beside[1] - term->beside[0]);
	double offset = module->offsets[shift];
	out->slots[out->count++] = (struct wall_slot){
		.phase = {term->sign * (term->at[0] + slope * (from - term->beside[0]) - offset),
	                  term->sign * (term->at[0] + slope * (to - term->beside[0]) - offset)},
		.length = share * term->length,
		.shift = shift,
	};
}

/* Straight walls: one slot a shift, those that no course shows are dropped. */
static void start_straight(const struct wall_term *term, const struct module *module,
                           struct wall_slots *out)
{
	for (int r = 0; r < module->offset_count; r++) {
		double phase = term->sign * (term->at[0] - module->offsets[r]);
		out->slots[out->count++] = (struct wall_slot){{phase, phase}, 0, r};
	}
}

static void drop_unseen(struct wall_slots *out)
{
	size_t kept = 0;
	for (size_t i = 0; i < out->count; i++)
		if (out->slots[i].length > 0)
			out->slots[kept++] = out->slots[i];
	out->count = kept;
}

void wall_term_slots(const struct wall_term *term, const struct module *module, double position_v,
                     struct wall_slots *out)
{
	out->count = 0;
	if (wall_term_has_lanes(term))
		return;
	if (!term->along_u) {
		out->slots[out->count++] =
			(struct wall_slot){{term->sign * term->at[0], term->sign * term->at[1]},
		                           term->length,
		                           0};
		return;
	}
	double low = fmin(term->beside[0], term->beside[1]),
	       high = fmax(term->beside[0], term->beside[1]);
	int first = (int)floor((low - position_v) / module->course);
	int last = (int)floor((high - position_v) / module->course);
	if (term->is_straight)
		start_straight(term, module, out);
	for (int course = first; course <= last; course++)
		add_course(term, module, position_v, course, out);
	if (term->is_straight)
		drop_unseen(out);
}

static double phase_at(const struct wall_term *term, double base, double position)
{
	return cut_profile_phase(&term->profile, base - term->sign * position);
}

double wall_term_penalty(const struct wall_term *term, const struct wall_slots *slots,
                         double position)
{
	double sum = 0;
	if (wall_term_shows_lanes(term))
		return term->weight * term->length *
		       wall_lanes_penalty(&term->lanes, lanes_at(term, position));
	for (size_t i = 0; i < slots->count; i++) {
		const struct wall_slot *slot = &slots->slots[i];
		double penalty;
		if (term->is_straight)
			penalty =
				cut_profile_worst_penalty(&term->profile,
			                                  phase_at(term, slot->phase[0], position));
		else
			penalty = cut_profile_mean_penalty(&term->profile,
			                                   slot->phase[0] - term->sign * position,
			                                   slot->phase[1] - term->sign * position);
		sum += penalty * slot->length;
	}
	return sum * term->weight;
}

/* Least over the slot: at its ends, or just before the phase at which a tile ends. */
static double least_in_slot(const struct wall_term *term, const struct wall_slot *slot,
                            double position)
{
	const struct cut_profile *profile = &term->profile;
	double cut = fmin(cut_profile_cut(profile, phase_at(term, slot->phase[0], position)),
	                  cut_profile_cut(profile, phase_at(term, slot->phase[1], position)));
	double low = fmin(slot->phase[0], slot->phase[1]) - term->sign * position;
	double high = fmax(slot->phase[0], slot->phase[1]) - term->sign * position;
	double jump = profile->joint / 2 + profile->extent - profile->slack;
	if (floor((high - jump) / profile->period) > floor((low - jump) / profile->period))
		cut = fmin(cut, profile->slack);
	return cut;
}

double wall_term_least_cut(const struct wall_term *term, const struct wall_slots *slots,
                           double position)
{
	double least = term->profile.extent;
	if (wall_term_shows_lanes(term))
		return wall_lanes_least(&term->lanes, lanes_at(term, position),
		                        wall_lanes_all(&term->lanes))
		        .cut;
	for (size_t i = 0; i < slots->count; i++)
		least = fmin(least, least_in_slot(term, &slots->slots[i], position));
	return least;
}

double wall_term_worst_cut(const struct wall_term *term, const struct wall_slots *slots,
                           double position)
{
	double worst = wall_term_least_cut(term, slots, position);
	for (size_t i = 0; i < slots->count; i++)
		for (int end = 0; end < 2; end++)
			worst = fmin(worst,
			             cut_profile_worst_cut(
					     &term->profile,
					     phase_at(term, slots->slots[i].phase[end], position)));
	return worst;
}

bool wall_term_starts_whole(const struct wall_term *term, const struct wall_slots *slots,
                            double position, double reach)
{
	if (fabs(term->at[1] - term->at[0]) > TOLERANCE_PARALLEL * term->length)
		return false;
	if (wall_lanes_has_any(&term->lanes))
		return wall_lanes_starts_whole(&term->lanes, lanes_at(term, position), reach);
	if (wall_term_has_lanes(term)) /* a period too long to show: the first face, or its
		                        * neighbour */
		return fabs(lanes_at(term, position) - term->sign * term->profile.joint / 2) <=
		       reach;
	for (size_t i = 0; i < slots->count; i++) {
		double off = phase_at(term, slots->slots[i].phase[0], position) -
		             term->profile.joint / 2;
		off -= nearbyint(off / term->profile.period) * term->profile.period;
		if (fabs(off) <= reach)
			return true;
	}
	return false;
}

double wall_term_cut_pieces(const struct wall_term *term, const struct module *module,
                            const struct wall_slots *slots, double position)
{
	double pieces = 0, beside = term->along_u ? module->course : module->pitch;
	if (wall_term_shows_lanes(term))
		return term->length / module->course *
		       wall_lanes_cut_share(&term->lanes, lanes_at(term, position));
	for (size_t i = 0; i < slots->count; i++) {
		const struct wall_slot *slot = &slots->slots[i];
		bool is_cut =
			!term->is_straight ||
			cut_profile_cut(&term->profile, phase_at(term, slot->phase[0], position)) <
				term->profile.extent;
		pieces += is_cut ? slot->length / beside : 0;
	}
	return pieces;
}
