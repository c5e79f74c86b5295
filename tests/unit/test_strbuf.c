#include "support/program.h"

#include <string.h>

#include "base/strbuf.h"

static void test_starts_empty(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct strbuf buf = strbuf_in(arena);
	assert_string_equal(buf.text, "");
	assert_int_equal(strbuf_bytes(&buf).length, 0);
	strbuf_add(&buf, "");
	strbuf_printf(&buf, "%s", "");
	assert_string_equal(buf.text, "");
	arena_free(arena);
}

static void test_is_ended_after_every_byte(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct strbuf buf = strbuf_in(arena);
	for (size_t i = 0; i < 1000; i++) {
		strbuf_add_char(&buf, (char)('a' + i % 26));
		assert_int_equal(buf.length, i + 1);
		assert_true(buf.room > buf.length);
		assert_int_equal(buf.text[buf.length], 0);
	}
	for (size_t i = 0; i < 1000; i++)
		assert_int_equal(buf.text[i], 'a' + i % 26);
	arena_free(arena);
}

/* Both ways of adding, from every fill that is near the first room of 64 bytes. */
static void test_grows_from_every_fill(void **state)
{
	(void)state;
	char more[200];
	memset(more, 'm', sizeof more);
	for (size_t fill = 0; fill < 70; fill++) {
		for (size_t length = 0; length < sizeof more; length += 1 + length / 8) {
			struct arena *arena = arena_new();
			struct strbuf added = strbuf_in(arena), printed = strbuf_in(arena);
			strbuf_add_bytes(&added, more, fill);
			strbuf_add_bytes(&printed, more, fill);
			strbuf_add_bytes(&added, more, length);
			strbuf_printf(&printed, "%.*s", (int)length, more);
			assert_int_equal(added.length, fill + length);
			assert_int_equal(strlen(added.text), fill + length);
			assert_string_equal(added.text, printed.text);
			arena_free(arena);
		}
	}
}

static void test_keeps_bytes_that_are_zero(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct strbuf buf = strbuf_in(arena);
	strbuf_add_bytes(&buf, "a\0b", 3);
	strbuf_add_char(&buf, 'c');
	struct bytes bytes = strbuf_bytes(&buf);
	assert_int_equal(bytes.length, 4);
	assert_memory_equal(bytes.data, "a\0bc", 5);
	arena_free(arena);
}

static void test_escapes(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct strbuf buf = strbuf_in(arena);
	strbuf_add_escaped(&buf, "a<b> & \"c\"\t\r\n\xc3\xa9 'd'");
	assert_string_equal(buf.text, "a&lt;b&gt; &amp; &quot;c&quot;&#9;&#13;&#10;\xc3\xa9 'd'");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_starts_empty),
		cmocka_unit_test(test_is_ended_after_every_byte),
		cmocka_unit_test(test_grows_from_every_fill),
		cmocka_unit_test(test_keeps_bytes_that_are_zero),
		cmocka_unit_test(test_escapes),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
