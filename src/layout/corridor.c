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

static struct place_key key_of_cell(struct address at)
{
	return (struct place_key){at.face, 0, at.i, at.j};
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
				place_map_add(&corridor->crossed, key_of_cell(at), 1);
		}
	}
}

void corridor_close_tiles(struct corridor *corridor, const struct tile_ref *tiles, size_t count)
{
	ARRAY_OF(struct tile_ref) mine = {0};
	for (size_t k = 0; k < count; k++)
		if (tiles[k].panel == corridor->panel) {
			*array_push(corridor->arena, &mine) = tiles[k];
			place_map_add(&corridor->crossed, key_of_cell(tiles[k].at), 1);
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

static bool is_crossed(const struct corridor *corridor, struct address at)
{
	return place_map_find(&corridor->crossed, key_of_cell(at)) != NULL;
}

static bool meets_bars(const struct corridor_bars *bars, struct segment stretch)
{
	for (size_t k = 0; bars && k < bars->segments.count; k++)
		if (segment_meets(stretch, bars->segments.items[k]))
			return true;
	return false;
}

static bool is_free_for_all(const struct corridor *corridor, struct network_place place,
                            struct segment stretch)
{
	const struct network *network = corridor->tiling->network;
	const struct panel *panel = &corridor->tiling->panels[corridor->panel];
	struct address left = network_beside(network, place, true);
	struct address right = network_beside(network, place, false);
	/* Between tile and a remainder that is no tile there is no joint. */
	if (!panel_has_tile(panel, left) || !panel_has_tile(panel, right))
		return false;
	if (is_crossed(corridor, left) && is_crossed(corridor, right))
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
