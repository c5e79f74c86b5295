/* placed.h - the placed floor: everything the passes of the layout produced.
 * Findings, count, record and sheets read this and nothing else, so they cannot disagree.
 * Units: mm; each lay in its own axes (field->frame turns them back). Owns: arena. */
#ifndef LAYOUT_PLACED_H
#define LAYOUT_PLACED_H
#include "layout/controls.h"
#include "layout/joints.h"

struct placed_lay {
	const struct field *field;
	const struct module *module;
	const struct position *position;
	const struct movement *movement;
	const struct tiling *tiling;
	const struct cracks *cracks;
	const struct strips *strips;
	const struct joints *joints;
	const struct controls *controls;
};

struct placed {
	const struct site *site;
	const struct rules *rules;
	struct placed_lay *lays;
	size_t lay_count;
};

/* Runs the passes in order. Each takes const input and returns a new value. */
const struct placed *placed_from_site(struct arena *, const struct site *, const struct rules *);

#endif
