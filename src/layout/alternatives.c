#include "layout/alternatives.h"

#include <string.h>

#include "base/array.h"
#include "geometry/tolerance.h"
#include "layout/setting.h"
#include "units/number.h"

static const double QUARTER_TURN = 90; /* degrees */

struct trying {
	struct arena *arena;
	const struct rules *rules;
	const struct field *field;
	const struct module *module;
	const struct position *position;
	ARRAY_OF(struct alternative) items;
};

/* ---- one of them ---- */

static bool is_same_place(const struct position *a, const struct position *b)
{
	bool same = a->part_count == b->part_count;
	for (size_t i = 0; same && i < a->part_count; i++)
		same = point_distance(a->parts[i], b->parts[i]) <= TOLERANCE_SAME;
	return same;
}

/* The lay as it is, for an alternative to change. */
static struct plan_lay *lay_copy(const struct trying *t)
{
	struct plan_lay *lay = ARENA_NEW(t->arena, struct plan_lay);
	*lay = *t->field->lay;
	return lay;
}

static struct plan_lay *lay_without_wishes(const struct trying *t)
{
	struct plan_lay *lay = lay_copy(t);
	lay->start = NULL;
	lay->full_at_count = lay->centre_on_count = 0;
	return lay;
}

static void note(struct trying *t, struct alternative alternative, struct setting other)
{
	alternative.least = least_cut_of(other.field, other.position);
	*array_push(t->arena, &t->items) = alternative;
}

/* The field of a lay that is only started or jointed otherwise. */
static const struct field *field_with(const struct trying *t, const struct plan_lay *lay)
{
	struct field *field = ARENA_NEW(t->arena, struct field);
	*field = *t->field;
	field->lay = lay;
	return field;
}

static const struct field *field_turned(const struct trying *t, const struct plan_lay *lay)
{
	return field_place(t->arena, t->field->site, t->rules, lay, t->field->before);
}

/* The lay's wishes and start give way to one wish. */
static struct plan_lay *lay_started_at(const struct trying *t, enum plan_ref_kind kind,
                                       const char *at)
{
	struct plan_lay *lay = lay_without_wishes(t);
	lay->full_at = ARENA_NEW(t->arena, struct plan_ref);
	*lay->full_at = (struct plan_ref){.kind = kind, .id = at};
	lay->full_at_count = 1;
	return lay;
}

static void try_start(struct trying *t, const char *at, enum plan_ref_kind kind)
{
	const struct field *field = field_with(t, lay_started_at(t, kind, at));
	const struct position *position =
		position_moved(t->arena, field, t->module, t->rules, t->position);
	if (position != NULL && !is_same_place(position, t->position))
		note(t, (struct alternative){.kind = ALTERNATIVE_START, .at = at},
		     setting_from(t->arena, field, t->module, position, t->rules));
}

/* ---- where else it could start ---- */

static bool is_known(const struct trying *t, const char *at)
{
	for (size_t i = 0; i < t->items.count; i++)
		if (strcmp(t->items.items[i].at, at) == 0)
			return true;
	return false;
}

static bool runs_along_axis(struct point along)
{
	return fmin(fabs(along.x), fabs(along.y)) <= TOLERANCE_PARALLEL * point_length(along);
}

/* Nothing is cut at any border of that name: a start there is the start there is. */
static bool starts_there(const struct trying *t, const char *at)
{
	for (size_t i = 0; i < t->position->cut_count; i++) {
		const struct border_cut *cut = &t->position->cuts[i];
		if (strcmp(t->field->borders[cut->border].of, at) == 0 &&
		    (cut->varies || cut->least < cut->whole - TOLERANCE_CUT))
			return false;
	}
	return true;
}

static void try_joints_and_doorways(struct trying *t)
{
	for (size_t i = 0; i < t->field->border_count; i++) {
		const struct field_border *border = &t->field->borders[i];
		bool is_stop = border->kind == SITE_EDGE_STOP;
		if ((!is_stop && !border->is_carried) || is_known(t, border->of) ||
		    starts_there(t, border->of) ||
		    !runs_along_axis(point_sub(border->to, border->from)))
			continue;
		try_start(t, border->of, is_stop ? PLAN_REF_DOORWAY : PLAN_REF_WALL);
	}
}

/* Which way a border lets the floor lie: one of four sides. */
static int side_of(struct point along)
{
	bool is_level = fabs(along.x) > fabs(along.y);
	return is_level ? (along.x > 0 ? 0 : 1) : (along.y > 0 ? 2 : 3);
}

static void try_walls(struct trying *t)
{
	enum { SIDES = 4 };
	const struct field_border *longest[SIDES] = {NULL};
	double lengths[SIDES] = {0};
	for (size_t i = 0; i < t->field->border_count; i++) {
		const struct field_border *border = &t->field->borders[i];
		struct point along = point_sub(border->to, border->from);
		int side = side_of(along);
		if (border->kind != SITE_EDGE_WALL || border->is_carried ||
		    !runs_along_axis(along) ||
		    point_length(along) <= lengths[side] + TOLERANCE_SAME)
			continue;
		longest[side] = border;
		lengths[side] = point_length(along);
	}
	for (int side = 0; side < SIDES; side++)
		if (longest[side] && !is_known(t, longest[side]->of) &&
		    !starts_there(t, longest[side]->of))
			try_start(t, longest[side]->of, PLAN_REF_WALL);
}

/* A joint that leaves an axis by less than a tile's width over its length looks to a setter as if
 * it were square. */
static bool looks_square(const struct trying *t, const struct field_carried *carried)
{
	struct point along = point_sub(carried->to, carried->from);
	return !runs_along_axis(along) &&
	       fmin(fabs(along.x), fabs(along.y)) < t->module->tile_width;
}

static double turn_to(const struct field_carried *carried)
{
	return frame_deg_off_axis(point_sub(carried->to, carried->from));
}

static void try_along_joints(struct trying *t)
{
	for (size_t i = 0; i < t->field->carried_count; i++) {
		const struct field_carried *carried = &t->field->carried[i];
		if (!looks_square(t, carried) || is_known(t, carried->of))
			continue;
		struct alternative turned = {.kind = ALTERNATIVE_ALONG,
		                             .at = carried->of,
		                             .turn_deg = turn_to(carried)};
		struct plan_lay *lay = lay_started_at(t, PLAN_REF_WALL, carried->of);
		lay->angle_deg += turned.turn_deg;
		struct setting other = setting_place(t->arena, field_turned(t, lay), t->rules);
		if (other.position->unmet == NULL)
			note(t, turned, other);
	}
}

/* ---- cures ---- */

bool alternative_cures(const struct alternative *alternative)
{
	return number_order(alternative->least.share, 1) >= 0;
}

static void try_free(struct trying *t)
{
	const struct plan_lay *lay = t->field->lay;
	if (lay->start == NULL && lay->full_at_count == 0 && lay->centre_on_count == 0)
		return;
	const struct field *field = field_with(t, lay_without_wishes(t));
	note(t, (struct alternative){.kind = ALTERNATIVE_FREE},
	     setting_place(t->arena, field, t->rules));
}

/* Opened step by step; what a pattern without courses becomes by it is not asked. */
static void try_wider_joints(struct trying *t)
{
	double step = rules_figure(t->rules, FIGURE_JOINT_OPEN_STEP);
	int steps = (int)(rules_figure(t->rules, FIGURE_JOINT_OPEN_MOST) / step + 0.5);
	for (int k = 1; t->module->offset_count > 0 && k <= steps; k++) {
		struct plan_lay *lay = lay_copy(t);
		struct alternative opened = {.kind = ALTERNATIVE_JOINT,
		                             .joint = t->module->joint + k * step};
		lay->joint_nm = llround(opened.joint * 1e6);
		note(t, opened, setting_place(t->arena, field_with(t, lay), t->rules));
		if (alternative_cures(&t->items.items[t->items.count - 1]))
			return;
		t->items.count--;
	}
}

static void try_turn(struct trying *t, double turn_deg)
{
	struct plan_lay *lay = lay_copy(t);
	lay->angle_deg += turn_deg;
	note(t, (struct alternative){.kind = ALTERNATIVE_TURN, .turn_deg = turn_deg},
	     setting_place(t->arena, field_turned(t, lay), t->rules));
}

/* A quarter, and to run with the first joint that is out of square. */
static void try_turns(struct trying *t)
{
	try_turn(t, QUARTER_TURN);
	for (size_t i = 0; i < t->field->carried_count; i++)
		if (looks_square(t, &t->field->carried[i])) {
			try_turn(t, turn_to(&t->field->carried[i]));
			return;
		}
}

const struct alternatives *alternatives_of_lay(struct arena *arena, const struct rules *rules,
                                               const struct placed_lay *lay)
{
	struct alternatives *found = ARENA_NEW(arena, struct alternatives);
	struct trying t = {arena, rules, lay->field, lay->module, lay->position, {0}};
	found->taken = least_cut_of(lay->field, lay->position);
	try_joints_and_doorways(&t);
	try_along_joints(&t);
	try_walls(&t);
	if (number_order(found->taken.share, 1) < 0) {
		try_free(&t);
		try_wider_joints(&t);
		try_turns(&t);
	}
	found->items = t.items.items;
	found->count = t.items.count;
	return found;
}
