#include "count/room_tiles.h"

#include "count/held.h"

static void add_run(struct arena *arena, const struct placed_lay *lay, size_t panel,
                    const struct tile_run *run, struct room_tiles *rooms)
{
	struct tile_ref first = {panel, {run->face, run->first, run->j}, NULL};
	struct point middle = ring_middle(tile_ref_ring(arena, lay->tiling, first));
	double face = lay->module->faces[run->face].area_mm2;
	for (int i = run->first; i <= run->last; i++) {
		struct address at = {run->face, i, run->j};
		if (!held_tile(lay, panel, at, NULL)) {
			struct room_tiles *room = &rooms[field_room_at(lay->field, middle)];
			room->whole++;
			room->tile_mm2 += face;
		}
		middle = point_add(middle, lay->module->a);
	}
}

static void add_panel(struct arena *arena, const struct placed_lay *lay, size_t index, int tile,
                      struct room_tiles *rooms)
{
	const struct panel *panel = &lay->tiling->panels[index];
	const struct face *faces = lay->module->faces;
	for (size_t r = 0; r < panel->run_count; r++)
		if (faces[panel->runs[r].face].tile == tile)
			add_run(arena, lay, index, &panel->runs[r], rooms);
	for (size_t p = 0; p < panel->piece_count; p++) {
		const struct tile_piece *piece = &panel->pieces[p];
		struct point middle = ring_middle(piece->ring);
		if (faces[piece->at.face].tile != tile || held_tile(lay, index, piece->at, piece))
			continue;
		struct room_tiles *room = &rooms[field_room_at(lay->field, middle)];
		room->cut++;
		room->tile_mm2 += piece->area_mm2;
	}
}

struct room_tiles *room_tiles_of(struct arena *arena, const struct placed_lay *lay, int tile)
{
	const struct field *field = lay->field;
	struct room_tiles *rooms = ARENA_ARRAY(arena, struct room_tiles, field->room_count);
	for (size_t i = 0; i < field->room_count; i++)
		rooms[i].room = field->rooms[i];
	for (size_t p = 0; p < lay->tiling->panel_count; p++)
		add_panel(arena, lay, p, tile, rooms);
	return rooms;
}
