#include "specimen/specimen.h"

#include "drawing/cloud.h"
#include "drawing/dimension.h"
#include "drawing/finish.h"
#include "drawing/symbol.h"
#include "sheets/legend.h"
#include "sheets/sheet.h"

/* Paper mm. */
static const double TOP = 36, LEFT = 27, MIDDLE = 142, RIGHT = 278;
static const double PEN_ROW = 6.8, PEN_LENGTH = 42, AREA_WIDE = 36, AREA_HIGH = 12;
static const double AREA_PITCH_X = 44, AREA_PITCH_Y = 19.5, LABEL_GAP = 1.6, SWATCH_INSET = 0.6;
enum { AREA_COLUMNS = 3 };

static void heading(struct sheet *sheet, double x, double y, const char *text)
{
	list_text(sheet->list, LAYER_NOTES, TEXT_STRONG, NULL, paper_at(x, y), ALIGN_START, text);
}

static void caption(struct sheet *sheet, double x, double y, const char *text)
{
	list_text(sheet->list, LAYER_NOTES, TEXT_TABLE, NULL, paper_at(x, y), ALIGN_START, text);
}

static void draw_pens(struct sheet *sheet, struct specimen *specimen)
{
	struct arena *arena = sheet->draft->arena;
	double cap = sheet->draft->style->texts[TEXT_TABLE].cap;
	heading(sheet, LEFT, TOP - 4, "LINES, mm wide");
	for (int pen = 0; pen < PEN_COUNT; pen++) {
		double y = TOP + 2 + pen * PEN_ROW;
		struct paper_box box = {LEFT, y - PEN_ROW / 2, LEFT + PEN_LENGTH, y + PEN_ROW / 2};
		specimen->pens[pen] = box;
		list_stroke(sheet->list, LAYER_SHEET, (enum pen)pen, pen_name((enum pen)pen),
		            paper_path_segment(arena, paper_at(box.x0, y), paper_at(box.x1, y)));
		caption(sheet, box.x1 + 4, y + cap / 2,
		        arena_printf(arena, "%g  %s", sheet->draft->style->pens[pen].width,
		                     pen_name((enum pen)pen)));
	}
}

static void draw_areas(struct sheet *sheet, struct specimen *specimen)
{
	double cap = sheet->draft->style->texts[TEXT_TABLE].cap;
	heading(sheet, MIDDLE, TOP - 4, "AREAS");
	for (int area = 0; area < AREA_COUNT; area++) {
		double x = MIDDLE + area % AREA_COLUMNS * AREA_PITCH_X;
		double y = TOP + area / AREA_COLUMNS * AREA_PITCH_Y;
		struct paper_box box = {x, y, x + AREA_WIDE, y + AREA_HIGH};
		specimen->areas[area] = box;
		list_area(sheet->list, LAYER_SHEET, (enum area)area, area_name((enum area)area),
		          paper_path_box(sheet->draft->arena, box));
		list_stroke(sheet->list, LAYER_SHEET, PEN_RULE, NULL,
		            paper_path_box(sheet->draft->arena,
		                           paper_box_grown(box, SWATCH_INSET)));
		caption(sheet, x, box.y1 + SWATCH_INSET + LABEL_GAP + cap,
		        area_name((enum area)area));
	}
}

static void draw_legend(struct sheet *sheet)
{
	heading(sheet, RIGHT, TOP - 4, "MARKS");
	for (int mark = 0; mark < LEGEND_COUNT; mark++)
		legend_draw_entry(sheet, TEXT_BODY, (enum legend_mark)mark, RIGHT,
		                  TOP - 2 + mark * legend_row_height());
}

static void draw_tag(struct sheet *sheet, enum label_frame frame, double x, double y,
                     const char *text)
{
	const struct label_place place = {.at = {x, y}, .has_leader = true};
	list_label(sheet->list, &(struct label){.lines = &text,
	                                        .line_count = 1,
	                                        .role = TEXT_TAG,
	                                        .layer = LAYER_LABELS,
	                                        .frame = frame,
	                                        .where = LABEL_FIXED,
	                                        .places = &place,
	                                        .place_count = 1,
	                                        .is_dotted = frame == LABEL_PLAIN,
	                                        .a = {x - 26, y + 3},
	                                        .b = {x - 26, y + 3}});
}

/* What stands beside marks: tags with their leaders, and marks that no legend needs. */
static void draw_tags(struct sheet *sheet)
{
	struct list *list = sheet->list;
	double y = TOP + 2 + LEGEND_COUNT * legend_row_height() + 8;
	heading(sheet, RIGHT, y, "TAGS AND SYMBOLS");
	y += 9;
	draw_tag(sheet, LABEL_ROUND, RIGHT + 36, y, "K1  1 mm");
	draw_tag(sheet, LABEL_HEXAGON, RIGHT + 98, y, "J1  6 mm");
	draw_tag(sheet, LABEL_BOX, RIGHT + 36, y + 12, "SOFT JOINT");
	draw_tag(sheet, LABEL_PLAIN, RIGHT + 98, y + 12, "D1  900");
	draw_tag(sheet, LABEL_PLAIN, RIGHT + 36, y + 24, "C1  COLUMN");
	symbol_control_end(list, NULL, paper_at(RIGHT + 74, y + 24), paper_at(1, 0));
	symbol_arrow(list, LAYER_CONTROL, NULL, paper_at(RIGHT + 84, y + 24), paper_at(1, 0), 12);
	symbol_reading(list, NULL, paper_at(RIGHT + 104, y + 24), true);
	cloud_triangle(list, LAYER_NOTES, paper_at(RIGHT + 114, y + 24), "B");
	symbol_north(list, paper_at(RIGHT + 12, y + 44), 6, paper_at(0, -1), "N");
	static const char *const marks[] = {"0", "1000", "2000"};
	symbol_scale_bar(list, paper_at(RIGHT + 36, y + 40), 1000, 50, 2, marks);
}

static void draw_dimensions(struct sheet *sheet)
{
	static const struct point points[] = {{0, 0}, {1500, 0}, {1560, 0}, {4000, 0}};
	static const char *const between[] = {"1500", "60", "2440"};
	static const char *const running[] = {"1500", "1560", "4000"};
	struct arena *arena = sheet->draft->arena;
	double y = TOP + AREA_PITCH_Y * ((AREA_COUNT + AREA_COLUMNS - 1) / AREA_COLUMNS) + 6;
	heading(sheet, MIDDLE, y, "DIMENSIONS");
	struct box window = {0, 0, 4000, 500};
	struct view view =
		view_make(window, 90, 50, (struct paper_box){MIDDLE, y + 2, MIDDLE + 122, y + 14});
	list_stroke(sheet->list, LAYER_SLAB, PEN_WALL, NULL,
	            view_segment(arena, &view, points[0], points[3]));
	struct paper_point foot = view_point(&view, points[0]);
	struct dimension_chain chain = {.points = points,
	                                .count = 4,
	                                .values = between,
	                                .direction = {1, 0},
	                                .through = {foot.x, foot.y + 10},
	                                .has_extensions = true};
	dimension_chain(sheet->list, &view, &chain);
	chain.values = running;
	chain.through.y = foot.y + 24;
	dimension_running(sheet->list, &view, &chain);
}

static void draw_lettering(struct sheet *sheet)
{
	static const enum text_role roles[] = {TEXT_TITLE, TEXT_HEADING, TEXT_BODY, TEXT_TAG,
	                                       TEXT_TABLE};
	double y = 246;
	heading(sheet, MIDDLE, y, "LETTERING, mm high");
	for (size_t i = 0; i < sizeof roles / sizeof *roles; i++) {
		double cap = sheet->draft->style->texts[roles[i]].cap;
		y += cap + 2.6;
		list_text(sheet->list, LAYER_NOTES, roles[i], NULL, paper_at(MIDDLE, y),
		          ALIGN_START,
		          arena_printf(sheet->draft->arena, "%g  %s  12'-6 1/2\"", cap,
		                       text_role_name(roles[i])));
	}
}

struct specimen specimen_draw(struct arena *arena, const struct style *style,
                              struct text_engine *text)
{
	struct draft *draft = ARENA_NEW(arena, struct draft);
	struct diag_list diags = diag_list_in(arena, "specimen");
	struct specimen specimen = {0};
	*draft = (struct draft){.arena = arena,
	                        .style = style,
	                        .text = text,
	                        .words = words_load(arena, "en", &diags),
	                        .paper = paper_size_find("a3")};
	struct sheet *sheet = sheet_new(draft, "specimen", "The drawing language", "");
	list_stroke(sheet->list, LAYER_SHEET, PEN_FRAME, NULL, paper_path_box(arena, sheet->frame));
	list_text(sheet->list, LAYER_NOTES, TEXT_TITLE, NULL, paper_at(LEFT, 22), ALIGN_START,
	          arena_printf(arena, "The drawing language: %s", style->name));
	draw_pens(sheet, &specimen);
	draw_areas(sheet, &specimen);
	draw_dimensions(sheet);
	draw_lettering(sheet);
	draw_legend(sheet);
	draw_tags(sheet);
	list_finish(sheet->list, sheet->frame);
	specimen.list = sheet->list;
	return specimen;
}
