#include "support/compared.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void fail_on(const struct diag_list *diags)
{
	if (diags->diags.count == 0)
		return;
	diag_print(diags, stderr);
	abort();
}

const struct words *compared_words(struct arena *arena)
{
	struct diag_list diags = diag_list_in(arena, "en");
	const struct words *words = words_load(arena, "en", &diags);
	fail_on(&diags);
	return words;
}

const struct floor_state *compared_state(struct arena *arena, const char *text)
{
	struct diag_list diags = diag_list_in(arena, "test");
	struct markup *root;
	enum status status = markup_parse(arena, text, strlen(text), &diags, &root);
	fail_on(&diags);
	const struct floor_state *state =
		status == STATUS_OK ? floor_state_of(arena, root, compared_words(arena)) : NULL;
	if (state == NULL) {
		fprintf(stderr, "no floor: %s\n", text);
		abort();
	}
	return state;
}

const struct comparison *compared(struct arena *arena, const char *base, const char *revised)
{
	return comparison_of(arena, compared_state(arena, base), compared_state(arena, revised),
	                     compared_words(arena), NULL);
}

const char *compared_hall(struct arena *arena, const char *more)
{
	return arena_printf(
		arena,
		"<floor version='1' unit='mm'>\n"
		"<job date='2026-03-02' starts='2026-04-06'/>\n"
		"<revision mark='A' date='2026-03-02'/>\n"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor' "
		"placed='2025-11-10'/>\n"
		"<room id='hall' slab='S1'><corners>"
		"<corner id='south' x='0' y='0'/><corner id='east' x='9000' y='0'/>"
		"<corner id='north' x='9000' y='4000'/><corner id='west' x='0' y='4000'/>"
		"</corners></room>\n"
		"<tile id='T1' kind='porcelain' wide='197mm' thick='10mm' edge='rectified'/>\n"
		"<lay id='L1' rooms='hall' tile='T1' joint='3mm' pattern='grid'/>\n"
		"<membrane id='M1' rooms='hall' kind='sheet' movement='3mm' cover='partial' "
		"roll-wide='1m' roll-long='20m' lap='50mm'/>\n"
		"%s\n</floor>",
		more);
}

const struct change *compared_only_change(const struct comparison *comparison)
{
	const struct change *found = NULL;
	for (size_t i = 0; i < comparison->changes.list.count; i++) {
		const struct change *change = &comparison->changes.list.items[i];
		if (change->is_work && found != NULL)
			abort();
		if (change->is_work)
			found = change;
	}
	return found;
}
