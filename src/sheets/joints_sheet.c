/* joints_sheet.c - the joints on a plan, and their schedule. */
#include <math.h>
#include <string.h>

#include "sheets/details.h"
#include "sheets/draw_tile.h"
#include "sheets/finding_notes.h"
#include "sheets/floor_plan.h"
#include "sheets/joint_tag.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/table.h"
#include "units/number.h"

static void draw_room(struct sheet *sheet, const struct lay_view *v)
{
	draw_tile_joints(sheet, v);
	draw_holds(sheet, v, false);
	draw_scheduled_joints(sheet, v);
	draw_controls(sheet, v);
}

static struct table_row joint_row(const struct draft *draft, const struct detail_groups *details,
                                  const struct placed_lay *lay, const struct joint *joint)
{
	const char *turns = number_text(draft->arena, ceil(joint->turns), 0);
	const char *depth = joint->depth > 0 ? draft_width(draft, joint->depth) : NULL;
	return (struct table_row){.cells = {
					  draft_tag(draft, joint->id),
					  joint_tag_kind(draft, joint),
					  detail_number(draft, details, lay, joint),
					  draft_width(draft, joint->width),
					  depth,
					  joint_tag_back(draft, joint),
					  draft_length(draft, joint->length),
					  turns,
					  joint_tag_where(draft, lay, joint),
					  joint_tag_why(draft, joint),
				  }};
}

static struct table schedule(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct table table = {.column_count = TABLE_COLUMNS_MOST,
	                      .right = 1u << 2 | 1u << 6 | 1u << 7};
	struct detail_groups details = detail_groups_of(draft);
	static const char *const HEADS[TABLE_COLUMNS_MOST] = {"joints.tag",    "joints.kind",
	                                                      "joints.detail", "joints.width",
	                                                      "joints.depth",  "joints.back",
	                                                      "joints.length", "joints.turns",
	                                                      "joints.place",  "joints.why"};
	for (int k = 0; k < TABLE_COLUMNS_MOST; k++)
		table.heads[k] = draft_word(draft, HEADS[k]);
	for (size_t i = 0; i < draft->placed->lay_count; i++) {
		const struct placed_lay *lay = &draft->placed->lays[i];
		for (size_t k = 0; k < lay->joints->joint_count; k++)
			table_add(sheet, &table,
			          joint_row(draft, &details, lay, &lay->joints->joints[k]));
	}
	return table;
}

static const char *panel_size(const struct draft *draft, const struct panel *panel)
{
	return draft_text(draft, "panel.size", {"long", draft_measure(draft, panel->long_side)},
	                  {"short", draft_measure(draft, panel->short_side)});
}

/* How many panels from `first` on are told to be of its size; 0: an earlier one was. */
static size_t count_alike(const struct draft *draft, const struct tiling *tiling, size_t first)
{
	const char *size = panel_size(draft, &tiling->panels[first]);
	size_t count = 0;
	for (size_t i = 0; i < tiling->panel_count; i++) {
		bool is_alike = strcmp(panel_size(draft, &tiling->panels[i]), size) == 0;
		if (is_alike && i < first)
			return 0;
		count += is_alike;
	}
	return count;
}

/* Panels alike are told once. */
static void add_panels(struct notes *notes)
{
	const struct draft *draft = notes->sheet->draft;
	notes_heading(notes, NOTE_WORK, "heading.panels");
	for (size_t i = 0; i < draft->placed->lay_count; i++) {
		const struct placed_lay *lay = &draft->placed->lays[i];
		const struct tiling *tiling = lay->tiling;
		struct point u = frame_out(lay->field->frame, (struct point){1, 0});
		bool is_turned = field_is_askew((struct point){0, 0}, u);
		notes_item(notes, NOTE_WORK, draft_tag(draft, lay->field->lay->id),
		           draft_text(draft, "panel.limit",
		                      {"limit", draft_measure(draft, tiling->movement->limit)}));
		for (size_t k = 0; k < tiling->panel_count; k++) {
			size_t count = count_alike(draft, tiling, k);
			if (count > 0)
				notes_item(notes, NOTE_WORK, NOTE_DASH,
				           draft_text(draft,
				                      is_turned ? "panel.row-turned" : "panel.row",
				                      {"count",
				                       arena_printf(draft->arena, "%zu", count)},
				                      {"size",
				                       panel_size(draft, &tiling->panels[k])}));
		}
	}
}

enum sheet_fit joints_sheet_draw(struct sheet *sheet)
{
	struct notes notes = {.sheet = sheet};
	if (floor_plan_draw(sheet, (struct floor_plan){.draw = draw_room}) != SHEET_FITS)
		return SHEET_TOO_LARGE;
	if (notes_of_parts(&notes)) {
		add_panels(&notes);
		finding_notes_add(&notes, FINDINGS_OF_JOINTS);
	}
	notes_missing(&notes);
	notes_legend(&notes);
	notes_draw(&notes);
	if (sheet->part > 0)
		return SHEET_FITS;
	struct table *table = ARENA_NEW(sheet->draft->arena, struct table);
	*table = schedule(sheet);
	table_place(sheet, table);
	return SHEET_FITS;
}
