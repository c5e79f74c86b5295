/* The record of a floor built by hand: names, units, axes, escapes; and the points. */
#include <string.h>

#include "record/markup.h"
#include "record/record.h"
#include "support/floor.h"
#include "support/program.h"
#include "support/tables.h"

static const char *recorded(const struct floor *f)
{
	const struct findings *findings = findings_judge(tables.arena, &f->placed, tables.en);
	return record_write(tables.arena, &f->placed, findings, "hall & co.xml").data;
}

static void assert_has(const char *text, const char *part)
{
	if (strstr(text, part) == NULL)
		fail_msg("`%s` is not in:\n%s", part, text);
}

static void assert_has_not(const char *text, const char *part)
{
	if (strstr(text, part) != NULL)
		fail_msg("`%s` is in:\n%s", part, text);
}

/* Every start tag has its end: enough to see that nothing is left open. */
static void elements_are_closed(void **state)
{
	(void)state;
	const char *open[32];
	size_t depth = 0;
	for (const char *p = strchr(recorded(floor_new(tables.arena, tables.us)) + 2, '<');
	     p != NULL; p = strchr(p + 1, '<')) {
		size_t length = strcspn(p + 1, " />");
		const char *close = strchr(p, '>');
		if (p[1] == '/') {
			length = strcspn(p + 2, ">");
			assert_true(depth > 0);
			assert_memory_equal(open[--depth], p + 2, length);
		} else if (close[-1] != '/') {
			open[depth++] = p + 1;
		}
		assert_true(length > 0 && depth < 32);
	}
	assert_int_equal(depth, 0);
}

static void each_element_has_its_names(void **state)
{
	(void)state;
	const char *r = recorded(floor_new(tables.arena, tables.us));
	assert_memory_equal(r, "<?xml", 5);
	assert_has(r, "<placed version=\"1\" plan=\"hall &amp; co.xml\" title=\"A small "
	              "&lt;hall&gt;\">\n");
	assert_has(r, "<room id=\"hall\" area=\"12.000000000000\" perimeter=\"14000.000000\" "
	              "closing-error=\"0.000000\">");
	assert_has(r, "<outline>0.000000,0.000000 4000.000000,0.000000 4000.000000,3000.000000 "
	              "0.000000,3000.000000</outline>");
	assert_has(r, "<crack id=\"K1\" state=\"isolate\" pending=\"no\" group=\"K1\">");
	assert_has(r, "<control id=\"hall.u\" room=\"hall\" x1=\"0.000000\" y1=\"1500.000000\" "
	              "x2=\"4000.000000\" y2=\"1500.000000\"/>");
	assert_has(r, "<first room=\"hall\" x=\"1990.000000\" y=\"1500.000000\"/>");
	assert_has(r, "<field lay=\"L1\" rooms=\"hall\" area=\"11.916144000000\">");
	assert_has(r, "<grid angle=\"0\" a=\"306.000000,0.000000\" b=\"102.000000,156.000000\">");
	assert_has(r, "<face tile=\"T1\">3.000000,3.000000 303.000000,3.000000");
	assert_has(r, "<setting-out unmet=\"0\" small=\"0\" whole-at-joint=\"0\" balance=\"0\" "
	              "cut-pieces=\"0\"/>");
	assert_has(r, "<edge of=\"hall.1\" from=\"6.000000,6.000000\" to=\"3994.000000,6.000000\" "
	              "cut-from=\"80.000000\" cut-to=\"90.000000\" courses=\"\"/>");
	assert_has(r, "<panel id=\"L1.panel.1\" x=\"10.000000\" y=\"20.000000\" "
	              "area=\"11.916144000000\" long=\"3988.000000\" short=\"2988.000000\">");
	assert_has(r, "<cover membrane=\"M1\" rooms=\"hall\" area=\"1.350000000000\" "
	              "scope=\"partial\" alternate=\"\">");
	assert_has(r, "<strip id=\"K1.strip\" crack=\"K1\" width=\"450.000000\" "
	              "length=\"3000.000000\" area=\"1.350000000000\" pending=\"no\">");
	assert_has(r, "<piece order=\"1\" roll=\"1\" length=\"3000.000000\" wide=\"450.000000\" "
	              "lap=\"0.000000\">");
	assert_has(r, "<joint id=\"K1.left\" kind=\"soft\" of=\"K1\" side=\"left\" on=\"joint\" "
	              "width=\"6.000000\" depth=\"3.000000\" back=\"none\" length=\"2988.000000\" "
	              "turns=\"0\" cost=\"0.000000\" ends=\"hall.1 hall.3\" why=\"crack-plain\" "
	              "serves=\"\">");
	assert_has(r, "<finding rule=\"crack-plain\" weight=\"note\" state=\"open\" who=\"crew\" "
	              "about=\"K1\" line=\"5\" x=\"2000.000000\" y=\"1500.000000\" measured=\"1\" "
	              "limit=\"0\" unit=\"mm\" source=\"R-C08");
	assert_has(r, "</finding>\n</placed>\n");
	assert_has_not(r, "<hold ");
}

static void tile_in_a_hold_is_counted_apart(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	assert_has(recorded(f), "<tiles whole=\"200\" cut=\"3\" lost=\"0.000000000000\" "
	                        "held-whole=\"0\" held-cut=\"0\" held-area=\"0.000000000000\" "
	                        "smallest-cut=\"80.000000\" smallest-cut-worst=\"74.000000\" "
	                        "smallest-piece=\"0.001000000000\" area=\"11.000000000000\"/>");
	f->cracks.hold_count = 1;
	const char *r = recorded(f);
	assert_has(r, "<tiles whole=\"190\" cut=\"2\" lost=\"0.000000000000\" held-whole=\"10\" "
	              "held-cut=\"1\" held-area=\"0.460000000000\"");
	assert_has(r, "area=\"10.540000000000\"/>");
	assert_has(r, "<hold id=\"K1.hold\" crack=\"K1\" area=\"0.500000000000\">");
}

static void everything_is_turned_back_to_plan_axes(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->field.frame = frame_from_deg(90);
	f->plan_lay.angle_deg = 90;
	f->cracks.hold_count = 1;
	const char *r = recorded(f);
	assert_has(r, "<grid angle=\"90\" a=\"0.000000,306.000000\" b=\"-156.000000,102.000000\">");
	assert_has(r, "<face tile=\"T1\">-3.000000,3.000000 -3.000000,303.000000");
	assert_has(r, "<panel id=\"L1.panel.1\" x=\"-20.000000\" y=\"10.000000\"");
	assert_has(r, "x1=\"-1500.000000\" y1=\"0.000000\" x2=\"-1500.000000\" y2=\"4000.000000\"");
	assert_has(r, "<first room=\"hall\" x=\"-1500.000000\" y=\"1990.000000\"/>");
	assert_has(r, "from=\"-6.000000,6.000000\" to=\"-6.000000,3994.000000\"");
	assert_has(r, "<outline>0.000000,1775.000000 0.000000,2225.000000 "
	              "-3000.000000,2225.000000 -3000.000000,1775.000000</outline>");
	assert_has(r, "<line>-6.000000,1836.000000 -2994.000000,1836.000000</line>");
	assert_has(r, "<outline>-6.000000,1800.000000");
	/* The room and the crack are in plan axes already. */
	assert_has(r, "<line>2000.000000,0.000000 2000.000000,3000.000000</line>");
	assert_has_not(r, "-0.000000");
}

static void a_closed_joint_comes_back(void **state)
{
	(void)state;
	assert_has(recorded(floor_new(tables.arena, tables.us)),
	           "<line>500.000000,500.000000 800.000000,500.000000 800.000000,800.000000 "
	           "500.000000,800.000000 500.000000,500.000000</line>");
}

static void a_hole_follows_its_outline(void **state)
{
	(void)state;
	struct strbuf out = strbuf_in(tables.arena);
	struct markup m = {&out, 0, false};
	struct region outer = floor_rectangle(tables.arena, 0, 0, 9, 9);
	struct region inner = floor_rectangle(tables.arena, 3, 3, 6, 6);
	outer.polygons[0].holes = &inner.polygons[0].outline;
	outer.polygons[0].hole_count = 1;
	markup_start(&m, "a");
	markup_text(&m, "t", "\"x\"\n\t&");
	markup_region(&m, &outer);
	markup_end(&m, "a");
	assert_memory_equal(out.text, "<a t=\"&quot;x&quot;&#10;&#9;&amp;\">\n  <outline>", 42);
	assert_non_null(strstr(out.text, "</outline>\n  <hole>3.000000,3.000000 "));
}

static void points_are_metres_in_plan_axes(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	struct point path[] = {{1836, 6}, {1836, 500}, {1836, 1000}, {2142, 1000}, {2142, 2994}};
	f->joint_list[0].line = (struct line){path, 5};
	const char *csv = record_points(tables.arena, &f->placed).data;
	assert_memory_equal(csv, "name,x,y,what\r\n", 15);
	assert_has(csv, "hall.u.1,0.0000,1.5000,control line\r\n"
	                "hall.u.2,4.0000,1.5000,control line\r\n"
	                "hall.first,1.9900,1.5000,first tile\r\n");
	assert_has(csv, "K1.left.1,1.8360,0.0060,soft joint end\r\n"
	                "K1.left.2,1.8360,1.0000,soft joint turn\r\n"
	                "K1.left.3,2.1420,1.0000,soft joint turn\r\n"
	                "K1.left.4,2.1420,2.9940,soft joint end\r\n");
	assert_has(csv, "K1.strip.corner.1,1.7750,0.0000,strip corner\r\n");
	assert_has_not(csv, "perimeter");
	assert_has_not(csv, "corner.5");
}

/* A bend that a setter sees is staked; less than 1 in 500 is straight. */
static void a_slight_bend_is_a_turn(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	struct point path[] = {{1000, 0}, {1000, 1000}, {1001, 2000}, {1011, 3000}};
	f->joint_list[0].line = (struct line){path, 4};
	const char *csv = record_points(tables.arena, &f->placed).data;
	assert_has(csv, "K1.left.1,1.0000,0.0000,soft joint end\r\n"
	                "K1.left.2,1.0010,2.0000,soft joint turn\r\n"
	                "K1.left.3,1.0110,3.0000,soft joint end\r\n");
}

/* Crossing two lays a crack is what the worse of them makes of it, whichever comes first. */
static void a_crack_is_as_in_its_worse_lay(void **state)
{
	(void)state;
	for (int turn = 0; turn < 2; turn++) {
		struct floor *f = floor_new(tables.arena, tables.us);
		struct floor *other = floor_new(tables.arena, tables.us);
		struct placed_lay two[2] = {f->placed.lays[0], other->placed.lays[0]};
		other->placed_crack.crack = &f->crack;
		struct floor *worse = turn == 0 ? f : other;
		worse->placed_crack.state = CRACK_HOLD;
		worse->placed_crack.pending = true;
		f->placed.lays = two;
		f->placed.lay_count = 2;
		assert_has(recorded(f), "<crack id=\"K1\" state=\"hold\" pending=\"yes\"");
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(elements_are_closed),
		cmocka_unit_test(each_element_has_its_names),
		cmocka_unit_test(tile_in_a_hold_is_counted_apart),
		cmocka_unit_test(everything_is_turned_back_to_plan_axes),
		cmocka_unit_test(a_closed_joint_comes_back),
		cmocka_unit_test(a_hole_follows_its_outline),
		cmocka_unit_test(points_are_metres_in_plan_axes),
		cmocka_unit_test(a_slight_bend_is_a_turn),
		cmocka_unit_test(a_crack_is_as_in_its_worse_lay),
	};
	return cmocka_run_group_tests(tests, tables_start, tables_end);
}
