/* totals.h - sums over the placed floor that the count and the record both print.
 * Units: mm, mm2. By value; ids are borrowed. Fails: never. */
#ifndef COUNT_TOTALS_H
#define COUNT_TOTALS_H
#include "layout/placed.h"

/* Tile of one lay. What lies in holds is counted apart: it is not bought to be laid yet. */
struct tile_total {
	long whole, cut;           /* outside the holds */
	double tile_mm2;           /* of both */
	long held_whole, held_cut; /* inside */
	double held_mm2;
	double lost_mm2;           /* of the field, too narrow to be tile */
	double smallest_piece_mm2; /* of all cut pieces, held or not; 0: no tile is cut */
};

struct tile_total tile_total(const struct placed_lay *);

/* What becomes of a crack over all lays that it crosses. */
struct crack_total {
	bool is_placed; /* it crosses a lay */
	enum crack_state state;
	bool pending;
	const char *group; /* id of the first crack of its group */
};

struct crack_total crack_total(const struct placed *, const struct site_crack *);

/* soft, movement, carried, perimeter: the words of the record. */
const char *joint_kind_word(enum joint_kind);

#endif
