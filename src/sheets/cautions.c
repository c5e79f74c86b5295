#include "sheets/cautions.h"

#include "sheets/column.h"

static const double INDENT = 4;

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

static void add(struct sheet *sheet, const char *key)
{
	column_row(sheet, "\xe2\x80\x93", INDENT, draft_word(sheet->draft, key));
}

void cautions_draw(struct sheet *sheet)
{
	const struct site *site = sheet->draft->site;
	if (has_step(site))
		add(sheet, "caution.step");
	if (is_tensioned(site))
		add(sheet, "caution.tensioned");
	add(sheet, "caution.silica");
	add(sheet, "caution.asbestos");
	add(sheet, "caution.makers");
	add(sheet, "caution.proposal");
}
