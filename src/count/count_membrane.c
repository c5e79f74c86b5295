/* count_membrane.c - what the membrane covers. */
#include "count/counting.h"

void count_membrane(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct strips *strips = c->placed->lays[i].strips;
		const struct cover *cover = &strips->cover;
		const char *where = counting_rooms(c, c->placed->lays[i].field);
		for (size_t s = 0; s < strips->strip_count; s++) {
			const struct strip *strip = &strips->strips[s];
			counting_area(c, strip->pending ? COUNT_STRIP_PENDING : COUNT_STRIP,
			              strip->id, region_area(&strip->region));
		}
		if (cover->membrane != NULL && cover->is_full)
			counting_area(c, COUNT_MEMBRANE_FULL, where, cover->area_mm2);
		if (cover->membrane != NULL && cover->alternate_mm2 > 0)
			counting_area(c, COUNT_MEMBRANE_ALTERNATE, where, cover->alternate_mm2);
		if (cover->membrane != NULL && cover->area_mm2 > 0)
			counting_area(c, COUNT_PRIMER, where, cover->area_mm2);
	}
}
