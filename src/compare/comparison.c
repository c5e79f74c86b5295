#include "compare/comparison.h"

#include <string.h>

#include "compare/mixture.h"

struct comparing {
	struct arena *arena;
	const struct words *words;
	void (*on_change)(const char *what);
	const struct pairing *pairing;
	struct comparison *result;
	bool *is_revised; /* of each pair: made by the lines so far, and by the one in hand */
	ARRAY_OF(struct comparison_line) lines;
	ARRAY_OF(const struct change *) waiting; /* that cannot be made yet */
	const struct floor_state *last;
};

const struct row_change *difference_total(const struct difference *difference)
{
	size_t count = difference->money.list.count;
	return count > 0 ? &difference->money.list.items[count - 1] : NULL;
}

static struct difference difference_of(struct arena *arena, const struct floor_state *before,
                                       const struct floor_state *after)
{
	return (struct difference){
		.before = before,
		.after = after,
		.rows = row_changes_find(arena, before->count, after->count),
		.money = row_changes_money(arena, before->count, after->count),
		.days = row_changes_days(arena, before->count, after->count),
		.findings = finding_changes_find(arena, before->findings, after->findings),
		.things = thing_changes_find(arena, before, after),
	};
}

/* ---- lines ---- */

static void add_line(struct comparing *c, const struct floor_state *after)
{
	struct comparison_line line = {
		.number = (int)c->lines.count + 1,
		.changes = c->waiting.items,
		.change_count = c->waiting.count,
		.difference = difference_of(c->arena, c->last, after),
	};
	line.difference.things =
		thing_changes_kept(c->arena, &line.difference.things, &c->result->total.things);
	*array_push(c->arena, &c->lines) = line;
	c->waiting.items = NULL;
	c->waiting.count = c->waiting.room = 0;
	c->last = after;
}

/* All floors are counted in the units of the revised one. */
static const struct floor_state *counted(struct comparing *c, const struct floor_state *state)
{
	return state != NULL ? floor_state_counted(c->arena, state, c->words,
	                                           c->result->revised->site->inches)
	                     : NULL;
}

/* True where the floor is written in another unit and nothing else about it has changed. */
static bool is_unit_alone(const struct change *change)
{
	return change->element == &grammar_floor && change->edit_count == 1 &&
	       strcmp(change->edits[0].what, "unit") == 0;
}

static bool is_empty(const struct difference *difference)
{
	return difference->rows.list.count == 0 && difference->findings.list.count == 0 &&
	       difference->things.list.count == 0;
}

/* Makes a change, where it can be made yet; the last leads to the revised floor itself. */
static void make(struct comparing *c, const struct change *change, bool is_last)
{
	if (c->on_change != NULL)
		c->on_change(*change->id != '\0' ? change->id : change->element->name);
	*array_push(c->arena, &c->waiting) = change;
	c->is_revised[change->pair] = true;
	const struct floor_state *after =
		is_last ? c->result->revised
			: counted(c, floor_state_of(c->arena,
	                                            mixture_of(c->arena, c->pairing, c->is_revised),
	                                            c->words));
	if (after != NULL)
		add_line(c, after);
}

/* Elements that have not changed, or only in what is printed, are the revised floor's. */
static void start(struct comparing *c)
{
	const struct change_list *changes = &c->result->changes;
	c->is_revised = ARENA_ARRAY(c->arena, bool, c->pairing->count);
	for (size_t i = 0; i < c->pairing->count; i++)
		c->is_revised[i] = true;
	for (size_t i = 0; i < changes->list.count; i++)
		if (changes->list.items[i].is_work)
			c->is_revised[changes->list.items[i].pair] = false;
}

/* The base under the ids of the revised floor, its lines in the same direction, so that what is
 * the same is called the same. */
static const struct floor_state *base_renamed(struct comparing *c, const struct floor_state *base)
{
	if (!renames_any(&c->pairing->renames) && !c->pairing->is_any_reversed)
		return counted(c, base);
	bool *none = ARENA_ARRAY(c->arena, bool, c->pairing->count);
	const struct floor_state *renamed =
		floor_state_of(c->arena, mixture_of(c->arena, c->pairing, none), c->words);
	return counted(c, renamed != NULL ? renamed : base);
}

static size_t count_of_work(const struct change_list *changes)
{
	size_t count = 0;
	for (size_t i = 0; i < changes->list.count; i++)
		count += changes->list.items[i].is_work;
	return count;
}

/* Where nothing follows from it, another unit is only another way to write the floor. */
static void set_unit_aside(struct comparing *c)
{
	struct change_list *changes = &c->result->changes;
	for (size_t i = 0; i < changes->list.count; i++)
		if (is_unit_alone(&changes->list.items[i]) && is_empty(&c->result->total))
			changes->list.items[i].is_work = false;
}

static void make_all(struct comparing *c)
{
	const struct change_list *changes = &c->result->changes;
	size_t left = count_of_work(changes);
	for (size_t i = 0; i < changes->list.count; i++)
		if (changes->list.items[i].is_work)
			make(c, &changes->list.items[i], --left == 0);
	/* Nothing changed but the order of the elements, and something follows from that. */
	if (c->lines.count == 0 && !is_empty(&c->result->total))
		add_line(c, c->result->revised);
}

const struct comparison *comparison_of(struct arena *arena, const struct floor_state *base,
                                       const struct floor_state *revised, const struct words *words,
                                       void (*on_change)(const char *what))
{
	struct comparison *result = ARENA_NEW(arena, struct comparison);
	struct comparing c = {.arena = arena,
	                      .words = words,
	                      .on_change = on_change,
	                      .result = result};
	c.pairing = pairing_of(arena, base, revised);
	result->base = base;
	result->revised = revised;
	result->changes = change_find(arena, c.pairing, base, revised);
	result->revision = change_new_revision(base->plan, revised->plan);
	c.last = base_renamed(&c, base);
	result->total = difference_of(arena, c.last, revised);
	set_unit_aside(&c);
	start(&c);
	make_all(&c);
	result->lines = c.lines.items;
	result->line_count = c.lines.count;
	return result;
}

const char *comparison_mark(struct arena *arena, const struct comparison *comparison,
                            const struct comparison_line *line)
{
	const char *revision = comparison->revision != NULL ? comparison->revision->mark : "";
	return arena_printf(arena, "%s%d", revision, line->number);
}
