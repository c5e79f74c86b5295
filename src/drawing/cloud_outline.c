#include "drawing/cloud_outline.h"

#include <string.h>

#include "base/array.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"

/* Own design within docs/sources.md R-D13: clear of the ground, longest chord of a scallop; and
 * shortest, where it passes a text. */
static const double MARGIN = 3.5, CHORD = 7, SHORTEST = 0.2;
/* Clear of texts: the outline, and the scallops over it. */
static const double CLEAR = 0.6, SCALLOP_CLEAR = 0.3;
/* A turn whose cosine is less is a corner (40 degrees). */
static const double CORNER_COS = 0.766;

/* ---- outline ---- */

static struct region box_region(struct arena *arena, struct box b, double by)
{
	struct point corners[] = {{b.x0 - by, b.y0 - by},
	                          {b.x1 + by, b.y0 - by},
	                          {b.x1 + by, b.y1 + by},
	                          {b.x0 - by, b.y1 + by}};
	struct polygon *polygon = ARENA_NEW(arena, struct polygon);
	polygon->outline = ring_copy(arena, corners, 4);
	return (struct region){polygon, 1};
}

static struct region without_holes(struct arena *arena, const struct region *region)
{
	struct region *parts = ARENA_ARRAY(arena, struct region, region->count);
	for (size_t i = 0; i < region->count; i++) {
		struct polygon *polygon = ARENA_NEW(arena, struct polygon);
		polygon->outline = region->polygons[i].outline;
		parts[i] = (struct region){polygon, 1};
	}
	return overlay_union_all(arena, parts, region->count);
}

static struct box grown(struct box b, double by)
{
	return (struct box){b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by};
}

static bool is_inside(struct box b, struct point p)
{
	return p.x > b.x0 && p.x < b.x1 && p.y > b.y0 && p.y < b.y1;
}

static bool boxes_meet(struct box a, struct box b)
{
	return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

/* Some of the segment lies inside the box. */
static bool enters(struct box b, struct point from, struct point to)
{
	struct box span = {fmin(from.x, to.x), fmin(from.y, to.y), fmax(from.x, to.x),
	                   fmax(from.y, to.y)};
	struct point corners[] = {{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}};
	if (!boxes_meet(span, b) && !is_inside(b, from))
		return false;
	if (is_inside(b, from) || is_inside(b, to))
		return true;
	for (size_t i = 0; i < 4; i++) {
		struct segment side = {corners[i], corners[(i + 1) % 4]};
		if (segment_meets(side, (struct segment){from, to}))
			return true;
	}
	return false;
}

static bool outline_enters(const struct region *region, struct box box)
{
	for (size_t i = 0; i < region->count; i++) {
		struct ring ring = region->polygons[i].outline;
		for (size_t k = 0; k < ring.count; k++)
			if (enters(box, ring.points[k], ring.points[(k + 1) % ring.count]))
				return true;
	}
	return false;
}

bool cloud_meets_box(const struct region *region, struct box box, double reach)
{
	struct box wide = grown(box, reach);
	struct point middle = {(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2};
	return outline_enters(region, wide) || region_holds(region, middle);
}

struct outline {
	struct arena *arena;
	struct region must;  /* ground, and texts that are taken in */
	struct region cloud; /* so far */
};

/* Parts of the cloud without any ground in them are none. */
static struct region with_ground(struct outline *o, const struct region *cloud)
{
	struct region kept = {ARENA_ARRAY(o->arena, struct polygon, cloud->count), 0};
	for (size_t i = 0; i < cloud->count; i++) {
		struct region one = {&cloud->polygons[i], 1};
		if (overlay_intersection(o->arena, &one, &o->must).count > 0)
			kept.polygons[kept.count++] = cloud->polygons[i];
	}
	return kept;
}

static void pass_text(struct outline *o, struct box text)
{
	if (cloud_meets_box(&o->must, text, CLEAR)) {
		struct region in = box_region(o->arena, text, CLEAR);
		o->must = overlay_union(o->arena, &o->must, &in);
		o->cloud = overlay_union(o->arena, &o->cloud, &in);
		o->cloud = without_holes(o->arena, &o->cloud);
		return;
	}
	struct region out = box_region(o->arena, text, CLEAR);
	struct region left = overlay_difference(o->arena, &o->cloud, &out);
	o->cloud = with_ground(o, &left);
}

struct region cloud_outline(struct arena *arena, const struct region *ground,
                            const struct box *texts, size_t text_count)
{
	struct outline o = {arena, overlay_offset(arena, ground, SCALLOP_CLEAR, OVERLAY_BEVEL),
	                    overlay_offset(arena, ground, MARGIN, OVERLAY_ROUND)};
	o.must = without_holes(arena, &o.must);
	o.cloud = without_holes(arena, &o.cloud);
	/* Each text is left out once and taken in once at the most. */
	size_t passes = 2 * text_count + 1;
	for (bool is_moved = true; is_moved && passes > 0; passes--) {
		is_moved = false;
		for (size_t i = 0; i < text_count; i++)
			if (outline_enters(&o.cloud, grown(texts[i], CLEAR - TOLERANCE_WHOLE))) {
				pass_text(&o, texts[i]);
				is_moved = true;
			}
	}
	return o.cloud;
}

/* ---- scallops ---- */

/* An outline by the distance walked along it. */
struct walk {
	struct arena *arena;
	struct ring ring;
	double *passed; /* up to each of its points, and once round */
	const struct box *texts;
	size_t text_count;
	ARRAY_OF(struct point) points;
};

static bool is_corner(struct ring ring, size_t i)
{
	struct point before = ring.points[(i + ring.count - 1) % ring.count],
		     after = ring.points[(i + 1) % ring.count];
	struct point in = point_unit(point_sub(ring.points[i], before)),
		     out = point_unit(point_sub(after, ring.points[i]));
	return point_dot(in, out) < CORNER_COS;
}

static struct point point_at(const struct walk *w, double at)
{
	size_t low = 0, high = w->ring.count;
	while (low + 1 < high) {
		size_t middle = (low + high) / 2;
		if (w->passed[middle] <= at)
			low = middle;
		else
			high = middle;
	}
	struct segment s = segment_of_ring(w->ring, low);
	double length = w->passed[low + 1] - w->passed[low];
	return length > 0 ? point_between(s.from, s.to, fmin(1, (at - w->passed[low]) / length))
	                  : s.from;
}

static bool is_clear_of(const struct box *texts, size_t count, struct point from, struct point to)
{
	for (size_t i = 0; i < count; i++)
		if (enters(grown(texts[i], SCALLOP_CLEAR), from, to))
			return false;
	return true;
}

/* A chord cuts a bend short: where that brings it on a text there is one point more. */
static void add_chord(struct walk *w, double from, double to)
{
	struct point a = point_at(w, from), b = point_at(w, to);
	if (to - from > SHORTEST && !is_clear_of(w->texts, w->text_count, a, b)) {
		add_chord(w, from, (from + to) / 2);
		add_chord(w, (from + to) / 2, to);
		return;
	}
	*array_push(w->arena, &w->points) = a;
}

/* Chords of a stretch between corners. */
static void add_stretch(struct walk *w, double from, double to)
{
	double count = fmax(1, ceil((to - from) / CHORD)), step = (to - from) / count;
	for (double i = 0; i < count; i += 1)
		add_chord(w, from + i * step, from + (i + 1) * step);
}

/* The outline with its first point at a corner, where it has one. */
static struct ring from_corner(struct arena *arena, struct ring outline)
{
	size_t first = 0;
	while (first < outline.count && !is_corner(outline, first))
		first++;
	struct ring turned = {ARENA_ARRAY(arena, struct point, outline.count), outline.count};
	for (size_t i = 0; i < outline.count; i++)
		turned.points[i] = outline.points[(first + i) % outline.count];
	return turned;
}

struct ring cloud_points(struct arena *arena, struct ring outline, const struct box *texts,
                         size_t text_count)
{
	struct walk w = {.arena = arena,
	                 .ring = from_corner(arena, outline),
	                 .passed = ARENA_ARRAY(arena, double, outline.count + 1),
	                 .texts = texts,
	                 .text_count = text_count};
	double last = 0;
	for (size_t i = 0; i < outline.count; i++)
		w.passed[i + 1] = w.passed[i] + segment_length(segment_of_ring(w.ring, i));
	for (size_t i = 0; i < outline.count; i++) {
		bool is_end = i + 1 == outline.count || is_corner(w.ring, i + 1);
		if (!is_end)
			continue;
		add_stretch(&w, last, w.passed[i + 1]);
		last = w.passed[i + 1];
	}
	return (struct ring){w.points.items, w.points.count};
}

static struct paper_point on_sheet(struct point p)
{
	return paper_at(p.x, -p.y);
}

/* The curve over the chord a-b to its right, where an outline that runs anticlockwise has its
 * outside: an arc of 120 degrees at the height 1, flatter below. Its control points lie 4/9 of
 * the chord along tangents at 60 degrees. */
static void scallop(struct point a, struct point b, double height, struct point out[3])
{
	const double tangent = 4.0 / 9, flat = 1.0 / 3;
	double along = flat + (tangent / 2 - flat) * height, aside = tangent * sqrt(3) / 2 * height;
	struct point chord = point_sub(b, a), right = point_scale(point_left(chord), -1);
	struct point rise = point_add(point_scale(chord, along), point_scale(right, aside));
	struct point fall = point_sub(point_scale(right, aside), point_scale(chord, along));
	out[0] = point_add(a, rise);
	out[1] = point_add(b, fall);
	out[2] = b;
}

static struct point on_curve(struct point a, const struct point c[3], double t)
{
	struct point p = point_between(a, c[0], t), q = point_between(c[0], c[1], t),
		     r = point_between(c[1], c[2], t);
	return point_between(point_between(p, q, t), point_between(q, r, t), t);
}

enum { CURVE_STEPS = 8, HEIGHT_STEPS = 4 };

static bool is_clear(struct point a, const struct point c[3], const struct box *texts, size_t count)
{
	struct point from = a;
	for (int k = 1; k <= CURVE_STEPS; k++) {
		struct point to = on_curve(a, c, (double)k / CURVE_STEPS);
		if (!is_clear_of(texts, count, from, to))
			return false;
		from = to;
	}
	return true;
}

struct paper_path cloud_scallops(struct arena *arena, struct ring points, const struct box *texts,
                                 size_t text_count)
{
	struct paper_point *curve = ARENA_ARRAY(arena, struct paper_point, 1 + 3 * points.count);
	if (points.count < 2)
		return (struct paper_path){0};
	curve[0] = on_sheet(points.points[0]);
	for (size_t i = 0; i < points.count; i++) {
		struct point a = points.points[i], b = points.points[(i + 1) % points.count], c[3];
		int height = HEIGHT_STEPS;
		do
			scallop(a, b, (double)height / HEIGHT_STEPS, c);
		while (!is_clear(a, c, texts, text_count) && height-- > 0);
		for (int k = 0; k < 3; k++)
			curve[1 + 3 * i + (size_t)k] = on_sheet(c[k]);
	}
	return paper_path_line(arena, curve, 1 + 3 * points.count, PAPER_RING);
}
