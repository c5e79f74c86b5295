/* A plan as it is read: the model, its defaults, and what must not hold up the reader. */
#include "support/program.h"

#include <stdio.h>
#include <string.h>

#include "base/strbuf.h"
#include "plan/plan_parse.h"

struct reading {
	struct arena *arena;
	struct diag_list diags;
	const struct plan *plan;
	enum status status;
};

static struct reading read_bytes(const char *bytes, size_t length)
{
	struct arena *arena = arena_new();
	struct reading r = {.arena = arena, .diags = diag_list_in(arena, "floor.xml")};
	r.status = plan_parse(arena, bytes, length, &r.diags, &r.plan);
	return r;
}

static struct reading read_plan(const char *path)
{
	char piece[4096];
	size_t got;
	struct arena *arena = arena_new();
	struct strbuf text = strbuf_in(arena);
	FILE *in = fopen(path, "rb");
	assert_non_null(in);
	while ((got = fread(piece, 1, sizeof piece, in)) > 0)
		strbuf_add_bytes(&text, piece, got);
	fclose(in);
	struct reading r = read_bytes(text.text, text.length);
	arena_free(arena);
	return r;
}

/* ---- the model ---- */

static const int64_t IN = 25400000;

static void test_reads_the_model(void **state)
{
	(void)state;
	struct reading r = read_plan("tests/plans/tannery.xml");
	assert_int_equal(r.status, STATUS_OK);
	const struct plan *plan = r.plan;
	assert_string_equal(plan->title, "Tannery Row market hall, stall bay 3");
	assert_true(plan_has_inches(plan));
	assert_int_equal(date_days_between(plan->slabs[0].placed, plan->job->starts), 147);
	assert_int_equal(plan->room_count, 1);
	const struct plan_room *room = &plan->rooms[0];
	assert_ptr_equal(room->slab, &plan->slabs[0]);
	assert_int_equal(room->line, 6);
	assert_int_equal(room->wall_count, 4);
	assert_true(room->walls[1].length_nm == 15 * 12 * IN);
	assert_int_equal(room->walls[1].line, 8);
	assert_true(room->run->closing.num == 1 && room->run->closing.den == 500);
	const struct plan_crack *crack = &plan->cracks[0];
	assert_ptr_equal(crack->room, room);
	assert_true(crack->points[0].on_wall && crack->points[0].along_nm == 62 * IN);
	assert_string_equal(crack->points[0].wall, "south");
	assert_true(!crack->points[1].on_wall && crack->points[1].x_nm == 66 * IN);
	const struct plan_lay *lay = &plan->lays[0];
	assert_true(lay->shift.num == 1 && lay->shift.den == 3);
	assert_int_equal(lay->full_at[0].kind, PLAN_REF_DOORWAY);
	assert_ptr_equal(lay->full_at[0].element, &room->doorways[0]);
	assert_ptr_equal(lay->tiles[0], &plan->tiles[0]);
	assert_true(plan->tiles[0].wide_nm == 12 * IN - IN / 8);
	assert_ptr_equal(plan_membrane_over(plan, room), &plan->membranes[0]);
	assert_int_equal(plan_room_exposure(room), PLAN_EXPOSURE_INDOOR);
	arena_free(r.arena);
}

static const char *default_of(const struct plan *plan, const char *element, const char *attribute)
{
	for (size_t i = 0; i < plan->default_count; i++)
		if (strcmp(plan->defaults[i].element, element) == 0 &&
		    strcmp(plan->defaults[i].attribute, attribute) == 0)
			return plan->defaults[i].value;
	return "";
}

static void test_tells_defaults(void **state)
{
	(void)state;
	struct reading r = read_plan("tests/plans/tannery.xml");
	assert_string_equal(default_of(r.plan, "lay", "gap"), "1/4in");
	assert_true(r.plan->lays[0].gap_nm == IN / 4);
	assert_string_equal(default_of(r.plan, "crack", "wander"), "1/2in");
	assert_string_equal(default_of(r.plan, "sealant", "movement"), "25%");
	assert_string_equal(default_of(r.plan, "room", "exposure"), "indoor");
	assert_string_equal(default_of(r.plan, "lay", "shift"), "");
	assert_string_equal(default_of(r.plan, "crack", "width"), "");
	arena_free(r.arena);
}

/* ---- small floors ---- */

#define HEAD "<floor version='1' unit='%s'>\n"
#define ROOM                                                                            \
	"<slab id='S' thickness='6in' support='ground' exposure='wet' heated='yes'/>\n" \
	"<room id='R' slab='S'><corners><corner x='0' y='0'/><corner x='1' y='0'/>"     \
	"<corner x='1' y='1'/></corners></room>\n"

static struct reading read_floor(const char *unit, const char *rest)
{
	char text[4000];
	int length = snprintf(text, sizeof text, HEAD ROOM "%s</floor>", unit, rest);
	return read_bytes(text, (size_t)length);
}

static void shift_is(const char *unit, const char *tile, int64_t num, int64_t den)
{
	char rest[400];
	snprintf(rest, sizeof rest,
	         "<tile id='T' kind='stone' thick='10mm' %s/>"
	         "<lay id='L' rooms='R' tile='T' joint='1/8in' pattern='running'/>",
	         tile);
	struct reading r = read_floor(unit, rest);
	assert_int_equal(r.status, STATUS_OK);
	assert_true(r.plan->lays[0].shift.num == num && r.plan->lays[0].shift.den == den);
	arena_free(r.arena);
}

static void test_shift_by_nominal_side(void **state)
{
	(void)state;
	shift_is("m", "wide='5in' long='14 7/8in'", 1, 3);
	shift_is("m", "wide='5in' long='14 3/4in'", 1, 2);
	shift_is("ft", "wide='300mm'", 1, 2);
}

static void test_defaults_by_unit(void **state)
{
	(void)state;
	static const char rest[] =
		"<crack id='K' width='1mm'><at x='0' y='0'/><at x='1' y='1'/></crack>";
	struct reading metric = read_floor("m", rest), inches = read_floor("ft", rest);
	assert_true(metric.plan->cracks[0].wander_nm == 12000000);
	assert_true(inches.plan->cracks[0].wander_nm == IN / 2);
	assert_true(metric.plan->rooms[0].walls[1].x_nm == 1000000000);
	assert_true(inches.plan->rooms[0].walls[1].x_nm == 12 * IN);
	assert_true(metric.plan->rooms[0].heated);
	assert_string_equal(metric.plan->rooms[0].walls[2].id, "R.3");
	arena_free(metric.arena);
	arena_free(inches.arena);
}

/* ---- one fault, one line ---- */

static void one_error(struct reading r, int line, const char *part)
{
	assert_int_equal(r.status, STATUS_INPUT);
	if (r.diags.diags.count != 1)
		diag_print(&r.diags, stdout);
	assert_int_equal(r.diags.diags.count, 1);
	if (r.diags.diags.items[0].line != line || !strstr(r.diags.diags.items[0].text, part))
		fail_msg("%d: %s", r.diags.diags.items[0].line, r.diags.diags.items[0].text);
	arena_free(r.arena);
}

static void test_lines_past_65535(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct strbuf text = strbuf_in(arena);
	strbuf_printf(&text, HEAD ROOM, "mm");
	for (int i = 0; i < 100000; i++)
		strbuf_add(&text, i % 3 ? "\n" : "\r\n");
	strbuf_add(&text, "<job\n number='1'\n siite='2'/></floor>");
	one_error(read_bytes(text.text, text.length), 100006, "siite");
	arena_free(arena);
}

/* What stands around an attribute does not shift its line. */
static void test_lines_beside_other_markup(void **state)
{
	(void)state;
	one_error(read_floor("mm", "<!-- <job\n x='1'> -->\n<job site='a > b\n'\n  x='1'/>"), 8,
	          "\"x\"");
	one_error(read_floor("mm", "<?note <job\n?>\n<job\n\n x=\"it's\"/>"), 8, "\"x\"");
	one_error(read_floor("mm", "<job></job>\n<!-- -->\n  <![CDATA[\n stray ]]>"), 7, "text");
	one_error(read_floor("mm", "<!-- --><job\n\n x='1'/><!-- -->"), 6, "\"x\"");
	one_error(read_floor("mm", "<job site='&amp;'/>\n<job2/>"), 5, "job2");
}

/* ---- hostile texts ---- */

static struct reading read_repeated(const char *before, const char *piece, size_t count,
                                    const char *after)
{
	struct arena *arena = arena_new();
	struct strbuf text = strbuf_in(arena);
	strbuf_printf(&text, HEAD, "mm");
	strbuf_add(&text, before);
	for (size_t i = 0; i < count; i++)
		strbuf_add(&text, piece);
	strbuf_add(&text, after);
	struct reading r = read_bytes(text.text, text.length);
	arena_free(arena);
	return r;
}

static void test_limits(void **state)
{
	(void)state;
	one_error(read_repeated("<slab ", "a='1' ", 100000, "/></floor>"), 2, "64 kB");
	one_error(read_repeated("<slab ", "a='1' ", 1000, "/></floor>"), 2, "64 attributes");
	one_error(read_repeated("<slab id='", "x", 12 << 20, "'/></floor>"), 2, "64 kB");
	one_error(read_repeated("<!--", "x", 17 << 20, "--></floor>"), 0, "16 MiB");
	one_error(read_repeated("", "<room>", 300000, ""), 2, "16 levels");
	one_error(read_repeated("", "<job/>", 1000001, "</floor>"), 2, "1,000,000 elements");
	one_error(read_repeated("\n<job site='", "\x01", 1, "'/></floor>"), 3, "control character");
	one_error(read_repeated("\n<job site='", "\xff", 1, "'/></floor>"), 3, "not UTF-8");
}

static void test_a_thousand_errors_are_enough(void **state)
{
	(void)state;
	struct reading r = read_repeated("", "<a/>", 500000, "</floor>");
	assert_int_equal(r.status, STATUS_INPUT);
	assert_null(r.plan);
	assert_true(r.diags.diags.count <= 1001);
	arena_free(r.arena);
}

static void test_no_entity_is_read(void **state)
{
	(void)state;
	static const char bomb[] = "<?xml version='1.0'?>\n\n<!DOCTYPE floor [<!ENTITY a 'ha'>"
				   "<!ENTITY b '&a;&a;&a;'>]>\n<floor title='&b;'/>";
	static const char outside[] =
		"<!DOCTYPE floor SYSTEM 'file:///etc/hostname'>\n<floor version='1' unit='mm'/>";
	static const char joined[] = "<?xml version='1.0'?><!DOCTYPE floor><floor/>";
	one_error(read_bytes(bomb, strlen(bomb)), 3, "DOCTYPE");
	one_error(read_bytes(joined, strlen(joined)), 1, "DOCTYPE");
	one_error(read_bytes(outside, strlen(outside)), 1, "DOCTYPE");
	one_error(read_floor("mm", "\n<job site='&b;'/>"), 5, "well-formed");
}

/* A value is the text that was meant, however its signs were written. */
static void test_signs_of_markup_in_a_value(void **state)
{
	(void)state;
	static const char text[] =
		HEAD "<job site='&amp; &#38; &#x26; &lt;d> &quot;e&quot; &amp;#38; &amp;lt;'/>" ROOM
		     "</floor>";
	char bytes[2000];
	int length = snprintf(bytes, sizeof bytes, text, "mm");
	struct reading r = read_bytes(bytes, (size_t)length);
	assert_int_equal(r.status, STATUS_OK);
	assert_string_equal(r.plan->job->site, "& & & <d> \"e\" &#38; &lt;");
	arena_free(r.arena);
}

/* Every beginning of a good plan is refused or read, and nothing else. */
static void test_cut_anywhere(void **state)
{
	(void)state;
	char text[2000];
	int length = snprintf(text, sizeof text, HEAD ROOM "</floor>", "mm");
	for (int cut = 0; cut < length; cut++) {
		struct reading r = read_bytes(text, (size_t)cut);
		assert_int_equal(r.status, STATUS_INPUT);
		assert_true(r.diags.diags.count == 1);
		arena_free(r.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_reads_the_model),
		cmocka_unit_test(test_tells_defaults),
		cmocka_unit_test(test_shift_by_nominal_side),
		cmocka_unit_test(test_defaults_by_unit),
		cmocka_unit_test(test_lines_past_65535),
		cmocka_unit_test(test_lines_beside_other_markup),
		cmocka_unit_test(test_limits),
		cmocka_unit_test(test_a_thousand_errors_are_enough),
		cmocka_unit_test(test_no_entity_is_read),
		cmocka_unit_test(test_signs_of_markup_in_a_value),
		cmocka_unit_test(test_cut_anywhere),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
