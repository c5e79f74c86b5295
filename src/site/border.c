#include "base/array.h"
#include "geometry/tolerance.h"
#include "site/site.h"

struct borders {
	struct arena *arena;
	ARRAY_OF(struct site_edge) edges;
};

static void add(struct borders *borders, struct site_edge edge)
{
	if (point_distance(edge.from, edge.to) > TOLERANCE_SAME)
		*array_push(borders->arena, &borders->edges) = edge;
}

/* `like` with other ends. */
static struct site_edge stretch(struct site_edge like, struct point from, struct point to)
{
	like.from = from;
	like.to = to;
	return like;
}

/* Round a doorway's recess: jamb, stop line, jamb. */
static void add_doorway(struct borders *borders, const struct site_doorway *doorway,
                        struct site_edge wall)
{
	struct site_edge jamb = wall;
	jamb.id = doorway->id;
	jamb.line = doorway->plan->line;
	jamb.kind = SITE_EDGE_JAMB;
	struct site_edge stop = jamb;
	stop.kind = doorway->end;
	stop.base = SITE_BASE_NONE;
	add(borders, stretch(jamb, doorway->from, doorway->stop_from));
	add(borders, stretch(stop, doorway->stop_from, doorway->stop_to));
	add(borders, stretch(jamb, doorway->stop_to, doorway->to));
}

/* The doorway of wall `edge` next after `start`; they do not overlap. */
static const struct site_doorway *next_doorway(const struct site_room *room, size_t edge,
                                               struct point start)
{
	struct site_edge wall = room->edges[edge];
	struct point along = point_unit(point_sub(wall.to, wall.from));
	const struct site_doorway *next = NULL;
	double nearest = INFINITY;
	for (size_t i = 0; i < room->doorway_count; i++) {
		const struct site_doorway *doorway = &room->doorways[i];
		double ahead = point_dot(point_sub(doorway->from, start), along);
		if (doorway->edge != edge || ahead < -TOLERANCE_SAME || ahead >= nearest)
			continue;
		next = doorway;
		nearest = ahead;
	}
	return next;
}

static void add_wall(struct borders *borders, const struct site_room *room, size_t edge)
{
	struct site_edge wall = room->edges[edge];
	struct point start = wall.from;
	const struct site_doorway *doorway;
	while ((doorway = next_doorway(room, edge, start))) {
		add(borders, stretch(wall, start, doorway->from));
		add_doorway(borders, doorway, wall);
		start = doorway->to;
	}
	add(borders, stretch(wall, start, wall.to));
}

/* What is sealed because no base covers it: docs/sources.md, perimeter. A boxed-in duct is
 * finished like the walls. */
static enum site_edge_base base_of(const struct site_obstacle *obstacle)
{
	bool is_box = obstacle->plan->kind == PLAN_OBSTACLE_BOX;
	return is_box ? SITE_BASE_COVERS : SITE_BASE_NONE;
}

static void add_obstacle(struct borders *borders, const struct site_obstacle *obstacle)
{
	struct site_edge side = {
		.id = obstacle->id,
		.kind = obstacle->is_drain ? SITE_EDGE_DRAIN : SITE_EDGE_OBSTACLE,
		.base = base_of(obstacle),
		.show = true,
		.line = obstacle->plan->line,
	};
	struct ring clockwise = ring_turned(borders->arena, obstacle->ring, false);
	for (size_t i = 0; i < clockwise.count; i++) {
		size_t next = i + 1 < clockwise.count ? i + 1 : 0;
		add(borders, stretch(side, clockwise.points[i], clockwise.points[next]));
	}
}

struct site_edge *site_room_borders(struct arena *arena, const struct site_room *room,
                                    size_t *out_count)
{
	struct borders borders = {.arena = arena};
	for (size_t i = 0; i < room->edge_count; i++)
		add_wall(&borders, room, i);
	for (size_t i = 0; i < room->obstacle_count; i++)
		add_obstacle(&borders, &room->obstacles[i]);
	*out_count = borders.edges.count;
	return borders.edges.items;
}
