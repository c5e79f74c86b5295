#include "random/outline.h"

#include <math.h>

enum { CUTS = 8, TRIES = 400 };

/* A shape: corners as numbers of cuts across and up, anticlockwise. */
struct form {
	size_t count;
	unsigned char at[OUTLINE_CORNERS][2];
};

static const struct form FORMS[] = {
	{4, {{0, 0}, {1, 0}, {1, 1}, {0, 1}}},
	{6, {{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}}, /* L */
	{5, {{0, 0}, {2, 0}, {2, 1}, {1, 2}, {0, 2}}},         /* a corner cut off */
	{8, {{0, 0}, {3, 0}, {3, 1}, {2, 1}, {2, 2}, {1, 2}, {1, 1}, {0, 1}}}, /* T */
	{8, {{0, 0}, {3, 0}, {3, 2}, {2, 2}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}}, /* U */
	{8, {{0, 0}, {2, 0}, {2, 1}, {3, 1}, {3, 2}, {1, 2}, {1, 1}, {0, 1}}}, /* Z */
	{8, {{0, 0}, {3, 0}, {3, 1}, {2, 1}, {2, 2}, {1, 2}, {1, 3}, {0, 3}}}, /* stair */
	{12,
         {{1, 0},
          {2, 0},
          {2, 1},
          {3, 1},
          {3, 2},
          {2, 2},
          {2, 3},
          {1, 3},
          {1, 2},
          {0, 2},
          {0, 1},
          {1, 1}}}, /* cross */
	{12,
         {{0, 0},
          {5, 0},
          {5, 3},
          {4, 3},
          {4, 1},
          {3, 1},
          {3, 3},
          {2, 3},
          {2, 1},
          {1, 1},
          {1, 2},
          {0, 2}}}, /* comb */
};
enum { FORM_COUNT = sizeof FORMS / sizeof FORMS[0] };

static double hundredth(double value)
{
	return round(value * 100) / 100;
}

/* ---- looking ---- */

struct spot outline_next(const struct outline *outline, size_t corner)
{
	return outline->corners[(corner + 1) % outline->count];
}

double outline_wall(const struct outline *outline, size_t corner)
{
	struct spot a = outline->corners[corner], b = outline_next(outline, corner);
	return hypot(b.x - a.x, b.y - a.y);
}

bool outline_holds(const struct outline *outline, struct spot at)
{
	bool is_in = false;
	for (size_t i = 0; i < outline->count; i++) {
		struct spot a = outline->corners[i], b = outline_next(outline, i);
		if ((a.y > at.y) != (b.y > at.y) &&
		    at.x < a.x + (b.x - a.x) * (at.y - a.y) / (b.y - a.y))
			is_in = !is_in;
	}
	return is_in;
}

double outline_clearance(const struct outline *outline, struct spot at)
{
	double least = INFINITY;
	for (size_t i = 0; i < outline->count; i++) {
		struct spot a = outline->corners[i], b = outline_next(outline, i);
		double dx = b.x - a.x, dy = b.y - a.y;
		double share = ((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx * dx + dy * dy);
		share = fmin(fmax(share, 0), 1);
		double off = hypot(at.x - a.x - share * dx, at.y - a.y - share * dy);
		least = fmin(least, off - fabs(outline->rises[i]));
	}
	return least;
}

double outline_reach(const struct outline *outline, struct spot from, struct spot along)
{
	double least = INFINITY;
	for (size_t i = 0; i < outline->count; i++) {
		struct spot a = outline->corners[i], b = outline_next(outline, i);
		double dx = b.x - a.x, dy = b.y - a.y;
		double turn = along.x * dy - along.y * dx;
		if (fabs(turn) < 1e-6)
			continue;
		double t = ((a.x - from.x) * dy - (a.y - from.y) * dx) / turn;
		double share = ((a.x - from.x) * along.y - (a.y - from.y) * along.x) / turn;
		if (t > 0 && share >= 0 && share <= 1)
			least = fmin(least, t);
	}
	return isfinite(least) ? least : 0;
}

struct spot outline_inside(const struct outline *outline, struct seed *seed, double clear)
{
	struct spot low = outline->corners[0], high = low, at = low;
	for (size_t i = 1; i < outline->count; i++) {
		low.x = fmin(low.x, outline->corners[i].x);
		low.y = fmin(low.y, outline->corners[i].y);
		high.x = fmax(high.x, outline->corners[i].x);
		high.y = fmax(high.y, outline->corners[i].y);
	}
	for (int i = 0; i < TRIES; i++) {
		at.x = hundredth(seed_between(seed, low.x, high.x));
		at.y = hundredth(seed_between(seed, low.y, high.y));
		if (outline_holds(outline, at) && outline_clearance(outline, at) > clear)
			break;
	}
	return at;
}

/* ---- drawing ---- */

static void draw_cuts(struct seed *seed, double cuts[CUTS], size_t count)
{
	double whole = seed_between(seed, 90, 260), narrow = whole / (double)count / 2;
	cuts[0] = 0;
	for (size_t i = 1; i <= count; i++) {
		double even = whole * (double)i / (double)count;
		cuts[i] = hundredth(i < count ? even + seed_between(seed, -narrow, narrow) / 2
		                              : even);
	}
}

static size_t last_cut(const struct form *form, int axis)
{
	size_t last = 0;
	for (size_t i = 0; i < form->count; i++)
		last = form->at[i][axis] > last ? form->at[i][axis] : last;
	return last;
}

/* Walls that are not square, as they are not. */
static void skew(struct outline *outline, struct seed *seed)
{
	double lean = seed_between(seed, -0.1, 0.1), rise = seed_between(seed, -0.06, 0.06);
	for (size_t i = 0; i < outline->count; i++) {
		struct spot *at = &outline->corners[i];
		*at = (struct spot){hundredth(at->x + lean * at->y),
		                    hundredth(at->y + rise * at->x)};
	}
}

static void turn_round(struct outline *outline)
{
	for (size_t i = 0; i < outline->count / 2; i++) {
		struct spot *a = &outline->corners[i],
			    *b = &outline->corners[outline->count - 1 - i];
		struct spot kept = *a;
		*a = *b;
		*b = kept;
	}
}

/* One wall in a bow, out or in. */
static void bend(struct outline *outline, struct seed *seed)
{
	size_t wall = (size_t)seed_below(seed, (int)outline->count);
	double rise = seed_between(seed, 0.02, 0.08) * outline_wall(outline, wall);
	outline->rises[wall] = hundredth(seed_below(seed, 3) ? -rise : rise);
}

struct outline outline_draw(struct seed *seed)
{
	const struct form *form = &FORMS[seed_below(seed, FORM_COUNT)];
	struct outline outline = {.count = form->count};
	double across[CUTS], up[CUTS];
	draw_cuts(seed, across, last_cut(form, 0));
	draw_cuts(seed, up, last_cut(form, 1));
	struct spot origin = {0, 0};
	if (seed_below(seed, 3) == 0)
		origin = (struct spot){seed_below(seed, 10000) - 5000,
		                       seed_below(seed, 10000) - 5000};
	for (size_t i = 0; i < form->count; i++)
		outline.corners[i] = (struct spot){across[form->at[i][0]], up[form->at[i][1]]};
	if (seed_below(seed, 4) == 0)
		skew(&outline, seed);
	for (size_t i = 0; i < form->count; i++) {
		outline.corners[i].x += origin.x;
		outline.corners[i].y += origin.y;
	}
	outline.is_taped = seed_below(seed, 3) == 0;
	if (outline.is_taped && seed_below(seed, 3) == 0)
		bend(&outline, seed);
	if (!outline.is_taped && seed_below(seed, 3) == 0)
		turn_round(&outline);
	return outline;
}
