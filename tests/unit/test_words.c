/* Texts by key: reading the tables, filling, and the shipped language. */
#include <string.h>

#include "plan/grammar.h"
#include "rules/rules.h"
#include "support/program.h"
#include "words/words.h"

static struct arena *arena;

static int start(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int end(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

static const struct words *shipped(const char *language)
{
	struct diag_list diags = diag_list_in(arena, language);
	const struct words *words = words_load(arena, language, &diags);
	diag_print(&diags, stderr);
	assert_non_null(words);
	return words;
}

static const struct words *parsed(const char *text)
{
	struct diag_list diags = diag_list_in(arena, "test.words");
	const struct words *words = words_parse(arena, "test", text, &diags);
	assert_non_null(words);
	return words;
}

static void a_text_is_filled(void **state)
{
	(void)state;
	const struct words *w = parsed("# remark\n"
	                               "a = {who} lays {count} {count|tile|tiles}\n"
	                               "\tby noon\n"
	                               "\n"
	                               "b = {{plain} {who}\n");
	assert_string_equal(words_fill(arena, w, "a", {"who", "crew"}, {"count", "1"}),
	                    "crew lays 1 tile by noon");
	assert_string_equal(words_fill(arena, w, "a", {"who", "crew"}, {"count", "12"}),
	                    "crew lays 12 tiles by noon");
	assert_string_equal(words_fill(arena, w, "b", {"who", "x"}), "{plain} x");
	assert_string_equal(words_format(arena, w, "b", NULL, 0), "{plain} {who}");
	assert_string_equal(words_find(w, "c"), "c");
	assert_false(words_has(w, "c"));
	assert_string_equal(words_key_at(w, 1), "b");
	assert_null(words_key_at(w, 2));
}

static void an_argument_is_never_filled_again(void **state)
{
	(void)state;
	const struct words *w = parsed("a = {x}{y}\n");
	assert_string_equal(words_fill(arena, w, "a", {"x", "{y}"}, {"y", "1"}), "{y}1");
}

static void faults_are_told_by_line(void **state)
{
	(void)state;
	struct diag_list diags = diag_list_in(arena, "test.words");
	assert_null(words_parse(arena, "test", "\tno text above\na = 1\nb 2\na = 3\n", &diags));
	assert_int_equal(diags.diags.count, 3);
	assert_int_equal(diags.diags.items[0].line, 1);
	assert_int_equal(diags.diags.items[1].line, 3);
	assert_int_equal(diags.diags.items[2].line, 4);
	assert_null(words_load(arena, "xx", &diags));
}

static void the_pseudo_language_brackets_every_text(void **state)
{
	(void)state;
	const struct words *en = shipped("en");
	const struct words *w = words_pseudo(arena, en);
	for (size_t i = 0; words_key_at(w, i) != NULL; i++) {
		const char *text = words_find(w, words_key_at(w, i));
		const char *plain = words_find(en, words_key_at(w, i));
		assert_memory_equal(text, "⟦", strlen("⟦"));
		assert_non_null(strstr(text, plain));
		assert_true(strlen(text) * 5 >= strlen(plain) * 7);
	}
}

static void every_rule_has_its_message_and_who_answers(void **state)
{
	(void)state;
	const struct words *w = shipped("en");
	struct diag_list diags = diag_list_in(arena, "us");
	const struct rules *us = rules_load(arena, "us", true, &diags);
	assert_non_null(us);
	for (size_t i = 0; rules_at(us, i) != NULL; i++) {
		const struct rule *rule = rules_at(us, i);
		if (!words_has(w, rule->message))
			fail_msg("no text for `%s`", rule->message);
		const char *who = arena_printf(arena, "who.%s", rule->who);
		if (!words_has(w, who))
			fail_msg("no text for `%s`", who);
	}
}

/* True where every {name} of `text` stands in `other` too. */
static bool asks_no_more(const char *text, const char *other)
{
	for (const char *at = strchr(text, '{'); at; at = strchr(at + 1, '{')) {
		size_t length = strcspn(at, "|}");
		const char *found = other;
		while ((found = strstr(found, arena_strndup(arena, at, length))) &&
		       found[length] != '|' && found[length] != '}')
			found++;
		if (!found)
			return false;
	}
	return true;
}

/* A text that one language has the other has, and is filled with the same. */
static void languages_say_the_same(void **state)
{
	(void)state;
	const struct words *en = shipped("en"), *es = shipped("es");
	for (size_t i = 0; words_key_at(en, i); i++) {
		const char *key = words_key_at(en, i);
		if (!words_has(es, key))
			fail_msg("es has no %s", key);
		if (!asks_no_more(words_find(en, key), words_find(es, key)) ||
		    !asks_no_more(words_find(es, key), words_find(en, key)))
			fail_msg("%s is not filled alike", key);
	}
	for (size_t i = 0; words_key_at(es, i); i++)
		if (!words_has(en, words_key_at(es, i)))
			fail_msg("en has no %s", words_key_at(es, i));
}

static bool tells_default(const struct words *words, const char *element,
                          const struct grammar_attribute *attribute, const char *value)
{
	const char *key = arena_printf(arena, "default.%s.%s", element, attribute->name);
	return words_has(words, key) || words_has(words, arena_printf(arena, "%s.%s", key, value));
}

static void check_defaults(const struct words *words, const struct grammar_element *element)
{
	for (size_t i = 0; i < element->attribute_count; i++) {
		const struct grammar_attribute *a = &element->attributes[i];
		if (a->fallback && !a->later &&
		    !tells_default(words, element->name, a, a->fallback))
			fail_msg("nothing tells that %s of %s is %s", a->name, element->name,
			         a->fallback);
	}
	for (size_t i = 0; i < element->child_count; i++)
		check_defaults(words, element->children[i].element);
}

/* What a description may leave unsaid is printed as an assumption. */
static void every_default_is_told_in_words(void **state)
{
	(void)state;
	check_defaults(shipped("en"), &grammar_floor);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_text_is_filled),
		cmocka_unit_test(an_argument_is_never_filled_again),
		cmocka_unit_test(faults_are_told_by_line),
		cmocka_unit_test(the_pseudo_language_brackets_every_text),
		cmocka_unit_test(every_rule_has_its_message_and_who_answers),
		cmocka_unit_test(languages_say_the_same),
		cmocka_unit_test(every_default_is_told_in_words),
	};
	return cmocka_run_group_tests(tests, start, end);
}
