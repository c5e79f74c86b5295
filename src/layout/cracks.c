#include "layout/cracks.h"

#include "base/array.h"
#include "geometry/line.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "layout/crack_facts.h"
#include "layout/crack_run.h"
#include "layout/origin.h"

struct making {
	struct arena *arena;
	const struct tiling *tiling;
	const struct rules *rules;
	const struct crack_lot *lots; /* of the site's cracks; NULL: none */
	struct cracks *cracks;
	struct box *boxes; /* of each crack: its runs and its crossed cells */
	size_t *leaders;   /* of each crack: a crack of its group, itself at the end */
};

static void add_crossed(const struct making *making, struct placed_crack *placed)
{
	ARRAY_OF(struct tile_ref) crossed = {0};
	for (size_t r = 0; r < placed->run_count; r++) {
		size_t count;
		const struct tile_ref *tiles =
			crossed_by_line(making->arena, making->tiling, placed->runs[r],
		                        placed->reach, &count);
		for (size_t k = 0; k < count; k++)
			*array_push(making->arena, &crossed) = tiles[k];
	}
	placed->crossed = crossed.items;
	placed->crossed_count = tile_refs_unique(crossed.items, crossed.count);
}

/* A joint that is relocated was judged when it was agreed upon. */
static struct crack_verdict verdict_on(const struct making *making, const struct site_crack *crack)
{
	if (crack->joint)
		return (struct crack_verdict){
			.state = CRACK_ISOLATE,
			.causes = {{.rule = rules_rule(making->rules, RULE_JOINT_RELOCATED),
		                    .measured = crack->width}},
			.cause_count = 1,
		};
	struct crack_facts facts = crack_facts_of(making->arena, making->tiling->field, crack);
	return crack_rule_judge(making->rules, &facts);
}

static const struct crack_lot *lot_of(const struct making *making, const struct placed_crack *crack)
{
	const struct site *site = making->tiling->field->site;
	return making->lots && !crack->crack->joint ? &making->lots[crack->crack - site->cracks]
	                                            : NULL;
}

static void place_crack(const struct making *making, const struct site_crack *crack)
{
	struct arena *arena = making->arena;
	const struct field *field = making->tiling->field;
	struct placed_crack placed = {.crack = crack, .id = crack->id};
	placed.runs = crack_runs(arena, field, crack, &placed.run_count);
	if (placed.run_count == 0)
		return;
	placed.origin = origin_of_crack(arena, field, crack);
	placed.reach = crack->width / 2 + crack->wander;
	add_crossed(making, &placed);
	placed.verdict = verdict_on(making, crack);
	placed.state = placed.verdict.state;
	placed.pending = placed.verdict.pending;
	const struct crack_lot *lot = lot_of(making, &placed);
	if (lot) {
		placed.state = crack_state_worse(placed.state, lot->state);
		placed.pending = placed.pending || lot->pending;
	}
	making->cracks->cracks[making->cracks->crack_count++] = placed;
}

/* Two cracks that end on either side of a carried joint do not meet: panel by panel. */
static bool runs_meet(const struct making *making, const struct placed_crack *a,
                      const struct placed_crack *b)
{
	for (size_t i = 0; i < a->run_count; i++)
		for (size_t k = 0; k < b->run_count; k++) {
			if (line_gap(a->runs[i], b->runs[k]) >= TOLERANCE_WHOLE)
				continue;
			size_t ones, others;
			const struct panel_line *one =
				panel_lines(making->arena, making->tiling, a->runs[i], &ones);
			const struct panel_line *other =
				panel_lines(making->arena, making->tiling, b->runs[k], &others);
			for (size_t m = 0; m < ones; m++)
				for (size_t n = 0; n < others; n++)
					if (one[m].panel == other[n].panel &&
					    line_gap(one[m].line, other[n].line) < TOLERANCE_WHOLE)
						return true;
		}
	return false;
}

static struct box box_of(const struct making *making, const struct placed_crack *crack)
{
	struct box box = box_empty();
	for (size_t r = 0; r < crack->run_count; r++)
		for (size_t k = 0; k < crack->runs[r].count; k++)
			box = box_with(box, crack->runs[r].points[k]);
	for (size_t t = 0; t < crack->crossed_count; t++) {
		struct tile_ref tile = crack->crossed[t];
		struct ring cell = tile_ref_cell(making->arena, making->tiling, tile);
		for (size_t k = 0; k < cell.count; k++)
			box = box_with(box, cell.points[k]);
	}
	return box_grown(box, TOLERANCE_WHOLE);
}

static bool belong_together(const struct making *making, const struct placed_crack *a,
                            const struct placed_crack *b)
{
	return crossed_touch(making->arena, making->tiling, a->crossed, a->crossed_count,
	                     b->crossed, b->crossed_count) ||
	       runs_meet(making, a, b);
}

static size_t leader_of(const struct making *making, size_t crack)
{
	while (making->leaders[crack] != crack)
		crack = making->leaders[crack];
	return crack;
}

/* The first crack in document order leads. */
static bool is_one_lot(const struct making *making, const struct placed_crack *a,
                       const struct placed_crack *b)
{
	const struct crack_lot *one = lot_of(making, a), *other = lot_of(making, b);
	return one && other && one->first == other->first;
}

static void lead(struct making *making)
{
	const struct cracks *cracks = making->cracks;
	making->leaders = ARENA_ARRAY(making->arena, size_t, cracks->crack_count);
	making->boxes = ARENA_ARRAY(making->arena, struct box, cracks->crack_count);
	for (size_t b = 0; b < cracks->crack_count; b++) {
		making->leaders[b] = b;
		making->boxes[b] = box_of(making, &cracks->cracks[b]);
		for (size_t a = 0; a < b; a++) {
			size_t one = leader_of(making, a), other = leader_of(making, b);
			const struct placed_crack *p = &cracks->cracks[a], *q = &cracks->cracks[b];
			bool are_near = box_meets(making->boxes[a], making->boxes[b]);
			if (one == other || !(is_one_lot(making, p, q) ||
			                      (are_near && belong_together(making, p, q))))
				continue;
			making->leaders[one > other ? one : other] = one < other ? one : other;
		}
	}
}

static const char *lot_id(const struct making *making, const struct placed_crack *crack)
{
	const struct crack_lot *lot = lot_of(making, crack);
	return lot ? making->tiling->field->site->cracks[lot->first].id : crack->id;
}

static void add_member(struct making *making, struct crack_group *group, size_t index)
{
	struct placed_crack *crack = &making->cracks->cracks[index];
	crack->group = (size_t)(group - making->cracks->groups);
	if (group->crack_count == 0) {
		group->id = crack->id;
		group->origin = crack->origin;
		group->lot = lot_id(making, crack);
		group->cracks = ARENA_ARRAY(making->arena, size_t, making->cracks->crack_count);
		group->state = crack->state;
	}
	group->cracks[group->crack_count++] = index;
	group->state = crack_state_worse(group->state, crack->state);
	group->pending = group->pending || crack->pending;
}

static struct region ground_of_group(const struct making *making, const struct crack_group *group)
{
	ARRAY_OF(struct tile_ref) tiles = {0};
	for (size_t k = 0; k < group->crack_count; k++) {
		const struct placed_crack *crack = &making->cracks->cracks[group->cracks[k]];
		for (size_t t = 0; t < crack->crossed_count; t++)
			*array_push(making->arena, &tiles) = crack->crossed[t];
	}
	size_t count = tile_refs_unique(tiles.items, tiles.count);
	return crossed_ground(making->arena, making->tiling, tiles.items, count);
}

static void finish_group(const struct making *making, struct crack_group *group)
{
	if (group->state == CRACK_HOLD)
		group->pending = false; /* nothing is drawn there that could be built */
	for (size_t k = 0; k < group->crack_count; k++) {
		making->cracks->cracks[group->cracks[k]].state = group->state;
		making->cracks->cracks[group->cracks[k]].pending = group->pending;
	}
	group->crossed = ground_of_group(making, group);
}

static void make_groups(struct making *making)
{
	struct cracks *cracks = making->cracks;
	size_t *numbers = ARENA_ARRAY(making->arena, size_t, cracks->crack_count);
	cracks->groups = ARENA_ARRAY(making->arena, struct crack_group, cracks->crack_count);
	lead(making);
	for (size_t c = 0; c < cracks->crack_count; c++) {
		size_t leader = leader_of(making, c);
		if (leader == c)
			numbers[c] = cracks->group_count++;
		add_member(making, &cracks->groups[numbers[leader]], c);
	}
	for (size_t g = 0; g < cracks->group_count; g++)
		finish_group(making, &cracks->groups[g]);
}

static void add_hold(const struct making *making, size_t index)
{
	const struct crack_group *group = &making->cracks->groups[index];
	double round = rules_figure(making->rules, FIGURE_HOLD_TILE_WIDTHS) *
	               making->tiling->module->tile_width;
	ARRAY_OF(struct hold_line) lines = {0};
	for (size_t k = 0; k < group->crack_count; k++) {
		const struct placed_crack *crack = &making->cracks->cracks[group->cracks[k]];
		for (size_t r = 0; r < crack->run_count; r++)
			*array_push(making->arena, &lines) =
				(struct hold_line){crack->runs[r], crack->reach + round};
	}
	struct hold hold = hold_round_lines(making->arena, making->tiling, lines.items, lines.count,
	                                    making->cracks->holds, making->cracks->hold_count);
	hold.id = arena_printf(making->arena, "%s.hold", group->origin);
	hold.group = index;
	making->cracks->holds[making->cracks->hold_count++] = hold;
}

const struct cracks *cracks_place(struct arena *arena, const struct tiling *tiling,
                                  const struct rules *rules, const struct crack_lot *lots)
{
	const struct field *field = tiling->field;
	const struct site *site = field->site;
	struct cracks *cracks = ARENA_NEW(arena, struct cracks);
	struct making making = {
		.arena = arena, .tiling = tiling, .rules = rules, .lots = lots, .cracks = cracks};
	cracks->cracks =
		ARENA_ARRAY(arena, struct placed_crack, site->crack_count + field->relocated_count);
	for (size_t c = 0; c < site->crack_count; c++)
		place_crack(&making, &site->cracks[c]);
	for (size_t c = 0; c < field->relocated_count; c++)
		place_crack(&making, &field->relocated[c]);
	make_groups(&making);
	cracks->holds = ARENA_ARRAY(arena, struct hold, cracks->group_count);
	for (size_t g = 0; g < cracks->group_count; g++)
		if (cracks->groups[g].state == CRACK_HOLD)
			add_hold(&making, g);
	return cracks;
}

bool placed_crack_is_filled(const struct placed_crack *crack, const struct rules *rules)
{
	return crack->state == CRACK_ISOLATE &&
	       rule_is_raised(rules_rule(rules, RULE_CRACK_FILL), crack->crack->width);
}

struct region cracks_held_ground(struct arena *arena, const struct cracks *cracks)
{
	struct region *holds = ARENA_ARRAY(arena, struct region, cracks->hold_count);
	for (size_t h = 0; h < cracks->hold_count; h++)
		holds[h] = cracks->holds[h].region;
	return overlay_union_all(arena, holds, cracks->hold_count);
}
