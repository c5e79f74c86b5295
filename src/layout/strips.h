/* strips.h - membrane over isolated cracks: straight pieces a person cuts, and their union.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C1, E-C2. */
#ifndef LAYOUT_STRIPS_H
#define LAYOUT_STRIPS_H
#include "layout/cracks.h"

struct strip_piece {
	struct ring outline;  /* clipped to the ground it lies on */
	double length, wide;  /* as cut: whole inches or 25 mm, or a roll width */
	double lap;           /* over the piece laid before it; 0 for the first */
	int order, roll;      /* from 1 */
};

struct strip {
	const char *id;       /* CRACK.strip, of the group's first crack */
	size_t group;
	const char **cracks;  /* ids of all cracks it isolates */
	size_t crack_count;
	double width, length; /* widest piece; sum of the pieces' lengths less laps */
	double half_width;    /* half of max(maker's strip, 3 tile widths) */
	double overrun;       /* past an end in the field */
	bool pending;
	struct region region; /* union of the pieces */
	struct strip_piece *pieces;
	size_t piece_count;
};

/* Full coverage, or what partial covers. */
struct cover {
	const struct plan_membrane *membrane; /* NULL: no membrane over this lay */
	bool is_full;         /* as drawn and counted */
	bool full_wanted;     /* full coverage waits for approval: the alternate */
	struct region region; /* of full coverage, cut at carried joints */
	double area_mm2, alternate_mm2;
};

/* A joint that lies on the tile's joints: addresses first, coordinates derived. */
struct soft_joint {
	const char *id;       /* CRACK.left, CRACK.right, CRACK.side.3 … */
	size_t group;
	const char *side;     /* left, right, or a number for branched groups */
	struct network_place *places; /* edges walked, in order; empty where `uses` is set */
	bool *reversed;
	size_t place_count;
	size_t panel;
	struct line line;     /* with the first and last edge cut at the field's border */
	double length, turns; /* turns in quarter turns */
	double cost;
	const char *uses;     /* id of the carried or perimeter joint that serves this side */
	const char *ends;     /* ids of what its two ends meet, by a blank: "south J1" */
	long settled;         /* directed edges settled by the search */
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

#endif
