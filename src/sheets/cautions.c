#include "sheets/cautions.h"

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
