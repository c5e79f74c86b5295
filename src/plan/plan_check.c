#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "plan/plan_build.h"

/* Bit of an attribute in an element's `given`. */
static bool is_given(uint64_t given, const struct grammar_element *element, const char *name)
{
	const struct grammar_attribute *attribute = grammar_find_attribute(element, name);
	return given >> (attribute - element->attributes) & 1;
}

static const struct grammar_element *element_named(const char *name)
{
	return grammar_find_child(&grammar_floor, name)->element;
}

/* ---- places ---- */

static void check_at(struct plan_build *b, const char *owner, struct plan_at *at)
{
	static const char *const names[] = {"x", "y", "wall", "along", "out"};
	const struct grammar_element *element = grammar_find_child(element_named("crack"), "at")->element;
	bool has[5];
	for (int i = 0; i < 5; i++)
		has[i] = is_given(at->given, element, names[i]);
	at->on_wall = has[2];
	bool by_point = has[0] && has[1] && !has[2] && !has[3] && !has[4];
	bool by_wall = has[2] && has[3] && !has[0] && !has[1];
	if (!by_point && !by_wall)
		diag_error(b->diags, at->line, "<at> of <%s>; expected x and y, or wall and along (with or without out)", owner);
}

static void check_line(struct plan_build *b, const char *owner, int line, struct plan_at *points, size_t count)
{
	if (count < 2)
		diag_error(b->diags, line, "<%s> has %zu <at>; expected two or more", owner, count);
	for (size_t i = 0; i < count; i++)
		check_at(b, owner, &points[i]);
}

/* ---- rooms ---- */

static void check_corners(struct plan_build *b, const struct plan_room *room)
{
	const int64_t least_nm = 1000000; /* neighbours at least 1 mm apart */
	for (size_t i = 0; i < room->wall_count; i++) {
		const struct plan_wall *wall = &room->walls[i], *next = &room->walls[(i + 1) % room->wall_count];
		if (llabs(next->x_nm - wall->x_nm) < least_nm && llabs(next->y_nm - wall->y_nm) < least_nm)
			diag_error(b->diags, next->line, "corner less than 1 mm from the one before it; expected corners apart");
	}
}

static void check_walls(struct plan_build *b, const struct plan_room *room)
{
	for (size_t i = 0; i < room->wall_count; i++)
		if (room->walls[i].kind == PLAN_WALL_OPEN || room->walls[i].kind == PLAN_WALL_OTHER_FLOOR)
			diag_error(b->diags, room->walls[i].line,
			           "kind=\"%s\" is not supported yet; expected wall or glass",
			           room->walls[i].kind == PLAN_WALL_OPEN ? "open" : "other-floor");
}

static void check_obstacle(struct plan_build *b, const struct plan_room *room, const struct plan_obstacle *obstacle)
{
	const struct grammar_element *element = grammar_find_child(element_named("room"), "obstacle")->element;
	(void)room;
	bool centre = is_given(obstacle->given, element, "x") && is_given(obstacle->given, element, "y");
	bool any = is_given(obstacle->given, element, "x") || is_given(obstacle->given, element, "y");
	bool round = is_given(obstacle->given, element, "across");
	bool wide = is_given(obstacle->given, element, "wide"), deep = is_given(obstacle->given, element, "deep");
	bool by_corners = obstacle->corner_count && !any && !round && !wide && !deep;
	bool by_size = !obstacle->corner_count && centre && ((round && !wide && !deep) || (!round && wide && deep));
	if (!by_corners && !by_size)
		diag_error(b->diags, obstacle->line,
		           "<obstacle> outline; expected <corners>, or x y across, or x y wide deep");
	else if (by_corners && obstacle->corner_count < 3)
		diag_error(b->diags, obstacle->line, "<obstacle> has %zu corners; expected 3 or more", obstacle->corner_count);
}

/* Length of a wall as far as the plan alone tells it; 0: not known. */
static double wall_length_nm(const struct plan_room *room, const char *id)
{
	for (size_t i = 0; i < room->wall_count; i++) {
		const struct plan_wall *wall = &room->walls[i], *next = &room->walls[(i + 1) % room->wall_count];
		if (!wall->id || strcmp(wall->id, id) != 0)
			continue;
		if (room->run)
			return (double)wall->length_nm;
		double dx = (double)(next->x_nm - wall->x_nm), dy = (double)(next->y_nm - wall->y_nm);
		return sqrt(dx * dx + dy * dy);
	}
	return 0;
}

static bool has_wall(const struct plan_room *room, const char *id)
{
	for (size_t i = 0; i < room->wall_count; i++)
		if (room->walls[i].id && strcmp(room->walls[i].id, id) == 0)
			return true;
	return false;
}

static void check_doorway(struct plan_build *b, const struct plan_room *room, const struct plan_doorway *doorway)
{
	const double nm_per_mm = 1e6;
	if (!doorway->wall || !doorway->width_nm)
		return; /* reported */
	if (!has_wall(room, doorway->wall)) {
		for (size_t i = 0; i < b->named.count; i++)
			if (strcmp(b->named.items[i].id, doorway->wall) == 0 && b->named.items[i].kind == PLAN_REF_WALL)
				diag_error(b->diags, doorway->line, "<doorway> in wall \"%s\" of another room; expected a wall of \"%s\"",
				           doorway->wall, room->id ? room->id : "");
		return;
	}
	double end = (double)(doorway->from_nm + doorway->width_nm), length = wall_length_nm(room, doorway->wall);
	if (length > 0 && end > length + nm_per_mm)
		diag_error(b->diags, doorway->line, "<doorway> ends %.0f mm along a wall of %.0f mm; expected it within the wall",
		           end / nm_per_mm, length / nm_per_mm);
}

static void check_room(struct plan_build *b, const struct plan_room *room, bool has_corners)
{
	if (has_corners && room->run)
		diag_error(b->diags, room->line, "<room> with <corners> and <walls>; expected one of them");
	else if (!has_corners && !room->run)
		diag_error(b->diags, room->line, "<room> without a boundary; expected <corners> or <walls>");
	else if (room->wall_count < 3)
		diag_error(b->diags, room->line, "<room> with %zu walls; expected 3 or more", room->wall_count);
	else if (!room->run)
		check_corners(b, room);
	check_walls(b, room);
	for (size_t i = 0; i < room->obstacle_count; i++)
		check_obstacle(b, room, &room->obstacles[i]);
	for (size_t i = 0; i < room->doorway_count; i++)
		check_doorway(b, room, &room->doorways[i]);
}

/* ---- tile, lays, membranes ---- */

static void fill_tile(struct plan_build *b, struct plan_tile *tile)
{
	if (!tile->long_nm)
		tile->long_nm = tile->wide_nm;
	if (tile->long_nm < tile->wide_nm && tile->long_nm && tile->wide_nm)
		diag_error(b->diags, tile->line, "<tile> long is less than wide; expected the longer side in long");
	if (tile->shape == PLAN_SHAPE_HEXAGON)
		diag_error(b->diags, tile->line, "shape=\"hexagon\" is not supported yet; expected rectangle");
}

/* Source: docs/sources.md#offset-limit: long tile is offset by a third at the most. */
static struct share default_shift(const struct plan_lay *lay)
{
	const int64_t large_nm = 15 * INT64_C(25400000);
	bool large = lay->tile_count && lay->tiles[0]->long_nm + lay->joint_nm >= large_nm;
	return large ? (struct share){1, 3} : (struct share){1, 2};
}

static void fill_lay(struct plan_build *b, struct plan_lay *lay)
{
	if (!lay->shift.den)
		lay->shift = default_shift(lay);
	if (lay->pattern > PLAN_PATTERN_RUNNING)
		diag_error(b->diags, lay->line, "pattern=\"%s\" is not supported yet; expected grid or running",
		           grammar_find_attribute(element_named("lay"), "pattern")->words[lay->pattern]);
	else if (lay->tile_count > 1)
		diag_error(b->diags, lay->line, "%zu tiles for this pattern; expected one", lay->tile_count);
	if (lay->gap_max_nm < lay->gap_nm)
		diag_error(b->diags, lay->line, "gap-max is less than gap; expected gap or more");
	if (lay->shift.num >= lay->shift.den)
		diag_error(b->diags, lay->line, "shift is a whole tile or more; expected less than 1");
}

static void check_membrane(struct plan_build *b, const struct plan_membrane *membrane)
{
	bool isolates = membrane->kind == PLAN_MEMBRANE_LIQUID || membrane->kind == PLAN_MEMBRANE_SHEET;
	const struct grammar_element *element = element_named("membrane");
	if (!is_given(membrane->given, element, "kind"))
		return; /* reported */
	if (!isolates)
		diag_error(b->diags, membrane->line, "kind=\"%s\" is not supported yet; expected liquid or sheet",
		           grammar_find_attribute(element, "kind")->words[membrane->kind]);
	else if (!is_given(membrane->given, element, "movement"))
		diag_error(b->diags, membrane->line,
		           "<membrane> lacks the attribute \"movement\"; expected the rated in-plane movement");
}

/* Each room at most once in the lists of all lays, or of all membranes. */
static void check_shared_rooms(struct plan_build *b)
{
	for (size_t r = 0; r < b->plan->room_count; r++) {
		const struct plan_room *room = &b->plan->rooms[r];
		size_t lays = 0, membranes = 0;
		for (size_t i = 0; i < b->plan->lay_count; i++)
			for (size_t k = 0; k < b->plan->lays[i].room_count; k++)
				if (b->plan->lays[i].rooms[k] == room && lays++)
					diag_error(b->diags, b->plan->lays[i].line, "room \"%s\" is in a lay already; expected it in one",
					           room->id);
		for (size_t i = 0; i < b->plan->membrane_count; i++)
			for (size_t k = 0; k < b->plan->membranes[i].room_count; k++)
				if (b->plan->membranes[i].rooms[k] == room && membranes++)
					diag_error(b->diags, b->plan->membranes[i].line,
					           "room \"%s\" is under a membrane already; expected it under one", room->id);
	}
}

static void check_answer(struct plan_build *b, const struct plan_answer *answer)
{
	if (answer->decision != PLAN_ISOLATE || answer->about.kind != PLAN_REF_CRACK || !answer->about.element)
		return;
	const struct plan_crack *crack = answer->about.element;
	if (crack->step_nm > 0 && !answer->ref)
		diag_error(b->diags, answer->line,
		           "<answer> isolates the stepped crack \"%s\" without \"ref\"; expected the letter it rests on", crack->id);
}

static void check_floor(struct plan_build *b)
{
	const struct plan *plan = b->plan;
	if (is_given(plan->given, &grammar_floor, "version") && plan->version != 1)
		diag_error(b->diags, plan->line, "version %lld; expected 1", (long long)plan->version);
	if (plan->room_count == 0)
		diag_error(b->diags, plan->line, "<floor> without a <room>; expected at least one");
}

void plan_check(struct plan_build *b)
{
	struct plan *plan = b->plan;
	check_floor(b);
	for (size_t i = 0; i < plan->room_count; i++)
		check_room(b, &plan->rooms[i], plan->rooms[i].has_corners);
	for (size_t i = 0; i < plan->crack_count; i++)
		check_line(b, "crack", plan->cracks[i].line, plan->cracks[i].points, plan->cracks[i].point_count);
	for (size_t i = 0; i < plan->slab_joint_count; i++) {
		const struct plan_slab_joint *joint = &plan->slab_joints[i];
		check_line(b, "slab-joint", joint->line, joint->points, joint->point_count);
		if (joint->treat == PLAN_TREAT_RELOCATE && joint->kind != PLAN_JOINT_CONTRACTION)
			diag_error(b->diags, joint->line, "treat=\"relocate\" of another kind; expected it of a contraction joint only");
	}
	for (size_t i = 0; i < plan->tile_count; i++)
		fill_tile(b, &plan->tiles[i]);
	for (size_t i = 0; i < plan->lay_count; i++)
		fill_lay(b, &plan->lays[i]);
	for (size_t i = 0; i < plan->membrane_count; i++)
		check_membrane(b, &plan->membranes[i]);
	check_shared_rooms(b);
	for (size_t i = 0; i < plan->answer_count; i++)
		check_answer(b, &plan->answers[i]);
}
