/* The tables of rules: what is shipped is whole, what is broken is refused line by line. */
#include <string.h>

#include "base/embedded.h"
#include "base/strbuf.h"
#include "rules/rules.h"
#include "rules/value.h"
#include "support/program.h"

static struct arena *arena;

static int start(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int end(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

static const struct rules *shipped(const char *name)
{
	struct diag_list diags = diag_list_in(arena, name);
	const struct rules *rules = rules_load(arena, name, true, &diags);
	diag_print(&diags, stderr);
	assert_non_null(rules);
	return rules;
}

static const char *text_of_us(void)
{
	return (const char *)embedded_find("rules/us.rules")->data;
}

/* The table with the first `from` replaced by `to`. */
static const char *with(const char *from, const char *to)
{
	const char *text = text_of_us(), *at = strstr(text, from);
	assert_non_null(at);
	return arena_printf(arena, "%.*s%s%s", (int)(at - text), text, to, at + strlen(from));
}

static int line_of(const char *text, const char *what)
{
	int line = 1;
	const char *at = strstr(text, what);
	assert_non_null(at);
	for (const char *p = text; p < at; p++)
		line += *p == '\n';
	return line;
}

/* Exactly one fault, on `line`, whose text holds `what`. */
static void assert_fault(const char *text, int line, const char *what)
{
	struct diag_list diags = diag_list_in(arena, "us.rules");
	assert_null(rules_parse(arena, "us", true, text, &diags));
	if (diags.diags.count != 1)
		diag_print(&diags, stderr);
	assert_int_equal(diags.diags.count, 1);
	assert_int_equal(diags.diags.items[0].line, line);
	if (strstr(diags.diags.items[0].text, what) == NULL)
		fail_msg("`%s` does not say `%s`", diags.diags.items[0].text, what);
}

static void every_table_is_whole(void **state)
{
	(void)state;
	for (size_t i = 0; embedded_at(i) != NULL; i++) {
		const char *name = embedded_at(i)->name;
		if (strncmp(name, "rules/", 6) != 0)
			continue;
		size_t length = strlen(name) - strlen("rules/.rules");
		const struct rules *rules = shipped(arena_strndup(arena, name + 6, length));
		assert_non_null(rules_at(rules, RULE_COUNT - 1));
	}
	assert_string_equal(rules_title(shipped("uk")), "United Kingdom");
}

static void figures_come_out_in_mm(void **state)
{
	(void)state;
	const struct rules *us = shipped("us");
	assert_near(rules_figure(us, FIGURE_SEALANT_DEPTH_LEAST), 3.175, 0);
	assert_near(rules_figure(us, FIGURE_STRIP_STEP_METRIC), 25, 0);
	assert_near(rules_figure(us, FIGURE_STRIP_TILE_WIDTHS), 3, 0);
	assert_near(rules_figure(us, FIGURE_CUT_STEEP_SHARE), 2.0 / 3.0, 1e-15);
	assert_near(rules_figure(us, FIGURE_CONTROL_WALL_CLEAR), 609.6, 1e-12);
	assert_string_equal(rules_name(us), "us");
	assert_string_equal(rules_title(us), "North America");
}

static void every_figure_has_a_use_and_a_source(void **state)
{
	(void)state;
	const struct rules *us = shipped("us");
	for (int i = 0; i < FIGURE_COUNT; i++) {
		assert_true(rules_figure(us, (enum figure)i) > 0);
		assert_true(strlen(rules_figure_use(us, (enum figure)i)) > 10);
		assert_true(strlen(rules_figure_source(us, (enum figure)i)) > 3);
	}
}

static void rules_carry_their_limit_and_weight(void **state)
{
	(void)state;
	const struct rules *us = shipped("us");
	const struct rule *wide = rules_find(us, "crack-wide");
	assert_ptr_equal(wide, rules_rule(us, RULE_CRACK_WIDE));
	assert_near(wide->limit, 3.175, 0);
	assert_string_equal(wide->unit, "mm");
	assert_int_equal(wide->weight, RULE_ASK);
	assert_int_equal(wide->side, RULE_OVER);
	assert_int_equal(rules_rule(us, RULE_CRACK_STEP)->weight, RULE_STOP);
	assert_near(rules_rule(us, RULE_CRACKS_MANY)->limit, 0.4, 1e-15);
	assert_string_equal(rules_rule(us, RULE_SLAB_YOUNG)->unit, "days");
	assert_null(rules_find(us, "crack-purple"));
	assert_null(rules_at(us, RULE_COUNT));
	assert_non_null(rules_at(us, RULE_COUNT - 1));
}

static void a_limit_may_be_a_figure(void **state)
{
	(void)state;
	const struct rules *us = shipped("us");
	assert_near(rules_rule(us, RULE_CUT_SMALL)->limit, rules_figure(us, FIGURE_CUT_SMALL_SHARE),
	            0);
	assert_string_equal(rules_rule(us, RULE_JOINT_WIDE)->unit, "mm");
}

static void the_side_of_a_limit_decides(void **state)
{
	(void)state;
	const struct rules *us = shipped("us");
	const struct rule *over = rules_rule(us, RULE_CRACK_WIDE);
	const struct rule *from = rules_rule(us, RULE_CRACK_FILL);
	const struct rule *under = rules_rule(us, RULE_SLAB_YOUNG);
	assert_false(rule_is_raised(over, 3.175));
	assert_false(rule_is_raised(over, 3.175 + 1e-9));
	assert_true(rule_is_raised(over, 3.175001));
	assert_true(rule_is_raised(from, 1.5875));
	assert_true(rule_is_raised(from, 1.5875 - 1e-9));
	assert_false(rule_is_raised(from, 1.587));
	assert_true(rule_is_raised(under, 27));
	assert_false(rule_is_raised(under, 28));
	assert_true(rule_is_raised_by(under, 28, 29));
	assert_false(rule_is_raised(rules_rule(us, RULE_CRACK_MOVING), 1));
}

static void a_broken_line_is_told_alone(void **state)
{
	(void)state;
	const char *text;
	text = with("figure bond-coat = 3/16 in or 5 mm", "figure bond-coat = 3/16 inch");
	assert_fault(text, line_of(text, "figure bond-coat"), "VALUE UNIT");
	text = with("figure bond-coat = 3/16 in or 5 mm", "figure bond-coat = 3/16");
	assert_fault(text, line_of(text, "figure bond-coat"), "is a length, not a bare number");
	text = with("figure bond-coat = 3/16 in or 5 mm",
	            "nonsense\n\tuse less\nfigure bond-coat = 3/16 in or 5 mm");
	assert_fault(text, line_of(text, "nonsense"), "expected table, figure or rule");
	text = with("figure bond-coat = 3/16 in or 5 mm",
	            "figure bond-colour = 1 in\n\tuse less\nfigure bond-coat = 3/16 in or 5 mm");
	assert_fault(text, line_of(text, "figure bond-colour"), "no figure is called");
	text = with("\tuse thickness of the mortar under the tile", "");
	assert_fault(text, line_of(text, "figure bond-coat"), "needs a use and a source");
	text = with("\tuse thickness of", "\tpurpose thickness of the mortar\n\tuse thickness of");
	assert_fault(text, line_of(text, "\tpurpose"), "does not belong here");
	text = with("rule crack-step over 0 mm", "rule crack-step over 0 furlongs");
	assert_fault(text, line_of(text, "rule crack-step"), "is no limit");
	text = with("\tweight stop", "\tweight halt");
	assert_fault(text, line_of(text, "rule crack-step"), "weight is note, ask or stop");
	text = with("rule crack-moving when", "rule crack-moving when 3 mm");
	assert_fault(text, line_of(text, "rule crack-moving"), "has no limit");
	text = with("under figure cut-small-share", "under figure cut-tiny-share");
	assert_fault(text, line_of(text, "rule cut-small"), "no figure is called");
	text = with("table us", "table uk");
	assert_fault(text, line_of(text, "table uk"), "expected `table us`");
}

static void what_is_missing_or_there_twice_is_told(void **state)
{
	(void)state;
	struct diag_list diags = diag_list_in(arena, "us.rules");
	assert_null(rules_parse(arena, "us", true, "table us\n\ttitle Nowhere\n", &diags));
	assert_int_equal(diags.diags.count, FIGURE_COUNT + RULE_COUNT);
	const char *twice =
		arena_printf(arena, "%s\nfigure bond-coat = 1 in\n\tuse x\n\tsource y\n",
	                     text_of_us());
	assert_fault(twice, line_of(twice, "figure bond-coat = 1 in"), "is there already");
	const char *again =
		arena_printf(arena,
	                     "%s\nrule crack-step when\n\tquantity x\n\tweight note\n\twho crew\n"
	                     "\tsource y\n\tmessage z\n",
	                     text_of_us());
	assert_fault(again, line_of(again, "rule crack-step when"), "is there already");
}

static void an_unknown_table_is_an_error(void **state)
{
	(void)state;
	struct diag_list diags = diag_list_in(arena, "plan.xml");
	assert_null(rules_load(arena, "mars", true, &diags));
	assert_int_equal(diags.diags.count, 1);
}

static void metric_plans_take_the_metric_value(void **state)
{
	(void)state;
	struct diag_list diags = diag_list_in(arena, "us");
	const struct rules *metric = rules_load(arena, "us", false, &diags);
	assert_near(rules_figure(metric, FIGURE_BOND_COAT), 5, 0);
	assert_near(rules_rule(metric, RULE_CRACK_WIDE)->limit, 3, 0);
	assert_near(rules_rule(metric, RULE_JOINT_WIDE)->limit, 25.4, 1e-12);
	assert_near(rules_rule(shipped("us"), RULE_CRACK_WIDE)->limit, 3.175, 0);
	struct value value;
	assert_true(value_parse_either("1/8 in or 3 mm", true, &value));
	assert_near(value.number, 3.175, 0);
	assert_true(value_parse_either("4 mm", false, &value));
	assert_false(value_parse_either("1/8 in or 3", true, &value));
	assert_false(value_parse_either("1/8 in or", true, &value));
	assert_false(value_parse_either("1/8 inch or 3 mm", true, &value));
}

static void values_are_read_exactly(void **state)
{
	(void)state;
	struct value value;
	assert_true(value_parse("1/64 in", &value));
	assert_near(value.number, 0.396875, 0);
	assert_int_equal(value.kind, VALUE_LENGTH);
	assert_true(value_parse("40 %", &value));
	assert_near(value.number, 0.4, 1e-15);
	assert_true(value_parse("0.25", &value));
	assert_near(value.number, 0.25, 0);
	assert_false(value_parse("", &value));
	assert_false(value_parse("in", &value));
	assert_false(value_parse("1/0 in", &value));
	assert_false(value_parse("1.2.3", &value));
	assert_false(value_parse("-1 in", &value));
	assert_false(value_parse("1e3 mm", &value));
	assert_false(value_parse("1 inx", &value));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_table_is_whole),
		cmocka_unit_test(figures_come_out_in_mm),
		cmocka_unit_test(every_figure_has_a_use_and_a_source),
		cmocka_unit_test(rules_carry_their_limit_and_weight),
		cmocka_unit_test(a_limit_may_be_a_figure),
		cmocka_unit_test(the_side_of_a_limit_decides),
		cmocka_unit_test(a_broken_line_is_told_alone),
		cmocka_unit_test(what_is_missing_or_there_twice_is_told),
		cmocka_unit_test(an_unknown_table_is_an_error),
		cmocka_unit_test(metric_plans_take_the_metric_value),
		cmocka_unit_test(values_are_read_exactly),
	};
	return cmocka_run_group_tests(tests, start, end);
}
