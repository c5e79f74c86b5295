#include "screen/element.h"

#include <stdlib.h>
#include <string.h>

struct collecting {
	const struct draft *draft;
	ARRAY_OF(struct element) list;
};

static void add(struct collecting *c, struct element element)
{
	*array_push(c->draft->arena, &c->list) = element;
}

/* ---- of the plan ---- */

static enum element_kind written_kind(const char *name)
{
	static const struct {
		const char *name;
		enum element_kind kind;
	} kinds[] = {
		{"crack", ELEMENT_CRACK},       {"slab-joint", ELEMENT_SLAB_JOINT},
		{"room", ELEMENT_ROOM},         {"wall", ELEMENT_WALL},
		{"corner", ELEMENT_WALL},       {"doorway", ELEMENT_DOORWAY},
		{"obstacle", ELEMENT_OBSTACLE}, {"slab", ELEMENT_SLAB},
		{"reading", ELEMENT_READING},   {"lay", ELEMENT_LAY},
		{"tile", ELEMENT_TILE},         {"membrane", ELEMENT_MEMBRANE},
	};
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (strcmp(kinds[i].name, name) == 0)
			return kinds[i].kind;
	return ELEMENT_OTHER;
}

static const void *site_thing(const struct site *site, enum element_kind kind, const char *id)
{
	for (size_t i = 0; kind == ELEMENT_CRACK && i < site->crack_count; i++)
		if (strcmp(site->cracks[i].id, id) == 0)
			return &site->cracks[i];
	return kind == ELEMENT_ROOM ? site_room_find(site, id) : NULL;
}

static const struct placed_lay *lay_named(const struct placed *placed, const char *id)
{
	for (size_t i = 0; i < placed->lay_count; i++)
		if (strcmp(placed->lays[i].field->lay->id, id) == 0)
			return &placed->lays[i];
	return NULL;
}

static void add_written(struct collecting *c, const struct markup *node)
{
	const struct markup_attribute *id = markup_find(node, "id");
	if (id != NULL) {
		enum element_kind kind = written_kind(node->name);
		const struct placed *placed = c->draft->placed;
		add(c, (struct element){.kind = kind,
		                        .id = id->value,
		                        .written = node,
		                        .lay = kind == ELEMENT_LAY ? lay_named(placed, id->value)
		                                                   : NULL,
		                        .thing = site_thing(c->draft->site, kind, id->value)});
	}
	for (const struct markup *child = node->first_child; child; child = child->next)
		add_written(c, child);
}

/* ---- of the layout ---- */

static void add_placed(struct collecting *c, const struct placed_lay *lay, enum element_kind kind,
                       const char *id, const void *thing)
{
	add(c, (struct element){.kind = kind, .id = id, .lay = lay, .thing = thing});
}

static void add_lay(struct collecting *c, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->cracks->hold_count; i++)
		add_placed(c, lay, ELEMENT_HOLD, lay->cracks->holds[i].id, &lay->cracks->holds[i]);
	for (size_t i = 0; i < lay->strips->strip_count; i++)
		add_placed(c, lay, ELEMENT_STRIP, lay->strips->strips[i].id,
		           &lay->strips->strips[i]);
	for (size_t i = 0; i < lay->joints->joint_count; i++)
		add_placed(c, lay, ELEMENT_JOINT, lay->joints->joints[i].id,
		           &lay->joints->joints[i]);
	for (size_t i = 0; i < lay->controls->control_count; i++)
		add_placed(c, lay, ELEMENT_CONTROL, lay->controls->controls[i].id,
		           &lay->controls->controls[i]);
	for (size_t i = 0; i < lay->tiling->panel_count; i++)
		add_placed(c, lay, ELEMENT_PANEL, lay->tiling->panels[i].id,
		           &lay->tiling->panels[i]);
}

/* Walls that the plan gives no id have one of their room's. */
static void add_walls(struct collecting *c, const struct site_room *room)
{
	for (size_t i = 0; i < room->edge_count; i = site_wall_end(room, i))
		if (room->edges[i].wall != NULL)
			add(c, (struct element){.kind = ELEMENT_WALL, .id = room->edges[i].id});
}

/* ---- in order, each once ---- */

/* Stable, as a merge sort by hand would be: places in the list break ties. */
static int by_kind(const void *a, const void *b)
{
	const struct element *const *p = a, *const *q = b;
	if ((*p)->kind != (*q)->kind)
		return (*p)->kind < (*q)->kind ? -1 : 1;
	return *p < *q ? -1 : *p > *q;
}

static int by_id(const void *a, const void *b)
{
	const struct element *const *p = a, *const *q = b;
	int order = strcmp((*p)->id, (*q)->id);
	return order != 0 ? order : *p < *q ? -1 : *p > *q;
}

/* Of two with one id the first stays: the plan's own. */
static struct elements arranged(struct collecting *c)
{
	struct arena *arena = c->draft->arena;
	size_t count = c->list.count, kept = 0;
	const struct element **order = ARENA_ARRAY(arena, const struct element *, count);
	for (size_t i = 0; i < count; i++)
		order[i] = &c->list.items[i];
	qsort(order, count, sizeof *order, by_id);
	for (size_t i = 0; i < count; i++)
		if (kept == 0 || strcmp(order[kept - 1]->id, order[i]->id) != 0)
			order[kept++] = order[i];
	qsort(order, kept, sizeof *order, by_kind);
	struct elements all = {.items = ARENA_ARRAY(arena, struct element, kept),
	                       .count = kept,
	                       .by_id = order};
	for (size_t i = 0; i < kept; i++)
		all.items[i] = *order[i];
	for (size_t i = 0; i < kept; i++)
		order[i] = &all.items[i];
	qsort(order, kept, sizeof *order, by_id);
	return all;
}

static int id_order(const void *id, const void *item)
{
	const struct element *const *element = item;
	return strcmp(id, (*element)->id);
}

const struct element *element_find(const struct elements *all, const char *id)
{
	const struct element **found =
		bsearch(id, all->by_id, all->count, sizeof *all->by_id, id_order);
	return found ? *found : NULL;
}

static void note_page(struct arena *arena, const struct elements *all, size_t page,
                      const struct list *list)
{
	const char *last = NULL;
	for (size_t i = 0; i < list->ops.count; i++) {
		const char *id = list->ops.items[i].element;
		if (id == NULL || (last != NULL && strcmp(id, last) == 0))
			continue;
		last = id;
		const struct element *found = element_find(all, id);
		if (found == NULL || element_is_on(found, page))
			continue;
		*array_push(arena, &all->items[found - all->items].pages) = page;
	}
}

struct elements elements_of(const struct draft *draft, const struct sheet_set *set,
                            const struct markup *plan)
{
	struct collecting c = {.draft = draft};
	add_written(&c, plan);
	for (size_t i = 0; i < draft->site->room_count; i++)
		add_walls(&c, &draft->site->rooms[i]);
	for (size_t i = 0; i < draft->placed->lay_count; i++)
		add_lay(&c, &draft->placed->lays[i]);
	struct elements all = arranged(&c);
	for (size_t i = 0; i < set->page_count; i++)
		note_page(draft->arena, &all, i, set->pages[i].list);
	return all;
}

bool element_is_on(const struct element *element, size_t page)
{
	for (size_t i = 0; i < element->pages.count; i++)
		if (element->pages.items[i] == page)
			return true;
	return false;
}

const char *element_kind_key(enum element_kind kind)
{
	static const char *const keys[ELEMENT_KINDS] = {
		[ELEMENT_CRACK] = "page.kind.crack",
		[ELEMENT_SLAB_JOINT] = "page.kind.slab-joint",
		[ELEMENT_HOLD] = "page.kind.hold",
		[ELEMENT_STRIP] = "page.kind.strip",
		[ELEMENT_JOINT] = "page.kind.joint",
		[ELEMENT_CONTROL] = "page.kind.control",
		[ELEMENT_PANEL] = "page.kind.panel",
		[ELEMENT_ROOM] = "page.kind.room",
		[ELEMENT_WALL] = "page.kind.wall",
		[ELEMENT_DOORWAY] = "page.kind.doorway",
		[ELEMENT_OBSTACLE] = "page.kind.obstacle",
		[ELEMENT_SLAB] = "page.kind.slab",
		[ELEMENT_READING] = "page.kind.reading",
		[ELEMENT_LAY] = "page.kind.lay",
		[ELEMENT_TILE] = "page.kind.tile",
		[ELEMENT_MEMBRANE] = "page.kind.membrane",
		[ELEMENT_OTHER] = "page.kind.other",
	};
	return keys[kind];
}

bool element_is_ground(const struct element *element)
{
	switch (element->kind) {
	case ELEMENT_PANEL:
	case ELEMENT_ROOM:
	case ELEMENT_MEMBRANE:
	case ELEMENT_STRIP:
	case ELEMENT_HOLD:
		return true;
	default:
		return false;
	}
}
