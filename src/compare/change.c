#include "compare/change.h"

#include <stdlib.h>
#include <string.h>

#include "compare/shape.h"

struct change_search {
	struct edit_context context;
	const struct pairing *pairing;
	const struct plan_revision *newest; /* that the base has not; NULL: none */
	struct change_list changes;
};

/* ---- where ---- */

static bool holds_some(const struct site_room *room, struct line line)
{
	for (size_t i = 0; i < line.count; i++) {
		struct point next = line.points[i + 1 < line.count ? i + 1 : i];
		if (ring_holds(room->outline, line.points[i]) ||
		    ring_holds(room->outline, point_between(line.points[i], next, 0.5)))
			return true;
	}
	return false;
}

static const char *rooms_of_line(struct arena *arena, const struct site *site, struct line line)
{
	struct strbuf out = strbuf_in(arena);
	for (size_t i = 0; i < site->room_count; i++)
		if (holds_some(&site->rooms[i], line))
			strbuf_printf(&out, "%s%s", out.length > 0 ? " " : "", site->rooms[i].id);
	return out.length > 0 ? out.text : "";
}

static const struct markup *find_node(const struct floor_state *state, const char *id)
{
	for (const struct markup *at = state->root->first_child; at != NULL; at = at->next)
		if (edit_id(at) != NULL && strcmp(edit_id(at), id) == 0)
			return at;
	return NULL;
}

/* Rooms that an element names, is or lies in; an answer is where the thing is that it is
 * about. */
static const char *where_of(struct arena *arena, const struct floor_state *state,
                            const struct markup *node)
{
	static const char *const names[] = {"rooms", "room"};
	const char *id = edit_id(node);
	const struct markup_attribute *about = markup_find(node, "about");
	if (about != NULL) {
		const struct markup *meant = find_node(state, about->value);
		return meant != NULL ? where_of(arena, state, meant) : "";
	}
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		const struct markup_attribute *named = markup_find(node, names[i]);
		if (named != NULL)
			return named->value;
	}
	if (id == NULL || strcmp(node->name, "room") == 0)
		return id != NULL ? id : "";
	return rooms_of_line(arena, state->site,
	                     shape_find(arena, state->site, node->name, id).line);
}

/* ---- why and when ---- */

static const char *value_of(const struct markup *node, const char *name)
{
	const struct markup_attribute *found = markup_find(node, name);
	return found != NULL ? found->value : NULL;
}

const struct plan_revision *change_new_revision(const struct plan *base, const struct plan *revised)
{
	if (revised->revision_count == 0)
		return NULL;
	const struct plan_revision *newest = &revised->revisions[revised->revision_count - 1];
	for (size_t i = 0; i < base->revision_count; i++)
		if (strcmp(base->revisions[i].mark, newest->mark) == 0)
			return NULL;
	return newest;
}

/* What the element itself says of it; else the note of the revision. */
static void set_reason(const struct change_search *f, struct change *change,
                       const struct markup *node)
{
	static const char *const days[] = {"found", "on"}, *const reasons[] = {"by", "ref", "note"};
	struct strbuf out = strbuf_in(f->context.arena);
	bool is_new = f->pairing->pairs[change->pair].revised != NULL;
	for (size_t i = 0; is_new && i < sizeof reasons / sizeof *reasons; i++)
		if (value_of(node, reasons[i]) != NULL)
			strbuf_printf(&out, "%s%s", out.length > 0 ? "; " : "",
			              value_of(node, reasons[i]));
	for (size_t i = 0; is_new && i < sizeof days / sizeof *days; i++)
		if (value_of(node, days[i]) != NULL)
			date_parse(value_of(node, days[i]), &change->found);
	if (out.length > 0)
		change->reason = out.text;
	else if (f->newest != NULL)
		change->reason = f->newest->note;
	if (change->found.day == 0 && f->newest != NULL)
		change->found = f->newest->date;
}

/* ---- one pair ---- */

static const char *name_of(const struct markup *node)
{
	const char *const names[] = {edit_id(node), value_of(node, "about"),
	                             value_of(node, "mark")};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (names[i] != NULL)
			return names[i];
	return "";
}

static void set_kinds(struct change *change)
{
	for (size_t i = 0; i < change->edit_count; i++) {
		const struct edit *edit = &change->edits[i];
		if (!edit->is_work)
			continue;
		/* What came to a room, left it or moved in it changed the room; its own walls
		 * are told with its place. */
		bool is_own = edit->of == NULL;
		change->kinds |= is_own ? edit->kind : CHANGE_ALTERED;
		change->is_work = true;
	}
	if (change->kinds & CHANGE_MOVED)
		change->kinds &= ~(unsigned)CHANGE_ALTERED;
}

static bool is_only_printed(const char *element)
{
	return strcmp(element, "revision") == 0 || strcmp(element, "sheets") == 0 ||
	       strcmp(element, "job") == 0;
}

static bool is_renumbered(const struct pair *pair)
{
	const char *from = edit_id(pair->base), *to = edit_id(pair->revised);
	return from != NULL && to != NULL && strcmp(from, to) != 0;
}

static void look_at(struct change_search *f, size_t index)
{
	const struct pair *pair = &f->pairing->pairs[index];
	const struct markup *node = pair->revised != NULL ? pair->revised : pair->base;
	struct edit_list edits = {0};
	struct change change = {.pair = index, .element = pair->element, .line = node->line};
	change.id = name_of(node);
	if (pair->base == NULL || pair->revised == NULL) {
		change.kinds = pair->base == NULL ? CHANGE_ADDED : CHANGE_REMOVED;
		change.is_work = !is_only_printed(pair->element->name);
	} else {
		edit_find(&f->context, pair->element, pair->base, pair->revised, &edits);
		change.edits = edits.list.items;
		change.edit_count = edits.list.count;
		set_kinds(&change);
		if (is_renumbered(pair))
			change.id_was = edit_id(pair->base);
		if (edits.list.count == 0 && change.id_was == NULL)
			return;
	}
	const struct floor_state *state =
		pair->revised != NULL ? f->context.revised : f->context.base;
	change.where = where_of(f->context.arena, state, node);
	set_reason(f, &change, node);
	*array_push(f->context.arena, &f->changes.list) = change;
}

/* ---- order ---- */

static size_t rank_of(const struct change *change)
{
	for (size_t i = 0; i < grammar_floor.child_count; i++)
		if (grammar_floor.children[i].element == change->element)
			return i + 1;
	return 0;
}

static int compare_changes(const void *a, const void *b)
{
	const struct change *p = a, *q = b;
	bool p_goes = p->kinds == CHANGE_REMOVED, q_goes = q->kinds == CHANGE_REMOVED;
	size_t p_rank = rank_of(p), q_rank = rank_of(q);
	if (p_goes != q_goes)
		return p_goes ? 1 : -1;
	if (p_rank != q_rank)
		return (p_rank < q_rank) != p_goes ? -1 : 1;
	return p->pair < q->pair ? -1 : p->pair > q->pair;
}

struct change_list change_find(struct arena *arena, const struct pairing *pairing,
                               const struct floor_state *base, const struct floor_state *revised)
{
	/* Names are looked up, none is added. */
	struct renames renames = pairing->renames;
	struct change_search f = {
		.context = {arena, base, revised, &renames},
		.pairing = pairing,
		.newest = change_new_revision(base->plan, revised->plan),
	};
	for (size_t i = 0; i < pairing->count; i++)
		look_at(&f, i);
	if (f.changes.list.count > 0)
		qsort(f.changes.list.items, f.changes.list.count, sizeof *f.changes.list.items,
		      compare_changes);
	return f.changes;
}
