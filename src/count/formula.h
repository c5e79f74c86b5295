/* formula.h - the published formulas of the count.
 * Units: mm, mm2, ml. By value; nothing fails. Source: docs/sources.md#quantities. */
#ifndef COUNT_FORMULA_H
#define COUNT_FORMULA_H
#include "pattern/module.h"

/* Share of a floor that is joint, by the exact module: 1 - L W / ((L + J)(W + J)) for one
 * size of rectangle, and the like for any pattern. Source: R-Q01. */
double formula_joint_share(const struct module *);
/* Volume of a layer of any area. Source: R-Q18 (1604.17 sq ft to the gallon and mil). */
double formula_layer_ml(double area_mm2, double thick_mm);
/* Volume of sealant in a joint. Source: R-Q25, R-Q29. */
double formula_sealant_ml(double length, double width, double depth);
/* Diameter of the rod in a joint: `oversize` more, or from `wide_from` on a share more.
 * Source: R-Q31, R-Q32. */
struct formula_rod {
	double oversize, wide_from, wide_share;
};
double formula_rod_diameter(double width, struct formula_rod);

#endif
