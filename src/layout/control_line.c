#include "layout/control_line.h"

#include "base/array.h"
#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"

struct control_room control_room_in(struct arena *arena, const struct tiling *tiling,
                                    const struct cracks *cracks, const struct rules *rules,
                                    const struct site_room *room, const struct controls *placed)
{
	const struct field *field = tiling->field;
	struct control_room own = {.room = room};
	own.openings = control_openings_of(arena, field, room, placed);
	own.movement = tiling->movement;
	own.clear_share = rules_figure(rules, FIGURE_CONTROL_CLEAR_SHARE);
	own.wall_clear = rules_figure(rules, FIGURE_CONTROL_WALL_CLEAR);
	struct region floor = region_from_ring(arena, room->outline);
	own.floor = frame_region_in(arena, field->frame, &floor);
	own.box = region_box(&own.floor);
	struct region open = overlay_intersection(arena, &own.floor, &field->ground);
	struct region held = cracks_held_ground(arena, cracks);
	own.clear = overlay_difference(arena, &open, &held);
	own.walls = ARENA_ARRAY(arena, struct site_edge, room->edge_count);
	for (size_t w = 0; w < room->edge_count; w++) {
		own.walls[w] = room->edges[w];
		own.walls[w].from = frame_in(field->frame, room->edges[w].from);
		own.walls[w].to = frame_in(field->frame, room->edges[w].to);
	}
	own.wall_count = room->edge_count;
	return own;
}

struct segment control_line_through(const struct control_room *room, struct point at, bool along_u)
{
	if (along_u)
		return (struct segment){{room->box.x0, at.y}, {room->box.x1, at.y}};
	return (struct segment){{at.x, room->box.y0}, {at.x, room->box.y1}};
}

static double length_in(struct arena *arena, const struct region *region, struct segment line)
{
	size_t count;
	double share = 0;
	const struct stretch *on = clip_segment(arena, line, region, &count);
	for (size_t k = 0; k < count; k++)
		share += on[k].to - on[k].from;
	return share * segment_length(line);
}

/* Along and across the line. */
static struct point in_line(struct segment line, struct point p)
{
	struct point along = point_unit(point_sub(line.to, line.from));
	struct point way = point_sub(p, line.from);
	return (struct point){point_dot(along, way), point_cross(along, way)};
}

/* A wall that runs beside the line rather than across it, on the line's own length. */
static bool runs_beside(struct segment line, const struct site_edge *wall)
{
	struct point a = in_line(line, wall->from), b = in_line(line, wall->to);
	return fabs(b.x - a.x) > fabs(b.y - a.y) &&
	       fmin(fmax(a.x, b.x), segment_length(line)) - fmax(fmin(a.x, b.x), 0) >
	               TOLERANCE_WHOLE;
}

static bool is_beside_wall(const struct control_room *room, struct segment line)
{
	for (size_t w = 0; w < room->wall_count; w++) {
		const struct site_edge *wall = &room->walls[w];
		double near =
			fmin(fabs(in_line(line, wall->from).y), fabs(in_line(line, wall->to).y));
		if (wall->kind != SITE_EDGE_OPEN && runs_beside(line, wall) &&
		    near < room->wall_clear - TOLERANCE_WHOLE)
			return true;
	}
	return false;
}

static bool is_on_field_joint(const struct control_room *room, struct point at, bool along_u)
{
	for (size_t i = 0; i < room->movement->line_count; i++) {
		const struct movement_line *line = &room->movement->lines[i];
		if (line->along_u == along_u &&
		    fabs((along_u ? at.y : at.x) - line->centre) <= line->width)
			return true;
	}
	return false;
}

struct control_key control_line_key(struct arena *arena, const struct control_room *room,
                                    struct point at, bool along_u)
{
	struct segment line = control_line_through(room, at, along_u);
	double clear = length_in(arena, &room->clear, line);
	double wanted = room->clear_share * segment_length(line);
	enum control_sharing sharing = control_sharing_of(&room->openings, at, along_u);
	double middle =
		along_u ? (room->box.y0 + room->box.y1) / 2 : (room->box.x0 + room->box.x1) / 2;
	return (struct control_key){
		.is_blocked = clear < wanted - TOLERANCE_WHOLE,
		.is_apart = sharing != SHARING_LINE,
		.is_beside = is_beside_wall(room, line),
		.is_under = clear < length_in(arena, &room->floor, line) - TOLERANCE_WHOLE,
		.is_on_joint = is_on_field_joint(room, at, along_u),
		.is_closed = sharing == SHARING_NONE,
		.off_middle = fabs((along_u ? at.y : at.x) - middle),
	};
}

int control_key_compare(struct control_key a, struct control_key b)
{
	const int terms[][2] = {
		{a.is_blocked, b.is_blocked},   {a.is_apart, b.is_apart},
		{a.is_beside, b.is_beside},     {a.is_under, b.is_under},
		{a.is_on_joint, b.is_on_joint}, {a.is_closed, b.is_closed},
		{a.crossing, b.crossing},
	};
	for (size_t i = 0; i < sizeof terms / sizeof *terms; i++)
		if (terms[i][0] != terms[i][1])
			return terms[i][0] < terms[i][1] ? -1 : 1;
	if (fabs(a.off_middle - b.off_middle) < TOLERANCE_SAME)
		return 0;
	return a.off_middle < b.off_middle ? -1 : 1;
}

double control_line_ahead(struct arena *arena, const struct control_room *room, struct point at,
                          bool along_u, bool greater)
{
	struct segment line = control_line_through(room, at, along_u);
	struct segment ahead = {at, greater ? line.to : line.from};
	size_t count;
	const struct stretch *clear = clip_segment(arena, ahead, &room->clear, &count);
	double length = segment_length(ahead);
	if (count == 0 || clear[0].from * length > TOLERANCE_WHOLE)
		return 0;
	return clear[0].to * length;
}

/* The point of the wall that lies square to it from station `x` of the line, if it does. */
static bool measure(struct arena *arena, const struct control_room *room, struct segment line,
                    const struct site_edge *wall, double x, struct control_offset *out_offset)
{
	struct point along = point_unit(point_sub(wall->to, wall->from));
	struct point start =
		point_add(line.from, point_scale(point_unit(point_sub(line.to, line.from)), x));
	double share = point_dot(point_sub(start, wall->from), along) /
	               point_distance(wall->from, wall->to);
	struct point at_wall = point_between(wall->from, wall->to, fmin(fmax(share, 0), 1));
	struct segment square = {at_wall, point_add(at_wall, point_left(along))};
	struct point ray = point_sub(square.to, square.from);
	struct point across = point_sub(line.to, line.from);
	double slope = point_cross(ray, across);
	if (fabs(slope) < TOLERANCE_SAME * segment_length(line))
		return false;
	double distance = point_cross(point_sub(line.from, at_wall), across) / slope;
	*out_offset =
		(struct control_offset){wall->id, at_wall,
	                                point_add(at_wall, point_scale(ray, distance)), distance};
	struct segment tape = {out_offset->at_wall, out_offset->at_line};
	return distance > TOLERANCE_WHOLE && clip_holds(arena, tape, &room->clear);
}

/* Stations at the two ends of what line and wall have in common, a hand's room in from the
 * corners where there is space for it. */
static size_t offsets_from(struct arena *arena, const struct control_room *room,
                           struct segment line, const struct site_edge *wall,
                           struct control_offset offsets[2])
{
	double a = in_line(line, wall->from).x, b = in_line(line, wall->to).x;
	double from = fmax(fmin(a, b), 0), to = fmin(fmax(a, b), segment_length(line));
	double in = fmin(room->wall_clear, (to - from) / 4);
	size_t count = 0;
	if (!runs_beside(line, wall))
		return 0;
	count += measure(arena, room, line, wall, from + in, &offsets[count]);
	count += measure(arena, room, line, wall, to - in, &offsets[count]);
	return count;
}

static double common_length(struct segment line, const struct site_edge *wall)
{
	double a = in_line(line, wall->from).x, b = in_line(line, wall->to).x;
	return fmin(fmax(a, b), segment_length(line)) - fmax(fmin(a, b), 0);
}

/* From the wall with which it has most in common; of equals the first. */
static void add_offsets(struct arena *arena, const struct control_room *room,
                        struct control *control)
{
	struct segment line = {control->from, control->to};
	double most = 0;
	for (size_t w = 0; w < room->wall_count; w++) {
		const struct site_edge *wall = &room->walls[w];
		struct control_offset offsets[2];
		double common = common_length(line, wall);
		if (wall->kind == SITE_EDGE_OPEN)
			continue;
		size_t count = offsets_from(arena, room, line, wall, offsets);
		bool more = count > control->offset_count ||
		            (count == control->offset_count && common > most + TOLERANCE_WHOLE);
		if (count == 0 || !more)
			continue;
		most = common;
		control->offset_count = count;
		for (size_t k = 0; k < count; k++)
			control->offsets[k] = offsets[k];
	}
}

struct control control_from_line(struct arena *arena, const struct control_room *room,
                                 struct point at, bool along_u)
{
	struct segment line = control_line_through(room, at, along_u);
	size_t count;
	const struct stretch *on = clip_segment(arena, line, &room->floor, &count);
	double length = segment_length(line), here = point_distance(line.from, at) / length;
	struct control control = {
		.id = arena_printf(arena, "%s.%s", room->room->id, along_u ? "u" : "v"),
		.room = room->room,
		.along_u = along_u,
		.from = at,
		.to = at,
	};
	for (size_t k = 0; k < count; k++)
		if (on[k].from <= here && here <= on[k].to) {
			control.from = point_between(line.from, line.to, on[k].from);
			control.to = point_between(line.from, line.to, on[k].to);
		}
	add_offsets(arena, room, &control);
	return control;
}
