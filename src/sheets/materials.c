#include "sheets/materials.h"

#include <math.h>

#include "rules/workmanship.h"
#include "units/length.h"

/* `id`: of the element of the plan; NULL: of none. */
static void add(struct notes *notes, const char *id, const char *text)
{
	notes_item(notes, NOTE_MATERIAL, id ? draft_tag(notes->sheet->draft, id) : NOTE_DASH, text);
}

static const char *nm_text(const struct draft *draft, int64_t nm)
{
	return draft_measure(draft, length_mm(nm));
}

static void add_tiles(struct notes *notes, const struct plan_lay *lay)
{
	const struct draft *draft = notes->sheet->draft;
	for (size_t i = 0; i < lay->tile_count; i++) {
		const struct plan_tile *tile = lay->tiles[i];
		add(notes, tile->id,
		    draft_text(draft,
		               tile->shape == PLAN_SHAPE_HEXAGON ? "material.tile-hexagon"
		                                                 : "material.tile",
		               {"name",
		                tile->name ? tile->name : draft_word(draft, "material.tile-plain")},
		               {"wide", nm_text(draft, tile->wide_nm)},
		               {"long", nm_text(draft, tile->long_nm)},
		               {"thick", nm_text(draft, tile->thick_nm)}));
	}
}

static const char *pattern_key(const struct plan_lay *lay)
{
	static const char *const keys[] = {
		[PLAN_PATTERN_GRID] = "material.joint-grid",
		[PLAN_PATTERN_RUNNING] = "material.joint-running",
		[PLAN_PATTERN_HERRINGBONE] = "material.joint-herringbone",
		[PLAN_PATTERN_BASKETWEAVE] = "material.joint-basketweave",
		[PLAN_PATTERN_PINWHEEL] = "material.joint-pinwheel",
		[PLAN_PATTERN_HEXAGON] = "material.joint-hexagon",
		[PLAN_PATTERN_MODULE] = "material.joint-module",
	};
	bool in_pairs = lay->pattern == PLAN_PATTERN_HERRINGBONE && lay->in_pairs == 2;
	return in_pairs ? "material.joint-pairs" : keys[lay->pattern];
}

static void add_pattern(struct notes *notes, const struct plan_lay *lay)
{
	const struct draft *draft = notes->sheet->draft;
	struct share shift = share_reduced(lay->shift);
	const char *share =
		arena_printf(draft->arena, "%lld/%lld", (long long)shift.num, (long long)shift.den);
	const char *module = lay->module ? draft_tag(draft, lay->module->id) : "";
	add(notes, lay->id,
	    draft_text(draft, pattern_key(lay), {"joint", nm_text(draft, lay->joint_nm)},
	               {"shift", share}, {"module", module}));
}

static void add_membrane(struct notes *notes, const struct placed_lay *lay)
{
	const struct draft *draft = notes->sheet->draft;
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	if (!membrane)
		return;
	const char *name =
		membrane->name ? membrane->name : draft_word(draft, "material.membrane-plain");
	if (lay->strips->strip_count == 0)
		add(notes, membrane->id, name);
	else
		add(notes, membrane->id,
		    draft_text(draft, "material.membrane", {"name", name},
		               {"strip",
		                draft_measure(draft, 2 * lay->strips->strips[0].half_width)}));
}

/* Width and depth of the first joint of a kind: all of one lay are alike. */
static void add_sealed(struct notes *notes, const struct placed_lay *lay,
                       const struct lay_view *seen, enum joint_kind kind, const char *key)
{
	const struct draft *draft = notes->sheet->draft;
	for (size_t i = 0; i < lay->joints->joint_count; i++) {
		const struct joint *joint = &lay->joints->joints[i];
		if (joint->kind != kind || !lay_view_names(draft->arena, seen, joint->line))
			continue;
		add(notes, NULL,
		    draft_text(draft, key, {"width", draft_width_measure(draft, joint->width)},
		               {"depth", draft_width_measure(draft, joint->depth)}));
		return;
	}
}

/* Open where a base covers the gap, sealed where nothing does; both in many rooms. */
static void add_perimeter(struct notes *notes, const struct placed_lay *lay,
                          const struct lay_view *seen)
{
	const struct draft *draft = notes->sheet->draft;
	size_t open = 0, sealed = 0;
	for (size_t i = 0; i < lay->joints->joint_count; i++) {
		const struct joint *joint = &lay->joints->joints[i];
		if (joint->kind == JOINT_PERIMETER &&
		    lay_view_names(draft->arena, seen, joint->line))
			*(joint->is_open ? &open : &sealed) += 1;
	}
	const char *key = !sealed ? "material.gap-open"
	                  : !open ? "material.gap-sealed"
	                          : "material.gap-mixed";
	add(notes, NULL,
	    draft_text(draft, "material.gap", {"gap", draft_measure(draft, lay->field->gap)},
	               {"state", draft_word(draft, key)}));
}

void materials_lippage(struct notes *notes, const struct placed_lay *lay)
{
	const struct draft *draft = notes->sheet->draft;
	double warpage = 0;
	for (size_t i = 0; i < lay->field->lay->tile_count; i++)
		warpage = fmax(warpage, length_mm(lay->field->lay->tiles[i]->warpage_nm));
	double most = workmanship_lippage(draft->placed->rules, lay->module->joint, warpage);
	add(notes, NULL,
	    draft_text(draft, "material.lippage", {"most", draft_width_measure(draft, most)}));
}

void materials_add(struct notes *notes, const struct placed_lay *lay, const struct lay_view *seen)
{
	add_tiles(notes, lay->field->lay);
	add_pattern(notes, lay->field->lay);
	add_membrane(notes, lay);
	add_sealed(notes, lay, seen, JOINT_SOFT, "material.soft");
	add_sealed(notes, lay, seen, JOINT_MOVEMENT, "material.field");
	add_perimeter(notes, lay, seen);
}

const char *materials_cure(const struct draft *draft, const struct placed_lay *lay)
{
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	if (!membrane || membrane->cure_hours <= 0)
		return NULL;
	return arena_printf(draft->arena, "%lld", (long long)membrane->cure_hours);
}
