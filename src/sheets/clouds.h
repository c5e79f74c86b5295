/* clouds.h - what a sheet shows of a change, clouded.
 * Owns: the draft's arena. Nothing is done where the draft compares nothing. */
#ifndef SHEETS_CLOUDS_H
#define SHEETS_CLOUDS_H
#include "sheets/sheet.h"

/* What can be seen on a sheet, of the whole floor or of one room. */
struct cloud_scope {
	unsigned kinds;               /* set of THING_BITs */
	const struct site_room *room; /* NULL: all */
	const struct box *core;       /* of a floor in parts what is named here; NULL: all */
};

/* True where something in the scope has changed. */
bool clouds_any(const struct draft *, struct cloud_scope);
/* After list_finish, on a sheet that has a view. */
/* Before the labels are placed: they keep off where clouds will run. */
void clouds_reserve(struct sheet *, struct cloud_scope);
void clouds_draw(struct sheet *, struct cloud_scope);

#endif
