#include "plan/plan_build.h"

#include <math.h>
#include <string.h>

#include "plan/misspelling.h"

/* ---- attributes ---- */

static const char *expected_attributes(struct arena *arena, const struct grammar_element *element)
{
	struct strbuf list = strbuf_in(arena);
	strbuf_add(&list, element->attribute_count ? "one of:" : "none");
	for (size_t i = 0; i < element->attribute_count; i++)
		strbuf_printf(&list, " %s", element->attributes[i].name);
	return list.text;
}

/* The attribute that was meant by one that does not exist; NULL: no guess. */
static const struct grammar_attribute *meant_attribute(const struct grammar_element *element,
                                                       const struct markup *node,
                                                       const char *written)
{
	for (size_t i = 0; i < element->attribute_count; i++)
		if (is_misspelling(written, element->attributes[i].name) &&
		    !markup_find(node, element->attributes[i].name))
			return &element->attributes[i];
	return NULL;
}

static void report_unknown_attribute(struct plan_build *b, size_t built,
                                     const struct markup_attribute *written)
{
	const struct plan_built *at = &b->built.items[built];
	const struct grammar_attribute *meant =
		meant_attribute(at->element, at->node, written->name);
	plan_fault(b, built, written->line,
	           arena_printf(b->arena, "<%s> has no attribute \"%s\"; expected %s",
	                        at->element->name, written->name,
	                        meant ? meant->name : expected_attributes(b->arena, at->element)));
}

static void name_element(struct plan_build *b, size_t built, const struct markup_attribute *id,
                         bool is_sound)
{
	const struct plan_built *at = &b->built.items[built];
	*array_push(b->arena, &b->named) = (struct plan_named){
		.id = id->value,
		.kind = at->element->kind,
		.object = at->object,
		.built = built,
		.line = id->line,
		.is_sound = is_sound,
	};
}

static void mark_sound(struct plan_build *b, size_t built,
                       const struct grammar_attribute *attribute)
{
	struct plan_built *at = &b->built.items[built];
	at->sound |= (uint64_t)1 << (attribute - at->element->attributes);
}

static void read_written(struct plan_build *b, size_t built,
                         const struct grammar_attribute *attribute,
                         const struct markup_attribute *written)
{
	struct plan_built at = b->built.items[built];
	char *object = at.object;
	*(uint64_t *)(object + at.element->given_offset) |= (uint64_t)1
	                                                    << (attribute - at.element->attributes);
	const char *wrong = NULL;
	bool is_sound = true;
	if (attribute->later)
		wrong = arena_printf(b->arena,
		                     "<%s> %s is not supported yet; expected a plan without it",
		                     at.element->name, attribute->name);
	else if (value_names_others(attribute, written->value))
		*array_push(b->arena, &b->namings) =
			(struct plan_naming){attribute, written, built};
	else
		is_sound = value_read(&b->reader, at.element->name, attribute, written->value,
		                      object, &wrong);
	if (wrong)
		plan_fault(b, built, written->line, wrong);
	else if (!is_sound)
		plan_mark_faulty(b, built);
	if (attribute->value == GRAMMAR_ID)
		name_element(b, built, written, is_sound);
	if (is_sound && !wrong && !value_names_others(attribute, written->value))
		mark_sound(b, built, attribute);
}

/* A name that is nearly the right one has been reported; the right one is not missed too. */
static bool is_misspelt(const struct plan_built *at, const struct grammar_attribute *missing)
{
	for (size_t i = 0; i < at->node->attribute_count; i++) {
		const char *written = at->node->attributes[i].name;
		if (!grammar_find_attribute(at->element, written) &&
		    meant_attribute(at->element, at->node, written) == missing)
			return true;
	}
	return false;
}

static void report_missing(struct plan_build *b, size_t built,
                           const struct grammar_attribute *attribute)
{
	const struct plan_built *at = &b->built.items[built];
	if (attribute->value == GRAMMAR_ID)
		b->nameless[at->element->kind] = true;
	if (!is_misspelt(at, attribute))
		plan_fault(b, built, at->node->line,
		           arena_printf(b->arena, "<%s> lacks the attribute \"%s\"; expected %s",
		                        at->element->name, attribute->name,
		                        value_expected(&b->reader, attribute)));
}

/* Numbers that may be absent say so; 0 would be a value. */
static void fill_nothing(const struct grammar_attribute *attribute, char *object)
{
	static const bool can_be_zero[GRAMMAR_ABOUT + 1] = {
		[GRAMMAR_TEMPERATURE] = true,
		[GRAMMAR_MASS] = true,
		[GRAMMAR_DECIMAL] = true,
		[GRAMMAR_PERCENT] = true,
	};
	if (can_be_zero[attribute->value])
		*(double *)(object + attribute->offset) = NAN;
}

/* The default's text, or NULL where there is none. */
static const char *fill_default(struct plan_build *b, const struct grammar_element *element,
                                const struct grammar_attribute *attribute, void *object)
{
	const char *wrong = NULL;
	const char *text = b->inches && attribute->fallback_inch ? attribute->fallback_inch
	                                                         : attribute->fallback;
	if (text)
		(void)value_read(&b->reader, element->name, attribute, text, object, &wrong);
	else
		fill_nothing(attribute, object);
	return text;
}

static void fill_absent(struct plan_build *b, size_t built,
                        const struct grammar_attribute *attribute)
{
	struct plan_built at = b->built.items[built];
	if (attribute->required) {
		report_missing(b, built, attribute);
		return;
	}
	const char *text = fill_default(b, at.element, attribute, at.object);
	if (text)
		plan_use_default(b, &at, attribute->name, text);
	mark_sound(b, built, attribute);
}

static void read_attributes(struct plan_build *b, size_t built)
{
	const struct grammar_element *element = b->built.items[built].element;
	const struct markup *node = b->built.items[built].node;
	for (size_t i = 0; i < node->attribute_count && !b->is_stopped; i++) {
		const struct markup_attribute *written = &node->attributes[i];
		const struct grammar_attribute *attribute =
			grammar_find_attribute(element, written->name);
		if (attribute)
			read_written(b, built, attribute, written);
		else
			report_unknown_attribute(b, built, written);
	}
	for (size_t i = 0; i < element->attribute_count; i++)
		if (!markup_find(node, element->attributes[i].name))
			fill_absent(b, built, &element->attributes[i]);
}

/* ---- elements ---- */

static void report_unknown_child(struct plan_build *b, size_t built, const struct markup *child)
{
	const struct grammar_element *element = b->built.items[built].element;
	struct strbuf list = strbuf_in(b->arena);
	strbuf_add(&list, element->child_count ? "one of:" : "none");
	for (size_t i = 0; i < element->child_count; i++)
		strbuf_printf(&list, " <%s>", element->children[i].element->name);
	plan_fault(b, built, child->line,
	           arena_printf(b->arena, "unknown element <%s> in <%s>; expected %s", child->name,
	                        element->name, list.text));
}

/* Names of what is not read are kept, so that those who use them are not blamed. */
static void refuse(struct plan_build *b, const struct markup *node)
{
	const struct markup_attribute *id = markup_find(node, "id");
	if (id)
		*array_push(b->arena, &b->named) = (struct plan_named){.id = id->value,
		                                                       .kind = PLAN_REF_OTHER,
		                                                       .line = id->line,
		                                                       .is_refused = true};
	for (const struct markup *child = node->first_child; child; child = child->next)
		refuse(b, child);
}

static size_t count_children(const struct markup *node, const char *name)
{
	size_t count = 0;
	for (const struct markup *child = node->first_child; child; child = child->next)
		count += strcmp(child->name, name) == 0;
	return count;
}

/* The struct that children of this element, or of the group it is, belong to. */
static char *owner_of(const struct plan_build *b, size_t built)
{
	while (!b->built.items[built].object)
		built = b->built.items[built].parent;
	return b->built.items[built].object;
}

/* The struct of the child of this kind that comes after `index` others; NULL for a group. */
static void *object_of_child(struct plan_build *b, size_t built, const struct grammar_child *child,
                             size_t index)
{
	const struct plan_built *at = &b->built.items[built];
	char *owner = owner_of(b, child->of_parent ? at->parent : built);
	char *slot = owner + child->offset, *array;
	size_t size = child->element->size;
	switch (child->holding) {
	case GRAMMAR_GROUP:
		return NULL;
	case GRAMMAR_INSIDE:
		return slot;
	case GRAMMAR_ONE:
	case GRAMMAR_MANY:
		break;
	}
	if (index == 0) {
		size_t count = count_children(at->node, child->element->name);
		array = arena_alloc_array(b->arena, count, size);
		memcpy(slot, &array, sizeof array);
		if (child->holding == GRAMMAR_MANY)
			*(size_t *)(owner + child->count_offset) = count;
	}
	memcpy(&array, slot, sizeof array);
	return array + index * size;
}

static void build(struct plan_build *b, const struct markup *node,
                  const struct grammar_element *element, void *object, size_t parent);

static void build_child(struct plan_build *b, size_t built, const struct markup *node,
                        const struct grammar_child *child, size_t index)
{
	const char *wrong = NULL, *owner = b->built.items[built].element->name;
	if (child->element->later)
		wrong = arena_printf(
			b->arena, "<%s> in <%s> is not supported yet; expected a plan without it",
			node->name, owner);
	else if (index && child->holding != GRAMMAR_MANY)
		wrong = arena_printf(b->arena, "a second <%s> in <%s>; expected at most one",
		                     node->name, owner);
	if (!wrong) {
		build(b, node, child->element, object_of_child(b, built, child, index), built);
		return;
	}
	plan_fault(b, built, node->line, wrong);
	refuse(b, node);
	b->built.items[built].is_understood = false;
}

static void build_children(struct plan_build *b, size_t built)
{
	const struct grammar_element *element = b->built.items[built].element;
	size_t *seen = ARENA_ARRAY(b->arena, size_t, element->child_count);
	for (const struct markup *node = b->built.items[built].node->first_child;
	     node && !b->is_stopped; node = node->next) {
		const struct grammar_child *child = grammar_find_child(element, node->name);
		if (child) {
			build_child(b, built, node, child, seen[child - element->children]++);
			continue;
		}
		report_unknown_child(b, built, node);
		refuse(b, node);
		b->built.items[built].is_understood = false;
	}
}

static void build(struct plan_build *b, const struct markup *node,
                  const struct grammar_element *element, void *object, size_t parent)
{
	size_t built = b->built.count;
	*array_push(b->arena, &b->built) = (struct plan_built){
		.element = element,
		.node = node,
		.object = object,
		.parent = parent,
		.is_understood = true,
	};
	if (object)
		*(int *)((char *)object + element->line_offset) = node->line;
	read_attributes(b, built);
	if (node->text_line)
		plan_fault(b, built, node->text_line,
		           arena_printf(b->arena, "text in <%s>; expected only elements",
		                        element->name));
	build_children(b, built);
	b->built.items[built].end = b->built.count;
}

/* Materials that always exist, written or not. */
static void fill_unwritten(struct plan_build *b, const struct markup *root)
{
	for (size_t i = 0; i < grammar_floor.child_count; i++) {
		const struct grammar_child *child = &grammar_floor.children[i];
		const struct grammar_element *element = child->element;
		if (child->holding != GRAMMAR_INSIDE || count_children(root, element->name))
			continue;
		for (size_t a = 0; a < element->attribute_count; a++) {
			const struct grammar_attribute *attribute = &element->attributes[a];
			const char *text = fill_default(b, element, attribute,
			                                (char *)b->plan + child->offset);
			if (text)
				*array_push(b->arena, &b->defaults) =
					(struct plan_default){element->name, "", attribute->name,
				                              text, 0};
		}
	}
}

/* A bare decimal anywhere needs the unit first. */
static void read_unit(struct plan_build *b, const struct markup *root)
{
	static const enum length_unit units[] = {
		[PLAN_UNIT_MM] = LENGTH_MM,
		[PLAN_UNIT_M] = LENGTH_M,
		[PLAN_UNIT_IN] = LENGTH_IN,
		[PLAN_UNIT_FT] = LENGTH_FT,
	};
	const struct markup_attribute *unit = markup_find(root, "unit");
	const struct grammar_attribute *attribute = grammar_find_attribute(&grammar_floor, "unit");
	for (size_t i = 0; unit && attribute->words[i]; i++)
		if (strcmp(unit->value, attribute->words[i]) == 0) {
			b->reader.unit = units[i];
			b->reader.has_unit = true;
			b->inches = units[i] == LENGTH_IN || units[i] == LENGTH_FT;
		}
}

void plan_build_floor(struct plan_build *b, const struct markup *root)
{
	b->plan = ARENA_NEW(b->arena, struct plan);
	b->reader = (struct value_reader){.arena = b->arena};
	read_unit(b, root);
	build(b, root, &grammar_floor, b->plan, 0);
	fill_unwritten(b, root);
}
