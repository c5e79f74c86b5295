#include "count/cuts.h"

#include "count/held.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"

/* True where the edge lies on the face's own border: both ends and the middle do. */
static bool is_factory_edge(struct ring face, struct point a, struct point b)
{
	return ring_distance(face, a) <= TOLERANCE_WHOLE &&
	       ring_distance(face, b) <= TOLERANCE_WHOLE &&
	       ring_distance(face, point_between(a, b, 0.5)) <= TOLERANCE_WHOLE;
}

static bool is_along_a_side(struct ring face, struct point edge)
{
	struct point unit = point_unit(edge);
	for (size_t k = 0; k < face.count; k++) {
		struct point side = point_sub(face.points[(k + 1) % face.count], face.points[k]);
		if (fabs(point_cross(point_unit(side), unit)) <= TOLERANCE_PARALLEL)
			return true;
	}
	return false;
}

static bool has_inner_corner(struct ring ring)
{
	for (size_t k = 0; k < ring.count; k++) {
		struct point in = point_sub(ring.points[(k + 1) % ring.count], ring.points[k]);
		struct point out = point_sub(ring.points[(k + 2) % ring.count],
		                             ring.points[(k + 1) % ring.count]);
		if (point_cross(point_unit(in), point_unit(out)) < -TOLERANCE_PARALLEL)
			return true;
	}
	return false;
}

void cuts_add_piece(struct cut_total *total, struct ring face, const struct tile_piece *piece)
{
	bool is_notched = has_inner_corner(piece->ring);
	for (size_t k = 0; k < piece->ring.count; k++) {
		struct point a = piece->ring.points[k],
			     b = piece->ring.points[(k + 1) % piece->ring.count];
		if (is_factory_edge(face, a, b))
			continue;
		enum cut_kind kind = is_notched                               ? CUT_NOTCH
		                     : is_along_a_side(face, point_sub(b, a)) ? CUT_STRAIGHT
		                                                              : CUT_TAPER;
		total->length[kind] += point_distance(a, b);
	}
	for (size_t h = 0; h < piece->hole_count; h++)
		total->length[CUT_HOLE] += ring_length(piece->holes[h]);
}

struct cut_total *cuts_of_lay(struct arena *arena, const struct placed_lay *lay)
{
	struct cut_total *rooms = ARENA_ARRAY(arena, struct cut_total, lay->field->room_count);
	struct arena *scratch = arena_new();
	for (size_t p = 0; p < lay->tiling->panel_count; p++) {
		const struct panel *panel = &lay->tiling->panels[p];
		for (size_t i = 0; i < panel->piece_count; i++) {
			const struct tile_piece *piece = &panel->pieces[i];
			if (held_tile(lay, p, piece->at, piece))
				continue;
			struct ring face =
				module_face_at(scratch, lay->module, piece->at, panel->position);
			size_t room = field_room_at(lay->field, ring_middle(piece->ring));
			cuts_add_piece(&rooms[room], face, piece);
			arena_clear(scratch);
		}
	}
	arena_free(scratch);
	return rooms;
}
