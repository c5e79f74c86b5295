#include "site/open_edge.h"

#include "base/array.h"
#include "geometry/crossing.h"
#include "geometry/tolerance.h"
#include "site/outline.h"

/* An open edge of a built room. */
struct open_edge {
	struct site_room *room;
	size_t edge;
	const struct open_edge *like; /* the same edge as the other room has it; NULL: none */
};

struct joining {
	struct build *build;
	ARRAY_OF(struct open_edge) edges; /* in the order of rooms and edges */
};

static const struct site_edge *edge_of(const struct open_edge *open)
{
	return &open->room->edges[open->edge];
}

static struct site_room *room_beyond(const struct build *build, const struct open_edge *open)
{
	return &build->site->rooms[edge_of(open)->wall->to - build->plan->rooms];
}

static void list_edges(struct joining *joining)
{
	struct build *build = joining->build;
	for (size_t r = 0; r < build->site->room_count; r++) {
		struct site_room *room = &build->site->rooms[r];
		for (size_t e = 0; e < room->edge_count; e++)
			if (room->edges[e].kind == SITE_EDGE_OPEN)
				*array_push(build->arena, &joining->edges) =
					(struct open_edge){room, e, NULL};
	}
}

/* How far apart two open edges may lie: the tolerance of the lay of either room. Source: floor
 * format; its default where neither is tiled. */
static double tolerance_of(const struct build *build, const struct open_edge *open)
{
	const struct plan *plan = build->plan;
	const struct plan_lay *lay = plan_lay_of(plan, open->room->plan);
	if (!lay)
		lay = plan_lay_of(plan, room_beyond(build, open)->plan);
	if (lay)
		return length_mm(lay->tolerance_nm);
	return build->site->inches ? 25.4 / 4 : 6;
}

static bool coincide(const struct site_edge *a, const struct site_edge *b, double tolerance)
{
	return point_distance(a->from, b->to) <= tolerance + TOLERANCE_SAME &&
	       point_distance(a->to, b->from) <= tolerance + TOLERANCE_SAME;
}

static bool lead_to_each_other(const struct build *build, const struct open_edge *a,
                               const struct open_edge *b)
{
	return room_beyond(build, a) == b->room && room_beyond(build, b) == a->room;
}

static void pair_edges(struct joining *joining)
{
	const struct build *build = joining->build;
	struct open_edge *edges = joining->edges.items;
	for (size_t a = 0; a < joining->edges.count; a++)
		for (size_t b = a + 1; b < joining->edges.count && !edges[a].like; b++)
			if (!edges[b].like && lead_to_each_other(build, &edges[a], &edges[b]) &&
			    coincide(edge_of(&edges[a]), edge_of(&edges[b]),
			             tolerance_of(build, &edges[a]))) {
				edges[a].like = &edges[b];
				edges[b].like = &edges[a];
			}
}

/* Of two edges that should be one, the second is told of. */
static bool is_told_later(const struct joining *joining, const struct open_edge *open)
{
	for (size_t k = (size_t)(open - joining->edges.items) + 1; k < joining->edges.count; k++) {
		const struct open_edge *other = &joining->edges.items[k];
		if (!other->like && lead_to_each_other(joining->build, open, other))
			return true;
	}
	return false;
}

static void tell_single(const struct joining *joining, const struct open_edge *open)
{
	struct build *build = joining->build;
	const struct site_room *beyond = room_beyond(build, open);
	if (!beyond->edge_count || is_told_later(joining, open))
		return;
	diag_error(build->diags, edge_of(open)->line,
	           "edge \"%s\": no open edge of room \"%s\" leads back to \"%s\" there; expected "
	           "one that coincides within %s",
	           edge_of(open)->id, beyond->id, open->room->id,
	           build_length_text(build, tolerance_of(build, open)));
}

static void move_corner(struct site_room *room, size_t corner, struct point to)
{
	size_t before = (corner + room->edge_count - 1) % room->edge_count;
	room->outline.points[corner] = to;
	room->edges[corner].from = to;
	room->edges[before].to = to;
}

static void move_to(const struct open_edge *open, const struct site_edge *like)
{
	struct site_room *room = open->room;
	move_corner(room, open->edge, like->to);
	move_corner(room, (open->edge + 1) % room->edge_count, like->from);
}

/* Source: floor format: rooms of one lay share one grid through open edges. */
static void end_at_other_lay(const struct build *build, const struct open_edge *open)
{
	const struct plan *plan = build->plan;
	if (plan_lay_of(plan, open->room->plan) ==
	    plan_lay_of(plan, room_beyond(build, open)->plan))
		return;
	struct site_edge *edge = &open->room->edges[open->edge];
	edge->kind = SITE_EDGE_STOP;
	edge->base = SITE_BASE_NONE;
}

static void check_moved(struct build *build, const struct open_edge *open)
{
	struct crossing at;
	if (!crossing_find(build->arena, open->room->outline, &at))
		return;
	diag_error(build->diags, edge_of(open)->line,
	           "wall \"%s\" meets wall \"%s\" once the open edge \"%s\" lies on that of room "
	           "\"%s\"; expected walls that touch only their neighbours",
	           open->room->edges[at.second].id, open->room->edges[at.first].id,
	           edge_of(open)->id, room_beyond(build, open)->id);
}

void open_edge_join_all(struct build *build)
{
	struct joining joining = {.build = build};
	list_edges(&joining);
	pair_edges(&joining);
	/* In order: all corners of a room have come to rest before others move to them. */
	for (size_t i = 0; i < joining.edges.count; i++) {
		const struct open_edge *open = &joining.edges.items[i];
		if (!open->like)
			tell_single(&joining, open);
		else if (open < open->like)
			move_to(open->like, edge_of(open));
	}
	for (size_t i = 0; i < joining.edges.count; i++) {
		const struct open_edge *open = &joining.edges.items[i];
		if (open->like && open > open->like)
			check_moved(build, open);
		end_at_other_lay(build, open);
	}
}
