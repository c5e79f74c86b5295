/* floor_plan.h - the whole floor as the plan of a sheet: all rooms in one view, with what
 * the sheet draws in each. Units: floor mm through the view. */
#ifndef SHEETS_FLOOR_PLAN_H
#define SHEETS_FLOOR_PLAN_H
#include "sheets/lay_view.h"
#include "sheets/margin.h"
#include "sheets/sheet.h"

struct floor_plan {
	bool has_cuts; /* the walls say their cuts; else their names alone */
	void (*draw)(struct sheet *, const struct lay_view *);
};

/* Round all rooms, with the recesses of their doorways; and round their walls alone. */
struct box floor_plan_window(struct arena *, const struct site *);
struct box floor_plan_walls(struct arena *, const struct site *);
/* Walls, doorways and obstacles of every room, and in tiled ones what `draw` adds. */
enum sheet_fit floor_plan_draw(struct sheet *, struct floor_plan);

#endif
