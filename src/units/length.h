/* length.h - lengths as the trade writes them, exact.
 * Units: whole nanometres; 1 in = 25.4 mm, so 1/64 in is 396,875 nm and nothing is rounded. */
#ifndef UNITS_LENGTH_H
#define UNITS_LENGTH_H
#include <stdbool.h>
#include <stdint.h>

#include "base/strbuf.h"

/* Exact by definition. */
#define LENGTH_MM_PER_INCH 25.4
#define LENGTH_MM_PER_FOOT 304.8

enum length_unit { LENGTH_MM, LENGTH_M, LENGTH_IN, LENGTH_FT };

/* Reads every form of docs/floor-format.md#length; a bare decimal is in `unit`. False: not a
 * length; then `*out_wrong` says in words what is wrong with it. */
bool length_parse(const char *text, enum length_unit unit, int64_t *out_nm, const char **out_wrong);

static inline double length_mm(int64_t nm)
{
	return (double)nm / 1e6;
}

/* 12'-6 1/2": feet and inches from one foot up, inches below; to 1/denominator in, carried
 * right. Source: docs/sources.md#feet-inches. */
void length_add_feet_inches(struct strbuf *, double mm, int denominator);
/* 3823: whole millimetres, or with decimals. */
void length_add_mm(struct strbuf *, double mm, int decimals);
/* As the plan's unit writes it, to the printed step: 12'-6 1/2" or 3823 mm. */
const char *length_text(struct arena *, double mm, bool inches);

#endif
