/* Seeded: on whole sheets of a change order no cloud and no triangle covers a text, all that
 * has changed is enclosed, and what has not is not. */
#include <string.h>

#include "geometry/overlay.h"
#include "sheets/sheet_set.h"
#include "support/compared.h"
#include "support/program.h"
#include "support/seed.h"

enum { ROUNDS = 8 };

struct order {
	struct arena *arena;
	const struct comparison *comparison;
	struct sheet_set set;
};

static struct order draw(const struct comparison *comparison, struct arena *arena)
{
	static struct diag_list diags;
	struct order order = {.arena = arena, .comparison = comparison};
	struct style *style = ARENA_NEW(arena, struct style);
	diags = diag_list_in(arena, "test");
	assert_int_equal(style_embedded(arena, "paper", 0, &diags, style), STATUS_OK);
	struct draft draft = {.arena = arena,
	                      .placed = comparison->revised->placed,
	                      .site = comparison->revised->site,
	                      .findings = comparison->revised->findings,
	                      .words = compared_words(arena),
	                      .style = style,
	                      .paper = paper_size_find("a3"),
	                      .comparison = comparison};
	assert_int_equal(text_engine_embedded(arena, &draft.text), STATUS_OK);
	assert_int_equal(sheet_set_draw(&draft, NULL, 0, NULL, &diags, &order.set), STATUS_OK);
	return order;
}

static bool is_cloud(const struct op *op)
{
	return op->kind == OP_STROKE && op->layer == LAYER_CHANGES;
}

static bool covers(struct arena *arena, const struct op *stroke, struct paper_box text)
{
	struct paper_path flat = paper_path_flat(arena, stroke->path);
	double t0, t1;
	for (size_t l = 0; l < flat.count; l++)
		for (size_t k = 0; k + 1 < flat.lines[l].count; k++)
			if (paper_box_clip(text, flat.lines[l].points[k],
			                   flat.lines[l].points[k + 1], &t0, &t1))
				return true;
	return false;
}

/* The text in a triangle is the triangle's own. */
static void check_texts(struct arena *arena, const struct page *page)
{
	const struct list *list = page->list;
	for (size_t i = 0; i < list->ops.count; i++) {
		if (!is_cloud(&list->ops.items[i]))
			continue;
		for (size_t k = 0; k < list->ops.count; k++) {
			const struct op *text = &list->ops.items[k];
			if (text->kind != OP_TEXT || text->layer == LAYER_CHANGES)
				continue;
			if (covers(arena, &list->ops.items[i], text->box))
				fail_msg("%s: a cloud covers `%s`", page->name, text->text);
		}
	}
}

static size_t count_of(const struct page *page, enum op_kind kind)
{
	size_t count = 0;
	for (size_t i = 0; i < page->list->ops.count; i++)
		count += page->list->ops.items[i].layer == LAYER_CHANGES &&
		         page->list->ops.items[i].kind == kind;
	return count;
}

static const struct page *find_page(const struct order *order, const char *name)
{
	for (size_t i = 0; i < order->set.page_count; i++)
		if (strcmp(order->set.pages[i].name, name) == 0)
			return &order->set.pages[i];
	return NULL;
}

/* Rings that are drawn round some of the element's own lines. */
static bool encloses(struct arena *arena, const struct page *page, const char *element)
{
	bool is_seen = false;
	for (size_t i = 0; i < page->list->ops.count; i++) {
		const struct op *op = &page->list->ops.items[i];
		bool is_its = op->kind == OP_STROKE && op->element != NULL &&
		              op->layer == LAYER_CRACKS && strcmp(op->element, element) == 0;
		if (!is_its)
			continue;
		is_seen = true;
		struct paper_point at = op->path.lines[0].points[0];
		bool is_inside = false;
		for (size_t k = 0; k < page->list->ops.count && !is_inside; k++) {
			const struct op *cloud = &page->list->ops.items[k];
			if (!is_cloud(cloud) || cloud->path.lines[0].kind != PAPER_RING)
				continue;
			struct paper_line flat = paper_path_flat(arena, cloud->path).lines[0];
			struct point *ring = ARENA_ARRAY(arena, struct point, flat.count);
			for (size_t q = 0; q < flat.count; q++)
				ring[q] = (struct point){flat.points[q].x, flat.points[q].y};
			is_inside = ring_holds((struct ring){ring, flat.count},
			                       (struct point){at.x, at.y});
		}
		if (!is_inside)
			return false;
	}
	return is_seen;
}

static const char *random_crack(struct arena *arena, struct seed *seed, const char *id, int x0)
{
	struct strbuf out = strbuf_in(arena);
	strbuf_printf(&out, "<crack id='%s' width='%d' step='%d'>", id, 1 + seed_below(seed, 4),
	              seed_below(seed, 4) == 0 ? 2 : 0);
	for (int i = 0; i < 3; i++)
		strbuf_printf(&out, "<at x='%d' y='%d'/>", x0 + seed_below(seed, 1200),
		              700 + 900 * i + seed_below(seed, 500));
	strbuf_add(&out, "</crack>");
	return out.text;
}

static void whole_sheets(void **state)
{
	(void)state;
	struct seed seed = seed_start("whole_sheets");
	for (int round = 0; round < ROUNDS; round++) {
		struct arena *arena = arena_new();
		const char *old = random_crack(arena, &seed, "K1", 1000);
		const char *more = random_crack(arena, &seed, "N7", 6600);
		struct order order =
			draw(compared(arena, compared_hall(arena, old),
		                      compared_hall(arena, arena_printf(arena, "%s%s", old, more))),
		             arena);
		const struct page *slab = find_page(&order, "slab");
		assert_non_null(slab);
		assert_non_null(find_page(&order, "changes"));
		assert_null(find_page(&order, "details"));
		for (size_t i = 0; i < order.set.page_count; i++)
			check_texts(arena, &order.set.pages[i]);
		assert_int_equal(count_of(slab, OP_TEXT), 1);
		assert_true(encloses(arena, slab, "N7"));
		assert_false(encloses(arena, slab, "K1"));
		arena_free(arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(whole_sheets)};
	cmocka_set_message_output(CM_OUTPUT_TAP);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
