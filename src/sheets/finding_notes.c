#include "sheets/finding_notes.h"

#include <string.h>

/* Rules that judge what is built of joints: their place is beside the joints. */
static bool is_of_joints(const struct finding *finding)
{
	static const char *const NAMES[] = {"soft-joint-capacity", "soft-path-ragged",
	                                    "soft-path-stepped",   "joint-carried",
	                                    "joint-relocated",     "movement-joint-narrow",
	                                    "field-joint-cut",     "field-joint-stepped",
	                                    "field-joint-missing"};
	for (size_t i = 0; i < sizeof NAMES / sizeof *NAMES; i++)
		if (strcmp(finding->rule->name, NAMES[i]) == 0)
			return true;
	return false;
}

static const char *finding_row(const struct draft *draft, const struct finding *finding,
                               const char *text)
{
	const char *who = finding->rule->who;
	const char *name = draft_word(draft, arena_printf(draft->arena, "who.%s", who));
	bool asks = finding->state == FINDING_OPEN && finding->weight != RULE_NOTE;
	return draft_text(draft, asks ? "finding.row" : "finding.row-note", {"text", text},
	                  {"rule", finding->rule->name}, {"who", name});
}

/* True where two findings say the same, each of its own element. */
static bool is_alike(const struct finding *a, const struct finding *b)
{
	const char *in_a = strstr(a->text, a->about), *in_b = strstr(b->text, b->about);
	if (a->rule != b->rule || a->weight != b->weight || a->state != b->state || !in_a || !in_b)
		return false;
	size_t before = (size_t)(in_a - a->text);
	return before == (size_t)(in_b - b->text) && strncmp(a->text, b->text, before) == 0 &&
	       strcmp(in_a + strlen(a->about), in_b + strlen(b->about)) == 0;
}

/* The text of the first of findings that are alike, of all their elements. */
static const char *text_of_all(const struct draft *draft, size_t first)
{
	const struct finding *items = draft->findings->items, *one = &items[first];
	const char *in = strstr(one->text, one->about);
	if (!in)
		return one->text;
	struct strbuf text = strbuf_in(draft->arena);
	strbuf_add_bytes(&text, one->text, (size_t)(in - one->text));
	strbuf_add(&text, one->about);
	for (size_t i = first + 1; i < draft->findings->count; i++)
		if (is_alike(one, &items[i]))
			strbuf_printf(&text, ", %s", items[i].about);
	strbuf_add(&text, in + strlen(one->about));
	return text.text;
}

static bool is_told(const struct findings *findings, size_t index)
{
	for (size_t i = 0; i < index; i++)
		if (is_alike(&findings->items[i], &findings->items[index]))
			return true;
	return false;
}

static const char *weight_mark(const struct draft *draft, const struct finding *finding)
{
	static const char *const KEYS[] = {[RULE_NOTE] = "weight.note",
	                                   [RULE_ASK] = "weight.ask",
	                                   [RULE_STOP] = "weight.stop"};
	return draft_tag(draft, draft_word(draft, KEYS[finding->weight]));
}

/* What stops first, then what asks, then notes; what is said of many elements once. */
void finding_notes_add(struct notes *notes, enum findings_of of)
{
	static const enum rule_weight ORDER[] = {RULE_STOP, RULE_ASK, RULE_NOTE};
	const struct draft *draft = notes->sheet->draft;
	const struct findings *findings = draft->findings;
	size_t count = 0;
	for (int k = 0; k < 3; k++)
		for (size_t i = 0; i < findings->count; i++) {
			const struct finding *finding = &findings->items[i];
			if (finding->weight != ORDER[k] || is_told(findings, i) ||
			    is_of_joints(finding) != (of == FINDINGS_OF_JOINTS))
				continue;
			if (count++ == 0)
				notes_heading(notes, NOTE_FINDING, "heading.findings");
			notes_item(notes, NOTE_FINDING, weight_mark(draft, finding),
			           finding_row(draft, finding, text_of_all(draft, i)));
		}
	if (findings->count == 0 && of == FINDINGS_OF_SLAB) {
		notes_heading(notes, NOTE_FINDING, "heading.findings");
		notes_item(notes, NOTE_FINDING, "", draft_word(draft, "finding.none"));
	}
}
