#include "site/face_limit.h"

#include "units/number.h"

static const double MOST_FACES = 1e9;

/* Tile on the ground of the lay's rooms, joints not counted; 0 where an error leaves it open. */
static double faces_of(const struct build *build, const struct plan_lay *lay)
{
	double ground = 0, largest = 0;
	for (size_t i = 0; i < lay->room_count; i++)
		ground += ring_area(build->site->rooms[lay->rooms[i] - build->plan->rooms].outline);
	for (size_t i = 0; i < lay->tile_count; i++)
		largest = fmax(largest, length_mm(lay->tiles[i]->wide_nm) *
		                                length_mm(lay->tiles[i]->long_nm));
	return largest > 0 ? ground / largest : 0;
}

void face_limit_check(struct build *build)
{
	for (size_t i = 0; i < build->plan->lay_count; i++) {
		const struct plan_lay *lay = &build->plan->lays[i];
		if (build_is_faulty(build, lay->given, lay->line))
			continue;
		double faces = faces_of(build, lay);
		if (faces > MOST_FACES)
			diag_error(build->diags, lay->line,
			           "<lay> \"%s\" has %s tile; expected at most 1,000,000,000",
			           lay->id, number_text(build->arena, faces, 0));
	}
}
