#include "layout/corridor.h"

#include "geometry/clip.h"
#include "geometry/tolerance.h"
#include "layout/crossed.h"
#include "pattern/lattice.h"

struct corridor corridor_in(struct arena *arena, const struct tiling *tiling, size_t panel,
                            struct region domain, struct region ground)
{
	return (struct corridor){.arena = arena,
	                         .tiling = tiling,
	                         .panel = panel,
	                         .domain = domain,
	                         .ground = ground,
	                         .crossed = place_map_in(arena),
	                         .known = place_map_in(arena)};
}

/* By the cell, and which of its pieces it is. */
static struct place_key key_of_tile(const struct corridor *corridor, struct tile_ref tile)
{
	const struct panel *panel = &corridor->tiling->panels[corridor->panel];
	int piece = tile.piece ? (int)(tile.piece - panel->pieces) + 1 : 0;
	return (struct place_key){tile.at.face, piece, tile.at.i, tile.at.j};
}

static void close_tile(struct corridor *corridor, struct tile_ref tile)
{
	place_map_add(&corridor->crossed, key_of_tile(corridor, tile), 1);
}

static void close_cell(struct corridor *corridor, struct address at)
{
	const struct panel *panel = &corridor->tiling->panels[corridor->panel];
	size_t count;
	const struct tile_piece *pieces = panel_pieces_at(panel, at, &count);
	close_tile(corridor, (struct tile_ref){corridor->panel, at, NULL});
	for (size_t k = 0; k < count; k++)
		close_tile(corridor, (struct tile_ref){corridor->panel, at, &pieces[k]});
}

/* Closes every cell whose middle lies in the hole. */
static void close_hole(struct corridor *corridor, struct ring hole)
{
	const struct module *module = corridor->tiling->module;
	struct point position = corridor->tiling->panels[corridor->panel].position;
	struct box box = ring_box(hole);
	struct segment middle = {{box.x0, (box.y0 + box.y1) / 2}, {box.x1, (box.y0 + box.y1) / 2}};
	for (size_t f = 0; f < module->face_count; f++) {
		struct address at = {.face = (int)f};
		struct ring home = module_cell_at(corridor->arena, module, at, position);
		struct lattice_walk walk = lattice_walk_near((struct lattice){module->a, module->b},
		                                             home, middle, box.y1 - box.y0);
		while (lattice_walk_next(&walk, &at.i, &at.j)) {
			struct ring cell = module_cell_at(corridor->arena, module, at, position);
			if (ring_holds(hole, ring_middle(cell)))
				close_cell(corridor, at);
		}
	}
}

void corridor_close_tiles(struct corridor *corridor, const struct tile_ref *tiles, size_t count)
{
	ARRAY_OF(struct tile_ref) mine = {0};
	for (size_t k = 0; k < count; k++)
		if (tiles[k].panel == corridor->panel) {
			*array_push(corridor->arena, &mine) = tiles[k];
			close_tile(corridor, tiles[k]);
		}
	struct region cells =
		crossed_cells(corridor->arena, corridor->tiling, mine.items, mine.count);
	for (size_t p = 0; p < cells.count; p++)
		for (size_t h = 0; h < cells.polygons[p].hole_count; h++)
			close_hole(corridor, cells.polygons[p].holes[h]);
}

void corridor_bars_add(struct arena *arena, struct corridor_bars *bars, struct line line)
{
	for (size_t k = 0; k + 1 < line.count; k++)
		*array_push(arena, &bars->segments) =
			(struct segment){line.points[k], line.points[k + 1]};
}

/* Far away there is nothing to be closed: a corridor costs what lies near it. */
void corridor_close_line(struct corridor *corridor, struct line line)
{
	struct box near = box_grown(region_box(&corridor->ground), TOLERANCE_WHOLE);
	for (size_t k = 0; k + 1 < line.count; k++) {
		struct line piece = {line.points + k, 2};
		struct box box = box_with(box_with(box_empty(), piece.points[0]), piece.points[1]);
		if (box_meets(near, box))
			corridor_bars_add(corridor->arena, &corridor->bars, piece);
	}
}

double corridor_rim(const struct tiling *tiling)
{
	return tiling->field->gap_max - tiling->field->gap + tiling->module->joint;
}

struct segment corridor_segment(const struct corridor *corridor, struct network_place place)
{
	const struct tiling *tiling = corridor->tiling;
	return network_segment(tiling->network, tiling->module, place,
	                       tiling->panels[corridor->panel].position);
}

static bool is_crossed(const struct corridor *corridor, struct tile_ref tile)
{
	return place_map_find(&corridor->crossed, key_of_tile(corridor, tile)) != NULL;
}

static bool meets_bars(const struct corridor_bars *bars, struct segment stretch)
{
	for (size_t k = 0; bars && k < bars->segments.count; k++)
		if (segment_meets(stretch, bars->segments.items[k]))
			return true;
	return false;
}

/* Lengths along an edge. */
static double overlap(struct stretch a, struct stretch b)
{
	return fmin(a.to, b.to) - fmax(a.from, b.from);
}

/* An end lies between the tiles, or at a border: at a slant, or at the corner of a wall, the one
 * tile ends there before the other. No joint runs beside a border for most of its way. */
static bool is_end(const struct corridor *corridor, double beyond, double within, struct point p)
{
	double rim = corridor_rim(corridor->tiling);
	return beyond <= corridor->tiling->module->joint ||
	       (beyond <= fmax(within, rim) &&
	        region_distance(&corridor->domain, p) <= rim + TOLERANCE_WHOLE);
}

/* The joint between two tiles that most of a stretch of the edge at a place lies in; NULL: it does
 * not lie between two. */
static const struct tile_joint *joint_of(const struct corridor *corridor,
                                         struct network_place place, struct segment stretch)
{
	struct segment edge = corridor_segment(corridor, place);
	double from = point_distance(edge.from, stretch.from);
	double to = point_distance(edge.from, stretch.to), length = segment_length(edge);
	bool is_back = from > to;
	struct stretch own = {is_back ? to : from, is_back ? from : to}, best = {0, 0};
	const struct tile_joint *joint = NULL;
	size_t count;
	const struct tile_joint *joints =
		tile_joints_at(corridor->arena, corridor->tiling, corridor->panel, place, &count);
	for (size_t k = 0; k < count; k++) {
		struct stretch on = {joints[k].on.from * length, joints[k].on.to * length};
		if (overlap(on, own) <= fmax(overlap(best, own), 0))
			continue;
		best = on;
		joint = &joints[k];
	}
	double within = overlap(best, own);
	bool is_all =
		joint &&
		is_end(corridor, best.from - own.from, within,
	               is_back ? stretch.to : stretch.from) &&
		is_end(corridor, own.to - best.to, within, is_back ? stretch.from : stretch.to);
	return is_all ? joint : NULL;
}

static bool is_free_for_all(const struct corridor *corridor, struct network_place place,
                            struct segment stretch)
{
	/* Between tile and a remainder that is no tile there is no joint. */
	const struct tile_joint *joint = joint_of(corridor, place, stretch);
	if (!joint || (is_crossed(corridor, joint->left) && is_crossed(corridor, joint->right)))
		return false;
	return !meets_bars(&corridor->bars, stretch) &&
	       clip_holds(corridor->arena, stretch, &corridor->ground);
}

bool corridor_is_free(const struct corridor *corridor, struct network_place place,
                      struct segment stretch)
{
	return !meets_bars(corridor->side, stretch) && is_free_for_all(corridor, place, stretch);
}

bool corridor_is_open(void *context, struct network_place place)
{
	struct corridor *corridor = context;
	struct segment edge = corridor_segment(corridor, place);
	struct place_key key = {place.edge, 0, place.i, place.j};
	if (meets_bars(corridor->side, edge))
		return false;
	const size_t *known = place_map_find(&corridor->known, key);
	if (!known)
		known = place_map_add(&corridor->known, key,
		                      is_free_for_all(corridor, place, edge));
	return *known;
}
