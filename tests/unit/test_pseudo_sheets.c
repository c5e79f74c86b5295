/* All sheets of all demo plans in a language of ⟦brackets⟧, two fifths longer than English:
 * every word of theirs is one of the table, and texts do not touch however long they are. */
#include <ctype.h>
#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "findings/finding.h"
#include "rules/rule_names.h"
#include "sheets/sheet_set.h"
#include "support/compared.h"
#include "support/program.h"
#include "support/rooms.h"

/* ---- drawing ---- */

static const char *read_file(struct arena *arena, const char *path)
{
	struct strbuf text = strbuf_in(arena);
	FILE *file = fopen(path, "rb");
	assert_non_null(file);
	for (int c; (c = getc(file)) != EOF;)
		strbuf_add_char(&text, (char)c);
	fclose(file);
	return text.text;
}

static struct sheet_set draw(struct arena *arena, const char *text)
{
	static struct diag_list diags;
	struct sheet_set set;
	struct style *style = ARENA_NEW(arena, struct style);
	diags = diag_list_in(arena, "test");
	const struct rules *rules = rules_for_tests(arena);
	const struct site *site = site_from_text(arena, text);
	const struct words *words = words_pseudo(arena, words_load(arena, "en", &diags));
	const struct placed *placed = placed_from_site(arena, site, rules);
	assert_int_equal(style_embedded(arena, "paper", 0, &diags, style), STATUS_OK);
	struct draft draft = {.arena = arena,
	                      .placed = placed,
	                      .site = site,
	                      .findings = findings_judge(arena, placed, words),
	                      .words = words,
	                      .style = style,
	                      .paper = paper_size_find("a3")};
	assert_int_equal(text_engine_embedded(arena, &draft.text), STATUS_OK);
	assert_int_equal(sheet_set_draw(&draft, NULL, 0, NULL, &diags, &set), STATUS_OK);
	return set;
}

/* ---- words ---- */

static bool contains(const char *text, const char *word, size_t length)
{
	for (; *text; text++) {
		size_t i = 0;
		while (i < length &&
		       tolower((unsigned char)text[i]) == tolower((unsigned char)word[i]))
			i++;
		if (i == length)
			return true;
	}
	return false;
}

/* Of the record: why a joint is where it is. */
static const char *const NAMES[] = {"perimeter-joint", "field-joint"};

/* What the description says without a word, as it would say it. */
static bool is_default(const struct plan *plan, const char *word, size_t length)
{
	for (size_t i = 0; i < plan->default_count; i++)
		if (contains(plan->defaults[i].attribute, word, length) ||
		    contains(plan->defaults[i].element, word, length) ||
		    (contains(plan->defaults[i].value, word, length) &&
		     !strchr(plan->defaults[i].value, ' ')))
			return true;
	return false;
}

/* What the plan itself says, and names that are the same in every language: of rules with their
 * sources, of sheets, of what derives from an element (`K1.left`). */
static bool is_name(const struct sheet_set *set, const struct plan *described,
                    const struct rules *rules, const char *plan, const char *word, size_t length)
{
	if (memchr(word, '.', length) || contains(plan, word, length) ||
	    is_default(described, word, length))
		return true;
	for (int i = 0; i < RULE_COUNT; i++) {
		const struct rule *rule = rules_rule(rules, (enum rule_id)i);
		if (contains(rule->name, word, length) || contains(rule->source, word, length))
			return true;
	}
	for (size_t i = 0; i < set->page_count; i++)
		if (contains(set->pages[i].name, word, length))
			return true;
	for (size_t i = 0; i < sizeof NAMES / sizeof *NAMES; i++)
		if (contains(NAMES[i], word, length))
			return true;
	return false;
}

enum { OPEN_LENGTH = 3 }; /* bytes of a bracket */

/* Words outside brackets, which may be opened on one line and closed on another. */
static int check_words(const struct sheet_set *set, const struct plan *described,
                       const struct rules *rules, const char *plan, const struct page *page)
{
	int depth = 0, strange = 0;
	for (size_t i = 0; i < page->list->ops.count; i++) {
		const struct op *op = &page->list->ops.items[i];
		if (op->kind != OP_TEXT)
			continue;
		for (const char *c = op->text; *c;) {
			if (strncmp(c, "⟦", OPEN_LENGTH) == 0 ||
			    strncmp(c, "⟧", OPEN_LENGTH) == 0) {
				depth += strncmp(c, "⟦", OPEN_LENGTH) == 0 ? 1 : -1;
				c += OPEN_LENGTH;
				continue;
			}
			size_t length = 0;
			while (isalpha((unsigned char)c[length]) || c[length] == '.')
				length++;
			if (length >= 2 && depth == 0 &&
			    !is_name(set, described, rules, plan, c, length)) {
				print_message("%s: %.*s in \"%s\"\n", page->name, (int)length, c,
				              op->text);
				strange++;
			}
			c += length > 0 ? length : 1;
		}
	}
	return strange + (depth != 0);
}

/* ---- places ---- */

static int check_apart(const struct page *page)
{
	int touching = 0;
	const struct list *list = page->list;
	for (size_t i = 0; i < list->ops.count; i++) {
		if (list->ops.items[i].kind != OP_TEXT || !*list->ops.items[i].text)
			continue;
		for (size_t k = 0; k < i; k++) {
			if (list->ops.items[k].kind != OP_TEXT || !*list->ops.items[k].text ||
			    !paper_box_meets(list->ops.items[i].box, list->ops.items[k].box))
				continue;
			print_message("%s: \"%s\" touches \"%s\"\n", page->name,
			              list->ops.items[i].text, list->ops.items[k].text);
			touching++;
		}
	}
	return touching;
}

static int check_inside(const struct page *page)
{
	int outside = 0;
	const struct list *list = page->list;
	/* Inside the strip of grid references. */
	struct paper_box paper = {15, 4, list->width - 5, list->height - 4};
	for (size_t i = 0; i < list->ops.count; i++)
		if (list->ops.items[i].kind == OP_TEXT && *list->ops.items[i].text &&
		    !paper_box_inside(list->ops.items[i].box, paper)) {
			print_message("%s: \"%s\" is outside\n", page->name,
			              list->ops.items[i].text);
			outside++;
		}
	return outside;
}

static int check_plan(const char *path)
{
	struct arena *arena = arena_new();
	const char *text = read_file(arena, path);
	const struct rules *rules = rules_for_tests(arena);
	struct sheet_set set = draw(arena, text);
	int faults = 0;
	assert_true(set.page_count > 7);
	for (size_t i = 0; i < set.page_count; i++)
		faults += check_words(&set, site_from_text(arena, text)->plan, rules, text,
		                      &set.pages[i]) +
		          check_apart(&set.pages[i]) + check_inside(&set.pages[i]);
	if (faults)
		print_message("%s: %d faults\n", path, faults);
	arena_free(arena);
	return faults;
}

static void test_no_word_outside_the_table(void **state)
{
	(void)state;
	glob_t plans;
	int faults = 0;
	assert_int_equal(glob("demo-plans/*.xml", 0, NULL, &plans), 0);
	for (size_t i = 0; i < plans.gl_pathc; i++)
		faults += check_plan(plans.gl_pathv[i]);
	globfree(&plans);
	assert_int_equal(faults, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_no_word_outside_the_table)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
