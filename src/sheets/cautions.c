#include "sheets/cautions.h"

#include <math.h>

#include "rules/workmanship.h"
#include "units/length.h"

static bool is_tensioned(const struct site *site)
{
	for (size_t i = 0; i < site->plan->slab_count; i++)
		if (site->plan->slabs[i].post_tensioned)
			return true;
	return false;
}

static bool has_step(const struct site *site)
{
	for (size_t i = 0; i < site->crack_count; i++)
		if (site->cracks[i].step > 0)
			return true;
	return false;
}

static void add(struct notes *notes, const char *key)
{
	notes_item(notes, NOTE_CAUTION, NOTE_DASH, draft_word(notes->sheet->draft, key));
}

void cautions_add(struct notes *notes)
{
	const struct site *site = notes->sheet->draft->site;
	notes_heading(notes, NOTE_CAUTION, "heading.cautions");
	if (has_step(site))
		add(notes, "caution.step");
	if (is_tensioned(site))
		add(notes, "caution.tensioned");
	add(notes, "caution.silica");
	add(notes, "caution.asbestos");
	add(notes, "caution.makers");
}

void cautions_add_air(struct notes *notes)
{
	const double M3_PER_HOUR = 1.69901; /* of a cubic foot a minute */
	const struct draft *draft = notes->sheet->draft;
	const struct rules *rules = draft->placed->rules;
	double wheel = rules_figure(rules, FIGURE_GRINDER_WHEEL); /* inches */
	double cfm = workmanship_air_cfm(rules, wheel);
	const char *air = draft->site->inches ? arena_printf(draft->arena, "%ld cfm", lround(cfm))
	                                      : arena_printf(draft->arena, "%ld m³/h",
	                                                     lround(cfm * M3_PER_HOUR));
	notes_item(notes, NOTE_CAUTION, NOTE_DASH,
	           draft_text(draft, "caution.air", {"air", air},
	                      {"wheel", draft_measure(draft, wheel * LENGTH_MM_PER_INCH)}));
}
