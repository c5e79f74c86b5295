#include "support/sample_floor.h"

#include <math.h>
#include <string.h>

#include "base/array.h"
#include "support/rooms.h"

/* The room and its tile, mm. */
static const double WIDTH = 6096, DEPTH = 4572, GAP = 6.35;
static const double PITCH_U = 609.6, PITCH_V = 304.8, SHIFT = 203.2, JOINT = 3.175;
static const double AT_U = 150, AT_V = 100; /* lattice position */

#define NEW(type, ...) memcpy(arena_alloc(arena, sizeof(type)), &(type){__VA_ARGS__}, sizeof(type))
#define LIST(type, ...)                                                                  \
	memcpy(arena_alloc(arena, sizeof((type[]){__VA_ARGS__})), (type[]){__VA_ARGS__}, \
	       sizeof((type[]){__VA_ARGS__}))
#define COUNT(type, ...) (sizeof((type[]){__VA_ARGS__}) / sizeof(type))
#define LINE(...) ((struct line){LIST(struct point, __VA_ARGS__), COUNT(struct point, __VA_ARGS__)})
#define RING(...) ((struct ring){LIST(struct point, __VA_ARGS__), COUNT(struct point, __VA_ARGS__)})

static struct ring box_ring(struct arena *arena, double x0, double y0, double x1, double y1)
{
	return RING({x0, y0}, {x1, y0}, {x1, y1}, {x0, y1});
}

static struct region box_region(struct arena *arena, double x0, double y0, double x1, double y1)
{
	return region_from_ring(arena, box_ring(arena, x0, y0, x1, y1));
}

static const struct plan *make_plan(struct arena *arena)
{
	struct plan_tile *tile =
		NEW(struct plan_tile, .id = "T1", .name = "Porcelain 12x24", .wide_nm = 301625000,
	            .long_nm = 606425000, .thick_nm = 9525000);
	struct plan_lay *lay = NEW(struct plan_lay, .id = "L1", .joint_nm = 3175000,
	                           .pattern = PLAN_PATTERN_RUNNING, .shift = {1, 3},
	                           .tile_count = 1, .tiles = LIST(const struct plan_tile *, tile));
	return NEW(struct plan, .title = "Sample floor", .unit = PLAN_UNIT_IN, .north_deg = 90,
	           .sealant.per_tube_ml = 300, .grout.density_kg_l = 1.6, .grout.bag_kg = 10,
	           .job = NEW(struct plan_job, .number = "17", .site = "Mill Lane",
	                      .prepared_by = "Crew", .date = date_from_day(20500),
	                      .starts = date_from_day(20540)),
	           .revisions =
	                   LIST(struct plan_revision,
	                        {.mark = "A", .note = "First issue", .date = date_from_day(20500)}),
	           .revision_count = 1, .lays = lay, .lay_count = 1,
	           .slabs = LIST(struct plan_slab, {.id = "S1",
	                                            .thickness_nm = 127000000,
	                                            .placed = date_from_day(20400)}),
	           .slab_count = 1);
}

static struct site_edge edge(const char *id, double x0, double y0, double x1, double y1)
{
	return (struct site_edge){.id = id, .from = {x0, y0}, .to = {x1, y1}, .show = true};
}

static const struct site *make_site(struct arena *arena, const struct plan *plan)
{
	struct site_edge edges[] = {edge("south", 0, 0, WIDTH, 0),
	                            edge("east", WIDTH, 0, WIDTH, DEPTH),
	                            edge("north", WIDTH, DEPTH, 0, DEPTH),
	                            edge("west", 0, DEPTH, 0, 0)};
	for (size_t i = 0; i < sizeof edges / sizeof *edges; i++)
		edges[i].wall = NEW(struct plan_wall, .id = edges[i].id);
	struct site_room room = {
		.plan = NEW(struct plan_room, .id = "bay"),
		.id = "bay",
		.name = "Stall bay",
		.outline = box_ring(arena, 0, 0, WIDTH, DEPTH),
		.edges = memcpy(arena_alloc(arena, sizeof edges), edges, sizeof edges),
		.edge_count = 4,
		.obstacles = LIST(struct site_obstacle,
	                          {.id = "C1",
	                           .plan = NEW(struct plan_obstacle, .id = "C1"),
	                           .ring = box_ring(arena, 2900, 3200, 3205, 3505)}),
		.obstacle_count = 1,
		.doorways = LIST(struct site_doorway, {.id = "D1",
	                                               .plan = NEW(struct plan_doorway, .id = "D1"),
	                                               .edge = 0,
	                                               .from = {2438, 0},
	                                               .to = {3658, 0},
	                                               .stop_from = {2438, 0},
	                                               .stop_to = {3658, 0}}),
		.doorway_count = 1};
	struct site_crack cracks[] = {{.id = "K1",
	                               .plan = NEW(struct plan_crack, .id = "K1"),
	                               .width = 1.5875,
	                               .wander = 12.7,
	                               .line = LINE({1575, 0}, {1676, 1200}, {1524, 2500})},
	                              {.id = "K2",
	                               .plan = NEW(struct plan_crack, .id = "K2"),
	                               .width = 2.4,
	                               .step = 1.6,
	                               .line = LINE({WIDTH, 1000}, {5600, 1300}, {5200, 1350})}};
	room.slab_parts =
		LIST(struct site_slab_part,
	             {.slab = &plan->slabs[0], .ground = region_from_ring(arena, room.outline)});
	room.slab_part_count = 1;
	return NEW(struct site, .plan = plan, .inches = true,
	           .rooms = memcpy(arena_alloc(arena, sizeof room), &room, sizeof room),
	           .room_count = 1,
	           .cracks = memcpy(arena_alloc(arena, sizeof cracks), cracks, sizeof cracks),
	           .crack_count = 2,
	           .slab_joints = LIST(struct site_slab_joint,
	                               {.id = "J1",
	                                .width = 12.7,
	                                .line = LINE({4267, 0}, {4267, DEPTH}),
	                                .plan = NEW(struct plan_slab_joint, .id = "J1",
	                                            .kind = PLAN_JOINT_CONSTRUCTION)}),
	           .slab_joint_count = 1);
}

static const struct module *make_module(struct arena *arena)
{
	struct ring ring =
		box_ring(arena, JOINT / 2, JOINT / 2, PITCH_U - JOINT / 2, PITCH_V - JOINT / 2);
	return NEW(struct module, .a = {PITCH_U, 0}, .b = {SHIFT, PITCH_V}, .joint = JOINT,
	           .tile_width = 301.625, .tile_long = 606.425, .pitch = PITCH_U, .course = PITCH_V,
	           .offsets = LIST(double, 0, SHIFT, 2 * SHIFT), .offset_count = 3, .face_count = 1,
	           .faces = LIST(struct face, {.ring = ring,
	                                       .cell = box_ring(arena, 0, 0, PITCH_U, PITCH_V),
	                                       .area_mm2 = ring_area(ring),
	                                       .box = ring_box(ring)}));
}

static const struct field *make_field(struct arena *arena, const struct site *site)
{
	struct field_border borders[] = {
		{.from = {GAP, GAP}, .to = {WIDTH - GAP, GAP}, .of = "south"},
		{.from = {WIDTH - GAP, GAP}, .to = {WIDTH - GAP, DEPTH - GAP}, .of = "east"},
		{.from = {WIDTH - GAP, DEPTH - GAP}, .to = {GAP, DEPTH - GAP}, .of = "north"},
		{.from = {GAP, DEPTH - GAP}, .to = {GAP, GAP}, .of = "west"}};
	return NEW(struct field, .lay = &site->plan->lays[0], .site = site,
	           .rooms = LIST(const struct site_room *, &site->rooms[0]), .room_count = 1,
	           .room_grounds =
	                   LIST(struct region, region_from_ring(arena, site->rooms[0].outline)),
	           .region = box_region(arena, GAP, GAP, WIDTH - GAP, DEPTH - GAP),
	           .frame = frame_from_deg(0), .gap = GAP, .tolerance = GAP,
	           .borders = memcpy(arena_alloc(arena, sizeof borders), borders, sizeof borders),
	           .border_count = 4);
}

static const struct position *make_position(struct arena *arena)
{
	struct border_cut cuts[] = {{.border = 0, .from = 93.65, .to = 93.65, .whole = 301.625},
	                            {.border = 1,
	                             .from = 190,
	                             .to = 190,
	                             .whole = 606.425,
	                             .course_count = 3,
	                             .courses = LIST(double, 190.5, 393.7, 596.9),
	                             .courses_to = LIST(double, 190.5, 393.7, 596.9)},
	                            {.border = 2, .from = 200.025, .to = 187.325, .whole = 301.625},
	                            {.border = 3,
	                             .from = 141,
	                             .to = 141,
	                             .whole = 606.425,
	                             .course_count = 3,
	                             .courses = LIST(double, 139.7, 342.9, 546.1),
	                             .courses_to = LIST(double, 139.7, 342.9, 546.1)}};
	return NEW(struct position, .parts = LIST(struct point, {AT_U, AT_V}), .part_count = 1,
	           .cut_count = 4,
	           .cuts = memcpy(arena_alloc(arena, sizeof cuts), cuts, sizeof cuts));
}

static void add_piece(struct arena *arena, struct panel *panel, int i, int j, struct box box)
{
	struct box in = {fmax(box.x0, GAP), fmax(box.y0, GAP), fmin(box.x1, WIDTH - GAP),
	                 fmin(box.y1, DEPTH - GAP)};
	if (in.x1 - in.x0 < 1 || in.y1 - in.y0 < 1)
		return;
	panel->pieces[panel->piece_count++] =
		(struct tile_piece){.at = {0, i, j},
	                            .ring = box_ring(arena, in.x0, in.y0, in.x1, in.y1)};
}

static void fill_course(struct arena *arena, struct panel *panel, const struct module *m, int j)
{
	int first = 0, last = -1;
	for (int i = -12; i < 12; i++) {
		struct point at = point_add(module_step(m, i, j), panel->position);
		struct box box = m->faces[0].box;
		box = (struct box){box.x0 + at.x, box.y0 + at.y, box.x1 + at.x, box.y1 + at.y};
		if (box.x0 < GAP || box.x1 > WIDTH - GAP || box.y0 < GAP || box.y1 > DEPTH - GAP) {
			add_piece(arena, panel, i, j, box);
			continue;
		}
		if (last < first)
			first = i;
		last = i;
	}
	if (last >= first)
		panel->runs[panel->run_count++] = (struct tile_run){0, j, first, last};
}

static const struct tiling *make_tiling(struct arena *arena, const struct field *field,
                                        const struct module *module)
{
	struct panel *panel = NEW(struct panel, .id = "L1.1", .position = {AT_U, AT_V});
	panel->ground.outline = box_ring(arena, GAP, GAP, WIDTH - GAP, DEPTH - GAP);
	panel->runs = ARENA_ARRAY(arena, struct tile_run, 40);
	panel->pieces = ARENA_ARRAY(arena, struct tile_piece, 400);
	for (int j = -1; j < 16; j++)
		fill_course(arena, panel, module, j);
	return NEW(struct tiling, .field = field, .module = module,
	           .movement = NEW(struct movement, .limit = 7620), .panels = panel,
	           .panel_count = 1);
}

static const struct cracks *make_cracks(struct arena *arena, const struct site *site)
{
	struct placed_crack cracks[] = {{.crack = &site->cracks[0],
	                                 .id = "K1",
	                                 .runs = LIST(struct line, site->cracks[0].line),
	                                 .run_count = 1,
	                                 .state = CRACK_ISOLATE},
	                                {.crack = &site->cracks[1],
	                                 .id = "K2",
	                                 .runs = LIST(struct line, site->cracks[1].line),
	                                 .run_count = 1,
	                                 .state = CRACK_HOLD,
	                                 .group = 1}};
	return NEW(struct cracks, .crack_count = 2,
	           .cracks = memcpy(arena_alloc(arena, sizeof cracks), cracks, sizeof cracks),
	           .holds = LIST(struct hold,
	                         {.id = "K2.hold",
	                          .group = 1,
	                          .region = box_region(arena, 4880, 710, WIDTH - GAP, 1624)}),
	           .hold_count = 1);
}

static const struct strips *make_strips(struct arena *arena)
{
	struct strip_piece piece = {.shape.outline = box_ring(arena, 1000, GAP, 2220, 3100),
	                            .length = 3100,
	                            .wide = 1219.2,
	                            .order = 1,
	                            .roll = 1};
	return NEW(struct strips, .strip_count = 1,
	           .strips =
	                   LIST(struct strip, {.id = "K1.strip",
	                                       .cracks = LIST(const char *, "K1"),
	                                       .crack_count = 1,
	                                       .width = 1219.2,
	                                       .half_width = 452,
	                                       .piece_count = 1,
	                                       .pieces = LIST(struct strip_piece, piece),
	                                       .region = box_region(arena, 1000, GAP, 2220, 3100)}),
	           .cover = {.membrane =
	                             NEW(struct plan_membrane, .id = "M1", .thick_nm = 1000000)});
}

static const struct joints *make_joints(struct arena *arena)
{
	struct joint joints[] = {{.id = "K1.left",
	                          .kind = JOINT_SOFT,
	                          .of = "K1",
	                          .side = "left",
	                          .why = "crack-plain",
	                          .width = JOINT,
	                          .depth = 6,
	                          .line = LINE({1166, GAP}, {1166, 1319.2}, {1166, 2900})},
	                         {.id = "K1.right",
	                          .kind = JOINT_SOFT,
	                          .of = "K1",
	                          .side = "right",
	                          .why = "crack-plain",
	                          .width = JOINT,
	                          .depth = 6,
	                          .line = LINE({1979, GAP}, {1979, 2900})},
	                         {.id = "J1.carried",
	                          .kind = JOINT_CARRIED,
	                          .of = "J1",
	                          .why = "joint-carried",
	                          .width = 12.7,
	                          .line = LINE({4267, GAP}, {4267, DEPTH - GAP})}};
	return NEW(struct joints, .joint_count = 3,
	           .joints = memcpy(arena_alloc(arena, sizeof joints), joints, sizeof joints));
}

static const struct controls *make_controls(struct arena *arena, const struct site *site)
{
	double u = AT_U + 4 * PITCH_U + JOINT / 2, v = AT_V + 6 * PITCH_V + JOINT / 2;
	struct control_offset from_south[] = {
		{.wall = "south", .at_wall = {300, 0}, .at_line = {300, v}, .distance = v},
		{.wall = "south", .at_wall = {5800, 0}, .at_line = {5800, v}, .distance = v}};
	struct control_offset from_west[] = {
		{.wall = "west", .at_wall = {0, 300}, .at_line = {u, 300}, .distance = u},
		{.wall = "west", .at_wall = {0, 4300}, .at_line = {u, 4300}, .distance = u}};
	struct control controls[] = {{.id = "bay.u",
	                              .room = &site->rooms[0],
	                              .along_u = true,
	                              .from = {0, v},
	                              .to = {WIDTH, v},
	                              .offsets = {from_south[0], from_south[1]},
	                              .offset_count = 2},
	                             {.id = "bay.v",
	                              .room = &site->rooms[0],
	                              .from = {u, 0},
	                              .to = {u, DEPTH},
	                              .offsets = {from_west[0], from_west[1]},
	                              .offset_count = 2}};
	return NEW(struct controls, .control_count = 2,
	           .controls =
	                   memcpy(arena_alloc(arena, sizeof controls), controls, sizeof controls),
	           .firsts = LIST(struct first_tile, {.room = &site->rooms[0],
	                                              .at = {u, v},
	                                              .tile = {0, 2, 6},
	                                              .towards_u = true,
	                                              .towards_v = true,
	                                              .square_side = 609.6}),
	           .first_count = 1);
}

static const struct rule HELD = {.name = "crack-step",
                                 .weight = RULE_STOP,
                                 .who = "engineer",
                                 .source = "R-C09"};

struct sample_floor sample_floor_make(struct arena *arena)
{
	const struct site *site = make_site(arena, make_plan(arena));
	const struct module *module = make_module(arena);
	const struct field *field = make_field(arena, site);
	const struct tiling *tiling = make_tiling(arena, field, module);
	struct placed_lay lay = {.field = field,
	                         .module = module,
	                         .position = make_position(arena),
	                         .movement = tiling->movement,
	                         .tiling = tiling,
	                         .cracks = make_cracks(arena, site),
	                         .strips = make_strips(arena),
	                         .joints = make_joints(arena),
	                         .controls = make_controls(arena, site)};
	return (struct sample_floor){
		.site = site,
		.placed = NEW(struct placed, .site = site, .rules = rules_for_tests(arena),
	                      .lays = LIST(struct placed_lay, lay), .lay_count = 1),
		.findings = NEW(struct findings, .count = 1,
	                        .items = LIST(struct finding,
	                                      {.rule = &HELD,
	                                       .weight = RULE_STOP,
	                                       .about = "K2",
	                                       .text = "K2: its sides differ by 1/16\". Hold"}))};
}
