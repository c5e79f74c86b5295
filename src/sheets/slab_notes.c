#include "sheets/slab_notes.h"

#include "sheets/cautions.h"
#include "sheets/column.h"
#include "units/length.h"

static const double SLAB_INDENT = 10, FINDING_INDENT = 10;

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
	const char *days = arena_printf(draft->arena, "%ld",
	                                date_days_between(slab->placed, job->starts));
	return draft_text(draft, "slab.age", {"days", days},
	                  {"starts", draft_date(draft, job->starts)});
}

static void add_slab(struct sheet *sheet, const struct plan_slab *slab)
{
	const struct draft *draft = sheet->draft;
	const char *tag = draft_tag(draft, slab->id);
	const char *support = slab->support == PLAN_SUPPORT_GROUND ? "slab.support-ground"
	                                                           : "slab.support-suspended";
	column_row(sheet, tag, SLAB_INDENT,
	           draft_text(draft, "slab.line",
	                      {"thickness", draft_measure(draft, length_mm(slab->thickness_nm))},
	                      {"support", draft_word(draft, support)},
	                      {"exposure", draft_word(draft, exposure_key(slab->exposure))}));
	column_row(sheet, "", SLAB_INDENT, age_text(draft, slab));
}

static const char *finding_text(const struct draft *draft, const struct finding *finding)
{
	const char *who = finding->rule->who;
	const char *name = draft_word(draft, arena_printf(draft->arena, "who.%s", who));
	bool asks = finding->state == FINDING_OPEN && finding->weight != RULE_NOTE;
	return draft_text(draft, asks ? "finding.row" : "finding.row-note", {"text", finding->text},
	                  {"rule", finding->rule->name}, {"who", name});
}

static const char *weight_mark(const struct draft *draft, const struct finding *finding)
{
	static const char *const KEYS[] = {
		[RULE_NOTE] = "weight.note", [RULE_ASK] = "weight.ask", [RULE_STOP] = "weight.stop"};
	return draft_tag(draft, draft_word(draft, KEYS[finding->weight]));
}

/* What stops first, then what asks, then notes. */
static void add_findings(struct sheet *sheet)
{
	static const enum rule_weight ORDER[] = {RULE_STOP, RULE_ASK, RULE_NOTE};
	const struct findings *findings = sheet->draft->findings;
	for (int k = 0; k < 3; k++)
		for (size_t i = 0; i < findings->count; i++)
			if (findings->items[i].weight == ORDER[k])
				column_row(sheet, weight_mark(sheet->draft, &findings->items[i]),
				           FINDING_INDENT,
				           finding_text(sheet->draft, &findings->items[i]));
	if (findings->count == 0)
		column_row(sheet, "", 0, draft_word(sheet->draft, "finding.none"));
}

void slab_notes(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	column_heading(sheet, draft_word(draft, "heading.slabs"));
	for (size_t i = 0; i < draft->site->plan->slab_count; i++)
		add_slab(sheet, &draft->site->plan->slabs[i]);
	column_heading(sheet, draft_word(draft, "heading.findings"));
	add_findings(sheet);
	column_heading(sheet, draft_word(draft, "heading.cautions"));
	cautions_draw(sheet);
}
