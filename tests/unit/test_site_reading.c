/* From the text of a plan to the site: the whole way, and all errors of both in one run. */
#include "support/program.h"

#include <stdlib.h>
#include <string.h>

#include "plan/plan_parse.h"
#include "site/site.h"

#define HEAD                                                                    \
	"<floor version=\"1\" unit=\"in\">\n<slab id=\"S1\" thickness=\"5in\" " \
	"support=\"ground\" exposure=\"indoor\"/>\n"

static const struct site *site_of(struct arena *arena, const char *text, struct diag_list *diags)
{
	const struct plan *plan = NULL;
	const struct site *site = NULL;
	*diags = diag_list_in(arena, "floor.xml");
	enum status read = plan_parse(arena, text, strlen(text), diags, &plan);
	if (!plan)
		return NULL;
	enum status built = site_build(arena, plan, diags, &site);
	assert_true(read == STATUS_OK || built != STATUS_OK);
	return site;
}

/* The bay of the floor format's own example. */
static const char BAY[] = HEAD
	"<room id=\"bay\" name=\"Stall bay\" slab=\"S1\"><walls x=\"0\" y=\"0\" heading=\"0\">\n"
	"<wall id=\"south\" length=\"20ft\"/> <wall id=\"east\" length=\"15ft\"/>\n"
	"<wall id=\"north\" length=\"20ft\"/> <wall id=\"west\" length=\"15ft\"/></walls>\n"
	"<obstacle id=\"C1\" kind=\"column\" x=\"10ft\" y=\"11ft\" wide=\"12in\" deep=\"12in\"/>\n"
	"<doorway id=\"D1\" wall=\"south\" from=\"8ft\" width=\"4ft\"/></room>\n"
	"<crack id=\"K1\" room=\"bay\" width=\"1/16in\" step=\"0\">"
	"<at wall=\"south\" along=\"5ft 2in\"/>"
	"<at x=\"5ft 6in\" y=\"8ft\"/><at x=\"5ft\" y=\"14ft 11 1/4in\"/></crack>\n"
	"<slab-joint id=\"J1\" kind=\"construction\" width=\"1/2in\"><at x=\"14ft\" y=\"0\"/>"
	"<at x=\"14ft\" y=\"15ft\"/></slab-joint>\n"
	"</floor>\n";

static void test_stall_bay(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct diag_list diags;
	const struct site *site = site_of(arena, BAY, &diags);
	for (size_t i = 0; i < diags.diags.count; i++)
		fail_msg("line %d: %s", diags.diags.items[i].line, diags.diags.items[i].text);
	assert_true(site->inches);
	const struct site_room *bay = site_room_find(site, "bay");
	assert_non_null(bay);
	assert_null(site_room_find(site, "hall"));
	assert_string_equal(bay->name, "Stall bay");
	assert_true(bay->closing_error == 0);
	assert_near(ring_area(bay->outline), 20 * 304.8 * 15 * 304.8, 1e-6);
	assert_string_equal(bay->edges[3].id, "west");
	assert_near(bay->doorways[0].from.x, 8 * 304.8, 1e-9);
	assert_near(bay->doorways[0].to.x, 12 * 304.8, 1e-9);
	assert_near(bay->obstacles[0].ring.points[0].x, 9.5 * 304.8, 1e-9);
	struct line crack = site->cracks[0].line;
	assert_near(crack.points[0].x, 62 * 25.4, 1e-9);
	assert_near(crack.points[0].y, 0, 0);
	assert_near(crack.points[2].y, 180 * 25.4, 1e-9); /* 3/4 in short of the north wall */
	assert_near(site->cracks[0].wander, 12.7, 0);
	assert_near(site->slab_joints[0].width, 12.7, 0);
	arena_free(arena);
}

/* Twelve faults of reading and of geometry, each on a line of its own. */
static const char FAULTS[] = HEAD                                            /* 1, 2 */
	"<room id=\"a\" slab=\"S1\"><walls x=\"0\" y=\"0\" heading=\"0\">\n" /* 3 */
	"<wall length=\"20ft\"/><wall length=\"15ft\"/>\n"                   /* 4 */
	"<wall length=\"20ft\"/><wall length=\"15ft\"/></walls>\n"           /* 5 */
	"<obstacle id=\"C1\" kind=\"column\" x=\"40ft\" y=\"1ft\" "
	"across=\"6in\"/>\n" /* 6 outside */
	"<obstacle id=\"C2\" kind=\"pillar\" x=\"40ft\" y=\"1ft\" across=\"6in\"/>\n" /* 7 kind */
	"<doorway id=\"D1\" wall=\"a.1\" from=\"1ft\" width=\"3ft\"/>\n"              /* 8 */
	"<doorway id=\"D2\" wall=\"a.1\" from=\"3ft 6in\" width=\"3ft\"/>\n"     /* 9 overlap */
	"<doorway id=\"D3\" wall=\"a.9\" from=\"3ft\" width=\"3ft\"/>\n"         /* 10 no wall */
	"<doorway id=\"D4\" wall=\"a.2\" from=\"13ft\" width=\"3ft\"/></room>\n" /* 11 past */
	"<room id=\"b\" slab=\"S1\"><walls x=\"50ft\" y=\"0\" heading=\"0\">\n"  /* 12 open */
	"<wall length=\"20ft\"/><wall length=\"15ft\"/>\n"                       /* 13 */
	"<wall length=\"20ft\"/><wall length=\"16ft\"/></walls></room>\n"        /* 14 */
	"<room id=\"c\" slab=\"S1\"><corners>\n"                                 /* 15 */
	"<corner x=\"0\" y=\"50ft\"/><corner x=\"9ft\" y=\"60ft\"/>\n"           /* 16 */
	"<corner x=\"9ft\" y=\"50ft\"/>\n"                                       /* 17 crosses */
	"<corner x=\"0\" y=\"60ft\"/></corners></room>\n"                        /* 18 */
	"<room id=\"d\" slab=\"S1\"><corners>\n"                                 /* 19 */
	"<corner x=\"0\" y=\"70ft\"/><corner x=\"9ft\" y=\"70ft\"/>\n"           /* 20 */
	"<corner x=\"9ft\"\n"                                                    /* 21 */
	"y=\"1e3\"/><corner x=\"0\" y=\"90ft\"/></corners>\n"                    /* 22 value */
	"<obstacle id=\"C3\" kind=\"box\" x=\"90ft\" y=\"1ft\" across=\"6in\"/></room>\n" /* 23 */
	"<crack id=\"K1\" room=\"d\" width=\"1/16in\"><at x=\"0\" y=\"0\"/><at x=\"9ft\" "
	"y=\"0\"/></crack>\n"
	"<crack id=\"K2\" room=\"a\" width=\"1/16in\"><at x=\"1ft\" y=\"1ft\"/>\n" /* 25 */
	"<at x=\"1ft\" y=\"-1.1in\"/></crack>\n"                                   /* 26 outside */
	"<crack id=\"K3\" room=\"a\" width=\"1/16in\"><at x=\"1ft\" y=\"1ft\"/>\n" /* 27 */
	"<at wall=\"nowhere\" along=\"1ft\"/></crack>\n"                           /* 28 no wall */
	"<crack id=\"K4\" room=\"a\" width=\"1/16in\">\n"                /* 29 no length */
	"<at x=\"1ft\" y=\"1ft\"/><at x=\"12in\" y=\"12in\"/></crack>\n" /* 30 */
	"<slab-joint id=\"J1\" kind=\"cold\" width=\"1/2in\" depth=\"1in\"><at x=\"1ft\" "
	"y=\"1ft\"/>" /* 31 */
	"<at x=\"1ft\" y=\"1ft\"/></slab-joint>\n"
	"</floor>\n";
static const int FAULT_LINES[] = {6, 7, 9, 10, 11, 12, 17, 22, 26, 28, 29, 31};

static int rising(const void *a, const void *b)
{
	return *(const int *)a - *(const int *)b;
}

static void test_faults_of_both_in_one_run(void **state)
{
	(void)state;
	enum { COUNT = sizeof FAULT_LINES / sizeof *FAULT_LINES };
	struct arena *arena = arena_new();
	struct diag_list diags;
	site_of(arena, FAULTS, &diags);
	int lines[COUNT] = {0};
	for (size_t i = 0; i < diags.diags.count; i++) {
		const struct diag *diag = &diags.diags.items[i];
		if (i >= COUNT)
			fail_msg("one too many, line %d: %s", diag->line, diag->text);
		lines[i] = diag->line;
	}
	qsort(lines, COUNT, sizeof *lines, rising);
	for (size_t i = 0; i < COUNT; i++)
		assert_int_equal(lines[i], FAULT_LINES[i]);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_stall_bay),
		cmocka_unit_test(test_faults_of_both_in_one_run),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
