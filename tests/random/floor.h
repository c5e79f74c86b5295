/* floor.h - a random floor plan on standard output: the same for the same seed.
 * Units: modules (1 in or 25 mm), written in the plan's own unit. */
#ifndef RANDOM_FLOOR_H
#define RANDOM_FLOOR_H
#include "random/outline.h"

/* How the floor lies on its paper: turned about the origin, then moved. */
struct floor_pose {
	double turn_deg;
	struct spot by;
};

struct floor_draft {
	struct seed seed;
	struct floor_pose pose;
	bool inches;
	struct outline outline;
	struct spot joint[2]; /* the last slab joint, for cracks that run along it */
	struct spot column;   /* the last obstacle, for cracks that end at it */
	bool has_joint, has_column, has_doorway;
};

/* True as often as `percent` says. */
bool floor_chance(struct floor_draft *floor, int percent);
const char *floor_pick(struct floor_draft *floor, const char *const *words, int count);
double floor_number(struct floor_draft *floor, const double *numbers, int count);
#define FLOOR_PICK(floor, words) floor_pick(floor, words, (int)(sizeof words / sizeof words[0]))
#define FLOOR_NUMBER(floor, numbers) \
	floor_number(floor, numbers, (int)(sizeof numbers / sizeof numbers[0]))

/* ` key="length"` */
void floor_length(const struct floor_draft *floor, const char *key, double modules);
/* ` key="degrees"` of a direction, as the floor lies. */
void floor_direction(const struct floor_draft *floor, const char *key, double degrees);
/* ` x="…" y="…"`, as the floor lies. */
void floor_point(const struct floor_draft *floor, struct spot at);
void floor_at(const struct floor_draft *floor, const char *element, struct spot at);

void floor_write_room(struct floor_draft *floor);
void floor_write_slab_joints(struct floor_draft *floor);
void floor_write_cracks(struct floor_draft *floor);
void floor_write_crack_groups(struct floor_draft *floor);
void floor_write_lay(struct floor_draft *floor);
#endif
