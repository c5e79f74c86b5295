/* Contraction joints that a membrane takes over: who must agree, and what is then built. */
#include "support/program.h"

#include <string.h>

#include "layout/relocated.h"
#include "support/rooms.h"

#define ANSWER(decision, by, more) \
	"<answer about='J1' decision='" decision "' by='" by "' on='2026-03-20' " more "/>"
#define MAKER ANSWER("proceed", "Membrane maker", "")
#define DESIGNER ANSWER("proceed", "Designer", "rule='joint-relocated'")

static const struct {
	const char *kind, *joint, *answers;
	enum relocation state;
} ROWS[] = {
	{"sheet", "", MAKER DESIGNER, RELOCATION_NONE},
	{"sheet", "treat='relocate'", "", RELOCATION_OPEN},
	{"sheet", "treat='relocate'", MAKER, RELOCATION_HALF},
	{"sheet", "treat='relocate'", MAKER MAKER, RELOCATION_HALF},
	{"sheet", "treat='relocate'", MAKER DESIGNER, RELOCATION_AGREED},
	{"liquid", "treat='relocate'", DESIGNER MAKER, RELOCATION_AGREED},
	{"sheet", "treat='relocate'", MAKER ANSWER("decline", "Designer", ""), RELOCATION_DECLINED},
	{"sheet", "treat='relocate'", MAKER ANSWER("proceed", "Designer", "rule='joint-wide'"),
         RELOCATION_HALF},
	{"sheet", "treat='relocate' step='1'", MAKER DESIGNER, RELOCATION_IMPOSSIBLE},
	{"mat", "treat='relocate'", MAKER DESIGNER, RELOCATION_IMPOSSIBLE},
};

static const struct field *field_of_row(struct arena *arena, size_t row)
{
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='room' slab='S1'><corners><corner x='0' y='0'/><corner x='6000' y='0'/>"
		"<corner x='6000' y='4000'/><corner x='0' y='4000'/></corners></room>"
		"<slab-joint id='J1' kind='contraction' width='4' %s><at x='2500' y='0'/>"
		"<at x='2500' y='4000'/></slab-joint>"
		"<tile id='T1' kind='porcelain' wide='297mm' thick='10mm'/>"
		"<lay id='L1' rooms='room' tile='T1' joint='3mm' pattern='grid'/>"
		"<membrane id='M1' rooms='room' kind='%s' movement='3' cover='%s'/>%s</floor>",
		ROWS[row].joint, ROWS[row].kind,
		strcmp(ROWS[row].kind, "mat") == 0 ? "full" : "partial", ROWS[row].answers);
	const struct site *site = site_from_text(arena, text);
	return field_place(arena, site, rules_for_tests(arena), &site->plan->lays[0], NULL);
}

/* Relocated, it is no border of the field; else the field lies on its two sides. */
static void each_row(void **state)
{
	(void)state;
	for (size_t row = 0; row < sizeof ROWS / sizeof *ROWS; row++) {
		struct arena *arena = arena_new();
		const struct field *field = field_of_row(arena, row);
		struct relocating heard = relocating_of(field, &field->site->slab_joints[0]);
		bool is_agreed = ROWS[row].state == RELOCATION_AGREED;
		if (heard.state != ROWS[row].state)
			fail_msg("row %zu: state %d", row, heard.state);
		assert_int_equal(field->relocated_count, is_agreed);
		assert_int_equal(field->carried_count, !is_agreed);
		assert_int_equal(field->region.count, is_agreed ? 1 : 2);
		arena_free(arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_row),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
