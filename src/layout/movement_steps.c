#include "layout/movement_steps.h"

#include "geometry/line.h"
#include "geometry/tolerance.h"

/* From head joint to head joint of courses that follow each other, the shorter way. */
static double step_between(const struct module *module, int course)
{
	double from = module->offsets[course];
	double to = module->offsets[(course + 1) % module->offset_count];
	double step = fmod(fabs(to - from), module->pitch);
	return fmin(step, module->pitch - step);
}

/* Courses of a period with a head joint in line with that of one course. */
static int courses_in_line(const struct module *module, int with)
{
	int count = 0;
	for (int r = 0; r < module->offset_count; r++) {
		double off = fmod(fabs(module->offsets[r] - module->offsets[with]), module->pitch);
		count += fmin(off, module->pitch - off) < TOLERANCE_WHOLE;
	}
	return count;
}

struct movement_steps movement_steps_of(const struct rules *rules, const struct module *module,
                                        const struct movement_line *line)
{
	double length = line_length_of_all(line->runs, line->run_count);
	struct movement_steps steps = {.cut = length, .stepped = INFINITY};
	if (module->offset_count == 0 || line->along_u)
		return steps;
	double courses = length / module->course, run = 0, turns = 0;
	int in_line = 0;
	for (int r = 0; r < module->offset_count; r++) {
		double step = step_between(module, r);
		run += step / module->offset_count;
		turns += step > TOLERANCE_WHOLE ? 2.0 / module->offset_count : 0;
		in_line =
			in_line > courses_in_line(module, r) ? in_line : courses_in_line(module, r);
	}
	steps.tiles = courses * (1 - (double)in_line / module->offset_count);
	steps.turns = courses * turns;
	steps.cut += steps.tiles * rules_figure(rules, FIGURE_FIELD_CUT_TILE);
	steps.stepped = length + courses * run +
	                steps.turns * rules_figure(rules, FIGURE_SOFT_TURN_PENALTY);
	return steps;
}
