#include "units/date.h"

static bool is_leap(int year)
{
	return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

static int days_in_month(int year, int month)
{
	static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
	return days[month - 1] + (month == 2 && is_leap(year));
}

static long days_before_year(int year)
{
	long y = year - 1;
	return y * 365 + y / 4 - y / 100 + y / 400;
}

static long day_number(int year, int month, int day)
{
	long days = days_before_year(year) - days_before_year(1970) + day;
	for (int m = 1; m < month; m++)
		days += days_in_month(year, m);
	return days;
}

/* Reads `count` digits, or -1. */
static int digits(const char **at, int count)
{
	int value = 0;
	for (int i = 0; i < count; i++, ++*at) {
		if (**at < '0' || **at > '9')
			return -1;
		value = value * 10 + (**at - '0');
	}
	return value;
}

bool date_parse(const char *text, struct date *out_date)
{
	const char *at = text;
	int year = digits(&at, 4);
	if (year < 1900 || *at++ != '-')
		return false;
	int month = digits(&at, 2);
	if (month < 1 || month > 12 || *at++ != '-')
		return false;
	int day = digits(&at, 2);
	if (day < 1 || day > days_in_month(year, month) || *at)
		return false;
	*out_date = (struct date){year, month, day, day_number(year, month, day)};
	return true;
}

long date_days_between(struct date from, struct date to)
{
	return to.day - from.day;
}

struct date date_from_day(long day)
{
	/* A year that is not past the day's, then on to it. */
	int year = 1970 + (int)(day > 0 ? day / 366 : day / 365 - 1);
	struct date date = {.year = year, .month = 1, .day_of_month = 1, .day = day};
	while (day_number(date.year + 1, 1, 1) <= day)
		date.year++;
	while (date.month < 12 && day_number(date.year, date.month + 1, 1) <= day)
		date.month++;
	date.day_of_month = (int)(day - day_number(date.year, date.month, 1)) + 1;
	return date;
}
