/* open_edge.h - edges along which the tile goes on into the next room: two rooms have them in
 * common.
 * Units: mm.
 * Fails: an open edge without its like in the other room; a room whose walls meet after its
 * corners were moved. */
#ifndef SITE_OPEN_EDGE_H
#define SITE_OPEN_EDGE_H
#include "site/build.h"

/* After all outlines. Where the two edges lie apart, within tolerance, the corners of the room
 * that comes later in the plan move to those of the earlier one. Between two lays the edges are
 * stop lines. */
void open_edge_join_all(struct build *);

#endif
