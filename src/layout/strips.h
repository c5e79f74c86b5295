/* strips.h - membrane over isolated cracks: straight pieces a person cuts, and their union;
 * and the soft joints beside them.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C1, E-C2, E-C3. */
#ifndef LAYOUT_STRIPS_H
#define LAYOUT_STRIPS_H
#include "layout/cracks.h"
#include "layout/soft_joint.h"
#include "layout/strip_piece.h"

struct strip {
	const char *id;      /* CRACK.strip, of the first crack */
	size_t group;        /* the first of those whose strips run together here */
	const char **cracks; /* ids of all cracks it isolates */
	size_t crack_count;
	double width,
		length;    /* greatest width across a leg; sum of the pieces' lengths less laps */
	double half_width; /* half of max(maker's strip, 3 tile widths) */
	double overrun;    /* past an end in the field */
	bool pending;
	struct region region; /* union of the pieces */
	struct strip_piece *pieces;
	size_t piece_count;
};

/* What the membrane covers. */
struct cover {
	const struct plan_membrane *membrane; /* NULL: no membrane over this lay */
	bool is_full;                         /* as drawn and counted: then there are no strips */
	bool full_wanted;                     /* full coverage waits for approval: the alternate */
	struct region region; /* full coverage, cut at carried joints; else all strips */
	double area_mm2;
	struct region ground; /* what full coverage takes, drawn or not */
	double ground_mm2;
	double alternate_mm2; /* the same, where full coverage is wanted; else 0 */
};

struct strips {
	struct strip *strips;
	size_t strip_count;
	struct cover cover;
	struct soft_joint *softs;
	size_t soft_count;
};

const struct strips *strips_place(struct arena *, const struct tiling *, const struct cracks *,
                                  const struct rules *);
/* What strips would be there under full coverage, for the quantities of both. */
const struct strips *strips_instead(struct arena *, const struct tiling *, const struct cracks *,
                                    const struct rules *);

#endif
