#include "sheets/sheet_set.h"

#include <string.h>

#include "drawing/finish.h"
#include "sheets/install.h"
#include "sheets/legend.h"
#include "sheets/slab.h"
#include "sheets/title_block.h"

/* Names of the contract; NULL: not built yet. */
static const struct sheet_kind {
	const char *name;
	const char *title;   /* key of its title */
	const char *subject; /* key of the sentence that describes it */
	bool is_built, is_per_room;
} KINDS[] = {
	{"read-first", NULL, NULL, false, false},
	{"install", "sheet.install", "sheet.install.about", true, true},
	{"slab", "sheet.slab", "sheet.slab.about", true, false},
	{"membrane", NULL, NULL, false, false},
	{"setting-out", NULL, NULL, false, false},
	{"joints", NULL, NULL, false, false},
	{"details", NULL, NULL, false, false},
	{"count", NULL, NULL, false, false},
	{"changes", NULL, NULL, false, false},
};

enum { KIND_COUNT = sizeof KINDS / sizeof KINDS[0] };

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

enum status sheet_set_check(const struct site *site, const char *name, struct diag_list *diags)
{
	const struct sheet_kind *kind = find_kind(diags->arena, site, name);
	if (kind && kind->is_built)
		return STATUS_OK;
	if (kind)
		diag_error(diags, 0, "sheet %s: not built yet, expected install or slab", name);
	else
		diag_error(diags, 0, "sheet %s: no such sheet, expected install, install-ROOM or slab",
		           name);
	return STATUS_INPUT;
}

struct set_builder {
	const struct draft *draft;
	const char *const *wanted;
	size_t wanted_count;
	void (*on_sheet)(const char *name);
	struct diag_list *diags;
	ARRAY_OF(struct sheet *) sheets;
};

static bool is_wanted(const struct set_builder *b, const char *kind, const char *name)
{
	for (size_t i = 0; i < b->wanted_count; i++)
		if (strcmp(b->wanted[i], kind) == 0 || strcmp(b->wanted[i], name) == 0)
			return true;
	return b->wanted_count == 0;
}

static struct sheet *plan_sheet(struct set_builder *b, const struct sheet_kind *kind,
                                const struct site_room *room)
{
	const struct draft *draft = b->draft;
	const char *name = room ? room_sheet(draft->arena, kind, room) : kind->name;
	if (!is_wanted(b, kind->name, name))
		return NULL;
	const char *of = room ? room->name : "";
	struct sheet *sheet = sheet_new(draft, name, draft_text(draft, kind->title, {"room", of}),
	                                draft_text(draft, kind->subject, {"room", of}));
	sheet->room = room;
	*array_push(draft->arena, &b->sheets) = sheet;
	return sheet;
}

static void plan_sheets(struct set_builder *b)
{
	const struct site *site = b->draft->site;
	for (size_t i = 0; i < KIND_COUNT; i++) {
		if (!KINDS[i].is_built)
			continue;
		if (!KINDS[i].is_per_room)
			plan_sheet(b, &KINDS[i], NULL);
		for (size_t k = 0; KINDS[i].is_per_room && k < site->room_count; k++)
			plan_sheet(b, &KINDS[i], &site->rooms[k]);
	}
}

static void finish_sheet(struct set_builder *b, struct sheet *sheet)
{
	title_block_draw(sheet);
	struct paper_box legend = title_band_draw(sheet);
	if (legend_draw(sheet, legend) > 0)
		diag_error(b->diags, 0, "sheet %s: no room for the legend on %s paper", sheet->name,
		           sheet->draft->paper->name);
	struct label_report report = list_finish(sheet->list, sheet->drawing);
	for (size_t i = 0; i < report.unplaced; i++)
		diag_error(b->diags, 0, "sheet %s: no room for the label `%s` on %s paper, expected a larger one",
		           sheet->name, report.missing[i]->lines[0], sheet->draft->paper->name);
}

static void draw_sheet(struct set_builder *b, struct sheet *sheet)
{
	if (b->on_sheet)
		b->on_sheet(sheet->name);
	sheet_draw_frame(sheet);
	title_block_reserve(sheet);
	enum sheet_fit fit = sheet->room ? install_draw(sheet, sheet->room) : slab_draw(sheet);
	if (fit == SHEET_FITS)
		finish_sheet(b, sheet);
	else if (fit == SHEET_NOTES_TOO_LONG)
		diag_error(b->diags, 0, "sheet %s: the notes do not fit %s paper, expected a larger one",
		           sheet->name, sheet->draft->paper->name);
	else
		diag_error(b->diags, 0, "sheet %s: does not fit %s paper%s, expected a larger paper or a smaller scale",
		           sheet->name, sheet->draft->paper->name,
		           sheet->draft->scale > 0 ? " at the scale asked for" : "");
}

static struct page page_of(const struct sheet *sheet)
{
	return (struct page){.name = sheet->name, .title = sheet->title, .about = sheet->subject,
	                     .language = words_language(sheet->draft->words), .list = sheet->list};
}

static struct document document_of(const struct draft *draft)
{
	const char *title = draft->site->plan->title;
	return (struct document){.title = title && *title ? title : draft_word(draft, "sheet.untitled"),
	                         .subject = draft_word(draft, "sheet.subject"),
	                         .creator = "jurystick"};
}

enum status sheet_set_draw(const struct draft *draft, const char *const *wanted,
                           size_t wanted_count, void (*on_sheet)(const char *name),
                           struct diag_list *diags, struct sheet_set *out_set)
{
	struct set_builder b = {draft, wanted, wanted_count, on_sheet, diags, {0}};
	size_t before = diags->diags.count;
	plan_sheets(&b);
	size_t count = b.sheets.count;
	*out_set = (struct sheet_set){.document = document_of(draft), .page_count = count,
	                              .pages = ARENA_ARRAY(draft->arena, struct page, count)};
	for (size_t i = 0; i < count; i++) {
		b.sheets.items[i]->number = i + 1;
		b.sheets.items[i]->count = count;
		draw_sheet(&b, b.sheets.items[i]);
		out_set->pages[i] = page_of(b.sheets.items[i]);
	}
	const char *missing = text_missing(draft->text);
	if (missing)
		diag_error(diags, 0, "the font has no sign for: %s", missing);
	return diags->diags.count == before ? STATUS_OK : STATUS_INPUT;
}
