/* Tables on a sheet: which columns are left out, how large they are set, when they stand side
 * by side. */
#include <math.h>
#include <string.h>

#include "drawing/list.h"
#include "sheets/table.h"
#include "support/program.h"

static struct arena *arena;
static struct style style;
static struct draft draft;

static int start(void **state)
{
	(void)state;
	arena = arena_new();
	struct diag_list diags = diag_list_in(arena, "test");
	if (style_embedded(arena, "paper", 0, &diags, &style) != STATUS_OK)
		return -1;
	draft = (struct draft){.arena = arena, .style = &style, .paper = paper_size_find("a3")};
	return text_engine_embedded(arena, &draft.text) == STATUS_OK ? 0 : -1;
}

static int end(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

/* A letter is a cell with something in it, a blank none. */
static struct table table_of(struct sheet *sheet, const char *heads, const char *const *rows,
                             size_t count)
{
	struct table table = {.column_count = strlen(heads)};
	for (size_t k = 0; k < table.column_count; k++)
		table.heads[k] = arena_strndup(arena, heads + k, 1);
	for (size_t i = 0; i < count; i++) {
		struct table_row row = {.is_strong = false};
		for (size_t k = 0; k < table.column_count; k++)
			if (rows[i][k] != ' ')
				row.cells[k] = arena_strndup(arena, rows[i] + k, 1);
		table_add(sheet, &table, row);
	}
	return table;
}

static void blank_columns_are_left_out(void **state)
{
	(void)state;
	static const struct {
		const char *rows[2], *heads;
		unsigned right, right_after;
	} cases[] = {
		{{"abcd", "abcd"}, "ABCD", 6, 6}, {{"a cd", "a cd"}, "ACD", 6, 2},
		{{" bcd", "  cd"}, "BCD", 6, 3},  {{"abc ", "a c "}, "ABC", 6, 2},
		{{"a   ", "    "}, "A", 6, 0},    {{"    ", "    "}, "", 6, 0},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct sheet *sheet = sheet_new(&draft, "t", "T", "");
		struct table table = table_of(sheet, "ABCD", cases[i].rows, 2);
		table.right = cases[i].right;
		table_drop_blank(&table);
		assert_int_equal(table.column_count, strlen(cases[i].heads));
		for (size_t k = 0; k < table.column_count; k++) {
			assert_int_equal(table.heads[k][0], cases[i].heads[k]);
			for (size_t r = 0; r < 2; r++)
				if (table.rows.items[r].cells[k])
					assert_int_equal(table.rows.items[r].cells[k][0],
					                 cases[i].heads[k] - 'A' + 'a');
		}
		assert_int_equal(table.right, cases[i].right_after);
	}
}

static struct table numbered(struct sheet *sheet, int count, const char *text)
{
	struct table table = {.column_count = 2, .heads = {"No", "What"}};
	for (int i = 0; i < count; i++)
		table_add(sheet, &table,
		          (struct table_row){{arena_printf(arena, "%d", i), text}, false, false});
	return table;
}

static void a_short_table_is_set_large(void **state)
{
	(void)state;
	static const char wide[] =
		"as long as a sheet is wide, and then some more of it, and so on "
		"until no line of it in the height of notes is left whole, and "
		"further still, to the other edge of the paper and past it";
	static const struct {
		int rows;
		const char *text;
		size_t next;
		bool is_large;
	} cases[] = {{5, "soft", 0, true},
	             {200, "soft", 0, false},
	             {5, wide, 0, false},
	             {5, "soft", 1, false}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct sheet *sheet = sheet_new(&draft, "t", "T", "");
		struct table table = numbered(sheet, cases[i].rows, cases[i].text);
		table.next = cases[i].next;
		assert_int_equal(table_enlarge(sheet, &table), cases[i].is_large);
		assert_near(table.cap, cases[i].is_large ? 3.5 : 0, 1e-9);
	}
}

/* Left edges of the numbers' columns, from the left. */
static size_t count_blocks(const struct list *list)
{
	double last = -INFINITY;
	size_t blocks = 0;
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->kind == OP_TEXT && strcmp(op->text, "No") == 0 && op->box.x0 > last) {
			blocks++;
			last = op->box.x0;
		}
	}
	return blocks;
}

static void a_long_table_stands_side_by_side(void **state)
{
	(void)state;
	for (int rows = 10; rows <= 90; rows += 80) {
		struct sheet *sheet = sheet_new(&draft, "t", "T", "");
		struct table table = numbered(sheet, rows, "soft");
		table_draw_sheet(sheet, &table);
		assert_null(sheet->more);
		assert_int_equal(table.next, rows);
		assert_int_equal(count_blocks(sheet->list) > 1, rows > 40);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(blank_columns_are_left_out),
		cmocka_unit_test(a_short_table_is_set_large),
		cmocka_unit_test(a_long_table_stands_side_by_side),
	};
	return cmocka_run_group_tests(tests, start, end);
}
