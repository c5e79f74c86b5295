#include "compare/floor_state.h"

#include "pattern/pattern_check.h"
#include "plan/plan_parse.h"

const struct floor_state *floor_state_of(struct arena *arena, const struct markup *root,
                                         const struct words *words)
{
	struct diag_list unsaid = diag_list_in(arena, ""), *diags = &unsaid;
	struct floor_state *state = ARENA_NEW(arena, struct floor_state);
	state->root = root;
	if (plan_from_markup(arena, root, diags, &state->plan) != STATUS_OK ||
	    site_build(arena, state->plan, diags, &state->site) != STATUS_OK ||
	    pattern_check(arena, state->plan, diags) != STATUS_OK)
		return NULL;
	const struct plan *plan = state->plan;
	const struct rules *rules = rules_load(arena, plan->rules != NULL ? plan->rules : "us",
	                                       plan_has_inches(plan), diags);
	if (rules == NULL)
		return NULL;
	state->placed = placed_from_site(arena, state->site, rules);
	state->findings = findings_judge_plainly(arena, state->placed, words);
	state->count = count_from_placed(arena, state->placed, words);
	return state;
}

const struct floor_state *floor_state_placed(struct arena *arena, struct bytes bytes,
                                             const struct placed *placed, const struct words *words)
{
	struct diag_list unsaid = diag_list_in(arena, "");
	struct markup *root;
	if (markup_parse(arena, bytes.data, bytes.length, &unsaid, &root) != STATUS_OK)
		return NULL;
	struct floor_state *state = ARENA_NEW(arena, struct floor_state);
	state->root = root;
	state->site = placed->site;
	state->plan = placed->site->plan;
	state->placed = placed;
	state->findings = findings_judge_plainly(arena, placed, words);
	state->count = count_from_placed(arena, placed, words);
	return state;
}

const struct floor_state *floor_state_counted(struct arena *arena, const struct floor_state *state,
                                              const struct words *words, bool inches)
{
	if (state->site->inches == inches)
		return state;
	struct floor_state *counted = ARENA_NEW(arena, struct floor_state);
	*counted = *state;
	counted->count = count_in_units(arena, state->placed, words, inches);
	return counted;
}
