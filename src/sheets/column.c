#include "sheets/column.h"

/* Distances in mm of paper: own design. */
static const double INSET = 4, INDENT = 7, AFTER_ITEM = 1.4, AFTER_HEADING = 2.2, BEFORE_HEADING = 4;
static const double BOX_INSET = 2.5;

static double cap_of(const struct sheet *sheet, enum text_role role)
{
	return sheet->draft->style->texts[role].cap;
}

static double left_of(const struct sheet *sheet)
{
	return sheet->column.x0 + INSET;
}

static double width_of(const struct sheet *sheet)
{
	return sheet->column.x1 - sheet->column.x0 - 2 * INSET;
}

double column_room(const struct sheet *sheet)
{
	return sheet->column.y1 - sheet->column.y0;
}

void column_space(struct sheet *sheet, double height)
{
	sheet->column.y0 += height;
}

void column_heading(struct sheet *sheet, const char *text)
{
	struct arena *arena = sheet->draft->arena;
	double cap = cap_of(sheet, TEXT_STRONG);
	sheet->column.y0 += BEFORE_HEADING;
	double y = sheet->column.y0 + cap;
	list_text(sheet->list, LAYER_NOTES, TEXT_STRONG, NULL, paper_at(left_of(sheet), y),
	          ALIGN_START, text);
	y += AFTER_HEADING;
	list_stroke(sheet->list, LAYER_NOTES, PEN_RULE, NULL,
	            paper_path_segment(arena, paper_at(left_of(sheet), y),
	                               paper_at(left_of(sheet) + width_of(sheet), y)));
	sheet->column.y0 = y + AFTER_HEADING;
}

void column_paragraph(struct sheet *sheet, enum text_role role, const char *text)
{
	sheet->column.y0 = list_paragraph(sheet->list, LAYER_NOTES, role,
	                                  paper_at(left_of(sheet), sheet->column.y0),
	                                  width_of(sheet), text) +
	                   AFTER_ITEM;
}

static void add_item(struct sheet *sheet, enum text_role mark_role, enum text_role role,
                     const char *mark, double indent, const char *text)
{
	double x = left_of(sheet), y = sheet->column.y0;
	list_text(sheet->list, LAYER_NOTES, mark_role, NULL, paper_at(x, y + cap_of(sheet, role)),
	          ALIGN_START, mark);
	sheet->column.y0 = list_paragraph(sheet->list, LAYER_NOTES, role, paper_at(x + indent, y),
	                                  width_of(sheet) - indent, text) +
	                   AFTER_ITEM;
}

void column_item(struct sheet *sheet, const char *mark, const char *text)
{
	add_item(sheet, TEXT_STRONG, TEXT_BODY, mark, INDENT, text);
}

void column_row(struct sheet *sheet, const char *mark, double indent, const char *text)
{
	add_item(sheet, TEXT_TABLE_HEAD, TEXT_TABLE, mark, indent, text);
}

void column_warning(struct sheet *sheet, const char *text)
{
	double y0 = sheet->column.y0 + AFTER_HEADING;
	double y1 = list_paragraph(sheet->list, LAYER_NOTES, TEXT_STRONG,
	                           paper_at(left_of(sheet) + BOX_INSET, y0 + BOX_INSET),
	                           width_of(sheet) - 2 * BOX_INSET, text) +
	            BOX_INSET - 0.5;
	struct paper_box box = {left_of(sheet), y0, left_of(sheet) + width_of(sheet), y1};
	list_stroke(sheet->list, LAYER_NOTES, PEN_WARNING, NULL,
	            paper_path_box(sheet->draft->arena, box));
	sheet->column.y0 = y1 + AFTER_ITEM;
}
