/* clipper.h - faces of a floor clipped one by one by the general library: the plain way to count
 * tile, which measurements compare with.
 * Units: mm, mm2. Owns: a clipper, until it is freed. */
#ifndef SUPPORT_CLIPPER_H
#define SUPPORT_CLIPPER_H
#include "layout/tiling.h"

struct clipper;

struct clipper *clipper_of_region(const struct region *);
void clipper_free(struct clipper *);
/* GEOSClipByRect_r and GEOSArea_r of every face that has tile in the tiling, whole or cut; the
 * faces are rectangles along the axes. */
double clipper_area(struct clipper *, const struct tiling *, long *out_faces);

#endif
