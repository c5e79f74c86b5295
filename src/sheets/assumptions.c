#include "sheets/assumptions.h"

#include <ctype.h>
#include <string.h>

#include "findings/say.h"
#include "layout/warming.h"

static const char *default_name(const struct plan_default *d)
{
	return d->id && *d->id ? d->id : d->element;
}

/* An element without an id by the word for it. */
static const char *default_tag(const struct draft *draft, const struct plan_default *d)
{
	const char *key = arena_printf(draft->arena, "change.element.%s", d->element);
	bool is_word = !(d->id && *d->id) && words_has(draft->words, key);
	return draft_tag(draft, is_word ? draft_word(draft, key) : default_name(d));
}

/* A number as the description has it, clear of its unit: 25 MPa. */
static const char *spaced(const struct draft *draft, const char *value)
{
	size_t digits = strspn(value, "0123456789./ ");
	bool has_unit = digits > 0 && isalpha((unsigned char)value[digits]);
	return has_unit ? arena_printf(draft->arena, "%.*s\xc2\xa0%s", (int)digits, value,
	                               value + digits)
	                : value;
}

/* A word of the description has its own text, a number is set into that of its attribute. */
static const char *default_text(const struct draft *draft, const struct plan_default *d)
{
	const char *key = arena_printf(draft->arena, "default.%s.%s", d->element, d->attribute);
	const char *exact = arena_printf(draft->arena, "%s.%s", key, d->value);
	if (words_has(draft->words, exact))
		return draft_word(draft, exact);
	double least = rules_figure(draft->placed->rules, FIGURE_OVERRUN_LEAST);
	return draft_text(draft, key, {"value", spaced(draft, d->value)},
	                  {"least", draft_measure(draft, least)});
}

static bool is_same_element(const struct plan_default *a, const struct plan_default *b)
{
	return a->line == b->line && strcmp(default_name(a), default_name(b)) == 0;
}

static bool is_open_wall(const struct site *site, const char *id)
{
	for (size_t r = 0; id && r < site->room_count; r++)
		for (size_t e = 0; e < site->rooms[r].edge_count; e++) {
			const struct plan_wall *wall = site->rooms[r].edges[e].wall;
			if (wall && wall->to && strcmp(wall->id, id) == 0)
				return true;
		}
	return false;
}

/* Along an open edge there is no gap for a base to cover. */
static bool is_used(const struct draft *draft, const struct plan_default *d)
{
	return strcmp(d->attribute, "base") != 0 || !is_open_wall(draft->site, d->id);
}

/* Elements of one kind that left the same unsaid. */
struct unsaid {
	const char *element, *list;
	struct strbuf names;
	const char *last; /* of the names; NULL: none yet */
};

struct unsaids {
	ARRAY_OF(struct unsaid) items;
};

static void add_unsaid(struct arena *arena, struct unsaids *all, const char *element,
                       const char *list, const char *name)
{
	struct unsaid *same = NULL;
	for (size_t i = 0; i < all->items.count && !same; i++)
		if (strcmp(all->items.items[i].element, element) == 0 &&
		    strcmp(all->items.items[i].list, list) == 0)
			same = &all->items.items[i];
	if (!same) {
		same = array_push(arena, &all->items);
		*same = (struct unsaid){element, list, strbuf_in(arena), NULL};
	}
	/* Walls without ids are all told by their room. */
	if (!same->last || strcmp(same->last, name) != 0)
		strbuf_printf(&same->names, "%s%s", same->names.length ? ", " : "", name);
	same->last = name;
}

/* Temperatures have no one default: it depends on what reaches the slab. */
static void add_warming(const struct draft *draft, struct unsaids *all)
{
	const struct saying saying = {draft->arena, draft->words, draft->site->inches};
	for (size_t r = 0; draft->site->crack_count > 0 && r < draft->site->room_count; r++) {
		const struct site_room *room = &draft->site->rooms[r];
		for (size_t i = 0; i < room->slab_part_count; i++) {
			const struct site_slab_part *part = &room->slab_parts[i];
			double kelvin = warming_of(draft->placed->rules, part);
			if (!warming_is_stated(part->slab))
				add_unsaid(draft->arena, all, "room",
				           draft_text(draft, "assumed.warming",
				                      {"warming", say_warming(&saying, kelvin)}),
				           draft_tag(draft, room->id));
		}
	}
}

void assumptions_add(struct notes *notes)
{
	const struct draft *draft = notes->sheet->draft;
	const struct plan *plan = draft->site->plan;
	struct unsaids all = {0};
	notes_heading(notes, NOTE_FINDING, "heading.defaults");
	for (size_t i = 0; i < plan->default_count;) {
		const struct plan_default *first = &plan->defaults[i];
		struct strbuf list = strbuf_in(draft->arena);
		for (; i < plan->default_count && is_same_element(first, &plan->defaults[i]); i++)
			if (is_used(draft, &plan->defaults[i]))
				strbuf_printf(&list, "%s%s", list.length ? ", " : "",
				              default_text(draft, &plan->defaults[i]));
		if (list.length)
			add_unsaid(draft->arena, &all, first->element, list.text,
			           default_tag(draft, first));
	}
	add_warming(draft, &all);
	for (size_t i = 0; i < all.items.count; i++)
		notes_item(notes, NOTE_FINDING, NOTE_DASH,
		           arena_printf(draft->arena, "%s: %s", all.items.items[i].names.text,
		                        all.items.items[i].list));
}
