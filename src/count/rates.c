#include "count/rates.h"

#include <string.h>

#define ONE(a)                     \
	{                          \
		{PLAN_RATE_##a}, 1 \
	}
#define TWO(a, b)                                 \
	{                                         \
		{PLAN_RATE_##a, PLAN_RATE_##b}, 2 \
	}

struct rate_words rates_words(enum count_kind kind)
{
	static const struct rate_words words[COUNT_KIND_COUNT] = {
		[COUNT_TILE_LAID] = ONE(TILE),
		[COUNT_TILE_BOUGHT] = ONE(TILE),
		[COUNT_TILE_AREA] = ONE(TILE),
		[COUNT_TILE_BOX] = ONE(TILE),
		[COUNT_TILE_CUT] = ONE(CUTTING),
		[COUNT_CUT_STRAIGHT] = ONE(CUTTING),
		[COUNT_CUT_TAPER] = ONE(CUTTING),
		[COUNT_CUT_NOTCH] = ONE(CUTTING),
		[COUNT_CUT_HOLE] = ONE(CUTTING),
		[COUNT_PATCH] = ONE(PATCH),
		[COUNT_PRIMER] = ONE(PRIMER),
		[COUNT_STRIP] = TWO(STRIP, MEMBRANE),
		[COUNT_STRIP_PENDING] = TWO(STRIP, MEMBRANE),
		[COUNT_STRIP_LENGTH] = ONE(STRIP),
		[COUNT_MEMBRANE_FULL] = ONE(MEMBRANE),
		[COUNT_MEMBRANE_PAIL] = ONE(MEMBRANE),
		[COUNT_MEMBRANE_ROLL] = ONE(MEMBRANE),
		[COUNT_FULL_AREA] = ONE(MEMBRANE),
		[COUNT_FULL_PAIL] = ONE(MEMBRANE),
		[COUNT_FULL_ROLL] = ONE(MEMBRANE),
		[COUNT_PARTIAL_STRIP] = TWO(STRIP, MEMBRANE),
		[COUNT_PARTIAL_LENGTH] = ONE(STRIP),
		[COUNT_PARTIAL_PAIL] = ONE(MEMBRANE),
		[COUNT_PARTIAL_ROLL] = ONE(MEMBRANE),
		[COUNT_MORTAR] = ONE(MORTAR),
		[COUNT_MORTAR_BAG] = ONE(MORTAR),
		[COUNT_GROUT_AREA] = ONE(GROUT),
		[COUNT_GROUT_BAG] = ONE(GROUT),
		[COUNT_JOINT_SOFT] = ONE(SEALANT),
		[COUNT_JOINT_MOVEMENT] = ONE(SEALANT),
		[COUNT_JOINT_CARRIED] = ONE(SEALANT),
		[COUNT_JOINT_PERIMETER] = TWO(PERIMETER, SEALANT),
		[COUNT_JOINT_PERIMETER_OPEN] = ONE(PERIMETER),
		[COUNT_SEALANT_TUBE] = ONE(SEALANT),
		[COUNT_ROD] = ONE(ROD),
		[COUNT_TAPE] = ONE(ROD),
		[COUNT_LABOUR] = ONE(LABOUR),
		[COUNT_FULL_LABOUR] = ONE(LABOUR),
		[COUNT_PARTIAL_LABOUR] = ONE(LABOUR),
	};
	return words[kind];
}

const char *rates_per_unit(enum plan_per per)
{
	static const char *const units[] = {
		[PLAN_PER_M2] = "m2",   [PLAN_PER_SQFT] = "sqft", [PLAN_PER_M] = "m",
		[PLAN_PER_FT] = "ft",   [PLAN_PER_EACH] = "each", [PLAN_PER_BAG] = "bag",
		[PLAN_PER_BOX] = "box", [PLAN_PER_HOUR] = "hour",
	};
	return units[per];
}

const char *rates_word(enum plan_rate_word word)
{
	static const char *const words[] = {
		[PLAN_RATE_TILE] = "tile",       [PLAN_RATE_MEMBRANE] = "membrane",
		[PLAN_RATE_STRIP] = "strip",     [PLAN_RATE_PATCH] = "patch",
		[PLAN_RATE_PRIMER] = "primer",   [PLAN_RATE_MORTAR] = "mortar",
		[PLAN_RATE_GROUT] = "grout",     [PLAN_RATE_SEALANT] = "sealant",
		[PLAN_RATE_ROD] = "rod",         [PLAN_RATE_PERIMETER] = "perimeter",
		[PLAN_RATE_CUTTING] = "cutting", [PLAN_RATE_LABOUR] = "labour",
	};
	return words[word];
}

/* Exact by definition: a foot is 0.3048 m. */
static const struct {
	const char *row, *rate;
	struct decimal_factor factor;
} conversions[] = {
	{"ft", "m", {3048, 10000}},
	{"m", "ft", {10000, 3048}},
	{"sqft", "m2", {9290304, 100000000}},
	{"m2", "sqft", {100000000, 9290304}},
};

static bool units_meet(const char *row, const char *rate, struct decimal_factor *out_factor)
{
	*out_factor = (struct decimal_factor){1, 1};
	if (strcmp(row, rate) == 0)
		return true;
	for (size_t i = 0; i < sizeof conversions / sizeof conversions[0]; i++)
		if (strcmp(conversions[i].row, row) == 0 &&
		    strcmp(conversions[i].rate, rate) == 0) {
			*out_factor = conversions[i].factor;
			return true;
		}
	return false;
}

static const struct plan_rate *find_by_element(const struct plan_rates *rates,
                                               const struct count_row *row,
                                               struct decimal_factor *out_factor)
{
	for (size_t i = 0; row->element != NULL && i < rates->rate_count; i++) {
		const struct plan_rate *rate = &rates->rates[i];
		if (rate->of.element.id != NULL && strcmp(rate->of.element.id, row->element) == 0 &&
		    units_meet(row->unit, rates_per_unit(rate->per), out_factor))
			return rate;
	}
	return NULL;
}

const struct plan_rate *rates_find(const struct plan_rates *rates, const struct count_row *row,
                                   struct decimal_factor *out_factor)
{
	struct rate_words words = rates_words(row->kind);
	if (words.count == 0)
		return NULL;
	const struct plan_rate *own = find_by_element(rates, row, out_factor);
	if (own != NULL)
		return own;
	for (int w = 0; w < words.count; w++)
		for (size_t i = 0; i < rates->rate_count; i++) {
			const struct plan_rate *rate = &rates->rates[i];
			if (rate->of.element.id == NULL && rate->of.word == words.words[w] &&
			    units_meet(row->unit, rates_per_unit(rate->per), out_factor))
				return rate;
		}
	return NULL;
}
