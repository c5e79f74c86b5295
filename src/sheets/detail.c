#include "sheets/detail.h"

#include <string.h>

#include "units/length.h"

/* Floor mm of what is shown and stands for more: slab below, wall above, floor to each side. */
static const double SLAB_SHOWN = 26, WALL_SHOWN = 40, FLOOR_SHOWN = 44, CRACK_SHOWN = 20;
static const double BASE_THICK = 10, BASE_HIGH = 32, WALL_THICK = 22;
/* A membrane that states no thickness is drawn this thick (common practice: a sheet of 40 mil). */
static const double MEMBRANE_THICK = 1;
/* Tape as drawn. */
static const double TAPE_THICK = 0.8;

/* What a section is made of. */
struct facts {
	const struct draft *draft;
	const struct placed_lay *lay;
	const struct joint *joint;
	double tile, tile_wide, grout; /* thickness, the side across, the tile joint */
	double bond_coat, membrane;    /* membrane: 0 where there is none */
	double top;                    /* surface of the tile */
};

static const struct plan_membrane *membrane_of(const struct facts *f)
{
	return f->lay->strips->cover.membrane;
}

static struct facts facts_of(const struct draft *draft, const struct placed_lay *lay,
                             const struct joint *joint)
{
	struct facts f = {.draft = draft, .lay = lay, .joint = joint};
	const struct plan_tile *tile = lay->field->lay->tiles[0];
	f.tile = length_mm(tile->thick_nm);
	f.tile_wide = length_mm(tile->wide_nm);
	f.grout = length_mm(lay->field->lay->joint_nm);
	f.bond_coat = rules_figure(draft->placed->rules, FIGURE_BOND_COAT);
	f.top = f.bond_coat + f.tile;
	return f;
}

/* With the membrane under it, all lies higher. */
static void lay_membrane(struct facts *f)
{
	double stated = length_mm(membrane_of(f)->thick_nm);
	f->membrane = stated > 0 ? stated : MEMBRANE_THICK;
	f->top = f->membrane + f->bond_coat + f->tile;
}

static const char *width_text(const struct facts *f, double mm)
{
	return draft_width(f->draft, mm);
}

static struct section section_of(const struct facts *f, const char *title, double from, double to)
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

/* Bond coat and tile from `from` to `to`, the first tile whole from the end that is `at`. */
static void add_tile(struct section *s, const struct facts *f, double from, double to, double at)
{
	double step = f->tile_wide + f->grout, bed = f->membrane + f->bond_coat;
	section_part(s, AREA_BOND_COAT, from, f->membrane, to, bed);
	for (int k = 0; k * step < to - from; k++) {
		double near = at <= from ? from + k * step : to - k * step;
		double far = at <= from ? fmin(near + f->tile_wide, to)
		                        : fmax(near - f->tile_wide, from);
		section_part(s, AREA_TILE_SECTION, fmin(near, far), bed, fmax(near, far), f->top);
	}
}

/* Sealant over its back-up, from `from` to `to`. */
static void add_sealant(struct section *s, const struct facts *f, double from, double to)
{
	const struct joint *joint = f->joint;
	const struct draft *draft = f->draft;
	double under = f->top - joint->depth, middle = (from + to) / 2;
	section_part(s, AREA_SEALANT, from, under, to, f->top);
	section_call(s, middle, f->top - joint->depth / 2,
	             draft_text(draft, "detail.sealant", {"width", width_text(f, joint->width)},
	                        {"depth", width_text(f, joint->depth)}));
	if (joint->back == JOINT_BACK_ROD) {
		double rod = joint->width + rules_figure(draft->placed->rules, FIGURE_ROD_OVERSIZE);
		section_rod(s, from, under - rod, to, under);
		section_call(s, middle, under - rod / 2,
		             draft_text(draft, "detail.rod", {"size", width_text(f, rod)}));
	} else if (joint->back == JOINT_BACK_TAPE) {
		section_part(s, AREA_SHADE, from, under - TAPE_THICK, to, under);
		section_call(s, middle, under - TAPE_THICK / 2, draft_word(draft, "detail.tape"));
	}
}

static void call_floor(struct section *s, const struct facts *f, double x)
{
	const struct draft *draft = f->draft;
	section_call(s, x, f->top - f->tile / 2,
	             draft_text(draft, "detail.tile", {"thick", width_text(f, f->tile)}));
	section_call(s, x - 4, f->membrane + f->bond_coat / 2,
	             draft_text(draft, "detail.bond-coat", {"thick", width_text(f, f->bond_coat)}));
	section_call(s, x - 12, -SLAB_SHOWN * 0.6, draft_word(draft, "detail.slab"));
}

/* ---- over cracks ---- */

static const struct site_crack *crack_of(const struct facts *f)
{
	const struct site *site = f->draft->site;
	for (size_t i = 0; i < site->crack_count; i++)
		if (strcmp(site->cracks[i].id, f->joint->of) == 0)
			return &site->cracks[i];
	return NULL;
}

/* The crack at 0, a soft joint beyond the break; membrane from `from` to `to`. */
static struct section soft_section(struct facts *f, const char *title, double *out_joint)
{
	double joint = 2 * f->tile_wide, half = f->joint->width / 2;
	double beyond = rules_figure(f->draft->placed->rules, FIGURE_STRIP_BEYOND_SOFT);
	struct section s = section_of(f, title, -CRACK_SHOWN, CRACK_SHOWN);
	const struct site_crack *crack = crack_of(f);
	s.spans[1] =
		(struct section_span){joint - CRACK_SHOWN, joint + half + beyond + CRACK_SHOWN};
	s.span_count = 2;
	section_part(&s, AREA_CONCRETE, -CRACK_SHOWN, -SLAB_SHOWN, s.spans[1].to, 0);
	section_crack(&s, 0);
	section_call(&s, 0, -SLAB_SHOWN * 0.3,
	             draft_text(f->draft,
	                        strcmp(f->joint->why, "crack-fill") == 0 ? "detail.crack-filled"
	                                                                 : "detail.crack",
	                        {"width", width_text(f, crack ? crack->width : 0)}));
	add_tile(&s, f, -CRACK_SHOWN, joint - half, joint - half);
	add_tile(&s, f, joint + half, s.spans[1].to, joint + half);
	add_sealant(&s, f, joint - half, joint + half);
	call_floor(&s, f, s.spans[1].to - 8);
	*out_joint = joint;
	return s;
}

static struct section strip_section(struct facts *f)
{
	lay_membrane(f);
	double joint, beyond = rules_figure(f->draft->placed->rules, FIGURE_STRIP_BEYOND_SOFT);
	struct section s = soft_section(f, "detail.title.strip", &joint);
	double end = joint + f->joint->width / 2 + beyond;
	section_part(&s, AREA_MEMBRANE, -CRACK_SHOWN, 0, end, f->membrane);
	section_part(&s, AREA_BOND_COAT, end, 0, s.spans[1].to, f->membrane);
	section_call(&s, end - 6, f->membrane / 2,
	             draft_text(f->draft, "detail.strip",
	                        {"half",
	                         draft_measure(f->draft, f->lay->strips->strips[0].half_width)}));
	section_call(&s, end, 0,
	             draft_text(f->draft, "detail.strip-edge",
	                        {"beyond", draft_measure(f->draft, beyond)}));
	return s;
}

static struct section cover_section(struct facts *f)
{
	lay_membrane(f);
	double joint;
	struct section s = soft_section(f, "detail.title.cover", &joint);
	section_part(&s, AREA_MEMBRANE, -CRACK_SHOWN, 0, s.spans[1].to, f->membrane);
	section_call(&s, joint + CRACK_SHOWN, f->membrane / 2,
	             draft_word(f->draft, "detail.cover"));
	return s;
}

/* ---- joints of the slab and of the tile ---- */

static const struct site_slab_joint *slab_joint_of(const struct facts *f)
{
	const struct site *site = f->draft->site;
	for (size_t i = 0; i < site->slab_joint_count; i++)
		if (strcmp(site->slab_joints[i].id, f->joint->of) == 0)
			return &site->slab_joints[i];
	return NULL;
}

static struct section carried_section(struct facts *f)
{
	if (f->lay->strips->cover.is_full)
		lay_membrane(f);
	const struct site_slab_joint *below = slab_joint_of(f);
	double half = f->joint->width / 2, open = below ? below->width / 2 : half;
	struct section s = section_of(f, "detail.title.carried", -FLOOR_SHOWN, FLOOR_SHOWN);
	section_part(&s, AREA_CONCRETE, -FLOOR_SHOWN, -SLAB_SHOWN, -open, 0);
	section_part(&s, AREA_CONCRETE, open, -SLAB_SHOWN, FLOOR_SHOWN, 0);
	section_part(&s, AREA_MEMBRANE, -FLOOR_SHOWN, 0, -half, f->membrane);
	section_part(&s, AREA_MEMBRANE, half, 0, FLOOR_SHOWN, f->membrane);
	add_tile(&s, f, -FLOOR_SHOWN, -half, -half);
	add_tile(&s, f, half, FLOOR_SHOWN, half);
	add_sealant(&s, f, -half, half);
	section_call(&s, 0, -SLAB_SHOWN * 0.25,
	             draft_text(f->draft, "detail.slab-joint", {"width", width_text(f, 2 * open)}));
	if (f->membrane > 0)
		section_call(&s, half + 6, f->membrane / 2,
		             draft_word(f->draft, "detail.cover-ends"));
	call_floor(&s, f, FLOOR_SHOWN - 8);
	return s;
}

static struct section field_section(struct facts *f)
{
	if (f->lay->strips->cover.is_full)
		lay_membrane(f);
	double half = f->joint->width / 2;
	struct section s = section_of(f, "detail.title.field", -FLOOR_SHOWN, FLOOR_SHOWN);
	section_part(&s, AREA_CONCRETE, -FLOOR_SHOWN, -SLAB_SHOWN, FLOOR_SHOWN, 0);
	section_part(&s, AREA_MEMBRANE, -FLOOR_SHOWN, 0, FLOOR_SHOWN, f->membrane);
	add_tile(&s, f, -FLOOR_SHOWN, -half, -half);
	add_tile(&s, f, half, FLOOR_SHOWN, half);
	add_sealant(&s, f, -half, half);
	if (f->membrane > 0)
		section_call(&s, half + 12, f->membrane / 2,
		             draft_word(f->draft, "detail.cover-on"));
	call_floor(&s, f, FLOOR_SHOWN - 8);
	return s;
}

/* ---- at the edge of the tile ---- */

/* Slab and tile up to the edge at 0, what stands there to the left. */
static struct section edge_section(struct facts *f, const char *title)
{
	if (f->lay->strips->cover.is_full)
		lay_membrane(f);
	struct section s = section_of(f, title, -WALL_THICK, FLOOR_SHOWN * 1.5);
	double gap = f->joint->width;
	section_part(&s, AREA_CONCRETE, -WALL_THICK, -SLAB_SHOWN, s.spans[0].to, 0);
	section_part(&s, AREA_MEMBRANE, 0, 0, s.spans[0].to, f->membrane);
	add_tile(&s, f, gap, s.spans[0].to, gap);
	return s;
}

static void add_wall(struct section *s, const struct facts *f, const char *name)
{
	s->height = f->top + WALL_SHOWN;
	section_part(s, AREA_OBSTACLE, -WALL_THICK, 0, 0, s->height);
	section_call(s, -WALL_THICK / 2, s->height - 8, draft_word(f->draft, name));
}

static struct section open_section(struct facts *f)
{
	struct section s = edge_section(f, "detail.title.open");
	add_wall(&s, f, "detail.wall");
	section_part(&s, AREA_PAPER, 0, f->top + 1, BASE_THICK, f->top + 1 + BASE_HIGH);
	section_call(&s, BASE_THICK / 2, f->top + BASE_HIGH * 0.6,
	             draft_word(f->draft, "detail.base"));
	section_call(&s, f->joint->width / 2, f->top - f->tile / 3,
	             draft_text(f->draft, "detail.gap", {"gap", width_text(f, f->joint->width)}));
	call_floor(&s, f, s.spans[0].to - 8);
	return s;
}

static struct section sealed_section(struct facts *f)
{
	struct section s = edge_section(f, "detail.title.sealed");
	add_wall(&s, f, "detail.stands");
	add_sealant(&s, f, 0, f->joint->width);
	call_floor(&s, f, s.spans[0].to - 8);
	return s;
}

static struct section stop_section(struct facts *f)
{
	struct section s = edge_section(f, "detail.title.stop");
	section_part(&s, AREA_SHADE, -WALL_THICK, 0, 0, f->top);
	section_call(&s, -WALL_THICK / 2, f->top / 2, draft_word(f->draft, "detail.beyond"));
	add_sealant(&s, f, 0, f->joint->width);
	call_floor(&s, f, s.spans[0].to - 8);
	return s;
}

/* ---- which of them a floor has ---- */

static bool is_doorway(const struct facts *f)
{
	for (size_t i = 0; i < f->lay->field->room_count; i++) {
		const struct site_room *room = f->lay->field->rooms[i];
		for (size_t d = 0; d < room->doorway_count; d++)
			if (strcmp(room->doorways[d].id, f->joint->of) == 0)
				return true;
	}
	return false;
}

static bool is_over_strip(const struct facts *f)
{
	return f->joint->kind == JOINT_SOFT && f->lay->strips->strip_count > 0;
}

static bool is_over_cover(const struct facts *f)
{
	return f->joint->kind == JOINT_SOFT && f->lay->strips->cover.is_full;
}

static bool is_carried(const struct facts *f)
{
	return f->joint->kind == JOINT_CARRIED;
}

static bool is_field(const struct facts *f)
{
	return f->joint->kind == JOINT_MOVEMENT;
}

static bool is_left_open(const struct facts *f)
{
	return f->joint->kind == JOINT_PERIMETER && f->joint->is_open;
}

static bool is_sealed(const struct facts *f)
{
	return f->joint->kind == JOINT_PERIMETER && !f->joint->is_open && !is_doorway(f);
}

static bool is_stop(const struct facts *f)
{
	return f->joint->kind == JOINT_PERIMETER && !f->joint->is_open && is_doorway(f);
}

/* In the order in which they are drawn. */
static const struct detail_kind {
	bool (*is_it)(const struct facts *);
	struct section (*draw)(struct facts *);
} KINDS[] = {
	{is_over_strip, strip_section}, {is_over_cover, cover_section},
	{is_carried, carried_section},  {is_field, field_section},
	{is_left_open, open_section},   {is_sealed, sealed_section},
	{is_stop, stop_section},
};
enum { KIND_COUNT = sizeof KINDS / sizeof *KINDS };

static const char *joined(const struct draft *draft, const char *tags, const char *id)
{
	return arena_printf(draft->arena, "%s%s%s", tags, *tags ? ", " : "", draft_tag(draft, id));
}

/* Of the first joint of its kind; false: the floor has none. */
static bool find_detail(const struct draft *draft, const struct detail_kind *kind,
                        struct section *out_section)
{
	const char *tags = "";
	for (size_t i = 0; i < draft->placed->lay_count; i++) {
		const struct placed_lay *lay = &draft->placed->lays[i];
		for (size_t k = 0; k < lay->joints->joint_count; k++) {
			struct facts facts = facts_of(draft, lay, &lay->joints->joints[k]);
			if (!kind->is_it(&facts))
				continue;
			if (!*tags)
				*out_section = kind->draw(&facts);
			tags = joined(draft, tags, facts.joint->id);
		}
	}
	out_section->joints = tags;
	return *tags != '\0';
}

struct details details_of(const struct draft *draft)
{
	struct details details = {.items = ARENA_ARRAY(draft->arena, struct section, KIND_COUNT)};
	for (size_t k = 0; k < KIND_COUNT; k++)
		if (find_detail(draft, &KINDS[k], &details.items[details.count])) {
			struct section *section = &details.items[details.count++];
			section->title = arena_printf(draft->arena, "%zu  %s", details.count,
			                              section->title);
		}
	return details;
}
