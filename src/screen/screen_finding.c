/* The findings of a floor as a list: each leads to its place on a sheet, and back. */
#include "screen/screen_part.h"

bool screen_is_question(const struct finding *finding)
{
	return finding->state == FINDING_OPEN && finding->weight != RULE_NOTE;
}

static enum rule_weight weight_of(const struct finding *finding)
{
	return screen_is_question(finding) ? finding->weight : RULE_NOTE;
}

const char *screen_weight(const struct finding *finding)
{
	return rule_weight_word(weight_of(finding));
}

const char *screen_number(const struct screen *s, size_t finding)
{
	return arena_printf(s->draft->arena, "%zu", s->numbers[finding]);
}

const char *screen_finding_id(const struct screen *s, size_t finding)
{
	return arena_printf(s->draft->arena, "finding-%zu", s->numbers[finding]);
}

const char *screen_place_id(const struct screen *s, const struct place *place)
{
	return arena_printf(s->draft->arena, "place-%zu-%s", s->numbers[place->finding],
	                    s->set->pages[place->page].name);
}

const char *screen_sheet_id(const struct screen *s, size_t page)
{
	return arena_printf(s->draft->arena, "sheet-%s", s->set->pages[page].name);
}

const char *screen_finding_target(const struct screen *s, size_t finding)
{
	const struct place *place = place_find(&s->places, finding);
	return arena_printf(s->draft->arena, "#%s",
	                    place ? screen_place_id(s, place) : screen_sheet_id(s, 0));
}

void screen_add_element_link(struct screen *s, const char *id)
{
	const char *tag = draft_tag(s->draft, id);
	const char *href = arena_printf(s->draft->arena, "#about-%s", id);
	if (element_find(&s->elements, id) != NULL)
		html_text(&s->out, "a", tag, {"href", href});
	else
		html_text(&s->out, "span", tag, HTML_NONE);
}

/* The sheets that show its place, each a link. */
static void add_places(struct screen *s, size_t finding)
{
	html_start(&s->out, "p", {"class", "where"});
	for (size_t i = 0; i < s->places.list.count; i++) {
		const struct place *place = &s->places.list.items[i];
		if (place->finding == finding)
			html_text(&s->out, "a", s->set->pages[place->page].title,
			          {"href", arena_printf(s->draft->arena, "#%s",
			                                screen_place_id(s, place))});
	}
	html_end(&s->out, "p");
}

static void add_finding(struct screen *s, size_t i)
{
	const struct finding *finding = &s->draft->findings->items[i];
	const struct draft *draft = s->draft;
	const char *weight = screen_weight(finding);
	const char *who =
		draft_word(draft, arena_printf(draft->arena, "who.%s", finding->rule->who));
	html_start(&s->out, "li", {"id", screen_finding_id(s, i)},
	           {"class", arena_printf(draft->arena, "finding %s", weight)});
	html_text(&s->out, "a", screen_number(s, i), {"class", "number"},
	          {"href", screen_finding_target(s, i)},
	          {"aria-label",
	           draft_text(draft, "page.to-place", {"number", screen_number(s, i)})});
	html_text(&s->out, "p", finding->text, HTML_NONE);
	html_start(&s->out, "p", {"class", "rule-of"});
	screen_add_element_link(s, finding->about);
	if (screen_is_question(finding))
		html_text(&s->out, "strong", draft_text(draft, "page.answers", {"who", who}),
		          {"class", "who"});
	html_text(&s->out, "span",
	          draft_text(draft, "page.rule", {"rule", finding->rule->name},
	                     {"source", finding->rule->source}),
	          HTML_NONE);
	html_end(&s->out, "p");
	add_places(s, i);
	html_end(&s->out, "li");
}

void screen_number_findings(struct screen *s)
{
	const struct findings *findings = s->draft->findings;
	size_t number = 0;
	s->numbers = ARENA_ARRAY(s->draft->arena, size_t, findings->count);
	for (int weight = RULE_STOP; weight >= RULE_NOTE; weight--)
		for (size_t i = 0; i < findings->count; i++)
			if ((int)weight_of(&findings->items[i]) == weight)
				s->numbers[i] = ++number;
}

static void add_list(struct screen *s, bool questions)
{
	const struct findings *findings = s->draft->findings;
	html_start(&s->out, "ol", {"class", "findings"});
	for (size_t number = 1; number <= findings->count; number++)
		for (size_t i = 0; i < findings->count; i++)
			if (s->numbers[i] == number &&
			    screen_is_question(&findings->items[i]) == questions)
				add_finding(s, i);
	html_end(&s->out, "ol");
}

static size_t count_of(const struct findings *findings, bool questions)
{
	size_t count = 0;
	for (size_t i = 0; i < findings->count; i++)
		count += screen_is_question(&findings->items[i]) == questions;
	return count;
}

static const char *heading(const struct screen *s, const char *key, size_t count)
{
	return draft_text(s->draft, key, {"count", arena_printf(s->draft->arena, "%zu", count)});
}

void screen_add_findings(struct screen *s)
{
	size_t asked = count_of(s->draft->findings, true),
	       noted = count_of(s->draft->findings, false);
	html_start(&s->out, "section", {"id", "questions"}, {"class", "panel"},
	           {"aria-labelledby", "questions-head"});
	html_text(&s->out, "h2", heading(s, "page.questions", asked), {"id", "questions-head"},
	          {"tabindex", "-1"});
	if (asked > 0)
		add_list(s, true);
	else
		html_text(&s->out, "p", draft_word(s->draft, "question.none"), HTML_NONE);
	if (noted > 0) {
		html_start(&s->out, "details", {"id", "noted"});
		html_text(&s->out, "summary", heading(s, "page.noted", noted), HTML_NONE);
		add_list(s, false);
		html_end(&s->out, "details");
	}
	html_end(&s->out, "section");
}
