/* count_membrane.c - what the membrane covers, what it is bought in, and full coverage beside
 * strips. */
#include "count/counting.h"
#include "count/formula.h"
#include "count/rolls.h"
#include "count/room_shares.h"
#include "geometry/tolerance.h"
#include "layout/cover.h"
#include "units/length.h"
#include "units/number.h"

/* The kinds of rows of each scheme: as drawn, or what might be laid instead. */
struct scheme {
	enum count_kind film, pail, roll;
};
static const struct scheme schemes[COUNT_SCHEMES] = {
	[COUNT_AS_DRAWN] = {COUNT_MEMBRANE_FILM, COUNT_MEMBRANE_PAIL, COUNT_MEMBRANE_ROLL},
	[COUNT_FULL_INSTEAD] = {COUNT_FULL_FILM, COUNT_FULL_PAIL, COUNT_FULL_ROLL},
	[COUNT_STRIPS_INSTEAD] = {COUNT_PARTIAL_FILM, COUNT_PARTIAL_PAIL, COUNT_PARTIAL_ROLL},
};

/* What is bought of one membrane, for all lays under it. */
struct order {
	const struct plan_membrane *membrane;
	double ml[COUNT_SCHEMES];
	struct roll_list pieces[COUNT_SCHEMES];
};

struct orders {
	ARRAY_OF(struct order) list;
};

/* One lay and the membrane over it. */
struct covering {
	struct counting *c;
	const struct placed_lay *lay;
	const struct plan_membrane *membrane;
	const char *where; /* the lay's rooms */
	struct orders *orders;
};

/* Until the next is asked for. */
static struct order *order_of(const struct covering *v)
{
	struct orders *orders = v->orders;
	for (size_t i = 0; i < orders->list.count; i++)
		if (orders->list.items[i].membrane == v->membrane)
			return &orders->list.items[i];
	struct order *order = array_push(v->c->arena, &orders->list);
	*order = (struct order){.membrane = v->membrane};
	return order;
}

static const char *whole(struct counting *c, size_t number)
{
	return arena_printf(c->arena, "%zu", number);
}

/* An area, room by room. `element`: what rates may name. */
static void add_areas(const struct covering *v, enum count_kind kind, const struct region *region,
                      const char *element)
{
	const struct field *field = v->lay->field;
	const double *areas = room_shares_of_region(v->c->arena, field, region);
	for (size_t r = 0; r < field->room_count; r++)
		if (areas[r] > 0)
			counting_area(v->c, kind, field->rooms[r]->id, areas[r])->element = element;
}

/* Film in every coat, room by room. */
static void add_film(const struct covering *v, enum count_scheme scheme,
                     const struct region *region)
{
	struct counting *c = v->c;
	const struct field *field = v->lay->field;
	double film = length_mm(v->membrane->wet_film_nm);
	size_t coats = v->membrane->coats > 0 ? (size_t)v->membrane->coats : 1;
	const double *areas = room_shares_of_region(c->arena, field, region);
	for (size_t r = 0; r < field->room_count && film > 0; r++) {
		if (areas[r] <= 0)
			continue;
		struct count_row *row =
			counting_liquid(c, schemes[scheme].film, field->rooms[r]->id,
		                        formula_layer_ml(areas[r], film * (double)coats));
		order_of(v)->ml[scheme] += counting_base(row);
		row->element = v->membrane->id;
		counting_how(c, row, {"coats", whole(c, coats)}, {"film", counting_film(c, film)});
	}
}

/* ---- what is bought ---- */

static void add_pails(struct counting *c, const struct order *order, enum count_scheme scheme)
{
	const struct plan_membrane *membrane = order->membrane;
	double waste = counting_figure(c, FIGURE_FILM_WASTE), each = membrane->per_pail_ml;
	struct count_row *row = each > 0 ? counting_packages(c, schemes[scheme].pail, membrane->id,
	                                                     "each", order->ml[scheme], waste, each)
	                                 : NULL;
	if (row == NULL)
		return;
	row->element = membrane->id;
	counting_how(c, row, {"each", counting_liquid_text(c, each)},
	             {"waste", counting_percent(c, waste)});
}

static struct roll_goods goods_of(const struct plan_membrane *membrane)
{
	return (struct roll_goods){length_mm(membrane->roll_wide_nm),
	                           length_mm(membrane->roll_long_nm), length_mm(membrane->lap_nm)};
}

static void add_rolls(struct counting *c, const struct order *order, enum count_scheme scheme)
{
	const struct roll_list *pieces = &order->pieces[scheme];
	struct roll_goods goods = goods_of(order->membrane);
	struct packing rolls = rolls_for(c->arena, pieces, goods);
	struct count_row *row =
		counting_number(c, schemes[scheme].roll, order->membrane->id, (long)rolls.bins);
	if (row == NULL)
		return;
	row->element = order->membrane->id;
	counting_how(c, row, {"pieces", whole(c, pieces->pieces.count)},
	             {"bound", whole(c, rolls.bound)},
	             {"wide", length_text(c->arena, goods.wide, c->inches)},
	             {"long", length_text(c->arena, goods.length, c->inches)});
}

static bool is_in_rolls(const struct plan_membrane *membrane)
{
	struct roll_goods goods = goods_of(membrane);
	return membrane->kind != PLAN_MEMBRANE_LIQUID && goods.wide > goods.lap &&
	       goods.length > goods.lap;
}

static void add_pieces_of_strips(struct arena *arena, const struct strips *strips,
                                 struct roll_list *list)
{
	for (size_t s = 0; s < strips->strip_count; s++)
		for (size_t p = 0; p < strips->strips[s].piece_count; p++) {
			const struct strip_piece *piece = &strips->strips[s].pieces[p];
			*array_push(arena, &list->pieces) =
				(struct roll_piece){piece->length, piece->wide};
		}
}

/* ---- strips ---- */

/* Edges of a strip that lie out in the field, not at walls, joints or holds. */
static const double *free_edges(const struct covering *v, const struct region *strip)
{
	const struct field *field = v->lay->field;
	const struct region *ground = &v->lay->strips->cover.ground;
	double *lengths = ARENA_ARRAY(v->c->arena, double, field->room_count);
	for (size_t r = 0; r < region_ring_count(strip); r++) {
		struct ring ring = region_ring(strip, r);
		for (size_t k = 0; k < ring.count; k++) {
			struct point a = ring.points[k], b = ring.points[(k + 1) % ring.count];
			struct point middle = point_between(a, b, 0.5);
			if (region_distance(ground, middle) > TOLERANCE_WHOLE)
				lengths[field_room_at(field, middle)] += point_distance(a, b);
		}
	}
	return lengths;
}

/* Along the crack: a piece is of the room that its middle lies in. */
static const double *piece_lengths(const struct covering *v, const struct strip *strip)
{
	const struct field *field = v->lay->field;
	double *lengths = ARENA_ARRAY(v->c->arena, double, field->room_count);
	for (size_t p = 0; p < strip->piece_count; p++) {
		const struct strip_piece *piece = &strip->pieces[p];
		lengths[field_room_at(field, ring_middle(piece->shape.outline))] +=
			piece->length - piece->lap;
	}
	return lengths;
}

static void add_strip(const struct covering *v, const struct strip *strip, enum count_kind area,
                      enum count_kind length)
{
	const struct field *field = v->lay->field;
	const double *areas = room_shares_of_region(v->c->arena, field, &strip->region);
	const double *lengths = piece_lengths(v, strip);
	for (size_t r = 0; r < field->room_count; r++) {
		const char *where = counting_in_room(v->c, field, r, strip->id);
		if (areas[r] > 0)
			counting_area(v->c, area, where, areas[r])->element = v->membrane->id;
		if (lengths[r] > 0)
			counting_length(v->c, length, where, lengths[r])->element = v->membrane->id;
	}
}

static void add_feather(const struct covering *v, const struct strip *strip)
{
	struct counting *c = v->c;
	const struct field *field = v->lay->field;
	double side = counting_figure(c, FIGURE_LARGE_TILE_SIDE);
	const double *lengths = free_edges(v, &strip->region);
	if (v->lay->module->tile_long + v->lay->module->joint < side - TOLERANCE_SAME)
		return;
	for (size_t r = 0; r < field->room_count; r++)
		if (lengths[r] > 0) {
			const char *where = counting_in_room(c, field, r, strip->id);
			struct count_row *row =
				counting_length(c, COUNT_FEATHER, where, lengths[r]);
			counting_how(c, row, {"side", length_text(c->arena, side, c->inches)});
		}
}

/* ---- what is drawn, and what might be laid instead ---- */

static void add_goods(const struct covering *v, enum count_scheme scheme,
                      const struct region *region, const struct strips *strips)
{
	add_film(v, scheme, region);
	if (!is_in_rolls(v->membrane))
		return;
	struct roll_list *pieces = &order_of(v)->pieces[scheme];
	if (strips != NULL)
		add_pieces_of_strips(v->c->arena, strips, pieces);
	else
		rolls_cover(v->c->arena, region, goods_of(v->membrane), pieces);
}

static void add_drawn(const struct covering *v)
{
	const struct strips *strips = v->lay->strips;
	const struct cover *cover = &strips->cover;
	for (size_t s = 0; s < strips->strip_count; s++) {
		const struct strip *strip = &strips->strips[s];
		add_strip(v, strip, strip->pending ? COUNT_STRIP_PENDING : COUNT_STRIP,
		          COUNT_STRIP_LENGTH);
		add_feather(v, strip);
	}
	if (cover->is_full)
		add_areas(v, COUNT_MEMBRANE_FULL, &cover->region, v->membrane->id);
	if (cover->area_mm2 <= 0)
		return;
	add_areas(v, COUNT_PRIMER, &cover->region, NULL);
	add_goods(v, COUNT_AS_DRAWN, &cover->region, cover->is_full ? NULL : strips);
}

/* Whom a rule asks, in the language of the words. */
static const char *asked_by(const struct counting *c, enum rule_id rule)
{
	const char *who = rules_rule(c->placed->rules, rule)->who;
	return words_find(c->words, arena_printf(c->arena, "who.%s", who));
}

static void say_who(struct counting *c, enum count_kind kind, size_t from, const char *who)
{
	for (size_t i = from; i < c->rows.count; i++)
		if (c->rows.items[i].kind == kind) {
			c->rows.items[i].who = who;
			counting_how(c, &c->rows.items[i], {"who", who});
		}
}

static void add_full_instead(const struct covering *v)
{
	const struct region *ground = &v->lay->strips->cover.ground;
	size_t from = v->c->rows.count;
	add_areas(v, COUNT_FULL_AREA, ground, v->membrane->id);
	say_who(v->c, COUNT_FULL_AREA, from, asked_by(v->c, RULE_COVER_UNAPPROVED));
	add_goods(v, COUNT_FULL_INSTEAD, ground, NULL);
}

/* Whoever approved full coverage; and where a room needs what strips never give, who is asked
 * about that. */
static const char *who_approves_strips(const struct covering *v)
{
	const struct field *field = v->lay->field;
	const char *owner = asked_by(v->c, RULE_COVER_UNAPPROVED);
	unsigned needs = 0;
	for (size_t r = 0; r < field->room_count; r++)
		needs |= field->rooms[r]->plan->needs;
	if (!(needs & (PLAN_NEED_WATERPROOF | PLAN_NEED_SOUND)))
		return owner;
	return arena_printf(v->c->arena, "%s, %s", owner, asked_by(v->c, RULE_PARTIAL_WATERPROOF));
}

static void add_strips_instead(const struct covering *v)
{
	const struct placed_lay *lay = v->lay;
	const struct strips *strips =
		strips_instead(v->c->arena, lay->tiling, lay->cracks, v->c->placed->rules);
	size_t from = v->c->rows.count;
	for (size_t s = 0; s < strips->strip_count; s++)
		add_strip(v, &strips->strips[s], COUNT_PARTIAL_STRIP, COUNT_PARTIAL_LENGTH);
	if (strips->strip_count == 0) /* no crack asks for one */
		counting_area(v->c, COUNT_PARTIAL_STRIP, v->where, 0)->element = v->membrane->id;
	say_who(v->c, COUNT_PARTIAL_STRIP, from, who_approves_strips(v));
	if (strips->strip_count > 0)
		add_goods(v, COUNT_STRIPS_INSTEAD, &strips->cover.region, strips);
}

/* Mortar as thick as the mat or bed, room by room. */
static void add_solid(const struct covering *v, enum count_kind kind, const double *areas)
{
	struct counting *c = v->c;
	const struct field *field = v->lay->field;
	double thick = length_mm(v->membrane->thick_nm),
	       density = counting_figure(c, FIGURE_BED_DENSITY);
	for (size_t r = 0; r < field->room_count; r++) {
		double kg = formula_layer_ml(areas[r], thick) / 1000 * density;
		if (kg <= 0)
			continue;
		struct count_row *row = counting_mass(c, kind, field->rooms[r]->id, kg);
		counting_how(c, row, {"thick", counting_width(c, thick)},
		             {"density", number_text(c->arena, density, 2)});
	}
}

/* Mats and mortar beds lie everywhere by their nature: there are no strips of them. What a bed
 * takes, and what both raise and load the floor with, is told instead. */
static void add_bed(const struct covering *v)
{
	struct counting *c = v->c;
	const struct region *ground = &v->lay->strips->cover.region;
	const double *areas = room_shares_of_region(c->arena, v->lay->field, ground);
	if (v->membrane->kind == PLAN_MEMBRANE_MORTAR_BED) {
		add_solid(v, COUNT_BED_MORTAR, areas);
		add_areas(v, COUNT_BED_MESH, ground, v->membrane->id);
		add_areas(v, COUNT_BED_CLEAVAGE, ground, v->membrane->id);
	}
	if (v->membrane->thick_nm <= 0)
		return;
	counting_height(c, COUNT_ADDED_HEIGHT, v->where, length_mm(v->membrane->thick_nm));
	add_solid(v, COUNT_ADDED_WEIGHT, areas);
}

static void add_lay(struct counting *c, const struct placed_lay *lay, struct orders *orders)
{
	const struct cover *cover = &lay->strips->cover;
	const struct covering v = {c, lay, cover->membrane, counting_rooms(c, lay->field), orders};
	if (cover->membrane == NULL)
		return;
	add_drawn(&v);
	if (!cover->is_full)
		add_full_instead(&v);
	else if (cover_is_always_full(cover->membrane))
		add_bed(&v);
	else
		add_strips_instead(&v);
}

void count_membrane(struct counting *c)
{
	struct orders orders = {0};
	for (size_t i = 0; i < c->placed->lay_count; i++)
		add_lay(c, &c->placed->lays[i], &orders);
	for (size_t i = 0; i < orders.list.count; i++)
		for (int scheme = 0; scheme < COUNT_SCHEMES; scheme++) {
			add_pails(c, &orders.list.items[i], (enum count_scheme)scheme);
			add_rolls(c, &orders.list.items[i], (enum count_scheme)scheme);
		}
}
