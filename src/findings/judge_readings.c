/* judge_readings.c - what was measured on the slab: moisture, flatness, whether it drinks; and
 * whether that was done often enough. */
#include <math.h>

#include "findings/judge.h"
#include "units/length.h"
#include "units/number.h"

static struct point middle_of(const struct site_room *room)
{
	struct box box = ring_box(room->outline);
	return (struct point){(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2};
}

/* ---- what a reading speaks for ---- */

/* Laid rooms that a reading holds for: its own, or all. */
static bool speaks_for(const struct site_reading *reading, const struct site_room *room)
{
	return reading->room == NULL || reading->room == room;
}

/* The strictest limit in the rooms the reading holds for: a membrane's own, where it states
 * one, in place of the table's. NAN: the reading is under no tile. */
static double moisture_limit(const struct judging *judging, const struct site_reading *reading,
                             double table_limit,
                             double (*of_membrane)(const struct plan_membrane *))
{
	const struct placed *placed = judging->placed;
	double limit = NAN;
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct field *field = placed->lays[i].field;
		for (size_t r = 0; r < field->room_count; r++) {
			const struct plan_membrane *membrane =
				plan_membrane_over(placed->site->plan, field->rooms[r]->plan);
			bool has_own = membrane != NULL && !isnan(of_membrane(membrane));
			if (speaks_for(reading, field->rooms[r]))
				limit = fmin(limit, has_own ? of_membrane(membrane) : table_limit);
		}
	}
	return limit;
}

static double humidity_of_membrane(const struct plan_membrane *membrane)
{
	return membrane->max_humidity_share;
}

static double emission_of_membrane(const struct plan_membrane *membrane)
{
	return membrane->max_emission;
}

/* Any tile over the reading is large; `out_is_laid`: there is tile at all. */
static bool is_under_large(const struct judging *judging, const struct site_reading *reading,
                           bool *out_is_laid)
{
	const struct placed *placed = judging->placed;
	bool is_large = false;
	*out_is_laid = false;
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct field *field = placed->lays[i].field;
		for (size_t r = 0; r < field->room_count; r++) {
			if (!speaks_for(reading, field->rooms[r]))
				continue;
			*out_is_laid = true;
			is_large = is_large || judge_is_large(judging, &placed->lays[i]);
		}
	}
	return is_large;
}

/* ---- one reading ---- */

static struct raised raised_of_reading(const struct judging *judging, enum rule_id id,
                                       const struct site_reading *reading)
{
	const struct placed *placed = judging->placed;
	struct raised raised = {.rule = judge_rule(judging, id),
	                        .about = reading->id,
	                        .line = reading->plan->line,
	                        .at = reading->at};
	if (!reading->has_at && placed->site->room_count > 0)
		raised.at = middle_of(reading->room ? reading->room : &placed->site->rooms[0]);
	return raised;
}

static void judge_humidity(struct judging *judging, const struct site_reading *reading)
{
	struct raised raised = raised_of_reading(judging, RULE_SLAB_DAMP, reading);
	raised.measured = reading->plan->humidity_share;
	raised.limit = moisture_limit(judging, reading, raised.rule->limit, humidity_of_membrane);
	if (!isnan(raised.limit) && rule_is_raised_by(raised.rule, raised.measured, raised.limit))
		judge_plainly(judging, raised);
}

static void judge_emission(struct judging *judging, const struct site_reading *reading)
{
	struct raised raised = raised_of_reading(judging, RULE_SLAB_DAMP, reading);
	raised.measured = reading->plan->emission_kg;
	raised.limit = moisture_limit(judging, reading, judge_figure(judging, FIGURE_EMISSION_MOST),
	                              emission_of_membrane);
	raised.unit = "kg";
	raised.message = "finding.slab-damp.emission";
	if (!isnan(raised.limit) && rule_is_raised_by(raised.rule, raised.measured, raised.limit))
		judge_plainly(judging, raised);
}

/* What is printed of the longer straightedge holds under a shorter one too. */
static double flat_limit(const struct judging *judging, double edge, bool is_large)
{
	double short_edge = judge_figure(judging, is_large ? FIGURE_FLAT_SHORT_EDGE_LARGE
	                                                   : FIGURE_FLAT_SHORT_EDGE);
	if (number_order(edge, short_edge) <= 0)
		return judge_figure(judging, FIGURE_FLAT_SHORT);
	return judge_figure(judging, is_large ? FIGURE_FLAT_LONG_LARGE : FIGURE_FLAT_LONG);
}

static void judge_flatness(struct judging *judging, const struct site_reading *reading)
{
	struct raised raised = raised_of_reading(judging, RULE_SLAB_UNEVEN, reading);
	double edge = reading->plan->under_nm > 0 ? length_mm(reading->plan->under_nm)
	                                          : judge_figure(judging, FIGURE_FLAT_LONG_EDGE);
	bool is_laid, is_large = is_under_large(judging, reading, &is_laid);
	raised.measured = length_mm(reading->plan->deviation_nm);
	raised.limit = flat_limit(judging, edge, is_large);
	if (is_laid && rule_is_raised_by(raised.rule, raised.measured, raised.limit))
		judge_say(judging, raised, {"edge", judge_length(judging, edge)});
}

static void judge_drop(struct judging *judging, const struct site_reading *reading)
{
	bool is_laid;
	is_under_large(judging, reading, &is_laid);
	if (is_laid && !reading->plan->is_absorbed)
		judge_plainly(judging, raised_of_reading(judging, RULE_SLAB_SEALED, reading));
}

/* ---- how many ---- */

/* A kind of moisture reading on one slab: how many there are, and whether a membrane there
 * states a limit that they are to show kept. */
struct tally {
	enum plan_reading_kind kind;
	double (*of_membrane)(const struct plan_membrane *);
	const char *word;
};

static const struct tally TALLIES[] = {
	{PLAN_READING_HUMIDITY, humidity_of_membrane, "reading.humidity"},
	{PLAN_READING_EMISSION, emission_of_membrane, "reading.emission"},
};

static double count_readings(const struct site *site, const struct plan_slab *slab,
                             enum plan_reading_kind kind)
{
	double count = 0;
	for (size_t i = 0; i < site->reading_count; i++) {
		const struct site_reading *reading = &site->readings[i];
		if (reading->plan->kind == kind && (!reading->slab || reading->slab == slab))
			count++;
	}
	return count;
}

/* Ground on one slab that is to be tiled. */
struct laid {
	double area_mm2;
	const struct site_room *room; /* the first */
	bool has_limit;               /* a membrane there states one */
};

static struct laid laid_on(const struct placed *placed, const struct plan_slab *slab,
                           double (*of_membrane)(const struct plan_membrane *))
{
	struct laid laid = {0};
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct field *field = placed->lays[i].field;
		for (size_t r = 0; r < field->room_count; r++) {
			const struct site_room *room = field->rooms[r];
			const struct plan_membrane *membrane =
				plan_membrane_over(placed->site->plan, room->plan);
			if (!site_room_is_on(room, slab))
				continue;
			laid.room = laid.room != NULL ? laid.room : room;
			laid.has_limit |= membrane != NULL && !isnan(of_membrane(membrane));
			for (size_t p = 0; p < room->slab_part_count; p++)
				if (room->slab_parts[p].slab == slab)
					laid.area_mm2 += region_area(&room->slab_parts[p].ground);
		}
	}
	return laid;
}

/* One more than the rule's for each area begun beyond the first. */
static double readings_wanted(const struct judging *judging, double area_mm2)
{
	double areas = area_mm2 / judge_figure(judging, FIGURE_READING_AREA);
	double whole = floor(areas);
	double begun = number_order(areas, whole) > 0 ? whole + 1 : whole;
	return judge_rule(judging, RULE_READINGS_FEW)->limit + fmax(begun - 1, 0);
}

static void judge_count(struct judging *judging, const struct plan_slab *slab,
                        const struct tally *tally)
{
	const struct placed *placed = judging->placed;
	struct laid laid = laid_on(placed, slab, tally->of_membrane);
	double count = count_readings(placed->site, slab, tally->kind);
	double wanted = readings_wanted(judging, laid.area_mm2);
	const struct rule *rule = judge_rule(judging, RULE_READINGS_FEW);
	if (laid.room == NULL || (count == 0 && !laid.has_limit) ||
	    !rule_is_raised_by(rule, count, wanted))
		return;
	struct raised raised = {.rule = rule,
	                        .about = slab->id,
	                        .line = slab->line,
	                        .at = middle_of(laid.room),
	                        .measured = count,
	                        .limit = wanted};
	judge_say(judging, raised, {"kind", words_find(judging->say.words, tally->word)},
	          {"area", judge_area(judging, laid.area_mm2)});
}

void judge_readings(struct judging *judging)
{
	static void (*const judges[])(struct judging *, const struct site_reading *) = {
		[PLAN_READING_HUMIDITY] = judge_humidity,
		[PLAN_READING_EMISSION] = judge_emission,
		[PLAN_READING_FLATNESS] = judge_flatness,
		[PLAN_READING_DROP] = judge_drop,
	};
	const struct site *site = judging->placed->site;
	for (size_t i = 0; i < site->reading_count; i++)
		judges[site->readings[i].plan->kind](judging, &site->readings[i]);
	for (size_t s = 0; s < site->plan->slab_count; s++)
		for (size_t t = 0; t < sizeof TALLIES / sizeof TALLIES[0]; t++)
			judge_count(judging, &site->plan->slabs[s], &TALLIES[t]);
}
