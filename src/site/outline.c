#include "site/outline.h"

#include "geometry/crossing.h"
#include "geometry/segment.h"
#include "site/traverse.h"

#define NM_A_MM 1e6

/* ---- corners as written ---- */

static struct point *corners_as_drawn(struct arena *arena, const struct plan_room *room)
{
	struct point *corners = ARENA_ARRAY(arena, struct point, room->wall_count);
	for (size_t i = 0; i < room->wall_count; i++)
		corners[i] = build_point(room->walls[i].x_nm, room->walls[i].y_nm);
	return corners;
}

/* Walked in nanometres: whole numbers add without loss, so a room that closes on paper
 * closes here. */
static struct traverse_closing close_run(struct arena *arena, const struct plan_room *room)
{
	size_t count = room->wall_count;
	double *lengths = ARENA_ARRAY(arena, double, count);
	double *turns = ARENA_ARRAY(arena, double, count);
	for (size_t i = 0; i < count; i++) {
		lengths[i] = (double)room->walls[i].length_nm;
		turns[i] = room->walls[i].turn_deg;
	}
	const struct traverse run = {
		.start = {(double)room->run->x_nm, (double)room->run->y_nm},
		.lengths = lengths,
		.headings_deg = traverse_headings(arena, room->run->heading_deg, turns, count),
		.count = count,
	};
	return traverse_close(arena, &run);
}

/* Compared in whole nanometres, so that the last bits of a walk never decide. */
static bool is_closed(struct build *build, const struct plan_room *room,
                      const struct traverse_closing *closing)
{
	double allowed_nm = share_value(room->run->closing) * closing->perimeter;
	if (rint(closing->error_length) <= rint(allowed_nm))
		return true;
	diag_error(build->diags, room->run->line,
	           "the walls of \"%s\" do not close: after %s they end %s from their start, "
	           "1 in %lld; expected at most %s",
	           room->id, build_length_text(build, closing->perimeter / NM_A_MM),
	           build_length_text(build, closing->error_length / NM_A_MM),
	           llround(closing->perimeter / closing->error_length),
	           build_length_text(build, allowed_nm / NM_A_MM));
	return false;
}

/* NULL after an error. */
static struct point *corners_of_run(struct build *build, struct site_room *room)
{
	const struct plan_room *plan = room->plan;
	struct traverse_closing closing = close_run(build->arena, plan);
	if (!is_closed(build, plan, &closing))
		return NULL;
	room->closing_error = closing.error_length / NM_A_MM;
	for (size_t i = 0; i < plan->wall_count; i++) {
		closing.corners[i].x /= NM_A_MM;
		closing.corners[i].y /= NM_A_MM;
	}
	return closing.corners;
}

static bool is_simple(struct build *build, const struct plan_room *room, struct ring written)
{
	struct crossing at;
	if (!crossing_find(build->arena, written, &at))
		return true;
	diag_error(
		build->diags, room->walls[at.second].line,
		"wall \"%s\" meets wall \"%s\" of its room; expected walls that touch only their "
		"neighbours, at the corners",
		room->walls[at.second].id, room->walls[at.first].id);
	return false;
}

/* ---- edges ---- */

static enum site_edge_kind edge_kind(enum plan_wall_kind kind)
{
	static const enum site_edge_kind KINDS[] = {
		[PLAN_WALL_WALL] = SITE_EDGE_WALL,
		[PLAN_WALL_GLASS] = SITE_EDGE_GLASS,
		[PLAN_WALL_OPEN] = SITE_EDGE_OPEN,
		[PLAN_WALL_OTHER_FLOOR] = SITE_EDGE_OTHER_FLOOR,
	};
	return KINDS[kind];
}

static enum site_edge_base edge_base(enum plan_base base)
{
	static const enum site_edge_base BASES[] = {
		[PLAN_BASE_COVERS] = SITE_BASE_COVERS,
		[PLAN_BASE_FIRST] = SITE_BASE_FIRST,
		[PLAN_BASE_NONE] = SITE_BASE_NONE,
	};
	return BASES[base];
}

/* Written clockwise, the outline starts at the same corner and goes round the other way:
 * its first edge is the last wall. */
static size_t wall_of_edge(size_t edge, size_t count, bool reversed)
{
	return reversed ? count - 1 - edge : edge;
}

const struct plan_wall *outline_wall(const struct site_room *room, size_t edge)
{
	bool reversed = room->edges[edge].reversed;
	return &room->plan->walls[wall_of_edge(edge, room->edge_count, reversed)];
}

static struct site_edge edge_of_wall(const struct plan_wall *wall, struct segment side,
                                     bool reversed)
{
	return (struct site_edge){
		.id = wall->id,
		.from = side.from,
		.to = side.to,
		.kind = edge_kind(wall->kind),
		.base = edge_base(wall->base),
		.show = wall->show,
		.reversed = reversed,
		.line = wall->line,
	};
}

static bool is_faulty(const struct build *build, const struct plan_room *room)
{
	bool faulty = room->wall_count < 3 || build_is_faulty(build, room->given, room->line);
	if (room->run)
		faulty |= build_is_faulty(build, room->run->given, room->run->line);
	for (size_t i = 0; !faulty && i < room->wall_count; i++)
		faulty = build_is_faulty(build, room->walls[i].given, room->walls[i].line);
	return faulty;
}

bool outline_build(struct build *build, struct site_room *room)
{
	const struct plan_room *plan = room->plan;
	if (is_faulty(build, plan))
		return false;
	struct point *corners =
		plan->run ? corners_of_run(build, room) : corners_as_drawn(build->arena, plan);
	struct ring written = {corners, plan->wall_count};
	if (!corners || !is_simple(build, plan, written))
		return false;

	bool reversed = ring_area(written) < 0;
	room->outline = ring_turned(build->arena, written, true);
	room->edge_count = written.count;
	room->edges = ARENA_ARRAY(build->arena, struct site_edge, written.count);
	for (size_t i = 0; i < written.count; i++) {
		const struct plan_wall *wall =
			&plan->walls[wall_of_edge(i, written.count, reversed)];
		room->edges[i] = edge_of_wall(wall, segment_of_ring(room->outline, i), reversed);
	}
	return true;
}
