#include "units/number.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { MOST_DECIMALS = 15 };

enum { LONGEST = 330 }; /* sign, 309 digits, point, 15 decimals */

/* printf rounds the exact binary value; only what stands between whole part and decimals is
 * the locale's, and it is not taken over. */
static void print_fixed(char out[LONGEST], double value, int decimals)
{
	char text[LONGEST + 16];
	int length = snprintf(text, sizeof text, "%.*f", decimals, fabs(value));
	size_t whole = strspn(text, "0123456789");
	const char *fraction = text + length - decimals;
	bool is_zero = strspn(text, "0") == whole && strspn(fraction, "0") == (size_t)decimals;
	snprintf(out, LONGEST, "%s%.*s%s%s", value < 0 && !is_zero ? "-" : "", (int)whole, text,
	         decimals ? "." : "", decimals ? fraction : "");
}

void number_add(struct strbuf *buf, double value, int decimals)
{
	char text[LONGEST];
	print_fixed(text, value, decimals);
	strbuf_add(buf, text);
}

void number_add_short(struct strbuf *buf, double value, int decimals)
{
	char text[LONGEST];
	print_fixed(text, value, decimals);
	if (strchr(text, '.')) {
		char *end = text + strlen(text);
		while (end[-1] == '0')
			*--end = '\0';
		if (end[-1] == '.')
			*--end = '\0';
	}
	strbuf_add(buf, text);
}

const char *number_text(struct arena *arena, double value, int decimals)
{
	struct strbuf buf = strbuf_in(arena);
	number_add(&buf, value, decimals);
	return buf.text;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

bool number_parse(const char *text, double *out_value)
{
	const char *at = text;
	double value = 0, scale = 1;
	bool negative = *at == '-', any = false;
	if (*at == '-' || *at == '+')
		at++;
	/* 2^53 holds 15 digits exactly; the quotient of two exact numbers is rounded once. */
	int digits = 0;
	for (; is_digit(*at); at++, any = true) {
		value = value * 10 + (*at - '0');
		digits += value > 0;
	}
	if (*at == '.') {
		at++;
		for (; is_digit(*at); at++, any = true) {
			if (digits >= MOST_DECIMALS)
				continue;
			value = value * 10 + (*at - '0');
			scale *= 10;
			digits += value > 0;
		}
	}
	if (!any || *at || digits > MOST_DECIMALS)
		return false;
	*out_value = (negative ? -value : value) / scale;
	return true;
}

int number_order(double a, double b)
{
	const double steps = 1e6;
	double first = round(a * steps), second = round(b * steps);
	return (first > second) - (first < second);
}
