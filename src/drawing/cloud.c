#include "drawing/cloud.h"

#include <string.h>

#include "drawing/cloud_outline.h"
#include "drawing/finish.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"

/* Paper mm, own design: clear round the mark in its triangle, under it, and round all of it. */
static const double MARK_PAD = 0.5, MARK_FOOT = 0.9, CLEAR = 0.8;
/* How far from its cloud a triangle may stand, the nearest first; and what a mm costs beside
 * lines that it covers (finish.c). */
static const double AWAY[] = {0, 4, 9, 16, 26, 40};
static const double AWAY_COST = 3;
static const double SWATCH_INSET = 1.4;
/* Height of a triangle of equal sides, of its side. */
static const double UPRIGHT = 0.8660254037844386;

/* ---- triangle ---- */

struct paper_point cloud_triangle_size(struct list *list, const char *mark)
{
	double cap = list->style->texts[TEXT_TABLE_HEAD].cap;
	double side = list_text_width(list, TEXT_TABLE_HEAD, mark) + 2 * MARK_PAD +
	              (MARK_FOOT + cap + MARK_PAD) / UPRIGHT;
	return paper_at(side, side * UPRIGHT);
}

struct paper_box cloud_triangle(struct list *list, enum layer layer, struct paper_point at,
                                const char *mark)
{
	struct paper_point size = cloud_triangle_size(list, mark);
	struct paper_box box = {at.x - size.x / 2, at.y - size.y / 2, at.x + size.x / 2,
	                        at.y + size.y / 2};
	struct paper_point corners[] = {{at.x, box.y0}, {box.x1, box.y1}, {box.x0, box.y1}};
	struct paper_path path = paper_path_line(list->arena, corners, 3, PAPER_CLOSED);
	list_area(list, layer, AREA_PAPER, mark, path);
	list_stroke(list, layer, PEN_CLOUD, mark, path);
	list_text(list, layer, TEXT_TABLE_HEAD, mark, paper_at(at.x, box.y1 - MARK_FOOT),
	          ALIGN_MIDDLE, mark);
	return box;
}

void cloud_swatch(struct list *list, enum layer layer, struct paper_box box)
{
	struct paper_box inner = paper_box_grown(box, -SWATCH_INSET);
	double x[] = {inner.x0, (inner.x0 + inner.x1) / 2, inner.x1};
	struct point points[] = {{x[0], -inner.y1}, {x[1], -inner.y1}, {x[2], -inner.y1},
	                         {x[2], -inner.y0}, {x[1], -inner.y0}, {x[0], -inner.y0}};
	list_stroke(list, layer, PEN_CLOUD, NULL,
	            cloud_scallops(list->arena, (struct ring){points, 6}, NULL, 0));
}

/* ---- clouds ---- */

struct clouding {
	struct list *list;
	struct arena *arena;
	struct occupancy *occupied;
	struct paper_box within;
	struct region clouds;
	const struct box *texts;
	size_t text_count;
};

static struct box upright(struct paper_box b)
{
	return (struct box){b.x0, -b.y1, b.x1, -b.y0};
}

/* Texts, and the frames that tags stand in. */
static bool is_text(const struct op *op)
{
	return op->kind == OP_TEXT ||
	       (op->kind == OP_STROKE && op->layer == LAYER_LABELS && op->role.pen == PEN_TAG);
}

static struct box *text_boxes(const struct list *list, size_t *out_count)
{
	struct box *boxes = ARENA_ARRAY(list->arena, struct box, list->ops.count);
	*out_count = 0;
	for (size_t i = 0; i < list->ops.count; i++)
		if (is_text(&list->ops.items[i]))
			boxes[(*out_count)++] = upright(list->ops.items[i].box);
	return boxes;
}

static struct region union_of(struct arena *arena, const struct cloud_ground *grounds, size_t count)
{
	struct region *regions = ARENA_ARRAY(arena, struct region, count);
	for (size_t i = 0; i < count; i++)
		regions[i] = grounds[i].region;
	return overlay_union_all(arena, regions, count);
}

static void stroke_cloud(struct clouding *c, struct ring outline)
{
	struct ring points = cloud_points(c->arena, outline, c->texts, c->text_count);
	struct paper_path path = cloud_scallops(c->arena, points, c->texts, c->text_count);
	list_stroke(c->list, LAYER_CHANGES, PEN_CLOUD, NULL, path);
	struct paper_path flat = paper_path_flat(c->arena, path);
	for (size_t i = 0; i < flat.count; i++)
		for (size_t k = 0; k + 1 < flat.lines[i].count; k++)
			occupancy_add(c->occupied, flat.lines[i].points[k],
			              flat.lines[i].points[k + 1],
			              (struct mark_weight){AWAY_COST, AWAY_COST});
}

/* ---- where a triangle stands ---- */

struct stand {
	struct paper_point at, foot; /* of its leader, on the cloud */
	double away, cost;
	bool is_found;
};

static bool is_on_a_cloud(const struct clouding *c, struct paper_box box)
{
	return cloud_meets_box(&c->clouds, upright(box), CLOUD_REACH);
}

static void try_stand(struct clouding *c, struct stand *best, struct stand stand,
                      struct paper_point size)
{
	struct paper_box box = {stand.at.x - size.x / 2, stand.at.y - size.y / 2,
	                        stand.at.x + size.x / 2, stand.at.y + size.y / 2};
	struct paper_box grown = paper_box_grown(box, CLEAR);
	if (!paper_box_inside(grown, c->within) || occupancy_is_blocked(c->occupied, grown))
		return;
	stand.cost = occupancy_cover(c->occupied, box, INFINITY) + AWAY_COST * stand.away;
	if (best->is_found && stand.cost >= best->cost - 1e-6)
		return;
	if (stand.away > 0 && occupancy_blocks_line(c->occupied, stand.foot, stand.at))
		return;
	if (is_on_a_cloud(c, box))
		return;
	stand.is_found = true;
	*best = stand;
}

/* Outwards from each scallop of the cloud. */
static struct stand find_stand(struct clouding *c, struct ring points, struct paper_point size)
{
	struct stand best = {.is_found = false};
	for (size_t k = 0; k < sizeof AWAY / sizeof *AWAY && !best.is_found; k++)
		for (size_t i = 0; i < points.count; i++) {
			struct point a = points.points[i],
				     b = points.points[(i + 1) % points.count];
			struct point out = point_unit(point_scale(point_left(point_sub(b, a)), -1));
			struct point foot =
				point_add(point_between(a, b, 0.5), point_scale(out, CLOUD_REACH));
			double half = (fabs(out.x) * size.x + fabs(out.y) * size.y) / 2;
			double far = half + CLEAR + AWAY[k];
			struct point at = point_add(foot, point_scale(out, far));
			try_stand(c, &best,
			          (struct stand){.at = paper_at(at.x, -at.y),
			                         .foot = paper_at(foot.x, -foot.y),
			                         .away = AWAY[k]},
			          size);
		}
	return best;
}

/* Where none is free round the cloud, the free place nearest to it. */
static struct stand find_afar(struct clouding *c, struct ring points, struct paper_point size)
{
	static const double STEP = 6;
	struct stand best = {.is_found = false};
	struct point first = points.points[0];
	for (double y = c->within.y0; y < c->within.y1; y += STEP)
		for (double x = c->within.x0; x < c->within.x1; x += STEP) {
			struct paper_point foot = paper_at(first.x, -first.y), at = paper_at(x, y);
			double away = paper_distance(foot, at);
			struct stand stand = {.at = at, .foot = foot, .away = away};
			struct paper_box box = {x - size.x / 2, y - size.y / 2, x + size.x / 2,
			                        y + size.y / 2};
			struct paper_box grown = paper_box_grown(box, CLEAR);
			if ((best.is_found && away >= best.away) ||
			    !paper_box_inside(grown, c->within) ||
			    occupancy_is_blocked(c->occupied, grown) || is_on_a_cloud(c, box))
				continue;
			best = stand;
			best.is_found = true;
		}
	return best;
}

static void place_triangle(struct clouding *c, struct ring points, const char *mark)
{
	struct paper_point size = cloud_triangle_size(c->list, mark);
	struct stand stand = find_stand(c, points, size);
	if (!stand.is_found)
		stand = find_afar(c, points, size);
	if (!stand.is_found)
		return;
	if (stand.away > 0)
		list_stroke(c->list, LAYER_CHANGES, PEN_CLOUD, mark,
		            paper_path_segment(c->arena, stand.foot, stand.at));
	occupancy_block(c->occupied, cloud_triangle(c->list, LAYER_CHANGES, stand.at, mark));
}

void cloud_reserve(struct list *list, const struct cloud_ground *grounds, size_t count)
{
	struct region ground = union_of(list->arena, grounds, count);
	struct region clouds = cloud_outline(list->arena, &ground, NULL, 0);
	for (size_t i = 0; i < clouds.count; i++) {
		struct ring ring = clouds.polygons[i].outline;
		struct paper_point *points =
			ARENA_ARRAY(list->arena, struct paper_point, ring.count);
		for (size_t k = 0; k < ring.count; k++)
			points[k] = paper_at(ring.points[k].x, -ring.points[k].y);
		list->clouds = paper_path_join(list->arena, list->clouds,
		                               paper_path_line(list->arena, points, ring.count,
		                                               PAPER_CLOSED));
	}
}

void cloud_draw(struct list *list, const struct cloud_ground *grounds, size_t count,
                struct paper_box within)
{
	list->clouds = (struct paper_path){0};
	struct clouding c = {.list = list,
	                     .arena = list->arena,
	                     .occupied = list_occupied(list),
	                     .within = within};
	c.texts = text_boxes(list, &c.text_count);
	struct region ground = union_of(c.arena, grounds, count);
	if (ground.count == 0)
		return;
	c.clouds = cloud_outline(c.arena, &ground, c.texts, c.text_count);
	for (size_t i = 0; i < c.clouds.count; i++)
		stroke_cloud(&c, c.clouds.polygons[i].outline);
	for (size_t i = 0; i < c.clouds.count; i++) {
		struct region cloud = {&c.clouds.polygons[i], 1};
		struct ring points =
			cloud_points(c.arena, cloud.polygons[0].outline, c.texts, c.text_count);
		for (size_t k = 0; k < count; k++)
			if (overlay_intersection(c.arena, &cloud, &grounds[k].region).count > 0)
				place_triangle(&c, points, grounds[k].mark);
	}
}
