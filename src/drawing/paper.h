/* paper.h - points, boxes and paths on the sheet.
 * Units: mm of paper. Origin at the top left corner of the trimmed sheet, x to the right,
 * y DOWN (as in SVG and Cairo); floor points (geometry/point.h) have y north, so the two
 * are different types and only view.h turns one into the other. */
#ifndef DRAWING_PAPER_H
#define DRAWING_PAPER_H
#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

struct paper_point {
	double x, y;
};

struct paper_box {
	double x0, y0, x1, y1; /* x0 <= x1, y0 <= y1 (y0 is the upper edge) */
};

enum paper_line_kind {
	PAPER_OPEN,   /* straight pieces */
	PAPER_CLOSED, /* straight pieces, closed; the first point is not repeated */
	PAPER_CURVE,  /* 1 + 3n points: cubic Bezier pieces */
	PAPER_RING,   /* 1 + 3n points, last equal to first: closed cubic Bezier pieces */
};

struct paper_line {
	struct paper_point *points;
	size_t count;
	enum paper_line_kind kind;
};

/* Many lines drawn in one stroke or filled as one area (even-odd). */
struct paper_path {
	struct paper_line *lines;
	size_t count;
};

static inline struct paper_point paper_at(double x, double y)
{
	return (struct paper_point){x, y};
}
static inline struct paper_point paper_add(struct paper_point a, struct paper_point b)
{
	return (struct paper_point){a.x + b.x, a.y + b.y};
}
static inline struct paper_point paper_sub(struct paper_point a, struct paper_point b)
{
	return (struct paper_point){a.x - b.x, a.y - b.y};
}
/* a + t b */
static inline struct paper_point paper_step(struct paper_point a, struct paper_point b, double t)
{
	return (struct paper_point){a.x + t * b.x, a.y + t * b.y};
}
static inline double paper_length(struct paper_point a)
{
	return sqrt(a.x * a.x + a.y * a.y);
}
static inline double paper_distance(struct paper_point a, struct paper_point b)
{
	return paper_length(paper_sub(a, b));
}
/* Length 1; (1,0) for the zero vector. */
static inline struct paper_point paper_unit(struct paper_point a)
{
	double length = paper_length(a);
	return length > 0 ? (struct paper_point){a.x / length, a.y / length}
	                  : (struct paper_point){1, 0};
}
static inline struct paper_box paper_box_empty(void)
{
	return (struct paper_box){INFINITY, INFINITY, -INFINITY, -INFINITY};
}
static inline bool paper_box_is_empty(struct paper_box b)
{
	return b.x0 > b.x1;
}
static inline struct paper_box paper_box_with(struct paper_box b, struct paper_point p)
{
	return (struct paper_box){fmin(b.x0, p.x), fmin(b.y0, p.y), fmax(b.x1, p.x),
	                          fmax(b.y1, p.y)};
}
static inline struct paper_box paper_box_join(struct paper_box a, struct paper_box b)
{
	return (struct paper_box){fmin(a.x0, b.x0), fmin(a.y0, b.y0), fmax(a.x1, b.x1),
	                          fmax(a.y1, b.y1)};
}
static inline struct paper_box paper_box_grown(struct paper_box b, double by)
{
	return (struct paper_box){b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by};
}
/* True where the insides meet; touching edges do not. */
static inline bool paper_box_meets(struct paper_box a, struct paper_box b)
{
	return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}
static inline bool paper_box_inside(struct paper_box inner, struct paper_box outer)
{
	return inner.x0 >= outer.x0 && inner.y0 >= outer.y0 && inner.x1 <= outer.x1 &&
	       inner.y1 <= outer.y1;
}
/* The part of the segment inside the box as parameters 0..1; false where there is none. */
bool paper_box_clip(struct paper_box, struct paper_point a, struct paper_point b, double *out_t0,
                    double *out_t1);

struct paper_path paper_path_copy(struct arena *, struct paper_path);
struct paper_path paper_path_segment(struct arena *, struct paper_point a, struct paper_point b);
struct paper_path paper_path_line(struct arena *, const struct paper_point *, size_t count,
                                  enum paper_line_kind);
struct paper_path paper_path_box(struct arena *, struct paper_box);
struct paper_path paper_path_circle(struct arena *, struct paper_point centre, double radius);
/* Box with corners rounded by `radius`. */
struct paper_path paper_path_round(struct arena *, struct paper_box, double radius);
/* Both after one another. */
struct paper_path paper_path_join(struct arena *, struct paper_path, struct paper_path);
struct paper_box paper_path_box_of(struct paper_path); /* of its points, without line width */
/* Curves turned into straight pieces (8 each). */
struct paper_path paper_path_flat(struct arena *, struct paper_path);

#endif
