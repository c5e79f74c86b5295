#include "record/crack_movements.h"

#include "layout/crack_movement.h"
#include "units/length.h"

/* The membrane over the crack in the first lay it lies in; NULL: none. */
static const struct plan_membrane *membrane_over(const struct placed *placed,
                                                 const struct site_crack *crack)
{
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct cracks *cracks = placed->lays[i].cracks;
		for (size_t c = 0; c < cracks->crack_count; c++)
			if (cracks->cracks[c].crack == crack)
				return placed->lays[i].strips->cover.membrane;
	}
	return NULL;
}

static void write_known(struct markup *m, const char *name, double mm, bool is_known)
{
	if (is_known)
		markup_length(m, name, mm);
	else
		markup_text(m, name, "");
}

static void write_concrete(struct markup *m, struct arena *arena, const struct crack_movement *move)
{
	const struct concrete *concrete = &move->concrete;
	markup_text(m, "slab", move->slab->id);
	markup_number(m, "strength", concrete->strength_mpa);
	markup_text(m, "cement", arena_printf(arena, "%c", concrete->cement));
	markup_number(m, "ambient", concrete->humidity_share);
	markup_length(m, "size", concrete->size_mm);
	if (concrete->age_days >= 0)
		markup_number(m, "age", concrete->age_days);
	else
		markup_text(m, "age", "");
}

static void write_movement(struct markup *m, struct arena *arena, const struct placed *placed,
                           const struct site_crack *crack)
{
	struct crack_movement move = crack_movement_of(arena, placed->site, placed->rules, crack);
	const struct plan_membrane *membrane = membrane_over(placed, crack);
	if (move.slab == NULL)
		return;
	markup_start(m, "movement");
	markup_text(m, "crack", crack->id);
	markup_length(m, "length", move.length);
	markup_length(m, "shrinkage", move.shrinkage);
	markup_length(m, "thermal", move.thermal);
	markup_length(m, "total", move.total);
	write_known(m, "rating", membrane != NULL ? length_mm(membrane->movement_nm) : 0,
	            membrane != NULL && membrane->movement_nm > 0);
	write_concrete(m, arena, &move);
	markup_end(m, "movement");
}

void crack_movements_write(struct markup *m, struct arena *arena, const struct placed *placed)
{
	for (size_t i = 0; i < placed->site->crack_count; i++)
		write_movement(m, arena, placed, &placed->site->cracks[i]);
}
