/* What changed between two floors: pairs by place and id, kinds of change, lines and money. */
#include <string.h>

#include "compare/change_text.h"
#include "compare/comparison_write.h"
#include "count/decimal.h"
#include "support/compared.h"
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

#define CRACK(id, width, x)                                                     \
	"<crack id='" id "' width='" width "'><at x='" x "' y='600'/><at x='" x \
	"' y='2600'/></crack>"

static const struct comparison *halls(const char *base, const char *revised)
{
	return compared(arena, compared_hall(arena, base), compared_hall(arena, revised));
}

static void assert_only(const struct comparison *c, const char *id, unsigned kinds)
{
	const struct change *change = compared_only_change(c);
	assert_non_null(change);
	assert_string_equal(change->id, id);
	assert_int_equal(change->kinds, kinds);
	assert_int_equal(c->line_count, 1);
}

static void a_floor_against_itself(void **state)
{
	(void)state;
	const struct comparison *c = halls(CRACK("K1", "1", "2000"), CRACK("K1", "1", "2000"));
	assert_int_equal(c->line_count, 0);
	assert_int_equal(c->changes.list.count, 0);
	assert_int_equal(c->total.things.list.count, 0);
	assert_int_equal(c->total.rows.list.count, 0);
}

static void kinds_of_change(void **state)
{
	(void)state;
	const char *one = CRACK("K1", "1", "2000");
	assert_only(halls("", one), "K1", CHANGE_ADDED);
	assert_only(halls(one, ""), "K1", CHANGE_REMOVED);
	assert_only(halls(one, CRACK("K1", "1", "2300")), "K1", CHANGE_MOVED);
	assert_only(halls(one, CRACK("K1", "2", "2000")), "K1", CHANGE_WIDENED);
	assert_only(halls(CRACK("K1", "2", "2000"), one), "K1", CHANGE_NARROWED);
	assert_only(halls(one, CRACK("K1", "2", "2300")), "K1", CHANGE_MOVED | CHANGE_WIDENED);
#define JOINT(kind)                                                          \
	"<slab-joint id='J1' width='4' kind='" kind "'><at x='5000' y='0'/>" \
	"<at x='5000' y='4000'/></slab-joint>"
	assert_only(halls(JOINT("construction"), JOINT("contraction")), "J1", CHANGE_RETYPED);
#undef JOINT
}

static void same_values_written_otherwise(void **state)
{
	(void)state;
	const struct comparison *c = halls(CRACK("K1", "25.4mm", "2000"), CRACK("K1", "1in", "2m"));
	assert_int_equal(c->changes.list.count, 0);
	c = halls(CRACK("K1", "1", "2000"),
	          "<crack id='K1' width='1' wander='12mm' step='0'>"
	          "<at x='2000' y='2600'/><at x='2000' y='600'/></crack>");
	assert_int_equal(c->changes.list.count, 0);
}

static void other_ids_in_the_same_places(void **state)
{
	(void)state;
	const char *base = CRACK("K1", "1", "2000") CRACK("K2", "1", "7000");
	const struct comparison *c = halls(base, CRACK("K2", "1", "2000") CRACK("K1", "1", "7000"));
	assert_int_equal(c->line_count, 0);
	assert_int_equal(c->changes.list.count, 2);
	assert_string_equal(c->changes.list.items[0].id_was, "K1");
	/* One more in front, all others renumbered: one crack is new, and it is K1. */
	c = halls(base, CRACK("K1", "1", "4500") CRACK("K2", "1", "2000") CRACK("K3", "1", "7000"));
	assert_int_equal(c->line_count, 1);
	const struct change *added = compared_only_change(c);
	assert_string_equal(added->id, "K1");
	assert_int_equal(added->kinds, CHANGE_ADDED);
}

/* The id of one that is gone is taken by one that was called otherwise. */
static void an_id_that_is_taken_over(void **state)
{
	(void)state;
	const struct comparison *c =
		halls(CRACK("K1", "1", "2000") CRACK("K2", "1", "7000"), CRACK("K1", "1", "7000"));
	const struct change *gone = compared_only_change(c);
	assert_int_equal(gone->kinds, CHANGE_REMOVED);
	assert_string_equal(gone->id, "K1");
	for (size_t i = 0; i < c->total.things.list.count; i++) {
		const struct thing_change *thing = &c->total.things.list.items[i];
		assert_true(thing->is_gone);
		assert_true(thing->thing.shape.line.points[0].x < 4500);
	}
}

static void walls_move_what_is_measured_from_them(void **state)
{
	(void)state;
	const char *base = compared_hall(arena, "<crack id='K1' width='1'><at wall='east' "
	                                        "along='1000'/><at x='7000' y='1000'/></crack>");
	const char *at = strstr(base, "x='9000' y='0'");
	char *revised = arena_strdup(arena, base);
	revised[at - base + 3] = '8'; /* the corner between south and east, 1 m in */
	const struct comparison *c = compared(arena, base, revised);
	const struct change *change = compared_only_change(c);
	assert_string_equal(change->id, "hall");
	assert_int_equal(change->kinds, CHANGE_MOVED);
}

static void changes_that_only_go_together(void **state)
{
	(void)state;
	/* The new lay takes a room that the old one has until it is altered. */
	const char *base = compared_hall(arena, "");
	const char *with_room =
		"<room id='annex' slab='S1'><corners><corner x='9000' y='0'/><corner x='12000' "
		"y='0'/><corner x='12000' y='4000'/><corner x='9000' y='4000'/></corners></room>";
	char *both =
		arena_printf(arena, "%.*s%s</floor>", (int)(strlen(base) - 8), base, with_room);
	const char *rooms = strstr(both, "rooms='hall' tile");
	char *one_lay = arena_printf(arena, "%.*srooms='hall annex'%s", (int)(rooms - both), both,
	                             rooms + strlen("rooms='hall'"));
	const char *lay = strstr(both, "<lay ");
	char *two_lays = arena_printf(arena,
	                              "%.*s<lay id='L0' rooms='annex' tile='T1' joint='3mm' "
	                              "pattern='grid'/>%s",
	                              (int)(lay - both), both, lay);
	const struct comparison *c = compared(arena, one_lay, two_lays);
	assert_int_equal(c->line_count, 1);
	assert_int_equal(c->lines[0].change_count, 2);
}

static void a_line_says_why_and_when(void **state)
{
	(void)state;
	const struct comparison *c =
		halls("", "<crack id='K1' width='1' found='2026-03-09' note='After cleaning'>"
	                  "<at x='2000' y='600'/><at x='2000' y='2600'/></crack>");
	const struct change *change = compared_only_change(c);
	assert_string_equal(change->where, "hall");
	assert_string_equal(change_text_reason(arena, compared_words(arena), change),
	                    "After cleaning. 2026-03-09");
	assert_null(c->revision);
	assert_string_equal(comparison_mark(arena, c, &c->lines[0]), "1");
}

static void marks_bear_the_new_revision(void **state)
{
	(void)state;
	const struct comparison *c =
		halls("", "<revision mark='B' date='2026-03-12' note='More'/>" CRACK("K1", "1",
	                                                                             "2000"));
	assert_string_equal(comparison_mark(arena, c, &c->lines[0]), "B1");
	assert_string_equal(compared_only_change(c)->reason, "More");
	assert_int_equal(compared_only_change(c)->found.day_of_month, 12);
}

/* ---- findings ---- */

static bool has_finding(const struct comparison *c, enum finding_fate fate, const char *rule)
{
	const struct finding_changes *found = &c->total.findings;
	for (size_t i = 0; i < found->list.count; i++)
		if (found->list.items[i].fate == fate &&
		    strcmp(found->list.items[i].finding->rule->name, rule) == 0)
			return true;
	return false;
}

static void findings_come_go_and_are_answered(void **state)
{
	(void)state;
	const char *wide = CRACK("K1", "5", "2000"), *fine = CRACK("K1", "1", "2000");
	const char *answered = arena_printf(arena,
	                                    "%s<answer about='K1' rule='crack-wide' "
	                                    "decision='isolate' by='Engineer' on='2026-03-03'/>",
	                                    wide);
	assert_true(has_finding(halls(fine, wide), FINDING_APPEARED, "crack-wide"));
	assert_true(has_finding(halls(wide, fine), FINDING_WENT, "crack-wide"));
	assert_true(has_finding(halls(wide, answered), FINDING_WAS_ANSWERED, "crack-wide"));
	assert_true(has_finding(halls(answered, wide), FINDING_REOPENED, "crack-wide"));
	assert_true(has_finding(halls(wide, CRACK("K1", "6", "2000")), FINDING_READS_OTHERWISE,
	                        "crack-wide"));
}

/* ---- money ---- */

#define RATES(currency, strip)                                                                  \
	"<rates currency='" currency "'><rate of='M1' each='" strip "' per='m2' hours='0.25'/>" \
	"<rate of='labour' each='46.10' per='hour'/><rate of='tile' each='31.05' per='m2'/>"    \
	"<markup of='material' share='7.5%' name='Freight'/>"                                   \
	"<markup of='all' share='1/3' name='Overheads'/></rates>"

static int64_t price_of(const struct floor_state *state)
{
	for (size_t i = 0; i < state->count->row_count; i++)
		if (state->count->rows[i].kind == COUNT_PRICE_TOTAL)
			return state->count->rows[i].cents;
	fail();
	return 0;
}

/* Line by line the differences are of one count and the next, and add up to the cent. */
static void lines_add_up(void **state)
{
	(void)state;
	const struct comparison *c = halls(CRACK("K1", "1", "2000") RATES("EUR", "14.35"),
	                                   CRACK("K1", "4", "2000") CRACK("K2", "1", "5000")
	                                           CRACK("K3", "1", "7000") RATES("EUR", "14.85"));
	int64_t sum = 0, last = price_of(c->base);
	assert_int_equal(c->line_count, 4);
	for (size_t i = 0; i < c->line_count; i++) {
		const struct row_change *total = difference_total(&c->lines[i].difference);
		assert_non_null(total);
		assert_int_equal(total->cents_before, last);
		last = total->cents_after;
		sum += total->cents_after - total->cents_before;
	}
	assert_int_equal(last, price_of(c->revised));
	assert_int_equal(sum, price_of(c->revised) - price_of(c->base));
}

/* Of one line: rows, less labour, are the material; labour rows the labour. */
static void rows_make_the_sums(void **state)
{
	(void)state;
	const struct comparison *c =
		halls(RATES("EUR", "14.35"), CRACK("K1", "1", "2000") RATES("EUR", "14.35"));
	const struct difference *d = &c->lines[0].difference;
	int64_t material = 0, labour = 0;
	for (size_t i = 0; i < d->rows.list.count; i++) {
		const struct row_change *row = &d->rows.list.items[i];
		int64_t more = row->cents_after - row->cents_before;
		if (row_change_row(row)->kind == COUNT_LABOUR)
			labour += more;
		else
			material += more;
	}
	for (size_t i = 0; i < d->money.list.count; i++) {
		const struct row_change *sum = &d->money.list.items[i];
		int64_t more = sum->cents_after - sum->cents_before;
		if (row_change_row(sum)->kind == COUNT_PRICE_MATERIAL)
			assert_int_equal(more, material);
		if (row_change_row(sum)->kind == COUNT_PRICE_LABOUR)
			assert_int_equal(sum->cents_after - sum->cents_before, labour);
	}
	assert_true(material > 0);
	assert_true(labour > 0);
}

static void currencies_are_never_mixed(void **state)
{
	(void)state;
	const char *one = CRACK("K1", "1", "2000") RATES("EUR", "14.35");
	const struct comparison *c = halls(one, CRACK("K1", "1", "2000") RATES("USD", "14.35"));
	assert_int_equal(c->line_count, 1);
	assert_null(difference_total(&c->total));
	for (size_t i = 0; i < c->total.rows.list.count; i++)
		assert_false(c->total.rows.list.items[i].is_priced);
	c = halls(CRACK("K1", "1", "2000"), one);
	assert_null(difference_total(&c->total));
}

static void a_missing_rate_is_no_zero(void **state)
{
	(void)state;
#define LABOUR "<rates currency='EUR'><rate of='labour' each='46' per='hour'/></rates>"
	const struct comparison *c = halls(LABOUR, CRACK("K1", "1", "2000") LABOUR);
#undef LABOUR
	bool is_seen = false;
	for (size_t i = 0; i < c->total.rows.list.count; i++) {
		const struct row_change *row = &c->total.rows.list.items[i];
		if (row_change_row(row)->kind != COUNT_STRIP)
			continue;
		is_seen = true;
		assert_false(row->is_priced);
		assert_string_equal(change_text_cents_more(arena, row), "");
		assert_true(row->amount_more > 0);
	}
	assert_true(is_seen);
}

/* ---- what is written ---- */

static void cells_of_a_spreadsheet(void **state)
{
	(void)state;
	const struct comparison *c =
		halls("", "<crack id='K1' width='1' note='=1+1, \"quoted\"'><at x='2000' y='600'/>"
	                  "<at x='2000' y='2600'/></crack>");
	struct bytes csv = comparison_csv(arena, c);
	const char *text = arena_strndup(arena, csv.data, csv.length);
	assert_memory_equal(text, "line,kind,what,where,before,after,difference,", 45);
	assert_non_null(strstr(text, "\"'=1+1, \"\"quoted\"\"\""));
	assert_non_null(strstr(text, "1,quantity,joint-soft,hall K1.left,0.00,"));
	assert_non_null(strstr(text, "1,change,crack added,K1,,hall,"));
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, start, end)
	const struct CMUnitTest tests[] = {
		TEST(a_floor_against_itself),
		TEST(kinds_of_change),
		TEST(same_values_written_otherwise),
		TEST(other_ids_in_the_same_places),
		TEST(an_id_that_is_taken_over),
		TEST(walls_move_what_is_measured_from_them),
		TEST(changes_that_only_go_together),
		TEST(a_line_says_why_and_when),
		TEST(marks_bear_the_new_revision),
		TEST(findings_come_go_and_are_answered),
		TEST(lines_add_up),
		TEST(rows_make_the_sums),
		TEST(currencies_are_never_mixed),
		TEST(a_missing_rate_is_no_zero),
		TEST(cells_of_a_spreadsheet),
	};
#undef TEST
	cmocka_set_message_output(CM_OUTPUT_TAP);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
