/* slab.c - cracks and joints of the slab. */
#include <math.h>
#include <stdio.h>

#include "random/floor.h"

enum { CRACK_POINTS = 6, WALK_TRIES = 40 };
static const double HALF_TURN = 3.14159265358979323846;

static struct spot moved(struct spot from, struct spot along, double by)
{
	return (struct spot){round((from.x + along.x * by) * 100) / 100,
	                     round((from.y + along.y * by) * 100) / 100};
}

static struct spot direction(double angle)
{
	return (struct spot){cos(angle), sin(angle)};
}

/* ---- joints ---- */

static double off_line(struct spot p, struct spot a, struct spot b)
{
	return fabs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) /
	       hypot(b.x - a.x, b.y - a.y);
}

/* No slab is cast with one joint along another. */
static bool lies_on_joint(const struct floor_draft *floor, struct spot from, struct spot to)
{
	return floor->has_joint && off_line(from, floor->joint[0], floor->joint[1]) < 2 &&
	       off_line(to, floor->joint[0], floor->joint[1]) < 2;
}

/* Straight through a point of the room from wall to wall, or to an end in the field. */
static void write_slab_joint(struct floor_draft *floor, int number)
{
	static const char *const KINDS[] = {"contraction", "construction", "isolation", "expansion",
	                                    "cold"};
	static const double WIDTHS[] = {0.125, 0.25, 0.375, 0.5};
	static const double ANGLES[] = {0, 0, 0, 0.5, 0.5, 0.5, 0.53, 0.25, 0.1};
	const char *kind = FLOOR_PICK(floor, KINDS);
	struct spot middle = outline_inside(&floor->outline, &floor->seed, 8);
	struct spot along = direction(FLOOR_NUMBER(floor, ANGLES) * HALF_TURN);
	struct spot back = {-along.x, -along.y};
	double ahead = outline_reach(&floor->outline, middle, along);
	double behind = outline_reach(&floor->outline, middle, back);
	if (floor_chance(floor, 20))
		ahead *= seed_between(&floor->seed, 0.1, 0.9);
	struct spot from = moved(middle, back, behind), to = moved(middle, along, ahead);
	if (lies_on_joint(floor, from, to))
		return;
	floor->joint[0] = from;
	floor->joint[1] = to;
	floor->has_joint = true;
	printf("<slab-joint id=\"J%d\" kind=\"%s\"", number, kind);
	floor_length(floor, "width", FLOOR_NUMBER(floor, WIDTHS));
	if (kind == KINDS[0] && floor_chance(floor, 40))
		printf(" treat=\"relocate\"");
	printf(">");
	floor_at(floor, "at", floor->joint[0]);
	floor_at(floor, "at", floor->joint[1]);
	printf("</slab-joint>\n");
}

void floor_write_slab_joints(struct floor_draft *floor)
{
	static const double COUNTS[] = {0, 0, 0, 1, 1, 2};
	int joints = (int)FLOOR_NUMBER(floor, COUNTS);
	for (int i = 0; i < joints; i++)
		write_slab_joint(floor, i + 1);
}

/* ---- cracks ---- */

struct walk {
	struct spot points[CRACK_POINTS];
	size_t count;
};

/* The next point of a crack that winds; false where it finds no room to go on. */
static bool step_on(struct floor_draft *floor, struct walk *walk, double *angle)
{
	const struct outline *outline = &floor->outline;
	struct spot from = walk->points[walk->count - 1];
	for (int i = 0; i < WALK_TRIES; i++) {
		double turned = *angle + seed_between(&floor->seed, -0.7, 0.7);
		struct spot to = moved(from, direction(turned), seed_between(&floor->seed, 15, 70));
		struct spot middle = {(from.x + to.x) / 2, (from.y + to.y) / 2};
		if (outline_holds(outline, to) && outline_holds(outline, middle) &&
		    outline_clearance(outline, to) > 2) {
			walk->points[walk->count++] = to;
			*angle = turned;
			return true;
		}
	}
	return false;
}

static struct walk walk_free(struct floor_draft *floor, struct spot from)
{
	struct walk walk = {{from}, 1};
	double angle = seed_between(&floor->seed, 0, 2 * HALF_TURN);
	size_t steps = 1 + (size_t)seed_below(&floor->seed, CRACK_POINTS - 2);
	while (walk.count <= steps && step_on(floor, &walk, &angle))
		;
	return walk;
}

static struct walk walk_across(struct floor_draft *floor)
{
	struct spot middle = outline_inside(&floor->outline, &floor->seed, 4);
	struct spot along = direction(seed_between(&floor->seed, 0, 2 * HALF_TURN));
	struct spot back = {-along.x, -along.y};
	struct spot knee =
		moved(middle, (struct spot){-along.y, along.x}, seed_between(&floor->seed, -1, 1));
	struct spot first = moved(middle, back, outline_reach(&floor->outline, middle, back));
	struct spot last = moved(middle, along, outline_reach(&floor->outline, middle, along));
	return (struct walk){{first, knee, last}, 3};
}

/* Beside a straight thing, near enough to share its joint, or not quite. */
static struct walk walk_beside(struct floor_draft *floor, struct spot a, struct spot b)
{
	double length = hypot(b.x - a.x, b.y - a.y), off = seed_between(&floor->seed, 0.2, 14);
	struct spot along = {(b.x - a.x) / length, (b.y - a.y) / length};
	struct spot left = {-along.y, along.x};
	struct spot first =
		moved(moved(a, left, off), along, length * seed_between(&floor->seed, 0.05, 0.4));
	struct spot last = moved(moved(a, left, off + seed_between(&floor->seed, -0.1, 2)), along,
	                         length * seed_between(&floor->seed, 0.6, 0.95));
	return (struct walk){{first, last}, 2};
}

static struct walk walk_along_wall(struct floor_draft *floor)
{
	size_t wall = (size_t)seed_below(&floor->seed, (int)floor->outline.count);
	return walk_beside(floor, floor->outline.corners[wall],
	                   outline_next(&floor->outline, wall));
}

static struct walk walk_somewhere(struct floor_draft *floor)
{
	int way = seed_below(&floor->seed, 10);
	if (way == 0 && floor->has_joint)
		return walk_beside(floor, floor->joint[0], floor->joint[1]);
	if (way == 1)
		return walk_along_wall(floor);
	if (way < 4)
		return walk_across(floor);
	if (way == 4 && floor->has_column)
		return walk_free(floor, floor->column);
	return walk_free(floor, outline_inside(&floor->outline, &floor->seed, 6));
}

static bool is_inside(const struct outline *outline, const struct walk *walk)
{
	for (size_t i = 0; i < walk->count; i++)
		if (!outline_holds(outline, walk->points[i]) &&
		    outline_clearance(outline, walk->points[i]) > 0.1)
			return false;
	return walk->count > 1;
}

static void write_walk(struct floor_draft *floor, int number, struct walk walk)
{
	static const double WIDTHS[] = {0.03, 0.05, 0.08, 0.1, 0.1, 0.2};
	if (!is_inside(&floor->outline, &walk))
		return;
	printf("<crack id=\"K%d\"%s", number, floor_chance(floor, 70) ? " room=\"R\"" : "");
	floor_length(floor, "width", FLOOR_NUMBER(floor, WIDTHS));
	if (floor_chance(floor, 15))
		floor_length(floor, "step", 0.06);
	if (floor_chance(floor, 10))
		printf(" moving=\"%s\"", floor_chance(floor, 50) ? "yes" : "no");
	if (floor_chance(floor, 15))
		floor_length(floor, "wander", seed_below(&floor->seed, 5) / 4.0);
	printf(">");
	for (size_t i = 0; i < walk.count; i++)
		floor_at(floor, "at", walk.points[i]);
	printf("</crack>\n");
}

void floor_write_cracks(struct floor_draft *floor)
{
	static const double COUNTS[] = {0, 1, 1, 1, 2, 2, 3, 4};
	int cracks = (int)FLOOR_NUMBER(floor, COUNTS);
	for (int i = 0; i < cracks; i++)
		write_walk(floor, i + 1, walk_somewhere(floor));
}

/* ---- groups ---- */

/* From the middle one way, as far as the room and `most` allow. */
static struct spot arm(const struct floor_draft *floor, struct spot middle, double angle,
                       double most)
{
	struct spot along = direction(angle);
	double reach = outline_reach(&floor->outline, middle, along) - 4;
	return moved(middle, along, fmax(6, fmin(most, reach)));
}

/* Three that meet, two that cross, one that comes back to its start, or two side by side. */
void floor_write_crack_groups(struct floor_draft *floor)
{
	enum { Y, X, RING, PARALLEL, KINDS, RING_POINTS = 5 };
	struct spot middle = outline_inside(&floor->outline, &floor->seed, 14);
	double angle = seed_between(&floor->seed, 0, 2 * HALF_TURN);
	double most = seed_between(&floor->seed, 20, 70), third = 2 * HALF_TURN / 3;
	int kind = seed_below(&floor->seed, KINDS);
	if (kind == Y) {
		struct spot first = arm(floor, middle, angle, most);
		struct spot second = arm(floor, middle, angle + third, most);
		struct spot third_arm = arm(floor, middle, angle - third, most);
		write_walk(floor, 1, (struct walk){{first, middle, second}, 3});
		write_walk(floor, 2, (struct walk){{middle, third_arm}, 2});
	} else if (kind == RING) {
		struct walk ring = {.count = RING_POINTS + 1};
		for (int i = 0; i < RING_POINTS; i++)
			ring.points[i] =
				arm(floor, middle, angle + 2 * HALF_TURN * i / RING_POINTS, most);
		ring.points[RING_POINTS] = ring.points[0];
		write_walk(floor, 1, ring);
	} else {
		double turn = kind == X ? seed_between(&floor->seed, 0.6, 2.5) : 0;
		double off = kind == X ? 0 : seed_between(&floor->seed, 3, 24);
		struct spot beside = moved(middle, direction(angle + HALF_TURN / 2), off);
		for (int k = 0; k < 2; k++) {
			struct spot at = k ? beside : middle;
			double way = k ? angle + turn : angle;
			struct walk walk = {{arm(floor, at, way + HALF_TURN, most),
			                     arm(floor, at, way, most)},
			                    2};
			write_walk(floor, k + 1, walk);
		}
	}
}
