/* corridor.h - where a soft joint may run: tile joints over the strip, clear of crossed tile
 * and of the crack.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_CORRIDOR_H
#define LAYOUT_CORRIDOR_H
#include "base/array.h"
#include "geometry/segment.h"
#include "layout/place_map.h"
#include "layout/tile_joint.h"

/* Lines that no joint may cross or touch. */
struct corridor_bars {
	ARRAY_OF(struct segment) segments;
};

struct corridor {
	struct arena *arena;
	const struct tiling *tiling;
	size_t panel;
	struct region domain; /* the panel, less holds */
	struct region ground; /* the strip on it, with the border of the crossed cells */
	struct region beside; /* of the ground, within one tile of the crack */
	struct region clear_ground, clear_beside; /* the same, clear of the crossed tile */
	struct place_map crossed;  /* tiles that no joint may run through, holes filled */
	struct corridor_bars bars; /* cracks and their prolongations, as far as they are near */
	const struct corridor_bars *side; /* of the side that is walked; NULL: none */
	struct place_map known;           /* verdicts given, the side's bars apart */
};

struct corridor corridor_in(struct arena *, const struct tiling *, size_t panel,
                            struct region domain, struct region ground);
/* Closes the inside of the union of the tiles' cells; those of other panels are left out. */
void corridor_close_tiles(struct corridor *, const struct tile_ref *, size_t count);
void corridor_close_line(struct corridor *, struct line);
/* Adds the line to bars. */
void corridor_bars_add(struct arena *, struct corridor_bars *, struct line);

/* How far inside the border the outermost tile may end: what is left is no tile. */
double corridor_rim(const struct tiling *);
/* True where a stretch of the edge at a place may be walked. */
bool corridor_is_free(const struct corridor *, struct network_place, struct segment stretch);
/* The same for the whole edge, remembered; `context` is the corridor. */
bool corridor_is_open(void *context, struct network_place);
struct segment corridor_segment(const struct corridor *, struct network_place);

#endif
