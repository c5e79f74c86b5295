/* floor [wing|groups] SEED [TURN X Y] - prints the random floor plan of that seed: a room, a wing
 * of several, or a room with cracks that branch, cross, close or run side by side; turned by
 * degrees, then moved by modules. */
#include "random/floor.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "random/wing.h"

enum { MODULE_MM = 25 };

bool floor_chance(struct floor_draft *floor, int percent)
{
	return seed_below(&floor->seed, 100) < percent;
}

const char *floor_pick(struct floor_draft *floor, const char *const *words, int count)
{
	return words[seed_below(&floor->seed, count)];
}

double floor_number(struct floor_draft *floor, const double *numbers, int count)
{
	return numbers[seed_below(&floor->seed, count)];
}

static void write_length(const struct floor_draft *floor, const char *key, double modules,
                         int decimals)
{
	char text[64];
	snprintf(text, sizeof text, "%.*f", decimals, modules * (floor->inches ? 1 : MODULE_MM));
	char *end = text + strlen(text);
	while (end[-1] == '0')
		*--end = 0;
	if (end[-1] == '.')
		*--end = 0;
	printf(" %s=\"%s\"", key, strcmp(text, "-0") ? text : "0");
}

void floor_length(const struct floor_draft *floor, const char *key, double modules)
{
	write_length(floor, key, modules, 4);
}

void floor_direction(const struct floor_draft *floor, const char *key, double degrees)
{
	printf(" %s=\"%.10g\"", key, remainder(degrees + floor->pose.turn_deg, 360));
}

void floor_point(const struct floor_draft *floor, struct spot at)
{
	const struct floor_pose *pose = &floor->pose;
	double turn = pose->turn_deg * 3.14159265358979323846 / 180, c = cos(turn), s = sin(turn);
	bool is_posed = fabs(pose->turn_deg) > 0;
	int decimals = is_posed ? 7 : 4; /* of the same floor turned: nothing may hang on them */
	write_length(floor, "x", c * at.x - s * at.y + pose->by.x, decimals);
	write_length(floor, "y", s * at.x + c * at.y + pose->by.y, decimals);
}

void floor_at(const struct floor_draft *floor, const char *element, struct spot at)
{
	printf("<%s", element);
	floor_point(floor, at);
	printf("/>");
}

static void write_slab(struct floor_draft *floor)
{
	static const char *const EXPOSURES[] = {"indoor", "indoor", "indoor", "indoor",
	                                        "sunlit", "wet",    "outdoor"};
	printf("<slab id=\"S1\" placed=\"2024-01-01\" support=\"%s\" exposure=\"%s\"",
	       floor_chance(floor, 85) ? "ground" : "suspended", FLOOR_PICK(floor, EXPOSURES));
	floor_length(floor, "thickness", 5);
	printf("%s/>\n", floor_chance(floor, 10) ? " heated=\"yes\"" : "");
}

static void write_one_room(struct floor_draft *floor, bool is_grouped)
{
	floor_write_room(floor);
	floor_write_slab_joints(floor);
	if (is_grouped)
		floor_write_crack_groups(floor);
	else
		floor_write_cracks(floor);
	floor_write_lay(floor);
}

int main(int count, char **arguments)
{
	const char *kind = count > 1 ? arguments[1] : "";
	bool is_wing = strcmp(kind, "wing") == 0, is_grouped = strcmp(kind, "groups") == 0;
	char **rest = arguments + (is_wing || is_grouped ? 2 : 1);
	long given = arguments + count - rest;
	if (given != 1 && given != 4) {
		fprintf(stderr, "usage: floor [wing|groups] SEED [TURN X Y]\n");
		return 2;
	}
	struct floor_draft floor = {.seed = {strtoull(rest[0], NULL, 10)}};
	if (given == 4)
		floor.pose = (struct floor_pose){atof(rest[1]), {atof(rest[2]), atof(rest[3])}};
	floor.inches = floor_chance(&floor, 50);
	floor.outline = outline_draw(&floor.seed);
	printf("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
	printf("<floor version=\"1\" title=\"Random floor %s\" unit=\"%s\" rules=\"%s\"", rest[0],
	       floor.inches ? "in" : "mm", floor_chance(&floor, 70) ? "us" : "uk");
	if (given == 4)
		floor_direction(&floor, "north", 90);
	printf(">\n");
	write_slab(&floor);
	if (is_wing)
		wing_write(&floor);
	else
		write_one_room(&floor, is_grouped);
	printf("</floor>\n");
	return 0;
}
