#include <math.h>
#include <string.h>

#include "plan/plan_build.h"
#include "rules/rule_names.h"

static const struct plan_built *at_of(const struct plan_build *b, size_t built)
{
	return &b->built.items[built];
}

static int line_of(const struct plan_build *b, size_t built, const char *attribute)
{
	return plan_line_of(at_of(b, built), attribute);
}

static bool all_sound(const struct plan_built *at, const char *first, const char *second)
{
	return plan_is_sound(at, first) && plan_is_sound(at, second);
}

/* ---- floor ---- */

static void check_floor(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan *plan = at->object;
	if (plan_is_sound(at, "version") && plan->version != 1)
		plan_fault(b, built, line_of(b, built, "version"),
		           arena_printf(b->arena, "<floor> version=\"%lld\"; expected 1",
		                        (long long)plan->version));
	if (plan->room_count == 0 && at->is_understood)
		plan_fault(b, built, at->node->line,
		           "<floor> without a <room>; expected one or more");
}

/* ---- slab, its cracks and joints ---- */

static void check_slab(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_slab *slab = at->object;
	if (all_sound(at, "coldest", "hottest") && slab->coldest_c > slab->hottest_c)
		plan_fault(b, built, line_of(b, built, "coldest"),
		           "<slab> coldest is above hottest; expected it below");
	size_t corners = plan_child(b, built, "corners");
	if (corners != built)
		plan_check_corners(b, corners);
}

void plan_check_place(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	bool x = plan_is_written(at, "x"), y = plan_is_written(at, "y");
	bool wall = plan_is_written(at, "wall"), along = plan_is_written(at, "along");
	bool by_point = x && y && !wall && !along && !plan_is_written(at, "out");
	bool by_wall = wall && along && !x && !y;
	if (!by_point && !by_wall)
		plan_fault(b, built, at->node->line,
		           arena_printf(b->arena,
		                        "<%s> is no point; expected x and y, or wall and along",
		                        at->element->name));
}

static void check_at(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	struct plan_at *place = at->object;
	place->on_wall = plan_is_written(at, "wall");
	plan_check_place(b, built);
}

static void check_line(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	size_t count = plan_count_children(b, built, "at");
	if (count < 2 && at->is_understood)
		plan_fault(b, built, at->node->line,
		           arena_printf(b->arena, "<%s> with %zu <at>; expected two or more",
		                        at->element->name, count));
}

static void check_slab_joint(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_slab_joint *joint = at->object;
	check_line(b, built);
	if (all_sound(at, "treat", "kind") && joint->treat == PLAN_TREAT_RELOCATE &&
	    joint->kind != PLAN_JOINT_CONTRACTION)
		plan_fault(
			b, built, line_of(b, built, "treat"),
			"<slab-joint> treat=\"relocate\"; expected it of contraction joints only");
}

/* ---- membranes and answers ---- */

static void check_membrane(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_membrane *membrane = at->object;
	if (!plan_is_sound(at, "kind"))
		return;
	bool isolates =
		membrane->kind == PLAN_MEMBRANE_LIQUID || membrane->kind == PLAN_MEMBRANE_SHEET;
	if (isolates && !plan_is_written(at, "movement"))
		plan_fault(
			b, built, at->node->line,
			"<membrane> lacks the attribute \"movement\"; expected its rated movement");
	if (!isolates && plan_is_sound(at, "cover") && membrane->cover == PLAN_COVER_PARTIAL)
		plan_fault(b, built, line_of(b, built, "cover"),
		           "<membrane> cover=\"partial\" of a mat or mortar bed; expected full");
}

static bool is_rule(const char *name)
{
#define RULE(id, text) text,
	static const char *const names[] = {RULE_NAMES(RULE)};
#undef RULE
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(names[i], name) == 0)
			return true;
	return false;
}

static void check_answer(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_answer *answer = at->object;
	if (answer->rule && !is_rule(answer->rule))
		plan_fault(b, built, line_of(b, built, "rule"),
		           arena_printf(
				   b->arena,
				   "<answer> rule=\"%s\" is no rule; expected one of docs/rules.md",
				   answer->rule));
	if (!all_sound(at, "about", "decision") || answer->decision != PLAN_ISOLATE ||
	    answer->about.kind != PLAN_REF_CRACK)
		return;
	const struct plan_crack *crack = answer->about.element;
	if (crack->step_nm > 0 && !plan_is_written(at, "ref"))
		plan_fault(
			b, built, at->node->line,
			arena_printf(
				b->arena,
				"<answer> lacks the attribute \"ref\"; expected what it rests on, "
				"to isolate the stepped crack \"%s\"",
				crack->id));
}

/* ---- rates ---- */

/* The second would never be used: of several that serve a row the first holds. */
static void check_rate(struct plan_build *b, size_t built)
{
	const struct markup *node = at_of(b, built)->node;
	const struct markup_attribute *of = markup_find(node, "of");
	for (const struct markup *at = node->parent->first_child; at != node; at = at->next) {
		const struct markup_attribute *earlier = markup_find(at, "of");
		if (strcmp(at->name, node->name) != 0 || of == NULL || earlier == NULL ||
		    strcmp(earlier->value, of->value) != 0)
			continue;
		plan_fault(b, built, of->line,
		           arena_printf(b->arena,
		                        "<rate> of=\"%s\" has a rate on line %d already; expected "
		                        "one rate of each",
		                        of->value, at->line));
		return;
	}
}

/* ---- a room is in one lay, under one membrane ---- */

/* For each room the element that names it first; 0: none. */
struct taken {
	size_t *by;
};

static void take_rooms(struct plan_build *b, size_t built, struct taken taken,
                       const struct plan_room *const *rooms, size_t count)
{
	const struct plan_built *at = at_of(b, built);
	for (size_t i = 0; i < count; i++) {
		size_t *by = &taken.by[rooms[i] - b->plan->rooms];
		if (*by)
			plan_fault(
				b, built, line_of(b, built, "rooms"),
				arena_printf(b->arena,
			                     "<%s> rooms names \"%s\", which is in that of line %d "
			                     "already; expected each room once",
			                     at->element->name, rooms[i]->id,
			                     at_of(b, *by)->node->line));
		else
			*by = built;
	}
}

static void check_places(struct plan_build *b, size_t built, struct taken lays,
                         const char *attribute, const struct plan_ref *refs, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		size_t room = plan_within(b, plan_find_named(b, refs[i].id)->built, "room");
		const struct plan_room *owner = at_of(b, room)->object;
		if (lays.by[owner - b->plan->rooms] != built)
			plan_fault(
				b, built, refs[i].line,
				arena_printf(b->arena,
			                     "<lay> %s=\"%s\" is in none of its rooms; expected a "
			                     "wall or doorway of one",
			                     attribute, refs[i].id));
	}
}

static void check_rooms_once(struct plan_build *b)
{
	struct taken lays = {ARENA_ARRAY(b->arena, size_t, b->plan->room_count)};
	struct taken membranes = {ARENA_ARRAY(b->arena, size_t, b->plan->room_count)};
	for (size_t i = 0; i < b->built.count && !b->is_stopped; i++) {
		const struct plan_built *at = at_of(b, i);
		const struct plan_lay *lay = at->object;
		const struct plan_membrane *membrane = at->object;
		if (at->element->kind == PLAN_REF_MEMBRANE)
			take_rooms(b, i, membranes, membrane->rooms, membrane->room_count);
		if (at->element->kind != PLAN_REF_LAY)
			continue;
		take_rooms(b, i, lays, lay->rooms, lay->room_count);
		if (!plan_is_sound(at, "rooms") || lay->given & PLAN_FAULTY)
			continue;
		check_places(b, i, lays, "full-at", lay->full_at, lay->full_at_count);
		check_places(b, i, lays, "centre-on", lay->centre_on, lay->centre_on_count);
	}
}

/* ---- all ---- */

static void (*check_of(const char *element))(struct plan_build *, size_t)
{
	static const struct {
		const char *element;
		void (*check)(struct plan_build *, size_t built);
	} checks[] = {
		{"floor", check_floor},
		{"slab", check_slab},
		{"reading", plan_check_reading},
		{"room", plan_check_room},
		{"obstacle", plan_check_obstacle},
		{"wall", plan_check_wall},
		{"corner", plan_check_wall},
		{"doorway", plan_check_doorway},
		{"diagonal", plan_check_diagonal},
		{"at", check_at},
		{"crack", check_line},
		{"slab-joint", check_slab_joint},
		{"tile", plan_check_tile},
		{"module", plan_check_module},
		{"lay", plan_check_lay},
		{"membrane", check_membrane},
		{"answer", check_answer},
		{"rate", check_rate},
	};
	for (size_t i = 0; i < sizeof checks / sizeof *checks; i++)
		if (strcmp(checks[i].element, element) == 0)
			return checks[i].check;
	return NULL;
}

void plan_check(struct plan_build *b)
{
	for (size_t i = 0; i < b->built.count && !b->is_stopped; i++) {
		void (*check)(struct plan_build *, size_t) =
			check_of(b->built.items[i].element->name);
		if (check)
			check(b, i);
	}
	check_rooms_once(b);
}
