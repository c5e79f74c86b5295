#include "sheets/draw_cuts.h"

#include <math.h>
#include <string.h>

#include "sheets/wall_label.h"

/* A cut printed as whole differs by less than this (floor mm). */
static const double SAME_CUT = 0.8;
/* Cuts that differ by less than this are one to a setter: 1/16 in (floor mm). */
static const double SAME_TO_CUT = 1.6;
/* More course ends than this repeat too seldom to be told one by one. */
enum { ENDS_MOST = 4 };
/* Borders nearer to one line than this run along one wall (floor mm). */
static const double SAME_LINE = 20;
/* Borders shorter than this take their cut from their neighbours (floor mm). */
static const double SHORTEST = 150;
/* Paper mm: on a shorter wall its two ends have one label. */
static const double ENDS_APART = 60;
/* So far from a border there is tile of its room, whatever the wall is out of true (floor mm). */
static const double INSIDE = 15;

static const char *size_text(const struct draft *draft, double cut, double whole)
{
	if (whole - cut < SAME_CUT)
		return draft_word(draft, "cut.whole");
	return draft_text(draft, "cut.size", {"size", draft_length(draft, cut)});
}

/* Of a wall out of true: at its first end, half way, at its last. */
static double course_end(const struct border_cut *cut, size_t i, double along)
{
	return cut->courses[i] + (cut->courses_to[i] - cut->courses[i]) * along;
}

struct range {
	double least, most;
};

static struct range range_of(const struct border_cut *cut, double along)
{
	struct range range = {INFINITY, 0};
	for (size_t i = 0; i < cut->course_count; i++) {
		range.least = fmin(range.least, course_end(cut, i, along));
		range.most = fmax(range.most, course_end(cut, i, along));
	}
	return range;
}

static const char *range_text(const struct draft *draft, const struct border_cut *cut, double along)
{
	struct range range = range_of(cut, along);
	return draft_text(draft, "cut.both-ends", {"from", draft_length(draft, range.least)},
	                  {"to", draft_length(draft, range.most)});
}

/* True where the courses, which lie in order along v, follow each other the other way as the
 * sheet is read: to the right, and up. */
static bool is_read_back(const struct lay_view *v)
{
	struct paper_point along = lay_view_direction(v, (struct point){0, 1});
	return v->lay->module->offset_count > 0 && along.x - along.y < 0;
}

/* The distinct course ends, as one meets them along the wall, by strokes. */
static const char *ends_text(const struct draft *draft, const struct lay_view *v,
                             const struct border_cut *cut, double along)
{
	if (cut->course_count > ENDS_MOST)
		return range_text(draft, cut, along);
	struct strbuf list = strbuf_in(draft->arena);
	for (size_t i = 0; i < cut->course_count; i++) {
		size_t at = is_read_back(v) ? cut->course_count - 1 - i : i;
		strbuf_printf(&list, "%s%s", i ? " / " : "",
		              draft_length(draft, course_end(cut, at, along)));
	}
	return list.text;
}

/* Half way along, where both ends print as one. */
static const char *cut_text(const struct draft *draft, const struct lay_view *v,
                            const struct border_cut *cut)
{
	if (cut->course_count > 1)
		return ends_text(draft, v, cut, 0.5);
	return size_text(draft, (cut->from + cut->to) / 2, cut->whole);
}

static bool is_tapered(const struct border_cut *cut)
{
	for (size_t i = 0; cut->course_count > 1 && i < cut->course_count; i++)
		if (fabs(cut->courses[i] - cut->courses_to[i]) >= SAME_TO_CUT)
			return true;
	return cut->course_count <= 1 && fabs(cut->from - cut->to) >= SAME_TO_CUT;
}

static double border_length(const struct field_border *border)
{
	return point_distance(border->from, border->to);
}

static const struct field_border *border_of(const struct lay_view *v, const struct border_cut *cut)
{
	return &v->lay->field->borders[cut->border];
}

/* True where the tile at the border, at its left, is the room's. */
static bool is_of_room(const struct lay_view *v, const struct field_border *border)
{
	struct point along = point_unit(point_sub(border->to, border->from));
	struct point middle = point_between(border->from, border->to, 0.5);
	struct point inside = {middle.x - along.y * INSIDE, middle.y + along.x * INSIDE};
	return region_holds(&v->ground, lay_view_plan(v, inside));
}

/* On a sheet that shows a part of the floor: true where the border is in it. */
static bool is_shown(const struct lay_view *v, const struct field_border *border)
{
	struct box box = box_with(box_with(box_empty(), lay_view_plan(v, border->from)),
	                          lay_view_plan(v, border->to));
	return !v->view->core || box_meets(box, *v->view->core);
}

static bool is_askew(const struct lay_view *v, const struct field_border *border)
{
	return field_has_askew(v->lay->field, border->of);
}

/* Of a bent wall the longest stretch speaks, however short. */
static bool is_labelled(const struct lay_view *v, const struct border_cut *cut)
{
	const struct field_border *border = border_of(v, cut);
	return border->kind != SITE_EDGE_OBSTACLE && border->kind != SITE_EDGE_DRAIN &&
	       border->kind != SITE_EDGE_JAMB && is_of_room(v, border) && is_shown(v, border) &&
	       (border_length(border) >= SHORTEST || is_askew(v, border));
}

/* True where two borders run along one straight line of the room, the same way. */
static bool is_in_line(const struct field_border *a, const struct field_border *b)
{
	struct point along = point_unit(point_sub(a->to, a->from));
	struct point other = point_unit(point_sub(b->to, b->from));
	return point_dot(along, other) > 1 - 1e-6 &&
	       fabs(point_cross(along, point_sub(b->from, a->from))) < SAME_LINE;
}

static bool is_near(double a, double b)
{
	return fabs(a - b) < SAME_TO_CUT;
}

/* True where both print one cut: the same, but for what a wall is out of true by. */
static bool is_same_cut(const struct border_cut *a, const struct border_cut *b)
{
	struct range one = range_of(a, 0.5), other = range_of(b, 0.5);
	if (a->course_count <= 1 && b->course_count <= 1)
		return is_near((a->from + a->to) / 2, (b->from + b->to) / 2);
	if (a->course_count > ENDS_MOST && b->course_count > ENDS_MOST)
		return is_near(one.least, other.least) && is_near(one.most, other.most);
	bool is_same = a->course_count == b->course_count;
	for (size_t i = 0; is_same && i < a->course_count; i++)
		is_same = is_near(course_end(a, i, 0.5), course_end(b, i, 0.5));
	return is_same;
}

/* True where a longer border in line with this one (of two alike the earlier) says the
 * same: other parts of its wall, and the stop line of a doorway in it. */
static bool is_said(const struct lay_view *v, size_t index)
{
	const struct position *position = v->lay->position;
	const struct border_cut *cut = &position->cuts[index];
	const struct field_border *border = border_of(v, cut);
	for (size_t i = 0; i < position->cut_count; i++) {
		const struct field_border *other = border_of(v, &position->cuts[i]);
		if (i == index || is_tapered(cut) || is_tapered(&position->cuts[i]) ||
		    border->is_carried || !is_labelled(v, &position->cuts[i]) ||
		    !is_in_line(other, border))
			continue;
		double more = border_length(other) - border_length(border);
		bool is_first = border->is_doorway != other->is_doorway
		                        ? border->is_doorway
		                        : more > 1 || (more >= -1 && i < index);
		if (is_first && is_same_cut(&position->cuts[i], cut))
			return true;
	}
	return false;
}

/* The border that speaks for its wall: the longest, of a bent wall the middle one. */
static bool speaks_for_wall(const struct lay_view *v, size_t index)
{
	const struct position *position = v->lay->position;
	const struct field_border *border = border_of(v, &position->cuts[index]);
	size_t before = 0, after = 0, longer = 0;
	for (size_t i = 0; i < position->cut_count; i++) {
		const struct field_border *other = border_of(v, &position->cuts[i]);
		double more = border_length(other) - border_length(border);
		if (i == index || strcmp(other->of, border->of) != 0 || other->is_doorway ||
		    !is_shown(v, other))
			continue;
		*(i < index ? &before : &after) += 1;
		longer += more > 1 || (more >= -1 && i < index);
	}
	return is_askew(v, border) ? before == after || before == after + 1 : longer == 0;
}

/* Every cut is told with the wall or doorway that it is at: beside another wall it would seem
 * to be that one's. */
static const char *wall_text(const struct draft *draft, const struct field_border *border,
                             const char *cut)
{
	return draft_text(draft, "cut.wall", {"wall", draft_tag(draft, border->of)}, {"cut", cut});
}

/* Of a wall out of true both its ends: in one label, where two would crowd the wall. */
static void label_taper(struct sheet *sheet, const struct field_border *border,
                        const char *const ends[2], struct paper_point a, struct paper_point b)
{
	const struct draft *draft = sheet->draft;
	const char *both = draft_text(draft, "cut.both-ends", {"from", ends[0]}, {"to", ends[1]});
	if (paper_distance(a, b) < ENDS_APART) {
		wall_line(sheet, border->of, a, b, 0.5, wall_text(draft, border, both));
		return;
	}
	wall_line(sheet, border->of, a, b, 0.18, wall_text(draft, border, ends[0]));
	wall_line(sheet, border->of, a, b, 0.82, wall_text(draft, border, ends[1]));
}

static void label_courses(struct sheet *sheet, const struct lay_view *v,
                          const struct border_cut *cut, struct paper_point a, struct paper_point b)
{
	const struct draft *draft = sheet->draft;
	const struct field_border *border = border_of(v, cut);
	const char *key = v->lay->module->offset_count > 0 ? "cut.wall-ends" : "cut.wall-cuts";
	const char *name = draft_text(draft, key, {"wall", draft_tag(draft, border->of)});
	double along[] = {0.5, 0.5};
	size_t count = 1;
	if (is_tapered(cut)) {
		along[0] = 0;
		along[1] = 1;
		count = 2;
	}
	bool is_apart = paper_distance(a, b) >= ENDS_APART;
	const char *lines[] = {name, ends_text(draft, v, cut, along[0]),
	                       ends_text(draft, v, cut, along[1])};
	if (count == 1 || !is_apart) {
		wall_label(sheet, border->of, a, b,
		           (struct wall_text){.lines = lines, .count = 1 + count, .around = 0.5});
		return;
	}
	const char *last[] = {name, lines[2]};
	wall_label(sheet, border->of, a, b,
	           (struct wall_text){.lines = lines, .count = 2, .around = 0.18});
	wall_label(sheet, border->of, a, b,
	           (struct wall_text){.lines = last, .count = 2, .around = 0.82});
}

/* Once a wall: there is no one cut to say. Where the whole lay is turned, the order of work
 * says it for all walls. */
static void label_askew(struct sheet *sheet, const struct lay_view *v, size_t index,
                        struct paper_point a, struct paper_point b)
{
	const struct draft *draft = sheet->draft;
	const struct field_border *border = border_of(v, &v->lay->position->cuts[index]);
	if (border->is_doorway || !speaks_for_wall(v, index))
		return;
	const char *text = draft_tag(draft, border->of);
	if (!lay_view_is_turned(v))
		text = wall_text(draft, border, draft_word(draft, "cut.to-wall"));
	wall_line(sheet, border->of, a, b, 0.5, text);
}

static void label_side(struct sheet *sheet, const char *of, struct paper_point a,
                       struct paper_point b, double around, const char *text)
{
	wall_label(sheet, of, b, a,
	           (struct wall_text){.lines = &text, .count = 1, .around = around, .stays = true});
}

/* There is tile on both sides of a carried joint: each side says its own cut, on itself. Of
 * one askew to the courses there is no one cut to say. */
static void label_carried(struct sheet *sheet, const struct lay_view *v,
                          const struct field_border *border, const struct border_cut *cut,
                          struct paper_point a, struct paper_point b)
{
	const struct draft *draft = sheet->draft;
	if (field_is_askew(border->from, border->to) || cut->varies)
		return;
	if (cut->course_count > 1) {
		label_side(sheet, border->of, a, b, 0.5,
		           draft_text(draft, "cut.size", {"size", cut_text(draft, v, cut)}));
		return;
	}
	if (!is_tapered(cut)) {
		label_side(sheet, border->of, a, b, 0.5, cut_text(draft, v, cut));
		return;
	}
	label_side(sheet, border->of, a, b, 0.82, size_text(draft, cut->from, cut->whole));
	label_side(sheet, border->of, a, b, 0.18, size_text(draft, cut->to, cut->whole));
}

static void label_border(struct sheet *sheet, const struct lay_view *v, size_t index)
{
	const struct draft *draft = sheet->draft;
	const struct border_cut *cut = &v->lay->position->cuts[index];
	const struct field_border *border = border_of(v, cut);
	struct paper_point a = lay_view_point(v, border->from), b = lay_view_point(v, border->to);
	const char *ends[] = {size_text(draft, cut->from, cut->whole),
	                      size_text(draft, cut->to, cut->whole)};
	if (border->is_carried)
		label_carried(sheet, v, border, cut, a, b);
	else if (is_askew(v, border) || cut->varies)
		label_askew(sheet, v, index, a, b);
	else if (cut->course_count > 1)
		label_courses(sheet, v, cut, a, b);
	else if (is_tapered(cut))
		label_taper(sheet, border, ends, a, b);
	else
		wall_line(sheet, border->of, a, b, 0.5,
		          wall_text(draft, border, cut_text(draft, v, cut)));
}

void draw_cuts(struct sheet *sheet, const struct lay_view *v)
{
	for (size_t i = 0; i < v->lay->position->cut_count; i++)
		if (is_labelled(v, &v->lay->position->cuts[i]) && !is_said(v, i))
			label_border(sheet, v, i);
}

/* Which side of the plan a border looks to, from inside the room. */
static enum side side_of(struct point from, struct point to)
{
	struct point along = point_sub(to, from);
	if (fabs(along.x) > fabs(along.y))
		return along.x > 0 ? SIDE_BOTTOM : SIDE_TOP;
	return along.y > 0 ? SIDE_RIGHT : SIDE_LEFT;
}

bool draw_cuts_has_ends(const struct lay_view *v, enum side side)
{
	for (size_t i = 0; i < v->lay->position->cut_count; i++) {
		const struct border_cut *cut = &v->lay->position->cuts[i];
		const struct field_border *border = border_of(v, cut);
		if (cut->course_count > 1 && is_labelled(v, cut) && !border->is_carried &&
		    side_of(lay_view_plan(v, border->from), lay_view_plan(v, border->to)) == side)
			return true;
	}
	return false;
}

void draw_open_edges(struct sheet *sheet, const struct lay_view *v)
{
	const struct draft *draft = sheet->draft;
	for (size_t i = 0; i < v->room->edge_count; i++) {
		const struct site_edge *edge = &v->room->edges[i];
		struct paper_point from = view_point(v->view, edge->from),
				   to = view_point(v->view, edge->to);
		const struct plan_room *beyond = edge->wall ? edge->wall->to : NULL;
		if (edge->kind != SITE_EDGE_OPEN || !beyond ||
		    !list_shows(sheet->list, paper_at((from.x + to.x) / 2, (from.y + to.y) / 2)))
			continue;
		const char *room = draft_tag(draft, beyond->name ? beyond->name : beyond->id);
		const char *text = draft_text(draft, "cut.open",
		                              {"wall", draft_tag(draft, edge->id)}, {"room", room});
		wall_line(sheet, edge->id, from, to, 0.5, text);
		sheet_use(sheet, LEGEND_OPEN_EDGE);
	}
}

/* How far the wall of the edges first..end stands off the straight line between its ends. */
static double wall_rise(const struct site_room *room, size_t first, size_t end)
{
	struct point from = room->edges[first].from, to = room->edges[end - 1].to;
	struct point along = point_unit(point_sub(to, from));
	double rise = 0;
	for (size_t i = first; i + 1 < end; i++)
		rise = fmax(rise, fabs(point_cross(along, point_sub(room->edges[i].to, from))));
	return rise;
}

void draw_wall_names(struct sheet *sheet, const struct view *view, const struct site_room *room)
{
	const struct draft *draft = sheet->draft;
	for (size_t i = 0, end; i < room->edge_count; i = end) {
		end = site_wall_end(room, i);
		const struct site_edge *edge = &room->edges[(i + end - 1) / 2];
		double rise = wall_rise(room, i, end);
		const char *name = draft_tag(draft, edge->id);
		if (rise > SAME_CUT)
			name = draft_text(draft, "cut.wall-bent", {"wall", name},
			                  {"rise", draft_length(draft, rise)});
		wall_line(sheet, edge->id, view_point(view, edge->from), view_point(view, edge->to),
		          0.5, name);
	}
}
