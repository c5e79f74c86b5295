/* count_setting.c - what goes under and between the tile: patch, mortar, grout. */
#include "count/counting.h"
#include "count/formula.h"
#include "count/mortar.h"
#include "count/totals.h"
#include "geometry/line.h"
#include "units/length.h"

/* Cracks as wide as the rule says are filled flush, unless they are held. */
static void add_patch(struct counting *c, const struct placed_crack *crack)
{
	const struct rule *fill = rules_rule(c->placed->rules, RULE_CRACK_FILL);
	double width = crack->crack->width, depth = counting_figure(c, FIGURE_PATCH_DEPTH);
	if (crack->state == CRACK_HOLD || !rule_is_raised(fill, width))
		return;
	double length = line_length_of_all(crack->runs, crack->run_count);
	counting_length(c, COUNT_PATCH, crack->id, length);
	struct count_row *row = counting_volume(c, COUNT_PATCH_VOLUME, crack->id,
	                                        formula_layer_ml(length * width, depth));
	counting_how(c, row, {"width", counting_width(c, width)},
	             {"depth", counting_width(c, depth)});
}

/* Ground of a lay that is set and grouted: the field less what is held. */
static double open_mm2(const struct placed_lay *lay)
{
	double area = lay->field->area_mm2;
	for (size_t h = 0; h < lay->cracks->hold_count; h++)
		area -= lay->cracks->holds[h].area_mm2;
	return area;
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
static double sealed_mm2(const struct placed_lay *lay)
{
	double area = 0;
	for (size_t j = 0; j < lay->joints->joint_count; j++) {
		const struct joint *joint = &lay->joints->joints[j];
		if (joint->kind == JOINT_SOFT || joint->kind == JOINT_MOVEMENT)
			area += joint->length * joint->width;
	}
	return area;
}

static double thickest_tile(const struct plan_lay *lay)
{
	double most = 0;
	for (size_t t = 0; t < lay->tile_count; t++)
		most = fmax(most, length_mm(lay->tiles[t]->thick_nm));
	return most;
}

static void add_grout(struct counting *c, const struct placed_lay *lay)
{
	const struct plan_grout *grout = &c->placed->site->plan->grout;
	double area = open_mm2(lay) - tile_total(lay).tile_mm2 - lost_mm2(lay) - sealed_mm2(lay);
	double depth = thickest_tile(lay->field->lay);
	double kg = formula_layer_ml(fmax(area, 0), depth) / 1000 * grout->density_kg_l;
	struct count_row *row = counting_mass(c, COUNT_GROUT, counting_rooms(c, lay->field), kg);
	counting_how(c, row, {"share", counting_percent(c, formula_joint_share(lay->module))},
	             {"depth", counting_width(c, depth)});
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
static void add_mortar(struct counting *c, const struct placed_lay *lay)
{
	static const char *const by[] = {[MORTAR_BY_PLAN] = "mortar.by-plan",
	                                 [MORTAR_BY_TROWEL] = "mortar.by-trowel",
	                                 [MORTAR_BY_TILE] = "mortar.by-tile"};
	const struct plan_mortar *mortar = &c->placed->site->plan->mortar;
	const char *where = counting_rooms(c, lay->field);
	const struct mortar_cover cover =
		mortar_cover(lay, mortar, c->placed->rules, c->placed->site->inches);
	const struct count_row *area = counting_area(c, COUNT_MORTAR, where, open_mm2(lay));
	struct count_row *bags = counting_packages(c, COUNT_MORTAR_BAG, where, "bag",
	                                           counting_base(area), 0, cover.bag_mm2);
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
		for (size_t k = 0; k < lay->cracks->crack_count; k++)
			add_patch(c, &lay->cracks->cracks[k]);
		add_mortar(c, lay);
		counting_area(c, COUNT_GROUT_AREA, counting_rooms(c, lay->field), open_mm2(lay));
		add_grout(c, lay);
	}
	add_grout_bags(c);
}
