/* marks.h - which faces of a pattern a line comes near.
 * The cost is one mark a face touched: it grows with the line's length and not with the floor.
 * Units: mm in the lay's own axes. Owns: arena. */
#ifndef LAYOUT_MARKS_H
#define LAYOUT_MARKS_H
#include "pattern/module.h"

/* Every face within `reach` of the line, and some farther ones: what is met is the face's box
 * in the axes of the rows. By address, each once. */
struct address *marks_near_line(struct arena *, const struct module *, struct point position,
                                struct line, double reach, size_t *out_count);

#endif
