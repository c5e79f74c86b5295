/* site.h - the floor as it lies: the plan resolved into geometry, before any tile.
 * Units: mm in plan axes (x east, y north). Owns: everything lives in the arena given to
 * site_build; `plan` is borrowed. Const once built.
 * Invariants: outlines anticlockwise; ids are those of the plan, or derived (ROOM.1);
 * curves are inscribed polygons (TOLERANCE_SAGITTA); wall points are coordinates. */
#ifndef SITE_SITE_H
#define SITE_SITE_H
#include "base/diag.h"
#include "base/status.h"
#include "geometry/region.h"
#include "plan/plan.h"

enum site_edge_kind {
	SITE_EDGE_WALL,
	SITE_EDGE_GLASS,
	SITE_EDGE_OTHER_FLOOR,
	SITE_EDGE_OPEN,     /* the tile goes on: no gap; also the end of a doorway, with its id */
	SITE_EDGE_JAMB,     /* side of a doorway's opening, id of the doorway */
	SITE_EDGE_STOP,     /* where the scope ends in a doorway, id of the doorway; or where
	                     * another lay begins along an open edge */
	SITE_EDGE_OBSTACLE, /* column, island, pipe, box: gap; id of the obstacle */
	SITE_EDGE_DRAIN,    /* tile is cut to the frame: no gap */
};

enum site_edge_base { SITE_BASE_COVERS, SITE_BASE_FIRST, SITE_BASE_NONE };

struct site_edge {
	const char *id; /* of the wall, doorway or obstacle */
	const struct plan_wall
		*wall;         /* it is a part of; edges of an arc share theirs; NULL: none */
	struct point from, to; /* the floor lies to the left */
	enum site_edge_kind kind;
	enum site_edge_base base;
	bool show;     /* false: hidden, counts less in setting out */
	bool reversed; /* written the other way: a tape along it starts at `to` */
	int line;      /* of the plan */
};

struct site_obstacle {
	const struct plan_obstacle *plan;
	const char *id;
	bool is_drain;
	struct ring ring; /* anticlockwise, as drawn; may cross the room's outline */
};

/* A doorway as one of its rooms has it: the recess between the jambs, as far as the stop line.
 * A doorway to another room is listed in both of them. Within one lay the whole patch is the
 * recess of the room that declares it, the other room's has none, and the tile goes on; else
 * the two recesses meet at the stop line. */
struct site_doorway {
	const struct plan_doorway *plan;
	const char *id;
	size_t edge;           /* index of its wall in room->edges */
	struct point from, to; /* jamb corners on the wall line, in the wall's direction */
	struct point stop_from, stop_to; /* the stop line, same order; equal to from/to at deep 0 */
	struct ring recess;              /* anticlockwise; count 0 where deep is 0 */
	enum site_edge_kind end;         /* of the stop line; OPEN: the tile goes on */
	const struct site_room *beyond;  /* the room behind; NULL: the scope ends there */
	double stop_share; /* of the depth, from this wall: where a joint in the doorway runs */
	bool is_back;      /* of the room behind, which did not declare it */
};

/* A slab under a room, and what holds there: a room's own exposure and heating override the
 * slab's. */
struct site_slab_part {
	const struct plan_slab *slab;
	enum plan_exposure exposure;
	bool heated;
	struct region ground; /* of the room, on this slab */
};

struct site_room {
	const struct plan_room *plan;
	const char *id, *name;   /* name falls back to the id */
	struct ring outline;     /* after closing; obstacles not taken off */
	struct site_edge *edges; /* edges[i] runs from outline point i to point i + 1 */
	size_t edge_count;       /* = outline.count */
	double closing_error;    /* before it was spread; 0 for corners */
	struct site_obstacle *obstacles;
	size_t obstacle_count;
	struct site_doorway *doorways;
	size_t doorway_count;
	struct site_slab_part *slab_parts; /* in the order of the plan; one or more */
	size_t slab_part_count;
};

/* Where a slab lies; without polygons where its description does not say. */
struct site_slab {
	const struct plan_slab *plan;
	struct region region;
};

struct site_slab_joint;

struct site_crack {
	const struct plan_crack *plan;
	const struct site_slab_joint *joint; /* relocated by the membrane, as if a crack; or NULL */
	const char *id;
	const struct site_room *room; /* NULL: every room it crosses */
	struct line line;             /* ends within reach of a wall lie on it */
	double width, step, wander;
};

struct site_slab_joint {
	const struct plan_slab_joint *plan;
	const char *id;
	struct line line; /* closed: last point = first */
	double width, step;
	bool relocate;
};

/* Measured on the slab. Without room and point it speaks for the whole floor. */
struct site_reading {
	const struct plan_reading *plan;
	const char *id;
	const struct site_room *room; /* where it was taken, or what it speaks for; NULL: all */
	const struct plan_slab *slab; /* at its point, or the room's own; NULL: all */
	bool has_at;
	struct point at;
};

struct site {
	const struct plan *plan;
	bool inches; /* the root's unit is in or ft: inch defaults and whole-inch pieces */
	struct site_room *rooms;
	size_t room_count;
	struct site_crack *cracks;
	size_t crack_count;
	struct site_slab_joint *slab_joints;
	size_t slab_joint_count;
	struct site_slab *slabs; /* as the plan's */
	size_t slab_count;
	struct site_reading *readings;
	size_t reading_count;
};

/* Resolves `plan`. All errors of geometry are reported with the lines of the plan. A plan in
 * which the reader found errors may be given too, with the list that holds them: what they
 * do not touch is looked through, and the status is STATUS_INPUT. */
enum status site_build(struct arena *, const struct plan *, struct diag_list *,
                       const struct site **out_site) CHECK_USED;
const struct site_room *site_room_find(const struct site *, const char *id);
/* The slab at a point of a room: the one whose region holds it, else the room's own. */
const struct plan_slab *site_slab_at(const struct site *, const struct site_room *, struct point);
/* The part of the room that lies on it. */
const struct site_slab_part *site_slab_part_at(const struct site *, const struct site_room *,
                                               struct point);
/* Some of the room is on that slab, or so exposed. */
bool site_room_is_on(const struct site_room *, const struct plan_slab *);
bool site_room_is_exposed(const struct site_room *, enum plan_exposure);
/* One past the last edge of the wall that `edge` is a part of: more than edge + 1 on an arc. */
size_t site_wall_end(const struct site_room *, size_t edge);
/* The gap-bearing and gap-free edges of a room as they run after its doorways are cut in:
 * walls split at the jambs, jambs, stop lines; then the edges of its obstacles. */
struct site_edge *site_room_borders(struct arena *, const struct site_room *, size_t *out_count);
/* Room outline and recesses, less nothing: the ground the slab shows in this room. */
struct region site_room_ground(struct arena *, const struct site_room *);

#endif
