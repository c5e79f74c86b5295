#include "count/totals.h"

#include <string.h>

static double lesser_piece(double least, const struct panel *panel)
{
	for (size_t i = 0; i < panel->piece_count; i++) {
		double area = panel->pieces[i].area_mm2;
		if (least == 0 || area < least)
			least = area;
	}
	return least;
}

struct tile_total tile_total(const struct placed_lay *lay)
{
	struct tile_total total = {0};
	for (size_t i = 0; i < lay->tiling->panel_count; i++) {
		const struct panel *panel = &lay->tiling->panels[i];
		total.whole += panel->whole_count;
		total.cut += (long)panel->piece_count;
		total.tile_mm2 += panel->tile_mm2;
		total.lost_mm2 += panel->lost_mm2;
		total.smallest_piece_mm2 = lesser_piece(total.smallest_piece_mm2, panel);
	}
	for (size_t i = 0; i < lay->cracks->hold_count; i++) {
		const struct hold *hold = &lay->cracks->holds[i];
		total.held_whole += hold->whole_count;
		total.held_cut += hold->cut_count;
		total.held_mm2 += hold->tile_mm2;
	}
	total.whole -= total.held_whole;
	total.cut -= total.held_cut;
	total.tile_mm2 -= total.held_mm2;
	return total;
}

static void add_crack(struct crack_total *total, const struct cracks *cracks,
                      const struct placed_crack *crack)
{
	total->state =
		total->is_placed ? crack_state_worse(total->state, crack->state) : crack->state;
	total->pending = total->pending || crack->pending;
	if (!total->is_placed)
		total->group = cracks->groups[crack->group].lot;
	total->is_placed = true;
}

struct crack_total crack_total(const struct placed *placed, const struct site_crack *crack)
{
	struct crack_total total = {.group = ""};
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct cracks *cracks = placed->lays[i].cracks;
		for (size_t c = 0; c < cracks->crack_count; c++)
			if (strcmp(cracks->cracks[c].id, crack->id) == 0)
				add_crack(&total, cracks, &cracks->cracks[c]);
	}
	return total;
}

const char *joint_kind_word(enum joint_kind kind)
{
	static const char *const words[] = {[JOINT_SOFT] = "soft",
	                                    [JOINT_MOVEMENT] = "movement",
	                                    [JOINT_CARRIED] = "carried",
	                                    [JOINT_PERIMETER] = "perimeter"};
	return words[kind];
}
