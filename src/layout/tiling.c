#include "layout/tiling.h"

#include "geometry/tolerance.h"
#include "layout/marks.h"
#include "layout/piece.h"

struct filling {
	struct arena *arena, *once; /* once: for one face */
	const struct module *module;
	struct panel *panel;
	struct piece_judge judge;
	struct piece_list list;
	ARRAY_OF(struct tile_run) runs;
};

static void add_run(struct filling *f, int face, int j, int first, int last)
{
	struct tile_run *previous = f->runs.count ? &f->runs.items[f->runs.count - 1] : NULL;
	if (previous && previous->face == face && previous->j == j && previous->last + 1 == first)
		previous->last = last;
	else
		*array_push(f->arena, &f->runs) = (struct tile_run){face, j, first, last};
	f->panel->whole_count += last - first + 1;
}

/* Between two faces that the border comes near, all faces lie inside or all outside. */
static void fill_between(struct filling *f, struct mark before, struct mark after)
{
	if (before.at.face != after.at.face || before.at.j != after.at.j ||
	    after.at.i - before.at.i < 2)
		return;
	struct address first = {before.at.face, before.at.i + 1, before.at.j};
	struct ring face = module_face_at(f->once, f->module, first, f->panel->position);
	struct point inside = point_between(face.points[0], face.points[face.count / 2], 0.5);
	if (polygon_holds(&f->panel->ground, inside))
		add_run(f, first.face, first.j, first.i, after.at.i - 1);
}

static void judge_marked(struct filling *f, const struct mark *marks, size_t count)
{
	size_t *near = ARENA_ARRAY(f->once, size_t, count);
	size_t near_count = 0;
	for (size_t i = 0; i < count; i++)
		near[near_count++] = marks[i].edge;
	struct address at = marks[0].at;
	struct ring face = module_face_at(f->once, f->module, at, f->panel->position);
	if (piece_judge_face(&f->judge, face, at, near, near_count, &f->list) == FACE_WHOLE)
		add_run(f, at.face, at.j, at.i, at.i);
}

static void sum_up(struct filling *f)
{
	struct panel *panel = f->panel;
	panel->runs = f->runs.items;
	panel->run_count = f->runs.count;
	panel->pieces = f->list.pieces.items;
	panel->piece_count = f->list.pieces.count;
	panel->lost_mm2 = f->list.lost_mm2;
	for (size_t i = 0; i < panel->run_count; i++) {
		const struct tile_run *run = &panel->runs[i];
		panel->tile_mm2 +=
			(run->last - run->first + 1) * f->module->faces[run->face].area_mm2;
	}
	for (size_t i = 0; i < panel->piece_count; i++)
		panel->tile_mm2 += panel->pieces[i].area_mm2;
}

/* Memory for as long as a panel, and for as long as one of its faces. */
struct scratch {
	struct arena *panel, *face;
};

static void fill_panel(struct arena *arena, const struct scratch *scratch,
                       const struct field *field, const struct module *module, struct panel *panel)
{
	struct filling f = {.arena = arena,
	                    .once = scratch->face,
	                    .module = module,
	                    .panel = panel};
	f.judge = piece_judge_in(arena, scratch->face, &panel->ground, field->gap_max - field->gap);
	struct mark_list list = {.arena = scratch->panel};
	for (size_t e = 0; e < f.judge.edges.count; e++)
		marks_add_edge(&list, module, panel->position, f.judge.edges.edges[e].from,
		               f.judge.edges.edges[e].to, piece_judge_reach(&f.judge), e);
	marks_sort(&list);
	const struct mark *marks = list.marks.items;
	for (size_t first = 0, end; first < list.marks.count; first = end) {
		for (end = first + 1;
		     end < list.marks.count && address_is_same(marks[first].at, marks[end].at);)
			end++;
		judge_marked(&f, marks + first, end - first);
		if (end < list.marks.count)
			fill_between(&f, marks[first], marks[end]);
		arena_clear(scratch->face);
	}
	sum_up(&f);
}

static struct panel panel_start(struct arena *arena, const struct field *field,
                                const struct movement_panel *from, size_t number)
{
	struct panel panel = {
		.id = arena_printf(arena, "%s.panel.%zu", field->lay->id, number),
		.part = from->part,
		.ground = from->ground,
		.position = from->position,
	};
	panel.area_mm2 = polygon_area(&panel.ground);
	struct box box = ring_box(panel.ground.outline);
	panel.long_side = fmax(box.x1 - box.x0, box.y1 - box.y0);
	panel.short_side = fmin(box.x1 - box.x0, box.y1 - box.y0);
	return panel;
}

const struct tiling *tiling_place(struct arena *arena, const struct field *field,
                                  const struct module *module, const struct movement *movement)
{
	struct scratch scratch = {arena_new(), arena_new()};
	struct tiling *tiling = ARENA_NEW(arena, struct tiling);
	tiling->field = field;
	tiling->module = module;
	tiling->movement = movement;
	tiling->network = network_from_module(arena, module);
	tiling->panel_count = movement->panel_count;
	tiling->panels = ARENA_ARRAY(arena, struct panel, tiling->panel_count);
	for (size_t i = 0; i < tiling->panel_count; i++) {
		tiling->panels[i] = panel_start(arena, field, &movement->panels[i], i + 1);
		fill_panel(arena, &scratch, field, module, &tiling->panels[i]);
		arena_clear(scratch.panel);
	}
	arena_free(scratch.face);
	arena_free(scratch.panel);
	return tiling;
}
