/* Seeded: small cases of packing against an exact solver of integer programs (glpsol), and the
 * bound against its optimum. */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/strbuf.h"
#include "count/packing.h"
#include "support/program.h"
#include "support/seed.h"

enum { CASES = 24, ITEMS_MOST = 9, BIN = 100 };

/* In: item i lies in bin b. Used: bin b is taken; taken ones come first. */
static const char *model_of(struct arena *arena, const int64_t *sizes, int count)
{
	struct strbuf out = strbuf_in(arena);
	strbuf_add(&out, "Minimize\n bins:");
	for (int b = 0; b < count; b++)
		strbuf_printf(&out, " + used%d", b);
	strbuf_add(&out, "\nSubject To\n");
	for (int i = 0; i < count; i++) {
		strbuf_printf(&out, " item%d:", i);
		for (int b = 0; b < count; b++)
			strbuf_printf(&out, " + in%d_%d", i, b);
		strbuf_add(&out, " = 1\n");
	}
	for (int b = 0; b < count; b++) {
		strbuf_printf(&out, " room%d:", b);
		for (int i = 0; i < count; i++)
			strbuf_printf(&out, " + %d in%d_%d", (int)sizes[i], i, b);
		strbuf_printf(&out, " - %d used%d <= 0\n", BIN, b);
		if (b > 0)
			strbuf_printf(&out, " order%d: used%d - used%d >= 0\n", b, b - 1, b);
	}
	strbuf_add(&out, "Binary\n");
	for (int b = 0; b < count; b++) {
		strbuf_printf(&out, " used%d\n", b);
		for (int i = 0; i < count; i++)
			strbuf_printf(&out, " in%d_%d\n", i, b);
	}
	strbuf_add(&out, "End\n");
	return out.text;
}

static void write_file(const char *path, const char *text)
{
	FILE *file = fopen(path, "w");
	assert_non_null(file);
	assert_int_equal(fwrite(text, 1, strlen(text), file), strlen(text));
	assert_int_equal(fclose(file), 0);
}

/* `Objective:  bins = 3 (MINimum)` in the report. */
static size_t optimum_of(struct arena *arena, const int64_t *sizes, int count)
{
	const char *folder = getenv("TMPDIR");
	assert_non_null(folder);
	const char *model = arena_printf(arena, "%s/packing.lp", folder),
		   *report = arena_printf(arena, "%s/packing.out", folder);
	write_file(model, model_of(arena, sizes, count));
	const char *command =
		arena_printf(arena, "glpsol --lp '%s' -o '%s' >/dev/null", model, report);
	assert_int_equal(system(command), 0);
	FILE *file = fopen(report, "r");
	assert_non_null(file);
	char line[256];
	int optimum = 0;
	bool is_optimal = false;
	while (fgets(line, sizeof line, file) != NULL) {
		is_optimal = is_optimal || strstr(line, "INTEGER OPTIMAL") != NULL;
		if (strncmp(line, "Objective:", strlen("Objective:")) == 0)
			optimum = atoi(strchr(line, '=') + 1);
	}
	fclose(file);
	assert_true(is_optimal);
	return (size_t)optimum;
}

static void small_cases_are_packed_to_the_optimum(void **state)
{
	(void)state;
	struct seed seed = seed_start("small_cases_are_packed_to_the_optimum");
	for (int round = 0; round < CASES; round++) {
		struct arena *arena = arena_new();
		int64_t sizes[ITEMS_MOST];
		int count = 3 + seed_below(&seed, ITEMS_MOST - 2);
		for (int i = 0; i < count; i++)
			sizes[i] = 12 + seed_below(&seed, 60);
		struct packing packing = packing_of(arena, sizes, (size_t)count, BIN);
		size_t optimum = optimum_of(arena, sizes, count);
		assert_true(packing.bound <= optimum);
		assert_int_equal(packing.bins, optimum);
		arena_free(arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(small_cases_are_packed_to_the_optimum)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
