#include "layout/soft_joint.h"

#include <string.h>

#include "geometry/tolerance.h"
#include "layout/soft_round.h"
#include "layout/soft_side.h"

struct placing {
	struct arena *arena;
	const struct soft_setting *setting;
	size_t group;
	struct soft_unit *units, *unit; /* the unit is one of them */
	size_t unit_count;
	struct soft_widening widening;
	struct soft_unit *wide; /* the same on the wider strip; NULL: not asked for yet */
	struct soft_joint_list *list;
};

static const char *unused_id(const struct placing *placing, const char *id)
{
	const char *wanted = id;
	for (size_t number = 2;; number++) {
		bool is_used = false;
		for (size_t k = 0; k < placing->list->softs.count; k++)
			is_used |= !placing->list->softs.items[k].uses &&
			           strcmp(placing->list->softs.items[k].id, wanted) == 0;
		if (!is_used)
			return wanted;
		wanted = arena_printf(placing->arena, "%s.%zu", id, number);
	}
}

static bool is_number(const char *side)
{
	return strspn(side, "0123456789") == strlen(side);
}

static struct soft_joint new_joint(const struct placing *placing, const char *side)
{
	const struct cracks *cracks = placing->setting->cracks;
	const struct placed_crack *first = &cracks->cracks[placing->unit->parts[0]->crack];
	const struct crack_group *group = &cracks->groups[placing->unit->group];
	const char *crack = is_number(side) ? group->id : first->id;
	const char *id = is_number(side)
	                         ? arena_printf(placing->arena, "%s.side.%s", group->origin, side)
	                         : arena_printf(placing->arena, "%s.%s", first->origin, side);
	return (struct soft_joint){.id = id,
	                           .group = placing->unit->group,
	                           .crack = crack,
	                           .side = side,
	                           .panel = placing->unit->panel,
	                           .ends = ""};
}

/* What a joint meets where it ends: what lies at the border, else the end of its strip. */
static const char *met_at(const struct placing *placing, struct soft_port port)
{
	const struct soft_setting *setting = placing->setting;
	double off = region_distance(&placing->unit->corridor.domain, port.at);
	bool at_border = port.at_border || off < TOLERANCE_WHOLE;
	return at_border ? soft_setting_border_at(setting, port.at) : setting->strip;
}

static bool goes_straight(struct point a, struct point b, struct point c)
{
	return soft_turn(point_sub(b, a), point_sub(c, b)) == 0;
}

static void add_point(struct line *line, struct point p)
{
	if (line->count > 1 &&
	    goes_straight(line->points[line->count - 2], line->points[line->count - 1], p))
		line->count--;
	line->points[line->count++] = p;
}

static struct line line_of(const struct placing *placing, const struct soft_path *path,
                           struct point from, struct point to)
{
	struct line line = {ARENA_ARRAY(placing->arena, struct point, path->count + 1), 0};
	line.points[line.count++] = from;
	for (size_t k = 0; k + 1 < path->count; k++) {
		struct segment edge = corridor_segment(&placing->unit->corridor, path->steps[k].at);
		add_point(&line, path->steps[k].reversed ? edge.from : edge.to);
	}
	add_point(&line, to);
	return line;
}

static struct soft_joint joint_from_walk(const struct placing *placing, const char *side,
                                         const struct soft_walk *walk)
{
	const struct soft_path *path = &walk->path;
	struct soft_joint joint = new_joint(placing, side);
	joint.id = unused_id(placing, joint.id);
	joint.places = ARENA_ARRAY(placing->arena, struct network_place, path->count);
	joint.reversed = ARENA_ARRAY(placing->arena, bool, path->count);
	joint.place_count = path->count;
	for (size_t k = 0; k < path->count; k++) {
		joint.places[k] = path->steps[k].at;
		joint.reversed[k] = path->steps[k].reversed;
	}
	joint.line = line_of(placing, path, walk->from.at, walk->to.at);
	joint.length = (double)path->least.length / 1e6;
	joint.turns = (double)path->least.turns / 1e6;
	joint.cost = (double)path->least.cost / 1e6;
	joint.settled = path->settled;
	joint.ends = arena_printf(placing->arena, "%s %s", met_at(placing, walk->from),
	                          met_at(placing, walk->to));
	return joint;
}

/* From corner to corner: the middle of the edge where the walk begins and ends is none, and that
 * edge is walked once. */
static struct soft_joint closed_joint(const struct placing *placing, const char *side,
                                      const struct soft_walk *walk)
{
	struct soft_joint joint = joint_from_walk(placing, side, walk);
	joint.place_count--;
	joint.line.points++;
	joint.line.count--;
	joint.line.points[joint.line.count - 1] = joint.line.points[0];
	joint.ends = "";
	return joint;
}

static void add_joint(const struct placing *placing, struct soft_joint joint)
{
	*array_push(placing->arena, &placing->list->softs) = joint;
}

static void add_use(const struct placing *placing, const char *side, const char *joints)
{
	struct soft_joint joint = new_joint(placing, side);
	joint.uses = joints;
	joint.ends = joints;
	add_joint(placing, joint);
}

static void add_found(const struct placing *placing, const char *side,
                      const struct soft_side_found *found)
{
	for (size_t k = 0; k < found->walks.count; k++)
		add_joint(placing, joint_from_walk(placing, side, &found->walks.items[k]));
	if (*found->uses)
		add_use(placing, side, found->uses);
}

/* The unit as it is on the wider strip; NULL: it is not the same there. */
static struct soft_unit *wide_unit(struct placing *placing)
{
	size_t count = placing->unit_count;
	if (!placing->wide)
		placing->wide =
			soft_units(placing->arena, placing->setting, placing->group,
		                   placing->widening.widen(placing->widening.context), &count);
	struct soft_unit *wide = &placing->wide[placing->unit - placing->units];
	bool is_same = count == placing->unit_count && wide->end_count == placing->unit->end_count;
	return is_same ? wide : NULL;
}

static struct soft_side_found find_side(struct placing *placing, struct soft_side side)
{
	struct soft_unit *unit = placing->unit;
	struct soft_side_found found = soft_side_find(placing->arena, placing->setting, unit, side);
	struct soft_unit *wide = found.is_missing ? wide_unit(placing) : NULL;
	if (!wide)
		return found;
	if (side.from) {
		side.from = &wide->ends[side.from - unit->ends];
		side.to = &wide->ends[side.to - unit->ends];
	}
	return soft_side_find(placing->arena, placing->setting, wide, side);
}

/* One side of a plain unit: the joint beside it, where one runs within a tile of all of it. */
static struct soft_side_found find_plain(struct placing *placing, struct soft_side side)
{
	const char *joint = soft_unit_joint_beside(placing->arena, placing->setting, placing->unit,
	                                           side.is_backwards);
	if (joint)
		return (struct soft_side_found){.uses = joint};
	return find_side(placing, side);
}

static double cost_of(const struct soft_side_found *found)
{
	double cost = 0;
	for (size_t k = 0; k < found->walks.count; k++)
		cost += (double)found->walks.items[k].path.least.cost;
	return cost;
}

static bool is_found(const struct soft_side_found *found)
{
	return (found->walks.count > 0 || *found->uses) && !found->is_enclosed;
}

/* A crack where the membrane takes one, a slab joint that is moved to one tile joint. Groups are
 * always surrounded. */
static bool has_one_side(const struct placing *placing)
{
	const struct cracks *cracks = placing->setting->cracks;
	const struct crack_group *group = &cracks->groups[placing->unit->group];
	bool is_joint = cracks->cracks[group->cracks[0]].crack->joint != NULL;
	return group->crack_count == 1 && (is_joint || placing->setting->one_side);
}

/* Left and right of a single stretch of crack, both walked along it. */
static void place_plain(struct placing *placing)
{
	const struct soft_end *ends = placing->unit->ends;
	const struct soft_end *first = ends[0].which == 0 ? &ends[0] : &ends[1];
	const struct soft_end *last = first == &ends[0] ? &ends[1] : &ends[0];
	struct soft_side_found left = find_plain(placing, (struct soft_side){last, first, true});
	struct soft_side_found right = find_plain(placing, (struct soft_side){first, last, false});
	bool one = has_one_side(placing) && is_found(&left) && is_found(&right);
	bool right_is_less = cost_of(&right) < cost_of(&left);
	if (!one || !right_is_less)
		add_found(placing, "left", &left);
	if (!one || right_is_less)
		add_found(placing, "right", &right);
}

static void place_branched(struct placing *placing)
{
	const struct soft_unit *unit = placing->unit;
	for (size_t k = 0; k < unit->end_count; k++) {
		const struct soft_end *next = &unit->ends[(k + 1) % unit->end_count];
		struct soft_side_found found =
			find_side(placing, (struct soft_side){&unit->ends[k], next, false});
		add_found(placing, arena_printf(placing->arena, "%zu", k + 1), &found);
	}
}

/* Cracks without an end: one joint right round them; where their tile lies against a border,
 * joints from border to border. */
static void place_round(struct placing *placing)
{
	struct soft_walk walk;
	if (soft_round_walk(placing->arena, placing->setting, placing->unit, &walk)) {
		add_joint(placing, closed_joint(placing, "1", &walk));
		return;
	}
	struct soft_side_found found = find_side(placing, (struct soft_side){NULL, NULL, false});
	add_found(placing, "1", &found);
}

/* No tile is crossed: the joint the crack runs in, from end to end. */
static void place_in_joint(const struct placing *placing)
{
	struct arena *arena = placing->arena;
	struct soft_unit *unit = placing->unit;
	if (unit->end_count != 2)
		return;
	struct soft_ports ports[2] = {0};
	for (int k = 0; k < 4; k++) {
		struct soft_ports side =
			soft_end_ports(arena, placing->setting, unit, &unit->ends[k / 2], k % 2,
		                       SOFT_EXTENT_LINE);
		soft_ports_join(arena, &ports[k / 2], &side);
	}
	struct soft_walk walk;
	int first = unit->ends[0].which == 0 ? 0 : 1;
	if (soft_search(arena, placing->setting, unit, &ports[first], &ports[1 - first], &walk))
		add_joint(placing, joint_from_walk(placing, "on", &walk));
}

void soft_joints_of_group(struct arena *arena, const struct soft_setting *setting, size_t group,
                          struct soft_footing footing, struct soft_widening widening,
                          struct soft_joint_list *list)
{
	struct placing placing = {.arena = arena,
	                          .setting = setting,
	                          .group = group,
	                          .widening = widening,
	                          .list = list};
	placing.units = soft_units(arena, setting, group, footing, &placing.unit_count);
	for (size_t u = 0; u < placing.unit_count; u++) {
		placing.unit = &placing.units[u];
		if (placing.unit->crossed.count == 0)
			place_in_joint(&placing);
		else if (placing.unit->end_count == 0)
			place_round(&placing);
		else if (soft_unit_is_plain(placing.unit))
			place_plain(&placing);
		else
			place_branched(&placing);
	}
}
