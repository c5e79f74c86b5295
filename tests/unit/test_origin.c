/* Ids of what lies in several lays: three rooms of 3 m by 2 m in a row, a lay each. */
#include "support/program.h"

#include "layout/origin.h"
#include "support/rooms.h"

static const char PLAN[] = "<floor version='1' unit='mm'>"
			   "<slab id='S1' thickness='100' support='ground' exposure='indoor'/>"
			   "<room id='a' slab='S1'><corners>"
			   "<corner x='0' y='0'/><corner x='3000' y='0'/>"
			   "<corner x='3000' y='2000'/><corner x='0' y='2000'/></corners></room>"
			   "<room id='b' slab='S1'><corners>"
			   "<corner x='3100' y='0'/><corner x='6100' y='0'/>"
			   "<corner x='6100' y='2000'/><corner x='3100' y='2000'/></corners>"
			   "<doorway id='D1' wall='b.2' from='500' width='900' to='c'/></room>"
			   "<room id='c' slab='S1'><corners>"
			   "<corner x='6200' y='0'/><corner x='9200' y='0'/>"
			   "<corner x='9200' y='2000'/><corner x='6200' y='2000'/></corners></room>"
			   "<crack id='K1' width='1' step='0'><at x='4000' y='900'/>"
			   "<at x='8000' y='900'/></crack>"
			   "<crack id='K2' width='1' step='0' room='c'><at x='6200' y='300'/>"
			   "<at x='8000' y='300'/></crack>"
			   "<slab-joint id='J1' kind='construction' width='8'><at x='0' y='1700'/>"
			   "<at x='9200' y='1700'/></slab-joint>"
			   "<tile id='T1' kind='porcelain' wide='200' thick='9'/>"
			   "<lay id='L1' rooms='a' tile='T1' joint='3' pattern='grid'/>"
			   "<lay id='L2' rooms='b' tile='T1' joint='3' pattern='grid'/>"
			   "<lay id='L3' rooms='c' tile='T1' joint='3' pattern='grid'/>"
			   "</floor>";

struct row {
	struct arena *arena;
	const struct site *site;
	const struct field *fields[3];
};

static struct row row_of_fields(void)
{
	struct row row = {.arena = arena_new()};
	row.site = site_from_text(row.arena, PLAN);
	for (size_t i = 0; i < 3; i++)
		row.fields[i] =
			field_place(row.arena, row.site, rules_for_tests(row.arena),
		                    &row.site->plan->lays[i], i > 0 ? row.fields[i - 1] : NULL);
	return row;
}

/* The first lay is not the plan's first, but the first that the crack lies in. */
static void test_crack(void **state)
{
	(void)state;
	struct row row = row_of_fields();
	const struct site_crack *cracks = row.site->cracks;
	assert_string_equal(origin_of_crack(row.arena, row.fields[1], &cracks[0]), "K1");
	assert_string_equal(origin_of_crack(row.arena, row.fields[2], &cracks[0]), "K1.L3");
	assert_string_equal(origin_of_crack(row.arena, row.fields[2], &cracks[1]), "K2");
	arena_free(row.arena);
}

static void test_slab_joint(void **state)
{
	(void)state;
	static const char *const IDS[] = {"J1.carried", "J1.L2.carried", "J1.L3.carried"};
	struct row row = row_of_fields();
	for (size_t i = 0; i < 3; i++) {
		assert_int_equal(row.fields[i]->carried_count, 1);
		assert_string_equal(row.fields[i]->carried[0].id, IDS[i]);
	}
	arena_free(row.arena);
}

static void test_border(void **state)
{
	(void)state;
	struct row row = row_of_fields();
	assert_string_equal(origin_of_border(row.arena, row.fields[1], "D1"), "D1");
	assert_string_equal(origin_of_border(row.arena, row.fields[2], "D1"), "D1.L3");
	assert_string_equal(origin_of_border(row.arena, row.fields[2], "c.1"), "c.1");
	arena_free(row.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_crack),
		cmocka_unit_test(test_slab_joint),
		cmocka_unit_test(test_border),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
