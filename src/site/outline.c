#include "site/outline.h"

#include <string.h>

#include "geometry/arc.h"
#include "geometry/crossing.h"
#include "geometry/segment.h"
#include "site/traverse.h"

#define NM_A_MM 1e6

/* Least squares cost the cube of the walls: so many are fitted within a second. */
enum { FITTED_WALLS_MOST = 100 };

/* ---- corners as written ---- */

static struct point *corners_as_drawn(struct arena *arena, const struct plan_room *room)
{
	struct point *corners = ARENA_ARRAY(arena, struct point, room->wall_count);
	for (size_t i = 0; i < room->wall_count; i++)
		corners[i] = build_point(room->walls[i].x_nm, room->walls[i].y_nm);
	return corners;
}

static size_t corner_named(const struct plan_room *room, const char *wall)
{
	size_t i = 0;
	while (i < room->wall_count && strcmp(room->walls[i].id, wall) != 0)
		i++;
	return i;
}

static struct traverse_tie *ties_of_diagonals(struct arena *arena, const struct plan_room *room)
{
	const struct plan_run *run = room->run;
	struct traverse_tie *ties = ARENA_ARRAY(arena, struct traverse_tie, run->diagonal_count);
	for (size_t i = 0; i < run->diagonal_count; i++)
		ties[i] = (struct traverse_tie){
			corner_named(room, run->diagonals[i].from),
			corner_named(room, run->diagonals[i].to),
			(double)run->diagonals[i].length_nm,
		};
	return ties;
}

/* Walked in nanometres: whole numbers add without loss, so a room that closes on paper
 * closes here. */
static struct traverse run_of_walls(struct arena *arena, const struct plan_room *room)
{
	size_t count = room->wall_count;
	double *lengths = ARENA_ARRAY(arena, double, count);
	double *turns = ARENA_ARRAY(arena, double, count);
	for (size_t i = 0; i < count; i++) {
		lengths[i] = (double)room->walls[i].length_nm;
		turns[i] = room->walls[i].turn_deg;
	}
	return (struct traverse){
		.start = {(double)room->run->x_nm, (double)room->run->y_nm},
		.lengths = lengths,
		.headings_deg = traverse_headings(arena, room->run->heading_deg, turns, count),
		.count = count,
	};
}

static double allowed_nm(const struct plan_room *room, const struct traverse_closing *closing)
{
	return rint(share_value(room->run->closing) * closing->perimeter);
}

/* Compared in whole nanometres, so that the last bits of a walk never decide. */
static bool is_closed(struct build *build, const struct plan_room *room,
                      const struct traverse_closing *closing)
{
	double allowed = allowed_nm(room, closing);
	if (rint(closing->error_length) <= allowed)
		return true;
	diag_error(build->diags, room->run->line,
	           "the walls of \"%s\" do not close: after %s they end %s from their start, "
	           "1 in %lld; expected at most %s",
	           room->id, build_length_text(build, closing->perimeter / NM_A_MM),
	           build_length_text(build, closing->error_length / NM_A_MM),
	           llround(closing->perimeter / closing->error_length),
	           build_length_text(build, allowed / NM_A_MM));
	return false;
}

static bool do_diagonals_fit(struct build *build, const struct plan_room *room,
                             const struct traverse_closing *fitted)
{
	double allowed = allowed_nm(room, fitted);
	if (rint(fitted->misfit) <= allowed)
		return true;
	diag_error(build->diags, room->run->line,
	           "the walls and diagonals of \"%s\" do not fit: one of them would have to "
	           "change by %s; expected at most %s",
	           room->id, build_length_text(build, fitted->misfit / NM_A_MM),
	           build_length_text(build, allowed / NM_A_MM));
	return false;
}

/* The run closed, by least squares where diagonals are given; false after an error. */
static bool close_run(struct build *build, const struct plan_room *room,
                      struct traverse_closing *out_closing)
{
	struct arena *arena = build->arena;
	const struct plan_run *written = room->run;
	struct traverse run = run_of_walls(arena, room);
	*out_closing = traverse_close(arena, &run);
	if (!is_closed(build, room, out_closing))
		return false;
	if (!written->diagonal_count)
		return true;
	if (room->wall_count > FITTED_WALLS_MOST) {
		diag_error(build->diags, written->diagonals[0].line,
		           "a diagonal in a run of %zu walls; expected at most %d walls where "
		           "diagonals are given",
		           room->wall_count, FITTED_WALLS_MOST);
		return false;
	}
	*out_closing = traverse_adjust(arena, &run, ties_of_diagonals(arena, room),
	                               written->diagonal_count);
	return do_diagonals_fit(build, room, out_closing);
}

/* NULL after an error. */
static struct point *corners_of_run(struct build *build, struct site_room *room)
{
	const struct plan_room *plan = room->plan;
	struct traverse_closing closing;
	if (!close_run(build, plan, &closing))
		return NULL;
	bool is_fitted = plan->run->diagonal_count > 0;
	double misfit = is_fitted ? closing.misfit : 0;
	room->closing_error = fmax(closing.error_length, misfit) / NM_A_MM;
	for (size_t i = 0; i < plan->wall_count; i++) {
		closing.corners[i].x /= NM_A_MM;
		closing.corners[i].y /= NM_A_MM;
	}
	return closing.corners;
}

/* ---- arcs ---- */

/* The outline as written, arcs drawn out: side i belongs to wall `walls[i]`. */
struct drawn {
	struct ring ring;
	const struct plan_wall **walls;
};

static struct drawn draw_arcs(struct arena *arena, const struct plan_room *room,
                              const struct point *corners)
{
	ARRAY_OF(struct point) points = {0};
	ARRAY_OF(const struct plan_wall *) walls = {0};
	for (size_t i = 0; i < room->wall_count; i++) {
		const struct plan_wall *wall = &room->walls[i];
		size_t next = i + 1 < room->wall_count ? i + 1 : 0;
		struct line arc =
			arc_line(arena, corners[i], corners[next], length_mm(wall->rise_nm));
		for (size_t k = 0; k + 1 < arc.count; k++) {
			*array_push(arena, &points) = arc.points[k];
			*array_push(arena, &walls) = wall;
		}
	}
	return (struct drawn){{points.items, points.count}, walls.items};
}

static bool is_simple(struct build *build, const struct drawn *drawn)
{
	struct crossing at;
	if (!crossing_find(build->arena, drawn->ring, &at))
		return true;
	const struct plan_wall *first = drawn->walls[at.first], *second = drawn->walls[at.second];
	diag_error(build->diags, second->line,
	           "wall \"%s\" meets wall \"%s\" of its room; expected walls that touch only "
	           "their neighbours, at the corners",
	           second->id, first->id);
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

const struct plan_wall *outline_wall(const struct site_room *room, size_t edge)
{
	return room->edges[edge].wall;
}

size_t site_wall_end(const struct site_room *room, size_t edge)
{
	size_t end = edge + 1;
	while (end < room->edge_count && room->edges[end].wall == room->edges[edge].wall)
		end++;
	return end;
}

struct site_edge outline_chord(const struct site_room *room, size_t edge)
{
	size_t first = edge;
	while (first > 0 && room->edges[first - 1].wall == room->edges[edge].wall)
		first--;
	struct site_edge chord = room->edges[first];
	chord.to = room->edges[site_wall_end(room, edge) - 1].to;
	return chord;
}

static struct site_edge edge_of_wall(const struct plan_wall *wall, struct segment side,
                                     bool reversed)
{
	return (struct site_edge){
		.id = wall->id,
		.wall = wall,
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
	const struct plan_run *run = room->run;
	faulty |= run && build_is_faulty(build, run->given, run->line);
	for (size_t i = 0; run && !faulty && i < run->diagonal_count; i++)
		faulty = build_is_faulty(build, run->diagonals[i].given, run->diagonals[i].line);
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
	if (!corners)
		return false;
	struct drawn drawn = draw_arcs(build->arena, plan, corners);
	if (!is_simple(build, &drawn))
		return false;

	/* Written clockwise, the outline starts at the same corner and goes round the other way:
	 * its first edge is the last side. */
	size_t count = drawn.ring.count;
	bool reversed = ring_area(drawn.ring) < 0;
	room->outline = ring_turned(build->arena, drawn.ring, true);
	room->edge_count = count;
	room->edges = ARENA_ARRAY(build->arena, struct site_edge, count);
	for (size_t i = 0; i < count; i++)
		room->edges[i] = edge_of_wall(drawn.walls[reversed ? count - 1 - i : i],
		                              segment_of_ring(room->outline, i), reversed);
	return true;
}
