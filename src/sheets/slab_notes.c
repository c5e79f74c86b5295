#include "sheets/slab_notes.h"

#include "sheets/cautions.h"
#include "sheets/finding_notes.h"
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
		finding_notes_add(&notes, FINDINGS_OF_SLAB);
	}
	notes_missing(&notes);
	if (is_told)
		cautions_add(&notes);
	notes_legend(&notes);
	notes_draw(&notes);
}
