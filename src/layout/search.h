/* search.h - what setting out knows while it searches: terms, wishes, classes of parts, and
 * the lattice position of each class as it stands.
 * Private to the setting-out pass. Units: mm in the lay's own axes. Owns: arena. */
#ifndef LAYOUT_SEARCH_H
#define LAYOUT_SEARCH_H
#include "base/array.h"
#include "layout/bays.h"
#include "layout/position_key.h"
#include "layout/wall_term.h"
#include "layout/wish.h"

/* Two opposite walls of a part whose cuts should be alike. */
struct wall_pair {
	size_t term[2];
};

/* The terms whose cut one class decides. */
struct class_terms {
	ARRAY_OF(size_t) in_order;
	ARRAY_OF(size_t) by_weight; /* those that can cost most first */
};

struct search {
	struct arena *arena;
	const struct field *field;
	const struct module *module;
	struct bays bays;
	double print_step;
	struct wall_term *terms; /* one a border of the field, in its order */
	size_t term_count;
	struct wall_slots *slots; /* of each term, for the v position being tried */
	struct wall_pair *pairs;
	size_t pair_count;
	struct wishes wishes;
	struct class_terms *terms_of_u, *terms_of_v; /* of each class */
	double *u, *v;                               /* position of each class */
	bool *u_pinned, *v_pinned;
	long tried;
};

/* Places to try for one class along one axis; of equals the first is taken. */
struct candidates {
	double *places;
	size_t count;
};

struct search search_start(struct arena *, const struct field *, const struct module *,
                           const struct rules *);
/* Brings the slots up to date after a v position changed. */
void search_set_slots(struct search *);
size_t search_class_of_term(const struct search *, const struct wall_term *);
/* A wish speaks of the position of this class along this axis; a joint that two classes lie
 * beside, or a wall of several, concerns each of them. */
bool search_wish_concerns(const struct search *, const struct wish *, bool along_u, size_t class);
double search_place_of_term(const struct search *, const struct wall_term *);
/* Every printed step within one period, counted from the first corner to a face's edge, and
 * the exact places at which a whole tile starts at a wall or a wish is met. */
struct candidates search_candidates(struct search *, bool along_u, size_t class);
/* The wishes that a place of one class leaves unmet, and nothing else. */
struct position_key search_unmet(const struct search *, bool along_u, size_t class, double place);
/* What a place of one class costs. Stops early, with a key that is no better than `limit`,
 * once it is beaten. */
struct position_key search_key(const struct search *, bool along_u, size_t class, double place,
                               struct position_key limit);
/* The first entry of full-at or centre-on that is not met as things stand, or NULL. */
const struct plan_ref *search_first_unmet(const struct search *);

#endif
