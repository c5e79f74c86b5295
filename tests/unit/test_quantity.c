#include "support/program.h"

#include <math.h>

#include "units/quantity.h"

static void test_shares_are_exact(void **state)
{
	(void)state;
	const struct {
		const char *text;
		struct share share;
	} shares[] = {
		{"0.33333333", {33333333, 100000000}}, /* nine digits and no more */
		{"1/3", {1, 3}},
		{"0.33", {33, 100}},
		{"25%", {1, 4}},
		{"2/4", {1, 2}},
		{"1", {1, 1}},
		{"0", {0, 1}},
		{"12.5%", {1, 8}},
		{".5", {1, 2}},
		{"3/2", {3, 2}},
		{"100%", {1, 1}},
		{"1/500", {1, 500}},
		{"0%", {0, 1}},
	};
	for (size_t i = 0; i < sizeof shares / sizeof *shares; i++) {
		struct share share = {0, 0};
		assert_true(share_parse(shares[i].text, &share));
		assert_true(share.num == shares[i].share.num && share.den == shares[i].share.den);
	}
}

/* What a decimal stands for. */
static void test_shares_are_made_simple(void **state)
{
	(void)state;
	enum { MOST = 1000 };
	const struct {
		struct share written, meant;
	} rows[] = {
		{{3333, 10000}, {1, 3}},
		{{66667, 100000}, {2, 3}},
		{{142857, 1000000}, {1, 7}},
		{{1, 2}, {1, 2}},
		{{9999, 10000}, {999, 1000}},         /* 1 is none */
		{{123456789, 1000000000}, {10, 81}},  /* 0.1234567901 */
		{{314159265, 1000000000}, {71, 226}}, /* 0.3141592920 */
	};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct share share = share_simplest(rows[i].written, MOST);
		assert_true(share.num == rows[i].meant.num && share.den == rows[i].meant.den);
	}
}

static void test_money_is_exact(void **state)
{
	(void)state;
	struct money money;
	assert_true(money_parse("12.50", &money));
	assert_true(money.units == 1250 && money.decimals == 2);
	assert_true(money_parse("7", &money));
	assert_true(money.units == 7 && money.decimals == 0);
	assert_true(money_parse("0.004", &money));
	assert_true(money.units == 4 && money.decimals == 3);
}

typedef bool form(const char *text, double *out_value);

/* Conversions: exact definitions of the pound, the inch and the US gallon. */
static void test_units(void **state)
{
	(void)state;
	const struct {
		form *parse;
		const char *text;
		double value;
	} rows[] = {
		{angle_parse, "45", 45},
		{angle_parse, "45deg", 45},
		{angle_parse, "-12.5 deg", -12.5},
		{temperature_parse, "55F", 12.777777777777779},
		{temperature_parse, "32F", 0},
		{temperature_parse, "-40F", -40},
		{temperature_parse, "13C", 13},
		{temperature_parse, "-5.5C", -5.5},
		{mass_parse, "25kg", 25},
		{mass_parse, "50lb", 22.6796185},
		{volume_parse, "10.1floz", 298.69264858125},
		{volume_parse, "600ml", 600},
		{volume_parse, "5gal", 18927.05892},
		{density_parse, "1.6kg/L", 1.6},
		{density_parse, "98lb/ft3", 1.5698094},
		{strength_parse, "25MPa", 25},
		{strength_parse, "4000psi", 27.5790292},
	};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double value = NAN;
		assert_true(rows[i].parse(rows[i].text, &value));
		assert_near(value, rows[i].value, 1e-6);
	}
}

static void refuses(form *parse, const char *text)
{
	double value = 77;
	if (parse(text, &value))
		print_error("\"%s\" was read as %g\n", text, value);
	assert_true(value == 77);
}

static void test_refuses(void **state)
{
	(void)state;
	static const char *const texts[] = {"",  "kg",    "12",    "12 parsec",
	                                    "x", "1e3kg", "1,5kg", "deg"};
	static form *const forms[] = {temperature_parse, mass_parse, volume_parse, density_parse,
	                              strength_parse};
	for (size_t f = 0; f < sizeof forms / sizeof *forms; f++)
		for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
			refuses(forms[f], texts[i]);
	refuses(angle_parse, "45 degrees");
	refuses(angle_parse, "east");
	refuses(temperature_parse, "13c");
	static const char *const shares[] = {"",      "0.333333333", "%",    "1/",         "/3",
	                                     "1/0",   "-1/3",        "1/3%", "0.5.5",      "1/3/4",
	                                     "25 %x", "1e-1",        "0,5",  "12345678901"};
	for (size_t i = 0; i < sizeof shares / sizeof *shares; i++) {
		struct share share = {77, 1};
		assert_false(share_parse(shares[i], &share));
		assert_true(share.num == 77);
	}
	static const char *const amounts[] = {"",         ".",  "5.",        ".5", "-5",
	                                      "1,000.00", "$5", "1.2345678", "5 "};
	for (size_t i = 0; i < sizeof amounts / sizeof *amounts; i++) {
		struct money money;
		assert_false(money_parse(amounts[i], &money));
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_shares_are_exact),
		cmocka_unit_test(test_shares_are_made_simple),
		cmocka_unit_test(test_money_is_exact),
		cmocka_unit_test(test_units),
		cmocka_unit_test(test_refuses),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
