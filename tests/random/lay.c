/* lay.c - tile, how it lies, and the membrane under it. */
#include <math.h>
#include <stdio.h>

#include "random/floor.h"

static void write_tile(struct floor_draft *floor, double joint)
{
	static const double WIDTHS[] = {2, 4, 6, 8, 12, 12, 13, 16, 24};
	static const double SIDES[] = {1, 1, 1, 1.5, 2, 3, 4};
	double wide = FLOOR_NUMBER(floor, WIDTHS), side = FLOOR_NUMBER(floor, SIDES);
	if (wide * side > 48)
		side = 1;
	printf("<tile id=\"T1\" kind=\"%s\"", floor_chance(floor, 80) ? "porcelain" : "stone");
	floor_length(floor, "wide", wide - joint);
	floor_length(floor, "long", wide * side - joint);
	floor_length(floor, "thick", 0.4);
	printf("/>\n");
}

static void write_pattern(struct floor_draft *floor)
{
	static const char *const SHIFTS[] = {"1/2", "1/3", "1/4", "2/5", "0.3"};
	static const double ANGLES[] = {0, 0, 0, 0, 90, 90, 45, 30, 17.5, -60};
	if (floor_chance(floor, 50)) {
		printf(" pattern=\"grid\"");
	} else {
		printf(" pattern=\"running\"");
		if (floor_chance(floor, 80))
			printf(" shift=\"%s\"", FLOOR_PICK(floor, SHIFTS));
		if (floor_chance(floor, 40))
			printf(" stagger=\"alternate\"");
	}
	floor_direction(floor, "angle", FLOOR_NUMBER(floor, ANGLES));
}

static void write_wishes(struct floor_draft *floor)
{
	int wall = 1 + seed_below(&floor->seed, (int)floor->outline.count);
	if (floor->has_doorway && floor_chance(floor, 40))
		printf(" full-at=\"D1\"");
	else if (floor_chance(floor, 20))
		printf(" full-at=\"R.%d\"", wall);
	else if (floor_chance(floor, 10))
		printf(" centre-on=\"R.%d\"", wall);
	if (floor_chance(floor, 15))
		printf(" balance=\"no\"");
	if (floor_chance(floor, 15))
		floor_length(floor, "gap", 0.25 + seed_below(&floor->seed, 5) / 20.0);
}

static void write_start(struct floor_draft *floor)
{
	struct spot at = outline_inside(&floor->outline, &floor->seed, 0);
	printf("<start");
	floor_point(floor, at);
	printf(" at=\"%s\"/>", floor_chance(floor, 70) ? "corner" : "centre");
}

static void write_membrane(struct floor_draft *floor)
{
	static const char *const KINDS[] = {"sheet", "sheet", "liquid"};
	static const double STRIPS[] = {12, 18, 24};
	const char *kind = FLOOR_PICK(floor, KINDS);
	printf("<membrane id=\"M1\" rooms=\"R\" kind=\"%s\" cover=\"%s\" soft-joints=\"%s\"", kind,
	       floor_chance(floor, 15) ? "full" : "partial",
	       floor_chance(floor, 65) ? "both" : "one");
	floor_length(floor, "movement", 0.125);
	if (floor_chance(floor, 30))
		floor_length(floor, "strip", FLOOR_NUMBER(floor, STRIPS));
	if (kind[0] == 's' && floor_chance(floor, 70)) {
		floor_length(floor, "roll-wide", 36);
		floor_length(floor, "roll-long", 900);
		floor_length(floor, "lap", 2);
	}
	if (floor_chance(floor, 15))
		floor_length(floor, "overrun", 4 + seed_below(&floor->seed, 20));
	printf("/>\n");
}

void floor_write_lay(struct floor_draft *floor)
{
	static const double JOINTS[] = {0.0625, 0.125, 0.1875, 0.25};
	double joint = FLOOR_NUMBER(floor, JOINTS);
	write_tile(floor, joint);
	printf("<lay id=\"L1\" rooms=\"R\" tile=\"T1\"");
	floor_length(floor, "joint", joint);
	write_pattern(floor);
	write_wishes(floor);
	printf(">");
	if (floor_chance(floor, 40))
		write_start(floor);
	printf("</lay>\n");
	if (floor_chance(floor, 92))
		write_membrane(floor);
}
