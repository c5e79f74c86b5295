#include "drawing/clash.h"

#include "drawing/occupancy.h"

/* Clear on each side of a text, mm; and to the text before and after it on its line, so that
 * two never read as one: half a capital height. */
static const double TEXT_CLEAR = 0.7, READ_APART = 1.75;
/* A text under another as near as the lines of one text, or after it as near as two words, is
 * read as its next: in capital heights of clear space, and what that costs where they touch. */
static const double LINES_APART = 1, WORDS_APART = 1.7, READ_ON = 8;
/* So far from its place a text or its leader bears on another. */
static const double EXTENT = 6;
/* The end of a leader lies on what it names: this much of it is not looked at. */
static const double LEADER_END = 1.2;
static const double LEADERS_CROSS = 25;
/* Leaders whose elbows come as near to each other as this (mm) are mistaken for one. */
static const double LEADERS_APART = 2, LEADERS_JOIN = 50;

struct paper_box clash_clear_box(const struct candidate *c)
{
	return paper_box_grown(c->box, TEXT_CLEAR);
}

/* The place of a text with the white that other texts keep off. */
static struct paper_box apart_box(const struct candidate *c)
{
	struct paper_box box = clash_clear_box(c);
	double more = READ_APART - TEXT_CLEAR;
	if (c->is_upright) {
		box.y0 -= more;
		box.y1 += more;
	} else {
		box.x0 -= more;
		box.x1 += more;
	}
	return box;
}

static struct paper_point leader_tip(const struct candidate *c)
{
	struct paper_point before = c->leader[c->leader_count - 2];
	struct paper_point tip = c->leader[c->leader_count - 1];
	double length = paper_distance(before, tip);
	return length > LEADER_END ? paper_step(tip, paper_sub(before, tip), LEADER_END / length)
	                           : before;
}

/* The i-th stretch of a leader, without its tip. */
void clash_leader_piece(const struct candidate *c, int i, struct paper_point *a,
                        struct paper_point *b)
{
	*a = c->leader[i];
	*b = i + 2 == c->leader_count ? leader_tip(c) : c->leader[i + 1];
}

struct paper_box clash_extent(const struct candidate *c)
{
	struct paper_box box = c->box;
	for (int i = 0; i < c->leader_count; i++)
		box = paper_box_with(box, c->leader[i]);
	return paper_box_grown(box, EXTENT);
}

static bool leader_meets_box(const struct candidate *leader, struct paper_box box)
{
	struct paper_point a, b;
	double t0, t1;
	for (int i = 0; i + 1 < leader->leader_count; i++) {
		clash_leader_piece(leader, i, &a, &b);
		if (paper_box_clip(box, a, b, &t0, &t1))
			return true;
	}
	return false;
}

bool clash_is(const struct candidate *c, const struct candidate *other)
{
	if (!paper_box_meets(c->extent, other->extent))
		return false;
	return paper_box_meets(apart_box(c), other->box) ||
	       paper_box_meets(apart_box(other), c->box) ||
	       leader_meets_box(c, clash_clear_box(other)) ||
	       leader_meets_box(other, clash_clear_box(c));
}

static bool leaders_cross(const struct candidate *c, const struct candidate *other)
{
	struct paper_point a, b, d, e;
	for (int i = 0; i + 1 < c->leader_count; i++)
		for (int j = 0; j + 1 < other->leader_count; j++) {
			clash_leader_piece(c, i, &a, &b);
			clash_leader_piece(other, j, &d, &e);
			if (occupancy_is_crossing(a, b, d, e))
				return true;
		}
	return false;
}

static double distance_to(struct paper_point p, struct paper_point a, struct paper_point b)
{
	struct paper_point d = paper_sub(b, a), from = paper_sub(p, a);
	double square = d.x * d.x + d.y * d.y;
	double share = square > 0 ? (from.x * d.x + from.y * d.y) / square : 0;
	return paper_distance(p, paper_step(a, d, fmax(0, fmin(1, share))));
}

/* True where the shoulder or the elbow of one leader comes near the other. */
static bool leader_joins(const struct candidate *c, const struct candidate *other)
{
	struct paper_point a, b;
	for (int i = 0; i + 1 < c->leader_count; i++)
		for (int j = 0; j + 1 < other->leader_count; j++) {
			clash_leader_piece(other, j, &a, &b);
			if (distance_to(c->leader[i], a, b) < LEADERS_APART)
				return true;
		}
	return false;
}

double clash_tangle(const struct candidate *c, const struct candidate *other)
{
	if (leader_joins(c, other) || leader_joins(other, c))
		return LEADERS_JOIN;
	return leaders_cross(c, other) ? LEADERS_CROSS : 0;
}

/* Clear space between two intervals; below 0 where they overlap. */
static double apart(double a0, double a1, double b0, double b1)
{
	return fmax(b0 - a1, a0 - b1);
}

/* Two texts that would be read as one: one under the other, or one after the other. */
double clash_reads_on(const struct candidate *c, const struct candidate *other, double cap)
{
	if (c->is_upright != other->is_upright)
		return 0;
	double x = apart(c->box.x0, c->box.x1, other->box.x0, other->box.x1);
	double y = apart(c->box.y0, c->box.y1, other->box.y0, other->box.y1);
	double beside = c->is_upright ? y : x, under = c->is_upright ? x : y;
	if (beside < 0)
		return READ_ON * fmax(0, 1 - under / (LINES_APART * cap));
	return under < 0 ? READ_ON * fmax(0, 1 - beside / (WORDS_APART * cap)) : 0;
}
