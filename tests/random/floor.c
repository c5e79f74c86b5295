/* floor [wing] SEED - prints the random floor plan of that seed: a room, or a wing of several. */
#include "random/floor.h"

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

void floor_length(const struct floor_draft *floor, const char *key, double modules)
{
	char text[64];
	snprintf(text, sizeof text, "%.4f", modules * (floor->inches ? 1 : MODULE_MM));
	char *end = text + strlen(text);
	while (end[-1] == '0')
		*--end = 0;
	if (end[-1] == '.')
		*--end = 0;
	printf(" %s=\"%s\"", key, strcmp(text, "-0") ? text : "0");
}

void floor_at(const struct floor_draft *floor, const char *element, struct spot at)
{
	printf("<%s", element);
	floor_length(floor, "x", at.x);
	floor_length(floor, "y", at.y);
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

static void write_one_room(struct floor_draft *floor)
{
	floor_write_room(floor);
	floor_write_slab_joints(floor);
	floor_write_cracks(floor);
	floor_write_lay(floor);
}

int main(int count, char **arguments)
{
	bool is_wing = count == 3 && strcmp(arguments[1], "wing") == 0;
	if (count != 2 && !is_wing) {
		fprintf(stderr, "usage: floor [wing] SEED\n");
		return 2;
	}
	const char *seed = arguments[count - 1];
	struct floor_draft floor = {.seed = {strtoull(seed, NULL, 10)}};
	floor.inches = floor_chance(&floor, 50);
	floor.outline = outline_draw(&floor.seed);
	printf("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
	printf("<floor version=\"1\" title=\"Random floor %s\" unit=\"%s\" rules=\"%s\">\n", seed,
	       floor.inches ? "in" : "mm", floor_chance(&floor, 70) ? "us" : "uk");
	write_slab(&floor);
	if (is_wing)
		wing_write(&floor);
	else
		write_one_room(&floor);
	printf("</floor>\n");
	return 0;
}
