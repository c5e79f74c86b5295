#include "layout/movement_steps.h"

#include "geometry/line.h"
#include "geometry/tolerance.h"

/* How far the head joint of a course that is nearest to the line lies beside it: the stepped
 * joint stays with its line, so that it ends a run where the line does. Halfway between two,
 * it stays on the side of the course before (at a run's start, of the next). */
static double head_joint_beside(const struct module *module, double place, long course,
                                double before)
{
	long r = course % module->offset_count;
	r += r < 0 ? module->offset_count : 0;
	double beside = remainder(module->offsets[r] - place, module->pitch);
	bool is_halfway = fabs(beside) > module->pitch / 2 - TOLERANCE_WHOLE;
	return is_halfway ? copysign(beside, before) : beside;
}

/* From course to course along a run; `place` is that of the line in the lattice. A course with
 * no more than a gap of it in the field has no tile. */
static void add_run(struct movement_steps *steps, const struct tiling *tiling, double place,
                    double from, double to)
{
	const struct module *module = tiling->module;
	double no_tile = tiling->field->gap_max - tiling->field->gap + module->joint / 2;
	long first = (long)floor((from + no_tile + TOLERANCE_WHOLE) / module->course);
	long end = (long)ceil((to - no_tile - TOLERANCE_WHOLE) / module->course);
	double before = head_joint_beside(module, place, first + 1, 0);
	for (long r = first; r < end; r++) {
		double beside = head_joint_beside(module, place, r, before);
		double step = r > first ? fabs(beside - before) : 0;
		steps->tiles += fabs(beside) > TOLERANCE_WHOLE;
		steps->turns += step > TOLERANCE_WHOLE ? 2 : 0;
		steps->stepped += step;
		before = beside;
	}
}

struct movement_steps movement_steps_of(const struct rules *rules, const struct tiling *tiling,
                                        struct point position, const struct movement_line *line)
{
	double length = line_length_of_all(line->runs, line->run_count);
	struct movement_steps steps = {.cut = length, .stepped = INFINITY};
	if (tiling->module->offset_count == 0 || line->along_u)
		return steps;
	steps.stepped = length;
	for (size_t i = 0; i < line->run_count; i++) {
		struct line run = line->runs[i];
		double a = run.points[0].y, b = run.points[run.count - 1].y;
		add_run(&steps, tiling, line->centre - position.x, fmin(a, b) - position.y,
		        fmax(a, b) - position.y);
	}
	steps.cut += steps.tiles * rules_figure(rules, FIGURE_FIELD_CUT_TILE);
	steps.stepped += steps.turns * rules_figure(rules, FIGURE_SOFT_TURN_PENALTY);
	return steps;
}
