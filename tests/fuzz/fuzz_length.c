/* fuzz_length.c - any text as a value with a unit; a length that was read prints as one that
 * reads the same, within the step it is printed to. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "units/date.h"
#include "units/length.h"
#include "units/number.h"
#include "units/quantity.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void check(bool is_true)
{
	if (!is_true)
		abort();
}

static void print_and_read(struct arena *arena, int64_t nm)
{
	const double step_mm = 25.4 / 16;
	int64_t again;
	const char *wrong;
	if (fabs(length_mm(nm)) > 1e9)
		return;
	const char *text = length_text(arena, length_mm(nm), true);
	check(length_parse(text, LENGTH_MM, &again, &wrong));
	check(fabs(length_mm(again) - length_mm(nm)) <= step_mm / 2 + 1e-6);
	text = length_text(arena, length_mm(nm), false);
	check(length_parse(text, LENGTH_IN, &again, &wrong));
	check(fabs(length_mm(again) - length_mm(nm)) <= 0.5 + 1e-6);
}

static void read_others(const char *text)
{
	double value;
	struct share share;
	struct money money;
	struct date date;
	if (number_parse(text, &value))
		check(isfinite(value));
	if (share_parse(text, &share))
		check(share.den > 0 && isfinite(share_value(share)));
	if (date_parse(text, &date))
		check(date_from_day(date.day).day_of_month == date.day_of_month);
	(void)money_parse(text, &money);
	(void)angle_parse(text, &value);
	(void)temperature_parse(text, &value);
	(void)mass_parse(text, &value);
	(void)volume_parse(text, &value);
	(void)density_parse(text, &value);
	(void)strength_parse(text, &value);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct arena *arena = arena_new();
	const char *text = arena_strndup(arena, (const char *)data, size);
	for (int unit = LENGTH_MM; unit <= LENGTH_FT; unit++) {
		int64_t nm = 0;
		const char *wrong = NULL;
		if (length_parse(text, (enum length_unit)unit, &nm, &wrong))
			print_and_read(arena, nm);
		else
			check(wrong != NULL);
	}
	read_others(text);
	arena_free(arena);
	return 0;
}
