#include "sheets/detail.h"

#include <math.h>
#include <string.h>

#include "sheets/buildup.h"

/* Floor mm of what is shown and stands for more: slab below, wall above, floor to each side. */
static const double SLAB_SHOWN = 26, WALL_SHOWN = 40, FLOOR_SHOWN = 44, CRACK_SHOWN = 20;
static const double STRIP_END_DEEP = 5; /* of the dimension of its end, under the slab's surface */
static const double PROFILE_THICK = 1.5, PROFILE_FOOT = 22;
static const double BASE_THICK = 10, BASE_HIGH = 32, WALL_THICK = 22;
/* Named just over the slab, so that the leader passes under the sealant between. */
static const double BEYOND_OVER = 1;

static struct section section_of(const struct buildup *f, const char *title, double from, double to)
{
	return (struct section){
		.draft = f->draft,
		.title = draft_word(f->draft, title),
		.element = f->joint->id,
		.spans = {{from, to}},
		.span_count = 1,
		.depth = SLAB_SHOWN,
		.height = f->top,
	};
}

/* ---- over cracks ---- */

/* The slab with its crack at 0, or with the joint that is relocated. */
static void add_broken_slab(struct section *s, const struct buildup *f)
{
	double half = f->below ? f->below->width / 2 : 0, to = s->spans[1].to;
	struct point named = {0, -SLAB_SHOWN * 0.3};
	const char *name = f->below && f->is_filled      ? "detail.joint-bridged-filled"
	                   : f->below                    ? "detail.joint-bridged"
	                   : f->is_filled && f->is_plain ? "detail.crack-either"
	                   : f->is_filled                ? "detail.crack-filled"
	                                                 : "detail.crack";
	if (f->below) {
		section_part(s, AREA_CONCRETE, -CRACK_SHOWN, -SLAB_SHOWN, -half, 0);
		section_part(s, AREA_CONCRETE, half, -SLAB_SHOWN, to, 0);
	} else {
		section_part(s, AREA_CONCRETE, -CRACK_SHOWN, -SLAB_SHOWN, to, 0);
		named = section_crack(s, 0);
	}
	section_call(s, named.x, named.y,
	             draft_text(f->draft, name,
	                        {"width", buildup_width(f, f->below ? 2 * half : f->crack)}));
}

/* The crack at 0, a soft joint beyond the break; membrane from `from` to `to`. */
static struct section soft_section(struct buildup *f, const char *title, double *out_joint)
{
	double joint = 2 * f->tile_wide, half = f->joint->width / 2;
	double beyond = rules_figure(f->draft->placed->rules, FIGURE_STRIP_BEYOND_SOFT);
	struct section s = section_of(f, title, -CRACK_SHOWN, CRACK_SHOWN);
	s.spans[1] =
		(struct section_span){joint - CRACK_SHOWN, joint + half + beyond + CRACK_SHOWN};
	s.span_count = 2;
	add_broken_slab(&s, f);
	buildup_add_tile(&s, f, -CRACK_SHOWN, joint - half, joint - half);
	buildup_add_tile(&s, f, joint + half, s.spans[1].to, joint + half);
	buildup_add_sealant(&s, f, joint - half, joint + half);
	buildup_call_floor(&s, f, s.spans[1].to - 8);
	*out_joint = joint;
	return s;
}

static struct section over_strip(struct buildup *f, const char *title)
{
	buildup_lay_membrane(f);
	double joint, beyond = rules_figure(f->draft->placed->rules, FIGURE_STRIP_BEYOND_SOFT);
	struct section s = soft_section(f, title, &joint);
	double end = joint + f->joint->width / 2 + beyond;
	section_part(&s, AREA_MEMBRANE, -CRACK_SHOWN, 0, end, f->membrane);
	section_part(&s, AREA_BOND_COAT, end, 0, s.spans[1].to, f->membrane);
	section_call(&s, end - 6, f->membrane / 2,
	             draft_text(f->draft, "detail.strip",
	                        {"half", draft_measure(f->draft, f->strip)}));
	section_measure(&s, end - beyond, end, -STRIP_END_DEEP);
	section_call(&s, end - beyond / 3, -STRIP_END_DEEP,
	             draft_text(f->draft, "detail.strip-edge",
	                        {"beyond", draft_measure(f->draft, beyond)}));
	return s;
}

static struct section strip_section(struct buildup *f)
{
	return over_strip(f, "detail.title.strip");
}

static struct section whole_section(struct buildup *f, const char *title)
{
	buildup_lay_membrane(f);
	double joint;
	struct section s = soft_section(f, title, &joint);
	buildup_add_membrane(&s, f, -CRACK_SHOWN, s.spans[1].to);
	buildup_call_membrane(&s, f, joint + CRACK_SHOWN, "detail.how-unbroken");
	return s;
}

static struct section cover_section(struct buildup *f)
{
	return whole_section(f, "detail.title.cover");
}

static struct section mat_section(struct buildup *f)
{
	return whole_section(f, "detail.title.mat");
}

static struct section bed_section(struct buildup *f)
{
	return whole_section(f, "detail.title.bed");
}

/* Bonded there, the membrane would tear as the joint opens. */
static struct section relocated_section(struct buildup *f)
{
	const char *title = "detail.title.relocated";
	if (!f->lay->strips->cover.is_full)
		return over_strip(f, title);
	struct section s = whole_section(f, title);
	section_call(&s, 3, 0, draft_word(f->draft, "detail.unbonded"));
	return s;
}

/* ---- joints of the slab and of the tile ---- */

static struct section carried_section(struct buildup *f)
{
	buildup_lay_cover(f);
	double half = f->joint->width / 2, open = f->below ? f->below->width / 2 : half;
	struct section s = section_of(f, "detail.title.carried", -FLOOR_SHOWN, FLOOR_SHOWN);
	section_part(&s, AREA_CONCRETE, -FLOOR_SHOWN, -SLAB_SHOWN, -open, 0);
	section_part(&s, AREA_CONCRETE, open, -SLAB_SHOWN, FLOOR_SHOWN, 0);
	buildup_add_membrane(&s, f, -FLOOR_SHOWN, -half);
	buildup_add_membrane(&s, f, half, FLOOR_SHOWN);
	buildup_add_tile(&s, f, -FLOOR_SHOWN, -half, -half);
	buildup_add_tile(&s, f, half, FLOOR_SHOWN, half);
	buildup_add_sealant(&s, f, -half, half);
	section_call(&s, 0, -SLAB_SHOWN * 0.25,
	             draft_text(f->draft, "detail.slab-joint",
	                        {"width", buildup_width(f, 2 * open)}));
	buildup_call_membrane(&s, f, half + 6, "detail.how-ends");
	buildup_call_floor(&s, f, FLOOR_SHOWN - 8);
	return s;
}

static struct section field_section(struct buildup *f)
{
	buildup_lay_cover(f);
	double half = f->joint->width / 2;
	struct section s = section_of(f, "detail.title.field", -FLOOR_SHOWN, FLOOR_SHOWN);
	section_part(&s, AREA_CONCRETE, -FLOOR_SHOWN, -SLAB_SHOWN, FLOOR_SHOWN, 0);
	buildup_add_membrane(&s, f, -FLOOR_SHOWN, FLOOR_SHOWN);
	buildup_add_tile(&s, f, -FLOOR_SHOWN, -half, -half);
	buildup_add_tile(&s, f, half, FLOOR_SHOWN, half);
	buildup_add_sealant(&s, f, -half, half);
	buildup_call_membrane(&s, f, half + 12, "detail.how-on");
	buildup_call_floor(&s, f, FLOOR_SHOWN - 8);
	return s;
}

/* ---- at the edge of the tile ---- */

/* Slab and tile up to the edge at 0, what stands there to the left. */
static struct section edge_section(struct buildup *f, const char *title)
{
	buildup_lay_cover(f);
	struct section s = section_of(f, title, -WALL_THICK, FLOOR_SHOWN * 1.5);
	double gap = f->joint->width;
	section_part(&s, AREA_CONCRETE, -WALL_THICK, -SLAB_SHOWN, s.spans[0].to, 0);
	buildup_add_membrane(&s, f, 0, s.spans[0].to);
	buildup_call_membrane(&s, f, s.spans[0].to - 16, "detail.how-wall");
	buildup_add_tile(&s, f, gap, s.spans[0].to, gap);
	return s;
}

static void add_wall(struct section *s, const struct buildup *f, const char *name)
{
	s->height = f->top + WALL_SHOWN;
	section_part(s, AREA_OBSTACLE, -WALL_THICK, 0, 0, s->height);
	section_call(s, -WALL_THICK / 2, s->height - 8, draft_word(f->draft, name));
}

static struct section open_section(struct buildup *f)
{
	struct section s = edge_section(f, "detail.title.open");
	add_wall(&s, f, "detail.wall");
	section_part(&s, AREA_PAPER, 0, f->top + 1, BASE_THICK, f->top + 1 + BASE_HIGH);
	section_call(&s, BASE_THICK / 2, f->top + BASE_HIGH * 0.6,
	             draft_word(f->draft, "detail.base"));
	section_call(&s, f->joint->width / 2, f->top - f->tile / 3,
	             draft_text(f->draft, "detail.gap",
	                        {"gap", buildup_width(f, f->joint->width)}));
	buildup_call_floor(&s, f, s.spans[0].to - 8);
	return s;
}

static struct section sealed_section(struct buildup *f)
{
	struct section s = edge_section(f, "detail.title.sealed");
	add_wall(&s, f, "detail.stands");
	buildup_add_sealant(&s, f, 0, f->joint->width);
	buildup_call_floor(&s, f, s.spans[0].to - 8);
	return s;
}

static struct section column_section(struct buildup *f)
{
	struct section s = edge_section(f, "detail.title.column");
	add_wall(&s, f, "detail.column");
	buildup_add_sealant(&s, f, 0, f->joint->width);
	buildup_call_floor(&s, f, s.spans[0].to - 8);
	return s;
}

/* What it is called: a room's own tile, or how high the plan says it is. */
static const char *beyond_name(const struct buildup *f)
{
	const struct site_doorway *doorway = f->doorway;
	if (isnan(f->beyond))
		return draft_word(f->draft, "detail.beyond");
	if (doorway->beyond)
		return draft_text(f->draft, "detail.beyond-room", {"room", doorway->beyond->name});
	return draft_text(f->draft, "detail.beyond-level",
	                  {"level", draft_measure(f->draft, f->beyond)});
}

/* An angle whose foot lies in the bond coat and whose leg guards the tile. */
static void add_profile(struct section *s, const struct buildup *f)
{
	double gap = f->joint->width, under = f->membrane + f->bed;
	section_part(s, AREA_INK, gap, under, gap + PROFILE_FOOT, under + PROFILE_THICK);
	section_part(s, AREA_INK, gap, under, gap + PROFILE_THICK, f->top);
	section_call(s, gap + PROFILE_FOOT, under + PROFILE_THICK / 2,
	             draft_word(f->draft, "detail.profile"));
}

/* Flush with the tile where the plan does not say how high the floor beyond is. The sealant is
 * level with the lower of the two, as far as its back-up fits under it. */
static struct section stop_section(struct buildup *f)
{
	struct section s = edge_section(f, "detail.title.stop");
	double beyond = isnan(f->beyond) ? f->top : f->beyond;
	struct buildup seal = *f;
	seal.top = fmax(fmin(f->top, beyond), buildup_seal_depth(f));
	s.height = fmax(f->top, beyond);
	section_part(&s, AREA_SHADE, -WALL_THICK, 0, 0, beyond);
	section_call(&s, -WALL_THICK / 2, BEYOND_OVER, beyond_name(f));
	add_profile(&s, f);
	buildup_add_sealant(&s, &seal, 0, f->joint->width);
	buildup_call_floor(&s, f, s.spans[0].to - 8);
	return s;
}

/* ---- which of them a joint has ---- */

static bool is_obstacle(const struct buildup *f)
{
	for (size_t i = 0; i < f->lay->field->room_count; i++) {
		const struct site_room *room = f->lay->field->rooms[i];
		for (size_t k = 0; k < room->obstacle_count; k++)
			if (strcmp(room->obstacles[k].id, f->joint->of) == 0)
				return true;
	}
	return false;
}

static bool is_relocated(const struct buildup *f)
{
	return f->joint->kind == JOINT_SOFT && f->below;
}

static bool is_beside_crack(const struct buildup *f)
{
	return f->joint->kind == JOINT_SOFT && !f->below;
}

static bool is_over_strip(const struct buildup *f)
{
	return is_beside_crack(f) && f->lay->strips->strip_count > 0;
}

static bool is_over_all(const struct buildup *f)
{
	return is_beside_crack(f) && f->lay->strips->cover.is_full;
}

static bool is_over_cover(const struct buildup *f)
{
	return is_over_all(f) && !buildup_is_mat(f) && !buildup_is_bed(f);
}

static bool is_over_mat(const struct buildup *f)
{
	return is_over_all(f) && buildup_is_mat(f);
}

static bool is_over_bed(const struct buildup *f)
{
	return is_over_all(f) && buildup_is_bed(f);
}

static bool is_carried(const struct buildup *f)
{
	return f->joint->kind == JOINT_CARRIED;
}

static bool is_field(const struct buildup *f)
{
	return f->joint->kind == JOINT_MOVEMENT;
}

static bool is_left_open(const struct buildup *f)
{
	return f->joint->kind == JOINT_PERIMETER && f->joint->is_open;
}

static bool is_sealed(const struct buildup *f)
{
	return f->joint->kind == JOINT_PERIMETER && !f->joint->is_open && !f->doorway &&
	       !is_obstacle(f);
}

static bool is_at_column(const struct buildup *f)
{
	return f->joint->kind == JOINT_PERIMETER && !f->joint->is_open && is_obstacle(f);
}

static bool is_stop(const struct buildup *f)
{
	return f->joint->kind == JOINT_PERIMETER && !f->joint->is_open && f->doorway;
}

/* In the order in which they are drawn. */
static const struct {
	bool (*is_it)(const struct buildup *);
	struct section (*draw)(struct buildup *);
} KINDS[] = {
	{is_over_strip, strip_section},    {is_over_cover, cover_section},
	{is_over_mat, mat_section},        {is_over_bed, bed_section},
	{is_relocated, relocated_section}, {is_carried, carried_section},
	{is_field, field_section},         {is_left_open, open_section},
	{is_sealed, sealed_section},       {is_at_column, column_section},
	{is_stop, stop_section},
};
static const int KIND_COUNT = sizeof KINDS / sizeof *KINDS;

int detail_kind_of(const struct buildup *f)
{
	for (int k = 0; k < KIND_COUNT; k++)
		if (KINDS[k].is_it(f))
			return k;
	return KIND_COUNT;
}

struct section detail_section(struct buildup *f)
{
	return KINDS[detail_kind_of(f)].draw(f);
}
