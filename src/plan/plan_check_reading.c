/* Readings: the value by its kind, and the place where it was taken. */
#include <string.h>

#include "plan/plan_build.h"

static bool read_humidity(const struct plan_build *b, struct plan_reading *reading)
{
	struct share share;
	(void)b;
	if (!share_parse(reading->value, &share))
		return false;
	reading->humidity_share = share_value(share);
	return reading->humidity_share <= 1;
}

static bool read_emission(const struct plan_build *b, struct plan_reading *reading)
{
	(void)b;
	return mass_parse(reading->value, &reading->emission_kg);
}

static bool read_deviation(const struct plan_build *b, struct plan_reading *reading)
{
	const char *why;
	return length_parse(reading->value, b->reader.unit, &reading->deviation_nm, &why) &&
	       reading->deviation_nm >= 0;
}

static bool read_drop(const struct plan_build *b, struct plan_reading *reading)
{
	(void)b;
	reading->is_absorbed = strcmp(reading->value, "absorbed") == 0;
	return reading->is_absorbed || strcmp(reading->value, "beads") == 0;
}

/* By kind. */
static const struct {
	bool (*read)(const struct plan_build *, struct plan_reading *);
	const char *expected;
} VALUES[] = {
	[PLAN_READING_HUMIDITY] = {read_humidity, "a share such as 78%"},
	[PLAN_READING_EMISSION] = {read_emission, "a mass such as 4lb"},
	[PLAN_READING_FLATNESS] = {read_deviation, "a length such as 3/16in"},
	[PLAN_READING_DROP] = {read_drop, "absorbed or beads"},
};

static void check_value(struct plan_build *b, size_t built, struct plan_reading *reading)
{
	const struct plan_built *at = &b->built.items[built];
	if (!plan_is_sound(at, "kind") || !plan_is_sound(at, "value") ||
	    VALUES[reading->kind].read(b, reading))
		return;
	plan_fault(b, built, plan_line_of(at, "value"),
	           arena_printf(b->arena, "<reading> value=\"%s\"; expected %s", reading->value,
	                        VALUES[reading->kind].expected));
}

void plan_check_reading(struct plan_build *b, size_t built)
{
	static const char *const PLACE[] = {"x", "y", "wall", "along", "out"};
	const struct plan_built *at = &b->built.items[built];
	struct plan_reading *reading = at->object;
	check_value(b, built, reading);
	for (size_t i = 0; i < sizeof PLACE / sizeof *PLACE; i++)
		reading->has_at = reading->has_at || plan_is_written(at, PLACE[i]);
	reading->at.line = at->node->line;
	reading->at.on_wall = plan_is_written(at, "wall");
	if (reading->has_at)
		plan_check_place(b, built);
}
