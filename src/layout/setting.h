/* setting.h - the passes that settle where the tile of one field lies, before any is counted.
 * Owns: arena. */
#ifndef LAYOUT_SETTING_H
#define LAYOUT_SETTING_H
#include "layout/movement.h"

struct setting {
	const struct field *field;
	const struct module *module;
	const struct position *position; /* its cuts as the field joints leave them */
	const struct movement *movement;
};

struct setting setting_place(struct arena *, const struct field *, const struct rules *);
/* The same from a position on. */
struct setting setting_from(struct arena *, const struct field *, const struct module *,
                            const struct position *, const struct rules *);

#endif
