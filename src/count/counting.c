#include "count/counting.h"

#include <math.h>
#include <string.h>

#include "units/length.h"
#include "units/number.h"
#include "units/quantity.h"

enum { MEASURE_DECIMALS = 2 };

/* What a measure is counted in, in metric plans and in those drawn in inches. */
struct measure {
	const char *metric, *inches;
	double per_metric, per_inches;
};

enum { LENGTH, AREA, VOLUME, LIQUID, MASS, MEASURES };
static const struct measure measures[MEASURES] = {
	[LENGTH] = {"m", "ft", 1000, LENGTH_MM_PER_FOOT},
	[AREA] = {"m2", "sqft", 1e6, LENGTH_MM_PER_FOOT *LENGTH_MM_PER_FOOT},
	[VOLUME] = {"ml", "floz", 1, QUANTITY_ML_PER_FLOZ},
	[LIQUID] = {"l", "gal", 1000, QUANTITY_ML_PER_GALLON},
	[MASS] = {"kg", "lb", 1, QUANTITY_KG_PER_LB},
};

static double rounded(double value, int decimals)
{
	double scale = 1;
	for (int i = 0; i < decimals; i++)
		scale *= 10;
	return (double)llround(value * scale) / scale;
}

const char *counting_how_key(struct counting *c, enum count_kind kind)
{
	return arena_printf(c->arena, "count.how.%s", count_kind_name(kind));
}

static struct count_row *add_row(struct counting *c, enum count_kind kind, const char *where)
{
	struct count_row *row = array_push(c->arena, &c->rows);
	*row = (struct count_row){
		.kind = kind,
		.what = count_kind_name(kind),
		.where = where,
		.unit = "each",
		.rate = "",
		.how = words_find(c->words, counting_how_key(c, kind)),
	};
	return row;
}

static struct count_row *add_measure(struct counting *c, enum count_kind kind, const char *where,
                                     int which, double value)
{
	const struct measure *measure = &measures[which];
	bool inches = c->inches;
	struct count_row *row = add_row(c, kind, where);
	row->amount = rounded(value / (inches ? measure->per_inches : measure->per_metric),
	                      MEASURE_DECIMALS);
	row->decimals = MEASURE_DECIMALS;
	row->unit = inches ? measure->inches : measure->metric;
	return row;
}

struct count_row *counting_number(struct counting *c, enum count_kind kind, const char *where,
                                  long number)
{
	if (number == 0)
		return NULL;
	struct count_row *row = add_row(c, kind, where);
	row->amount = (double)number;
	return row;
}

struct count_row *counting_length(struct counting *c, enum count_kind kind, const char *where,
                                  double mm)
{
	return add_measure(c, kind, where, LENGTH, mm);
}

struct count_row *counting_area(struct counting *c, enum count_kind kind, const char *where,
                                double mm2)
{
	return add_measure(c, kind, where, AREA, mm2);
}

struct count_row *counting_volume(struct counting *c, enum count_kind kind, const char *where,
                                  double ml)
{
	return add_measure(c, kind, where, VOLUME, ml);
}

struct count_row *counting_liquid(struct counting *c, enum count_kind kind, const char *where,
                                  double ml)
{
	return add_measure(c, kind, where, LIQUID, ml);
}

struct count_row *counting_mass(struct counting *c, enum count_kind kind, const char *where,
                                double kg)
{
	return add_measure(c, kind, where, MASS, kg);
}

struct count_row *counting_height(struct counting *c, enum count_kind kind, const char *where,
                                  double mm)
{
	bool inches = c->inches;
	struct count_row *row = add_row(c, kind, where);
	row->decimals = MEASURE_DECIMALS;
	row->amount = rounded(inches ? mm / LENGTH_MM_PER_INCH : mm, MEASURE_DECIMALS);
	row->unit = inches ? "in" : "mm";
	row->is_alone = true;
	return row;
}

struct count_row *counting_hours(struct counting *c, enum count_kind kind, const char *where,
                                 double hours)
{
	struct count_row *row = add_row(c, kind, where);
	row->amount = rounded(hours, MEASURE_DECIMALS);
	row->decimals = MEASURE_DECIMALS;
	row->unit = "hour";
	return row;
}

/* How much of the base unit one of a row's unit is. */
static double base_of(const char *unit)
{
	for (int m = 0; m < MEASURES; m++) {
		if (strcmp(measures[m].metric, unit) == 0)
			return measures[m].per_metric;
		if (strcmp(measures[m].inches, unit) == 0)
			return measures[m].per_inches;
	}
	return 1;
}

double counting_base(const struct count_row *row)
{
	return row->amount * base_of(row->unit);
}

double counting_sum(const struct counting *c, enum count_kind kind)
{
	double sum = 0;
	for (size_t i = 0; i < c->rows.count; i++)
		if (c->rows.items[i].kind == kind)
			sum += counting_base(&c->rows.items[i]);
	return sum;
}

struct count_row *counting_packages(struct counting *c, enum count_kind kind, const char *where,
                                    const char *unit, double amount, double waste, double each)
{
	/* Millionths, so that a last bit does not buy a bag. */
	double wanted = rounded(amount * (1 + waste) / each, 6);
	struct count_row *row = counting_number(c, kind, where, lround(ceil(wanted)));
	if (row == NULL)
		return NULL;
	row->unit = unit;
	row->is_total = strcmp(where, "total") == 0;
	return row;
}

const char *counting_rooms(struct counting *c, const struct field *field)
{
	struct strbuf ids = strbuf_in(c->arena);
	for (size_t i = 0; i < field->room_count; i++)
		strbuf_printf(&ids, "%s%s", i > 0 ? " " : "", field->rooms[i]->id);
	return ids.text;
}

const char *counting_in_room(struct counting *c, const struct field *field, size_t room,
                             const char *element)
{
	return arena_printf(c->arena, "%s %s", field->rooms[room]->id, element);
}

/* 1 1/4" becomes 1-1/4in, 13 mm becomes 13mm: no blank, no quote. */
void counting_size(struct counting *c, struct count_row *row, const char *size)
{
	struct strbuf what = strbuf_in(c->arena);
	strbuf_printf(&what, "%s-", row->what);
	for (const char *at = size; *at != '\0'; at++) {
		if (*at == '"')
			strbuf_add(&what, "in");
		else if (*at != ' ')
			strbuf_add_char(&what, *at);
		else if (c->inches)
			strbuf_add_char(&what, '-');
	}
	row->size = size;
	row->what = what.text;
}

double counting_figure(const struct counting *c, enum figure figure)
{
	return rules_figure(c->placed->rules, figure);
}

const char *counting_width(struct counting *c, double mm)
{
	struct strbuf text = strbuf_in(c->arena);
	if (c->inches) {
		length_add_feet_inches(&text, mm, 32);
		return text.text;
	}
	number_add_short(&text, mm, 1);
	strbuf_add(&text, " mm");
	return text.text;
}

static const char *measure_text(struct counting *c, int which, double value)
{
	enum { TEXT_DECIMALS = 1 };
	const struct measure *measure = &measures[which];
	bool inches = c->inches;
	const char *unit = inches ? measure->inches : measure->metric;
	struct strbuf text = strbuf_in(c->arena);
	number_add_short(&text, value / (inches ? measure->per_inches : measure->per_metric),
	                 TEXT_DECIMALS);
	strbuf_printf(&text, " %s", words_find(c->words, arena_printf(c->arena, "unit.%s", unit)));
	return text.text;
}

const char *counting_film(struct counting *c, double mm)
{
	bool inches = c->inches;
	struct strbuf text = strbuf_in(c->arena);
	number_add_short(&text, inches ? mm * 1000 / LENGTH_MM_PER_INCH : mm * 1000, 1);
	strbuf_add(&text, inches ? " mil" : " µm");
	return text.text;
}

const char *counting_area_text(struct counting *c, double mm2)
{
	return measure_text(c, AREA, mm2);
}

const char *counting_volume_text(struct counting *c, double ml)
{
	return measure_text(c, VOLUME, ml);
}

const char *counting_liquid_text(struct counting *c, double ml)
{
	return measure_text(c, LIQUID, ml);
}

const char *counting_mass_text(struct counting *c, double kg)
{
	return measure_text(c, MASS, kg);
}

const char *counting_percent(struct counting *c, double share)
{
	struct strbuf text = strbuf_in(c->arena);
	number_add_short(&text, share * 100, 1);
	strbuf_add(&text, " %");
	return text.text;
}
