/* field.h - where tile goes: the rooms of one lay less gap, obstacles and carried joints.
 * First pass of the layout. Units: mm in the lay's own axes. Owns: arena.
 * Source: perimeter gap, bands of carried joints: docs/sources.md#movement-joints.
 * Invariants: `region` holds one polygon a part, ordered south-west first; every edge of
 * it has its border record, the field to the left. */
#ifndef LAYOUT_FIELD_H
#define LAYOUT_FIELD_H
#include "geometry/frame.h"
#include "rules/rules.h"
#include "site/site.h"

/* Which lattice axis a straight line runs along (within TOLERANCE_PARALLEL). */
enum field_axis { FIELD_AXIS_NONE, FIELD_AXIS_U, FIELD_AXIS_V };

/* A joint open straight through the tile before any is set: a slab joint that is carried up, or
 * the joint of a doorway. */
struct field_carried {
	const struct site_slab_joint *joint; /* NULL: of a doorway; the membrane runs on under it */
	const char *of;                      /* the slab joint or doorway */
	const char *id;        /* JOINT.carried, JOINT.carried.2 …, where JOINT is its origin
	                        * (origin.h); DOORWAY.joint */
	struct point from, to; /* best-fit centre line, extended to the ground's border */
	double width, deviation;
	enum field_axis axis;
	bool separates; /* parts on its two sides nowhere touch */
	struct region band;
};

/* One edge of the field. */
struct field_border {
	size_t part;
	struct point from, to; /* after the gap */
	const char *of;        /* wall, doorway, obstacle or slab joint */
	enum site_edge_kind kind;
	enum site_edge_base base;
	bool show;
	bool is_carried; /* edge of a carried joint's band */
	bool is_doorway; /* jamb or stop line */
	double gap;      /* 0 at drains and carried joints */
};

struct field {
	const struct plan_lay *lay;
	const struct site *site;
	const struct field *before; /* of the lay before it in the plan; NULL: the first */
	const struct site_room **rooms;
	struct region *room_grounds; /* of each, recesses too, obstacles not taken off */
	size_t room_count;
	struct frame frame;
	double gap, gap_max, tolerance; /* of the lay, defaults resolved */
	struct region ground; /* rooms and recesses less obstacles: bare slab, to the walls */
	struct region region; /* the field; one polygon a part */
	double area_mm2;
	struct field_border *borders;
	size_t border_count;
	struct field_carried *carried;
	size_t carried_count;
	struct site_crack *relocated; /* slab joints that are isolated instead (relocated.h) */
	size_t relocated_count;
};

/* `before`: the field of the lay before it in the plan, or NULL. */
const struct field *field_place(struct arena *, const struct site *, const struct rules *,
                                const struct plan_lay *, const struct field *before);
/* A border or joint that runs at a slant to the tile: no two cuts at it are alike. */
bool field_is_askew(struct point from, struct point to);
/* True where the wall, joint or fixture of this id does somewhere: as a bent one must. */
bool field_has_askew(const struct field *, const char *of);
/* Some of its rooms lie in the open. */
bool field_is_outdoor(const struct field *);
/* Index of the room that a point lies in, or lies nearest to; of equals the first. */
size_t field_room_at(const struct field *, struct point);

#endif
