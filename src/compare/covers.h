/* covers.h - ground on which tile, or full coverage, lies otherwise in one floor than in another.
 * Units: mm in plan axes. Owns: arena. Ground narrower than a setter can see is none. */
#ifndef COMPARE_COVERS_H
#define COMPARE_COVERS_H
#include "compare/floor_state.h"

/* Where there is tile in one of them alone, or its joints lie elsewhere. */
struct region covers_tile_changed(struct arena *, const struct floor_state *before,
                                  const struct floor_state *after);
/* Where one of them alone has full coverage, or of another membrane. */
struct region covers_membrane_changed(struct arena *, const struct floor_state *before,
                                      const struct floor_state *after);

#endif
