#include "pattern/joint_rows.h"

#include "pattern/lanes.h"

static const double origin[] = {0};

static struct joint_rows of_courses(const struct module *module, bool along_u)
{
	return (struct joint_rows){
		.period = along_u ? module->course : module->pitch,
		.places = origin,
		.count = 1,
		.are_straight = along_u || module->offset_count == 1,
	};
}

static struct joint_rows of_lanes(const struct lanes *lanes)
{
	bool are_straight = lanes->straight_count > 0;
	return (struct joint_rows){
		.period = lanes->period,
		.places = are_straight ? lanes->straights : lanes->borders,
		.count = are_straight ? lanes->straight_count : lanes->border_count,
		.are_straight = are_straight,
	};
}

struct joint_rows joint_rows_of(const struct module *module, bool along_u)
{
	/* Tile begins across the line where the lanes across it have their borders. */
	const struct lanes *lanes = module_lanes(module, !along_u);
	if (!lanes)
		return of_courses(module, along_u);
	if (lanes->lane_count > 0)
		return of_lanes(lanes);
	struct joint_rows rows = of_courses(module, along_u);
	rows.are_straight = false;
	return rows;
}
