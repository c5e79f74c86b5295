/* count_membrane.c - what the membrane covers, what it is bought in, and full coverage beside
 * strips. */
#include "count/counting.h"
#include "count/formula.h"
#include "count/rolls.h"
#include "geometry/tolerance.h"
#include "layout/cover.h"
#include "units/length.h"

/* The kinds of rows of one scheme: as drawn, or full coverage instead. */
struct scheme {
	enum count_kind film, pail, roll;
};
static const struct scheme drawn = {COUNT_MEMBRANE_FILM, COUNT_MEMBRANE_PAIL, COUNT_MEMBRANE_ROLL};
static const struct scheme full = {COUNT_FULL_FILM, COUNT_FULL_PAIL, COUNT_FULL_ROLL};

static const char *whole(struct counting *c, size_t number)
{
	return arena_printf(c->arena, "%zu", number);
}

/* Film in every coat, and pails where the plan says what one holds. */
static void add_film(struct counting *c, const struct plan_membrane *membrane,
                     const struct scheme *scheme, const char *where, double area_mm2)
{
	double film = length_mm(membrane->wet_film_nm),
	       waste = counting_figure(c, FIGURE_FILM_WASTE);
	size_t coats = membrane->coats > 0 ? (size_t)membrane->coats : 1;
	if (film <= 0)
		return;
	struct count_row *row = counting_volume(c, scheme->film, where,
	                                        formula_layer_ml(area_mm2, film * (double)coats));
	double ml = counting_base(row);
	row->element = membrane->id;
	counting_how(c, row, {"coats", whole(c, coats)}, {"film", counting_film(c, film)});
	if (membrane->per_pail_ml <= 0)
		return;
	row = counting_packages(c, scheme->pail, where, "each", ml, waste, membrane->per_pail_ml);
	if (row == NULL)
		return;
	row->element = membrane->id;
	counting_how(c, row, {"each", counting_volume_text(c, membrane->per_pail_ml)},
	             {"waste", counting_percent(c, waste)});
}

static struct roll_goods goods_of(const struct plan_membrane *membrane)
{
	return (struct roll_goods){length_mm(membrane->roll_wide_nm),
	                           length_mm(membrane->roll_long_nm), length_mm(membrane->lap_nm)};
}

static void add_rolls(struct counting *c, const struct plan_membrane *membrane,
                      const struct scheme *scheme, const char *where,
                      const struct roll_list *pieces)
{
	struct roll_goods goods = goods_of(membrane);
	struct packing rolls = rolls_for(c->arena, pieces, goods);
	struct count_row *row = counting_number(c, scheme->roll, where, (long)rolls.bins);
	if (row == NULL)
		return;
	row->element = membrane->id;
	counting_how(c, row, {"pieces", whole(c, pieces->pieces.count)},
	             {"bound", whole(c, rolls.bound)},
	             {"wide", length_text(c->arena, goods.wide, c->placed->site->inches)},
	             {"long", length_text(c->arena, goods.length, c->placed->site->inches)});
}

static bool is_in_rolls(const struct plan_membrane *membrane)
{
	struct roll_goods goods = goods_of(membrane);
	return membrane->kind != PLAN_MEMBRANE_LIQUID && goods.wide > goods.lap &&
	       goods.length > goods.lap;
}

static struct roll_list pieces_of_strips(struct counting *c, const struct strips *strips)
{
	struct roll_list list = {0};
	for (size_t s = 0; s < strips->strip_count; s++)
		for (size_t p = 0; p < strips->strips[s].piece_count; p++) {
			const struct strip_piece *piece = &strips->strips[s].pieces[p];
			*array_push(c->arena, &list.pieces) =
				(struct roll_piece){piece->length, piece->wide};
		}
	return list;
}

static struct roll_list pieces_of_ground(struct counting *c, const struct plan_membrane *membrane,
                                         const struct region *ground)
{
	struct roll_list list = {0};
	rolls_cover(c->arena, ground, goods_of(membrane), &list);
	return list;
}

/* Edges of a strip that lie out in the field, not at walls, joints or holds. */
static double free_edge(const struct region *strip, const struct region *ground)
{
	double length = 0;
	for (size_t r = 0; r < region_ring_count(strip); r++) {
		struct ring ring = region_ring(strip, r);
		for (size_t k = 0; k < ring.count; k++) {
			struct point a = ring.points[k], b = ring.points[(k + 1) % ring.count];
			if (region_distance(ground, point_between(a, b, 0.5)) > TOLERANCE_WHOLE)
				length += point_distance(a, b);
		}
	}
	return length;
}

static void add_strip(struct counting *c, const struct placed_lay *lay, const struct strip *strip,
                      const struct region *ground)
{
	double side = counting_figure(c, FIGURE_LARGE_TILE_SIDE);
	const char *element = lay->strips->cover.membrane->id;
	counting_area(c, strip->pending ? COUNT_STRIP_PENDING : COUNT_STRIP, strip->id,
	              region_area(&strip->region))
		->element = element;
	counting_length(c, COUNT_STRIP_LENGTH, strip->id, strip->length)->element = element;
	if (lay->module->tile_long + lay->module->joint < side - TOLERANCE_SAME)
		return;
	struct count_row *row =
		counting_length(c, COUNT_FEATHER, strip->id, free_edge(&strip->region, ground));
	counting_how(c, row, {"side", length_text(c->arena, side, c->placed->site->inches)});
}

/* Full coverage instead of the strips that are drawn; the rule says who approves it. */
static void add_full(struct counting *c, const struct plan_membrane *membrane,
                     const struct region *ground, const char *where)
{
	const char *who = rules_rule(c->placed->rules, RULE_COVER_UNAPPROVED)->who;
	struct count_row *row = counting_area(c, COUNT_FULL_AREA, where, region_area(ground));
	row->element = membrane->id;
	counting_how(c, row, {"who", who});
	struct roll_list pieces = {0};
	if (is_in_rolls(membrane)) {
		pieces = pieces_of_ground(c, membrane, ground);
		add_rolls(c, membrane, &full, where, &pieces);
	}
	add_film(c, membrane, &full, where, region_area(ground));
}

static void add_lay(struct counting *c, const struct placed_lay *lay)
{
	const struct strips *strips = lay->strips;
	const struct cover *cover = &strips->cover;
	const struct plan_membrane *membrane = cover->membrane;
	const char *where = counting_rooms(c, lay->field);
	if (membrane == NULL)
		return;
	struct region ground = cover_ground(c->arena, lay->tiling, lay->cracks, membrane);
	for (size_t s = 0; s < strips->strip_count; s++)
		add_strip(c, lay, &strips->strips[s], &ground);
	if (cover->is_full)
		counting_area(c, COUNT_MEMBRANE_FULL, where, cover->area_mm2)->element =
			membrane->id;
	else
		add_full(c, membrane, &ground, where);
	if (cover->area_mm2 <= 0)
		return;
	counting_area(c, COUNT_PRIMER, where, cover->area_mm2);
	add_film(c, membrane, &drawn, where, cover->area_mm2);
	if (!is_in_rolls(membrane))
		return;
	struct roll_list pieces = cover->is_full ? pieces_of_ground(c, membrane, &ground)
	                                         : pieces_of_strips(c, strips);
	add_rolls(c, membrane, &drawn, where, &pieces);
}

void count_membrane(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++)
		add_lay(c, &c->placed->lays[i]);
}
