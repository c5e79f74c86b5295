/* sketch.h - a plan of one room written by a test, and the site built from it.
 * Units: mm in, as plans have them inside. Owns: all of a sketch lives in its own arena.
 * Line numbers as a file might have them: room 10, walls 11 and on, diagonals 20, obstacles
 * 30, doorways 40, cracks 50, slab joints 60. */
#ifndef SUPPORT_SKETCH_H
#define SUPPORT_SKETCH_H
#include "site/site.h"

#define SKETCH_NM(length) ((int64_t)((length)*1e6 + ((length) < 0 ? -0.5 : 0.5)))

enum { SKETCH_WALLS_MOST = 8, SKETCH_PARTS_MOST = 4 };

struct sketch {
	struct arena *arena;
	struct plan plan;
	struct plan_room room;
	struct plan_run run;
	struct plan_diagonal diagonals[SKETCH_PARTS_MOST];
	struct plan_wall walls[SKETCH_WALLS_MOST];
	struct plan_obstacle obstacles[SKETCH_PARTS_MOST];
	struct plan_doorway doorways[SKETCH_PARTS_MOST];
	struct plan_slab slabs[SKETCH_PARTS_MOST]; /* the first is the room's */
	struct plan_crack cracks[SKETCH_PARTS_MOST];
	struct plan_slab_joint joints[SKETCH_PARTS_MOST];
	struct diag_list diags;
	enum status status;
};

struct sketch *sketch_of_corners(const struct point *corners, size_t count);
/* A tape run to the east from the origin, a quarter turn left at each corner. */
struct sketch *sketch_of_run(const double *lengths, size_t count);
/* A diagonal of a tape run, on line 20. */
void sketch_add_diagonal(struct sketch *, const char *from, const char *to, double length);
/* 6 m by 4 m from the origin. */
struct sketch *sketch_of_rectangle(bool clockwise);
struct plan_doorway *sketch_add_doorway(struct sketch *, const char *wall, double from,
                                        double width);
struct plan_obstacle *sketch_add_obstacle(struct sketch *, enum plan_obstacle_kind);
/* A column about its centre. */
struct plan_obstacle *sketch_add_box(struct sketch *, double x, double y, double wide, double deep,
                                     double turn);
/* A slab that covers a rectangle; without one the room's slab is anywhere. On line 70 and on. */
struct plan_slab *sketch_add_slab(struct sketch *, double x, double y, double wide, double deep);
struct plan_at *sketch_points(struct sketch *, const struct point *, size_t count, int line);
struct plan_crack *sketch_add_crack(struct sketch *, const struct point *, size_t count);
struct plan_slab_joint *sketch_add_joint(struct sketch *, const struct point *, size_t count);

/* Resolves the sketch; its status and errors are kept in it. */
const struct site *sketch_build(struct sketch *);
/* Fails the test on any error. */
const struct site *sketch_build_sound(struct sketch *);
/* Fails the test unless there is exactly one error, on `line`, that says `what`. */
void sketch_build_broken(struct sketch *, int line, const char *what);
void sketch_free(struct sketch *);

#endif
