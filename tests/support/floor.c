#include "support/floor.h"

#include "geometry/segment.h"
#include "units/length.h"

#define NM(mm) ((int64_t)((mm)*1000000.0))

static struct ring ring_of(struct arena *arena, double x0, double y0, double x1, double y1)
{
	const struct point corners[] = {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
	return ring_copy(arena, corners, 4);
}

struct region floor_rectangle(struct arena *arena, double x0, double y0, double x1, double y1)
{
	return region_from_ring(arena, ring_of(arena, x0, y0, x1, y1));
}

static struct line line_of(struct arena *arena, double x0, double y0, double x1, double y1)
{
	const struct point ends[] = {{x0, y0}, {x1, y1}};
	struct ring copy = ring_copy(arena, ends, 2);
	return (struct line){copy.points, copy.count};
}

/* ---- the plan and the site ---- */

static void write_plan(struct floor *f, struct arena *arena)
{
	f->slab = (struct plan_slab){.line = 3, .id = "S1", .cement = "N", .strength_mpa = 25};
	f->slab.thickness_nm = NM(125);
	f->slab.ambient_share = 0.6;
	date_parse("2026-01-05", &f->slab.placed);
	f->job.line = 2;
	date_parse("2026-04-06", &f->job.starts);
	f->plan_room = (struct plan_room){.line = 4, .id = "hall", .slab = &f->slab};
	f->plan_room.exposure = PLAN_EXPOSURE_INDOOR;
	f->plan_crack = (struct plan_crack){.line = 5, .id = "K1", .width_nm = NM(1)};
	f->plan_joint = (struct plan_slab_joint){.line = 6, .id = "J1", .width_nm = NM(4)};
	f->plan_joint.kind = PLAN_JOINT_CONTRACTION;
	f->tile = (struct plan_tile){.line = 7, .id = "T1", .edge = PLAN_TILE_EDGE_RECTIFIED};
	f->plan_lay = (struct plan_lay){.line = 8, .id = "L1", .joint_nm = NM(6), .tile_count = 1};
	f->plan_lay.tiles = ARENA_ARRAY(arena, const struct plan_tile *, 1);
	f->plan_lay.tiles[0] = &f->tile;
	f->plan_lay.shift = (struct share){1, 3};
	f->membrane = (struct plan_membrane){.line = 9, .id = "M1", .min_slab_age_days = -1};
	f->membrane.kind = PLAN_MEMBRANE_SHEET;
	f->membrane.rooms = ARENA_ARRAY(arena, const struct plan_room *, 1);
	f->membrane.rooms[0] = &f->plan_room;
	f->membrane.room_count = 1;
	f->membrane.max_humidity_share = f->membrane.max_emission = (double)NAN;
	f->unmet = (struct plan_ref){.kind = PLAN_REF_WALL, .id = "hall.1", .line = 8};
	f->plan = (struct plan){.title = "A small <hall>",
	                        .job = &f->job,
	                        .sealant.per_tube_ml = 300,
	                        .grout = {.density_kg_l = 1.6, .bag_kg = 10},
	                        .slabs = &f->slab,
	                        .slab_count = 1,
	                        .membranes = &f->membrane,
	                        .membrane_count = 1};
}

static void write_site(struct floor *f, struct arena *arena)
{
	f->room = (struct site_room){.plan = &f->plan_room, .id = "hall", .name = "Hall"};
	f->room.outline = ring_of(arena, 0, 0, 4000, 3000);
	f->room.edge_count = f->room.outline.count;
	f->room.edges = ARENA_ARRAY(arena, struct site_edge, f->room.edge_count);
	for (size_t i = 0; i < f->room.edge_count; i++) {
		struct segment side = segment_of_ring(f->room.outline, i);
		f->room.edges[i] = (struct site_edge){.id = arena_printf(arena, "hall.%zu", i + 1),
		                                      .from = side.from,
		                                      .to = side.to,
		                                      .show = true};
	}
	f->slab_part = (struct site_slab_part){
		.slab = &f->slab,
		.exposure = f->slab.exposure,
		.ground = floor_rectangle(arena, 0, 0, 4000, 3000),
	};
	f->room.slab_parts = &f->slab_part;
	f->room.slab_part_count = 1;
	f->crack =
		(struct site_crack){.plan = &f->plan_crack, .id = "K1", .width = 1, .wander = 12};
	f->crack.line = line_of(arena, 2000, 0, 2000, 3000);
	f->joint = (struct site_slab_joint){.plan = &f->plan_joint, .id = "J1", .width = 4};
	f->joint.line = line_of(arena, 3900, 0, 3900, 3000);
	f->site = (struct site){.plan = &f->plan,
	                        .rooms = &f->room,
	                        .room_count = 1,
	                        .cracks = &f->crack,
	                        .crack_count = 1};
}

/* ---- the passes ---- */

static void write_field(struct floor *f, struct arena *arena)
{
	f->field = (struct field){.lay = &f->plan_lay, .site = &f->site, .room_count = 1};
	f->field.rooms = ARENA_ARRAY(arena, const struct site_room *, 1);
	f->field.rooms[0] = &f->room;
	f->field.frame = frame_from_deg(0);
	f->field.tolerance = 6;
	f->field.ground = floor_rectangle(arena, 0, 0, 4000, 3000);
	f->field.region = floor_rectangle(arena, 6, 6, 3994, 2994);
	f->field.room_grounds = &f->field.ground;
	f->field.area_mm2 = region_area(&f->field.region);
	f->borders[0] = (struct field_border){.from = {6, 6}, .to = {3994, 6}, .of = "hall.1"};
	f->field.borders = f->borders;
	f->field.border_count = 1;
	f->carried = (struct field_carried){.joint = &f->joint,
	                                    .of = "J1",
	                                    .id = "J1.carried",
	                                    .width = 10};
	f->field.carried = &f->carried;
}

static void write_tile(struct floor *f, struct arena *arena)
{
	f->face.ring = ring_of(arena, 3, 3, 303, 153);
	f->face.area_mm2 = 300 * 150;
	f->module = (struct module){.a = {306, 0},
	                            .b = {102, 156},
	                            .faces = &f->face,
	                            .face_count = 1,
	                            .joint = 6,
	                            .tile_width = 150,
	                            .tile_long = 300};
	f->cut = (struct border_cut){.border = 0,
	                             .from = 80,
	                             .to = 90,
	                             .whole = 150,
	                             .least = 80,
	                             .worst = 74,
	                             .small_share = 0.5};
	f->position = (struct position){.cuts = &f->cut,
	                                .cut_count = 1,
	                                .smallest_cut = 80,
	                                .smallest_cut_worst = 74};
	f->panel = (struct panel){.id = "L1.panel.1",
	                          .whole_count = 200,
	                          .tile_mm2 = 11e6,
	                          .position = {10, 20},
	                          .long_side = 3988,
	                          .short_side = 2988};
	f->panel.ground = f->field.region.polygons[0];
	f->panel.area_mm2 = f->field.area_mm2;
	f->panel.pieces = ARENA_ARRAY(arena, struct tile_piece, 3);
	f->panel.piece_count = 3;
	/* The last of them lies in the hold. */
	for (size_t i = 0; i < 3; i++) {
		double x = 20 + 950 * (double)i;
		f->panel.pieces[i].area_mm2 = 3000 - 1000 * (double)i;
		f->panel.pieces[i].ring = ring_of(arena, x, 20, x + 30 - 10 * (double)i, 120);
	}
	f->tiling = (struct tiling){.field = &f->field,
	                            .module = &f->module,
	                            .movement = &f->movement,
	                            .panels = &f->panel,
	                            .panel_count = 1};
}

void floor_judge_crack(struct floor *f)
{
	struct crack_facts facts = {
		.width = f->crack.width,
		.step = f->crack.step,
		.is_moving = f->plan_crack.moving == PLAN_MOVING_YES,
		.is_suspended = f->slab.support == PLAN_SUPPORT_SUSPENDED,
		.is_tensioned = f->slab.post_tensioned,
	};
	for (size_t i = 0; i < f->plan.answer_count; i++) {
		const struct plan_answer *a = &f->plan.answers[i];
		f->answers[facts.answer_count++] =
			(struct crack_answer){a->rule, (enum decision)a->decision, a->ref != NULL,
		                              a->line};
	}
	facts.answers = f->answers;
	f->placed_crack.verdict = crack_rule_judge(f->placed.rules, &facts);
	f->placed_crack.state = f->placed_crack.verdict.state;
	f->placed_crack.pending = f->placed_crack.verdict.pending;
}

static void write_cracks(struct floor *f, struct arena *arena)
{
	f->placed_crack = (struct placed_crack){.crack = &f->crack, .id = "K1", .run_count = 1};
	f->placed_crack.runs = ARENA_NEW(arena, struct line);
	*f->placed_crack.runs = f->crack.line;
	f->group = (struct crack_group){.id = "K1", .lot = "K1", .crack_count = 1};
	f->group.cracks = ARENA_ARRAY(arena, size_t, 1);
	f->hold = (struct hold){.id = "K1.hold",
	                        .whole_count = 10,
	                        .cut_count = 1,
	                        .tile_mm2 = 460000,
	                        .area_mm2 = 500000};
	f->hold.region = floor_rectangle(arena, 1800, 6, 2200, 1256);
	f->hold.tiles = ARENA_NEW(arena, struct tile_ref);
	f->hold.tiles[0] = (struct tile_ref){0, f->panel.pieces[2].at, &f->panel.pieces[2]};
	f->hold.tile_count = 1;
	f->cracks = (struct cracks){.cracks = &f->placed_crack,
	                            .crack_count = 1,
	                            .groups = &f->group,
	                            .group_count = 1,
	                            .holds = &f->hold};
}

static struct soft_joint soft_of(struct arena *arena, const char *id, const char *side, double x)
{
	return (struct soft_joint){.id = id,
	                           .side = side,
	                           .length = 2988,
	                           .turns = 0,
	                           .line = line_of(arena, x, 6, x, 2994)};
}

static void write_strips(struct floor *f, struct arena *arena)
{
	f->piece = (struct strip_piece){.length = 3000, .wide = 450, .order = 1, .roll = 1};
	f->piece.shape.outline = ring_of(arena, 1775, 0, 2225, 3000);
	f->strip = (struct strip){.id = "K1.strip",
	                          .crack_count = 1,
	                          .width = 450,
	                          .length = 3000,
	                          .pieces = &f->piece,
	                          .piece_count = 1};
	f->strip.cracks = ARENA_ARRAY(arena, const char *, 1);
	f->strip.cracks[0] = "K1";
	f->strip.region = floor_rectangle(arena, 1775, 0, 2225, 3000);
	f->softs[0] = soft_of(arena, "K1.left", "left", 1836);
	f->softs[1] = soft_of(arena, "K1.right", "right", 2142);
	f->strips = (struct strips){.strips = &f->strip,
	                            .strip_count = 1,
	                            .softs = f->softs,
	                            .soft_count = 2};
	f->strips.cover.membrane = &f->membrane;
	f->strips.cover.region = f->strip.region;
	f->strips.cover.area_mm2 = region_area(&f->strip.region);
	f->strips.cover.ground = f->field.ground;
	f->strips.cover.ground_mm2 = region_area(&f->field.ground);
}

static void write_joints(struct floor *f, struct arena *arena)
{
	for (size_t i = 0; i < 2; i++)
		f->joint_list[i] = (struct joint){.id = f->softs[i].id,
		                                  .of = "K1",
		                                  .side = f->softs[i].side,
		                                  .on_joint = true,
		                                  .width = 6,
		                                  .depth = 3,
		                                  .length = 2988,
		                                  .ends = "hall.1 hall.3",
		                                  .why = "crack-plain",
		                                  .line = f->softs[i].line};
	f->joint_list[2] = (struct joint){.id = "C1.perimeter",
	                                  .kind = JOINT_PERIMETER,
	                                  .of = "C1",
	                                  .side = "",
	                                  .is_closed = true,
	                                  .width = 6,
	                                  .length = 1200,
	                                  .ends = "",
	                                  .why = ""};
	struct ring around = ring_of(arena, 500, 500, 800, 800);
	f->joint_list[2].line = (struct line){around.points, around.count};
	f->joints = (struct joints){f->joint_list, 3};
	f->control = (struct control){.id = "hall.u",
	                              .room = &f->room,
	                              .along_u = true,
	                              .from = {0, 1500},
	                              .to = {4000, 1500}};
	f->first = (struct first_tile){.room = &f->room, .at = {1990, 1500}};
	f->controls = (struct controls){&f->control, 1, &f->first, 1};
}

struct floor *floor_new(struct arena *arena, const struct rules *rules)
{
	struct floor *f = ARENA_NEW(arena, struct floor);
	write_plan(f, arena);
	write_site(f, arena);
	write_field(f, arena);
	write_tile(f, arena);
	write_cracks(f, arena);
	write_strips(f, arena);
	write_joints(f, arena);
	f->lay = (struct placed_lay){.field = &f->field,
	                             .module = &f->module,
	                             .position = &f->position,
	                             .movement = &f->movement,
	                             .tiling = &f->tiling,
	                             .cracks = &f->cracks,
	                             .strips = &f->strips,
	                             .joints = &f->joints,
	                             .controls = &f->controls};
	f->placed = (struct placed){&f->site, rules, &f->lay, 1};
	floor_judge_crack(f);
	return f;
}
