#include "layout/soft_joint.h"

#include <string.h>

#include "geometry/clip.h"
#include "geometry/tolerance.h"
#include "layout/soft_port.h"
#include "layout/soft_unit.h"

struct placing {
	struct arena *arena;
	const struct soft_setting *setting;
	struct soft_unit *unit;
	struct soft_joint_list *list;
};

/* Gates at which a walk ends are walked outwards. */
static struct soft_gate *gates_of(struct arena *arena, const struct soft_ports *ports, bool outward)
{
	struct soft_gate *gates = ARENA_ARRAY(arena, struct soft_gate, ports->ports.count);
	for (size_t k = 0; k < ports->ports.count; k++) {
		gates[k] = ports->ports.items[k].gate;
		gates[k].step.reversed ^= outward;
	}
	return gates;
}

static const char *unused_id(const struct placing *placing, const char *id)
{
	const char *wanted = id;
	for (size_t number = 2;; number++) {
		bool is_used = false;
		for (size_t k = 0; k < placing->list->softs.count; k++)
			is_used |= strcmp(placing->list->softs.items[k].id, wanted) == 0;
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
	return (struct soft_joint){.id = unused_id(placing, id),
	                           .group = placing->unit->group,
	                           .crack = crack,
	                           .side = side,
	                           .panel = placing->unit->panel,
	                           .ends = ""};
}

/* What a joint meets where it ends: wall, obstacle, slab or field joint at a border, else the
 * end of its strip. */
static const char *met_at(const struct placing *placing, struct soft_port port)
{
	const struct soft_setting *setting = placing->setting;
	const struct field *field = setting->tiling->field;
	if (!port.at_border)
		return setting->strip;
	for (size_t h = 0; h < setting->cracks->hold_count; h++)
		if (region_distance(&setting->cracks->holds[h].region, port.at) < TOLERANCE_WHOLE)
			return setting->cracks->holds[h].id;
	const char *line =
		field_joint_at(setting->field_joints, setting->field_joint_count, port.at);
	if (line)
		return line;
	size_t border = perimeter_nearest(field, port.at);
	return border < field->border_count ? field->borders[border].of : setting->strip;
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

static struct soft_joint joint_from_path(const struct placing *placing, const char *side,
                                         const struct soft_path *path, struct soft_port from,
                                         struct soft_port to)
{
	struct soft_joint joint = new_joint(placing, side);
	joint.places = ARENA_ARRAY(placing->arena, struct network_place, path->count);
	joint.reversed = ARENA_ARRAY(placing->arena, bool, path->count);
	joint.place_count = path->count;
	for (size_t k = 0; k < path->count; k++) {
		joint.places[k] = path->steps[k].at;
		joint.reversed[k] = path->steps[k].reversed;
	}
	joint.line = line_of(placing, path, from.at, to.at);
	joint.length = (double)path->least.length / 1e6;
	joint.turns = (double)path->least.turns / 1e6;
	joint.cost = (double)path->least.cost / 1e6;
	joint.settled = path->settled;
	joint.ends =
		arena_printf(placing->arena, "%s %s", met_at(placing, from), met_at(placing, to));
	return joint;
}

/* The least walk between the ports; false: there is none. */
static bool search(const struct placing *placing, const char *side, const struct soft_ports *from,
                   const struct soft_ports *to, struct soft_joint *out_joint)
{
	struct arena *arena = placing->arena;
	const struct soft_query query = {
		.network = placing->setting->tiling->network,
		.module = placing->setting->tiling->module,
		.is_open = corridor_is_open,
		.context = &placing->unit->corridor,
		.from = gates_of(arena, from, false),
		.to = gates_of(arena, to, true),
		.from_count = from->ports.count,
		.to_count = to->ports.count,
		.turn_penalty = placing->setting->turn_penalty,
	};
	struct soft_path path = soft_path_search(arena, &query);
	if (path.count == 0)
		return false;
	*out_joint = joint_from_path(placing, side, &path, from->ports.items[path.from],
	                             to->ports.items[path.to]);
	return true;
}

static void add_joint(const struct placing *placing, struct soft_joint joint)
{
	*array_push(placing->arena, &placing->list->softs) = joint;
}

static bool is_listed(const struct soft_ports *ports, struct soft_port port)
{
	for (size_t k = 0; k < ports->ports.count; k++)
		if (soft_step_compare(ports->ports.items[k].gate.step, port.gate.step) == 0)
			return true;
	return false;
}

/* Something stands in the way from end to end: from each end to whatever border it is. */
static void add_interrupted(const struct placing *placing, const char *side,
                            const struct soft_ports *from, const struct soft_ports *to)
{
	struct soft_ports all = soft_border_ports(placing->arena, &placing->unit->corridor);
	struct soft_ports rest = {0};
	struct soft_joint joint;
	for (size_t k = 0; k < all.ports.count; k++)
		if (!is_listed(from, all.ports.items[k]) && !is_listed(to, all.ports.items[k]))
			*array_push(placing->arena, &rest.ports) = all.ports.items[k];
	if (search(placing, side, from, &rest, &joint))
		add_joint(placing, joint);
	if (search(placing, side, &rest, to, &joint))
		add_joint(placing, joint);
}

/* One side, anticlockwise from one end to the next. */
struct side {
	const char *name;
	const struct soft_end *from, *to;
	bool is_backwards; /* walked from `to`: along the crack, not against it */
};

static bool place_side(const struct placing *placing, struct side side,
                       struct soft_joint *out_joint)
{
	struct arena *arena = placing->arena;
	double one_tile = placing->setting->reach.one_tile;
	struct corridor *corridor = &placing->unit->corridor;
	struct soft_ports first = {0}, last = {0};
	for (int extent = SOFT_EXTENT_LINE; extent <= SOFT_EXTENT_NEAR; extent++) {
		enum soft_extent own = (enum soft_extent)extent;
		first = soft_end_ports(arena, corridor, side.from, true, own, one_tile);
		last = soft_end_ports(arena, corridor, side.to, false, own, one_tile);
		const struct soft_ports *from = side.is_backwards ? &last : &first;
		const struct soft_ports *to = side.is_backwards ? &first : &last;
		if (search(placing, side.name, from, to, out_joint))
			return true;
	}
	add_interrupted(placing, side.name, side.is_backwards ? &last : &first,
	                side.is_backwards ? &first : &last);
	return false;
}

static bool serve_side(const struct placing *placing, const char *name,
                       struct soft_joint *out_joint)
{
	const char *joint = soft_unit_joint_beside(placing->arena, placing->setting, placing->unit,
	                                           strcmp(name, "left") == 0);
	if (!joint)
		return false;
	*out_joint = new_joint(placing, name);
	out_joint->uses = joint;
	out_joint->ends = joint;
	return true;
}

/* Left and right of a single stretch of crack. */
static void place_plain(const struct placing *placing)
{
	const struct soft_end *ends = placing->unit->ends;
	const struct soft_end *first = ends[0].which == 0 ? &ends[0] : &ends[1];
	const struct soft_end *last = first == &ends[0] ? &ends[1] : &ends[0];
	const struct side sides[] = {{"left", last, first, true}, {"right", first, last, false}};
	struct soft_joint found[2];
	size_t count = 0;
	for (int k = 0; k < 2; k++)
		if (serve_side(placing, sides[k].name, &found[count]) ||
		    place_side(placing, sides[k], &found[count]))
			count++;
	if (placing->setting->one_side && count == 2) {
		bool second = found[1].cost < found[0].cost - TOLERANCE_SAME;
		found[0] = found[second];
		count = 1;
	}
	for (size_t k = 0; k < count; k++)
		add_joint(placing, found[k]);
}

static void place_branched(const struct placing *placing)
{
	const struct soft_unit *unit = placing->unit;
	for (size_t k = 0; k < unit->end_count; k++) {
		struct side side = {arena_printf(placing->arena, "%zu", k + 1), &unit->ends[k],
		                    &unit->ends[(k + 1) % unit->end_count], false};
		struct soft_joint joint;
		if (place_side(placing, side, &joint))
			add_joint(placing, joint);
	}
}

/* No tile is crossed: the joint the crack runs in, from end to end. */
static void place_in_joint(const struct placing *placing)
{
	struct arena *arena = placing->arena;
	struct soft_unit *unit = placing->unit;
	if (unit->end_count != 2)
		return;
	struct soft_ports ports[2];
	for (int k = 0; k < 4; k++) {
		struct soft_ports side =
			soft_end_ports(arena, &unit->corridor, &unit->ends[k / 2], k % 2,
		                       SOFT_EXTENT_LINE, placing->setting->reach.one_tile);
		if (k % 2 == 0)
			ports[k / 2] = side;
		for (size_t p = 0; p < side.ports.count; p++)
			if (!is_listed(&ports[k / 2], side.ports.items[p]))
				*array_push(arena, &ports[k / 2].ports) = side.ports.items[p];
	}
	struct soft_joint joint;
	int first = unit->ends[0].which == 0 ? 0 : 1;
	if (search(placing, "on", &ports[first], &ports[1 - first], &joint))
		add_joint(placing, joint);
}

void soft_joints_of_group(struct arena *arena, const struct soft_setting *setting, size_t group,
                          const struct crack_part *parts, size_t part_count,
                          const struct region *strip, struct soft_joint_list *list)
{
	size_t count;
	struct soft_unit *units =
		soft_units(arena, setting, group, parts, part_count, strip, &count);
	for (size_t u = 0; u < count; u++) {
		struct placing placing = {arena, setting, &units[u], list};
		if (units[u].crossed.count == 0)
			place_in_joint(&placing);
		else if (soft_unit_is_plain(&units[u]))
			place_plain(&placing);
		else
			place_branched(&placing);
	}
}
