#include <string.h>

#include "plan/plan_build.h"

void plan_fault(struct plan_build *b, size_t built, int line, const char *text)
{
	plan_mark_faulty(b, built);
	if (b->is_stopped)
		return;
	diag_error(b->diags, line, "%s", text);
	if (++b->fault_count < PLAN_MOST_FAULTS)
		return;
	b->is_stopped = true;
	diag_error(b->diags, line,
	           "the plan has 1,000 errors; expected fewer, the rest is not read");
}

void plan_mark_faulty(struct plan_build *b, size_t built)
{
	while (!b->built.items[built].object && built)
		built = b->built.items[built].parent;
	const struct plan_built *at = &b->built.items[built];
	*(uint64_t *)((char *)at->object + at->element->given_offset) |= PLAN_FAULTY;
}

static size_t place_of(const struct plan_built *built, const char *attribute)
{
	return (size_t)(grammar_find_attribute(built->element, attribute) -
	                built->element->attributes);
}

bool plan_is_sound(const struct plan_built *built, const char *attribute)
{
	return built->sound >> place_of(built, attribute) & 1;
}

static const struct markup_attribute *find_written(const struct plan_built *built,
                                                   const char *attribute)
{
	return markup_find(built->node, attribute);
}

bool plan_is_written(const struct plan_built *built, const char *attribute)
{
	return find_written(built, attribute) != NULL;
}

int plan_line_of(const struct plan_built *built, const char *attribute)
{
	const struct markup_attribute *written = find_written(built, attribute);
	return written ? written->line : built->node->line;
}

size_t plan_within(const struct plan_build *b, size_t built, const char *element)
{
	while (built && strcmp(b->built.items[built].element->name, element) != 0)
		built = b->built.items[built].parent;
	return built;
}

size_t plan_count_children(const struct plan_build *b, size_t built, const char *name)
{
	size_t count = 0;
	for (size_t i = built + 1; i < b->built.items[built].end; i = b->built.items[i].end)
		count += strcmp(b->built.items[i].element->name, name) == 0;
	return count;
}

size_t plan_child(const struct plan_build *b, size_t built, const char *name)
{
	for (size_t i = built + 1; i < b->built.items[built].end; i = b->built.items[i].end)
		if (strcmp(b->built.items[i].element->name, name) == 0)
			return i;
	return built;
}

/* An element without an id, such as `walls`, is told by that of the one it stands in. */
static const char *told_id(const struct plan_build *b, const struct plan_built *built)
{
	const struct markup_attribute *id = markup_find(built->node, "id");
	if (!id)
		id = markup_find(b->built.items[built->parent].node, "id");
	return id ? id->value : "";
}

void plan_use_default(struct plan_build *b, const struct plan_built *built, const char *attribute,
                      const char *value)
{
	*array_push(b->arena, &b->defaults) =
		(struct plan_default){built->element->name, told_id(b, built), attribute, value,
	                              built->node->line};
}
