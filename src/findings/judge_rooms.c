/* judge_rooms.c - rooms as they were measured, and how high the floor comes at their doorways
 * and where another lay begins. */
#include <math.h>

#include "findings/judge.h"
#include "units/length.h"
#include "units/number.h"

static struct raised raised_of_room(const struct judging *judging, enum rule_id id,
                                    const struct site_room *room)
{
	return (struct raised){.rule = judge_rule(judging, id),
	                       .about = room->id,
	                       .line = room->plan->line,
	                       .at = room->outline.points[0],
	                       .unit = "mm"};
}

static void judge_closing(struct judging *judging, const struct field *field,
                          const struct site_room *room)
{
	struct raised raised = raised_of_room(judging, RULE_CLOSING_ERROR, room);
	raised.measured = room->closing_error;
	raised.limit = field->tolerance;
	if (number_order(raised.measured, raised.limit) > 0)
		judge_plainly(judging, raised);
}

/* ---- corners ---- */

/* Sides of an arc have no corner between them. */
static bool is_corner(const struct site_room *room, size_t edge, size_t next)
{
	const struct plan_wall *a = room->edges[edge].wall, *b = room->edges[next].wall;
	return a != b && a != NULL && b != NULL && a->rise_nm == 0 && b->rise_nm == 0;
}

/* How far the shorter wall is off square to the other, at its far end; 0 where the corner is
 * not meant to be square. */
static double off_square(const struct judging *judging, const struct site_edge *a,
                         const struct site_edge *b)
{
	struct point u = point_sub(a->to, a->from), v = point_sub(b->to, b->from);
	double length = fmin(point_length(u), point_length(v));
	double lean = fabs(point_dot(point_unit(u), point_unit(v))) * length;
	double meant = judge_figure(judging, FIGURE_SQUARE_MEANT_SLOPE) * length;
	return number_order(lean, meant) <= 0 ? lean : 0;
}

/* Once a room: the corner that is farthest off. */
static void judge_square(struct judging *judging, const struct field *field,
                         const struct site_room *room)
{
	struct raised raised = raised_of_room(judging, RULE_OUT_OF_SQUARE, room);
	const struct site_edge *worst = NULL, *beside = NULL;
	for (size_t i = 0; i < room->edge_count; i++) {
		size_t next = (i + 1) % room->edge_count;
		double off = off_square(judging, &room->edges[i], &room->edges[next]);
		if (!is_corner(room, i, next) || number_order(off, raised.measured) <= 0)
			continue;
		raised.measured = off;
		worst = &room->edges[i];
		beside = &room->edges[next];
	}
	raised.limit = field->tolerance;
	if (worst == NULL || number_order(raised.measured, raised.limit) <= 0)
		return;
	raised.at = worst->to;
	judge_say(judging, raised, {"wall", worst->id}, {"other", beside->id});
}

/* ---- height at doorways and between lays ---- */

/* Of the finished tile above the slab; what the membrane adds only where it is full. */
static double floor_height(const struct judging *judging, const struct placed_lay *lay)
{
	const struct cover *cover = &lay->strips->cover;
	double coat = judge_figure(judging, FIGURE_BOND_COAT), thick = 0;
	for (size_t i = 0; i < lay->field->lay->tile_count; i++)
		thick = fmax(thick, length_mm(lay->field->lay->tiles[i]->thick_nm));
	double under = cover->membrane != NULL && cover->is_full
	                       ? length_mm(cover->membrane->thick_nm)
	                       : 0;
	return under + coat + thick;
}

static void judge_levels(struct judging *judging, const struct placed_lay *lay,
                         const struct site_room *room)
{
	for (size_t i = 0; i < room->doorway_count; i++) {
		const struct site_doorway *doorway = &room->doorways[i];
		struct raised raised = raised_of_room(judging, RULE_FLOOR_RAISED, room);
		double height = floor_height(judging, lay);
		double level = length_mm(doorway->plan->level_nm);
		if (!doorway->plan->has_level || doorway->end == SITE_EDGE_OPEN)
			continue;
		raised.about = doorway->id;
		raised.line = doorway->plan->line;
		raised.at = point_between(doorway->stop_from, doorway->stop_to, 0.5);
		raised.measured = fabs(height - level);
		raised.limit = raised.rule->limit;
		raised.message = height > level ? NULL : "finding.floor-raised.lower";
		if (rule_is_raised(raised.rule, raised.measured))
			judge_say(judging, raised, {"height", judge_length(judging, height)});
	}
}

static const struct placed_lay *lay_in(const struct judging *judging, const struct plan_room *room)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct field *field = judging->placed->lays[i].field;
		for (size_t r = 0; r < field->room_count; r++)
			if (field->rooms[r]->plan == room)
				return &judging->placed->lays[i];
	}
	return NULL;
}

/* Where the tile of one lay meets that of another; told once, of the one that comes higher. */
static void judge_step(struct judging *judging, const struct placed_lay *lay,
                       const struct site_room *room, const struct plan_room *beyond,
                       struct raised raised)
{
	const struct placed_lay *other = lay_in(judging, beyond);
	if (other == NULL || other == lay)
		return;
	double height = floor_height(judging, lay);
	raised.measured = height - floor_height(judging, other);
	raised.limit = raised.rule->limit;
	raised.message = "finding.floor-raised.between";
	if (rule_is_raised(raised.rule, raised.measured))
		judge_say(judging, raised, {"height", judge_length(judging, height)},
		          {"room", room->name},
		          {"other", beyond->name ? beyond->name : beyond->id});
}

static void judge_steps(struct judging *judging, const struct placed_lay *lay,
                        const struct site_room *room)
{
	for (size_t i = 0; i < room->doorway_count; i++) {
		const struct site_doorway *doorway = &room->doorways[i];
		struct raised raised = raised_of_room(judging, RULE_FLOOR_RAISED, room);
		raised.about = doorway->id;
		raised.line = doorway->plan->line;
		raised.at = point_between(doorway->stop_from, doorway->stop_to, 0.5);
		if (doorway->beyond != NULL)
			judge_step(judging, lay, room, doorway->beyond->plan, raised);
	}
	for (size_t i = 0; i < room->edge_count; i++) {
		const struct site_edge *edge = &room->edges[i];
		struct raised raised = raised_of_room(judging, RULE_FLOOR_RAISED, room);
		raised.about = edge->id;
		raised.line = edge->line;
		raised.at = point_between(edge->from, edge->to, 0.5);
		if (edge->wall != NULL && edge->wall->to != NULL && edge->kind == SITE_EDGE_STOP)
			judge_step(judging, lay, room, edge->wall->to, raised);
	}
}

void judge_rooms(struct judging *judging)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct placed_lay *lay = &judging->placed->lays[i];
		for (size_t r = 0; r < lay->field->room_count; r++) {
			judge_closing(judging, lay->field, lay->field->rooms[r]);
			judge_square(judging, lay->field, lay->field->rooms[r]);
			judge_levels(judging, lay, lay->field->rooms[r]);
			judge_steps(judging, lay, lay->field->rooms[r]);
		}
	}
}
