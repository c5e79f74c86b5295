/* Checks of what stands in a <room>. Whether an outline closes and does not meet itself, and
 * whether a doorway lies within its wall, is geometry: the site's to say. */
#include <stdlib.h>
#include <string.h>

#include "plan/plan_build.h"

static const struct plan_built *at_of(const struct plan_build *b, size_t built)
{
	return &b->built.items[built];
}

/* ---- outlines ---- */

struct corner {
	int64_t x_nm, y_nm;
	int line;
	bool is_sound;
};

static struct corner corner_of(const struct plan_built *at, int64_t x_nm, int64_t y_nm)
{
	return (struct corner){x_nm, y_nm, at->node->line,
	                       plan_is_sound(at, "x") && plan_is_sound(at, "y")};
}

/* Corners of rooms are walls, those of obstacles are points. */
static struct corner read_corner(const struct plan_built *at)
{
	const struct plan_wall *wall = at->object;
	const struct plan_at *point = at->object;
	if (at->element->kind == PLAN_REF_WALL)
		return corner_of(at, wall->x_nm, wall->y_nm);
	return corner_of(at, point->x_nm, point->y_nm);
}

static bool is_on(const struct corner *a, const struct corner *b)
{
	const int64_t least_nm = 1000000; /* docs/floor-format.md: neighbours at least 1 mm apart */
	int64_t dx = llabs(a->x_nm - b->x_nm), dy = llabs(a->y_nm - b->y_nm);
	return a->is_sound && b->is_sound && dx < least_nm && dy < least_nm &&
	       dx * dx + dy * dy < least_nm * least_nm;
}

static void check_apart(struct plan_build *b, size_t built, const struct corner *before,
                        const struct corner *after)
{
	if (is_on(before, after))
		plan_fault(b, built, before->line > after->line ? before->line : after->line,
		           "<corner> less than 1 mm from its neighbour; expected corners apart");
}

/* `built` is the element <corners>. */
void plan_check_corners(struct plan_build *b, size_t built)
{
	const struct plan_built *group = at_of(b, built);
	size_t count = plan_count_children(b, built, "corner");
	if (count < 3 && group->is_understood)
		plan_fault(b, built, group->node->line,
		           arena_printf(b->arena,
		                        "<corners> with %zu <corner>; expected three or more",
		                        count));
	if (count < 3)
		return;
	size_t end = group->end;
	struct corner first = read_corner(at_of(b, built + 1)), before = first;
	for (size_t i = at_of(b, built + 1)->end; i < end; i = at_of(b, i)->end) {
		struct corner after = read_corner(at_of(b, i));
		check_apart(b, built, &before, &after);
		before = after;
	}
	check_apart(b, built, &before, &first);
}

static void check_run(struct plan_build *b, size_t built)
{
	const struct plan_built *run = at_of(b, built);
	size_t count = plan_count_children(b, built, "wall");
	if (count < 3 && run->is_understood)
		plan_fault(b, built, run->node->line,
		           arena_printf(b->arena, "<walls> with %zu <wall>; expected three or more",
		                        count));
}

void plan_check_room(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	size_t corners = plan_child(b, built, "corners"), run = plan_child(b, built, "walls");
	bool has_corners = corners != built, has_run = run != built;
	if (has_corners && has_run)
		plan_fault(b, built, at_of(b, corners > run ? corners : run)->node->line,
		           "<room> with <corners> and <walls>; expected one of them");
	else if (!has_corners && !has_run && at->is_understood)
		plan_fault(b, built, at->node->line,
		           "<room> without a boundary; expected <corners> or <walls>");
	if (has_corners)
		plan_check_corners(b, corners);
	if (has_run)
		check_run(b, run);
}

void plan_check_obstacle(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	size_t corners = plan_child(b, built, "corners");
	bool has_corners = corners != built;
	bool x = plan_is_written(at, "x"), y = plan_is_written(at, "y");
	bool across = plan_is_written(at, "across");
	bool wide = plan_is_written(at, "wide"), deep = plan_is_written(at, "deep");
	bool turn = plan_is_written(at, "turn");
	bool is_round = x && y && across && !wide && !deep && !turn && !has_corners;
	bool is_box = x && y && wide && deep && !across && !has_corners;
	bool is_outline = has_corners && !x && !y && !across && !wide && !deep && !turn;
	if (!is_round && !is_box && !is_outline && at->is_understood)
		plan_fault(b, built, at->node->line,
		           "<obstacle> without one shape; expected <corners>, "
		           "x y across, or x y wide deep");
	if (has_corners)
		plan_check_corners(b, corners);
}

static void wall_fault(struct plan_build *b, size_t built, const char *attribute, const char *what)
{
	const struct plan_built *at = at_of(b, built);
	plan_fault(b, built, plan_line_of(at, attribute),
	           arena_printf(b->arena, "<%s> %s", at->element->name, what));
}

static void check_open(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_wall *wall = at->object;
	bool has_to = plan_is_written(at, "to"), is_open = wall->kind == PLAN_WALL_OPEN;
	if (is_open && !has_to)
		wall_fault(b, built, "kind",
		           "kind=\"open\" without to; expected the room on the other side");
	if (!is_open && has_to)
		wall_fault(b, built, "to",
		           "to at an edge that is not open; expected kind=\"open\"");
}

/* Corners of obstacles come here too, and are none of a room's. */
void plan_check_wall(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_wall *wall = at->object;
	if (at->element->kind != PLAN_REF_WALL)
		return;
	if (plan_is_sound(at, "kind"))
		check_open(b, built);
	if (plan_is_written(at, "to") && plan_is_sound(at, "to") &&
	    wall->to == at_of(b, plan_within(b, built, "room"))->object)
		wall_fault(b, built, "to", "to its own room; expected another room");
	if (wall->kind == PLAN_WALL_OPEN && wall->rise_nm != 0)
		wall_fault(b, built, "rise", "kind=\"open\" with rise; expected a straight edge");
}

void plan_check_doorway(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	struct plan_doorway *doorway = at->object;
	doorway->has_level = plan_is_written(at, "level");
	if (!plan_is_written(at, "to") || !plan_is_sound(at, "to"))
		return;
	if (doorway->to == at_of(b, plan_within(b, built, "room"))->object)
		plan_fault(b, built, plan_line_of(at, "to"),
		           "<doorway> to its own room; expected another room");
}

void plan_check_diagonal(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_diagonal *diagonal = at->object;
	if (plan_is_sound(at, "from") && plan_is_sound(at, "to") &&
	    strcmp(diagonal->from, diagonal->to) == 0)
		plan_fault(b, built, plan_line_of(at, "to"),
		           "<diagonal> from a corner to itself; expected another corner");
}
