/* What other settings of the tile would leave: slivers cured by opening the joints (docs/sources.md
 * R-W05), and planks that do not start at a joint out of square. */
#include "layout/alternatives.h"

#include <string.h>

#include "support/program.h"
#include "support/rooms.h"

static const double IN = 25.4;

static const struct alternatives *others_of(struct arena *arena, const char *text)
{
	struct diag_list diags = {0};
	const struct rules *rules = rules_load(arena, "us", true, &diags);
	assert_non_null(rules);
	const struct placed *placed = placed_from_site(arena, site_from_text(arena, text), rules);
	return alternatives_of_lay(arena, rules, &placed->lays[0]);
}

static const struct alternative *find(const struct alternatives *others, enum alternative_kind kind,
                                      const char *at)
{
	for (size_t i = 0; i < others->count; i++)
		if (others->items[i].kind == kind &&
		    (at == NULL || strcmp(others->items[i].at, at) == 0))
			return &others->items[i];
	return NULL;
}

/* ---- R-W05 ---- */

/* Six tiles of 16 in and six joints of 1/8 in from the west wall leave 3/16 in at the east. */
static const char SLIVER[] =
	"<floor version=\"1\" unit=\"in\">"
	"<slab id=\"S\" thickness=\"4in\" support=\"ground\" exposure=\"indoor\"/>"
	"<room id=\"R\" slab=\"S\"><walls x=\"0\" y=\"0\" heading=\"0\">"
	"<wall length=\"96 15/16in\" id=\"south\"/><wall length=\"80 1/2in\" id=\"east\"/>"
	"<wall length=\"96 15/16in\" id=\"north\"/><wall length=\"80 1/2in\" id=\"west\"/>"
	"</walls></room>"
	"<tile id=\"T\" kind=\"porcelain\" wide=\"16in\" thick=\"3/8in\"/>"
	"<lay id=\"L\" rooms=\"R\" tile=\"T\" joint=\"1/8in\" pattern=\"grid\" gap=\"0in\" "
	"gap-max=\"0in\" tolerance=\"0in\" full-at=\"west\"/></floor>";

static void test_joints_opened(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct alternatives *others = others_of(arena, SLIVER);
	assert_near(others->taken.cut->least, 3.0 / 16 * IN, 1e-6);
	assert_string_equal(others->taken.of, "east");
	const struct alternative *opened = find(others, ALTERNATIVE_JOINT, NULL);
	assert_non_null(opened);
	assert_near(opened->joint, 5.0 / 32 * IN, 1e-6);
	assert_true(alternative_cures(opened));
	arena_free(arena);
}

static void test_without_wishes(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct alternatives *others = others_of(arena, SLIVER);
	const struct alternative *free = find(others, ALTERNATIVE_FREE, NULL);
	assert_non_null(free);
	/* Both slivers and a tile halved: (16 + 3/16) / 2 in, as R-W03 has it. */
	assert_near(free->least.cut->least, 8.09375 * IN, 1.0 / 16 * IN);
	arena_free(arena);
}

/* ---- planks at a joint out of square ---- */

static const char PLANKS[] =
	"<floor version=\"1\" unit=\"in\">"
	"<slab id=\"S\" thickness=\"5in\" support=\"ground\" exposure=\"indoor\"/>"
	"<room id=\"R\" slab=\"S\"><walls x=\"0\" y=\"0\" heading=\"0\">"
	"<wall length=\"96in\" id=\"south\"/><wall length=\"120 1/8in\" id=\"east\"/>"
	"<wall length=\"96in\" id=\"north\"/><wall length=\"120 1/8in\" id=\"west\"/>"
	"</walls></room>"
	"<slab-joint id=\"J\" kind=\"construction\" width=\"1/8in\">"
	"<at x=\"0\" y=\"40\"/><at x=\"96\" y=\"40 3/4in\"/></slab-joint>"
	"<tile id=\"T\" kind=\"porcelain\" wide=\"5 7/8in\" long=\"35 7/8in\" thick=\"3/8in\"/>"
	"<lay id=\"L\" rooms=\"R\" tile=\"T\" joint=\"1/8in\" pattern=\"running\" shift=\"1/3\"/>"
	"</floor>";

static void test_planks_do_not_start_at_the_joint(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct alternatives *others = others_of(arena, PLANKS);
	const struct alternative *along = find(others, ALTERNATIVE_ALONG, "J");
	assert_non_null(along);
	assert_near(along->turn_deg, atan2(0.75, 96) * 180 / 3.14159265358979323846, 1e-9);
	assert_string_equal(along->least.of, "north");
	assert_near(along->least.cut->least, 1 * IN, 1.0 / 16 * IN);
	assert_true(others->taken.share > along->least.share);
	assert_true(others->taken.cut->least > along->least.cut->least);
	arena_free(arena);
}

static void test_none_is_the_place_it_has(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct alternatives *others = others_of(arena, SLIVER);
	assert_null(find(others, ALTERNATIVE_START, "west"));
	assert_non_null(find(others, ALTERNATIVE_START, "east"));
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_joints_opened),
		cmocka_unit_test(test_without_wishes),
		cmocka_unit_test(test_planks_do_not_start_at_the_joint),
		cmocka_unit_test(test_none_is_the_place_it_has),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
