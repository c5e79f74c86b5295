/* room.c - the room, what stands in it, and its doorway. */
#include <math.h>
#include <stdio.h>

#include "random/floor.h"

static const double DEGREE = 3.14159265358979323846 / 180;

static void write_corners(const struct floor_draft *floor)
{
	printf("<corners>");
	for (size_t i = 0; i < floor->outline.count; i++)
		floor_at(floor, "corner", floor->outline.corners[i]);
	printf("</corners>\n");
}

static double heading(const struct outline *outline, size_t wall)
{
	struct spot a = outline->corners[wall % outline->count],
		    b = outline_next(outline, wall % outline->count);
	return atan2(b.y - a.y, b.x - a.x) / DEGREE;
}

static void write_walls(const struct floor_draft *floor)
{
	const struct outline *outline = &floor->outline;
	printf("<walls");
	floor_point(floor, outline->corners[0]);
	floor_direction(floor, "heading", heading(outline, 0));
	printf(">");
	for (size_t i = 0; i < outline->count; i++) {
		double turn = heading(outline, i + 1) - heading(outline, i);
		printf("<wall");
		floor_length(floor, "length", outline_wall(outline, i));
		if (outline->rises[i] < 0 || outline->rises[i] > 0)
			floor_length(floor, "rise", outline->rises[i]);
		printf(" turn=\"%.4f\"/>", remainder(turn, 360));
	}
	printf("</walls>\n");
}

static void write_box(struct floor_draft *floor, struct spot at)
{
	static const double TURNS[] = {0, 0, 0, 30, 45, 72.5};
	floor_point(floor, at);
	floor_length(floor, "wide", 3 + seed_below(&floor->seed, 16));
	floor_length(floor, "deep", 3 + seed_below(&floor->seed, 16));
	floor_direction(floor, "turn", FLOOR_NUMBER(floor, TURNS));
	printf("/>\n");
}

static void write_triangle(struct floor_draft *floor, struct spot at)
{
	double wide = 4 + seed_below(&floor->seed, 14), deep = 4 + seed_below(&floor->seed, 14);
	printf("><corners>");
	floor_at(floor, "corner", at);
	floor_at(floor, "corner", (struct spot){at.x + wide, at.y});
	floor_at(floor, "corner", (struct spot){at.x + wide / 4, at.y + deep});
	printf("</corners></obstacle>\n");
}

/* Most stand free, some in a wall or a corner, or in each other. */
static void write_obstacle(struct floor_draft *floor, int number)
{
	static const char *const KINDS[] = {"column", "island", "pipe", "drain", "box"};
	struct spot at =
		outline_inside(&floor->outline, &floor->seed, floor_chance(floor, 75) ? 6 : 0);
	floor->column = at;
	floor->has_column = true;
	printf("<obstacle id=\"C%d\" kind=\"%s\"", number, FLOOR_PICK(floor, KINDS));
	int form = seed_below(&floor->seed, 20);
	if (form < 9) {
		floor_point(floor, at);
		floor_length(floor, "across", 2 + seed_below(&floor->seed, 14));
		printf("/>\n");
	} else if (form < 18) {
		write_box(floor, at);
	} else {
		write_triangle(floor, at);
	}
}

static void write_doorway(struct floor_draft *floor)
{
	static const double DEPTHS[] = {0, 4, 6, 9.5};
	static const char *const STOPS[] = {"near", "middle", "far"};
	size_t wall = (size_t)seed_below(&floor->seed, (int)floor->outline.count);
	double length = outline_wall(&floor->outline, wall);
	if (length < 50 || floor->outline.rises[wall] < 0 || floor->outline.rises[wall] > 0)
		return;
	floor->has_doorway = true;
	printf("<doorway id=\"D1\" wall=\"R.%zu\"", wall + 1);
	floor_length(floor, "from", round(length * seed_between(&floor->seed, 0.1, 0.4)));
	floor_length(floor, "width", 28);
	floor_length(floor, "deep", FLOOR_NUMBER(floor, DEPTHS));
	printf(" stop=\"%s\"/>\n", FLOOR_PICK(floor, STOPS));
}

void floor_write_room(struct floor_draft *floor)
{
	static const double COUNTS[] = {0, 0, 1, 1, 2, 3};
	printf("<room id=\"R\" slab=\"S1\">\n");
	if (floor->outline.is_taped)
		write_walls(floor);
	else
		write_corners(floor);
	int obstacles = (int)FLOOR_NUMBER(floor, COUNTS);
	for (int i = 0; i < obstacles; i++)
		write_obstacle(floor, i + 1);
	if (floor_chance(floor, 40))
		write_doorway(floor);
	printf("</room>\n");
}
