/* window.h - the parts of an area seen through a small convex window.
 * A tile face is the window, its panel the area; only the few border edges that come near
 * the window are looked at, so the cost does not depend on the size of the area.
 * Units: mm. Owns: results live in the arena given.
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

/* Closed parts of the window: `count` 0 when no edge runs through its inside, then the
 * window lies wholly in the area or wholly outside. Outlines anticlockwise, holes
 * clockwise, in no particular order. */
struct window_parts {
	struct ring *rings;
	size_t count;
};

/* `near` lists, in rising order, the edges that may come near the window. */
bool window_clip(struct arena *, struct ring window, const struct border_edges *,
                 const size_t *near, size_t near_count, struct window_parts *out_parts) CHECK_USED;

/* Sorts loose rings into polygons with their holes; every hole lies in one outline. */
struct region window_region(struct arena *, const struct window_parts *);

#endif
