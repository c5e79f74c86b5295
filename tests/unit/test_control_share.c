/* Lines in common: a hall of 4 m by 3 m, a den of 3 m by 3 m to the east of it behind a wall of
 * 100 mm, a loft of 4 m by 2 m to the north of the hall. */
#include "support/program.h"

#include <stdlib.h>
#include <string.h>

#include "layout/placed.h"
#include "support/rooms.h"

#define ROOM(id, x0, y0, x1, y1, more)                                                            \
	"<room id='" id "' slab='S1'><corners><corner x='" x0 "' y='" y0 "'/>"                    \
	"<corner x='" x1 "' y='" y0 "'/><corner x='" x1 "' y='" y1 "'/><corner x='" x0 "' y='" y1 \
	"'/></corners>" more "</room>"

static const struct placed *placed_with(struct arena *arena, const char *doorways, const char *lays)
{
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>" ROOM(
			"hall", "0", "0", "4000", "3000", "%s") ROOM("den", "4100", "0", "7100",
	                                                             "3000", "")
			ROOM("loft", "0", "3100", "4000", "5100",
	                     "") "<tile id='T1' kind='porcelain' wide='297' thick='10'/>%s</floor>",
		doorways, lays);
	return placed_from_site(arena, site_from_text(arena, text), rules_for_tests(arena));
}

static const struct control *line_of(const struct placed_lay *lay, const char *room, bool along_u)
{
	for (size_t i = 0; i < lay->controls->control_count; i++) {
		const struct control *line = &lay->controls->controls[i];
		if (strcmp(line->room->id, room) == 0 && line->along_u == along_u)
			return line;
	}
	fail_msg("no line in %s", room);
	return NULL;
}

static const char ONE_LAY[] =
	"<lay id='L1' rooms='hall den loft' tile='T1' joint='3' pattern='grid'/>";

/* One line along the wall's normal through each opening, well off its jambs; also where that is
 * nearer to a wall than lines like to be. */
static void test_lines_go_on_through_doorways(void **state)
{
	(void)state;
	static const char *const EAST[] = {"100", "1000", "2000"};
	for (size_t i = 0; i < 3; i++) {
		struct arena *arena = arena_new();
		const char *doorways = arena_printf(
			arena,
			"<doorway id='D1' wall='hall.2' from='%s' width='900' to='den'/>"
			"<doorway id='D2' wall='hall.3' from='500' width='900' to='loft'/>",
			EAST[i]);
		const struct placed *placed = placed_with(arena, doorways, ONE_LAY);
		const struct placed_lay *lay = &placed->lays[0];
		double u = line_of(lay, "hall", true)->from.y, from = strtod(EAST[i], NULL);
		assert_true(u > from + 6 && u < from + 894);
		assert_near(line_of(lay, "den", true)->from.y, u, 1e-9);
		double v = line_of(lay, "hall", false)->from.x;
		assert_true(v > 2606 && v < 3494);
		assert_near(line_of(lay, "loft", false)->from.x, v, 1e-9);
		arena_free(arena);
	}
}

static void test_edge_of_the_same_side(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed *placed =
		placed_with(arena,
	                    "<doorway id='D0' wall='hall.1' from='500' width='900'/>"
	                    "<doorway id='D1' wall='hall.2' from='1000' width='900' to='den'/>",
	                    ONE_LAY);
	const struct controls *controls = placed->lays[0].controls;
	assert_false(controls->firsts[0].towards_v); /* to the doorway in the south */
	assert_false(controls->firsts[1].towards_v); /* as the hall, whose line it takes over */
	arena_free(arena);
}

/* No doorway, or another lay behind it: each room has its middle. */
static void test_nothing_in_common(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed *alone = placed_with(arena, "", ONE_LAY);
	const struct placed *apart =
		placed_with(arena,
	                    "<doorway id='D1' wall='hall.2' from='100' width='900' to='den'/>",
	                    "<lay id='L1' rooms='hall' tile='T1' joint='3' pattern='grid'/>"
	                    "<lay id='L2' rooms='den' tile='T1' joint='3' pattern='grid'/>");
	assert_near(line_of(&alone->lays[0], "hall", true)->from.y, 1500, 150);
	assert_near(line_of(&apart->lays[0], "hall", true)->from.y, 1500, 150);
	assert_near(line_of(&apart->lays[1], "den", true)->from.y, 1500, 150);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lines_go_on_through_doorways),
		cmocka_unit_test(test_edge_of_the_same_side),
		cmocka_unit_test(test_nothing_in_common),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
