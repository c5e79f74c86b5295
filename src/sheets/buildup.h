/* buildup.h - the layers of a floor at one joint, from the slab up: membrane or mat, mortar bed,
 * bond coat, tile, and the sealant in its joint; what is broken under it, and what lies beyond
 * a doorway; drawn into a section and named there.
 * Units: floor mm, y up from the surface of the slab. Owns: the draft's arena.
 * Source: the plan's own thicknesses; docs/sources.md#movement-joints for what fills a joint. */
#ifndef SHEETS_BUILDUP_H
#define SHEETS_BUILDUP_H
#include "sheets/section.h"

struct buildup {
	const struct draft *draft;
	const struct placed_lay *lay;
	const struct joint *joint;
	double tile, tile_wide, grout; /* thickness, the side across, the tile joint */
	double bond_coat, membrane;    /* membrane: 0 where there is none */
	double bed;                    /* a mortar bed on the membrane; else 0 */
	double top;                    /* surface of the tile */
	double crack;                  /* width of the crack that a soft joint serves; else 0 */
	bool is_filled, is_plain;      /* the crack: filled before it is bridged, or not */
	const struct site_slab_joint *below; /* that is carried up or relocated; NULL: none */
	double strip;                        /* half the width of a strip at a soft joint; else 0 */
	const struct site_doorway *doorway;  /* that the tile ends in; NULL: none */
	double beyond;                       /* surface of the floor beyond it; NAN: not known */
};

/* Without a membrane, until one of the next two lays it. */
struct buildup buildup_of(const struct draft *, const struct placed_lay *, const struct joint *);
/* One section shows both, whatever their cracks. */
bool buildup_is_alike(const struct buildup *, const struct buildup *);
void buildup_lay_membrane(struct buildup *);
void buildup_lay_cover(struct buildup *); /* where it covers all */
bool buildup_is_mat(const struct buildup *);
bool buildup_is_bed(const struct buildup *);

/* The membrane from `from` to `to`: a sheet or film, or a mat whose studs stand in its coat. */
void buildup_add_membrane(struct section *, const struct buildup *, double from, double to);
/* Bed, bond coat and tile from `from` to `to`, the first tile whole from the end that is `at`. */
void buildup_add_tile(struct section *, const struct buildup *, double from, double to, double at);
/* Sealant over its back-up, from `from` to `to`; and how deep both are. */
double buildup_seal_depth(const struct buildup *);
void buildup_add_sealant(struct section *, const struct buildup *, double from, double to);

/* Names of tile, bond coat, bed and slab, at `x`. */
void buildup_call_floor(struct section *, const struct buildup *, double x);
/* What lies on the slab at `x`, and what becomes of it: `how`, a key. */
void buildup_call_membrane(struct section *, const struct buildup *, double x, const char *how);
/* A width as sheets print it. */
const char *buildup_width(const struct buildup *, double mm);

#endif
