#include "site/traverse.h"

#include <string.h>

#include "geometry/frame.h"

double *traverse_headings(struct arena *arena, double first_deg, const double *turns_deg,
                          size_t count)
{
	double *headings = ARENA_ARRAY(arena, double, count);
	double heading = first_deg;
	for (size_t i = 0; i < count; i++) {
		headings[i] = heading;
		heading += turns_deg[i];
	}
	return headings;
}

/* Where each leg begins when nothing is corrected, and after them where the last one ends. */
static struct point *walk(struct arena *arena, const struct traverse *run)
{
	struct point *stations = ARENA_ARRAY(arena, struct point, run->count + 1);
	stations[0] = run->start;
	for (size_t i = 0; i < run->count; i++) {
		struct frame heading = frame_from_deg(run->headings_deg[i]);
		struct point leg = {heading.cos * run->lengths[i], heading.sin * run->lengths[i]};
		stations[i + 1] = point_add(stations[i], leg);
	}
	return stations;
}

static struct traverse_tie leg_as_tie(const struct traverse *run, size_t i)
{
	size_t next = i + 1 < run->count ? i + 1 : 0;
	return (struct traverse_tie){i, next, run->lengths[i]};
}

/* What the tie's length as taped has over the distance of its corners. */
static double tie_excess(struct traverse_tie tie, const struct point *corners)
{
	return tie.length - point_distance(corners[tie.from], corners[tie.to]);
}

static double greatest_excess(const struct traverse_tie *ties, size_t count,
                              const struct point *corners)
{
	double greatest = 0;
	for (size_t i = 0; i < count; i++)
		greatest = fmax(greatest, fabs(tie_excess(ties[i], corners)));
	return greatest;
}

struct traverse_closing traverse_close(struct arena *arena, const struct traverse *run)
{
	struct traverse_closing closing = {.corners = walk(arena, run)};
	for (size_t i = 0; i < run->count; i++)
		closing.perimeter += run->lengths[i];
	closing.error = point_sub(closing.corners[run->count], run->start);
	closing.error_length = point_length(closing.error);

	double walked = 0;
	for (size_t i = 1; i < run->count; i++) {
		walked += run->lengths[i - 1];
		struct point share = point_scale(closing.error, walked / closing.perimeter);
		closing.corners[i] = point_sub(closing.corners[i], share);
	}
	for (size_t i = 0; i < run->count; i++) {
		struct traverse_tie leg = leg_as_tie(run, i);
		closing.misfit = fmax(closing.misfit, greatest_excess(&leg, 1, closing.corners));
	}
	return closing;
}

/* ---- least squares ---- */

/* Normal equations of one step: unknown 2 k is the move of corner k along the first
 * heading, 2 k + 1 the move to the left of it. Lengths are shares of the perimeter. */
struct normal {
	double *matrix; /* count x count, lower half */
	double *right;  /* right side, then the solution */
	size_t count;
};

/* Damping is added to the diagonal, against 1 for a taped length. The least holds the start,
 * the first heading and what no length decides where it is. */
static const double DAMPING_LEAST = 1e-9, DAMPING_MOST = 1e3;
/* Steps smaller than this share of the perimeter end the search. */
static const double STEP_LEAST = 1e-15;
enum { STEPS_MOST = 100 };

static double *normal_cell(const struct normal *n, size_t row, size_t column)
{
	return &n->matrix[row * n->count + column];
}

static bool is_held(size_t unknown)
{
	return unknown < 2 || unknown == 3;
}

static void normal_add_tie(struct normal *n, struct traverse_tie tie, const struct point *corners)
{
	struct point u = point_unit(point_sub(corners[tie.to], corners[tie.from]));
	const size_t unknowns[] = {2 * tie.from, 2 * tie.from + 1, 2 * tie.to, 2 * tie.to + 1};
	const double slopes[] = {-u.x, -u.y, u.x, u.y};
	double excess = tie_excess(tie, corners);
	for (size_t i = 0; i < 4; i++) {
		if (is_held(unknowns[i]))
			continue;
		n->right[unknowns[i]] += slopes[i] * excess;
		for (size_t k = 0; k < 4; k++)
			if (!is_held(unknowns[k]) && unknowns[k] <= unknowns[i])
				*normal_cell(n, unknowns[i], unknowns[k]) += slopes[i] * slopes[k];
	}
}

/* Cholesky's factor in place; the damping keeps the diagonal positive. */
static void normal_factor(struct normal *n)
{
	for (size_t row = 0; row < n->count; row++) {
		for (size_t column = 0; column <= row; column++) {
			double sum = *normal_cell(n, row, column);
			for (size_t k = 0; k < column; k++)
				sum -= *normal_cell(n, row, k) * *normal_cell(n, column, k);
			bool on_diagonal = row == column;
			*normal_cell(n, row, column) =
				on_diagonal ? sqrt(fmax(sum, DAMPING_LEAST))
					    : sum / *normal_cell(n, column, column);
		}
	}
}

static void normal_solve(struct normal *n)
{
	normal_factor(n);
	for (size_t row = 0; row < n->count; row++) {
		for (size_t k = 0; k < row; k++)
			n->right[row] -= *normal_cell(n, row, k) * n->right[k];
		n->right[row] /= *normal_cell(n, row, row);
	}
	for (size_t row = n->count; row-- > 0;) {
		for (size_t k = row + 1; k < n->count; k++)
			n->right[row] -= *normal_cell(n, k, row) * n->right[k];
		n->right[row] /= *normal_cell(n, row, row);
	}
}

/* What one step of Gauss and Newton makes of the corners, damped so that the step stays
 * short where the lengths say little; returns the greatest move. */
static double fit_step(struct normal *n, const struct traverse_tie *ties, size_t tie_count,
                       double damping, const struct point *corners, struct point *out_moved)
{
	memset(n->matrix, 0, n->count * n->count * sizeof *n->matrix);
	memset(n->right, 0, n->count * sizeof *n->right);
	for (size_t i = 0; i < n->count; i++)
		*normal_cell(n, i, i) = damping;
	for (size_t i = 0; i < tie_count; i++)
		normal_add_tie(n, ties[i], corners);
	normal_solve(n);

	double greatest = 0;
	for (size_t i = 0; i < n->count / 2; i++) {
		struct point move = {n->right[2 * i], n->right[2 * i + 1]};
		out_moved[i] = point_add(corners[i], move);
		greatest = fmax(greatest, point_length(move));
	}
	return greatest;
}

static double sum_of_squares(const struct traverse_tie *ties, size_t count,
                             const struct point *corners)
{
	double sum = 0;
	for (size_t i = 0; i < count; i++) {
		double excess = tie_excess(ties[i], corners);
		sum += excess * excess;
	}
	return sum;
}

/* Steps are taken while they help; one that does not is tried again with more damping. */
static void fit(struct arena *arena, const struct traverse_tie *ties, size_t tie_count,
                struct point *corners, size_t corner_count)
{
	size_t count = 2 * corner_count;
	struct normal normal = {ARENA_ARRAY(arena, double, count *count),
	                        ARENA_ARRAY(arena, double, count), count};
	struct point *moved = ARENA_ARRAY(arena, struct point, corner_count);
	double sum = sum_of_squares(ties, tie_count, corners);
	double damping = DAMPING_LEAST;
	for (size_t step = 0; step < STEPS_MOST && damping <= DAMPING_MOST; step++) {
		if (fit_step(&normal, ties, tie_count, damping, corners, moved) < STEP_LEAST)
			return;
		double moved_sum = sum_of_squares(ties, tie_count, moved);
		bool helps = moved_sum < sum;
		damping = helps ? fmax(damping / 10, DAMPING_LEAST) : damping * 10;
		if (!helps)
			continue;
		sum = moved_sum;
		memcpy(corners, moved, corner_count * sizeof *corners);
	}
}

/* All taped lengths, legs first, as shares of `unit`. */
static struct traverse_tie *all_ties(struct arena *arena, const struct traverse *run,
                                     const struct traverse_tie *ties, size_t tie_count, double unit)
{
	struct traverse_tie *all = ARENA_ARRAY(arena, struct traverse_tie, run->count + tie_count);
	for (size_t i = 0; i < run->count + tie_count; i++) {
		all[i] = i < run->count ? leg_as_tie(run, i) : ties[i - run->count];
		all[i].length /= unit;
	}
	return all;
}

struct traverse_closing traverse_adjust(struct arena *arena, const struct traverse *run,
                                        const struct traverse_tie *ties, size_t tie_count)
{
	struct traverse_closing closing = traverse_close(arena, run);
	struct frame heading = frame_from_deg(run->headings_deg[0]);
	double unit = closing.perimeter;
	struct point *corners = closing.corners;
	for (size_t i = 0; i < run->count; i++) {
		struct point from_start = point_sub(corners[i], run->start);
		corners[i] = point_scale(frame_in(heading, from_start), 1 / unit);
	}
	corners[1].y = 0;

	size_t all_count = run->count + tie_count;
	struct traverse_tie *all = all_ties(arena, run, ties, tie_count, unit);
	fit(arena, all, all_count, corners, run->count);
	closing.misfit = greatest_excess(all, all_count, corners) * unit;
	for (size_t i = 0; i < run->count; i++) {
		struct point from_start = frame_out(heading, point_scale(corners[i], unit));
		corners[i] = point_add(run->start, from_start);
	}
	return closing;
}
