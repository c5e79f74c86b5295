#include "count/mortar.h"

#include <string.h>

#include "units/length.h"
#include "units/number.h"
#include "units/quantity.h"

/* Small, medium and large notches, and what a bag covers under each. */
enum notch { NOTCH_SMALL, NOTCH_MEDIUM, NOTCH_LARGE };

double mortar_notch(const char *trowel, bool inches)
{
	int64_t nm;
	const char *why, *last = trowel;
	for (const char *at = trowel; at != NULL && (at = strpbrk(at, "xX")) != NULL;)
		last = ++at;
	if (last == NULL || !length_parse(last, inches ? LENGTH_IN : LENGTH_MM, &nm, &why))
		return 0;
	return length_mm(nm);
}

static enum notch notch_of_depth(double depth, const struct rules *rules)
{
	if (number_order(depth, rules_figure(rules, FIGURE_MORTAR_NOTCH_SMALL)) <= 0)
		return NOTCH_SMALL;
	if (number_order(depth, rules_figure(rules, FIGURE_MORTAR_NOTCH_MEDIUM)) <= 0)
		return NOTCH_MEDIUM;
	return NOTCH_LARGE;
}

static enum notch notch_of_tile(const struct placed_lay *lay, const struct rules *rules)
{
	double side = lay->module->tile_long + lay->module->joint;
	if (number_order(side, rules_figure(rules, FIGURE_LARGE_TILE_SIDE)) >= 0)
		return NOTCH_LARGE;
	if (number_order(lay->module->tile_long, rules_figure(rules, FIGURE_MORTAR_SMALL_TILE)) > 0)
		return NOTCH_MEDIUM;
	return NOTCH_SMALL;
}

struct mortar_cover mortar_cover(const struct placed_lay *lay, const struct plan_mortar *mortar,
                                 const struct rules *rules, bool inches)
{
	static const enum figure covers[] = {
		[NOTCH_SMALL] = FIGURE_MORTAR_COVERS_SMALL_SQFT,
		[NOTCH_MEDIUM] = FIGURE_MORTAR_COVERS_MEDIUM_SQFT,
		[NOTCH_LARGE] = FIGURE_MORTAR_COVERS_LARGE_SQFT,
	};
	const double mm2_per_m2 = 1e6;
	if (mortar->covers_m2 > 0)
		return (struct mortar_cover){mortar->covers_m2 * mm2_per_m2, MORTAR_BY_PLAN};
	double depth = mortar_notch(mortar->trowel, inches);
	enum notch notch = depth > 0 ? notch_of_depth(depth, rules) : notch_of_tile(lay, rules);
	double sqft = rules_figure(rules, covers[notch]);
	return (struct mortar_cover){sqft * QUANTITY_M2_PER_SQFT * mm2_per_m2,
	                             depth > 0 ? MORTAR_BY_TROWEL : MORTAR_BY_TILE};
}
