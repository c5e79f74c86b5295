/* title_band.c - scale bar, north and the reviewer's clear box in the band of a sheet. */
#include "drawing/symbol.h"
#include "sheets/title_block.h"

/* Paper mm, own design. */
static const double INSET = 5, NORTH_RADIUS = 8, BAR_MOST = 56, STAMP_WIDTH = 62, CLEAR = 3;
enum { BAR_FIELDS_LEAST = 2, BAR_FIELDS_MOST = 4 };

/* Field lengths of a scale bar, floor mm: the largest whose bar fits is taken. */
static const double FEET[] = {10 * 3048.0, 5 * 3048.0, 2 * 3048.0, 3048.0, 5 * 304.8, 2 * 304.8,
                              304.8,       152.4,      76.2,       25.4,   12.7,      0};
static const double METRES[] = {10000, 5000, 2000, 1000, 500, 200, 100, 50, 20, 10, 0};

/* The longest field of which at least two fit, and how many of it do. */
static double field_of_bar(const struct sheet *sheet, int *out_count)
{
	const double *steps = sheet->draft->site->inches ? FEET : METRES;
	while (steps[1] > 0 && steps[0] * BAR_FIELDS_LEAST / sheet->scale > BAR_MOST)
		steps++;
	int count = (int)(BAR_MOST * sheet->scale / steps[0]);
	*out_count = count < BAR_FIELDS_MOST ? count : BAR_FIELDS_MOST;
	return steps[0];
}

static void draw_scale_bar(struct sheet *sheet, double x, double y)
{
	int count;
	double field = field_of_bar(sheet, &count);
	const char *marks[BAR_FIELDS_MOST + 1];
	for (int i = 0; i <= count; i++)
		marks[i] = draft_length(sheet->draft, field * i);
	symbol_scale_bar(sheet->list, paper_at(x, y), field, sheet->scale, count, marks);
}

void title_band_north(struct sheet *sheet)
{
	double angle = sheet->draft->site->plan->north_deg;
	struct frame frame = frame_from_deg(angle);
	struct paper_point at = paper_at(sheet->band.x0 + INSET + NORTH_RADIUS + 1,
	                                 sheet->band.y0 + INSET + NORTH_RADIUS + 2);
	symbol_north(sheet->list, at, NORTH_RADIUS, paper_at(frame.cos, -frame.sin),
	             draft_word(sheet->draft, "north.letter"));
}

static void draw_stamp(struct sheet *sheet, struct paper_box box)
{
	double cap = sheet->draft->style->texts[TEXT_FRAME].cap;
	list_stroke(sheet->list, LAYER_SHEET, PEN_RULE, NULL,
	            paper_path_box(sheet->draft->arena, box));
	list_text(sheet->list, LAYER_SHEET, TEXT_FRAME, NULL,
	          paper_at(box.x0 + 2, box.y0 + 2 + cap), ALIGN_START,
	          draft_word(sheet->draft, "stamp.box"));
}

static struct paper_box stamp_box(const struct sheet *sheet)
{
	struct paper_box band = sheet->band;
	return (struct paper_box){band.x1 - STAMP_WIDTH - CLEAR, band.y0 + CLEAR, band.x1 - CLEAR,
	                          band.y1 - CLEAR};
}

/* Where what stands at the left ends: north and scale bar, or north and the plan beside it. */
static double left_end(const struct sheet *sheet)
{
	double beside = sheet->is_index ? 2 * NORTH_RADIUS : 0;
	return sheet->band.x0 + beside + BAR_MOST + 2 * INSET;
}

struct paper_box title_band_middle(const struct sheet *sheet)
{
	struct paper_box band = sheet->band;
	return (struct paper_box){left_end(sheet) + INSET, band.y0 + CLEAR,
	                          stamp_box(sheet).x0 - CLEAR, band.y1 - CLEAR / 2};
}

struct paper_box title_band_beside_north(const struct sheet *sheet)
{
	struct paper_box band = sheet->band;
	return (struct paper_box){band.x0 + 2 * INSET + 2 * NORTH_RADIUS, band.y0 + CLEAR,
	                          left_end(sheet), band.y1 - CLEAR};
}

void title_band_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct paper_box band = sheet->band;
	double left = band.x0 + INSET;
	list_stroke(sheet->list, LAYER_SHEET, PEN_RULE_HEAVY, NULL,
	            paper_path_segment(draft->arena, paper_at(band.x0, band.y0),
	                               paper_at(band.x1, band.y0)));
	draw_stamp(sheet, stamp_box(sheet));
	if (sheet->scale <= 0)
		return;
	if (!sheet->is_section)
		title_band_north(sheet);
	list_paragraph(sheet->list, LAYER_NOTES, TEXT_TABLE,
	               paper_at(left + 2 * NORTH_RADIUS + 8, band.y0 + INSET + 2),
	               BAR_MOST - 2 * NORTH_RADIUS,
	               draft_text(draft, "sheet.original", {"paper", draft->paper->label}));
	draw_scale_bar(sheet, left + 2, band.y1 - INSET - 9);
}
