#include "support/program.h"

#include <stdalign.h>
#include <stdbool.h>
#include <string.h>

#include "base/arena.h"

/* A chunk of the arena; a block is rounded up to the alignment. */
enum { CHUNK = 64 * 1024, ALIGN = sizeof(max_align_t) };

static bool is_zero(const unsigned char *bytes, size_t size)
{
	for (size_t i = 0; i < size; i++)
		if (bytes[i])
			return false;
	return true;
}

/* A block is aligned, zero, and writing all of it harms no other. */
static unsigned char *checked_block(struct arena *arena, size_t size, int fill)
{
	unsigned char *block = arena_alloc(arena, size);
	assert_non_null(block);
	assert_int_equal((uintptr_t)block % alignof(max_align_t), 0);
	assert_true(is_zero(block, size));
	memset(block, fill, size);
	return block;
}

static void assert_filled(const unsigned char *block, size_t size, int fill)
{
	for (size_t i = 0; i < size; i++)
		assert_int_equal(block[i], fill);
}

static void test_alignment_of_every_small_size(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	enum { MOST = 130 };
	unsigned char *blocks[MOST];
	for (size_t size = 0; size < MOST; size++)
		blocks[size] = checked_block(arena, size, (int)size);
	for (size_t size = 0; size < MOST; size++)
		assert_filled(blocks[size], size, (int)size);
	arena_free(arena);
}

/* Leaves `rest` bytes of the first chunk, then asks for one less, as many, one more. */
static void test_last_bytes_of_a_chunk(void **state)
{
	(void)state;
	for (size_t rest = 0; rest <= 4 * ALIGN; rest += ALIGN) {
		for (size_t asked = rest ? rest - 1 : 0; asked <= rest + 1; asked++) {
			struct arena *arena = arena_new();
			unsigned char *first = checked_block(arena, CHUNK - rest, 1);
			unsigned char *second = checked_block(arena, asked, 2);
			unsigned char *third = checked_block(arena, 40, 3);
			assert_filled(first, CHUNK - rest, 1);
			assert_filled(second, asked, 2);
			assert_filled(third, 40, 3);
			arena_free(arena);
		}
	}
}

static void test_blocks_round_the_chunk_size(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t size = CHUNK - ALIGN - 1; size <= CHUNK + ALIGN + 1; size++) {
		unsigned char *large = checked_block(arena, size, 5);
		unsigned char *small = checked_block(arena, 1, 6);
		assert_filled(large, size, 5);
		assert_filled(small, 1, 6);
	}
	arena_free(arena);
}

static void test_large_block_keeps_the_room_of_the_current_chunk(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	unsigned char *before = checked_block(arena, ALIGN, 1);
	checked_block(arena, 3 * CHUNK, 2);
	unsigned char *after = checked_block(arena, ALIGN, 3);
	assert_ptr_equal(after, before + ALIGN);
	arena_free(arena);
}

static void test_large_block_first(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	unsigned char *large = checked_block(arena, 3 * CHUNK, 1);
	unsigned char *small = checked_block(arena, ALIGN, 2);
	assert_filled(large, 3 * CHUNK, 1);
	assert_filled(small, ALIGN, 2);
	arena_free(arena);
}

static void test_text_copies(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	char source[] = "control line";
	char *copy = arena_strdup(arena, source);
	char *part = arena_strndup(arena, source, 7);
	source[0] = 'X';
	assert_string_equal(copy, "control line");
	assert_string_equal(part, "control");
	assert_string_equal(arena_strdup(arena, ""), "");
	assert_string_equal(arena_printf(arena, "%s-%d", "K", 12), "K-12");
	char *wide = arena_printf(arena, "%*d", 2 * CHUNK, 7);
	assert_int_equal(strlen(wide), 2 * CHUNK);
	assert_int_equal(wide[2 * CHUNK - 1], '7');
	arena_free(arena);
}

struct trace {
	char text[8];
	size_t length;
};

struct step {
	struct trace *trace;
	char name;
};

static void leave_name(void *handle)
{
	struct step *step = handle;
	step->trace->text[step->trace->length++] = step->name;
}

/* The handles themselves live in the arena: they must outlast the calls. */
static void test_deferred_calls_come_last_first(void **state)
{
	(void)state;
	struct trace trace = {0};
	struct arena *arena = arena_new();
	for (char name = 'a'; name <= 'c'; name++) {
		struct step *step = ARENA_NEW(arena, struct step);
		*step = (struct step){.trace = &trace, .name = name};
		arena_defer(arena, leave_name, step);
		arena_alloc(arena, CHUNK);
	}
	assert_string_equal(trace.text, "");
	arena_free(arena);
	assert_string_equal(trace.text, "cba");
}

static void test_cleared_memory_is_zero_again(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t round = 0; round < 5; round++) {
		for (size_t size = 1; size < 3 * CHUNK; size = size * 3 + 1) {
			char *block = arena_alloc(arena, size);
			for (size_t i = 0; i < size; i++)
				assert_int_equal(block[i], 0);
			memset(block, 'x', size);
		}
		arena_clear(arena);
	}
	arena_free(arena);
}

static void test_clearing_calls_what_was_deferred_once(void **state)
{
	(void)state;
	struct arena *arena = arena_new(), *other = arena_new();
	struct trace trace = {0};
	struct step *step = ARENA_NEW(other, struct step);
	*step = (struct step){.trace = &trace, .name = 'a'};
	arena_defer(arena, leave_name, step);
	arena_clear(arena);
	assert_string_equal(trace.text, "a");
	arena_free(arena);
	assert_string_equal(trace.text, "a");
	arena_free(other);
}

static void test_nothing_to_free(void **state)
{
	(void)state;
	arena_free(NULL);
	arena_free(arena_new());
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_alignment_of_every_small_size),
		cmocka_unit_test(test_last_bytes_of_a_chunk),
		cmocka_unit_test(test_blocks_round_the_chunk_size),
		cmocka_unit_test(test_large_block_keeps_the_room_of_the_current_chunk),
		cmocka_unit_test(test_large_block_first),
		cmocka_unit_test(test_text_copies),
		cmocka_unit_test(test_deferred_calls_come_last_first),
		cmocka_unit_test(test_cleared_memory_is_zero_again),
		cmocka_unit_test(test_clearing_calls_what_was_deferred_once),
		cmocka_unit_test(test_nothing_to_free),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
