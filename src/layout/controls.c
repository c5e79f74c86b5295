#include "layout/controls.h"

#include "base/array.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"
#include "layout/control_line.h"

struct making {
	struct arena *arena, *once; /* once: for one candidate */
	const struct tiling *tiling;
	const struct cracks *cracks;
	const struct rules *rules;
	struct controls *controls;
};

/* A whole tile whose corner could be the crossing. */
struct candidate {
	size_t panel;
	struct address at;
	struct point corner;
};

static struct point middle_of(struct box box)
{
	return (struct point){(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2};
}

/* Work goes towards the first doorway; without one towards greater u and v. */
static void set_direction(const struct making *making, const struct control_room *room,
                          struct first_tile *first)
{
	first->towards_u = first->towards_v = true;
	if (room->room->doorway_count == 0)
		return;
	const struct site_doorway *doorway = &room->room->doorways[0];
	struct point exit = frame_in(making->tiling->field->frame,
	                             point_between(doorway->from, doorway->to, 0.5));
	struct point middle = middle_of(room->box);
	first->towards_u = exit.x > middle.x - TOLERANCE_SAME;
	first->towards_v = exit.y > middle.y - TOLERANCE_SAME;
}

/* Where work begins at a tile: at the corner farthest back along u; of an edge across u, the
 * end that lies back along v. */
static bool is_before(const struct first_tile *first, struct point a, struct point b)
{
	double along = first->towards_u ? a.x - b.x : b.x - a.x;
	double across = first->towards_v ? a.y - b.y : b.y - a.y;
	return along < -TOLERANCE_SAME || (along <= TOLERANCE_SAME && across < 0);
}

static struct candidate candidate_at(const struct making *making, const struct first_tile *first,
                                     size_t panel, struct address at)
{
	struct ring ring =
		tile_ref_ring(making->once, making->tiling, (struct tile_ref){panel, at, NULL});
	struct point corner = ring.points[0];
	for (size_t k = 1; k < ring.count; k++)
		if (is_before(first, ring.points[k], corner))
			corner = ring.points[k];
	return (struct candidate){panel, at, corner};
}

static bool is_usable(const struct control_room *room, struct candidate candidate)
{
	return region_holds(&room->clear, candidate.corner);
}

/* The tile of a run whose corner lies nearest to the middle of the room. */
static struct candidate middle_of_run(const struct making *making, const struct control_room *room,
                                      const struct first_tile *first, size_t panel,
                                      const struct tile_run *run)
{
	struct address at = {run->face, run->first, run->j};
	struct candidate start = candidate_at(making, first, panel, at);
	struct point way = point_sub(middle_of(room->box), start.corner);
	struct point a = making->tiling->module->a;
	double steps = nearbyint(point_dot(way, a) / point_dot(a, a));
	at.i += (int)fmin(fmax(steps, 0), run->last - run->first);
	return candidate_at(making, first, panel, at);
}

/* The best that a line across the run, at the edge of one of its tiles, could share. */
static enum control_sharing sharing_across(const struct making *making,
                                           const struct control_room *room, struct candidate middle,
                                           const struct tile_run *run)
{
	enum control_sharing best = SHARING_NONE;
	struct point a = making->tiling->module->a;
	for (int i = run->first; i <= run->last && room->openings.count > 0; i++) {
		struct point at =
			point_add(middle.corner, point_scale(a, (double)(i - middle.at.i)));
		enum control_sharing sharing = control_sharing_of(&room->openings, at, false);
		best = sharing < best ? sharing : best;
	}
	return best;
}

/* The run whose edge makes the best line along u, by the tile in its middle. */
static bool choose_row(const struct making *making, const struct control_room *room,
                       const struct first_tile *first, struct candidate *out_best,
                       struct tile_run *out_run)
{
	struct control_key best = {0};
	bool found = false;
	for (size_t p = 0; p < making->tiling->panel_count; p++) {
		const struct panel *panel = &making->tiling->panels[p];
		for (size_t r = 0; r < panel->run_count; r++) {
			arena_clear(making->once);
			struct candidate candidate =
				middle_of_run(making, room, first, p, &panel->runs[r]);
			if (!is_usable(room, candidate))
				continue;
			struct control_key key =
				control_line_key(making->once, room, candidate.corner, true);
			key.crossing =
				(int)sharing_across(making, room, candidate, &panel->runs[r]);
			if (found && control_key_compare(key, best) >= 0)
				continue;
			found = true;
			best = key;
			*out_best = candidate;
			*out_run = panel->runs[r];
		}
	}
	return found;
}

/* Where a run climbs, the line along u comes before the line along v. */
static int compare_both(struct control_key row_a, struct control_key column_a,
                        struct control_key row_b, struct control_key column_b)
{
	int order = control_key_compare(row_a, row_b);
	return order ? order : control_key_compare(column_a, column_b);
}

/* The tile of the run whose edges make the best lines: along u they are alike where the run
 * is of a course. */
static struct candidate choose_column(const struct making *making, const struct control_room *room,
                                      const struct first_tile *first, struct candidate best,
                                      struct tile_run run)
{
	struct control_key key = control_line_key(making->once, room, best.corner, false);
	struct control_key row = control_line_key(making->once, room, best.corner, true);
	for (int i = run.first; i <= run.last; i++) {
		arena_clear(making->once);
		struct candidate candidate = candidate_at(making, first, best.panel,
		                                          (struct address){run.face, i, run.j});
		if (!is_usable(room, candidate))
			continue;
		struct control_key own =
			control_line_key(making->once, room, candidate.corner, false);
		struct control_key own_row =
			control_line_key(making->once, room, candidate.corner, true);
		if (compare_both(own_row, own, row, key) < 0) {
			key = own;
			row = own_row;
			best = candidate;
		}
	}
	return best;
}

/* True where a tape along the segment touches no wall. */
static bool is_open(const struct control_room *room, struct segment tape)
{
	for (size_t i = 0; i < room->wall_count; i++)
		if (segment_meets(tape, (struct segment){room->walls[i].from, room->walls[i].to}))
			return false;
	return true;
}

/* Whole steps of the largest triangle with its right angle at the crossing, one leg on each
 * line; towards the work where two are equal. */
static void set_square(const struct making *making, const struct control_room *room,
                       struct first_tile *first)
{
	bool inches = making->tiling->field->site->inches;
	double step = rules_figure(making->rules,
	                           inches ? FIGURE_SQUARE_STEP_INCH : FIGURE_SQUARE_STEP_METRIC);
	for (int k = 0; k < 8; k++) {
		bool greater_u = (k & 1) ? !first->towards_u : first->towards_u;
		bool greater_v = (k & 2) ? !first->towards_v : first->towards_v;
		double leg_u = (k & 4) ? 4 : 3, leg_v = (k & 4) ? 3 : 4;
		double u = control_line_ahead(making->arena, room, first->at, true, greater_u);
		double v = control_line_ahead(making->arena, room, first->at, false, greater_v);
		double unit = floor((fmin(u / leg_u, v / leg_v) + TOLERANCE_SAME) / step) * step;
		for (; unit > first->square_side; unit -= step) {
			struct segment tape = {first->at, first->at};
			tape.from.x += (greater_u ? 1 : -1) * leg_u * unit;
			tape.to.y += (greater_v ? 1 : -1) * leg_v * unit;
			if (!is_open(room, tape))
				continue;
			first->square_side = unit;
			first->square_u = tape.from;
			first->square_v = tape.to;
		}
	}
}

static void place_room(struct making *making, const struct site_room *site_room)
{
	struct control_room room = control_room_in(making->arena, making->tiling, making->cracks,
	                                           making->rules, site_room, making->controls);
	struct first_tile first = {.room = site_room};
	struct candidate best = {0};
	struct tile_run run = {0};
	set_direction(making, &room, &first);
	control_share_direction(&room.openings, &first);
	if (!choose_row(making, &room, &first, &best, &run))
		return;
	best = choose_column(making, &room, &first, best, run);
	first.at = best.corner;
	first.tile = best.at;
	first.panel = best.panel;
	set_square(making, &room, &first);
	struct controls *controls = making->controls;
	controls->firsts[controls->first_count++] = first;
	for (int k = 0; k < 2; k++)
		controls->controls[controls->control_count++] =
			control_from_line(making->arena, &room, first.at, k == 0);
}

const struct controls *controls_place(struct arena *arena, const struct tiling *tiling,
                                      const struct cracks *cracks, const struct rules *rules)
{
	size_t rooms = tiling->field->room_count;
	struct controls *controls = ARENA_NEW(arena, struct controls);
	struct making making = {arena, arena_new(), tiling, cracks, rules, controls};
	controls->controls = ARENA_ARRAY(arena, struct control, 2 * rooms);
	controls->firsts = ARENA_ARRAY(arena, struct first_tile, rooms);
	for (size_t r = 0; r < rooms; r++)
		place_room(&making, tiling->field->rooms[r]);
	arena_free(making.once);
	return controls;
}
