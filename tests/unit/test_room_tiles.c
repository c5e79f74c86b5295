/* Tile by room of a lay adds up to what the lay has: E-Q1. A hall of 4 m by 3 m, a den of 3 m by
 * 3 m behind a wall of 100 mm with two doorways in it, a hold, a crack through one of them. */
#include "support/program.h"

#include "count/room_shares.h"
#include "count/room_tiles.h"
#include "count/totals.h"
#include "support/rooms.h"

static const char PLAN[] =
	"<floor version='1' unit='mm'>"
	"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
	"<room id='hall' slab='S1'><corners><corner x='0' y='0'/><corner x='4000' y='0'/>"
	"<corner x='4000' y='3000'/><corner x='0' y='3000'/></corners>"
	"<doorway id='D1' wall='hall.2' from='100' width='900' to='den'/>"
	"<doorway id='D2' wall='hall.2' from='1900' width='900' to='den'/></room>"
	"<room id='den' slab='S1'><corners><corner x='4100' y='0'/><corner x='7100' y='0'/>"
	"<corner x='7100' y='3000'/><corner x='4100' y='3000'/></corners></room>"
	"<crack id='K1' width='1' step='2'><at x='2500' y='2300'/><at x='4500' y='2400'/></crack>"
	"<tile id='T1' kind='porcelain' wide='297' thick='10'/>"
	"<lay id='L1' rooms='hall den' tile='T1' joint='3' pattern='running'/></floor>";

static void test_rooms_add_up(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct site *site = site_from_text(arena, PLAN);
	const struct placed *placed = placed_from_site(arena, site, rules_for_tests(arena));
	const struct placed_lay *lay = &placed->lays[0];
	const struct room_tiles *rooms = room_tiles_of(arena, lay, 0);
	struct tile_total total = tile_total(lay);
	assert_true(total.held_whole > 0);
	assert_int_equal(rooms[0].whole + rooms[1].whole, total.whole);
	assert_int_equal(rooms[0].cut + rooms[1].cut, total.cut);
	assert_near(rooms[0].tile_mm2 + rooms[1].tile_mm2, total.tile_mm2, 1e-3);
	const double *fields = room_shares_of_field(arena, lay->field);
	assert_near(fields[0] + fields[1], lay->field->area_mm2, 1e-3);
	/* The patches are of the hall, as far as the wall of the den. */
	double patch = (900 - 12) * (6 + 100);
	assert_near(fields[1], 2988.0 * 2988 + 2 * 888 * 6, 1e-3);
	assert_near(fields[0], 3988.0 * 2988 + 2 * patch, 1e-3);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_rooms_add_up)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
