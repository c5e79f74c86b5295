#include "sheets/slab_notes.h"

#include <string.h>

#include "sheets/cautions.h"
#include "sheets/slab_located.h"
#include "sheets/slab_readings.h"
#include "units/length.h"

static const char *exposure_key(enum plan_exposure exposure)
{
	static const char *const KEYS[] = {
		[PLAN_EXPOSURE_NONE] = "slab.exposure-indoor",
		[PLAN_EXPOSURE_INDOOR] = "slab.exposure-indoor",
		[PLAN_EXPOSURE_SUNLIT] = "slab.exposure-sunlit",
		[PLAN_EXPOSURE_WET] = "slab.exposure-wet",
		[PLAN_EXPOSURE_OUTDOOR] = "slab.exposure-outdoor",
	};
	return KEYS[exposure];
}

static const char *age_text(const struct draft *draft, const struct plan_slab *slab)
{
	const struct plan_job *job = draft->site->plan->job;
	if (!job || job->starts.day == 0 || slab->placed.day == 0)
		return draft_word(draft, "slab.age-unknown");
	const char *days =
		arena_printf(draft->arena, "%ld", date_days_between(slab->placed, job->starts));
	return draft_text(draft, "slab.age", {"days", days},
	                  {"starts", draft_date(draft, job->starts)});
}

static void add_slab(struct notes *notes, const struct plan_slab *slab)
{
	const struct draft *draft = notes->sheet->draft;
	const char *tag = draft_tag(draft, slab->id);
	const char *support = slab->support == PLAN_SUPPORT_GROUND ? "slab.support-ground"
	                                                           : "slab.support-suspended";
	notes_item(notes, NOTE_MATERIAL, tag,
	           draft_text(draft, "slab.line",
	                      {"thickness", draft_measure(draft, length_mm(slab->thickness_nm))},
	                      {"support", draft_word(draft, support)},
	                      {"exposure", draft_word(draft, exposure_key(slab->exposure))}));
	notes_item(notes, NOTE_MATERIAL, "", age_text(draft, slab));
}

/* What was noted of a crack when it was measured. */
static void add_remarks(struct notes *notes)
{
	const struct draft *draft = notes->sheet->draft;
	bool is_first = true;
	for (size_t i = 0; i < draft->site->crack_count; i++) {
		const struct site_crack *crack = &draft->site->cracks[i];
		if (!crack->plan->note)
			continue;
		if (is_first)
			notes_heading(notes, NOTE_MATERIAL, "heading.as-found");
		is_first = false;
		notes_item(notes, NOTE_MATERIAL, draft_tag(draft, crack->id), crack->plan->note);
	}
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
static void add_findings(struct notes *notes)
{
	static const enum rule_weight ORDER[] = {RULE_STOP, RULE_ASK, RULE_NOTE};
	const struct draft *draft = notes->sheet->draft;
	const struct findings *findings = draft->findings;
	for (int k = 0; k < 3; k++)
		for (size_t i = 0; i < findings->count; i++) {
			const struct finding *finding = &findings->items[i];
			if (finding->weight == ORDER[k] && !is_told(findings, i))
				notes_item(notes, NOTE_FINDING, weight_mark(draft, finding),
				           finding_row(draft, finding, text_of_all(draft, i)));
		}
	if (findings->count == 0)
		notes_item(notes, NOTE_FINDING, "", draft_word(draft, "finding.none"));
}

void slab_notes(struct sheet *sheet)
{
	const struct plan *plan = sheet->draft->site->plan;
	struct notes notes = {.sheet = sheet};
	notes_heading(&notes, NOTE_MATERIAL, "heading.slabs");
	bool is_told = notes_of_parts(&notes);
	for (size_t i = 0; is_told && i < plan->slab_count; i++)
		add_slab(&notes, &plan->slabs[i]);
	slab_located_list(&notes);
	if (is_told) {
		slab_readings_list(&notes);
		add_remarks(&notes);
		notes_heading(&notes, NOTE_FINDING, "heading.findings");
		add_findings(&notes);
	}
	notes_missing(&notes);
	if (is_told)
		cautions_add(&notes);
	notes_legend(&notes);
	notes_draw(&notes);
}
