#include "layout/field_limits.h"

#include "layout/warming.h"
#include "rules/joint_width.h"
#include "units/length.h"
#include "units/number.h"

/* ---- how far ---- */

static double lesser_figure(const struct rules *rules, double least, bool holds, enum figure figure)
{
	return holds ? fmin(least, rules_figure(rules, figure)) : least;
}

static bool is_on_mortar_bed(const struct field *field, const struct plan_room *room)
{
	const struct plan_membrane *membrane = plan_membrane_over(field->site->plan, room);
	return membrane && membrane->kind == PLAN_MEMBRANE_MORTAR_BED;
}

static double limit_on(const struct rules *rules, const struct site_slab_part *part)
{
	enum plan_exposure exposure = part->exposure;
	bool is_wet = exposure == PLAN_EXPOSURE_SUNLIT || exposure == PLAN_EXPOSURE_WET;
	bool is_suspended = part->slab->support == PLAN_SUPPORT_SUSPENDED;
	double limit = rules_figure(rules, FIGURE_FIELD_SPACING_INDOOR);
	limit = lesser_figure(rules, limit, is_wet, FIGURE_FIELD_SPACING_SUNLIT);
	limit = lesser_figure(rules, limit, exposure == PLAN_EXPOSURE_OUTDOOR,
	                      FIGURE_FIELD_SPACING_OUTDOOR);
	limit = lesser_figure(rules, limit, is_suspended, FIGURE_FIELD_SPACING_SUSPENDED);
	return lesser_figure(rules, limit, part->heated, FIGURE_FIELD_SPACING_HEATED);
}

double field_run_limit(const struct field *field, const struct rules *rules)
{
	double limit = rules_figure(rules, FIGURE_FIELD_SPACING_INDOOR);
	for (size_t i = 0; i < field->room_count; i++) {
		const struct site_room *room = field->rooms[i];
		for (size_t k = 0; k < room->slab_part_count; k++)
			limit = fmin(limit, limit_on(rules, &room->slab_parts[k]));
		limit = lesser_figure(rules, limit, is_on_mortar_bed(field, room->plan),
		                      FIGURE_FIELD_SPACING_MORTAR_BED);
	}
	return limit;
}

/* ---- how wide ---- */

/* Per K: what the tile states, else the table's; of several the greatest. */
static double expansion_of(const struct field *field, const struct rules *rules)
{
	double most = 0;
	for (size_t i = 0; i < field->lay->tile_count; i++) {
		double stated = field->lay->tiles[i]->expansion_per_k;
		most = fmax(most, isnan(stated) ? rules_figure(rules, FIGURE_TILE_EXPANSION) * 1e-6
		                                : stated);
	}
	return most;
}

/* The widest range that a slab under the lay states; 0: none states one, and the table's own widths
 * hold. */
static double range_stated(const struct field *field, const struct rules *rules)
{
	double most = 0;
	for (size_t r = 0; r < field->room_count; r++)
		for (size_t k = 0; k < field->rooms[r]->slab_part_count; k++) {
			const struct site_slab_part *part = &field->rooms[r]->slab_parts[k];
			if (warming_is_stated(part->slab))
				most = fmax(most, warming_of(rules, part));
		}
	return most;
}

static double least_width(const struct field *field, const struct rules *rules, double range)
{
	double width = rules_figure(rules, FIGURE_CARRIED_WIDTH_INDOOR);
	if (field_is_outdoor(field))
		width = fmax(width, rules_figure(rules, FIGURE_FIELD_WIDTH_OUTDOOR));
	return width + joint_width_increment(rules, range);
}

double field_joint_width(const struct field *field, const struct rules *rules)
{
	double range = range_stated(field, rules),
	       step = rules_figure(rules, FIGURE_FIELD_WIDTH_STEP);
	double moved = joint_width_of((struct joint_movement){
		.expansion_per_k = expansion_of(field, rules),
		.range_k = range,
		.length = field_run_limit(field, rules),
		.class_share = share_value(field->site->plan->sealant.movement),
	});
	double least = fmax(least_width(field, rules, range), length_mm(field->lay->joint_nm));
	return number_order(moved, least) > 0 ? ceil(moved / step) * step : least;
}
