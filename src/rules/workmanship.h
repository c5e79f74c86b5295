/* workmanship.h - what a finished floor and its tile are held to.
 * Units: mm. By value; nothing fails. Source: R-W13 to R-W15, R-W27, R-L05. */
#ifndef RULES_WORKMANSHIP_H
#define RULES_WORKMANSHIP_H
#include "rules/rules.h"

/* How far edges of neighbouring tile may differ in height. */
double workmanship_lippage(const struct rules *, double joint, double warpage);
/* How far sides of one lot of rectified tile may differ, largest less smallest. */
double workmanship_spread(const struct rules *, double side);
/* Air that the shroud of a hand grinder takes, in cubic feet a minute; wheel in inches. */
double workmanship_air_cfm(const struct rules *, double wheel_inches);

#endif
