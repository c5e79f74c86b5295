/* Elements and attributes on their own lines, whatever stands between them; what is not
 * well-formed, and each limit from both of its sides. */
#include "support/program.h"

#include <string.h>

#include "base/strbuf.h"
#include "plan/markup.h"
#include "support/seed.h"

struct parsed {
	struct arena *arena;
	struct diag_list diags;
	struct markup *root;
	enum status status;
};

static struct parsed parse_bytes(const char *bytes, size_t length)
{
	struct parsed p = {.arena = arena_new()};
	p.diags = diag_list_in(p.arena, "floor.xml");
	p.status = markup_parse(p.arena, bytes, length, &p.diags, &p.root);
	return p;
}

static struct parsed parse(const char *text)
{
	return parse_bytes(text, strlen(text));
}

/* ---- lines ---- */

/* Adds `name@line` for each element and attribute, in the order of the text. */
static void add_places(struct strbuf *places, const struct markup *element)
{
	strbuf_printf(places, "%s@%d ", element->name, element->line);
	for (size_t i = 0; i < element->attribute_count; i++)
		strbuf_printf(places, "%s@%d ", element->attributes[i].name,
		              element->attributes[i].line);
	for (const struct markup *child = element->first_child; child; child = child->next)
		add_places(places, child);
}

static void test_lines(void **state)
{
	(void)state;
	const struct {
		const char *text, *places;
	} cases[] = {
		{"<a/>", "a@1 "},
		{"<?xml version=\"1.0\"?><a/>", "a@1 "},
		{"\xef\xbb\xbf<a\nb='1'/>", "a@1 b@2 "},
		{"<a b='1'\n\n c='2' d='3'\n/>", "a@1 b@1 c@3 d@3 "},
		{"<a>\r\n<b\r\nc='1'/>\r\n</a>\r\n", "a@1 b@2 c@3 "},
		{"<a b='x\ny'\nc='1'/>", "a@1 b@1 c@3 "},
		{"<a b = \"it's\" c\n=\n'say \"so\"' d='/>'\n e='&lt;&gt;&quot;'/>",
	         "a@1 b@1 c@1 d@3 e@4 "},
		{"<a><!-- <b\n/> --><c/><!-- ' -->\n<d/></a>", "a@1 c@2 d@3 "},
		{"<a><!--\n--><!--\n--><?p <b/>\n?><c d='1'/></a>", "a@1 c@4 d@4 "},
		{"<!-- x --><a><b></b\n><c/></a\n>", "a@1 b@1 c@2 "},
		{"<a b='&#10;&#10;'\nc='1'/>", "a@1 b@1 c@2 "},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct parsed p = parse(cases[i].text);
		assert_int_equal(p.status, STATUS_OK);
		struct strbuf places = strbuf_in(p.arena);
		add_places(&places, p.root);
		assert_string_equal(places.text, cases[i].places);
		arena_free(p.arena);
	}
}

/* ---- lines of texts made up at random, with the line of everything written down ---- */

struct writing {
	struct seed seed;
	struct strbuf text, places;
	int line, depth, left;
};

static void write_text(struct writing *w, const char *text)
{
	strbuf_add(&w->text, text);
	for (const char *at = text; *at; at++)
		w->line += *at == '\n';
}

static void write_one_of(struct writing *w, const char *const *texts, int count)
{
	write_text(w, texts[seed_below(&w->seed, count)]);
}

static void write_blank(struct writing *w)
{
	static const char *const blanks[] = {" ", "\n", " \n\t", "\r\n", "\n\n"};
	write_one_of(w, blanks, 5);
}

static void write_between(struct writing *w)
{
	static const char *const others[] = {"",
	                                     "\n",
	                                     "<!-- a='1' \n <b> -->",
	                                     "<?go <b c='\n'?>",
	                                     "<!----><!--\n-->",
	                                     " text > \n ' more \" ",
	                                     "<![CDATA[<b c='1'>\n]]>",
	                                     "&amp;\n"};
	write_one_of(w, others, 8);
}

static void write_attributes(struct writing *w)
{
	static const char *const values[] = {"='1'",     "=\"\n\"",        " =\n' > '",
	                                     "= \"/>\"", "='&#39;&quot;'", "='\"\n\n\"'"};
	int count = seed_below(&w->seed, 4);
	for (int i = 0; i < count; i++) {
		write_blank(w);
		strbuf_printf(&w->places, "a%d@%d ", i, w->line);
		strbuf_printf(&w->text, "a%d", i);
		write_one_of(w, values, 6);
	}
}

static void write_element(struct writing *w)
{
	strbuf_printf(&w->places, "e%d@%d ", w->depth, w->line);
	strbuf_printf(&w->text, "<e%d", w->depth);
	write_attributes(w);
	if (seed_below(&w->seed, 2))
		write_blank(w);
	if (--w->left < 0 || w->depth == MARKUP_MOST_DEPTH - 1 || seed_below(&w->seed, 4) == 0) {
		write_text(w, "/>");
		return;
	}
	write_text(w, ">");
	w->depth++;
	for (int i = seed_below(&w->seed, 4); i > 0; i--) {
		write_between(w);
		write_element(w);
	}
	write_between(w);
	w->depth--;
	strbuf_printf(&w->text, "</e%d", w->depth);
	write_text(w, seed_below(&w->seed, 2) ? "\n>" : ">");
}

static void test_lines_of_random_texts(void **state)
{
	(void)state;
	struct seed seed = seed_start("lines of random texts");
	for (int i = 0; i < 2000; i++) {
		struct arena *arena = arena_new();
		struct writing w = {.seed = {seed_next(&seed)},
		                    .text = strbuf_in(arena),
		                    .places = strbuf_in(arena),
		                    .line = 1,
		                    .left = 30};
		write_element(&w);
		struct parsed p = parse(w.text.text);
		struct strbuf places = strbuf_in(arena);
		if (p.status == STATUS_OK)
			add_places(&places, p.root);
		if (strcmp(places.text, w.places.text) != 0)
			fail_msg("text %d:\n%s\nread   %s\nwritten %s", i, w.text.text, places.text,
			         w.places.text);
		arena_free(p.arena);
		arena_free(arena);
	}
}

static void test_lines_of_text(void **state)
{
	(void)state;
	const struct {
		const char *text;
		int line;
	} cases[] = {
		{"<a>\n\n</a>", 0},       {"<a>x</a>", 1},
		{"<a>\n<b/>\nx</a>", 3},  {"<a><!-- x\n -->\n<b/>\n<![CDATA[ \n x]]></a>", 5},
		{"<a\nb='1'\n>x</a>", 3}, {"<a><b>\n</b><c/>\n\n x</a>", 4},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct parsed p = parse(cases[i].text);
		assert_int_equal(p.status, STATUS_OK);
		assert_int_equal(p.root->text_line, cases[i].line);
		arena_free(p.arena);
	}
}

/* ---- faults ---- */

static void refuses_bytes(const char *bytes, size_t length, int line, const char *part)
{
	struct parsed p = parse_bytes(bytes, length);
	assert_int_equal(p.status, STATUS_INPUT);
	assert_null(p.root);
	assert_int_equal(p.diags.diags.count, 1);
	const struct diag *diag = &p.diags.diags.items[0];
	if (diag->line != line || !strstr(diag->text, part))
		fail_msg("line %d: %s\nexpected line %d: %s", diag->line, diag->text, line, part);
	arena_free(p.arena);
}

static void test_faults(void **state)
{
	(void)state;
	const struct {
		const char *text;
		int line;
		const char *part;
	} cases[] = {
		{"", 1, "no element"},
		{" \n\n", 1, "no element"},
		{"<!-- x -->\n", 1, "no element"},
		{"<a>\n<b>\n</a>", 3, "expected"},
		{"<a>\n<b/>\n", 2, "ends within"},
		{"<a\nb='1'\nb='2'/>", 3, "repeated"},
		{"<a/><b/>", 1, "expected"},
		{"<a b=1/>", 1, "expected"},
		{"<!DOCTYPE a>\n<a/>", 1, "DOCTYPE"},
		{"<?xml version='1.0'?><!DOCTYPE a>\n<a/>", 1, "DOCTYPE"},
		{"<!-- <a> -->\n\n<!DOCTYPE a [<!ENTITY b 'c'>]>\n<a>&b;</a>", 3, "DOCTYPE"},
		{"<a>\n&b;</a>", 2, "expected"},
		{"<?xml version='1.0' encoding='ISO-8859-1'?><a/>", 1, "UTF-8"},
		{"<a>\n\xe9</a>", 2, "UTF-8"},
		{"<a>\n\xed\xa0\x80</a>", 2, "UTF-8"},
		{"<a>\n\x01</a>", 2, "control character"},
		{"<a\nxmlns='urn:b'/>", 1, "namespace"},
		{"<a><!-- x", 1, "expected"},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		refuses_bytes(cases[i].text, strlen(cases[i].text), cases[i].line, cases[i].part);
	refuses_bytes("<a>\n\0</a>", 9, 2, "control character");
	/* UTF-16, as some editors save. */
	refuses_bytes("\xff\xfe<\0a\0/\0>\0", 10, 1, "expected");
}

/* ---- limits, from both sides ---- */

static struct strbuf repeated(struct arena *arena, const char *text, size_t times)
{
	struct strbuf all = strbuf_in(arena);
	for (size_t i = 0; i < times; i++)
		strbuf_add(&all, text);
	return all;
}

static void check_limit(struct strbuf text, const char *part)
{
	if (part) {
		refuses_bytes(text.text, text.length, 1, part);
		return;
	}
	struct parsed p = parse_bytes(text.text, text.length);
	for (size_t i = 0; i < p.diags.diags.count; i++)
		print_error("%s\n", p.diags.diags.items[i].text);
	assert_int_equal(p.status, STATUS_OK);
	arena_free(p.arena);
}

static void check_depth(struct arena *arena, size_t depth, const char *part)
{
	struct strbuf text = repeated(arena, "<a>", depth);
	strbuf_add(&text, repeated(arena, "</a>", depth).text);
	check_limit(text, part);
}

static void check_elements(struct arena *arena, size_t count, const char *part)
{
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<a>");
	strbuf_add(&text, repeated(arena, "<b/>", count - 1).text);
	strbuf_add(&text, "</a>");
	check_limit(text, part);
}

static void check_attributes(struct arena *arena, int count, const char *part)
{
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<a");
	for (int i = 0; i < count; i++)
		strbuf_printf(&text, " b%d='1'", i);
	strbuf_add(&text, "/>");
	check_limit(text, part);
}

/* A tag of so many bytes from `<` to before its end. */
static void check_tag(struct arena *arena, size_t length, const char *part)
{
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<a b='");
	strbuf_add(&text, repeated(arena, "x", length - strlen("<a b=''")).text);
	strbuf_add(&text, "'/>");
	check_limit(text, part);
}

static void check_bytes(struct arena *arena, size_t length, const char *part)
{
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<a/>");
	strbuf_add(&text, repeated(arena, "\n", length - 4).text);
	if (part)
		refuses_bytes(text.text, text.length, 0, part);
	else
		check_limit(text, NULL);
}

static void test_limits(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	check_depth(arena, MARKUP_MOST_DEPTH, NULL);
	check_depth(arena, MARKUP_MOST_DEPTH + 1, "16 levels");
	check_elements(arena, MARKUP_MOST_ELEMENTS, NULL);
	check_elements(arena, MARKUP_MOST_ELEMENTS + 1, "1,000,000 elements");
	check_attributes(arena, MARKUP_MOST_ATTRIBUTES, NULL);
	check_attributes(arena, MARKUP_MOST_ATTRIBUTES + 1, "attributes");
	check_tag(arena, MARKUP_MOST_TAG_BYTES, NULL);
	check_tag(arena, MARKUP_MOST_TAG_BYTES + 1, "64 kB");
	check_bytes(arena, MARKUP_MOST_BYTES, NULL);
	check_bytes(arena, MARKUP_MOST_BYTES + 1, "16 MiB");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lines),         cmocka_unit_test(test_lines_of_random_texts),
		cmocka_unit_test(test_lines_of_text), cmocka_unit_test(test_faults),
		cmocka_unit_test(test_limits),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
