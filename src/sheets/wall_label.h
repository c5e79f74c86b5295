/* wall_label.h - texts outside a wall, along it: names, cuts, doorways.
 * Units: paper mm. A wall a-b has the floor at its left. Upright walls have upright texts,
 * slanted ones level texts. */
#ifndef SHEETS_WALL_LABEL_H
#define SHEETS_WALL_LABEL_H
#include "sheets/sheet.h"

struct wall_text {
	const char *const *lines;
	size_t count;
	double around; /* share of the wall's length where it would stand best */
	bool stays;    /* there is tile on both sides: a leader ends in that of this side */
};

void wall_label(struct sheet *, const char *element, struct paper_point a, struct paper_point b,
                struct wall_text);
/* One plain line. */
void wall_line(struct sheet *, const char *element, struct paper_point a, struct paper_point b,
               double around, const char *line);
/* Paper that a label of so many lines takes outside its wall. */
double wall_label_lane(const struct draft *, size_t lines);

/* The room that a place on the sheet's view is in: outside a wall there may be another. */
const struct site_room *wall_label_room(const struct sheet *, struct paper_point);

#endif
