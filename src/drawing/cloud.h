/* cloud.h - clouds round what has changed on a finished list, each with a numbered triangle.
 * Units: paper mm. Owns: the list's arena. Source: docs/sources.md R-D13, R-D15, R-D16.
 * Invariants: a cloud encloses its ground; neither cloud nor triangle covers a text. A text
 * in the way is taken in where it stands on the ground, else left out. */
#ifndef DRAWING_CLOUD_H
#define DRAWING_CLOUD_H
#include "drawing/list.h"
#include "geometry/region.h"

/* Ground of one change on the sheet. y runs up: the region of sheet points (x, -y). */
struct cloud_ground {
	const char *mark; /* in the triangle */
	struct region region;
};

/* Before the labels are placed: they keep off where the clouds will run. A text that stands
 * across a cloud's line would be taken in, and read as changed. */
void cloud_reserve(struct list *, const struct cloud_ground *, size_t count);
/* Draws clouds within the box; grounds near each other share one. */
void cloud_draw(struct list *, const struct cloud_ground *, size_t count, struct paper_box within);
/* The triangle alone, round `at`; gives its box. */
struct paper_box cloud_triangle(struct list *, enum layer, struct paper_point at, const char *mark);
/* Width and height of the triangle of a mark. */
struct paper_point cloud_triangle_size(struct list *, const char *mark);
/* A small cloud for a legend. */
void cloud_swatch(struct list *, enum layer, struct paper_box);

#endif
