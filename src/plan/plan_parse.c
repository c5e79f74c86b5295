#include "plan/plan_parse.h"

#include <string.h>

#include "plan/plan_build.h"

enum status plan_parse(struct arena *arena, const char *bytes, size_t length,
                       struct diag_list *diags, const struct plan **out_plan)
{
	struct markup *root;
	*out_plan = NULL;
	enum status status = markup_parse(arena, bytes, length, diags, &root);
	return status == STATUS_OK ? plan_from_markup(arena, root, diags, out_plan) : status;
}

enum status plan_from_markup(struct arena *arena, const struct markup *root,
                             struct diag_list *diags, const struct plan **out_plan)
{
	size_t before = diags->diags.count;
	*out_plan = NULL;
	if (strcmp(root->name, grammar_floor.name) != 0) {
		diag_error(diags, root->line, "the root is <%s>; expected <floor>", root->name);
		return STATUS_INPUT;
	}
	struct plan_build b = {.arena = arena, .diags = diags};
	plan_build_floor(&b, root);
	if (!b.is_stopped)
		plan_resolve(&b);
	if (!b.is_stopped) {
		plan_fill_dependent(&b);
		plan_check(&b);
	}
	b.plan->defaults = b.defaults.items;
	b.plan->default_count = b.defaults.count;
	*out_plan = b.is_stopped ? NULL : b.plan;
	return diags->diags.count > before ? STATUS_INPUT : STATUS_OK;
}
