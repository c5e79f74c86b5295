#include "count/formula.h"

#include "geometry/tolerance.h"

static const double MM3_PER_ML = 1000;

double formula_joint_share(const struct module *module)
{
	double faces = 0, period = point_cross(module->a, module->b);
	for (size_t i = 0; i < module->face_count; i++)
		faces += module->faces[i].area_mm2;
	return 1 - faces / period;
}

double formula_layer_ml(double area_mm2, double thick_mm)
{
	return area_mm2 * thick_mm / MM3_PER_ML;
}

double formula_sealant_ml(double length, double width, double depth)
{
	return length * width * depth / MM3_PER_ML;
}

double formula_rod_diameter(double width, struct formula_rod rod)
{
	if (width < rod.wide_from - TOLERANCE_SAME)
		return width + rod.oversize;
	return width * (1 + rod.wide_share);
}
