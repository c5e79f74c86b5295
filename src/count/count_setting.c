/* count_setting.c - what goes under and between the tile: patch, mortar, grout. */
#include "count/counting.h"
#include "count/formula.h"
#include "count/mortar.h"
#include "count/room_shares.h"
#include "count/totals.h"
#include "geometry/line.h"
#include "units/length.h"
#include "units/number.h"

static void add_patch(struct counting *c, const struct field *field,
                      const struct placed_crack *crack)
{
	double width = crack->crack->width, depth = counting_figure(c, FIGURE_PATCH_DEPTH);
	if (!placed_crack_is_filled(crack, c->placed->rules))
		return;
	const double *lengths =
		room_shares_of_lines(c->arena, field, crack->runs, crack->run_count,
	                             line_length_of_all(crack->runs, crack->run_count));
	for (size_t r = 0; r < field->room_count; r++) {
		if (lengths[r] <= 0)
			continue;
		const char *where = counting_in_room(c, field, r, crack->id);
		counting_length(c, COUNT_PATCH, where, lengths[r]);
		struct count_row *row =
			counting_volume(c, COUNT_PATCH_VOLUME, where,
		                        formula_layer_ml(lengths[r] * width, depth));
		counting_how(c, row, {"width", counting_width(c, width)},
		             {"depth", counting_width(c, depth)});
	}
}

/* Ground of a lay that is set and grouted, by room: the field less what is held. */
static double *open_areas(struct counting *c, const struct placed_lay *lay)
{
	const struct field *field = lay->field;
	const double *areas = room_shares_of_field(c->arena, field);
	double *open = ARENA_ARRAY(c->arena, double, field->room_count);
	for (size_t r = 0; r < field->room_count; r++)
		open[r] = areas[r];
	for (size_t h = 0; h < lay->cracks->hold_count; h++) {
		const struct hold *hold = &lay->cracks->holds[h];
		const double *held = room_shares_of_region(c->arena, field, &hold->region);
		for (size_t r = 0; r < field->room_count; r++)
			open[r] -= held[r];
	}
	return open;
}

static double sum_of(const struct field *field, const double *shares)
{
	double sum = 0;
	for (size_t r = 0; r < field->room_count; r++)
		sum += shares[r];
	return sum;
}

static double lost_mm2(const struct placed_lay *lay)
{
	double lost = 0;
	for (size_t p = 0; p < lay->tiling->panel_count; p++)
		lost += lay->tiling->panels[p].lost_mm2;
	return lost;
}

/* What sealant takes from the grout: soft and field joints lie inside the field; bands of
 * carried joints and the perimeter gap were never part of it. */
static bool is_in_field(const struct joint *joint)
{
	return joint->kind == JOINT_SOFT || joint->kind == JOINT_MOVEMENT;
}

static double sealed_mm2(const struct placed_lay *lay)
{
	double area = 0;
	for (size_t j = 0; j < lay->joints->joint_count; j++) {
		const struct joint *joint = &lay->joints->joints[j];
		if (is_in_field(joint))
			area += joint->length * joint->width;
	}
	return area;
}

/* Joints that are grouted, by room: ground less tile and soft joints. A piece that crosses an
 * open line is of one room, its ground of two: so all rooms of a lay share by their ground. */
static const double *grouted_areas(struct counting *c, const struct placed_lay *lay,
                                   const double *open)
{
	const struct field *field = lay->field;
	double all =
		sum_of(field, open) - tile_total(lay).tile_mm2 - lost_mm2(lay) - sealed_mm2(lay);
	return room_shares_scaled(c->arena, field, open, fmax(all, 0));
}

static double thickest_tile(const struct plan_lay *lay)
{
	double most = 0;
	for (size_t t = 0; t < lay->tile_count; t++)
		most = fmax(most, length_mm(lay->tiles[t]->thick_nm));
	return most;
}

static void add_grout(struct counting *c, const struct placed_lay *lay, const double *open)
{
	const struct plan_grout *grout = &c->placed->site->plan->grout;
	const struct field *field = lay->field;
	const double *areas = grouted_areas(c, lay, open);
	double depth = thickest_tile(field->lay);
	for (size_t r = 0; r < field->room_count; r++) {
		double kg = formula_layer_ml(areas[r], depth) / 1000 * grout->density_kg_l;
		struct count_row *row = counting_mass(c, COUNT_GROUT, field->rooms[r]->id, kg);
		counting_how(c, row,
		             {"share", counting_percent(c, formula_joint_share(lay->module))},
		             {"depth", counting_width(c, depth)},
		             {"density", number_text(c->arena, grout->density_kg_l, 2)});
	}
}

static void add_grout_bags(struct counting *c)
{
	double waste = counting_figure(c, FIGURE_GROUT_WASTE);
	double bag = c->placed->site->plan->grout.bag_kg;
	struct count_row *row = counting_packages(c, COUNT_GROUT_BAG, "total", "bag",
	                                          counting_sum(c, COUNT_GROUT), waste, bag);
	if (row != NULL)
		counting_how(c, row, {"each", counting_mass_text(c, bag)},
		             {"waste", counting_percent(c, waste)});
}

/* A bag covers more or less by the lay's tile, so that bags are counted a lay. */
static void add_mortar(struct counting *c, const struct placed_lay *lay, const double *open)
{
	static const char *const by[] = {[MORTAR_BY_PLAN] = "mortar.by-plan",
	                                 [MORTAR_BY_TROWEL] = "mortar.by-trowel",
	                                 [MORTAR_BY_TILE] = "mortar.by-tile"};
	const struct plan_mortar *mortar = &c->placed->site->plan->mortar;
	const char *where = counting_rooms(c, lay->field);
	const struct mortar_cover cover =
		mortar_cover(lay, mortar, c->placed->rules, c->placed->site->inches);
	double set = 0;
	for (size_t r = 0; r < lay->field->room_count; r++)
		set += counting_base(
			counting_area(c, COUNT_MORTAR, lay->field->rooms[r]->id, open[r]));
	struct count_row *bags =
		counting_packages(c, COUNT_MORTAR_BAG, where, "bag", set, 0, cover.bag_mm2);
	const char *trowel = mortar->trowel != NULL ? mortar->trowel : "";
	if (bags != NULL)
		counting_how(c, bags, {"covers", counting_area_text(c, cover.bag_mm2)},
		             {"by",
		              words_fill(c->arena, c->words, by[cover.by], {"trowel", trowel})});
}

void count_setting(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct placed_lay *lay = &c->placed->lays[i];
		const double *open = open_areas(c, lay);
		for (size_t k = 0; k < lay->cracks->crack_count; k++)
			add_patch(c, lay->field, &lay->cracks->cracks[k]);
		add_mortar(c, lay, open);
		for (size_t r = 0; r < lay->field->room_count; r++)
			counting_area(c, COUNT_GROUT_AREA, lay->field->rooms[r]->id, open[r]);
		add_grout(c, lay, open);
	}
	add_grout_bags(c);
}
