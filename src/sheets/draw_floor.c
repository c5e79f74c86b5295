#include "sheets/draw_floor.h"

#include <string.h>

#include "drawing/symbol.h"
#include "geometry/clip.h"
#include "sheets/lay_view.h"
#include "sheets/wall_label.h"
#include "units/length.h"

/* Paper mm, own design. */
static const double JAMB = 3;

static bool is_heavy(enum site_edge_kind kind)
{
	return kind == SITE_EDGE_WALL || kind == SITE_EDGE_GLASS || kind == SITE_EDGE_OTHER_FLOOR ||
	       kind == SITE_EDGE_JAMB;
}

static bool is_of_obstacle(enum site_edge_kind kind)
{
	return kind == SITE_EDGE_OBSTACLE || kind == SITE_EDGE_DRAIN;
}

static bool is_same(struct point a, struct point b)
{
	return point_distance(a, b) < 1e-3;
}

/* Edges that go on from one another become one line, so that corners are mitred. */
static size_t take_run(struct arena *arena, const struct site_edge *edges, size_t count,
                       size_t first, struct line *out_line)
{
	size_t last = first + 1;
	while (last < count && is_heavy(edges[last].kind) == is_heavy(edges[first].kind) &&
	       !is_of_obstacle(edges[last].kind) && is_same(edges[last - 1].to, edges[last].from))
		last++;
	out_line->count = last - first + 1;
	out_line->points = ARENA_ARRAY(arena, struct point, out_line->count);
	for (size_t i = first; i < last; i++)
		out_line->points[i - first] = edges[i].from;
	out_line->points[last - first] = edges[last - 1].to;
	return last;
}

static struct paper_path run_path(struct arena *arena, const struct view *view, struct line line)
{
	struct paper_path path = view_line(arena, view, line);
	if (line.count > 3 && is_same(line.points[0], line.points[line.count - 1])) {
		path.lines[0].count--;
		path.lines[0].kind = PAPER_CLOSED;
	}
	return path;
}

void draw_walls(struct sheet *sheet, const struct view *view, const struct site_room *room)
{
	struct arena *arena = sheet->draft->arena;
	size_t count;
	struct site_edge *edges = site_room_borders(arena, room, &count);
	for (size_t i = 0; i < count;) {
		if (is_of_obstacle(edges[i].kind)) {
			i++;
			continue;
		}
		struct line line;
		enum pen pen = is_heavy(edges[i].kind) ? PEN_WALL : PEN_WALL_OPEN;
		i = take_run(arena, edges, count, i, &line);
		list_stroke(sheet->list, LAYER_SLAB, pen, room->id, run_path(arena, view, line));
	}
}

/* Where one reads on about what is tagged: of a crack the slab, of a joint its section. */
static const char *read_on(enum label_frame frame)
{
	return frame == LABEL_ROUND ? "slab" : "details";
}

void draw_tag(struct sheet *sheet, const char *element, enum label_frame frame,
              struct paper_point a, struct paper_point b, const char *const *lines,
              size_t line_count)
{
	list_label(sheet->list, &(struct label){.lines = lines,
	                                        .line_count = line_count,
	                                        .role = TEXT_TAG,
	                                        .layer = LAYER_LABELS,
	                                        .element = element,
	                                        .link = read_on(frame),
	                                        .frame = frame,
	                                        .where = LABEL_ALONG,
	                                        .a = a,
	                                        .b = b,
	                                        .priority = 5,
	                                        .can_lead = true,
	                                        .is_clear = true});
}

/* Stubs of the wall at the jambs: the opening is seen where its recess has no depth. */
static void draw_jambs(struct sheet *sheet, const struct view *view,
                       const struct site_doorway *door)
{
	struct arena *arena = sheet->draft->arena;
	struct paper_point a = view_point(view, door->from), b = view_point(view, door->to);
	struct paper_point along = paper_unit(paper_sub(b, a));
	struct paper_point out = {-along.y, along.x};
	struct paper_path stubs[] = {
		paper_path_segment(arena, a, paper_step(a, out, JAMB)),
		paper_path_segment(arena, b, paper_step(b, out, JAMB)),
	};
	list_stroke(sheet->list, LAYER_SLAB, PEN_WALL, door->id,
	            paper_path_join(arena, stubs[0], stubs[1]));
}

static bool is_tagged_before(const struct site *site, const struct site_room *room, const char *id)
{
	for (const struct site_room *other = site->rooms; other < room; other++)
		for (size_t i = 0; i < other->doorway_count; i++)
			if (strcmp(other->doorways[i].id, id) == 0)
				return true;
	return false;
}

static void tag_doorway(struct sheet *sheet, const struct view *view,
                        const struct site_doorway *door, const char *key)
{
	const struct draft *draft = sheet->draft;
	double width = point_distance(door->from, door->to);
	const char *text = draft_text(draft, key, {"id", draft_tag(draft, door->id)},
	                              {"width", draft_length(draft, width)});
	wall_label(sheet, door->id, view_point(view, door->stop_from),
	           view_point(view, door->stop_to),
	           (struct wall_text){.lines = &text, .count = 1, .around = 0.5});
}

void draw_doorways(struct sheet *sheet, const struct view *view, const struct site_room *room,
                   enum doorway_tag tag)
{
	const struct draft *draft = sheet->draft;
	for (size_t i = 0; i < room->doorway_count; i++) {
		const struct site_doorway *door = &room->doorways[i];
		list_stroke(sheet->list, LAYER_SLAB, PEN_DOOR, door->id,
		            view_segment(draft->arena, view, door->stop_from, door->stop_to));
		if (door->recess.count == 0)
			draw_jambs(sheet, view, door);
		if (tag == DOORWAY_ALONE || !is_tagged_before(draft->site, room, door->id))
			tag_doorway(sheet, view, door,
			            tag == DOORWAY_NAME ? "tag.doorway" : "tag.doorway-wide");
	}
}

static const char *obstacle_kind_key(enum plan_obstacle_kind kind)
{
	static const char *const KEYS[] = {
		[PLAN_OBSTACLE_COLUMN] = "kind.column", [PLAN_OBSTACLE_ISLAND] = "kind.island",
		[PLAN_OBSTACLE_PIPE] = "kind.pipe",     [PLAN_OBSTACLE_DRAIN] = "kind.drain",
		[PLAN_OBSTACLE_BOX] = "kind.box",
	};
	return KEYS[kind];
}

/* Across, or wide by deep as its box on the plan. */
static const char *obstacle_size(const struct draft *draft, const struct site_obstacle *obstacle)
{
	double across = length_mm(obstacle->plan->across_nm);
	if (across > 0)
		return draft_text(draft, "tag.across", {"size", draft_length(draft, across)});
	struct box box = ring_box(obstacle->ring);
	return draft_text(draft, "tag.size", {"wide", draft_length(draft, box.x1 - box.x0)},
	                  {"deep", draft_length(draft, box.y1 - box.y0)});
}

void draw_obstacles(struct sheet *sheet, const struct view *view, const struct site_room *room)
{
	const struct draft *draft = sheet->draft;
	for (size_t i = 0; i < room->obstacle_count; i++) {
		const struct site_obstacle *obstacle = &room->obstacles[i];
		struct paper_path path = view_ring(draft->arena, view, obstacle->ring);
		list_area(sheet->list, LAYER_SLAB, AREA_PAPER, obstacle->id, path);
		list_area(sheet->list, LAYER_SLAB, AREA_OBSTACLE, obstacle->id, path);
		list_stroke(sheet->list, LAYER_SLAB, PEN_OBSTACLE, obstacle->id, path);
		struct paper_point at = view_point(view, ring_middle(obstacle->ring));
		if (list_shows(sheet->list, at))
			sheet_use(sheet, LEGEND_OBSTACLE);
		const char *const lines[] = {
			draft_text(draft, "tag.obstacle", {"id", draft_tag(draft, obstacle->id)},
		                   {"kind",
		                    draft_word(draft, obstacle_kind_key(obstacle->plan->kind))}),
			obstacle_size(draft, obstacle)};
		list_label(sheet->list, &(struct label){.lines = lines,
		                                        .line_count = 2,
		                                        .role = TEXT_TAG,
		                                        .layer = LAYER_LABELS,
		                                        .element = obstacle->id,
		                                        .where = LABEL_AROUND,
		                                        .a = at,
		                                        .b = at,
		                                        .priority = 5,
		                                        .can_lead = true,
		                                        .is_dotted = true,
		                                        .is_clear = true});
	}
}

/* The middle piece of a line, for its tag. */
static void middle_of(const struct view *view, struct line line, struct paper_point *out_a,
                      struct paper_point *out_b)
{
	size_t best = 0;
	for (size_t i = 1; i + 1 < line.count; i++)
		if (point_distance(line.points[i], line.points[i + 1]) >
		    point_distance(line.points[best], line.points[best + 1]) + 1)
			best = i;
	*out_a = view_point(view, line.points[best]);
	*out_b = view_point(view, line.points[line.count > 1 ? best + 1 : best]);
}

static const char *joint_kind_key(enum plan_joint_kind kind)
{
	static const char *const KEYS[] = {
		[PLAN_JOINT_CONTRACTION] = "kind.contraction",
		[PLAN_JOINT_CONSTRUCTION] = "kind.construction",
		[PLAN_JOINT_ISOLATION] = "kind.isolation",
		[PLAN_JOINT_EXPANSION] = "kind.expansion",
		[PLAN_JOINT_COLD] = "kind.cold",
	};
	return KEYS[kind];
}

static void draw_slab_joint(struct sheet *sheet, const struct view *view,
                            const struct site_slab_joint *joint, struct line line)
{
	const struct draft *draft = sheet->draft;
	list_stroke(sheet->list, LAYER_CRACKS, PEN_SLAB_JOINT, joint->id,
	            view_line(draft->arena, view, line));
	sheet_use(sheet, LEGEND_SLAB_JOINT);
	const char *lines[] = {
		draft_text(draft, "tag.slab-joint", {"id", draft_tag(draft, joint->id)},
	                   {"kind", draft_word(draft, joint_kind_key(joint->plan->kind))},
	                   {"width", draft_width(draft, joint->width)}),
	};
	struct line named = view_named(draft->arena, view, line);
	struct paper_point a, b;
	if (named.count < 2)
		return;
	middle_of(view, named, &a, &b);
	draw_tag(sheet, joint->id, LABEL_HEXAGON, a, b, lines, 1);
}

void draw_slab_joints(struct sheet *sheet, const struct view *view, const struct region *ground)
{
	const struct site *site = sheet->draft->site;
	for (size_t i = 0; i < site->slab_joint_count; i++) {
		size_t count;
		struct line *lines =
			clip_line(sheet->draft->arena, site->slab_joints[i].line, ground, &count);
		for (size_t k = 0; k < count; k++)
			draw_slab_joint(sheet, view, &site->slab_joints[i], lines[k]);
	}
}

const struct placed_crack *placed_crack_find(const struct placed *placed, const char *id)
{
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct cracks *cracks = placed->lays[i].cracks;
		for (size_t k = 0; k < cracks->crack_count; k++)
			if (strcmp(cracks->cracks[k].id, id) == 0)
				return &cracks->cracks[k];
	}
	return NULL;
}

static enum pen crack_pen(struct sheet *sheet, const struct site_crack *crack,
                          const struct placed_crack *placed)
{
	if (crack->step > 0)
		sheet_use(sheet, LEGEND_CRACK_STEP);
	if (placed && placed->pending) {
		sheet_use(sheet, LEGEND_CRACK_PENDING);
		return PEN_CRACK_PENDING;
	}
	sheet_use(sheet, LEGEND_CRACK);
	return PEN_CRACK;
}

/* A stepped crack has the step's mark at its middle. Which side is low the plan does not
 * say, so neither does the mark: it stands for the step. */
static void draw_step(struct sheet *sheet, const struct site_crack *crack, struct paper_point a,
                      struct paper_point b)
{
	struct paper_point along = paper_unit(paper_sub(b, a));
	struct paper_point middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
	symbol_step(sheet->list, crack->id, middle, paper_at(-along.y, along.x));
}

static void draw_crack(struct sheet *sheet, const struct view *view, const struct site_crack *crack,
                       struct line line)
{
	const struct draft *draft = sheet->draft;
	const struct placed_crack *placed = placed_crack_find(draft->placed, crack->id);
	struct paper_path path = view_line(draft->arena, view, line);
	list_stroke(sheet->list, LAYER_CRACKS, crack_pen(sheet, crack, placed), crack->id, path);
	if (placed && placed_crack_is_filled(placed, draft->placed->rules)) {
		symbol_fill(sheet->list, crack->id, path);
		sheet_use(sheet, LEGEND_CRACK_FILL);
	}
	struct word_arg args[] = {{"id", draft_tag(draft, crack->id)},
	                          {"width", draft_width(draft, crack->width)},
	                          {"step", draft_width(draft, crack->step)}};
	const char *lines[3] = {words_format(draft->arena, draft->words, "tag.crack", args, 3)};
	size_t line_count = 1;
	if (crack->step > 0)
		lines[line_count++] =
			words_format(draft->arena, draft->words, "tag.crack-step", args, 3);
	if (crack->plan->moving == PLAN_MOVING_YES)
		lines[line_count++] = draft_word(draft, "tag.crack-moves");
	struct line named = view_named(draft->arena, view, line);
	struct paper_point a, b;
	if (named.count < 2)
		return;
	middle_of(view, named, &a, &b);
	if (crack->step > 0)
		draw_step(sheet, crack, a, b);
	draw_tag(sheet, crack->id, LABEL_ROUND, a, b, lines, line_count);
}

void draw_cracks(struct sheet *sheet, const struct view *view, const struct region *ground)
{
	const struct site *site = sheet->draft->site;
	for (size_t i = 0; i < site->crack_count; i++) {
		size_t count;
		struct line *lines =
			clip_line(sheet->draft->arena, site->cracks[i].line, ground, &count);
		for (size_t k = 0; k < count; k++)
			draw_crack(sheet, view, &site->cracks[i], lines[k]);
	}
}

void draw_room_name(struct sheet *sheet, const struct view *view, const struct site_room *room)
{
	struct box box = ring_box(room->outline);
	struct paper_point a = view_point(view, (struct point){box.x0, box.y1});
	struct paper_point b = view_point(view, (struct point){box.x1, box.y0});
	list_label(sheet->list, &(struct label){.lines = &room->name,
	                                        .line_count = 1,
	                                        .role = TEXT_ROOM,
	                                        .layer = LAYER_LABELS,
	                                        .element = room->id,
	                                        .where = LABEL_IN,
	                                        .is_clear = true,
	                                        .priority = 1,
	                                        .room = {fmin(a.x, b.x), fmin(a.y, b.y),
	                                                 fmax(a.x, b.x), fmax(a.y, b.y)}});
}
