/* corridor.h - where a soft joint may run: tile joints over the strip, clear of crossed tile
 * and of the crack.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_CORRIDOR_H
#define LAYOUT_CORRIDOR_H
#include "geometry/segment.h"
#include "layout/place_map.h"
#include "layout/tiling.h"

struct corridor {
	struct arena *arena;
	const struct tiling *tiling;
	size_t panel;
	struct region domain;     /* the panel, less holds */
	struct region ground;     /* the strip on it, with the border of the crossed cells */
	struct place_map crossed; /* cells that no joint may run through, holes filled */
	struct segment *bars;     /* cracks and their prolongations: not to be touched */
	size_t bar_count;
	struct place_map known; /* verdicts given */
};

struct corridor corridor_in(struct arena *, const struct tiling *, size_t panel,
                            struct region domain, struct region ground);
/* Closes the inside of the union of the tiles' cells; those of other panels are left out. */
void corridor_close_tiles(struct corridor *, const struct tile_ref *, size_t count);
void corridor_close_line(struct corridor *, struct line);

/* True where a stretch of the edge at a place may be walked. */
bool corridor_is_free(struct corridor *, struct network_place, struct segment stretch);
/* The same for the whole edge, remembered; `context` is the corridor. */
bool corridor_is_open(void *context, struct network_place);
struct segment corridor_segment(const struct corridor *, struct network_place);

#endif
