#include "support/laid.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "plan/plan_parse.h"

static void fail_on(const struct diag_list *diags)
{
	if (diags->diags.count == 0)
		return;
	diag_print(diags, stderr);
	abort();
}

const struct placed_lay *laid_from_text(struct arena *arena, const char *text)
{
	struct diag_list *diags = ARENA_NEW(arena, struct diag_list);
	const struct plan *plan = NULL;
	const struct site *site = NULL;
	*diags = diag_list_in(arena, "test");
	enum status status = plan_parse(arena, text, strlen(text), diags, &plan);
	fail_on(diags);
	if (status == STATUS_OK)
		status = site_build(arena, plan, diags, &site);
	fail_on(diags);
	const struct rules *rules = rules_load(arena, "us", plan_has_inches(plan), diags);
	fail_on(diags);
	return status == STATUS_OK ? &placed_from_site(arena, site, rules)->lays[0] : NULL;
}

const struct placed_lay *laid_room(struct arena *arena, int wide, int deep, int tile,
                                   const char *more, const char *cracks)
{
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='room' slab='S1'><corners>"
		"<corner id='south' x='0' y='0'/><corner id='east' x='%d' y='0'/>"
		"<corner id='north' x='%d' y='%d'/><corner id='west' x='0' y='%d'/>"
		"</corners>%s</room>"
		"%s"
		"<tile id='T1' kind='porcelain' wide='%dmm' thick='10mm'/>"
		"<lay id='L1' rooms='room' tile='T1' joint='3mm' pattern='grid'>"
		"<start x='100' y='100'/></lay>"
		"<membrane id='M1' rooms='room' kind='sheet' movement='3mm' cover='partial' "
		"roll-wide='1000mm' roll-long='20m' lap='50mm' overrun='400mm'/>"
		"</floor>",
		wide, wide, deep, deep, more, cracks, tile);
	return laid_from_text(arena, text);
}
