/* Carried, perimeter and soft joints: place, width, depth and back-up. */
#include "support/program.h"

#include <string.h>

#include "support/laid.h"

static const struct joint *joint_find(const struct joints *joints, const char *id)
{
	for (size_t k = 0; k < joints->joint_count; k++)
		if (strcmp(joints->joints[k].id, id) == 0)
			return &joints->joints[k];
	fail_msg("no joint %s", id);
	return NULL;
}

static const char *const COLUMN =
	"<obstacle id='C1' kind='column' x='800' y='1500' wide='300' deep='300'/>";
static const char *const BUILT =
	"<slab-joint id='J1' kind='construction' width='10mm'><at x='2250' y='0'/>"
	"<at x='2250' y='2400'/></slab-joint>";

/* 10 mm wide: half of it deep; tile of 10 mm on 4.8 mm of mortar leaves no room for a rod of
 * 13 mm. */
static void test_carried(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 3200, 2400, 297, COLUMN, BUILT);
	const struct joint *joint = joint_find(lay->joints, "J1.carried");
	assert_int_equal(joint->kind, JOINT_CARRIED);
	assert_near(joint->width, 10, 1e-6);
	assert_near(joint->depth, 5, 1e-6);
	assert_int_equal(joint->back, JOINT_BACK_TAPE);
	assert_near(joint->length, 2400, 1e-6);
	assert_string_equal(joint->ends, "south north");
	assert_string_equal(joint->why, "joint-carried");
	arena_free(arena);
}

/* Open under a base that covers it; round a column sealed. The column's corners are mitred. */
static void test_perimeter(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 3200, 2400, 297, COLUMN, "");
	const struct joint *south = joint_find(lay->joints, "south.perimeter");
	assert_true(south->is_open);
	assert_false(south->is_closed);
	assert_near(south->width, 6, 1e-6);
	assert_near(south->length, 3200 - 12, 1e-6);
	assert_int_equal(south->back, JOINT_BACK_NONE);
	const struct joint *column = joint_find(lay->joints, "C1.perimeter");
	assert_false(column->is_open);
	assert_true(column->is_closed);
	assert_near(column->length, 4 * 312, 1e-6);
	/* Half the width, which is the least depth of sealant as well; a rod fits under it. */
	assert_near(column->depth, 3, 1e-6);
	assert_int_equal(column->back, JOINT_BACK_ROD);
	arena_free(arena);
}

/* Every soft joint lies on tile joints and is as wide as they are. */
static void test_soft(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 3200, 2400, 297, "",
		"<crack id='K1' width='1mm'><at x='1450' y='0'/><at x='1450' y='2400'/></crack>");
	const struct joint *joint = joint_find(lay->joints, "K1.right");
	assert_int_equal(joint->kind, JOINT_SOFT);
	assert_true(joint->on_joint);
	assert_near(joint->width, 3, 1e-6);
	assert_near(joint->cost, joint->length, 1e-6);
	assert_string_equal(joint->of, "K1");
	assert_string_equal(joint->side, "right");
	arena_free(arena);
}

/* Rows of a doorway's wall on its two sides are told apart. */
static void test_doorway(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay =
		laid_room(arena, 3200, 2400, 297,
	                  "<doorway id='D1' wall='south' from='1000' width='900' deep='100'/>", "");
	assert_near(joint_find(lay->joints, "south.perimeter")->length +
	                    joint_find(lay->joints, "south.perimeter.2")->length,
	            3200 - 12 - 900 + 12, 1e-6);
	assert_false(joint_find(lay->joints, "D1.perimeter")->length < 900 - 12);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_carried),
		cmocka_unit_test(test_perimeter),
		cmocka_unit_test(test_soft),
		cmocka_unit_test(test_doorway),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
