/* window.h - the parts of an area seen through a small convex window.
 * A tile face is the window, its panel the area; only the few border edges that come near
 * the window are looked at, so the cost does not depend on the size of the area.
 * Units: mm, mm2. Owns: arena; once the work is large enough only a window with holes takes more.
 * Source: own derivation; the border walk is Weiler and Atherton's (1977) for a convex clip
 * polygon, with every edge that lies on the window's border counted as outside, which
 * leaves no degenerate case to decide.
 * Fails: window_clip says false when the crossings do not pair up (a border that crosses
 * itself within rounding); the caller then takes the general overlay. */
#ifndef GEOMETRY_WINDOW_H
#define GEOMETRY_WINDOW_H
#include "base/array.h"
#include "geometry/region.h"

/* A border edge of an area, the area to its left. */
struct border_edge {
	struct point from, to;
	size_t next; /* index of the edge that starts at `to` */
};

struct border_edges {
	struct border_edge *edges;
	size_t count;
};

/* All edges of a polygon, outline first, then holes. */
struct border_edges border_edges_from_polygon(struct arena *, const struct polygon *);

/* The stretch of an edge strictly inside a window: where it enters and leaves, as points and
 * as places on the window's border (side + share of the side). */
struct window_stretch {
	size_t edge;
	struct point from, to;
	bool enters, leaves; /* crosses the window's border there; else starts or ends inside */
	double enters_at, leaves_at;
	struct window_stretch *followed_by; /* round the window's border */
	bool is_follower, used;
};

/* A closed border of a part. */
struct window_loop {
	struct ring ring;
	double area_mm2; /* negative: a hole's */
};

/* A connected part of the window. */
struct window_part {
	struct polygon shape;
	double area_mm2;
};

/* Memory that many windows use one after another. */
struct window_work {
	struct arena *arena;
	ARRAY_OF(struct window_stretch) stretches;
	ARRAY_OF(struct point) points;
	ARRAY_OF(struct window_loop) loops;
	ARRAY_OF(struct window_part) parts; /* of the last window, in no particular order */
};

/* `near` lists, in rising order, the edges that may come near the window. No parts: none of
 * them runs through its inside, then the window lies wholly in the area or wholly outside. */
bool window_clip(struct window_work *, struct ring window, const struct border_edges *,
                 const size_t *near, size_t near_count) CHECK_USED;

#endif
