/* A set of eight crew's sheets, each of a room with some 5,000 visible joints: drawing it against
 * bare Cairo replaying the same lists; what it weighs; and 400 labels on one of its sheets.
 * Nine runs of each, in turn; medians, and ratios of medians. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/strbuf.h"
#include "drawing/finish.h"
#include "sheets/sheet_set.h"
#include "support/bare_cairo.h"
#include "support/measure.h"
#include "support/program.h"
#include "support/rooms.h"

enum { ROOMS = 8, ALONG = 60, COURSES = 80, TILE_LONG = 300, TILE_WIDE = 150 };
enum { COLUMNS = 6, LABELS = 400 };

/* ---- the floor: rooms side by side, running tile, columns, two cracks in each ---- */

static void add_room(struct strbuf *text, int room, int wide, int high)
{
	int x = room * (wide + 2000);
	strbuf_printf(text,
	              "<room id=\"R%d\" name=\"Hall %d\" slab=\"S\"><corners>"
	              "<corner x=\"%d\" y=\"0\"/><corner x=\"%d\" y=\"0\"/>"
	              "<corner x=\"%d\" y=\"%d\"/><corner x=\"%d\" y=\"%d\"/></corners>",
	              room, room + 1, x, x + wide, x + wide, high, x, high);
	for (int i = 0; i < COLUMNS; i++)
		strbuf_printf(text,
		              "<obstacle id=\"R%d.C%d\" kind=\"column\" x=\"%d\" y=\"%d\" "
		              "wide=\"400\" deep=\"400\"/>",
		              room, i, x + wide * (i % 3 + 1) / 4,
		              high * (i / 3 + 1) / 3 + 700 * (i % 2));
	strbuf_add(text, "</room>");
}

static const char *floor_text(struct arena *arena)
{
	int wide = ALONG * (TILE_LONG + 3) + 155, high = COURSES * (TILE_WIDE + 3) + 90;
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<floor version=\"1\" unit=\"mm\"><slab id=\"S\" thickness=\"150\" "
	                  "support=\"ground\" exposure=\"indoor\" placed=\"2026-01-05\"/>");
	for (int i = 0; i < ROOMS; i++)
		add_room(&text, i, wide, high);
	for (int i = 0; i < ROOMS; i++)
		strbuf_printf(&text,
		              "<crack id=\"K%d\" room=\"R%d\" width=\"0.6\"><at x=\"%d\" y=\"0\"/>"
		              "<at x=\"%d\" y=\"%d\"/></crack>",
		              i, i, i * (wide + 2000) + 3000, i * (wide + 2000) + 4100, 5200);
	strbuf_printf(&text,
	              "<tile id=\"T\" kind=\"porcelain\" wide=\"%d\" long=\"%d\" thick=\"9\"/>"
	              "<lay id=\"L\" rooms=\"R0",
	              TILE_WIDE, TILE_LONG);
	for (int i = 1; i < ROOMS; i++)
		strbuf_printf(&text, " R%d", i);
	strbuf_add(&text, "\" tile=\"T\" joint=\"3\" pattern=\"running\"/>"
	                  "<membrane id=\"M\" rooms=\"R0 R1 R2 R3 R4 R5 R6 R7\" kind=\"sheet\" "
	                  "movement=\"3mm\" cover=\"partial\"/></floor>");
	return text.text;
}

static struct draft draft_of(struct arena *arena, const struct placed *placed)
{
	struct diag_list diags = diag_list_in(arena, "bench");
	struct draft draft = {.arena = arena, .placed = placed, .site = placed->site};
	struct style *style = ARENA_NEW(arena, struct style);
	draft.words = words_load(arena, "en", &diags);
	draft.findings = findings_judge(arena, placed, draft.words);
	assert_int_equal(style_embedded(arena, "paper", 0, &diags, style), STATUS_OK);
	assert_int_equal(text_engine_embedded(arena, &draft.text), STATUS_OK);
	draft.style = style;
	draft.paper = paper_size_find("a1");
	return draft;
}

static void draw(struct draft *draft, struct sheet_set *out_set)
{
	static const char *const wanted[] = {"install"};
	struct diag_list diags = diag_list_in(draft->arena, "bench");
	enum status status = sheet_set_draw(draft, wanted, 1, NULL, &diags, out_set);
	diag_print(&diags, stderr);
	assert_int_equal(status, STATUS_OK);
}

/* ---- what there is to draw ---- */

struct work {
	size_t joints; /* between tiles, as drawn: a course is one, a joint across is one */
	size_t limit;  /* courses, columns of joints across, cut pieces, labels */
	size_t strokes, labels, svg_joint_bytes;
};

/* Joints that end on one another are one line by then: each two points are a joint. */
static struct work work_of(const struct draft *draft, const struct sheet_set *set)
{
	struct work work = {0};
	const struct placed_lay *lay = &draft->placed->lays[0];
	for (size_t i = 0; i < lay->tiling->panel_count; i++)
		work.limit += lay->tiling->panels[i].piece_count;
	work.limit += (size_t)ROOMS * (COURSES + 2 * ALONG);
	for (size_t i = 0; i < set->page_count; i++) {
		const struct list *list = set->pages[i].list;
		work.strokes += list_count(list).strokes;
		for (size_t k = 0; k < list->ops.count; k++) {
			const struct op *op = &list->ops.items[k];
			if (op->layer == LAYER_TILE)
				work.joints += op->path.count;
			work.labels += op->kind == OP_TEXT &&
			               (op->layer == LAYER_LABELS || op->layer == LAYER_DIMENSIONS);
		}
	}
	work.limit += work.labels;
	return work;
}

/* ---- 400 labels on one of the sheets ---- */

static struct list *labelled(struct arena *arena, const struct list *of, int count)
{
	struct list *list = list_new(arena, of->style, of->text, of->width, of->height);
	for (size_t i = 0; i < of->ops.count; i++) {
		const struct op *op = &of->ops.items[i];
		if (op->kind == OP_STROKE)
			list_stroke(list, op->layer, op->role.pen, op->element, op->path);
	}
	for (int i = 0; i < count; i++) {
		const char *text = arena_printf(arena, "K%d  0.6 mm", i);
		int row = count > ROOMS * 10 ? 20 : 8;
		struct paper_point at =
			paper_at(of->width * (0.08 + 0.8 * (i % row) / row),
		                 of->height *
		                         (0.08 + 0.84 * (i / row) / ((count + row - 1) / row)));
		list_label(list, &(struct label){.lines = &text,
		                                 .line_count = 1,
		                                 .role = TEXT_TAG,
		                                 .layer = LAYER_LABELS,
		                                 .frame = LABEL_ROUND,
		                                 .where = LABEL_AROUND,
		                                 .a = at,
		                                 .b = at,
		                                 .priority = 5,
		                                 .can_lead = true});
	}
	return list;
}

static double time_labels(const struct list *of, int count, size_t *out_missing)
{
	struct arena *arena = arena_new();
	struct list *list = labelled(arena, of, count);
	double start = measure_seconds();
	struct label_report report =
		list_finish(list, (struct paper_box){20, 10, of->width - 20, of->height - 20});
	double took = measure_seconds() - start;
	*out_missing += report.unplaced;
	arena_free(arena);
	return took;
}

/* ---- in turn ---- */

struct times {
	struct measured drawn, replayed, bare, spread, crowded;
};

/* What the joints between tiles weigh alone: the sheets without all else. */
static void weigh_joints(struct arena *arena, const struct sheet_set *set, size_t *out_pdf,
                         size_t *out_svg)
{
	struct page pages[ROOMS];
	struct list lists[ROOMS];
	struct diag_list diags = diag_list_in(arena, "bench");
	struct bytes pdf;
	*out_svg = 0;
	for (size_t i = 0; i < ROOMS; i++) {
		const struct list *all = set->pages[i].list;
		pages[i] = set->pages[i];
		pages[i].list = &lists[i];
		lists[i] = *all;
		memset(&lists[i].ops, 0, sizeof lists[i].ops);
		for (size_t k = 0; k < all->ops.count; k++)
			if (all->ops.items[k].layer == LAYER_TILE)
				*array_push(arena, &lists[i].ops) = all->ops.items[k];
		*out_svg += canvas_svg(arena, &pages[i]).length;
	}
	assert_int_equal(canvas_pdf(arena, &set->document, pages, ROOMS, &diags, &pdf), STATUS_OK);
	*out_pdf = pdf.length;
}

static void measure(struct draft *draft, struct sheet_set *set, struct times *t)
{
	struct diag_list diags = diag_list_in(draft->arena, "bench");
	size_t missing = 0, pdf_bytes = 0, bare_bytes = 0, svg_bytes = 0;
	for (int i = 0; i < MEASURE_RUNS; i++) {
		struct bytes pdf;
		double start = measure_seconds();
		draw(draft, set);
		t->drawn.runs[i] = measure_seconds() - start;
		start = measure_seconds();
		assert_int_equal(canvas_pdf(draft->arena, &set->document, set->pages,
		                            set->page_count, &diags, &pdf),
		                 STATUS_OK);
		t->replayed.runs[i] = measure_seconds() - start;
		pdf_bytes = pdf.length;
		start = measure_seconds();
		bare_bytes = bare_cairo(set->pages, set->page_count);
		t->bare.runs[i] = measure_seconds() - start;
		t->spread.runs[i] = 0;
		for (size_t k = 0; k < set->page_count; k++)
			t->spread.runs[i] +=
				time_labels(set->pages[k].list, LABELS / ROOMS, &missing);
		t->crowded.runs[i] = time_labels(set->pages[0].list, LABELS, &missing);
	}
	for (size_t i = 0; i < set->page_count; i++)
		svg_bytes += canvas_svg(draft->arena, &set->pages[i]).length;
	struct work work = work_of(draft, set);
	size_t joints_pdf, joints_svg;
	weigh_joints(draft->arena, set, &joints_pdf, &joints_svg);
	double joints = (double)work.joints;
	double bare_time = measured_median(&t->bare), replayed = measured_median(&t->replayed),
	       drawn = measured_median(&t->drawn);
	double spread = measured_median(&t->spread), crowded = measured_median(&t->crowded);
	printf("%zu sheets, %zu visible joints and %zu labels in all\n", set->page_count,
	       work.joints, work.labels);
	printf("strokes: %zu, %.2f per course, column, piece and label\n", work.strokes,
	       (double)work.strokes / (double)work.limit);
	printf("bytes per visible joint: PDF %.1f (bare Cairo %.1f; joints alone %.1f), "
	       "SVG %.1f (joints alone %.1f)\n",
	       (double)pdf_bytes / joints, (double)bare_bytes / joints, (double)joints_pdf / joints,
	       (double)svg_bytes / joints, (double)joints_svg / joints);
	printf("bare Cairo %.1f ms; PDF from the lists %.1f ms, ratio %.2f\n", bare_time * 1e3,
	       replayed * 1e3, replayed / bare_time);
	printf("%d labels placed, as many on each sheet: %.1f ms, ratio %.2f; all on one sheet: "
	       "%.1f ms, ratio %.2f; %zu found no room\n",
	       LABELS, spread * 1e3, spread / bare_time, crowded * 1e3, crowded / bare_time,
	       missing);
	printf("from the placed floor to the lists, labels and all: %.1f ms, ratio %.2f\n",
	       drawn * 1e3, drawn / bare_time);
}

int main(void)
{
	struct arena *arena = arena_new();
	const struct site *site = site_from_text(arena, floor_text(arena));
	const struct placed *placed = placed_from_site(arena, site, rules_for_tests(arena));
	struct draft draft = draft_of(arena, placed);
	struct sheet_set set;
	struct times times;
	measure(&draft, &set, &times);
	arena_free(arena);
	return 0;
}
