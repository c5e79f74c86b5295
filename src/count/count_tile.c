/* count_tile.c - ground and tile: laid, cut, bought, held; edge profiles. */
#include <math.h>
#include <string.h>

#include "count/counting.h"
#include "count/cuts.h"
#include "count/held.h"
#include "count/offcuts.h"
#include "count/room_shares.h"
#include "count/room_tiles.h"
#include "count/totals.h"
#include "units/length.h"
#include "units/number.h"

/* Whole tiles of one kind inside the holds. */
static long held_whole_of(const struct placed_lay *lay, int tile)
{
	long held = 0;
	for (size_t p = 0; lay->cracks->hold_count > 0 && p < lay->tiling->panel_count; p++) {
		const struct panel *panel = &lay->tiling->panels[p];
		for (size_t r = 0; r < panel->run_count; r++) {
			struct tile_run run = panel->runs[r];
			if (lay->module->faces[run.face].tile != tile)
				continue;
			for (int i = run.first; i <= run.last; i++)
				held += held_tile(lay, p, (struct address){run.face, i, run.j},
				                  NULL);
		}
	}
	return held;
}

/* Whole tiles of one kind outside the holds; a lay of one kind has its total. */
static long whole_of(const struct placed_lay *lay, int tile)
{
	long whole = 0;
	if (lay->field->lay->tile_count == 1)
		return tile_total(lay).whole;
	for (size_t p = 0; p < lay->tiling->panel_count; p++) {
		const struct panel *panel = &lay->tiling->panels[p];
		for (size_t r = 0; r < panel->run_count; r++)
			if (lay->module->faces[panel->runs[r].face].tile == tile)
				whole += panel->runs[r].last - panel->runs[r].first + 1;
	}
	return whole - held_whole_of(lay, tile);
}

/* Named apart, so that nobody adds it twice. */
static long add_spare(struct counting *c, enum count_kind kind, enum figure figure,
                      const char *where, long laid)
{
	double share = counting_figure(c, figure);
	struct count_row *row =
		counting_packages(c, kind, where, "each", (double)laid, 0, 1 / share);
	if (row == NULL)
		return 0;
	counting_how(c, row, {"share", counting_percent(c, share)});
	return (long)row->amount;
}

/* Room by room. One kind in one room is what the lay has, whatever its size. */
static void add_laid(struct counting *c, const struct placed_lay *lay, int index, long whole,
                     long pieces)
{
	const struct field *field = lay->field;
	const char *tile = field->lay->tiles[index]->id;
	const struct room_tiles only = {field->rooms[0], whole, pieces, tile_total(lay).tile_mm2};
	const struct room_tiles *rooms = field->room_count == 1 && field->lay->tile_count == 1
	                                         ? &only
	                                         : room_tiles_of(c->arena, lay, index);
	for (size_t i = 0; i < field->room_count; i++)
		counting_number(c, COUNT_TILE_WHOLE, rooms[i].room->id, rooms[i].whole);
	for (size_t i = 0; i < field->room_count; i++)
		counting_number(c, COUNT_TILE_CUT, rooms[i].room->id, rooms[i].cut);
	for (size_t i = 0; i < field->room_count; i++)
		if (rooms[i].tile_mm2 > 0)
			counting_area(c, COUNT_TILE_LAID, rooms[i].room->id, rooms[i].tile_mm2)
				->element = tile;
}

static void add_bought(struct counting *c, const struct placed_lay *lay, int index,
                       const char *where)
{
	const struct plan_tile *tile = lay->field->lay->tiles[index];
	double kerf = counting_figure(c, FIGURE_SAW_KERF);
	struct offcut_total cut = offcuts_pair(lay, index, kerf);
	long whole = whole_of(lay, index), laid = whole + cut.tiles;
	add_laid(c, lay, index, whole, cut.pieces);
	struct count_row *row = counting_number(c, COUNT_TILE_FOR_CUTS, where, cut.tiles);
	if (row != NULL)
		counting_how(c, row, {"tile", tile->id}, {"kerf", counting_width(c, kerf)},
		             {"bound", arena_printf(c->arena, "%ld", cut.bound)});
	long bought = laid;
	bought += add_spare(c, COUNT_TILE_BREAKAGE, FIGURE_TILE_BREAKAGE, where, laid);
	bought += add_spare(c, COUNT_TILE_ATTIC, FIGURE_TILE_ATTIC, where, laid);
	row = counting_number(c, COUNT_TILE_BOUGHT, where, bought);
	if (row == NULL)
		return;
	row->element = tile->id;
	counting_how(c, row, {"tile", tile->id});
}

static void add_cutting(struct counting *c, const struct placed_lay *lay)
{
	static const enum count_kind kinds[] = {[CUT_STRAIGHT] = COUNT_CUT_STRAIGHT,
	                                        [CUT_TAPER] = COUNT_CUT_TAPER,
	                                        [CUT_NOTCH] = COUNT_CUT_NOTCH,
	                                        [CUT_HOLE] = COUNT_CUT_HOLE};
	const struct cut_total *rooms = cuts_of_lay(c->arena, lay);
	for (int k = 0; k < CUT_KINDS; k++)
		for (size_t r = 0; r < lay->field->room_count; r++)
			if (rooms[r].length[k] > 0)
				counting_length(c, kinds[k], lay->field->rooms[r]->id,
				                rooms[r].length[k]);
}

/* Its tile is told with the room that has most of it. */
static void add_hold(struct counting *c, const struct field *field, const struct hold *hold)
{
	const double *areas = room_shares_of_region(c->arena, field, &hold->region);
	const char *where =
		counting_in_room(c, field, room_shares_greatest(field, areas), hold->id);
	for (size_t r = 0; r < field->room_count; r++)
		if (areas[r] > 0)
			counting_area(c, COUNT_HOLD, counting_in_room(c, field, r, hold->id),
			              areas[r]);
	counting_number(c, COUNT_TILE_WHOLE_HELD, where, hold->whole_count);
	counting_number(c, COUNT_TILE_CUT_HELD, where, hold->cut_count);
}

/* Two lays that meet in a doorway share its profile. */
static bool has_profile(const struct counting *c, const char *doorway, const char *room)
{
	for (size_t i = 0; i < c->rows.count; i++) {
		const struct count_row *row = &c->rows.items[i];
		if (row->kind == COUNT_PROFILE && strcmp(row->of, doorway) == 0 &&
		    strcmp(row->where, room) != 0)
			return true;
	}
	return false;
}

/* The stop line of a doorway where the scope ends, whole, whatever runs of the field's border
 * it came in. */
static void add_profiles(struct counting *c, const struct field *field)
{
	for (size_t b = 0; b < field->border_count; b++) {
		const struct field_border *border = &field->borders[b];
		size_t room = field_room_at(field, point_between(border->from, border->to, 0.5));
		const char *where = counting_in_room(c, field, room, border->of);
		bool ends = border->kind == SITE_EDGE_STOP || border->kind == SITE_EDGE_OTHER_FLOOR;
		if (ends && !has_profile(c, border->of, where))
			counting_length(c, COUNT_PROFILE, where,
			                point_distance(border->from, border->to))
				->of = border->of;
	}
}

/* Of a kind of tile over all lays that take it. */
static double bought_of(const struct counting *c, const struct plan_tile *tile)
{
	double bought = 0;
	for (size_t i = 0; i < c->rows.count; i++)
		if (c->rows.items[i].kind == COUNT_TILE_BOUGHT &&
		    strcmp(c->rows.items[i].element, tile->id) == 0)
			bought += c->rows.items[i].amount;
	return bought;
}

static double face_mm2(const struct plan_tile *tile)
{
	double wide = length_mm(tile->wide_nm), longer = length_mm(tile->long_nm);
	/* A hexagon across its flats. */
	return tile->shape == PLAN_SHAPE_HEXAGON ? wide * wide * sqrt(3) / 2 : wide * longer;
}

/* What is ordered: whole boxes where the plan says what one holds, and their area. */
static void add_order(struct counting *c, const struct plan_tile *tile)
{
	double bought = bought_of(c, tile), per_box = (double)tile->per_box;
	if (bought <= 0)
		return;
	if (per_box > 0) {
		struct count_row *row =
			counting_packages(c, COUNT_TILE_BOX, tile->id, "box", bought, 0, per_box);
		bought = row->amount * per_box;
		row->element = tile->id;
		counting_how(c, row, {"each", number_text(c->arena, per_box, 0)});
	}
	struct count_row *area =
		counting_area(c, COUNT_TILE_AREA, tile->id, bought * face_mm2(tile));
	area->element = tile->id;
	counting_how(c, area, {"tile", number_text(c->arena, bought, 0)});
}

static void add_field(struct counting *c, const struct field *field)
{
	const double *areas = room_shares_of_field(c->arena, field);
	for (size_t r = 0; r < field->room_count; r++)
		counting_area(c, COUNT_FIELD, field->rooms[r]->id, areas[r]);
}

void count_tile(struct counting *c)
{
	const struct plan *plan = c->placed->site->plan;
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct placed_lay *lay = &c->placed->lays[i];
		const char *where = counting_rooms(c, lay->field);
		add_field(c, lay->field);
		for (size_t t = 0; t < lay->field->lay->tile_count; t++)
			add_bought(c, lay, (int)t, where);
		add_cutting(c, lay);
		for (size_t h = 0; h < lay->cracks->hold_count; h++)
			add_hold(c, lay->field, &lay->cracks->holds[h]);
		add_profiles(c, lay->field);
	}
	for (size_t t = 0; t < plan->tile_count; t++)
		add_order(c, &plan->tiles[t]);
}
