#include "sheets/notes.h"

#include "sheets/legend.h"
#include "sheets/parts.h"
#include "sheets/title_block.h"

void notes_title(struct notes *notes, enum note_group group, const char *text)
{
	*array_push(notes->sheet->draft->arena, &notes->list) =
		(struct note){.kind = NOTE_HEADING, .group = group, .mark = "", .text = text};
}

void notes_heading(struct notes *notes, enum note_group group, const char *key)
{
	notes_title(notes, group, draft_word(notes->sheet->draft, key));
}

void notes_answer(struct notes *notes)
{
	*array_push(notes->sheet->draft->arena, &notes->list) =
		(struct note){.kind = NOTE_ANSWER, .group = NOTE_WORK, .mark = "", .text = ""};
}

void notes_item(struct notes *notes, enum note_group group, const char *mark, const char *text)
{
	*array_push(notes->sheet->draft->arena, &notes->list) =
		(struct note){.kind = NOTE_ITEM, .group = group, .mark = mark, .text = text};
}

void notes_lead(struct notes *notes, const char *target)
{
	notes->list.items[notes->list.count - 1].link = target;
}

void notes_half(struct notes *notes, enum note_group group, const char *mark, const char *text)
{
	*array_push(notes->sheet->draft->arena, &notes->list) =
		(struct note){.kind = NOTE_HALF, .group = group, .mark = mark, .text = text};
}

void notes_warning(struct notes *notes, const char *text)
{
	*array_push(notes->sheet->draft->arena, &notes->list) =
		(struct note){.kind = NOTE_WARNING, .mark = "", .text = text};
}

void notes_missing(struct notes *notes)
{
	const struct sheet *sheet = notes->sheet;
	if (sheet->missing)
		notes_warning(notes, draft_text(sheet->draft, "note.not-shown",
		                                {"labels", sheet->missing}));
}

bool notes_of_parts(struct notes *notes)
{
	const struct sheet *sheet = notes->sheet;
	if (sheet->part == 0)
		return true;
	notes_item(notes, NOTE_WORK, NOTE_DASH, draft_word(sheet->draft, "note.first-part"));
	notes_lead(notes, sheet->parts->list[0].name);
	return false;
}

void notes_legend(struct notes *notes)
{
	struct sheet *sheet = notes->sheet;
	if (!legend_fits(sheet, title_band_middle(sheet)))
		sheet->untold = 1ul << LEGEND_ORIGIN;
	notes_legend_whole(notes);
}

void notes_legend_whole(struct notes *notes)
{
	struct sheet *sheet = notes->sheet;
	if (legend_fits(sheet, title_band_middle(sheet)))
		return;
	notes_heading(notes, NOTE_CAUTION, "heading.legend");
	for (int mark = 0; mark < LEGEND_COUNT; mark++)
		if (sheet_uses(sheet, (enum legend_mark)mark))
			*array_push(sheet->draft->arena, &notes->list) =
				(struct note){.kind = NOTE_SWATCH,
			                      .group = NOTE_CAUTION,
			                      .mark = "",
			                      .text = "",
			                      .swatch = (enum legend_mark)mark};
}
