/* Defaults that follow from other values. */
#include <string.h>

#include "plan/plan_build.h"

static const char *yes_no(bool is)
{
	return is ? "yes" : "no";
}

static void fill_room(struct plan_build *b, const struct plan_built *at)
{
	struct plan_room *room = at->object;
	if (!room->slab)
		return;
	room->has_own_heated = plan_is_written(at, "heated");
	if (!room->has_own_heated) {
		room->heated = room->slab->heated;
		plan_use_default(b, at, "heated", yes_no(room->heated));
	}
	if (!plan_is_written(at, "exposure"))
		plan_use_default(b, at, "exposure",
		                 grammar_words(
					 grammar_find_attribute(at->element,
		                                                "exposure"))[room->slab->exposure]);
}

static void fill_tile(struct plan_build *b, const struct plan_built *at)
{
	struct plan_tile *tile = at->object;
	if (plan_is_written(at, "long") || !plan_is_sound(at, "wide"))
		return;
	tile->long_nm = tile->wide_nm;
	plan_use_default(b, at, "long", markup_find(at->node, "wide")->value);
}

/* Source: docs/floor-format.md: 1/2 below a 15 in nominal side, 1/3 from there on. */
static void fill_shift(struct plan_build *b, const struct plan_built *at)
{
	const int64_t large_nm = 15 * INT64_C(25400000);
	struct plan_lay *lay = at->object;
	if (plan_is_written(at, "shift") || !plan_is_sound(at, "tile") ||
	    !plan_is_sound(at, "joint"))
		return;
	bool is_large = lay->tile_count && lay->tiles[0]->long_nm + lay->joint_nm >= large_nm;
	lay->shift = is_large ? (struct share){1, 3} : (struct share){1, 2};
	if (lay->pattern == PLAN_PATTERN_RUNNING)
		plan_use_default(b, at, "shift", is_large ? "1/3" : "1/2");
}

static void fill_in_pairs(struct plan_build *b, const struct plan_built *at)
{
	struct plan_lay *lay = at->object;
	if (plan_is_written(at, "in-pairs"))
		return;
	lay->in_pairs = 1;
	if (lay->pattern == PLAN_PATTERN_HERRINGBONE)
		plan_use_default(b, at, "in-pairs", "1");
}

static void fill_lay(struct plan_build *b, const struct plan_built *at)
{
	fill_shift(b, at);
	fill_in_pairs(b, at);
}

static void fill_membrane(struct plan_build *b, const struct plan_built *at)
{
	if (!plan_is_written(at, "overrun"))
		plan_use_default(b, at, "overrun", "the longer face side, at least 12in");
}

void plan_fill_dependent(struct plan_build *b)
{
	for (size_t i = 0; i < b->built.count; i++)
		if (b->built.items[i].element->kind == PLAN_REF_TILE)
			fill_tile(b, &b->built.items[i]);
	for (size_t i = 0; i < b->built.count; i++) {
		const struct plan_built *at = &b->built.items[i];
		if (strcmp(at->element->name, "room") == 0)
			fill_room(b, at);
		else if (at->element->kind == PLAN_REF_LAY)
			fill_lay(b, at);
		else if (at->element->kind == PLAN_REF_MEMBRANE)
			fill_membrane(b, at);
	}
}
