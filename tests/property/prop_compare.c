/* Seeded: one crack more in a hall changes what is of that crack, and nothing else; clouds
 * enclose their ground and cover no text. */
#include <string.h>

#include "drawing/cloud.h"
#include "geometry/overlay.h"
#include "support/compared.h"
#include "support/ink.h"
#include "support/program.h"
#include "support/seed.h"

enum { ROUNDS = 25, CLOUD_ROUNDS = 120 };

/* ---- one crack more ---- */

/* A crack of three points somewhere in x0..x1, clear of the walls. */
static const char *random_crack(struct arena *arena, struct seed *seed, const char *id, int x0,
                                int x1)
{
	struct strbuf out = strbuf_in(arena);
	strbuf_printf(&out, "<crack id='%s' width='%d' step='%d'>", id, 1 + seed_below(seed, 2),
	              seed_below(seed, 4) == 0 ? 2 : 0);
	for (int i = 0; i < 3; i++)
		strbuf_printf(&out, "<at x='%d' y='%d'/>", x0 + seed_below(seed, x1 - x0),
		              700 + 900 * i + seed_below(seed, 500));
	strbuf_add(&out, "</crack>");
	return out.text;
}

static bool is_of(const char *id, const char *crack)
{
	size_t length = strlen(crack);
	return strncmp(id, crack, length) == 0 && (id[length] == '\0' || id[length] == '.');
}

/* Control lines and first tile may give way to a hold. */
static bool may_give_way(enum thing_kind kind)
{
	return kind == THING_CONTROL || kind == THING_FIRST_TILE;
}

static void check_things(const struct comparison *c, const char *crack)
{
	bool is_seen = false;
	for (size_t i = 0; i < c->lines[0].difference.things.list.count; i++) {
		const struct thing_change *change = &c->lines[0].difference.things.list.items[i];
		if (may_give_way(change->thing.kind))
			continue;
		if (change->is_gone || !is_of(change->thing.id, crack))
			fail_msg("%s of kind %d has changed", change->thing.id,
			         (int)change->thing.kind);
		is_seen = is_seen || change->thing.kind == THING_CRACK;
	}
	assert_true(is_seen);
}

static void check_ground(struct arena *arena, const struct comparison *c)
{
	struct region ground =
		thing_changes_ground(arena, &c->lines[0].difference.things,
	                             ~(THING_BIT(THING_CONTROL) | THING_BIT(THING_FIRST_TILE)), 1);
	struct box box = region_box(&ground);
	const struct site_crack *crack =
		&c->revised->site->cracks[c->revised->site->crack_count - 1];
	for (size_t i = 0; i < crack->line.count; i++)
		assert_true(region_holds(&ground, crack->line.points[i]));
	assert_true(box.x0 > 4500);
}

static void one_crack_changes_its_own_ground(void **state)
{
	(void)state;
	struct seed seed = seed_start("one_crack_changes_its_own_ground");
	for (int round = 0; round < ROUNDS; round++) {
		struct arena *arena = arena_new();
		/* The old one in the west, the new one in the east: too far to meet. */
		const char *old = random_crack(arena, &seed, "K1", 1000, 2200);
		const char *more = random_crack(arena, &seed, "N7", 6800, 8000);
		const struct comparison *c =
			compared(arena, compared_hall(arena, old),
		                 compared_hall(arena, arena_printf(arena, "%s%s", old, more)));
		assert_int_equal(c->line_count, 1);
		assert_int_equal(compared_only_change(c)->kinds, CHANGE_ADDED);
		check_things(c, "N7");
		check_ground(arena, c);
		arena_free(arena);
	}
}

/* Taken out again, the same ground has changed: there and back. */
static void what_comes_goes(void **state)
{
	(void)state;
	struct seed seed = seed_start("what_comes_goes");
	for (int round = 0; round < ROUNDS; round++) {
		struct arena *arena = arena_new();
		const char *old = random_crack(arena, &seed, "K1", 1000, 8000);
		const char *more = random_crack(arena, &seed, "N7", 1000, 8000);
		const char *few = compared_hall(arena, old),
			   *many = compared_hall(arena, arena_printf(arena, "%s%s", old, more));
		const struct comparison *there = compared(arena, few, many),
					*back = compared(arena, many, few);
		struct region a = thing_changes_ground(arena, &there->total.things, ~0u, 1),
			      b = thing_changes_ground(arena, &back->total.things, ~0u, 1);
		struct region same = overlay_intersection(arena, &a, &b);
		assert_near(region_area(&a), region_area(&same), 1);
		assert_near(region_area(&b), region_area(&same), 1);
		assert_int_equal(there->total.rows.list.count, back->total.rows.list.count);
		arena_free(arena);
	}
}

/* ---- clouds ---- */

static double between(struct seed *seed, double from, double to)
{
	return seed_between(seed, from, to);
}

/* Texts that do not overlap, as a finished sheet has them. */
static size_t add_texts(struct ink *ink, struct seed *seed)
{
	static const char *const words[] = {"K1", "SOFT JOINT 3 mm", "2006", "DO NOT TILE"};
	size_t count = 0;
	struct paper_box boxes[40];
	for (int i = 0; i < 40; i++) {
		struct paper_point at = paper_at(between(seed, 20, 160), between(seed, 25, 130));
		const char *text = words[seed_below(seed, 4)];
		double width = list_text_width(ink->list, TEXT_TAG, text);
		struct paper_box box = {at.x - 2, at.y - 6, at.x + width + 2, at.y + 3};
		bool is_free = true;
		for (size_t k = 0; k < count; k++)
			is_free = is_free && !paper_box_meets(boxes[k], box);
		if (!is_free)
			continue;
		boxes[count++] = box;
		list_text(ink->list, LAYER_LABELS, TEXT_TAG, NULL, at, ALIGN_START, text);
	}
	return count;
}

static struct region random_ground(struct ink *ink, struct seed *seed)
{
	struct point points[4];
	for (int i = 0; i < 4; i++)
		points[i] = (struct point){between(seed, 50, 130), -between(seed, 50, 110)};
	return overlay_band(ink->arena, (struct line){points, 4}, between(seed, 0.2, 4));
}

/* Every stroke and triangle of the layer is clear of every text below it. */
static void check_texts(struct ink *ink, size_t text_count)
{
	for (size_t i = 0; i < ink->list->ops.count; i++) {
		const struct op *op = &ink->list->ops.items[i];
		if (op->kind != OP_STROKE || op->layer != LAYER_CHANGES)
			continue;
		struct paper_path flat = paper_path_flat(ink->arena, op->path);
		for (size_t t = 0; t < text_count; t++) {
			struct paper_box text = ink->list->ops.items[t].box;
			for (size_t l = 0; l < flat.count; l++)
				for (size_t k = 0; k + 1 < flat.lines[l].count; k++) {
					double t0, t1;
					assert_false(paper_box_clip(text, flat.lines[l].points[k],
					                            flat.lines[l].points[k + 1],
					                            &t0, &t1));
				}
		}
	}
}

/* Every point of the ground lies inside a cloud, by the scallops as they are drawn. */
static void check_enclosed(struct ink *ink, const struct region *ground)
{
	for (size_t p = 0; p < ground->count; p++)
		for (size_t k = 0; k < ground->polygons[p].outline.count; k++) {
			struct point at = ground->polygons[p].outline.points[k];
			bool is_inside = false;
			for (size_t i = 0; i < ink->list->ops.count && !is_inside; i++) {
				const struct op *op = &ink->list->ops.items[i];
				if (op->kind != OP_STROKE || op->layer != LAYER_CHANGES ||
				    op->path.lines[0].kind != PAPER_RING)
					continue;
				struct paper_line flat =
					paper_path_flat(ink->arena, op->path).lines[0];
				struct point *ring =
					ARENA_ARRAY(ink->arena, struct point, flat.count);
				for (size_t q = 0; q < flat.count; q++)
					ring[q] =
						(struct point){flat.points[q].x, -flat.points[q].y};
				is_inside = ring_holds((struct ring){ring, flat.count}, at);
			}
			assert_true(is_inside);
		}
}

static size_t count_marks(const struct ink *ink, size_t text_count)
{
	size_t marks = 0;
	for (size_t i = text_count; i < ink->list->ops.count; i++)
		marks += ink->list->ops.items[i].kind == OP_TEXT;
	return marks;
}

static void clouds_enclose_and_cover_no_text(void **state)
{
	(void)state;
	struct seed seed = seed_start("clouds_enclose_and_cover_no_text");
	for (int round = 0; round < CLOUD_ROUNDS; round++) {
		struct ink ink = ink_sheet("paper", 200, 150);
		size_t texts = add_texts(&ink, &seed);
		struct cloud_ground grounds[] = {{"B1", random_ground(&ink, &seed)},
		                                 {"B2", random_ground(&ink, &seed)}};
		cloud_draw(ink.list, grounds, 2, (struct paper_box){10, 10, 190, 140});
		check_texts(&ink, texts);
		check_enclosed(&ink, &grounds[0].region);
		check_enclosed(&ink, &grounds[1].region);
		assert_true(count_marks(&ink, texts) >= 2);
		ink_release(&ink);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(one_crack_changes_its_own_ground),
		cmocka_unit_test(what_comes_goes),
		cmocka_unit_test(clouds_enclose_and_cover_no_text),
	};
	cmocka_set_message_output(CM_OUTPUT_TAP);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
