#include "sheets/legend.h"

#include "drawing/cloud.h"
#include "drawing/dimension.h"
#include "drawing/symbol.h"

/* Paper mm, own design. */
static const double ROW = 6.8, ROW_TIGHT = 5.6; /* of body text, of a table's */
static const double SWATCH_WIDTH = 13, SWATCH_HEIGHT = 4.6, TEXT_GAP = 2.5;
static const double COLUMN_SPARE = 14;

enum swatch_kind {
	SWATCH_AREA,
	SWATCH_PEN,
	SWATCH_CONTROL,
	SWATCH_ORIGIN,
	SWATCH_FILL,
	SWATCH_STEP,
	SWATCH_READING,
	SWATCH_CLOUD
};

static const struct legend_entry {
	const char *key;
	enum swatch_kind kind;
	enum area area;
	enum pen pen;
} ENTRIES[LEGEND_COUNT] = {
	[LEGEND_FIRST_TILE] = {"legend.first-tile", SWATCH_AREA, AREA_FIRST_TILE, PEN_FIRST_TILE},
	[LEGEND_CONTROL] = {"legend.control", SWATCH_CONTROL, 0, PEN_CONTROL},
	[LEGEND_ORIGIN] = {"legend.origin", SWATCH_ORIGIN, 0, PEN_TICK},
	[LEGEND_OPEN_EDGE] = {"legend.open-edge", SWATCH_PEN, 0, PEN_WALL_OPEN},
	[LEGEND_CUT_TILE] = {"legend.cut-tile", SWATCH_AREA, AREA_CUT_TILE, PEN_CUT},
	[LEGEND_STRIP] = {"legend.strip", SWATCH_AREA, AREA_STRIP, PEN_STRIP},
	[LEGEND_STRIP_PENDING] = {"legend.strip-pending", SWATCH_AREA, AREA_STRIP_PENDING,
                                  PEN_STRIP_PENDING},
	[LEGEND_SOFT_JOINT] = {"legend.soft-joint", SWATCH_PEN, 0, PEN_SOFT_JOINT},
	[LEGEND_SOFT_PENDING] = {"legend.soft-pending", SWATCH_PEN, 0, PEN_JOINT_PENDING},
	[LEGEND_CARRIED_JOINT] = {"legend.carried-joint", SWATCH_PEN, 0, PEN_CARRIED_JOINT},
	[LEGEND_FIELD_JOINT] = {"legend.field-joint", SWATCH_PEN, 0, PEN_MOVEMENT_JOINT},
	[LEGEND_PERIMETER_SEALED] = {"legend.perimeter-sealed", SWATCH_PEN, 0, PEN_PERIMETER_JOINT},
	[LEGEND_COVER] = {"legend.cover", SWATCH_AREA, AREA_COVER, PEN_COVER},
	[LEGEND_CRACK] = {"legend.crack", SWATCH_PEN, 0, PEN_CRACK},
	[LEGEND_CRACK_UNDER] = {"legend.crack-under", SWATCH_PEN, 0, PEN_CRACK_FINE},
	[LEGEND_CRACK_FILL] = {"legend.crack-fill", SWATCH_FILL, 0, PEN_CRACK},
	[LEGEND_CRACK_STEP] = {"legend.crack-step", SWATCH_STEP, 0, PEN_CRACK},
	[LEGEND_CRACK_PENDING] = {"legend.crack-pending", SWATCH_PEN, 0, PEN_CRACK_PENDING},
	[LEGEND_SLAB_JOINT] = {"legend.slab-joint", SWATCH_PEN, 0, PEN_SLAB_JOINT},
	[LEGEND_HOLD] = {"legend.hold", SWATCH_AREA, AREA_HOLD, PEN_HOLD},
	[LEGEND_HOLD_LINE] = {"legend.hold-line", SWATCH_PEN, 0, PEN_HOLD},
	[LEGEND_OBSTACLE] = {"legend.obstacle", SWATCH_AREA, AREA_OBSTACLE, PEN_OBSTACLE},
	[LEGEND_NOT_TILED] = {"legend.not-tiled", SWATCH_AREA, AREA_NOT_TILED, PEN_WALL},
	[LEGEND_READING] = {"legend.reading", SWATCH_READING, 0, PEN_SYMBOL},
	[LEGEND_CHANGE] = {"legend.change", SWATCH_CLOUD, 0, PEN_CLOUD},
};

static void draw_swatch(struct sheet *sheet, struct paper_box box, const struct legend_entry *entry)
{
	struct paper_point middle = paper_at((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2);
	switch (entry->kind) {
	case SWATCH_AREA:
		symbol_swatch_area(sheet->list, box, entry->area, entry->pen);
		break;
	case SWATCH_PEN:
		symbol_swatch_pen(sheet->list, box, entry->pen);
		break;
	case SWATCH_CONTROL:
		symbol_swatch_pen(sheet->list, box, entry->pen);
		symbol_control_end(sheet->list, NULL, middle, paper_at(1, 0));
		break;
	case SWATCH_ORIGIN:
		dimension_origin(sheet->list, middle, NULL);
		break;
	case SWATCH_FILL:
		symbol_swatch_pen(sheet->list, box, entry->pen);
		symbol_fill(sheet->list, NULL,
		            paper_path_segment(sheet->draft->arena, paper_at(box.x0, middle.y),
		                               paper_at(box.x1, middle.y)));
		break;
	case SWATCH_STEP:
		symbol_step(sheet->list, NULL, middle, paper_at(0, 1));
		break;
	case SWATCH_READING:
		symbol_reading(sheet->list, NULL, middle, false);
		break;
	case SWATCH_CLOUD:
		cloud_swatch(sheet->list, LAYER_NOTES, box);
		break;
	}
}

static double row_height(enum text_role role)
{
	return role == TEXT_TABLE ? ROW_TIGHT : ROW;
}

void legend_draw_entry(struct sheet *sheet, enum text_role role, enum legend_mark mark, double x,
                       double y)
{
	const struct legend_entry *entry = &ENTRIES[mark];
	double cap = sheet->draft->style->texts[role].cap;
	double middle = y + row_height(role) / 2;
	struct paper_box swatch = {x, middle - SWATCH_HEIGHT / 2, x + SWATCH_WIDTH,
	                           middle + SWATCH_HEIGHT / 2};
	draw_swatch(sheet, swatch, entry);
	list_text(sheet->list, LAYER_NOTES, role, NULL,
	          paper_at(swatch.x1 + TEXT_GAP, middle + cap / 2), ALIGN_START,
	          draft_word(sheet->draft, entry->key));
}

double legend_row_height(void)
{
	return ROW;
}

/* The marks in use, column by column; each column as wide as its longest text. */
struct legend_plan {
	enum legend_mark marks[LEGEND_COUNT];
	int count, rows, columns;
	double widths[LEGEND_COUNT], width; /* of each column, of all */
};

static struct legend_plan plan_legend(const struct sheet *sheet, struct paper_box box,
                                      enum text_role role)
{
	struct legend_plan plan = {.rows = (int)((box.y1 - box.y0) / row_height(role))};
	for (int mark = 0; mark < LEGEND_COUNT; mark++)
		if (sheet_uses(sheet, (enum legend_mark)mark))
			plan.marks[plan.count++] = (enum legend_mark)mark;
	if (plan.rows < 1)
		return plan;
	plan.columns = (plan.count + plan.rows - 1) / plan.rows;
	for (int i = 0; i < plan.count; i++) {
		const char *text = draft_word(sheet->draft, ENTRIES[plan.marks[i]].key);
		double *width = &plan.widths[i / plan.rows];
		*width = fmax(*width, SWATCH_WIDTH + 2 * TEXT_GAP +
		                              list_text_width(sheet->list, role, text));
	}
	for (int k = 0; k < plan.columns; k++)
		plan.width += plan.widths[k];
	return plan;
}

static bool fits(const struct sheet *sheet, struct paper_box box, enum text_role role)
{
	struct legend_plan plan = plan_legend(sheet, box, role);
	return plan.count == 0 || (plan.rows > 0 && plan.width <= box.x1 - box.x0 + TEXT_GAP);
}

bool legend_fits(const struct sheet *sheet, struct paper_box box)
{
	return fits(sheet, box, TEXT_TABLE);
}

void legend_draw(struct sheet *sheet, struct paper_box box)
{
	enum text_role role = fits(sheet, box, TEXT_BODY) ? TEXT_BODY : TEXT_TABLE;
	struct legend_plan plan = plan_legend(sheet, box, role);
	double spare = fmax(0, box.x1 - box.x0 - plan.width) / fmax(1, plan.columns), x = box.x0;
	for (int i = 0; i < plan.count; i++) {
		if (i > 0 && i % plan.rows == 0)
			x += plan.widths[i / plan.rows - 1] + fmin(spare, COLUMN_SPARE);
		legend_draw_entry(sheet, role, plan.marks[i], x,
		                  box.y0 + row_height(role) * (i % plan.rows));
	}
}
