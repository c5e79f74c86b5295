#include "plan/plan_build.h"

#include <math.h>
#include <string.h>

/* ---- attributes ---- */

static void list_expected(struct strbuf *list, const struct grammar_element *element)
{
	for (size_t i = 0; i < element->attribute_count; i++)
		strbuf_printf(list, "%s %s", i ? "," : "", element->attributes[i].name);
}

static void report_unknown_attribute(struct plan_build *b, const struct grammar_element *element,
                                     const struct markup_attribute *written)
{
	struct strbuf list = strbuf_in(b->arena);
	list_expected(&list, element);
	if (element->attribute_count)
		diag_error(b->diags, written->line, "<%s> has no attribute \"%s\"; expected one of:%s", element->name,
		           written->name, list.text);
	else
		diag_error(b->diags, written->line, "<%s> has no attribute \"%s\"; expected none", element->name,
		           written->name);
}

static const struct markup_attribute *find_written(const struct markup *node, const char *name)
{
	for (size_t i = 0; i < node->attribute_count; i++)
		if (strcmp(node->attributes[i].name, name) == 0)
			return &node->attributes[i];
	return NULL;
}

static bool names_others(const struct grammar_attribute *attribute)
{
	return attribute->value == GRAMMAR_REF || attribute->value == GRAMMAR_REFS ||
	       attribute->value == GRAMMAR_PLACES || attribute->value == GRAMMAR_ABOUT ||
	       attribute->value == GRAMMAR_NAME;
}

static void read_written(struct plan_build *b, const struct grammar_element *element,
                         const struct grammar_attribute *attribute, const struct markup_attribute *written,
                         void *object)
{
	if (attribute->later) {
		diag_error(b->diags, written->line, "<%s> %s is not supported yet; expected a description without it",
		           element->name, attribute->name);
		return;
	}
	if (names_others(attribute))
		*array_push(b->arena, &b->namings) = (struct plan_naming){
			attribute, element->name, written->value, object, written->line};
	bool sound = value_read(&b->reader, element->name, attribute, written->value, written->line, object);
	if (attribute->value == GRAMMAR_ID)
		*array_push(b->arena, &b->named) = (struct plan_named){
			written->value, element->kind, object, written->line, sound};
}

static const char *id_of(const struct markup *node)
{
	const struct markup_attribute *id = find_written(node, "id");
	return id ? id->value : "";
}

static void fill_default(struct plan_build *b, const struct markup *node, const struct grammar_element *element,
                         const struct grammar_attribute *attribute, void *object)
{
	bool in_inches = b->inches && attribute->fallback_inch;
	const char *text = in_inches ? attribute->fallback_inch : attribute->fallback;
	if (!text) {
		/* Numbers that may be absent say so; 0 would be a value. */
		if (attribute->value == GRAMMAR_TEMPERATURE || attribute->value == GRAMMAR_PERCENT ||
		    attribute->value == GRAMMAR_DECIMAL || attribute->value == GRAMMAR_MASS)
			*(double *)((char *)object + attribute->offset) = NAN;
		return;
	}
	(void)value_read(&b->reader, element->name, attribute, text, node ? node->line : 0, object);
	if (node)
		*array_push(b->arena, &b->defaults) =
			(struct plan_default){element->name, id_of(node), attribute->name, text, node->line};
}

static void fill_attributes(struct plan_build *b, const struct markup *node, const struct grammar_element *element,
                            void *object)
{
	for (size_t i = 0; i < node->attribute_count; i++)
		if (!grammar_find_attribute(element, node->attributes[i].name))
			report_unknown_attribute(b, element, &node->attributes[i]);
	if (!element->size)
		return;
	uint64_t given = 0;
	for (size_t i = 0; i < element->attribute_count; i++) {
		const struct grammar_attribute *attribute = &element->attributes[i];
		const struct markup_attribute *written = find_written(node, attribute->name);
		if (written)
			read_written(b, element, attribute, written, object);
		else if (attribute->required)
			diag_error(b->diags, node->line, "<%s> lacks the attribute \"%s\"; expected %s", element->name,
			           attribute->name, attribute->meaning);
		else
			fill_default(b, node, element, attribute, object);
		given |= written ? (uint64_t)1 << i : 0;
	}
	*(int *)((char *)object + element->line_offset) = node->line;
	*(uint64_t *)((char *)object + element->given_offset) = given;
}

/* ---- elements ---- */

static void report_unknown_child(struct plan_build *b, const struct grammar_element *element,
                                 const struct markup *child)
{
	struct strbuf list = strbuf_in(b->arena);
	for (size_t i = 0; i < element->child_count; i++)
		strbuf_printf(&list, " <%s>", element->children[i].element->name);
	diag_error(b->diags, child->line, "unknown element <%s> in <%s>; expected %s%s", child->name, element->name,
	           element->child_count ? "one of:" : "none", list.text);
}

static size_t count_children(const struct markup *node, const char *name)
{
	size_t count = 0;
	for (const struct markup *child = node->first_child; child; child = child->next)
		count += strcmp(child->name, name) == 0;
	return count;
}

/* True where the element itself is in error; its children mark themselves. */
static bool build(struct plan_build *b, const struct markup *node, const struct grammar_element *element,
                  void *object, void *parent);

/* The struct of the next child of this kind, made room for. */
static void *object_of_child(struct plan_build *b, const struct grammar_child *child, void *owner, size_t index,
                             size_t count)
{
	char *slot = (char *)owner + child->offset;
	size_t size = child->element->size;
	void *fresh;
	switch (child->holding) {
	case GRAMMAR_GROUP:
		if (child->count_offset)
			*(bool *)((char *)owner + child->count_offset) = true;
		return owner;
	case GRAMMAR_INSIDE:
		return slot;
	case GRAMMAR_ONE:
		fresh = arena_alloc(b->arena, size);
		memcpy(slot, &fresh, sizeof fresh);
		return fresh;
	case GRAMMAR_MANY:
		break;
	}
	if (index == 0) {
		fresh = arena_alloc_array(b->arena, count, size);
		memcpy(slot, &fresh, sizeof fresh);
		*(size_t *)((char *)owner + child->count_offset) = count;
	}
	memcpy(&fresh, slot, sizeof fresh);
	return (char *)fresh + index * size;
}

/* True where the error is one of the owner: children it cannot have, or a faulty group. */
static bool build_children_of_kind(struct plan_build *b, const struct markup *node,
                                   const struct grammar_child *child, void *object, void *parent)
{
	const char *name = child->element->name;
	void *owner = child->of_parent ? parent : object;
	size_t count = count_children(node, name), index = 0;
	bool is_faulty = false;
	for (const struct markup *at = node->first_child; at; at = at->next) {
		if (strcmp(at->name, name) != 0)
			continue;
		if (child->element->later) {
			diag_error(b->diags, at->line, "<%s> in <%s> is not supported yet; expected a description without it",
			           name, node->name);
			is_faulty = true;
		} else if (index && child->holding != GRAMMAR_MANY) {
			diag_error(b->diags, at->line, "a second <%s> in <%s>; expected at most one", name, node->name);
			is_faulty = true;
		} else if (build(b, at, child->element, object_of_child(b, child, owner, index, count), owner)) {
			is_faulty |= child->holding == GRAMMAR_GROUP;
		}
		index++;
	}
	return is_faulty;
}

static bool build(struct plan_build *b, const struct markup *node, const struct grammar_element *element,
                  void *object, void *parent)
{
	size_t errors_before = b->diags->diags.count;
	fill_attributes(b, node, element, object);
	if (node->text_line)
		diag_error(b->diags, node->text_line, "text in <%s>; expected only elements", element->name);
	for (const struct markup *child = node->first_child; child; child = child->next)
		if (!grammar_find_child(element, child->name))
			report_unknown_child(b, element, child);
	bool is_faulty = b->diags->diags.count > errors_before;
	for (size_t i = 0; i < element->child_count; i++)
		is_faulty |= build_children_of_kind(b, node, &element->children[i], object, parent);
	if (is_faulty && element->size)
		*(uint64_t *)((char *)object + element->given_offset) |= PLAN_FAULTY;
	return is_faulty;
}

/* Elements that always exist, written or not. */
static void fill_absent(struct plan_build *b, const struct markup *root)
{
	for (size_t i = 0; i < grammar_floor.child_count; i++) {
		const struct grammar_child *child = &grammar_floor.children[i];
		if (child->holding != GRAMMAR_INSIDE || count_children(root, child->element->name))
			continue;
		for (size_t a = 0; a < child->element->attribute_count; a++)
			fill_default(b, NULL, child->element, &child->element->attributes[a],
			             (char *)b->plan + child->offset);
	}
}

/* A bare decimal anywhere needs the unit first. */
static void read_unit(struct plan_build *b, const struct markup *root)
{
	const struct markup_attribute *unit = find_written(root, "unit");
	const struct grammar_attribute *attribute = grammar_find_attribute(&grammar_floor, "unit");
	static const enum length_unit units[] = {
		[PLAN_UNIT_MM] = LENGTH_MM, [PLAN_UNIT_M] = LENGTH_M, [PLAN_UNIT_IN] = LENGTH_IN, [PLAN_UNIT_FT] = LENGTH_FT};
	for (unsigned i = 0; unit && attribute->words[i]; i++)
		if (strcmp(unit->value, attribute->words[i]) == 0) {
			b->reader.unit = units[i];
			b->inches = units[i] == LENGTH_IN || units[i] == LENGTH_FT;
		}
}

void plan_build_floor(struct plan_build *b, const struct markup *root)
{
	b->plan = ARENA_NEW(b->arena, struct plan);
	b->reader = (struct value_reader){b->arena, b->diags, LENGTH_MM};
	if (strcmp(root->name, grammar_floor.name) != 0) {
		diag_error(b->diags, root->line, "root element <%s>; expected <floor>", root->name);
		return;
	}
	read_unit(b, root);
	build(b, root, &grammar_floor, b->plan, NULL);
	fill_absent(b, root);
}
