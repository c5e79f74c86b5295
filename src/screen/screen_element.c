/* What is known of each element, under its tag: opened by a click on the sheet or from here. */
#include <string.h>

#include "screen/fact.h"
#include "screen/screen_part.h"

static void add_facts(struct screen *s, const char *title, struct facts facts)
{
	if (facts.list.count == 0)
		return;
	if (title != NULL)
		html_text(&s->out, "h4", title, HTML_NONE);
	html_start(&s->out, "dl", HTML_NONE);
	for (size_t i = 0; i < facts.list.count; i++) {
		const struct fact *fact = &facts.list.items[i];
		html_text(&s->out, "dt", fact->name, HTML_NONE);
		if (fact->about == NULL) {
			html_text(&s->out, "dd", fact->value, HTML_NONE);
			continue;
		}
		html_start(&s->out, "dd", HTML_NONE);
		screen_add_element_link(s, fact->about);
		html_end(&s->out, "dd");
	}
	html_end(&s->out, "dl");
}

static void add_findings_of(struct screen *s, const struct element *element)
{
	const struct findings *findings = s->draft->findings;
	bool is_first = true;
	for (size_t i = 0; i < findings->count; i++) {
		const struct finding *finding = &findings->items[i];
		if (strcmp(finding->about, element->id) != 0)
			continue;
		if (is_first)
			html_start(&s->out, "ul", {"class", "findings"});
		is_first = false;
		html_start(&s->out, "li",
		           {"class",
		            arena_printf(s->draft->arena, "finding %s", screen_weight(finding))});
		html_text(&s->out, "a", screen_number(s, i), {"class", "number"},
		          {"href", arena_printf(s->draft->arena, "#%s", screen_finding_id(s, i))},
		          {"aria-label", draft_text(s->draft, "page.to-finding",
		                                    {"number", screen_number(s, i)})});
		html_text(&s->out, "p", finding->text, HTML_NONE);
		html_text(&s->out, "p",
		          draft_text(s->draft, "page.rule", {"rule", finding->rule->name},
		                     {"source", finding->rule->source}),
		          {"class", "rule-of"});
		html_end(&s->out, "li");
	}
	if (!is_first)
		html_end(&s->out, "ul");
}

/* K1.strip.1 comes from K1. */
static bool is_from(const struct element *element, const struct element *origin)
{
	size_t length = strlen(origin->id);
	return strncmp(element->id, origin->id, length) == 0 && element->id[length] == '.';
}

static void add_derived(struct screen *s, const struct element *element)
{
	bool is_first = true;
	for (size_t i = 0; i < s->elements.count; i++) {
		if (!is_from(&s->elements.items[i], element))
			continue;
		if (is_first) {
			html_text(&s->out, "h4", draft_word(s->draft, "page.derived"), HTML_NONE);
			html_start(&s->out, "p", {"class", "where"});
		}
		is_first = false;
		screen_add_element_link(s, s->elements.items[i].id);
	}
	if (!is_first)
		html_end(&s->out, "p");
}

static void add_sheets(struct screen *s, const struct element *element)
{
	if (element->pages.count == 0)
		return;
	html_text(&s->out, "h4", draft_word(s->draft, "page.shown-on"), HTML_NONE);
	html_start(&s->out, "p", {"class", "where"});
	for (size_t i = 0; i < element->pages.count; i++) {
		size_t page = element->pages.items[i];
		html_text(&s->out, "a", s->set->pages[page].title,
		          {"href", arena_printf(s->draft->arena, "#%s", screen_sheet_id(s, page))},
		          {"data-show", element->id});
	}
	html_end(&s->out, "p");
}

static void add_element(struct screen *s, const struct element *element)
{
	const struct draft *draft = s->draft;
	html_start(&s->out, "details", {"id", arena_printf(draft->arena, "about-%s", element->id)},
	           {"class", "about"}, {"data-of", element->id},
	           {"data-ground", element_is_ground(element) ? "yes" : NULL});
	struct facts placed = facts_placed(draft, element);
	html_start(&s->out, "summary", HTML_NONE);
	strbuf_add_escaped(&s->out, draft_tag(draft, element->id));
	if (placed.list.count > 0)
		html_text(&s->out, "span", placed.list.items[0].value, {"class", "hint"});
	html_end(&s->out, "summary");
	add_findings_of(s, element);
	add_facts(s, NULL, placed);
	if (element->written != NULL)
		add_facts(s,
		          draft_text(draft, "page.written", {"element", element->written->name},
		                     {"line",
		                      arena_printf(draft->arena, "%d", element->written->line)}),
		          facts_written(draft, element));
	add_facts(s, draft_word(draft, "page.assumed"), facts_assumed(draft, element));
	add_derived(s, element);
	add_sheets(s, element);
	html_end(&s->out, "details");
}

void screen_add_elements(struct screen *s)
{
	html_start(&s->out, "section", {"id", "elements"}, {"class", "panel"},
	           {"aria-labelledby", "elements-head"});
	html_text(&s->out, "h2", draft_word(s->draft, "page.elements"), {"id", "elements-head"},
	          {"tabindex", "-1"});
	for (size_t i = 0; i < s->elements.count; i++) {
		const struct element *element = &s->elements.items[i];
		if (i == 0 || element[-1].kind != element->kind)
			html_text(&s->out, "h3",
			          draft_word(s->draft, element_kind_key(element->kind)), HTML_NONE);
		add_element(s, element);
	}
	html_end(&s->out, "section");
}
