#include "compare/thing.h"

#include "count/totals.h"
#include "units/length.h"
#include "units/number.h"

struct collecting {
	struct arena *arena;
	const struct floor_state *state;
	struct thing_list things;
};

/* A size to the micrometre, so that rounding in computed lengths is no difference. */
static const char *size(struct collecting *c, double mm)
{
	return number_text(c->arena, mm, 3);
}

static struct thing *add(struct collecting *c, enum thing_kind kind, const char *id,
                         const char *looks)
{
	struct thing *thing = array_push(c->arena, &c->things.list);
	*thing = (struct thing){.kind = kind, .id = id, .looks = looks};
	return thing;
}

static void add_line(struct collecting *c, enum thing_kind kind, const char *id, const char *looks,
                     struct line line, bool is_ring)
{
	add(c, kind, id, looks)->shape = (struct shape){line, is_ring};
}

static struct line segment(struct collecting *c, struct point from, struct point to)
{
	struct point *points = ARENA_ARRAY(c->arena, struct point, 2);
	points[0] = from;
	points[1] = to;
	return (struct line){points, 2};
}

/* ---- as found ---- */

static void add_walls(struct collecting *c, const struct site_room *room)
{
	for (size_t i = 0; i < room->edge_count; i++) {
		const struct site_edge *edge = &room->edges[i];
		const char *looks = arena_printf(c->arena, "%d %d %d", (int)edge->kind,
		                                 (int)edge->base, edge->show);
		add_line(c, THING_WALL, edge->id, looks, segment(c, edge->from, edge->to), false);
	}
}

static void add_room(struct collecting *c, const struct site_room *room)
{
	add_walls(c, room);
	for (size_t i = 0; i < room->obstacle_count; i++) {
		const struct site_obstacle *obstacle = &room->obstacles[i];
		add_line(c, THING_OBSTACLE, obstacle->id,
		         arena_printf(c->arena, "%d", (int)obstacle->plan->kind),
		         (struct line){obstacle->ring.points, obstacle->ring.count}, true);
	}
	for (size_t i = 0; i < room->doorway_count; i++) {
		const struct site_doorway *doorway = &room->doorways[i];
		add_line(c, THING_DOORWAY, doorway->id,
		         arena_printf(c->arena, "%d %s %s", (int)doorway->end,
		                      size(c, point_distance(doorway->from, doorway->stop_from)),
		                      size(c, length_mm(doorway->plan->level_nm))),
		         segment(c, doorway->from, doorway->to), false);
	}
}

static void add_found(struct collecting *c)
{
	const struct site *site = c->state->site;
	for (size_t i = 0; i < site->crack_count; i++) {
		const struct site_crack *crack = &site->cracks[i];
		struct crack_total total = crack_total(c->state->placed, crack);
		const char *looks =
			arena_printf(c->arena, "%s %s %d %d", size(c, crack->width),
		                     size(c, crack->step), (int)total.state, total.pending);
		add_line(c, THING_CRACK, crack->id, looks, crack->line, false);
	}
	for (size_t i = 0; i < site->slab_joint_count; i++) {
		const struct site_slab_joint *joint = &site->slab_joints[i];
		const char *looks =
			arena_printf(c->arena, "%d %s %s %d", (int)joint->plan->kind,
		                     size(c, joint->width), size(c, joint->step), joint->relocate);
		add_line(c, THING_SLAB_JOINT, joint->id, looks, joint->line, false);
	}
	for (size_t i = 0; i < site->reading_count; i++) {
		const struct site_reading *reading = &site->readings[i];
		bool fails = findings_fail_reading(c->state->findings, reading->id);
		if (reading->has_at)
			add_line(c, THING_READING, reading->id,
			         arena_printf(c->arena, "%d %s %d", (int)reading->plan->kind,
			                      reading->plan->value, fails),
			         segment(c, reading->at, reading->at), false);
	}
}

/* ---- as placed ---- */

static struct line lay_line(struct collecting *c, const struct placed_lay *lay, struct line line)
{
	return frame_line_out(c->arena, lay->field->frame, line);
}

static void add_holds(struct collecting *c, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->cracks->hold_count; i++) {
		const struct hold *hold = &lay->cracks->holds[i];
		struct region ground = frame_region_out(c->arena, lay->field->frame, &hold->region);
		for (size_t k = 0; k < ground.count; k++) {
			struct ring ring = ground.polygons[k].outline;
			struct thing *thing = add(c, THING_HOLD, hold->id, "");
			thing->shape = (struct shape){{ring.points, ring.count}, true};
			thing->ground = (struct region){&ground.polygons[k], 1};
		}
	}
}

static void add_pieces(struct collecting *c, const struct placed_lay *lay,
                       const struct strip *strip)
{
	for (size_t i = 0; i < strip->piece_count; i++) {
		const struct strip_piece *piece = &strip->pieces[i];
		const char *looks =
			arena_printf(c->arena, "%s %d %s %s %s %d", strip->cracks[0], piece->order,
		                     size(c, piece->length), size(c, piece->wide),
		                     size(c, piece->lap), strip->pending);
		struct polygon shape = piece->shape;
		struct region ground =
			frame_region_out(c->arena, lay->field->frame, &(struct region){&shape, 1});
		struct ring outline = ground.polygons[0].outline;
		struct thing *thing = add(c, THING_PIECE, strip->id, looks);
		thing->shape = (struct shape){{outline.points, outline.count}, true};
		thing->ground = ground;
	}
}

static void add_joints(struct collecting *c, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->joints->joint_count; i++) {
		const struct joint *joint = &lay->joints->joints[i];
		const char *looks = arena_printf(c->arena, "%d %d %d %d %s %s", (int)joint->kind,
		                                 joint->on_joint, joint->is_open, (int)joint->back,
		                                 size(c, joint->width), size(c, joint->depth));
		add_line(c, THING_JOINT, joint->id, looks, lay_line(c, lay, joint->line),
		         joint->is_closed);
	}
}

static void add_controls(struct collecting *c, const struct placed_lay *lay)
{
	struct frame frame = lay->field->frame;
	for (size_t i = 0; i < lay->controls->control_count; i++) {
		const struct control *control = &lay->controls->controls[i];
		add_line(c, THING_CONTROL, control->id, "",
		         segment(c, frame_out(frame, control->from), frame_out(frame, control->to)),
		         false);
	}
	for (size_t i = 0; i < lay->controls->first_count; i++) {
		const struct first_tile *first = &lay->controls->firsts[i];
		struct point at = frame_out(frame, first->at);
		add_line(c, THING_FIRST_TILE, first->room->id,
		         arena_printf(c->arena, "%d %d", first->towards_u, first->towards_v),
		         segment(c, at, at), false);
	}
}

static void add_placed(struct collecting *c, const struct placed_lay *lay)
{
	add_holds(c, lay);
	for (size_t i = 0; i < lay->strips->strip_count; i++)
		add_pieces(c, lay, &lay->strips->strips[i]);
	add_joints(c, lay);
	add_controls(c, lay);
}

struct thing_list things_of(struct arena *arena, const struct floor_state *state)
{
	struct collecting c = {.arena = arena, .state = state};
	for (size_t i = 0; i < state->site->room_count; i++)
		add_room(&c, &state->site->rooms[i]);
	add_found(&c);
	for (size_t i = 0; i < state->placed->lay_count; i++)
		add_placed(&c, &state->placed->lays[i]);
	return c.things;
}
