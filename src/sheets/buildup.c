#include "sheets/buildup.h"

#include <math.h>
#include <string.h>

#include "sheets/lay_view.h"
#include "units/length.h"
#include "units/number.h"

/* A membrane that states no thickness is drawn this thick (common practice: a sheet of 40 mil). */
static const double MEMBRANE_THICK = 1;
/* A mat and a mortar bed that state none: common practice of 1/8 in and 1 1/4 in. */
static const double MAT_THICK = 3, BED_THICK = 32;
/* A mat as drawn: a sheet with studs. Wire as drawn, and from one to the next: mesh of 2 in. */
static const double MAT_SHEET = 1, STUD_WIDE = 12, STUD_STEP = 24, WIRE = 2.4, WIRE_STEP = 51;
/* Tape as drawn. */
static const double TAPE_THICK = 0.8;

static const struct plan_membrane *membrane_of(const struct buildup *f)
{
	return f->lay->strips->cover.membrane;
}

/* Bond coat and tile on the bare slab. */
static void lay_tile(struct buildup *f)
{
	const struct plan_tile *tile = f->lay->field->lay->tiles[0];
	f->tile = length_mm(tile->thick_nm);
	f->tile_wide = length_mm(tile->wide_nm);
	f->grout = length_mm(f->lay->field->lay->joint_nm);
	f->bond_coat = rules_figure(f->draft->placed->rules, FIGURE_BOND_COAT);
	f->top = f->bond_coat + f->tile;
}

static const struct site_doorway *doorway_of(const struct placed_lay *lay, const char *id)
{
	for (size_t i = 0; i < lay->field->room_count; i++) {
		const struct site_room *room = lay->field->rooms[i];
		for (size_t d = 0; d < room->doorway_count; d++)
			if (strcmp(room->doorways[d].id, id) == 0 &&
			    room->doorways[d].end != SITE_EDGE_OPEN)
				return &room->doorways[d];
	}
	return NULL;
}

static double top_of(const struct draft *draft, const struct placed_lay *lay,
                     const struct joint *joint)
{
	struct buildup f = {.draft = draft, .lay = lay, .joint = joint};
	lay_tile(&f);
	buildup_lay_cover(&f);
	return f.top;
}

static double height_beyond(const struct buildup *f)
{
	const struct site_doorway *doorway = f->doorway;
	const struct placed_lay *other =
		doorway && doorway->beyond ? lay_of_room(f->draft->placed, doorway->beyond) : NULL;
	if (other)
		return top_of(f->draft, other, f->joint);
	bool is_known = doorway && doorway->plan->has_level;
	return is_known ? length_mm(doorway->plan->level_nm) : (double)NAN;
}

/* That a soft joint serves, a relocated slab joint too; NULL: none. */
static const struct placed_crack *crack_of(const struct buildup *f)
{
	const struct cracks *cracks = f->lay->cracks;
	for (size_t i = 0; f->joint->kind == JOINT_SOFT && i < cracks->crack_count; i++)
		if (strcmp(cracks->cracks[i].id, f->joint->of) == 0)
			return &cracks->cracks[i];
	return NULL;
}

static const struct site_slab_joint *slab_joint_of(const struct buildup *f)
{
	const struct site *site = f->draft->site;
	for (size_t i = 0; i < site->slab_joint_count; i++)
		if (strcmp(site->slab_joints[i].id, f->joint->of) == 0)
			return &site->slab_joints[i];
	return NULL;
}

struct buildup buildup_of(const struct draft *draft, const struct placed_lay *lay,
                          const struct joint *joint)
{
	struct buildup f = {.draft = draft, .lay = lay, .joint = joint};
	bool is_soft = joint->kind == JOINT_SOFT;
	lay_tile(&f);
	f.below = slab_joint_of(&f);
	const struct placed_crack *crack = crack_of(&f);
	f.crack = crack ? crack->crack->width : 0;
	f.is_filled = crack && placed_crack_is_filled(crack, draft->placed->rules);
	f.is_plain = !f.is_filled;
	f.strip = is_soft && lay->strips->strip_count > 0 ? lay->strips->strips[0].half_width : 0;
	f.doorway = joint->kind == JOINT_PERIMETER ? doorway_of(lay, joint->of) : NULL;
	f.beyond = height_beyond(&f);
	return f;
}

static bool is_same(double a, double b)
{
	return isnan(a) || isnan(b) ? isnan(a) && isnan(b) : number_order(a, b) == 0;
}

static bool is_tile_alike(const struct buildup *a, const struct buildup *b)
{
	/* Only a soft joint is told by the tile between it and its crack. */
	bool is_told = a->joint->kind == JOINT_SOFT;
	return is_same(a->tile, b->tile) && is_same(a->bond_coat, b->bond_coat) &&
	       (!is_told || (is_same(a->tile_wide, b->tile_wide) && is_same(a->grout, b->grout)));
}

/* Of strips only a soft joint has any under it. */
static bool is_membrane_alike(struct buildup a, struct buildup b)
{
	bool has_any = a.lay->strips->cover.is_full, has_other = b.lay->strips->cover.is_full;
	buildup_lay_cover(&a);
	buildup_lay_cover(&b);
	return has_any == has_other && is_same(a.membrane, b.membrane) && is_same(a.bed, b.bed) &&
	       is_same(a.strip, b.strip) &&
	       (!has_any || membrane_of(&a)->kind == membrane_of(&b)->kind);
}

static bool is_seal_alike(const struct joint *a, const struct joint *b)
{
	return is_same(a->width, b->width) && is_same(a->depth, b->depth) && a->back == b->back;
}

static bool is_room_alike(const struct site_doorway *a, const struct site_doorway *b)
{
	return a == b || (a && b && a->beyond == b->beyond);
}

bool buildup_is_alike(const struct buildup *a, const struct buildup *b)
{
	return is_tile_alike(a, b) && is_membrane_alike(*a, *b) &&
	       is_seal_alike(a->joint, b->joint) &&
	       is_same(a->below ? a->below->width : 0, b->below ? b->below->width : 0) &&
	       is_same(a->beyond, b->beyond) && is_room_alike(a->doorway, b->doorway);
}

bool buildup_is_mat(const struct buildup *f)
{
	return membrane_of(f) && membrane_of(f)->kind == PLAN_MEMBRANE_MAT;
}

bool buildup_is_bed(const struct buildup *f)
{
	return membrane_of(f) && membrane_of(f)->kind == PLAN_MEMBRANE_MORTAR_BED;
}

/* With the membrane under it, all lies higher; of a mortar bed it is the cleavage membrane. */
void buildup_lay_membrane(struct buildup *f)
{
	double stated = length_mm(membrane_of(f)->thick_nm);
	f->membrane = buildup_is_mat(f) ? MAT_THICK : MEMBRANE_THICK;
	if (buildup_is_bed(f))
		f->bed = stated > f->membrane ? stated - f->membrane : BED_THICK;
	else if (stated > 0)
		f->membrane = stated;
	f->top = f->membrane + f->bed + f->bond_coat + f->tile;
}

void buildup_lay_cover(struct buildup *f)
{
	if (f->lay->strips->cover.is_full)
		buildup_lay_membrane(f);
}

const char *buildup_width(const struct buildup *f, double mm)
{
	return draft_width(f->draft, mm);
}

void buildup_add_membrane(struct section *s, const struct buildup *f, double from, double to)
{
	if (!buildup_is_mat(f)) {
		section_part(s, AREA_MEMBRANE, from, 0, to, f->membrane);
		return;
	}
	section_part(s, AREA_SHADE, from, 0, to, f->membrane);
	for (double x = from; x < to; x += STUD_STEP)
		section_part(s, AREA_MEMBRANE, x, 0, fmin(x + STUD_WIDE, to), f->membrane);
	section_part(s, AREA_MEMBRANE, from, 0, to, fmin(MAT_SHEET, f->membrane / 2));
}

/* The mortar bed from `from` to `to` with its wire, which ends with it at joints. */
static void add_bed(struct section *s, const struct buildup *f, double from, double to)
{
	double middle = f->membrane + f->bed / 2;
	section_part(s, AREA_MORTAR, from, f->membrane, to, f->membrane + f->bed);
	for (double x = from + WIRE_STEP / 4; f->bed > 0 && x + WIRE < to; x += WIRE_STEP)
		section_dot(s, AREA_INK, x, middle - WIRE / 2, x + WIRE, middle + WIRE / 2);
}

void buildup_add_tile(struct section *s, const struct buildup *f, double from, double to, double at)
{
	double step = f->tile_wide + f->grout, coat = f->membrane + f->bed;
	double bed = coat + f->bond_coat;
	add_bed(s, f, from, to);
	section_part(s, AREA_BOND_COAT, from, coat, to, bed);
	for (int k = 0; k * step < to - from; k++) {
		double near = at <= from ? from + k * step : to - k * step;
		double far = at <= from ? fmin(near + f->tile_wide, to)
		                        : fmax(near - f->tile_wide, from);
		section_part(s, AREA_TILE_SECTION, fmin(near, far), bed, fmax(near, far), f->top);
	}
}

static double rod_size(const struct buildup *f)
{
	return f->joint->width + rules_figure(f->draft->placed->rules, FIGURE_ROD_OVERSIZE);
}

double buildup_seal_depth(const struct buildup *f)
{
	return f->joint->depth + (f->joint->back == JOINT_BACK_ROD ? rod_size(f) : 0);
}

void buildup_add_sealant(struct section *s, const struct buildup *f, double from, double to)
{
	const struct joint *joint = f->joint;
	const struct draft *draft = f->draft;
	double under = f->top - joint->depth, middle = (from + to) / 2;
	section_part(s, AREA_SEALANT, from, under, to, f->top);
	section_call(s, middle, f->top - joint->depth / 2,
	             draft_text(draft, "detail.sealant", {"width", buildup_width(f, joint->width)},
	                        {"depth", buildup_width(f, joint->depth)}));
	if (joint->back == JOINT_BACK_ROD) {
		double rod = rod_size(f);
		section_rod(s, from, under - rod, to, under);
		section_call(s, middle, under - rod / 2,
		             draft_text(draft, "detail.rod", {"size", buildup_width(f, rod)}));
	} else if (joint->back == JOINT_BACK_TAPE) {
		section_part(s, AREA_SHADE, from, under - TAPE_THICK, to, under);
		section_call(s, middle, under - TAPE_THICK / 2, draft_word(draft, "detail.tape"));
	}
}

void buildup_call_floor(struct section *s, const struct buildup *f, double x)
{
	const struct draft *draft = f->draft;
	section_call(s, x, f->top - f->tile / 2,
	             draft_text(draft, "detail.tile", {"thick", buildup_width(f, f->tile)}));
	section_call(s, x - 4, f->membrane + f->bed + f->bond_coat / 2,
	             draft_text(draft, "detail.bond-coat",
	                        {"thick", buildup_width(f, f->bond_coat)}));
	if (f->bed > 0)
		section_call(s, x - 8, f->membrane + f->bed * 0.7,
		             draft_text(draft, "detail.bed",
		                        {"thick", buildup_width(f, f->membrane + f->bed)}));
	section_call(s, x - 12, -s->depth * 0.6, draft_word(draft, "detail.slab"));
}

static const char *membrane_name(const struct buildup *f)
{
	if (buildup_is_bed(f))
		return draft_word(f->draft, "detail.cleavage");
	if (buildup_is_mat(f))
		return draft_text(f->draft, "detail.mat", {"thick", buildup_width(f, f->membrane)});
	return draft_word(f->draft, "detail.membrane");
}

void buildup_call_membrane(struct section *s, const struct buildup *f, double x, const char *how)
{
	if (f->membrane > 0)
		section_call(s, x, f->membrane / 2,
		             draft_text(f->draft, "detail.layer", {"what", membrane_name(f)},
		                        {"how", draft_word(f->draft, how)}));
}
