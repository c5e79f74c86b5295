#include "sheets/materials.h"

#include "sheets/column.h"
#include "units/length.h"

static const char *DASH = "\xe2\x80\x93";
static const double INDENT = 4;

static void add(struct sheet *sheet, const char *text)
{
	column_row(sheet, DASH, INDENT, text);
}

static const char *nm_text(const struct draft *draft, int64_t nm)
{
	return draft_measure(draft, length_mm(nm));
}

static void add_tiles(struct sheet *sheet, const struct plan_lay *lay)
{
	const struct draft *draft = sheet->draft;
	for (size_t i = 0; i < lay->tile_count; i++) {
		const struct plan_tile *tile = lay->tiles[i];
		add(sheet, draft_text(draft, "material.tile",
		                      {"name", tile->name ? tile->name : draft_tag(draft, tile->id)},
		                      {"wide", nm_text(draft, tile->wide_nm)},
		                      {"long", nm_text(draft, tile->long_nm)},
		                      {"thick", nm_text(draft, tile->thick_nm)}));
	}
}

static void add_pattern(struct sheet *sheet, const struct plan_lay *lay)
{
	const struct draft *draft = sheet->draft;
	struct share shift = share_reduced(lay->shift);
	const char *share = arena_printf(draft->arena, "%lld/%lld", (long long)shift.num,
	                                 (long long)shift.den);
	add(sheet, draft_text(draft, lay->pattern == PLAN_PATTERN_RUNNING ? "material.joint-running"
	                                                                   : "material.joint-grid",
	                      {"joint", nm_text(draft, lay->joint_nm)}, {"shift", share}));
}

static void add_membrane(struct sheet *sheet, const struct placed_lay *lay)
{
	const struct draft *draft = sheet->draft;
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	if (!membrane)
		return;
	const char *name = membrane->name ? membrane->name : draft_tag(draft, membrane->id);
	if (lay->strips->strip_count == 0)
		add(sheet, name);
	else
		add(sheet, draft_text(draft, "material.membrane", {"name", name},
		                      {"strip", draft_measure(draft, 2 * lay->strips->strips[0].half_width)}));
}

static void add_soft(struct sheet *sheet, const struct placed_lay *lay)
{
	const struct draft *draft = sheet->draft;
	for (size_t i = 0; i < lay->joints->joint_count; i++) {
		const struct joint *joint = &lay->joints->joints[i];
		if (joint->kind != JOINT_SOFT)
			continue;
		add(sheet, draft_text(draft, "material.soft", {"width", draft_width(draft, joint->width)},
		                      {"depth", draft_width(draft, joint->depth)}));
		return;
	}
}

/* Open where a base covers the gap, sealed where nothing does; both in many rooms. */
static void add_perimeter(struct sheet *sheet, const struct placed_lay *lay)
{
	const struct draft *draft = sheet->draft;
	size_t open = 0, sealed = 0;
	for (size_t i = 0; i < lay->joints->joint_count; i++)
		if (lay->joints->joints[i].kind == JOINT_PERIMETER)
			*(lay->joints->joints[i].is_open ? &open : &sealed) += 1;
	const char *key = !sealed ? "material.gap-open"
	                  : !open ? "material.gap-sealed"
	                          : "material.gap-mixed";
	add(sheet, draft_text(draft, "material.gap", {"gap", draft_measure(draft, lay->field->gap)},
	                      {"state", draft_word(draft, key)}));
}

void materials_draw(struct sheet *sheet, const struct placed_lay *lay)
{
	add_tiles(sheet, lay->field->lay);
	add_pattern(sheet, lay->field->lay);
	add_membrane(sheet, lay);
	add_soft(sheet, lay);
	add_perimeter(sheet, lay);
}

const char *materials_cure(const struct draft *draft, const struct placed_lay *lay)
{
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	if (!membrane || membrane->cure_hours < 0)
		return NULL;
	return arena_printf(draft->arena, "%lld", (long long)membrane->cure_hours);
}
