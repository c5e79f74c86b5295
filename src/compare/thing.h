/* thing.h - what a sheet can show of a floor and a crew builds or finds: each with where it
 * lies and with what else can be seen of it.
 * Units: mm in plan axes. Owns: arena. */
#ifndef COMPARE_THING_H
#define COMPARE_THING_H
#include "base/array.h"
#include "compare/floor_state.h"
#include "compare/shape.h"

enum thing_kind {
	THING_WALL,
	THING_OBSTACLE,
	THING_DOORWAY,
	THING_CRACK,
	THING_SLAB_JOINT,
	THING_READING,
	THING_HOLD,
	THING_PIECE, /* of a strip */
	THING_COVER, /* full coverage */
	THING_TILE,
	THING_JOINT,
	THING_CONTROL,
	THING_FIRST_TILE,
	THING_KINDS
};
#define THING_BIT(kind) (1u << (kind))

struct thing {
	enum thing_kind kind;
	const char *id;
	const char *looks;    /* two things that look alike in one place are the same */
	struct shape shape;   /* a line or ring; of full coverage and tile nothing */
	struct region ground; /* of areas; else empty */
};

struct thing_list {
	ARRAY_OF(struct thing) list;
};

/* All but full coverage and tile, which are compared by ground: covers.h. */
struct thing_list things_of(struct arena *, const struct floor_state *);

#endif
