/* Which parts of a field share the lattice, for joints that cross, stop and run askew. Parts
 * are told south-west first: 0 south-west, then by their least corners. */
#include "support/program.h"

#include "layout/bays.h"
#include "support/rooms.h"

/* A room of 6 by 4 m with the slab joints given. */
static struct bays bays_with(struct arena *arena, const char *joints, size_t *out_parts)
{
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='room' slab='S1'><corners><corner x='0' y='0'/><corner x='6000' y='0'/>"
		"<corner x='6000' y='4000'/><corner x='0' y='4000'/></corners></room>%s"
		"<tile id='T1' kind='porcelain' wide='297mm' thick='10mm'/>"
		"<lay id='L1' rooms='room' tile='T1' joint='3mm' pattern='grid'/></floor>",
		joints);
	const struct site *site = site_from_text(arena, text);
	const struct field *field =
		field_place(arena, site, rules_for_tests(arena), &site->plan->lays[0], NULL);
	*out_parts = field->region.count;
	return bays_of_field(arena, field);
}

#define NORTH_AT(id, x)                                                                 \
	"<slab-joint id='" id "' kind='construction' width='6mm'><at x='" x "' y='0'/>" \
	"<at x='" x "' y='4000'/></slab-joint>"
#define EAST_AT(id, y)                                                                  \
	"<slab-joint id='" id "' kind='construction' width='6mm'><at x='0' y='" y "'/>" \
	"<at x='6000' y='" y "'/></slab-joint>"

static void test_one_joint(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	size_t parts;
	struct bays bays = bays_with(arena, NORTH_AT("J1", "2500"), &parts);
	assert_int_equal(parts, 2);
	assert_int_equal(bays.u_count, 2);
	assert_int_equal(bays.v_count, 1);
	arena_free(arena);
}

/* Each of two joints that cross frees its own direction: a part shares u with the part above
 * it and v with the part beside it, and nothing with the one across the corner. */
static void test_joints_that_cross(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	size_t parts;
	struct bays bays = bays_with(arena, NORTH_AT("J1", "2500") EAST_AT("J2", "1700"), &parts);
	assert_int_equal(parts, 4);
	assert_int_equal(bays.u_count, 2);
	assert_int_equal(bays.v_count, 2);
	for (size_t a = 0; a < parts; a++)
		for (size_t b = 0; b < a; b++)
			assert_false(bays.u_of_part[a] == bays.u_of_part[b] &&
			             bays.v_of_part[a] == bays.v_of_part[b]);
	arena_free(arena);
}

/* A saw-cut grid: three joints one way and one the other. */
static void test_a_grid_of_joints(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	size_t parts;
	struct bays bays = bays_with(arena,
	                             NORTH_AT("J1", "1500") NORTH_AT("J2", "3000")
	                                     NORTH_AT("J3", "4500") EAST_AT("J4", "2000"),
	                             &parts);
	assert_int_equal(parts, 8);
	assert_int_equal(bays.u_count, 4);
	assert_int_equal(bays.v_count, 2);
	arena_free(arena);
}

/* Askew, the lattice is the same on both sides. */
static void test_a_joint_askew(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	size_t parts;
	struct bays bays = bays_with(arena,
	                             "<slab-joint id='J1' kind='construction' width='6mm'>"
	                             "<at x='2500' y='0'/><at x='3100' y='4000'/></slab-joint>",
	                             &parts);
	assert_int_equal(parts, 2);
	assert_int_equal(bays.u_count, 1);
	assert_int_equal(bays.v_count, 1);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_one_joint),
		cmocka_unit_test(test_joints_that_cross),
		cmocka_unit_test(test_a_grid_of_joints),
		cmocka_unit_test(test_a_joint_askew),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
