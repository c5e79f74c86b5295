#include "layout/filling.h"

#include "layout/piece.h"
#include "layout/rows.h"

struct filling {
	struct arena *arena;
	const struct module *module;
	struct panel *panel;
	struct piece_judge judge;
	struct piece_list list;
	ARRAY_OF(struct tile_run) runs;
	struct rows rows;             /* of the face being laid */
	struct piece_face face;       /* being judged */
	const struct row_span **open; /* spans that reach it */
	size_t open_count;
	size_t *near; /* their edges, rising */
};

static void add_run(struct filling *f, int first, int last)
{
	struct tile_run *previous = f->runs.count ? &f->runs.items[f->runs.count - 1] : NULL;
	int face = f->face.at.face, j = f->rows.j;
	if (previous && previous->face == face && previous->j == j && previous->last + 1 == first)
		previous->last = last;
	else
		*array_push(f->arena, &f->runs) = (struct tile_run){face, j, first, last};
	f->panel->whole_count += last - first + 1;
}

/* ---- one face that borders come near ---- */

static void place_face(struct filling *f, int i)
{
	struct piece_face *face = &f->face;
	struct ring home = f->module->faces[face->at.face].ring;
	face->at.i = i;
	face->at.j = f->rows.j;
	struct point by = module_place(f->module, face->at, f->panel->position);
	for (size_t k = 0; k < home.count; k++)
		face->ring.points[k] = point_add(home.points[k], by);
}

static void list_near(struct filling *f)
{
	for (size_t k = 0; k < f->open_count; k++) {
		size_t at = k, edge = f->open[k]->edge;
		for (; at > 0 && f->near[at - 1] > edge; at--)
			f->near[at] = f->near[at - 1];
		f->near[at] = edge;
	}
	f->face.near = f->near;
	f->face.near_count = f->open_count;
}

/* Each border left of the middle of face i changes sides. */
static bool lies_inside(const struct filling *f, int i, bool inside)
{
	for (size_t k = 0; k < f->open_count; k++)
		if (f->open[k]->crosses && f->open[k]->at < i)
			inside = !inside;
	return inside;
}

/* `inside`: of what lies left of all open spans. */
static void judge_face(struct filling *f, int i, bool inside)
{
	place_face(f, i);
	list_near(f);
	f->face.is_inside = lies_inside(f, i, inside);
	f->panel->work.faces++;
	if (piece_judge_face(&f->judge, &f->face, &f->list) == FACE_WHOLE)
		add_run(f, i, i);
}

/* ---- a row ---- */

/* Drops the spans that end before face i; true where an odd number of them changed sides. */
static bool close_behind(struct filling *f, int i)
{
	size_t kept = 0;
	bool changes = false;
	for (size_t k = 0; k < f->open_count; k++) {
		if (f->open[k]->last >= i)
			f->open[kept++] = f->open[k];
		else if (f->open[k]->crosses)
			changes = !changes;
	}
	f->open_count = kept;
	return changes;
}

static void lay_row(struct filling *f)
{
	const struct row_span *next = f->rows.spans, *end = next + f->rows.span_count;
	bool inside = false;
	int i = 0;
	f->open_count = 0;
	f->panel->work.rows++;
	f->panel->work.edges += (long)f->rows.span_count;
	while (next < end || f->open_count > 0) {
		if (f->open_count == 0) {
			if (inside && i < next->first)
				add_run(f, i, next->first - 1);
			i = next->first;
		}
		while (next < end && next->first <= i)
			f->open[f->open_count++] = next++;
		if (close_behind(f, i))
			inside = !inside;
		if (f->open_count > 0)
			judge_face(f, i++, inside);
	}
}

/* ---- a panel ---- */

static void lay_face(struct filling *f, struct arena *scratch, int index)
{
	const struct face *face = &f->module->faces[index];
	const struct lattice lattice = {f->module->a, f->module->b};
	f->face = (struct piece_face){
		.at = {.face = index},
		.ring = ring_copy(scratch, face->ring.points, face->ring.count),
		.area_mm2 = face->area_mm2,
		.length = face->length,
	};
	f->rows = rows_of_face(scratch, lattice, face->ring, f->panel->position, &f->judge.edges,
	                       piece_judge_reach(&f->judge));
	while (rows_next(&f->rows))
		lay_row(f);
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

/* Room for a piece of every face that the border runs through, asked for once. */
static void make_room(struct filling *f)
{
	const struct border_edges *edges = &f->judge.edges;
	double faces = 0, pitch = f->module->tile_width + f->module->joint;
	for (size_t i = 0; i < edges->count; i++) {
		struct point along = point_sub(edges->edges[i].to, edges->edges[i].from);
		faces += 1 + (fabs(along.x) + fabs(along.y)) / pitch;
	}
	f->list.pieces.room = (size_t)faces;
	f->list.pieces.items = ARENA_ARRAY(f->arena, struct tile_piece, f->list.pieces.room);
}

void filling_lay(const struct filling_memory *memory, const struct module *module, double remainder,
                 struct panel *panel)
{
	struct filling f = {.arena = memory->lasting, .module = module, .panel = panel};
	f.judge = piece_judge_in(memory->lasting, memory->panel, memory->face, &panel->ground,
	                         remainder);
	f.open = ARENA_ARRAY(memory->panel, const struct row_span *, f.judge.edges.count);
	f.near = ARENA_ARRAY(memory->panel, size_t, f.judge.edges.count);
	make_room(&f);
	for (size_t i = 0; i < module->face_count; i++)
		lay_face(&f, memory->panel, (int)i);
	sum_up(&f);
	arena_clear(memory->panel);
	arena_clear(memory->face);
}
