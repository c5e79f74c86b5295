/* The sheets of the page: each drawn as its SVG file is, with the marks of findings over it. */
#include "screen/screen_part.h"
#include "units/number.h"

/* Of the sheet's width or height; at a width of 420 mm a step is 4 micrometres. */
enum { PERCENT_DECIMALS = 3 };

static const char *percent(const struct screen *s, double part, double whole)
{
	return number_text(s->draft->arena, part / whole * 100, PERCENT_DECIMALS);
}

/* How many marks stand at the same point of the same sheet before this one: it goes beside them. */
static size_t marks_before(const struct screen *s, const struct place *place)
{
	size_t count = 0;
	for (const struct place *other = s->places.list.items; other < place; other++)
		count += other->page == place->page && other->at.x == place->at.x &&
		         other->at.y == place->at.y;
	return count;
}

static void add_mark(struct screen *s, const struct place *place)
{
	const struct draft *draft = s->draft;
	const struct list *list = s->set->pages[place->page].list;
	const struct finding *finding = &draft->findings->items[place->finding];
	const char *number = screen_number(s, place->finding);
	html_text(&s->out, "a", number,
	          {"class", arena_printf(draft->arena, "pin %s", screen_weight(finding))},
	          {"id", screen_place_id(s, place)},
	          {"href", arena_printf(draft->arena, "#%s", screen_finding_id(s, place->finding))},
	          {"style",
	           arena_printf(draft->arena, "left:%s%%;top:%s%%;--beside:%zu",
	                        percent(s, place->at.x, list->width),
	                        percent(s, place->at.y, list->height), marks_before(s, place))},
	          {"aria-label",
	           draft_text(draft, "page.mark", {"number", number}, {"text", finding->text})});
}

static void add_drawing(struct screen *s, size_t index)
{
	struct page page = s->set->pages[index];
	page.id_prefix = arena_printf(s->draft->arena, "%s.", page.name);
	struct bytes svg = canvas_svg(s->draft->arena, &page);
	strbuf_add_bytes(&s->out, svg.data, svg.length);
}

static void add_sheet(struct screen *s, size_t index)
{
	const struct draft *draft = s->draft;
	const struct page *page = &s->set->pages[index];
	const char *id = screen_sheet_id(s, index),
		   *head = arena_printf(draft->arena, "head-%s", page->name);
	html_start(&s->out, "section", {"class", "sheet"}, {"id", id}, {"aria-labelledby", head});
	html_text(&s->out, "h2", page->title, {"id", head});
	html_start(&s->out, "div", {"class", "stage"}, {"tabindex", "0"}, {"role", "group"},
	           {"aria-labelledby", head}, {"aria-describedby", "keys"});
	html_start(&s->out, "div", {"class", "paper"});
	add_drawing(s, index);
	for (size_t i = 0; i < s->places.list.count; i++)
		if (s->places.list.items[i].page == index)
			add_mark(s, &s->places.list.items[i]);
	html_end(&s->out, "div");
	html_end(&s->out, "div");
	html_end(&s->out, "section");
}

void screen_add_sheets(struct screen *s)
{
	for (size_t i = 0; i < s->set->page_count; i++)
		add_sheet(s, i);
}
