/* The schema and the reference page say what the program's table says. GOLDEN_UPDATE=1
 * writes them again. */
#include "support/program.h"

#include <libxml/xmlschemas.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/grammar_pages.h"

static const char SCHEMA[] = "docs/floor.xsd", PAGE[] = "docs/floor-format.md";
static const char MARK[] = "<!-- tables -->\n";

static const char *read_file(struct arena *arena, const char *path)
{
	char piece[4096];
	size_t got;
	struct strbuf text = strbuf_in(arena);
	FILE *in = fopen(path, "rb");
	if (!in)
		return "";
	while ((got = fread(piece, 1, sizeof piece, in)) > 0)
		strbuf_add_bytes(&text, piece, got);
	fclose(in);
	return text.text;
}

static void compare(struct arena *arena, const char *path, const char *expected)
{
	if (getenv("GOLDEN_UPDATE")) {
		FILE *out = fopen(path, "wb");
		assert_non_null(out);
		assert_int_equal(fwrite(expected, 1, strlen(expected), out), strlen(expected));
		assert_int_equal(fclose(out), 0);
	}
	if (strcmp(read_file(arena, path), expected) != 0)
		fail_msg("%s is not what the table says; GOLDEN_UPDATE=1 writes it again", path);
}

static void test_schema_is_the_table(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct strbuf schema = strbuf_in(arena);
	grammar_write_schema(&schema);
	compare(arena, SCHEMA, schema.text);
	arena_free(arena);
}

static void test_page_is_the_table(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const char *page = read_file(arena, PAGE), *mark = strstr(page, MARK);
	assert_non_null(mark);
	struct strbuf expected = strbuf_in(arena);
	strbuf_add_bytes(&expected, page, (size_t)(mark - page) + strlen(MARK));
	grammar_write_tables(&expected);
	compare(arena, PAGE, expected.text);
	arena_free(arena);
}

static void keep_quiet(void *context, xmlErrorPtr error)
{
	(void)context, (void)error;
}

static int validate(const char *path)
{
	xmlSchemaParserCtxtPtr parser = xmlSchemaNewParserCtxt(SCHEMA);
	xmlSchemaPtr schema = xmlSchemaParse(parser);
	assert_non_null(schema);
	xmlSchemaValidCtxtPtr valid = xmlSchemaNewValidCtxt(schema);
	xmlSchemaSetValidStructuredErrors(valid, keep_quiet, NULL);
	xmlDocPtr doc = xmlReadFile(path, NULL, XML_PARSE_NONET);
	assert_non_null(doc);
	int result = xmlSchemaValidateDoc(valid, doc);
	xmlFreeDoc(doc);
	xmlSchemaFreeValidCtxt(valid);
	xmlSchemaFree(schema);
	xmlSchemaFreeParserCtxt(parser);
	return result;
}

static void test_schema_tells_good_from_bad(void **state)
{
	(void)state;
	static const char *const good[] = {"tests/plans/tannery.xml", "tests/plans/every-word.xml"};
	static const char *const bad[] = {
		"unknown-element", "unknown-attribute", "missing-attributes",
		"words",           "lengths",           "other-values",
		"bad-id",          "text-between",      "sheets",
	};
	for (size_t i = 0; i < sizeof good / sizeof *good; i++)
		if (validate(good[i]) != 0)
			fail_msg("%s is refused by the schema", good[i]);
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		char path[100];
		snprintf(path, sizeof path, "tests/bad-plans/%s.xml", bad[i]);
		if (validate(path) == 0)
			fail_msg("%s is let pass by the schema", path);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_schema_is_the_table),
		cmocka_unit_test(test_page_is_the_table),
		cmocka_unit_test(test_schema_tells_good_from_bad),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
