#include "screen/place.h"

#include <string.h>

/* Sheets from the one where a thing is first looked for: as found, then as built. */
static const char *const SHEETS[] = {"slab",        "membrane", "joints",
                                     "setting-out", "install",  "changes"};
enum { SHEET_KINDS = sizeof SHEETS / sizeof *SHEETS };

/* `install` is the beginning of `install-kitchen`, `slab` of `slab-2`. */
static bool is_of_kind(const struct page *page, const char *kind)
{
	size_t length = strlen(kind);
	return strncmp(page->name, kind, length) == 0 &&
	       (page->name[length] == '\0' || page->name[length] == '-');
}

static bool is_inside(struct box box, struct point p)
{
	return p.x >= box.x0 && p.x <= box.x1 && p.y >= box.y0 && p.y <= box.y1;
}

static bool shows(const struct page *page, struct point at)
{
	const struct view *view = page->view;
	if (view == NULL || (view->core != NULL && !is_inside(*view->core, at)))
		return false;
	struct paper_point p = view_point(view, at);
	return p.x >= view->paper.x0 && p.x <= view->paper.x1 && p.y >= view->paper.y0 &&
	       p.y <= view->paper.y1;
}

struct finding_places {
	const struct draft *draft;
	const struct sheet_set *set;
	const struct element *element; /* that the finding is about; NULL: it has no id here */
	size_t finding;
	struct places *places;
};

static void add_pages(struct finding_places *f, const char *kind, bool is_drawn)
{
	struct point at = f->draft->findings->items[f->finding].at;
	for (size_t i = 0; i < f->set->page_count; i++) {
		const struct page *page = &f->set->pages[i];
		if (!is_of_kind(page, kind) || !shows(page, at) ||
		    (is_drawn && !(f->element && element_is_on(f->element, i))))
			continue;
		*array_push(f->draft->arena, &f->places->list) =
			(struct place){f->finding, i, view_point(page->view, at)};
	}
}

/* Of tile and lays nothing bears the name: the setting out shows them. */
static bool is_of_tile(const struct element *element)
{
	return element && (element->kind == ELEMENT_LAY || element->kind == ELEMENT_TILE);
}

static void add_finding(struct finding_places *f)
{
	size_t before = f->places->list.count;
	for (int i = 0; i < SHEET_KINDS; i++)
		add_pages(f, SHEETS[i], true);
	if (f->places->list.count == before && is_of_tile(f->element))
		add_pages(f, "setting-out", false);
	/* Drawn nowhere by that name: one sheet that shows the place. */
	for (int i = 0; f->places->list.count == before && i < SHEET_KINDS; i++)
		add_pages(f, SHEETS[i], false);
}

struct places places_of(const struct draft *draft, const struct sheet_set *set,
                        const struct elements *elements)
{
	struct places places = {{0}};
	for (size_t i = 0; i < draft->findings->count; i++) {
		const char *about = draft->findings->items[i].about;
		struct finding_places f = {draft, set, element_find(elements, about), i, &places};
		add_finding(&f);
	}
	return places;
}

const struct place *place_find(const struct places *places, size_t finding)
{
	for (size_t i = 0; i < places->list.count; i++)
		if (places->list.items[i].finding == finding)
			return &places->list.items[i];
	return NULL;
}
