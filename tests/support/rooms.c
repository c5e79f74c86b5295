#include "support/rooms.h"

#include <string.h>

#include "base/strbuf.h"
#include "plan/plan_parse.h"
#include "support/program.h"

/* Outlines on a unit of a quarter of the room, scaled and jittered. */
static const struct {
	struct point corners[8];
	size_t count;
} SHAPES[] = {
	{{{0, 0}, {4, 0}, {4, 4}, {0, 4}}, 4},
	{{{0, 0}, {4, 0}, {4, 2}, {2, 2}, {2, 4}, {0, 4}}, 6},
	{{{0, 0}, {4, 0}, {4, 4}, {3, 4}, {3, 3}, {1, 3}, {1, 4}, {0, 4}}, 8},
	{{{0, 0}, {4, 0}, {4, 2}, {3, 2}, {3, 4}, {1, 4}, {1, 2}, {0, 2}}, 8},
	{{{0, 0}, {4, 0}, {4, 4}, {1, 4}, {0, 3}}, 5},
};

struct random_room random_room(struct seed *seed, int shape, int tile_most)
{
	static const char *const patterns[] = {
		"pattern=\"grid\"",
		"pattern=\"running\" shift=\"1/2\"",
		"pattern=\"running\" shift=\"1/3\"",
		"pattern=\"running\" shift=\"1/4\" stagger=\"alternate\"",
	};
	int shapes = (int)(sizeof SHAPES / sizeof *SHAPES);
	struct random_room room = {.corner_count = SHAPES[shape % shapes].count};
	double x[5] = {0}, y[5] = {0};
	for (int i = 1; i < 5; i++) {
		x[i] = x[i - 1] + 2 * tile_most + seed_below(seed, 6 * tile_most);
		y[i] = y[i - 1] + 2 * tile_most + seed_below(seed, 6 * tile_most);
	}
	for (size_t i = 0; i < room.corner_count; i++) {
		struct point unit = SHAPES[shape % shapes].corners[i];
		room.corners[i] = (struct point){x[(int)unit.x], y[(int)unit.y]};
	}
	room.tile_wide = tile_most / 3 + seed_below(seed, tile_most / 3);
	room.tile_long = room.tile_wide + seed_below(seed, tile_most - room.tile_wide);
	room.joint = 2 + seed_below(seed, 3);
	room.pattern = patterns[seed_below(seed, 4)];
	room.angle = 90 * seed_below(seed, 2);
	return room;
}

const char *random_room_text(struct arena *arena, const struct random_room *room,
                             const char *extra_lay)
{
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<floor version=\"1\" unit=\"mm\"><slab id=\"S\" thickness=\"150\" "
	                  "support=\"ground\" "
	                  "exposure=\"indoor\"/><room id=\"R\" slab=\"S\"><corners>");
	for (size_t i = 0; i < room->corner_count; i++)
		strbuf_printf(&text, "<corner x=\"%d\" y=\"%d\"/>", (int)room->corners[i].x,
		              (int)room->corners[i].y);
	strbuf_add(&text, "</corners></room>");
	strbuf_printf(&text,
	              "<tile id=\"T\" kind=\"porcelain\" wide=\"%d\" long=\"%d\" thick=\"10\"/>",
	              room->tile_wide, room->tile_long);
	strbuf_printf(&text,
	              "<lay id=\"L\" rooms=\"R\" tile=\"T\" joint=\"%d\" angle=\"%d\" %s "
	              "tolerance=\"3\">%s</lay></floor>",
	              room->joint, room->angle, room->pattern, extra_lay);
	return text.text;
}

const struct site *site_from_text(struct arena *arena, const char *text)
{
	struct diag_list diags = diag_list_in(arena, "text");
	const struct plan *plan;
	const struct site *site = NULL;
	enum status status = plan_parse(arena, text, strlen(text), &diags, &plan);
	if (!status)
		status = site_build(arena, plan, &diags, &site);
	diag_print(&diags, stdout);
	assert_int_equal(status, STATUS_OK);
	return site;
}

const struct rules *rules_for_tests(struct arena *arena)
{
	struct diag_list diags = diag_list_in(arena, "rules");
	const struct rules *rules = rules_load(arena, "us", false, &diags);
	assert_non_null(rules);
	return rules;
}
