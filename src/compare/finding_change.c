#include "compare/finding_change.h"

#include <string.h>

#include "units/number.h"

static bool is_same(const struct finding *a, const struct finding *b)
{
	return strcmp(a->rule->name, b->rule->name) == 0 && strcmp(a->about, b->about) == 0;
}

/* Of findings of one rule about one element the n-th is the n-th. */
static const struct finding *fellow(const struct findings *findings, const struct findings *other,
                                    size_t index)
{
	size_t place = 0;
	for (size_t i = 0; i < index; i++)
		place += is_same(&findings->items[i], &findings->items[index]);
	for (size_t i = 0; i < other->count; i++)
		if (is_same(&other->items[i], &findings->items[index]) && place-- == 0)
			return &other->items[i];
	return NULL;
}

static void add(struct arena *arena, struct finding_changes *changes, enum finding_fate fate,
                const struct finding *finding)
{
	*array_push(arena, &changes->list) = (struct finding_change){fate, finding};
}

static void compare(struct arena *arena, const struct finding *before, const struct finding *after,
                    struct finding_changes *changes)
{
	if (before == NULL)
		add(arena, changes, FINDING_APPEARED, after);
	else if (before->state != after->state)
		add(arena, changes,
		    after->state == FINDING_ANSWERED ? FINDING_WAS_ANSWERED : FINDING_REOPENED,
		    after);
	else if (number_order(before->measured, after->measured) != 0 ||
	         number_order(before->limit, after->limit) != 0)
		add(arena, changes, FINDING_READS_OTHERWISE, after);
}

struct finding_changes finding_changes_find(struct arena *arena, const struct findings *before,
                                            const struct findings *after)
{
	struct finding_changes changes = {0};
	for (size_t i = 0; i < after->count; i++)
		compare(arena, fellow(after, before, i), &after->items[i], &changes);
	for (size_t i = 0; i < before->count; i++)
		if (fellow(before, after, i) == NULL)
			add(arena, &changes, FINDING_WENT, &before->items[i]);
	return changes;
}
