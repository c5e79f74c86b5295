#include "support/judged.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "plan/plan_parse.h"

static const struct judged_plan PLAIN = {
	.rules = "us",
	.slab = "thickness='125mm' support='ground' exposure='indoor' placed='2025-11-10'",
	.room = "",
	.in_room = "",
	.more = "",
	.tile = "kind='porcelain' wide='197mm' thick='10mm' edge='rectified'",
	.lay = "joint='6mm' pattern='grid'",
	.membrane = "kind='sheet' movement='3mm' cover='partial' roll-wide='1m' roll-long='20m' "
		    "lap='50mm'",
};

static const char *text_of(struct arena *arena, const struct judged_plan *plan)
{
#define GIVEN(field) (plan->field ? plan->field : PLAIN.field)
	const char *membrane = GIVEN(membrane);
	return arena_printf(
		arena,
		"<floor version='1' unit='mm' rules='%s'>\n"
		"<job date='2026-03-02' starts='2026-04-06'/>\n"
		"<slab id='S1' %s/>\n"
		"<room id='hall' slab='S1' %s><corners>"
		"<corner id='south' x='0' y='0'/><corner id='east' x='4000' y='0'/>"
		"<corner id='north' x='4000' y='3000'/><corner id='west' x='0' y='3000'/>"
		"</corners>%s</room>\n"
		"<tile id='T1' %s/>\n"
		"<lay id='L1' rooms='hall' tile='T1' %s/>\n%s%s%s\n%s\n</floor>",
		GIVEN(rules), GIVEN(slab), GIVEN(room), GIVEN(in_room), GIVEN(tile), GIVEN(lay),
		*membrane ? "<membrane id='M1' rooms='hall' " : "", membrane, *membrane ? "/>" : "",
		GIVEN(more));
#undef GIVEN
}

static void fail_on(const struct diag_list *diags)
{
	if (diags->diags.count == 0)
		return;
	diag_print(diags, stderr);
	abort();
}

const struct findings *judged_plan(struct arena *arena, const struct judged_plan *given)
{
	const char *text = text_of(arena, given);
	struct diag_list *diags = ARENA_NEW(arena, struct diag_list);
	const struct plan *plan = NULL;
	const struct site *site = NULL;
	*diags = diag_list_in(arena, "test");
	enum status status = plan_parse(arena, text, strlen(text), diags, &plan);
	fail_on(diags);
	if (status == STATUS_OK)
		status = site_build(arena, plan, diags, &site);
	fail_on(diags);
	const struct rules *rules = rules_load(arena, plan->rules, plan_has_inches(plan), diags);
	const struct words *words = words_load(arena, "en", diags);
	fail_on(diags);
	if (status != STATUS_OK)
		abort();
	return findings_judge(arena, placed_from_site(arena, site, rules), words);
}

const struct finding *judged_find(const struct findings *findings, const char *rule)
{
	for (size_t i = 0; i < findings->count; i++)
		if (strcmp(findings->items[i].rule->name, rule) == 0)
			return &findings->items[i];
	return NULL;
}
