/* read_first.c - the first sheet: open questions with room for an answer, what was assumed,
 * materials, order of work, cautions, the sheets of the set. */
#include <string.h>

#include "sheets/assumptions.h"
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

/* The id hangs before the text: where that begins with it too, it is told once. */
static const char *without_id(const struct finding *finding)
{
	size_t length = strlen(finding->about);
	const char *rest = finding->text + length;
	if (strncmp(finding->text, finding->about, length) != 0)
		return finding->text;
	return strncmp(rest, ": ", 2) == 0 ? rest + 2 : *rest == ' ' ? rest + 1 : finding->text;
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
		           draft_text(draft, "question.row", {"text", without_id(finding)},
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

static void add_lay(struct notes *notes, const struct placed_lay *lay)
{
	const struct draft *draft = notes->sheet->draft;
	struct strbuf rooms = strbuf_in(draft->arena);
	for (size_t i = 0; i < lay->field->room_count; i++)
		strbuf_printf(&rooms, "%s%s", i ? ", " : "", lay->field->rooms[i]->name);
	notes_title(notes, NOTE_MATERIAL,
	            draft_text(draft, "heading.materials-of", {"rooms", rooms.text}));
	materials_add(notes, lay, NULL);
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
	assumptions_add(notes);
	notes_legend_whole(notes);
	title_band_north(sheet);
	key_plan_draw(sheet, title_band_beside_north(sheet));
	return notes_continue(sheet, notes) ? SHEET_FITS : SHEET_TOO_LARGE;
}
