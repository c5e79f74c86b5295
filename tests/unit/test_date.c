#include "support/program.h"

#include <stdio.h>

#include "units/date.h"

static void test_reads_days(void **state)
{
	(void)state;
	struct date date;
	assert_true(date_parse("1970-01-01", &date));
	assert_int_equal(date.day, 1);
	assert_true(date_parse("2000-02-29", &date));
	assert_int_equal(date.year, 2000);
	assert_int_equal(date.month, 2);
	assert_int_equal(date.day_of_month, 29);
	/* 30 years of 365 days, 7 leap days (72 to 96), 31 days of January, 29 of February. */
	assert_int_equal(date.day, 30 * 365 + 7 + 31 + 29);
}

static void test_counts_between(void **state)
{
	(void)state;
	struct date poured, starts;
	assert_true(date_parse("2025-11-10", &poured));
	assert_true(date_parse("2026-04-06", &starts));
	assert_int_equal(date_days_between(poured, starts), 20 + 31 + 31 + 28 + 31 + 6);
	assert_int_equal(date_days_between(starts, poured), -147);
	assert_true(date_parse("1900-03-01", &poured));
	assert_true(date_parse("1900-02-28", &starts));
	assert_int_equal(date_days_between(starts, poured), 1);
}

/* Each day from 1900 to 2110 is one after the other, and is read back. */
static void test_every_day(void **state)
{
	(void)state;
	for (long day = -25566; day < 51500; day++) {
		struct date date = date_from_day(day), read;
		char text[40];
		snprintf(text, sizeof text, "%04d-%02d-%02d", date.year, date.month,
		         date.day_of_month);
		assert_true(date_parse(text, &read));
		assert_int_equal(read.day, day);
	}
}

static void test_refuses(void **state)
{
	(void)state;
	static const char *const texts[] = {
		"",           "2026",        "2026-04",
		"2026-4-6",   "2026-04-06 ", " 2026-04-06",
		"2026-13-01", "2026-00-01",  "2026-01-00",
		"2026-02-29", "2100-02-29",  "2026-04-31",
		"06-04-2026", "2026/04/06",  "2026-04-06T",
		"1899-12-31", "20260406",    "-026-04-06",
	};
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		struct date date = {.day = 77};
		if (date_parse(texts[i], &date))
			print_error("\"%s\" was read\n", texts[i]);
		assert_int_equal(date.day, 77);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_reads_days),
		cmocka_unit_test(test_counts_between),
		cmocka_unit_test(test_every_day),
		cmocka_unit_test(test_refuses),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
