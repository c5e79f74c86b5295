#include "compare/mixture.h"

#include <string.h>

#include "plan/value.h"

static bool names_something(const struct grammar_attribute *attribute, const char *text)
{
	return attribute->value == GRAMMAR_ID || value_names_others(attribute, text);
}

static void append(struct markup *parent, struct markup *child)
{
	child->parent = parent;
	child->next = NULL;
	if (parent->last_child != NULL)
		parent->last_child->next = child;
	else
		parent->first_child = child;
	parent->last_child = child;
}

/* A bare decimal is in the unit of the floor it was written for. */
static const char *with_unit(struct arena *arena, const char *text, const char *unit)
{
	bool is_bare = *text != '\0' && text[strspn(text, "+-.0123456789")] == '\0';
	return is_bare ? arena_printf(arena, "%s%s", text, unit) : text;
}

struct translation {
	struct arena *arena;
	const struct renames *renames;
	const char *unit; /* of the base */
};

static const char *translated(const struct translation *t,
                              const struct grammar_attribute *attribute, const char *text)
{
	if (names_something(attribute, text))
		return renames_revised(t->arena, t->renames, text);
	return attribute->value == GRAMMAR_LENGTH ? with_unit(t->arena, text, t->unit) : text;
}

/* A copy in which everything is called as in the revised floor. */
static struct markup *renamed(const struct translation *t, const struct grammar_element *element,
                              const struct markup *node)
{
	struct arena *arena = t->arena;
	struct markup *copy = ARENA_NEW(arena, struct markup);
	*copy = *node;
	copy->first_child = copy->last_child = copy->next = NULL;
	copy->attributes = ARENA_ARRAY(arena, struct markup_attribute, node->attribute_count);
	for (size_t i = 0; i < node->attribute_count; i++) {
		struct markup_attribute *to = &copy->attributes[i];
		*to = node->attributes[i];
		to->value = translated(t, grammar_find_attribute(element, to->name), to->value);
	}
	for (const struct markup *at = node->first_child; at != NULL; at = at->next)
		append(copy, renamed(t, grammar_find_child(element, at->name)->element, at));
	return copy;
}

/* The points of a line from the other end. */
static void turn(struct markup *node)
{
	struct markup *at = node->first_child;
	node->first_child = node->last_child = NULL;
	while (at != NULL) {
		struct markup *next = at->next;
		at->next = node->first_child;
		node->first_child = at;
		if (node->last_child == NULL)
			node->last_child = at;
		at = next;
	}
}

static struct markup *borrowed(struct arena *arena, const struct markup *node)
{
	struct markup *copy = ARENA_NEW(arena, struct markup);
	*copy = *node;
	return copy;
}

const struct markup *mixture_of(struct arena *arena, const struct pairing *pairing,
                                const bool *is_revised)
{
	const struct pair *floors = &pairing->pairs[0];
	const struct translation t = {arena, &pairing->renames,
	                              markup_find(floors->base, "unit")->value};
	struct markup *root = borrowed(arena, is_revised[0] ? floors->revised : floors->base);
	root->first_child = root->last_child = NULL;
	for (size_t i = 1; i < pairing->count; i++) {
		const struct pair *pair = &pairing->pairs[i];
		if (is_revised[i] && pair->revised != NULL)
			append(root, borrowed(arena, pair->revised));
		else if (!is_revised[i] && pair->base != NULL) {
			struct markup *base = renamed(&t, pair->element, pair->base);
			if (pair->is_reversed)
				turn(base);
			append(root, base);
		}
	}
	return root;
}
