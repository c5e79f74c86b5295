/* position.h - setting out: where the grid lies in every part of a field.
 * Units: mm in the lay's own axes. Owns: arena.
 * Source: own derivation from the half-tile rule, docs/sources.md#setting-out. */
#ifndef LAYOUT_POSITION_H
#define LAYOUT_POSITION_H
#include "layout/field.h"
#include "layout/position_key.h"
#include "pattern/module.h"

/* What the crew sees at one border of the field. */
struct border_cut {
	size_t border;      /* index into field->borders */
	double from, to;    /* cut at its two ends, mm, square to the lattice axis */
	double whole;       /* the face's extent there, when nothing is cut */
	double least;       /* along the whole border */
	double worst;       /* least cut with the wall moved by the tolerance */
	double small_share; /* h: of `whole`; a lesser cut is small */
	/* Distinct course ends, where courses meet the wall head on or nearly so, in the order of
	 * the courses; without courses the distinct cuts of the lanes. Of a wall out of true: at
	 * its first end, and at its last. */
	double *courses, *courses_to;
	size_t course_count;
	/* There is no one set of cuts to say: the pattern has no courses, and the wall runs askew
	 * to it, its tile is slanted there, or its period is too long to show. */
	bool varies;
	bool along_u; /* measured along u (else along v) */
};

struct position {
	struct point *parts; /* one lattice position a part of the field */
	size_t part_count;
	bool is_pinned;
	struct position_key key;
	struct border_cut *cuts;
	size_t cut_count;
	double smallest_cut, smallest_cut_worst;
	const struct plan_ref *unmet; /* the first entry that could not be met, or NULL */
	long candidates_tried;
};

const struct position *position_search(struct arena *, const struct field *, const struct module *,
                                       const struct rules *);
/* The same position, but for the parts that the wishes of the field's lay ask to be moved; NULL:
 * they cannot all be met. */
const struct position *position_moved(struct arena *, const struct field *, const struct module *,
                                      const struct rules *, const struct position *);
/* The same position with its cuts as they are where the tile at each border of the field is
 * moved by `shifts` (field joints are wider than the tile joint). */
const struct position *position_shifted(struct arena *, const struct field *, const struct module *,
                                        const struct rules *, const struct position *,
                                        const struct point *shifts);

#endif
