/* period_proof.h - whether a period fills the plane: its cells are as large as one step of the
 * lattice takes, and no two of all their copies overlap. In whole nanometres: exact.
 * By value; nothing is owned beyond scratch in the arena. Nothing fails. */
#ifndef PATTERN_PERIOD_PROOF_H
#define PATTERN_PERIOD_PROOF_H
#include "pattern/period.h"

enum period_fault {
	PERIOD_FILLS,    /* none */
	PERIOD_FLAT,     /* the steps are parallel */
	PERIOD_OVERLAPS, /* two tiles, or a tile and the joint of the next */
	PERIOD_GAPS,     /* no tile, and more than a joint */
};

struct period_proof {
	enum period_fault fault;
	size_t first, second; /* the cells on its two sides */
	int64_t x, y;         /* its lower left corner, from the first cell's own */
	int64_t size_nm;      /* how deep they overlap, how wide the gap is */
};

struct period_proof period_prove(struct arena *, const struct period *);

/* One size that, changed alone, lets the period of a lay fill the plane. */
enum period_side { PERIOD_LONG, PERIOD_WIDE, PERIOD_JOINT };
struct period_cure {
	enum period_side side;
	int tile; /* index into lay->tiles; of PERIOD_JOINT none */
	int64_t size_nm;
};

/* The first size near the stated one that does; the tile's sides before the joint. False:
 * no one size does. */
bool period_find_cure(struct arena *, const struct plan_lay *, struct period_proof,
                      struct period_cure *out_cure);

#endif
