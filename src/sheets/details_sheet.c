/* details_sheet.c - sections in rows across the sheet, all at one large scale. */
#include "sheets/details.h"
#include "sheets/drawing_scale.h"
#include "sheets/notes.h"
#include "sheets/sheets_of_floor.h"

/* Paper mm, own design. */
static const double GAP = 6, INSET = 4;
/* The smallest scale at which a bond coat still shows as an area. */
static const double LARGE = 2;

static double middle(struct paper_box box)
{
	return (box.x0 + box.x1) / 2;
}

/* Sets details from `first` on in rows at `scale`, the second of a row at the sheet's middle
 * where it can; or only tries to. Gives the first that finds no room. */
static size_t set_details(struct sheet *sheet, const struct details *details, size_t first,
                          double scale, bool is_trial)
{
	struct paper_box box = sheet->drawing;
	double left = box.x0 + INSET, x = left, y = box.y0 + INSET, deep = 0;
	for (size_t i = first; i < details->count; i++) {
		const struct section *section = &details->items[i];
		struct paper_point size = section_size(section, sheet->list, scale);
		if (x > left && x + size.x > box.x1) {
			x = left;
			y += deep + GAP;
			deep = 0;
		}
		if (x + size.x > box.x1 || y + size.y > box.y1)
			return i;
		if (!is_trial)
			section_draw(sheet, section, scale, paper_at(x, y));
		x = fmax(x + size.x + GAP, x > left ? 0 : middle(box));
		deep = fmax(deep, size.y);
	}
	return details->count;
}

/* Sheets that all details take at a scale; 0: one of them fits none. */
static size_t sheets_at(struct sheet *sheet, const struct details *details, double scale)
{
	size_t count = 0;
	for (size_t set = 0, next; set < details->count; set = next, count++) {
		next = set_details(sheet, details, set, scale, true);
		if (next == set)
			return 0;
	}
	return count;
}

/* The scale at which they take the fewest sheets, at 1:2 or larger if they fit there; of two
 * alike the larger; 0: they fit at none. */
static double scale_for(struct sheet *sheet, const struct details *details)
{
	bool inches = sheet->draft->site->inches;
	double best = 0;
	size_t fewest = 0;
	for (size_t i = 0; detail_scale_at(inches, i) > 0; i++) {
		double scale = detail_scale_at(inches, i);
		if (best > 0 && scale > LARGE)
			break;
		size_t sheets = sheets_at(sheet, details, scale);
		if (sheets == 0 || (fewest > 0 && sheets >= fewest))
			continue;
		best = scale;
		fewest = sheets;
	}
	return best;
}

/* What finds no room goes on. */
static bool set_from(struct sheet *sheet, struct details *details)
{
	size_t first = details->next;
	sheet->scale = details->scale;
	sheet->is_section = true;
	details->next = set_details(sheet, details, first, details->scale, false);
	sheet->details = details->next < details->count ? details : NULL;
	return details->next > first || first == details->count;
}

bool details_sheet_continue(struct sheet *sheet, struct details *details)
{
	return set_from(sheet, details);
}

enum sheet_fit details_sheet_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct details *details = ARENA_NEW(draft->arena, struct details);
	struct notes notes = {.sheet = sheet};
	*details = details_of(draft);
	details->scale = scale_for(sheet, details);
	if (!set_from(sheet, details))
		return SHEET_TOO_LARGE;
	notes_heading(&notes, NOTE_WORK, "heading.details");
	notes_item(&notes, NOTE_WORK, NOTE_DASH, draft_word(draft, "detail.about"));
	notes_item(&notes, NOTE_WORK, NOTE_DASH, draft_word(draft, "detail.makers"));
	notes_heading(&notes, NOTE_MATERIAL, "heading.detail-joints");
	for (size_t i = 0; i < details->count; i++) {
		notes_item(&notes, NOTE_MATERIAL, arena_printf(draft->arena, "%zu", i + 1),
		           details->items[i].joints);
		notes_lead(&notes, "joints");
	}
	notes_draw(&notes);
	return SHEET_FITS;
}
