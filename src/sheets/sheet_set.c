#include "sheets/sheet_set.h"

#include <string.h>

#include "drawing/finish.h"
#include "sheets/changes_sheet.h"
#include "sheets/clouds.h"
#include "sheets/notes.h"
#include "sheets/planned.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/slab.h"
#include "sheets/table.h"
#include "sheets/title_block.h"

#define SHOWS(kind) THING_BIT(THING_##kind)
#define SHOWS_ROOM (SHOWS(WALL) | SHOWS(OBSTACLE) | SHOWS(DOORWAY))
#define SHOWS_TILE (SHOWS(TILE) | SHOWS(CONTROL) | SHOWS(FIRST_TILE))
#define SHOWS_MEMBRANE (SHOWS(PIECE) | SHOWS(COVER) | SHOWS(CRACK))

/* Of compare alone. */
static const char CHANGES[] = "changes";

/* Names of the contract. */
static const struct sheet_kind KINDS[] = {
	{CHANGES, "sheet.changes", "sheet.changes.about", false, false, changes_sheet_draw,
         SHOWS_ROOM | SHOWS_MEMBRANE | SHOWS_TILE | SHOWS(SLAB_JOINT) | SHOWS(READING) |
                 SHOWS(HOLD) | SHOWS(JOINT)},
	{"read-first", "sheet.read-first", "sheet.read-first.about", false, true, read_first_draw,
         0},
	{"install", "sheet.install", "sheet.install.about", true, false, NULL,
         SHOWS_ROOM | SHOWS_TILE | SHOWS_MEMBRANE | SHOWS(HOLD) | SHOWS(JOINT)},
	{"slab", "sheet.slab", "sheet.slab.about", false, false, slab_draw,
         SHOWS_ROOM | SHOWS(CRACK) | SHOWS(SLAB_JOINT) | SHOWS(READING) | SHOWS(HOLD)},
	{"membrane", "sheet.membrane", "sheet.membrane.about", false, false, membrane_draw,
         SHOWS_ROOM | SHOWS_MEMBRANE | SHOWS(HOLD) | SHOWS(CONTROL)},
	{"setting-out", "sheet.setting-out", "sheet.setting-out.about", false, false,
         setting_out_draw, SHOWS_ROOM | SHOWS_TILE | SHOWS(HOLD)},
	{"joints", "sheet.joints", "sheet.joints.about", false, false, joints_sheet_draw,
         SHOWS_ROOM | SHOWS(JOINT) | SHOWS(CONTROL)},
	{"details", "sheet.details", "sheet.details.about", false, false, details_sheet_draw, 0},
	{"count", "sheet.count", "sheet.count.about", false, false, count_sheet_draw, 0},
};

enum { KIND_COUNT = sizeof KINDS / sizeof KINDS[0] };

/* True where a set may have it: the sheet of changes is of compare alone. */
static bool is_offered(const struct sheet_kind *kind, bool compares)
{
	return compares || strcmp(kind->name, CHANGES) != 0;
}

static const char *room_sheet(struct arena *arena, const struct sheet_kind *kind,
                              const struct site_room *room)
{
	return arena_printf(arena, "%s-%s", kind->name, room->id);
}

static const struct sheet_kind *find_kind(struct arena *arena, const struct site *site,
                                          const char *name)
{
	for (size_t i = 0; i < KIND_COUNT; i++) {
		if (strcmp(KINDS[i].name, name) == 0)
			return &KINDS[i];
		for (size_t k = 0; KINDS[i].is_per_room && k < site->room_count; k++)
			if (strcmp(room_sheet(arena, &KINDS[i], &site->rooms[k]), name) == 0)
				return &KINDS[i];
	}
	return NULL;
}

static const char *offered_names(struct arena *arena, bool compares)
{
	struct strbuf list = strbuf_in(arena);
	for (size_t i = 0; i < KIND_COUNT; i++)
		if (is_offered(&KINDS[i], compares))
			strbuf_printf(&list, "%s%s%s", list.length ? ", " : "", KINDS[i].name,
			              KINDS[i].is_per_room ? ", install-ROOM" : "");
	return list.text;
}

enum status sheet_set_check(const struct site *site, bool compares, const char *name,
                            struct diag_list *diags)
{
	const struct sheet_kind *kind = find_kind(diags->arena, site, name);
	const char *expected = offered_names(diags->arena, compares);
	if (kind && is_offered(kind, compares))
		return STATUS_OK;
	if (kind)
		diag_error(diags, 0, "sheet %s: only compare draws it, expected %s", name,
		           expected);
	else
		diag_error(diags, 0, "sheet %s: no such sheet, expected %s", name, expected);
	return STATUS_INPUT;
}

struct set_builder {
	const struct draft *draft;
	const char *const *wanted;
	size_t wanted_count;
	void (*on_sheet)(const char *name);
	struct diag_list *diags;
	ARRAY_OF(struct planned) plans;
	ARRAY_OF(struct contents_row) contents;
	unsigned long used; /* marks of the sheets drawn so far */
};

static bool is_wanted(const struct set_builder *b, const char *kind, const char *name)
{
	for (size_t i = 0; i < b->wanted_count; i++)
		if (strcmp(b->wanted[i], kind) == 0 || strcmp(b->wanted[i], name) == 0)
			return true;
	return b->wanted_count == 0;
}

/* Of a change order the sheets that show a change, where nobody asks for others. */
static bool shows_changes_alone(const struct set_builder *b)
{
	return b->draft->comparison != NULL && b->wanted_count == 0;
}

static void plan_sheet(struct set_builder *b, const struct sheet_kind *kind,
                       const struct site_room *room)
{
	const char *name = room ? room_sheet(b->draft->arena, kind, room) : kind->name;
	bool is_affected = !shows_changes_alone(b) || strcmp(kind->name, CHANGES) == 0 ||
	                   clouds_any(b->draft, (struct cloud_scope){kind->shows, room, NULL});
	if (is_affected && is_wanted(b, kind->name, name))
		*array_push(b->draft->arena, &b->plans) =
			(struct planned){.kind = kind, .room = room, .name = name};
}

static void plan_sheets(struct set_builder *b)
{
	const struct site *site = b->draft->site;
	for (size_t i = 0; i < KIND_COUNT; i++) {
		if (!is_offered(&KINDS[i], b->draft->comparison != NULL))
			continue;
		if (!KINDS[i].is_per_room)
			plan_sheet(b, &KINDS[i], NULL);
		for (size_t k = 0; KINDS[i].is_per_room && k < site->room_count; k++)
			plan_sheet(b, &KINDS[i], &site->rooms[k]);
	}
}

/* What the sheet before had no room for: its notes first, then its details, then its table. */
static bool draw_rest(struct sheet *sheet, const struct sheet *before)
{
	if (before->rest) {
		sheet->more = before->more;
		sheet->details = before->details;
		return notes_continue(sheet, before->rest);
	}
	if (before->details)
		return details_sheet_continue(sheet, before->details);
	size_t first = before->more->next;
	table_draw_sheet(sheet, before->more);
	return before->more->next > first;
}

static size_t sheet_count(const struct set_builder *b)
{
	size_t count = 0;
	for (size_t i = 0; i < b->plans.count; i++)
		count += b->plans.items[i].sheets.count;
	return count;
}

static struct set_facts facts_of(const struct set_builder *b)
{
	size_t count = sheet_count(b);
	return (struct set_facts){.draft = b->draft,
	                          .contents = b->contents.items,
	                          .contents_count = b->contents.count,
	                          .used = b->used,
	                          .left = SHEETS_MOST -
	                                  (count < SHEETS_MOST ? count : SHEETS_MOST)};
}

/* NAME-2 and on: what the sheet before had no room for. */
static struct sheet *draw_next(struct set_builder *b, const struct planned *planned,
                               const struct sheet *before, const char *of, size_t number)
{
	const struct draft *draft = b->draft;
	const char *name = arena_printf(draft->arena, "%s-%zu", planned->name, number);
	const char *title = draft_text(draft, "sheet.continued", {"title", of},
	                               {"number", arena_printf(draft->arena, "%zu", number)});
	bool is_table = !before->rest && !before->details;
	struct sheet *sheet =
		is_table ? planned_table(draft, name, title, before->subject, before->more)
			 : planned_begin(draft, name, title, before->subject);
	if (before->rest)
		sheet_release_band(sheet);
	if (!draw_rest(sheet, before)) {
		diag_error(b->diags, 0,
		           "sheet %s: the notes do not fit %s paper, expected a larger one", name,
		           draft->paper->name);
		sheet->rest = NULL;
		sheet->details = NULL;
		sheet->more = NULL;
	}
	title_band_draw(sheet);
	list_finish(sheet->list, sheet->drawing);
	return sheet;
}

/* The numbers of a kind's sheets, and its title. */
static struct contents_row contents_row(const struct set_builder *b, size_t i)
{
	const struct draft *draft = b->draft;
	const struct planned *planned = &b->plans.items[i];
	size_t parts = planned->part_count;
	const char *text = draft_text(draft, parts > 1 ? "contents.row-parts" : "contents.row",
	                              {"title", planned_title(draft, planned)},
	                              {"count", arena_printf(draft->arena, "%zu", parts)});
	size_t first = 1, count = planned->sheets.count;
	for (size_t k = 0; k < i; k++)
		first += b->plans.items[k].sheets.count;
	const char *numbers = arena_printf(draft->arena, "%zu", first);
	if (count > 1)
		numbers =
			arena_printf(draft->arena, "%zu" NOTE_DASH "%zu", first, first + count - 1);
	return (struct contents_row){planned->name, numbers, text};
}

static void list_contents(struct set_builder *b)
{
	b->contents.count = 0;
	for (size_t i = 0; i < b->plans.count; i++)
		*array_push(b->draft->arena, &b->contents) = contents_row(b, i);
}

static void report_too_large(struct set_builder *b, const struct planned *planned)
{
	diag_error(b->diags, 0,
	           "sheet %s: does not fit %s paper%s, expected larger paper or a smaller scale",
	           planned->name, b->draft->paper->name,
	           b->draft->scale > 0 ? " at the scale asked for" : "");
}

static void add_sheet(struct set_builder *b, struct planned *planned, struct sheet *sheet)
{
	*array_push(b->draft->arena, &planned->sheets) = sheet;
	b->used |= sheet->used;
}

/* All parts, and then what each had no room for; the notes of a floor are of all its parts. */
static void draw_planned(struct set_builder *b, struct planned *planned)
{
	if (b->on_sheet)
		b->on_sheet(planned->name);
	struct set_facts facts = facts_of(b);
	struct planned_sheets drawn = planned_draw(&facts, planned);
	if (drawn.is_too_large)
		report_too_large(b, planned);
	planned->part_count = drawn.count;
	size_t count = 0, number = drawn.count; /* each part keeps its own */
	for (size_t i = 0; i < drawn.count; i++)
		if (!shows_changes_alone(b) ||
		    planned_is_changed(b->draft, planned, drawn.items[i]))
			drawn.items[count++] = drawn.items[i];
	for (size_t i = 0; i < count; i++)
		add_sheet(b, planned, drawn.items[i]);
	for (size_t i = 0; i < count; i++) {
		struct sheet *sheet = drawn.items[i];
		const char *of = planned->room ? sheet->title : planned_title(b->draft, planned);
		while (sheet->rest || sheet->details || sheet->more) {
			sheet = draw_next(b, planned, sheet, of, ++number);
			add_sheet(b, planned, sheet);
		}
	}
}

/* What tells of the whole set is drawn when all else is, and again where the numbers of the
 * sheets after it were made for another count of its own. */
static void draw_last(struct set_builder *b, struct planned *planned)
{
	size_t before = b->diags->diags.count, taken;
	do {
		taken = planned->sheets.count;
		list_contents(b);
		planned->sheets.count = 0;
		draw_planned(b, planned);
	} while (planned->sheets.count > taken && b->diags->diags.count == before);
}

static void draw_all(struct set_builder *b)
{
	for (int last = 0; last <= 1; last++)
		for (size_t i = 0; i < b->plans.count; i++) {
			struct planned *planned = &b->plans.items[i];
			if (planned->kind->explains_all == (last == 1))
				(last ? draw_last : draw_planned)(b, planned);
		}
}

static const char **layer_words(const struct draft *draft)
{
	const char **words = ARENA_ARRAY(draft->arena, const char *, LAYER_COUNT);
	for (int i = 0; i < LAYER_COUNT; i++)
		words[i] = draft_word(draft, arena_printf(draft->arena, "page.layer.%s",
		                                          layer_name((enum layer)i)));
	return words;
}

static struct page page_of(const struct sheet *sheet)
{
	return (struct page){.name = sheet->name,
	                     .title = sheet->title,
	                     .about = sheet->subject,
	                     .language = words_language(sheet->draft->words),
	                     .layers = layer_words(sheet->draft),
	                     .list = sheet->list,
	                     .view = sheet->view.scale > 0 ? &sheet->view : NULL};
}

static struct document document_of(const struct draft *draft)
{
	const char *title = draft->site->plan->title;
	const struct plan_job *job = draft->site->plan->job;
	return (struct document){.title = title && *title ? title
	                                                  : draft_word(draft, "sheet.untitled"),
	                         .subject = draft_word(draft, "sheet.subject"),
	                         .creator = "jurystick",
	                         .date = job && job->date.day ? draft_date(draft, job->date)
	                                                      : NULL};
}

/* In the order of the set; only now each sheet knows its number. */
static struct page *pages_of(const struct set_builder *b)
{
	size_t count = sheet_count(b), number = 0;
	struct page *pages = ARENA_ARRAY(b->draft->arena, struct page, count);
	for (size_t i = 0; i < b->plans.count; i++)
		for (size_t k = 0; k < b->plans.items[i].sheets.count; k++) {
			struct sheet *sheet = b->plans.items[i].sheets.items[k];
			sheet->number = number + 1;
			sheet->count = count;
			title_block_draw(sheet);
			list_sort(sheet->list);
			pages[number++] = page_of(sheet);
		}
	return pages;
}

enum status sheet_set_draw(const struct draft *draft, const char *const *wanted,
                           size_t wanted_count, void (*on_sheet)(const char *name),
                           struct diag_list *diags, struct sheet_set *out_set)
{
	struct set_builder b = {.draft = draft,
	                        .wanted = wanted,
	                        .wanted_count = wanted_count,
	                        .on_sheet = on_sheet,
	                        .diags = diags};
	size_t before = diags->diags.count;
	plan_sheets(&b);
	draw_all(&b);
	*out_set = (struct sheet_set){.document = document_of(draft), .pages = pages_of(&b)};
	out_set->page_count = sheet_count(&b);
	if (out_set->page_count > SHEETS_MOST)
		diag_error(diags, 0,
		           "%zu sheets, expected %d at the most: larger paper or a smaller scale",
		           out_set->page_count, SHEETS_MOST);
	const char *missing = text_missing(draft->text);
	if (missing)
		diag_error(diags, 0, "the font has no sign for: %s", missing);
	return diags->diags.count == before ? STATUS_OK : STATUS_INPUT;
}
