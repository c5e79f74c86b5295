/* read_first.c - the first sheet: open questions with room for an answer, what was assumed,
 * materials, order of work, cautions, the sheets of the set. */
#include <string.h>

#include "findings/say.h"
#include "layout/warming.h"
#include "sheets/cautions.h"
#include "sheets/install_notes.h"
#include "sheets/key_plan.h"
#include "sheets/lay_view.h"
#include "sheets/materials.h"
#include "sheets/notes.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/title_block.h"

/* In the order in which work waits for them. */
static const char *const WHO[] = {"engineer", "designer", "owner", "maker", "GC", "crew"};
enum { WHO_COUNT = sizeof WHO / sizeof *WHO };

static bool is_asked(const struct finding *finding, const char *who)
{
	return finding->state == FINDING_OPEN && finding->weight != RULE_NOTE &&
	       strcmp(finding->rule->who, who) == 0;
}

static void add_questions(struct notes *notes, const char *who)
{
	const struct draft *draft = notes->sheet->draft;
	const char *name = draft_word(draft, arena_printf(draft->arena, "who.%s", who));
	bool is_first = true;
	for (size_t i = 0; i < draft->findings->count; i++) {
		const struct finding *finding = &draft->findings->items[i];
		if (!is_asked(finding, who))
			continue;
		if (is_first)
			notes_title(notes, NOTE_WORK,
			            draft_text(draft, "heading.questions",
			                       {"who", draft_tag(draft, name)}));
		is_first = false;
		notes_item(notes, NOTE_WORK, draft_tag(draft, finding->about),
		           draft_text(draft, "question.row", {"text", finding->text},
		                      {"rule", finding->rule->name},
		                      {"source", finding->rule->source}));
		notes_lead(notes, finding->about);
		notes_answer(notes);
	}
}

static void add_sheets(struct notes *notes)
{
	const struct sheet *sheet = notes->sheet;
	notes_heading(notes, NOTE_MATERIAL, "heading.sheets");
	for (size_t i = 0; i < sheet->contents_count; i++) {
		notes_item(notes, NOTE_MATERIAL, sheet->contents[i].number,
		           sheet->contents[i].text);
		notes_lead(notes, sheet->contents[i].name);
	}
}

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

/* As the description would have it; what is no value of one attribute is said in words. */
static const char *default_value(const struct draft *draft, const struct plan_default *d)
{
	const char *key = arena_printf(draft->arena, "default.%s", d->attribute);
	double least = rules_figure(draft->placed->rules, FIGURE_OVERRUN_LEAST);
	if (!words_has(draft->words, key))
		return d->value;
	return draft_text(draft, key, {"least", draft_measure(draft, least)});
}

static bool is_same_element(const struct plan_default *a, const struct plan_default *b)
{
	return a->line == b->line && strcmp(default_name(a), default_name(b)) == 0;
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

/* One item for all elements of a kind that left the same unsaid. */
static void add_defaults(struct notes *notes)
{
	const struct draft *draft = notes->sheet->draft;
	const struct plan *plan = draft->site->plan;
	struct unsaids all = {0};
	notes_heading(notes, NOTE_FINDING, "heading.defaults");
	for (size_t i = 0; i < plan->default_count;) {
		const struct plan_default *first = &plan->defaults[i];
		struct strbuf list = strbuf_in(draft->arena);
		for (; i < plan->default_count && is_same_element(first, &plan->defaults[i]); i++)
			strbuf_printf(&list, "%s%s %s", list.length ? ", " : "",
			              plan->defaults[i].attribute,
			              default_value(draft, &plan->defaults[i]));
		add_unsaid(draft->arena, &all, first->element, list.text,
		           default_tag(draft, first));
	}
	add_warming(draft, &all);
	for (size_t i = 0; i < all.items.count; i++)
		notes_item(notes, NOTE_FINDING, NOTE_DASH,
		           arena_printf(draft->arena, "%s: %s", all.items.items[i].names.text,
		                        all.items.items[i].list));
}

static void add_lay(struct notes *notes, const struct placed_lay *lay)
{
	const struct draft *draft = notes->sheet->draft;
	struct strbuf rooms = strbuf_in(draft->arena);
	for (size_t i = 0; i < lay->field->room_count; i++)
		strbuf_printf(&rooms, "%s%s", i ? ", " : "", lay->field->rooms[i]->name);
	notes_title(notes, NOTE_MATERIAL,
	            draft_text(draft, "heading.materials-of", {"rooms", rooms.text}));
	materials_add(notes, lay);
	materials_lippage(notes, lay);
	notes_title(notes, NOTE_MATERIAL,
	            draft_text(draft, "heading.order-of", {"rooms", rooms.text}));
	install_steps(notes, lay->field->rooms[0], lay, NOTE_MATERIAL);
}

enum sheet_fit read_first_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct notes *notes = ARENA_NEW(draft->arena, struct notes);
	sheet->is_index = true;
	notes->sheet = sheet;
	if (findings_is_stopped(draft->findings))
		notes_warning(notes, draft_word(draft, "note.stopped"));
	for (int i = 0; i < WHO_COUNT; i++)
		add_questions(notes, WHO[i]);
	if (notes->list.count == 0)
		notes_item(notes, NOTE_WORK, "", draft_word(draft, "question.none"));
	for (size_t i = 0; i < draft->placed->lay_count; i++)
		add_lay(notes, &draft->placed->lays[i]);
	add_sheets(notes);
	cautions_add(notes);
	cautions_add_air(notes);
	add_defaults(notes);
	notes_legend(notes);
	title_band_north(sheet);
	key_plan_draw(sheet, title_band_beside_north(sheet));
	return notes_continue(sheet, notes) ? SHEET_FITS : SHEET_TOO_LARGE;
}
