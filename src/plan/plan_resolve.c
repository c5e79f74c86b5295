#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "plan/plan_build.h"

/* ---- ids ---- */

/* By id without case, by id, by line: those that are the same, or nearly, come together.
 * strcasecmp folds ASCII alone, which is all that a sound id holds. */
static int by_id(const void *a, const void *b)
{
	const struct plan_named *x = a, *y = b;
	int order = strcasecmp(x->id, y->id);
	if (!order)
		order = strcmp(x->id, y->id);
	if (order)
		return order;
	if (x->line != y->line)
		return x->line < y->line ? -1 : 1;
	return x->built < y->built ? -1 : x->built > y->built;
}

/* Walls without an id of their own are named by their place in the room. */
static void name_walls(struct plan_build *b)
{
	size_t room = 0, place = 0;
	for (size_t i = 0; i < b->built.count; i++) {
		const struct plan_built *at = &b->built.items[i];
		if (at->element->kind != PLAN_REF_WALL)
			continue;
		size_t in = plan_within(b, i, "room");
		place = in == room ? place + 1 : 1;
		room = in;
		struct plan_wall *wall = at->object;
		const struct plan_room *owner = b->built.items[room].object;
		if (wall->id || !owner->id)
			continue;
		wall->id = arena_printf(b->arena, "%s.%zu", owner->id, place);
		*array_push(b->arena, &b->named) = (struct plan_named){
			.id = wall->id,
			.kind = PLAN_REF_WALL,
			.object = wall,
			.built = i,
			.line = wall->line,
			.is_sound = true,
			.is_derived = true,
		};
	}
}

static bool is_blamed(const struct plan_named *first, const struct plan_named *second)
{
	return first->is_sound && second->is_sound && !(first->is_derived && second->is_derived);
}

static void report_same(struct plan_build *b, struct plan_named *first,
                        const struct plan_named *second)
{
	first->is_repeated = true;
	if (is_blamed(first, second))
		plan_fault(b, second->built, second->line,
		           arena_printf(b->arena,
		                        "id \"%s\" is used on line %d already; expected another",
		                        second->id, first->line));
}

static void report_near(struct plan_build *b, const struct plan_named *first,
                        const struct plan_named *second)
{
	if (second->line < first->line)
		report_near(b, second, first);
	else if (is_blamed(first, second))
		plan_fault(b, second->built, second->line,
		           arena_printf(b->arena,
		                        "id \"%s\" differs from \"%s\" on line %d only in case; "
		                        "expected another",
		                        second->id, first->id, first->line));
}

static void sort_names(struct plan_build *b)
{
	struct plan_named *named = b->named.items;
	size_t count = b->named.count, run = 0;
	if (count)
		qsort(named, count, sizeof *named, by_id);
	for (size_t i = 1; i < count && !b->is_stopped; i++) {
		if (strcmp(named[i].id, named[run].id) == 0) {
			report_same(b, &named[run], &named[i]);
			continue;
		}
		if (strcasecmp(named[i].id, named[run].id) == 0)
			report_near(b, &named[run], &named[i]);
		run = i;
	}
}

const struct plan_named *plan_find_named(const struct plan_build *b, const char *id)
{
	struct plan_named wanted = {.id = id, .line = 0};
	size_t low = 0, high = b->named.count;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if (by_id(&b->named.items[middle], &wanted) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	bool is_found = low < b->named.count && strcmp(b->named.items[low].id, id) == 0;
	return is_found ? &b->named.items[low] : NULL;
}

/* ---- those who name ---- */

/* Kinds that may be named, ended by ANY_MORE; ANY first: every one of them. */
enum { ANY_MORE = -1, ANY = -2 };

static const char *kinds_text(struct arena *arena, const int *kinds)
{
	if (*kinds == ANY)
		return "the id of an element";
	struct strbuf text = strbuf_in(arena);
	for (const int *kind = kinds; *kind != ANY_MORE; kind++)
		strbuf_printf(&text, "%s%s", kind == kinds ? "" : " or ",
		              grammar_kind_name((enum plan_ref_kind) * kind));
	return text.text;
}

static bool is_of_kinds(const struct plan_named *named, const int *kinds)
{
	if (*kinds == ANY)
		return true;
	for (const int *kind = kinds; *kind != ANY_MORE; kind++)
		if (named->kind == (enum plan_ref_kind) * kind)
			return true;
	return false;
}

/* An element that lacks its id may be the one that is meant. */
static bool may_be_nameless(const struct plan_build *b, const int *kinds)
{
	for (int kind = 0; kind <= PLAN_REF_OTHER; kind++) {
		const struct plan_named named = {.kind = (enum plan_ref_kind)kind};
		if (b->nameless[kind] && is_of_kinds(&named, kinds))
			return true;
	}
	/* A wall is named by its room, too. */
	return b->nameless[PLAN_REF_ROOM] &&
	       is_of_kinds(&(struct plan_named){.kind = PLAN_REF_WALL}, kinds);
}

/* What is wrong with naming this; NULL: nothing. */
static const char *wrong_naming(struct plan_build *b, const struct plan_naming *naming,
                                const char *id, const struct plan_named *named, const int *kinds)
{
	const char *owner = b->built.items[naming->built].element->name;
	const char *attribute = naming->attribute->name;
	size_t room = plan_within(b, naming->built, "room");
	if (!named)
		return arena_printf(b->arena,
		                    "<%s> %s=\"%s\" names nothing in this floor; expected %s",
		                    owner, attribute, id, kinds_text(b->arena, kinds));
	if (!is_of_kinds(named, kinds))
		return arena_printf(b->arena, "<%s> %s=\"%s\" names %s; expected %s", owner,
		                    attribute, id, grammar_kind_name(named->kind),
		                    kinds_text(b->arena, kinds));
	if (room && named->kind == PLAN_REF_WALL && plan_within(b, named->built, "room") != room)
		return arena_printf(b->arena,
		                    "<%s> %s=\"%s\" is in another room; expected one of this",
		                    owner, attribute, id);
	return NULL;
}

/* What an id names, of one of the kinds; NULL: it is reported, or follows from what is. */
static const struct plan_named *find_of_kinds(struct plan_build *b,
                                              const struct plan_naming *naming, const char *id,
                                              const int *kinds)
{
	const struct plan_named *named = plan_find_named(b, id);
	const char *wrong = wrong_naming(b, naming, id, named, kinds);
	bool is_refused = named && named->is_refused;
	if (!wrong && !is_refused)
		return named;
	if (is_refused || (named ? named->is_repeated : may_be_nameless(b, kinds)))
		plan_mark_faulty(b, naming->built);
	else
		plan_fault(b, naming->built, naming->written->line, wrong);
	return NULL;
}

static char *slot_of(const struct plan_build *b, const struct plan_naming *naming)
{
	return (char *)b->built.items[naming->built].object + naming->attribute->offset;
}

static void mark_sound(struct plan_build *b, const struct plan_naming *naming)
{
	struct plan_built *at = &b->built.items[naming->built];
	at->sound |= (uint64_t)1 << (naming->attribute - at->element->attributes);
}

static void resolve_one(struct plan_build *b, const struct plan_naming *naming)
{
	const int kinds[] = {(int)naming->attribute->ref_kind, ANY_MORE};
	const struct plan_named *named = find_of_kinds(b, naming, naming->written->value, kinds);
	if (!named)
		return;
	if (naming->attribute->value == GRAMMAR_NAME)
		*(const char **)slot_of(b, naming) = naming->written->value;
	else
		*(const void **)slot_of(b, naming) = named->object;
	mark_sound(b, naming);
}

static void resolve_any(struct plan_build *b, const struct plan_naming *naming)
{
	static const int any[] = {ANY, ANY_MORE};
	const struct plan_named *named = find_of_kinds(b, naming, naming->written->value, any);
	if (!named)
		return;
	size_t inside = naming->attribute->value == GRAMMAR_SUBJECT
	                        ? offsetof(struct plan_subject, element)
	                        : 0;
	*(struct plan_ref *)(slot_of(b, naming) + inside) =
		(struct plan_ref){named->kind, named->id, naming->written->line, named->object};
	mark_sound(b, naming);
}

/* ---- lists of names ---- */

struct list {
	const struct plan_named **items;
	size_t count;
};

static bool is_blank(char c)
{
	return c == ' ' || c == '\t' || c == '\n';
}

/* Whether this list has it already; says so to the next who asks. */
static bool is_listed(const struct plan_build *b, const struct plan_naming *naming,
                      const struct plan_named *named)
{
	size_t *stamp = &b->named.items[named - b->named.items].listed;
	size_t mine = (size_t)(naming - b->namings.items) + 1;
	bool is_mine = *stamp == mine;
	*stamp = mine;
	return is_mine;
}

static void report_naming(struct plan_build *b, const struct plan_naming *naming, const char *id,
                          const char *wrong)
{
	plan_fault(b, naming->built, naming->written->line,
	           arena_printf(b->arena, "<%s> %s=\"%s\" %s",
	                        b->built.items[naming->built].element->name,
	                        naming->attribute->name, id, wrong));
}

/* All that are named once and well; the value is sound where that is all of it. */
static struct list resolve_list(struct plan_build *b, const struct plan_naming *naming,
                                const int *kinds)
{
	const char *at = naming->written->value;
	struct list list = {ARENA_ARRAY(b->arena, const struct plan_named *, strlen(at) / 2 + 1),
	                    0};
	bool is_sound = true, is_empty = true;
	while (*at && !b->is_stopped) {
		const char *start = at;
		while (*at && !is_blank(*at))
			at++;
		if (at > start) {
			const char *id = arena_strndup(b->arena, start, (size_t)(at - start));
			const struct plan_named *named = find_of_kinds(b, naming, id, kinds);
			bool is_repeated = named && is_listed(b, naming, named);
			if (is_repeated)
				report_naming(b, naming, id, "is named twice; expected it once");
			else if (named)
				list.items[list.count++] = named;
			is_sound = is_sound && named && !is_repeated;
			is_empty = false;
		}
		at += *at != '\0';
	}
	if (is_empty)
		report_naming(b, naming, naming->written->value,
		              "names nothing; expected ids separated by blanks");
	if (is_sound && !is_empty)
		mark_sound(b, naming);
	return list;
}

static size_t *count_slot(const struct plan_build *b, const struct plan_naming *naming)
{
	return (size_t *)((char *)b->built.items[naming->built].object +
	                  naming->attribute->count_offset);
}

static void resolve_several(struct plan_build *b, const struct plan_naming *naming)
{
	const int kinds[] = {(int)naming->attribute->ref_kind, ANY_MORE};
	struct list list = resolve_list(b, naming, kinds);
	const void **found = ARENA_ARRAY(b->arena, const void *, list.count);
	for (size_t i = 0; i < list.count; i++)
		found[i] = list.items[i]->object;
	*(const void ***)slot_of(b, naming) = found;
	*count_slot(b, naming) = list.count;
}

static void resolve_places(struct plan_build *b, const struct plan_naming *naming)
{
	static const int kinds[] = {PLAN_REF_WALL, PLAN_REF_DOORWAY, ANY_MORE};
	struct list list = resolve_list(b, naming, kinds);
	struct plan_ref *refs = ARENA_ARRAY(b->arena, struct plan_ref, list.count);
	for (size_t i = 0; i < list.count; i++)
		refs[i] = (struct plan_ref){list.items[i]->kind, list.items[i]->id,
		                            naming->written->line, list.items[i]->object};
	*(struct plan_ref **)slot_of(b, naming) = refs;
	*count_slot(b, naming) = list.count;
}

void plan_resolve(struct plan_build *b)
{
	name_walls(b);
	sort_names(b);
	for (size_t i = 0; i < b->namings.count && !b->is_stopped; i++) {
		const struct plan_naming *naming = &b->namings.items[i];
		switch (naming->attribute->value) {
		case GRAMMAR_REFS:
			resolve_several(b, naming);
			break;
		case GRAMMAR_PLACES:
			resolve_places(b, naming);
			break;
		case GRAMMAR_ABOUT:
		case GRAMMAR_SUBJECT:
			resolve_any(b, naming);
			break;
		default:
			resolve_one(b, naming);
			break;
		}
	}
}
