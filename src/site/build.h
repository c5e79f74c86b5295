/* build.h - what the parts of site_build hand to each other.
 * Owns: everything lives in the arena. */
#ifndef SITE_BUILD_H
#define SITE_BUILD_H
#include "site/site.h"
#include "units/length.h"

/* A wall of any room, found by its id. */
struct build_wall {
	const char *id;
	const struct site_room *owner;
	bool is_built; /* false: its outline was in error, it has no edge */
	size_t edge;
};

struct build {
	struct arena *arena;
	const struct plan *plan;
	struct diag_list *diags;
	struct site *site;        /* as far as it is built: outlines first */
	struct build_wall *walls; /* sorted by id */
	size_t wall_count;
	int *reported; /* lines that the reader found fault with, rising */
	size_t reported_count;
};

/* The reader has found fault with the element: what is missing or wrong in it must not show
 * up a second time as an error of geometry. */
bool build_is_faulty(const struct build *, uint64_t given, int line);
/* NULL: no wall of that id. */
const struct build_wall *build_wall_find(const struct build *, const char *id);

static inline struct point build_point(int64_t x_nm, int64_t y_nm)
{
	return (struct point){length_mm(x_nm), length_mm(y_nm)};
}

/* A length in a message, in the plan's own unit. */
static inline const char *build_length_text(const struct build *build, double mm)
{
	return length_text(build->arena, mm, build->site->inches);
}

#endif
