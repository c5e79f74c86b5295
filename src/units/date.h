/* date.h - calendar days, ISO 8601 (2026-04-06).
 * Units: days. By value; nothing is owned. */
#ifndef UNITS_DATE_H
#define UNITS_DATE_H
#include <stdbool.h>

/* `day` counts from 1970-01-01 plus 1 (proleptic Gregorian); 0: no date. */
struct date {
	int year, month, day_of_month;
	long day;
};

/* False unless `text` is exactly YYYY-MM-DD and names a day that exists. */
bool date_parse(const char *text, struct date *out_date);
/* Days from `from` to `to`; both must be dates. */
long date_days_between(struct date from, struct date to);
struct date date_from_day(long day);

#endif
