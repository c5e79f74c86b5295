/* strip_corners.h - corners of strips that lie askew to the control lines: a letter each on
 * the drawing, and a table of their distances from the two lines.
 * Units: mm of the lay's own axes. Owns: arena. Source: common practice.
 * Corners of strips square to the lines are running dimensions instead (crew_marks.h). */
#ifndef SHEETS_STRIP_CORNERS_H
#define SHEETS_STRIP_CORNERS_H
#include "sheets/lay_view.h"
#include "sheets/notes.h"

struct strip_corner {
	const char *letter;
	const char *strip; /* id */
	struct point at;
};

struct strip_corners {
	ARRAY_OF(struct strip_corner) list;
};

/* Outline without the corners that a strip laid straight past them would not miss. */
struct ring strip_outline_blunted(struct arena *, struct ring);
/* True where the strip's corners are read off the table; false: off running dimensions. */
bool strip_is_askew(struct arena *, const struct lay_view *, const struct strip *);
/* Of all strips of the room, or of those that are askew: what of them is named here. A corner
 * has the same letter on every sheet of the set. */
struct strip_corners strip_corners_find(struct arena *, const struct placed *,
                                        const struct lay_view *, bool all);
/* The letters, at their corners. */
void strip_corners_mark(struct sheet *, const struct lay_view *, const struct strip_corners *);
/* The table; nothing where there is no corner or not both control lines. */
void strip_corners_note(struct notes *, const struct lay_view *, const struct strip_corners *);

#endif
