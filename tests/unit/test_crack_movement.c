/* Expected movement of cracks, worked by hand on a room of 4 by 3 m. */
#include "layout/crack_movement.h"
#include "support/program.h"
#include "support/rooms.h"

#define PLAN(slab, more)                                                                    \
	"<floor version='1' unit='mm'><job starts='2026-04-06'/>"                           \
	"<slab id='S1' thickness='100' exposure='indoor' strength='30MPa' " slab "/>"       \
	"<room id='hall' slab='S1'><corners><corner x='0' y='0'/><corner x='4000' y='0'/>"  \
	"<corner x='4000' y='3000'/><corner x='0' y='3000'/></corners></room>"              \
	"<crack id='K1' width='1'><at x='1000' y='0'/><at x='1000' y='3000'/></crack>" more \
	"</floor>"

/* Suspended: size 100, factor 1; at 60 % and class N 432.094e-6 in the end. */
#define SUSPENDED "support='suspended' "
static const double FINAL = 432.094e-6;

static struct crack_movement movement(struct arena *arena, const char *text)
{
	const struct site *site = site_from_text(arena, text);
	struct diag_list diags = diag_list_in(arena, "");
	const struct rules *rules = rules_load(arena, "us", site->inches, &diags);
	assert_non_null(rules);
	return crack_movement_of(arena, site, rules, &site->cracks[0]);
}

static void half_the_way_on_both_sides(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct crack_movement move = movement(arena, PLAN(SUSPENDED, ""));
	assert_near(move.length, (1000 + 3000) / 2, 1e-6);
	assert_near(move.shrinkage, FINAL * 2000, 1e-4);
	assert_near(move.thermal, 10e-6 * 17 * 2000, 1e-9);
	assert_near(move.total, move.shrinkage + move.thermal, 1e-9);
	move = movement(arena, PLAN(SUSPENDED, "<slab-joint id='J1' kind='cold' width='4'>"
	                                       "<at x='2000' y='0'/><at x='2000' y='3000'/>"
	                                       "</slab-joint>"));
	assert_near(move.length, (1000 + 1000) / 2, 1e-6);
	move = movement(arena, PLAN(SUSPENDED, "<crack id='K2' width='1'><at x='2500' y='0'/>"
	                                       "<at x='2500' y='3000'/></crack>"));
	assert_near(move.length, (1000 + 1500) / 2, 1e-6);
	move = movement(arena, PLAN(SUSPENDED "joints='2m'", ""));
	assert_near(move.length, (1000 + 2000) / 2, 1e-6);
	arena_free(arena);
}

/* 47 days old: half has come. On the ground the size is 200: factor 0.85, and 0.04 x 200 x
 * sqrt(200) = 113.137 days. */
static void age_and_support(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct crack_movement move = movement(arena, PLAN(SUSPENDED "placed='2026-02-18'", ""));
	assert_near(move.concrete.age_days, 47, 0);
	assert_near(move.shrinkage, FINAL / 2 * 2000, 1e-4);
	move = movement(arena, PLAN("support='ground' placed='2026-02-18'", ""));
	assert_near(move.shrinkage, FINAL * 0.85 * 113.137 / 153.137 * 2000, 1e-4);
	arena_free(arena);
}

static void temperatures(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct crack_movement move =
		movement(arena, PLAN(SUSPENDED "coldest='5C' hottest='30C'", ""));
	assert_near(move.thermal, 10e-6 * 25 * 2000, 1e-9);
	assert_near(move.total, FINAL * 2000 + 0.5, 1e-4);
	arena_free(arena);
}

/* What is not stated comes from the table, by what reaches the room. */
static void temperatures_not_stated(void **state)
{
	(void)state;
	static const struct {
		const char *text;
		double kelvin;
	} ROWS[] = {
		{PLAN(SUSPENDED, ""), 17},
		{PLAN(SUSPENDED "heated='yes'", ""), 22},
		{PLAN(SUSPENDED "coldest='5C'", ""), 17},
	};
	struct arena *arena = arena_new();
	for (size_t i = 0; i < sizeof ROWS / sizeof *ROWS; i++)
		assert_near(movement(arena, ROWS[i].text).warming, ROWS[i].kelvin, 1e-9);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(half_the_way_on_both_sides),
		cmocka_unit_test(age_and_support),
		cmocka_unit_test(temperatures),
		cmocka_unit_test(temperatures_not_stated),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
