#include "compare/pairing.h"

#include <string.h>

#include "compare/shape.h"
#include "geometry/tolerance.h"

/* A child of one of the two floors, and whom it is paired with. */
struct member {
	const struct grammar_element *element;
	const struct markup *node;
	const char *id; /* NULL: none */
	struct shape shape;
	struct member *fellow;
};

struct members {
	struct member *items;
	size_t count;
};

struct matching {
	struct edit_context context;
	struct members base, revised;
	struct pairing *pairing;
};

static struct members members_of(struct arena *arena, const struct floor_state *state)
{
	struct members members = {0};
	for (const struct markup *at = state->root->first_child; at != NULL; at = at->next)
		members.count++;
	members.items = ARENA_ARRAY(arena, struct member, members.count);
	struct member *next = members.items;
	for (const struct markup *at = state->root->first_child; at != NULL; at = at->next) {
		const char *id = edit_id(at);
		next->element = grammar_find_child(&grammar_floor, at->name)->element;
		next->node = at;
		next->id = id;
		if (id != NULL)
			next->shape = shape_find(arena, state->site, at->name, id);
		next++;
	}
	return members;
}

/* ---- what makes two elements one ---- */

static bool has_same_id(struct matching *m, const struct member *base, const struct member *revised)
{
	(void)m;
	return base->id != NULL && revised->id != NULL && strcmp(base->id, revised->id) == 0;
}

static bool has_same_place(struct matching *m, const struct member *base,
                           const struct member *revised)
{
	(void)m;
	return base->shape.line.count > 0 && shape_is_same(base->shape, revised->shape);
}

static bool has_same_id_and_place(struct matching *m, const struct member *base,
                                  const struct member *revised)
{
	return has_same_id(m, base, revised) && has_same_place(m, base, revised);
}

/* Nothing about it differs but its id. */
static bool has_same_content(struct matching *m, const struct member *base,
                             const struct member *revised)
{
	struct edit_list edits = {0};
	if (base->id == NULL || base->shape.line.count > 0)
		return false;
	edit_find(&m->context, base->element, base->node, revised->node, &edits);
	return edits.list.count == 0;
}

static bool has_same_id_and_content(struct matching *m, const struct member *base,
                                    const struct member *revised)
{
	return has_same_id(m, base, revised) && has_same_content(m, base, revised);
}

static const char *value_of(const struct markup *node, const char *name)
{
	const struct markup_attribute *found = markup_find(node, name);
	return found != NULL ? found->value : "";
}

/* Elements without an id: answers by what they are about, revisions by their mark. */
static bool has_same_key(struct matching *m, const struct member *base,
                         const struct member *revised)
{
	static const char *const keys[] = {"about", "rule", "mark"};
	if (base->id != NULL || revised->id != NULL)
		return false;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const char *meant = renames_revised(m->context.arena, m->context.renames,
		                                    value_of(base->node, keys[i]));
		if (strcmp(meant, value_of(revised->node, keys[i])) != 0)
			return false;
	}
	return true;
}

/* There is one of it in a floor, called what it may. */
static bool is_only_one(struct matching *m, const struct member *base, const struct member *revised)
{
	(void)m;
	(void)revised;
	return grammar_find_child(&grammar_floor, base->element->name)->holding != GRAMMAR_MANY;
}

/* ---- ids of what is paired ---- */

/* Children with ids: those called the same, then those that lie in the same place. */
static void rename_children(struct matching *m, const struct member *base,
                            const struct member *revised)
{
	struct arena *arena = m->context.arena;
	for (const struct markup *a = base->node->first_child; a != NULL; a = a->next)
		for (const struct markup *b = revised->node->first_child; b != NULL; b = b->next) {
			const char *from = edit_id(a), *to = edit_id(b);
			if (from == NULL || to == NULL || strcmp(a->name, b->name) != 0)
				continue;
			struct shape p = shape_find(arena, m->context.base->site, a->name, from),
				     q = shape_find(arena, m->context.revised->site, b->name, to);
			if (p.line.count > 0 && shape_is_same(p, q))
				renames_add(arena, &m->pairing->renames, from, to);
		}
}

/* Walls are called by their place in an outline that has not changed. */
static void rename_walls(struct matching *m, const struct member *base,
                         const struct member *revised)
{
	const struct site_room *a = site_room_find(m->context.base->site, base->id),
			       *b = site_room_find(m->context.revised->site, revised->id);
	if (a == NULL || b == NULL || !shape_is_same(base->shape, revised->shape) ||
	    a->edge_count != b->edge_count)
		return;
	for (size_t i = 0; i < a->edge_count; i++)
		if (point_distance(a->edges[i].from, b->edges[i].from) <= TOLERANCE_WHOLE)
			renames_add(m->context.arena, &m->pairing->renames, a->edges[i].id,
			            b->edges[i].id);
}

static void pair_up(struct matching *m, struct member *base, struct member *revised)
{
	base->fellow = revised;
	revised->fellow = base;
	if (base->id == NULL || revised->id == NULL)
		return;
	renames_add(m->context.arena, &m->pairing->renames, base->id, revised->id);
	rename_children(m, base, revised);
	rename_walls(m, base, revised);
}

/* ---- passes: the surest first, kind by kind, so that names in later ones are known ---- */

static void match(struct matching *m, const struct grammar_element *element,
                  bool (*is_one)(struct matching *, const struct member *, const struct member *))
{
	for (size_t i = 0; i < m->base.count; i++) {
		struct member *base = &m->base.items[i];
		if (base->element != element)
			continue;
		for (size_t k = 0; k < m->revised.count && base->fellow == NULL; k++) {
			struct member *revised = &m->revised.items[k];
			if (revised->element == element && revised->fellow == NULL &&
			    is_one(m, base, revised))
				pair_up(m, base, revised);
		}
	}
}

static void match_all(struct matching *m)
{
	static bool (*const passes[])(struct matching *, const struct member *,
	                              const struct member *) = {
		has_same_id_and_place, has_same_place, has_same_id_and_content,
		has_same_content,      has_same_id,    has_same_key,
		is_only_one,
	};
	for (size_t kind = 0; kind < grammar_floor.child_count; kind++)
		for (size_t pass = 0; pass < sizeof passes / sizeof *passes; pass++)
			match(m, grammar_floor.children[kind].element, passes[pass]);
}

/* ---- ids that are gone, and that something else has now ---- */

static bool is_taken(const struct members *members, const char *id)
{
	for (size_t i = 0; i < members->count; i++)
		if (members->items[i].id != NULL && strcmp(members->items[i].id, id) == 0)
			return true;
	return false;
}

static void name_gone(struct matching *m)
{
	struct arena *arena = m->context.arena;
	for (size_t i = 0; i < m->base.count; i++) {
		const struct member *base = &m->base.items[i];
		if (base->fellow != NULL || base->id == NULL)
			continue;
		bool taken = is_taken(&m->revised, base->id);
		renames_add(arena, &m->pairing->renames, base->id,
		            taken ? arena_printf(arena, "%s.base", base->id) : base->id);
	}
}

/* ---- the list ---- */

static void add_gone(struct matching *m, size_t after)
{
	for (size_t i = after; i < m->base.count && m->base.items[i].fellow == NULL; i++) {
		const struct member *base = &m->base.items[i];
		m->pairing->pairs[m->pairing->count++] =
			(struct pair){base->element, base->node, NULL, false};
	}
}

static void list_pairs(struct matching *m)
{
	struct pairing *pairing = m->pairing;
	pairing->pairs =
		ARENA_ARRAY(m->context.arena, struct pair, 1 + m->base.count + m->revised.count);
	pairing->pairs[pairing->count++] = (struct pair){&grammar_floor, m->context.base->root,
	                                                 m->context.revised->root, false};
	add_gone(m, 0);
	for (size_t k = 0; k < m->revised.count; k++) {
		const struct member *revised = &m->revised.items[k], *base = revised->fellow;
		bool turned = base != NULL && shape_is_reversed(base->shape, revised->shape);
		pairing->pairs[pairing->count++] =
			(struct pair){revised->element, base != NULL ? base->node : NULL,
		                      revised->node, turned};
		pairing->is_any_reversed = pairing->is_any_reversed || turned;
		if (base != NULL)
			add_gone(m, (size_t)(base - m->base.items) + 1);
	}
}

const struct pairing *pairing_of(struct arena *arena, const struct floor_state *base,
                                 const struct floor_state *revised)
{
	struct pairing *pairing = ARENA_NEW(arena, struct pairing);
	struct matching m = {
		.context = {arena, base, revised, &pairing->renames},
		.base = members_of(arena, base),
		.revised = members_of(arena, revised),
		.pairing = pairing,
	};
	match_all(&m);
	name_gone(&m);
	list_pairs(&m);
	return pairing;
}
