#include "units/number.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { MOST_DECIMALS = 15 };

/* printf rounds the exact binary value half to even; C locale's point is all that the
 * locale could change, and it is replaced. */
static void print_fixed(char *out, size_t room, double value, int decimals)
{
	snprintf(out, room, "%.*f", decimals, value);
	for (char *c = out; *c; c++)
		if (*c == ',')
			*c = '.';
	bool is_zero = true;
	for (const char *c = out; *c; c++)
		is_zero = is_zero && strchr("-0.", *c);
	if (is_zero && out[0] == '-')
		memmove(out, out + 1, strlen(out));
}

void number_add(struct strbuf *buf, double value, int decimals)
{
	char text[400];
	print_fixed(text, sizeof text, value, decimals);
	strbuf_add(buf, text);
}

void number_add_short(struct strbuf *buf, double value, int decimals)
{
	char text[400];
	print_fixed(text, sizeof text, value, decimals);
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
	if (!any || *at || digits > MOST_DECIMALS + 1)
		return false;
	*out_value = (negative ? -value : value) / scale;
	return true;
}
