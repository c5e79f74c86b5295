/* key_plan.h - all rooms at a glance, with their names: which sheet is of which room.
 * Units: paper mm. Not to a standard scale: nothing is measured from it. */
#ifndef SHEETS_KEY_PLAN_H
#define SHEETS_KEY_PLAN_H
#include "sheets/sheet.h"

void key_plan_draw(struct sheet *, struct paper_box);

#endif
