#include "sheets/sheet.h"

#include <math.h>

/* ISO 5457: filing edge and the other three, grid fields, centring marks. */
static const double FILING = 20, MARGIN = 10, GRID_FIELD = 50, GRID_STRIP = 5, GRID_TEXT = 3.5;
static const double CENTRE_MARK = 10;
static const double GUTTER = 2.4; /* clear space between the places of the sheet */

struct sheet *sheet_new(const struct draft *draft, const char *name, const char *title,
                        const char *subject)
{
	const struct paper_size *paper = draft->paper;
	struct sheet *sheet = ARENA_NEW(draft->arena, struct sheet);
	struct paper_box frame = {FILING, MARGIN, paper->width - MARGIN, paper->height - MARGIN};
	double split = frame.x1 - paper->column;
	double floor = frame.y1 - paper->band, under = floor - draft->foot;
	*sheet = (struct sheet){
		.draft = draft,
		.list = list_new(draft->arena, draft->style, draft->text, paper->width,
	                         paper->height),
		.name = name,
		.title = title,
		.subject = subject,
		.frame = frame,
		.drawing = {frame.x0 + GUTTER, frame.y0 + GUTTER, split - GUTTER, under - GUTTER},
		.foot = {frame.x0, under, split, floor},
		.column = {split, frame.y0, frame.x1, frame.y1},
		.band = {frame.x0, floor, split, frame.y1},
	};
	return sheet;
}

void sheet_use(struct sheet *sheet, enum legend_mark mark)
{
	sheet->used |= 1ul << mark;
}

bool sheet_uses(const struct sheet *sheet, enum legend_mark mark)
{
	return (sheet->used & ~sheet->untold) >> mark & 1;
}

static void add_segment(struct sheet *sheet, enum pen pen, double x0, double y0, double x1,
                        double y1)
{
	list_stroke(sheet->list, LAYER_SHEET, pen, NULL,
	            paper_path_segment(sheet->draft->arena, paper_at(x0, y0), paper_at(x1, y1)));
}

/* Letters without I and O. */
static const char *grid_letter(struct arena *arena, int index)
{
	static const char LETTERS[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
	return arena_printf(arena, "%c", LETTERS[index % (int)(sizeof LETTERS - 1)]);
}

static void add_grid_text(struct sheet *sheet, double x, double y, const char *text)
{
	list_text_at(sheet->list, LAYER_SHEET, TEXT_FRAME, NULL, paper_at(x, y + GRID_TEXT / 2),
	             (struct text_place){.cap = GRID_TEXT, .align = ALIGN_MIDDLE}, text);
}

/* Fields of 50 mm counted from the middle of a sheet of `length`; the corner fields take
 * what is over or missing. */
static int grid_count(double length)
{
	return 2 * (int)lround(length / 2 / GRID_FIELD);
}

/* Where field `index` begins, between `from` and `to`. */
static double grid_at(double from, double to, double middle, int index, int count)
{
	if (index == 0)
		return from;
	if (index == count)
		return to;
	return middle + GRID_FIELD * (index - count / 2);
}

static int grid_index(double at, double middle, int count)
{
	int index = (int)floor((at - middle) / GRID_FIELD) + count / 2;
	return index < 0 ? 0 : index < count ? index : count - 1;
}

const char *sheet_zone(const struct draft *draft, struct paper_point at)
{
	double width = draft->paper->width, height = draft->paper->height;
	int column = grid_index(at.x, width / 2, grid_count(width));
	int row = grid_index(at.y, height / 2, grid_count(height));
	return arena_printf(draft->arena, "%s%d", grid_letter(draft->arena, row), column + 1);
}

static void draw_columns(struct sheet *sheet)
{
	struct paper_box f = sheet->frame;
	double width = sheet->draft->paper->width;
	int count = grid_count(width);
	for (int i = 0; i < count; i++) {
		double x0 = grid_at(f.x0, f.x1, width / 2, i, count);
		double x1 = grid_at(f.x0, f.x1, width / 2, i + 1, count);
		const char *text = arena_printf(sheet->draft->arena, "%d", i + 1);
		add_grid_text(sheet, (x0 + x1) / 2, f.y0 - GRID_STRIP / 2, text);
		add_grid_text(sheet, (x0 + x1) / 2, f.y1 + GRID_STRIP / 2, text);
		if (i == 0)
			continue;
		add_segment(sheet, PEN_RULE, x0, f.y0 - GRID_STRIP, x0, f.y0);
		add_segment(sheet, PEN_RULE, x0, f.y1, x0, f.y1 + GRID_STRIP);
	}
}

static void draw_rows(struct sheet *sheet)
{
	struct paper_box f = sheet->frame;
	double height = sheet->draft->paper->height;
	int count = grid_count(height);
	for (int i = 0; i < count; i++) {
		double y0 = grid_at(f.y0, f.y1, height / 2, i, count);
		double y1 = grid_at(f.y0, f.y1, height / 2, i + 1, count);
		const char *text = grid_letter(sheet->draft->arena, i);
		add_grid_text(sheet, f.x0 - GRID_STRIP / 2, (y0 + y1) / 2, text);
		add_grid_text(sheet, f.x1 + GRID_STRIP / 2, (y0 + y1) / 2, text);
		if (i == 0)
			continue;
		add_segment(sheet, PEN_RULE, f.x0 - GRID_STRIP, y0, f.x0, y0);
		add_segment(sheet, PEN_RULE, f.x1, y0, f.x1 + GRID_STRIP, y0);
	}
}

static void draw_centre_marks(struct sheet *sheet)
{
	struct paper_box f = sheet->frame;
	double x = sheet->draft->paper->width / 2, y = sheet->draft->paper->height / 2;
	double inside = CENTRE_MARK - GRID_STRIP;
	add_segment(sheet, PEN_FRAME, x, f.y0 - GRID_STRIP, x, f.y0);
	add_segment(sheet, PEN_FRAME, x, f.y1, x, f.y1 + GRID_STRIP);
	add_segment(sheet, PEN_FRAME, f.x0 - GRID_STRIP, y, f.x0 + inside / 2, y);
	add_segment(sheet, PEN_FRAME, f.x1, y, f.x1 + GRID_STRIP, y);
}

void sheet_draw_frame(struct sheet *sheet)
{
	struct paper_box f = sheet->frame;
	struct arena *arena = sheet->draft->arena;
	list_stroke(sheet->list, LAYER_SHEET, PEN_RULE, NULL,
	            paper_path_box(arena, paper_box_grown(f, GRID_STRIP)));
	list_stroke(sheet->list, LAYER_SHEET, PEN_FRAME, NULL, paper_path_box(arena, f));
	draw_columns(sheet);
	draw_rows(sheet);
	draw_centre_marks(sheet);
	add_segment(sheet, PEN_RULE_HEAVY, sheet->column.x0, sheet->is_open ? sheet->band.y0 : f.y0,
	            sheet->column.x0, f.y1);
}

void sheet_release_band(struct sheet *sheet)
{
	double high = sheet->band.y1 - sheet->band.y0;
	sheet->column.y1 -= high;
	sheet->band = sheet->column;
	sheet->band.y0 = sheet->column.y1;
	sheet->band.y1 = sheet->column.y1 + high;
	sheet->foot.y0 = sheet->foot.y1 = sheet->frame.y1;
	sheet->drawing.y1 = sheet->frame.y1 - GUTTER;
}

void sheet_open(struct sheet *sheet)
{
	sheet->is_open = true;
	sheet->drawing.x1 = sheet->frame.x1 - GUTTER;
	sheet->drawing.y1 = sheet->band.y0 - GUTTER;
}
