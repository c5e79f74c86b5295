/* program.h - what every cmocka program includes: cmocka itself and what it needs first,
 * and comparisons it lacks. */
#ifndef SUPPORT_PROGRAM_H
#define SUPPORT_PROGRAM_H
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Fails unless |a - b| <= tolerance; a number that is none always fails. */
#define assert_near(a, b, tolerance) near((a), (b), (tolerance), #a " near " #b, __FILE__, __LINE__)

static inline void near(double a, double b, double tolerance, const char *text, const char *file,
                        int line)
{
	double away = a > b ? a - b : b - a;
	if (away <= tolerance)
		return;
	print_error("%.12g and %.12g are %.3g apart, allowed are %.3g\n", a, b, away, tolerance);
	_assert_true(0, text, file, line);
}

#endif
