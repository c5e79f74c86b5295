#include "layout/soft_setting.h"

#include "geometry/tolerance.h"

static const char *hold_at(const struct soft_setting *setting, struct point p)
{
	for (size_t h = 0; h < setting->cracks->hold_count; h++)
		if (region_distance(&setting->cracks->holds[h].region, p) < TOLERANCE_WHOLE)
			return setting->cracks->holds[h].id;
	return NULL;
}

const char *soft_setting_joint_at(const struct soft_setting *setting, struct point p)
{
	const struct field *field = setting->tiling->field;
	const char *line = field_joint_at(setting->field_joints, setting->field_joint_count, p);
	if (line)
		return line;
	if (hold_at(setting, p))
		return NULL;
	return perimeter_joint_at(field, setting->perimeter, setting->perimeter_count,
	                          perimeter_nearest(field, p));
}

const char *soft_setting_border_at(const struct soft_setting *setting, struct point p)
{
	const struct field *field = setting->tiling->field;
	const char *hold = hold_at(setting, p);
	if (hold)
		return hold;
	const char *line = field_joint_at(setting->field_joints, setting->field_joint_count, p);
	if (line)
		return line;
	size_t border = perimeter_nearest(field, p);
	return border < field->border_count ? field->borders[border].of : setting->strip;
}
