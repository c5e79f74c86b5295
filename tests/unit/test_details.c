/* Sections of joints: which kinds a floor has, and that they are drawn from its own figures. */
#include "support/program.h"

#include <string.h>

#include "sheets/details.h"
#include "support/rooms.h"

#define JOINT                                                                       \
	"<slab-joint id='J1' kind='construction' width='10mm'><at x='3000' y='0'/>" \
	"<at x='3000' y='4000'/></slab-joint>"

/* Below the room, behind its doorway where that leads there. */
#define THICKER                                                                           \
	"<room id='next' slab='S1'><corners><corner x='0' y='-3100'/>"                    \
	"<corner x='6000' y='-3100'/><corner x='6000' y='-100'/><corner x='0' y='-100'/>" \
	"</corners></room><tile id='T2' kind='porcelain' wide='297mm' thick='20mm'/>"     \
	"<lay id='L2' rooms='next' tile='T2' joint='3mm' pattern='grid'/>"

/* A room with a doorway and a crack; more inside it and beside it as given. */
static struct details details_of_kind(struct arena *arena, const char *thick, const char *cover,
                                      const char *kind, const char *inside, const char *beside)
{
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='room' slab='S1'><corners><corner x='0' y='0'/><corner x='6000' y='0'/>"
		"<corner x='6000' y='4000'/><corner x='0' y='4000'/></corners>"
		"<doorway id='D1' wall='room.1' from='500' width='900'%s/>%s</room>%s"
		"<crack id='K1' room='room' width='1mm'><at x='2000' y='0'/><at x='2100' y='1500'/>"
		"</crack>"
		"<tile id='T1' kind='porcelain' wide='297mm' thick='%s'/>"
		"<lay id='L1' rooms='room' tile='T1' joint='3mm' pattern='grid'/>"
		"<membrane id='M1' rooms='room' kind='%s' movement='3mm' cover='%s'%s/>"
		"<answer about='M1' rule='cover-unapproved' decision='proceed' by='A. Owner'"
		" on='2026-01-01'/></floor>",
		strcmp(beside, THICKER) == 0 ? " to='next'" : "", inside, beside, thick, kind,
		cover, strcmp(kind, "mortar-bed") == 0 ? " thick='40mm'" : "");
	const struct rules *rules = rules_for_tests(arena);
	const struct site *site = site_from_text(arena, text);
	struct draft *draft = ARENA_NEW(arena, struct draft);
	struct diag_list diags = diag_list_in(arena, "words");
	*draft = (struct draft){.arena = arena,
	                        .site = site,
	                        .placed = placed_from_site(arena, site, rules),
	                        .words = words_load(arena, "en", &diags)};
	return details_of(draft);
}

static struct details details_of_room(struct arena *arena, const char *thick, const char *cover,
                                      const char *inside, const char *beside)
{
	return details_of_kind(arena, thick, cover, "sheet", inside, beside);
}

static const struct section *find_title(struct details details, const char *part)
{
	for (size_t i = 0; i < details.count; i++)
		if (strstr(details.items[i].title, part))
			return &details.items[i];
	return NULL;
}

/* Height of the first part of a kind. */
static double height_of(const struct section *section, enum area area)
{
	for (size_t i = 0; i < section->parts.count; i++)
		if (section->parts.items[i].area == area)
			return section->parts.items[i].box.y1 - section->parts.items[i].box.y0;
	fail_msg("%s: no such part", section->title);
	return 0;
}

static void test_kinds_of_the_floor(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct details plain = details_of_room(arena, "10mm", "partial", "", "");
	assert_non_null(find_title(plain, "STRIP"));
	assert_non_null(find_title(plain, "UNDER A BASE"));
	assert_non_null(find_title(plain, "DOORWAY"));
	assert_null(find_title(plain, "CARRIED"));
	assert_null(find_title(plain, "COLUMN"));
	assert_null(find_title(plain, "FULL"));
	struct details more =
		details_of_room(arena, "10mm", "full",
	                        "<obstacle id='C1' kind='column' x='4000' y='2000' across='300'/>",
	                        JOINT);
	assert_non_null(find_title(more, "CARRIED"));
	assert_non_null(find_title(more, "COLUMN"));
	assert_non_null(find_title(more, "FULL"));
	assert_null(find_title(more, "STRIP"));
	arena_free(arena);
}

/* Twice the thickness is twice the height drawn, and nothing below it moves. */
static void test_drawn_from_the_plan(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct details thin = details_of_room(arena, "8mm", "partial", "", "");
	struct details thick = details_of_room(arena, "16mm", "partial", "", "");
	assert_int_equal(thin.count, thick.count);
	for (size_t i = 0; i < thin.count; i++) {
		assert_near(height_of(&thin.items[i], AREA_TILE_SECTION), 8, 1e-9);
		assert_near(height_of(&thick.items[i], AREA_TILE_SECTION), 16, 1e-9);
		assert_near(height_of(&thin.items[i], AREA_BOND_COAT),
		            height_of(&thick.items[i], AREA_BOND_COAT), 1e-9);
		assert_near(height_of(&thin.items[i], AREA_CONCRETE),
		            height_of(&thick.items[i], AREA_CONCRETE), 1e-9);
	}
	arena_free(arena);
}

/* Under a mat or a bed: the cover's own detail, with what lies on the slab. */
static void test_mat_and_bed(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct details mat = details_of_kind(arena, "10mm", "full", "mat", "", JOINT);
	assert_non_null(find_title(mat, "OVER A MAT"));
	assert_null(find_title(mat, "FULL"));
	assert_null(find_title(mat, "MORTAR"));
	struct details bed = details_of_kind(arena, "10mm", "full", "mortar-bed", "", JOINT);
	const struct section *soft = find_title(bed, "OVER A MORTAR BED");
	assert_non_null(soft);
	assert_null(find_title(bed, "OVER A MAT"));
	/* 40 mm in all, 1 of it the cleavage membrane. */
	assert_near(height_of(soft, AREA_MORTAR), 39, 1e-9);
	assert_near(height_of(soft, AREA_MEMBRANE), 1, 1e-9);
	/* Joints go through the bed: none of it lies in the opening. */
	const struct section *carried = find_title(bed, "CARRIED");
	assert_non_null(carried);
	for (size_t i = 0; i < carried->parts.count; i++)
		if (carried->parts.items[i].area == AREA_MORTAR)
			assert_true(carried->parts.items[i].box.x1 <= -3 ||
			            carried->parts.items[i].box.x0 >= 3);
	arena_free(arena);
}

/* The membrane of full coverage runs on under the soft joint; at a carried joint it ends. */
static void test_membrane_ends_at_the_opening(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct details details = details_of_room(arena, "10mm", "full", "", JOINT);
	const struct section *carried = find_title(details, "CARRIED");
	assert_non_null(carried);
	size_t membranes = 0;
	for (size_t i = 0; i < carried->parts.count; i++) {
		const struct section_part *part = &carried->parts.items[i];
		if (part->area != AREA_MEMBRANE)
			continue;
		membranes++;
		assert_true(part->box.x1 <= -5 || part->box.x0 >= 5);
	}
	assert_int_equal(membranes, 2);
	arena_free(arena);
}

/* A room behind the doorway with thicker tile: edges of its own, and the step between. */
static void test_layers_of_their_own(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct details details = details_of_room(arena, "8mm", "partial", "", THICKER);
	const struct section *edges[2] = {0}, *stops[2] = {0};
	size_t edge_count = 0, stop_count = 0;
	for (size_t i = 0; i < details.count; i++) {
		const struct section *section = &details.items[i];
		if (strstr(section->title, "UNDER A BASE") && edge_count++ < 2)
			edges[edge_count - 1] = section;
		if (strstr(section->title, "DOORWAY") && stop_count++ < 2)
			stops[stop_count - 1] = section;
	}
	assert_int_equal(edge_count, 2);
	/* The lay that is written first. */
	assert_near(height_of(edges[0], AREA_TILE_SECTION), 20, 1e-9);
	assert_near(height_of(edges[1], AREA_TILE_SECTION), 8, 1e-9);
	assert_null(strstr(edges[0]->joints, "ROOM"));
	assert_null(strstr(edges[1]->joints, "NEXT"));
	/* Bond coat of 5 mm: 13 and 25 mm over the slab, seen from both sides. */
	assert_int_equal(stop_count, 2);
	assert_near(height_of(stops[0], AREA_SHADE), 13, 1e-9);
	assert_near(height_of(stops[1], AREA_SHADE), 25, 1e-9);
	arena_free(arena);
}

/* Whatever stands in a doorway: no base, so its stop line is sealed, jambs or none. */
static void test_doorways_are_sealed(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct details details = details_of_room(
		arena, "8mm", "partial",
		"<doorway id='D2' wall='room.3' from='500' width='900' deep='200' level='9mm'/>",
		"");
	size_t count = 0;
	for (size_t i = 0; i < details.count; i++) {
		const struct section *section = &details.items[i];
		if (strstr(section->title, "BASE"))
			assert_null(strstr(section->joints, "D2"));
		if (strstr(section->title, "DOORWAY") && strstr(section->joints, "D2")) {
			assert_near(height_of(section, AREA_SHADE), 9, 1e-9);
			count++;
		}
	}
	assert_int_equal(count, 1);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_kinds_of_the_floor),
		cmocka_unit_test(test_drawn_from_the_plan),
		cmocka_unit_test(test_membrane_ends_at_the_opening),
		cmocka_unit_test(test_mat_and_bed),
		cmocka_unit_test(test_layers_of_their_own),
		cmocka_unit_test(test_doorways_are_sealed),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
