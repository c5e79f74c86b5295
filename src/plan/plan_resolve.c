#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "plan/plan_build.h"

/* ---- names ---- */

static int by_folded_id(const void *a, const void *b)
{
	const struct plan_named *x = a, *y = b;
	int order = strcasecmp(x->id, y->id);
	if (order)
		return order;
	return x->line != y->line ? (x->line < y->line ? -1 : 1) : strcmp(x->id, y->id);
}

/* Walls without an id of their own are named by their place in the room. */
static void name_walls(struct plan_build *b)
{
	for (size_t r = 0; r < b->plan->room_count; r++) {
		struct plan_room *room = &b->plan->rooms[r];
		for (size_t w = 0; w < room->wall_count; w++) {
			struct plan_wall *wall = &room->walls[w];
			if (wall->id || !room->id)
				continue;
			wall->id = arena_printf(b->arena, "%s.%zu", room->id, w + 1);
			*array_push(b->arena, &b->named) = (struct plan_named){
				wall->id, PLAN_REF_WALL, wall, wall->line, true};
		}
	}
}

/* strcasecmp in the C locale folds ASCII alone, which is all an id may hold. */
static void sort_names(struct plan_build *b)
{
	struct plan_named *named = b->named.items;
	size_t count = b->named.count;
	if (count)
		qsort(named, count, sizeof *named, by_folded_id);
	for (size_t i = 1; i < count; i++) {
		if (strcasecmp(named[i].id, named[i - 1].id) != 0 || !named[i].is_sound || !named[i - 1].is_sound)
			continue;
		if (strcmp(named[i].id, named[i - 1].id) == 0)
			diag_error(b->diags, named[i].line, "id \"%s\" is used already on line %d; expected another",
			           named[i].id, named[i - 1].line);
		else
			diag_error(b->diags, named[i].line,
			           "id \"%s\" differs only in case from \"%s\" on line %d; expected another", named[i].id,
			           named[i - 1].id, named[i - 1].line);
	}
}

static const struct plan_named *find_named(const struct plan_build *b, const char *id)
{
	size_t low = 0, high = b->named.count;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if (strcasecmp(b->named.items[middle].id, id) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	for (; low < b->named.count && strcasecmp(b->named.items[low].id, id) == 0; low++)
		if (strcmp(b->named.items[low].id, id) == 0)
			return &b->named.items[low];
	return NULL;
}

/* ---- namings ---- */

/* `kinds` ends at -1. Reports; NULL where nothing fits. */
static const struct plan_named *find_of_kind(struct plan_build *b, const struct plan_naming *naming, const char *id,
                                             const int *kinds)
{
	struct strbuf wanted = strbuf_in(b->arena);
	const struct plan_named *named = find_named(b, id);
	for (const int *kind = kinds; *kind >= 0; kind++) {
		if (named && named->kind == (enum plan_ref_kind)*kind)
			return named;
		strbuf_printf(&wanted, "%s%s", kind == kinds ? "" : " or ", grammar_kind_name((enum plan_ref_kind)*kind));
	}
	if (named)
		diag_error(b->diags, naming->line, "<%s> %s=\"%s\" names %s; expected %s", naming->owner,
		           naming->attribute->name, id, grammar_kind_name(named->kind), wanted.text);
	else
		diag_error(b->diags, naming->line, "<%s> %s=\"%s\" names nothing in this floor; expected %s", naming->owner,
		           naming->attribute->name, id, wanted.text);
	return NULL;
}

struct names {
	char **items;
	size_t count;
};

static struct names split(struct arena *arena, const char *text)
{
	struct names names = {ARENA_ARRAY(arena, char *, strlen(text) / 2 + 1), 0};
	for (const char *at = text; *at;) {
		size_t length = strcspn(at, " \t\n");
		if (length)
			names.items[names.count++] = arena_strndup(arena, at, length);
		at += length + (at[length] != '\0');
	}
	return names;
}

static void *slot_of(const struct plan_naming *naming)
{
	return (char *)naming->object + naming->attribute->offset;
}

static void resolve_one(struct plan_build *b, const struct plan_naming *naming)
{
	const int kinds[] = {(int)naming->attribute->ref_kind, -1};
	const struct plan_named *named = find_of_kind(b, naming, naming->text, kinds);
	if (named)
		*(const void **)slot_of(naming) = named->object;
}

static bool is_repeated(const struct names *names, size_t index)
{
	for (size_t i = 0; i < index; i++)
		if (strcmp(names->items[i], names->items[index]) == 0)
			return true;
	return false;
}

static void resolve_several(struct plan_build *b, const struct plan_naming *naming)
{
	struct names names = split(b->arena, naming->text);
	const void **found = ARENA_ARRAY(b->arena, const void *, names.count + 1);
	size_t count = 0;
	const int kinds[] = {(int)naming->attribute->ref_kind, -1};
	if (names.count == 0)
		diag_error(b->diags, naming->line, "<%s> %s is empty; expected ids separated by blanks", naming->owner,
		           naming->attribute->name);
	for (size_t i = 0; i < names.count; i++) {
		if (is_repeated(&names, i)) {
			diag_error(b->diags, naming->line, "<%s> %s names \"%s\" twice; expected it once", naming->owner,
			           naming->attribute->name, names.items[i]);
			continue;
		}
		const struct plan_named *named = find_of_kind(b, naming, names.items[i], kinds);
		if (named)
			found[count++] = named->object;
	}
	*(const void ***)slot_of(naming) = found;
	*(size_t *)((char *)naming->object + naming->attribute->count_offset) = count;
}

static void resolve_places(struct plan_build *b, const struct plan_naming *naming)
{
	struct names names = split(b->arena, naming->text);
	struct plan_ref *refs = ARENA_ARRAY(b->arena, struct plan_ref, names.count + 1);
	size_t count = 0;
	static const int kinds[] = {PLAN_REF_WALL, PLAN_REF_DOORWAY, -1};
	for (size_t i = 0; i < names.count; i++) {
		const struct plan_named *named = find_of_kind(b, naming, names.items[i], kinds);
		if (named)
			refs[count++] = (struct plan_ref){named->kind, named->id, naming->line, named->object};
	}
	*(struct plan_ref **)slot_of(naming) = refs;
	*(size_t *)((char *)naming->object + naming->attribute->count_offset) = count;
}

static void resolve_about(struct plan_build *b, const struct plan_naming *naming)
{
	const struct plan_named *named = find_named(b, naming->text);
	if (!named) {
		diag_error(b->diags, naming->line, "<%s> %s=\"%s\" names nothing in this floor; expected an id",
		           naming->owner, naming->attribute->name, naming->text);
		return;
	}
	*(struct plan_ref *)slot_of(naming) = (struct plan_ref){named->kind, named->id, naming->line, named->object};
}

static void resolve_wall(struct plan_build *b, const struct plan_naming *naming)
{
	static const int kinds[] = {PLAN_REF_WALL, -1};
	(void)find_of_kind(b, naming, naming->text, kinds);
}

void plan_resolve(struct plan_build *b)
{
	name_walls(b);
	sort_names(b);
	for (size_t i = 0; i < b->namings.count; i++) {
		const struct plan_naming *naming = &b->namings.items[i];
		switch (naming->attribute->value) {
		case GRAMMAR_REF:
			resolve_one(b, naming);
			break;
		case GRAMMAR_REFS:
			resolve_several(b, naming);
			break;
		case GRAMMAR_PLACES:
			resolve_places(b, naming);
			break;
		case GRAMMAR_ABOUT:
			resolve_about(b, naming);
			break;
		default:
			resolve_wall(b, naming);
			break;
		}
	}
}
