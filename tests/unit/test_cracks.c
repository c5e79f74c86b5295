/* Crossed tile, groups and states of cracks in a room of 297 mm tile with a joint of 3 mm:
 * joint centres lie at x and y of 100, 400, 700 … */
#include "support/program.h"

#include <string.h>

#include "support/laid.h"

static const struct cracks *cracks_of(struct arena *arena, const char *cracks)
{
	return laid_room(arena, 3200, 2400, 297, "", cracks)->cracks;
}

static bool is_crossed(const struct placed_crack *crack, int i, int j)
{
	for (size_t k = 0; k < crack->crossed_count; k++)
		if (crack->crossed[k].at.i == i && crack->crossed[k].at.j == j)
			return true;
	return false;
}

/* The lattice starts at the plan's own start: cell (i, j) has its lower left corner at
 * 100 + 300 i, 100 + 300 j of that start, wherever (0, 0) was put. */
static struct address address_at(const struct placed_lay *lay, double x, double y)
{
	struct point position = lay->tiling->panels[0].position;
	return (struct address){0, (int)floor((x - position.x) / 300),
	                        (int)floor((y - position.y) / 300)};
}

static void test_reach(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	/* To 1591 at y 1000: tile from 1301.5 to 1598.5; 10.8 mm reach 1601.5. */
	const char *line = "<crack id='K1' width='1.2mm' wander='%s'><at x='1500' y='1000'/>"
			   "<at x='1591' y='1000'/></crack>";
	const struct {
		const char *wander;
		size_t crossed;
	} cases[] = {{"9.8mm", 1}, {"10.2mm", 2}};
	for (size_t k = 0; k < 2; k++) {
		char cracks[200];
		snprintf(cracks, sizeof cracks, line, cases[k].wander);
		const struct placed_lay *lay = laid_room(arena, 3200, 2400, 297, "", cracks);
		struct address at = address_at(lay, 1450, 1150), row = address_at(lay, 1450, 850);
		const struct placed_crack *crack = &lay->cracks->cracks[0];
		/* y 1000 is a joint centre: the rows above and below are both within reach. */
		assert_int_equal(crack->crossed_count, 2 * cases[k].crossed);
		assert_true(is_crossed(crack, at.i, at.j));
		assert_true(is_crossed(crack, row.i, row.j));
	}
	arena_free(arena);
}

static void test_groups(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	/* K1 and K3 meet; K2's tile touches K1's; K4 lies apart. */
	const struct cracks *cracks = cracks_of(
		arena,
		"<crack id='K1' width='1mm'><at x='0' y='550'/><at x='1200' y='550'/></crack>"
		"<crack id='K2' width='1mm'><at x='1450' y='850'/><at x='1450' y='1150'/></crack>"
		"<crack id='K3' width='1mm'><at x='550' y='550'/><at x='550' y='900'/></crack>"
		"<crack id='K4' width='1mm'><at x='2650' y='0'/><at x='2650' y='2400'/></crack>");
	assert_int_equal(cracks->group_count, 2);
	assert_string_equal(cracks->groups[0].id, "K1");
	assert_int_equal(cracks->groups[0].crack_count, 3);
	assert_string_equal(cracks->groups[1].id, "K4");
	assert_int_equal(cracks->cracks[1].group, 0);
	assert_int_equal(cracks->cracks[3].group, 1);
	arena_free(arena);
}

/* One column of whole tile between them keeps two cracks apart. */
static void test_tile_between(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct cracks *cracks = cracks_of(
		arena,
		"<crack id='K1' width='1mm'><at x='1150' y='0'/><at x='1150' y='2400'/></crack>"
		"<crack id='K2' width='1mm'><at x='1750' y='0'/><at x='1750' y='2400'/></crack>");
	assert_int_equal(cracks->group_count, 2);
	cracks = cracks_of(
		arena,
		"<crack id='K1' width='1mm'><at x='1150' y='0'/><at x='1150' y='2400'/></crack>"
		"<crack id='K2' width='1mm'><at x='1450' y='0'/><at x='1450' y='2400'/></crack>");
	assert_int_equal(cracks->group_count, 1);
	arena_free(arena);
}

/* Cracks that end on the two sides of a carried joint stay apart: the joint parts them. */
static void test_carried_joint_parts(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct cracks *cracks = cracks_of(
		arena,
		"<crack id='K1' width='1mm'><at x='1450' y='0'/><at x='1450' y='1250'/></crack>"
		"<crack id='K2' width='1mm' step='2mm'><at x='1450' y='1250'/>"
		"<at x='1450' y='2400'/></crack>"
		"<slab-joint id='J1' kind='construction' width='10mm'><at x='0' y='1250'/>"
		"<at x='3200' y='1250'/></slab-joint>");
	assert_int_equal(cracks->group_count, 2);
	assert_int_equal(cracks->cracks[0].state, CRACK_ISOLATE);
	assert_int_equal(cracks->cracks[1].state, CRACK_HOLD);
	arena_free(arena);
}

/* The worst member speaks for the group. */
static void test_worst_member(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 3200, 2400, 297, "",
		"<crack id='K1' width='1mm'><at x='1450' y='0'/><at x='1450' y='1000'/></crack>"
		"<crack id='K2' width='1mm' step='2mm'><at x='1450' y='1000'/>"
		"<at x='1450' y='1900'/></crack>");
	const struct cracks *cracks = lay->cracks;
	assert_int_equal(cracks->group_count, 1);
	assert_int_equal(cracks->cracks[0].state, CRACK_HOLD);
	assert_int_equal(cracks->cracks[0].verdict.state, CRACK_ISOLATE);
	assert_int_equal(cracks->hold_count, 1);
	assert_string_equal(cracks->holds[0].id, "K1.hold");
	assert_int_equal(lay->strips->strip_count, 0);
	assert_int_equal(lay->strips->soft_count, 0);
	arena_free(arena);
}

static void test_room_of_crack(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct cracks *cracks =
		cracks_of(arena, "<crack id='K1' room='room' width='4mm'><at x='1450' y='0'/>"
	                         "<at x='1450' y='2400'/></crack>");
	assert_int_equal(cracks->crack_count, 1);
	assert_true(cracks->cracks[0].pending);
	assert_string_equal(cracks->cracks[0].verdict.causes[0].rule->name, "crack-wide");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_reach),        cmocka_unit_test(test_groups),
		cmocka_unit_test(test_tile_between), cmocka_unit_test(test_carried_joint_parts),
		cmocka_unit_test(test_worst_member), cmocka_unit_test(test_room_of_crack),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
