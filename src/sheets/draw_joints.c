/* draw_joints.c - soft, carried and perimeter joints, tagged with what a crew counts:
 * width, and courses from the control line. */
#include <math.h>
#include <string.h>

#include "layout/courses.h"
#include "sheets/draw_floor.h"
#include "sheets/draw_tile.h"

/* A joint of more turns follows the tile as drawn: courses to one of its runs mislead. */
static const double FEW_TURNS = 2;

static size_t longest(struct line line)
{
	size_t best = 0;
	for (size_t i = 1; i + 1 < line.count; i++)
		if (point_distance(line.points[i], line.points[i + 1]) >
		    point_distance(line.points[best], line.points[best + 1]) + 1)
			best = i;
	return best;
}

static const struct first_tile *first_tile_of(const struct lay_view *v)
{
	const struct controls *controls = v->lay->controls;
	for (size_t i = 0; i < controls->first_count; i++)
		if (controls->firsts[i].room == v->room)
			return &controls->firsts[i];
	return NULL;
}

/* Courses (along u) or tiles (along v) between the joint's longest run and the control line
 * it is parallel to; 0: not a whole number, or no such line. */
static long count_courses(const struct lay_view *v, const struct joint *joint,
                          const struct control **out)
{
	size_t k = longest(joint->line);
	struct segment run = {joint->line.points[k], joint->line.points[k + 1]};
	struct point way = point_sub(run.to, run.from);
	bool along_u = fabs(way.x) > fabs(way.y);
	const struct first_tile *first = first_tile_of(v);
	long count = 0;
	*out = lay_view_control(v, along_u);
	if (!*out || !first ||
	    !courses_between(v->lay->tiling, first, along_u, run, joint->width, &count))
		return 0;
	return count;
}

static const char *courses_text(const struct draft *draft, long count,
                                const struct control *control)
{
	const char *number = arena_printf(draft->arena, "%ld", count);
	return draft_text(draft, "tag.courses", {"count", number},
	                  {"line",
	                   draft_word(draft, control->along_u ? "tag.line-u" : "tag.line-v")});
}

static void tag_soft(struct sheet *sheet, const struct lay_view *v, const struct joint *joint)
{
	const struct draft *draft = sheet->draft;
	const struct control *control;
	bool is_stepped = joint->turns > FEW_TURNS;
	long courses = is_stepped ? 0 : count_courses(v, joint, &control);
	const char *lines[2] = {draft_text(draft, "tag.soft",
	                                   {"crack", draft_tag(draft, joint->of)},
	                                   {"width", draft_width(draft, joint->width)})};
	if (courses)
		lines[1] = courses_text(draft, courses, control);
	else if (is_stepped)
		lines[1] = draft_word(draft, "tag.stepped");
	size_t k = longest(joint->line);
	draw_tag(sheet, joint->id, LABEL_BOX, lay_view_point(v, joint->line.points[k]),
	         lay_view_point(v, joint->line.points[k + 1]), lines, lines[1] ? 2 : 1);
}

static void tag_straight(struct sheet *sheet, const struct lay_view *v, const struct joint *joint,
                         const char *key, enum label_frame frame)
{
	const struct draft *draft = sheet->draft;
	size_t k = longest(joint->line);
	const char *text = draft_text(draft, key, {"id", draft_tag(draft, joint->of)},
	                              {"width", draft_width(draft, joint->width)});
	draw_tag(sheet, joint->id, frame, lay_view_point(v, joint->line.points[k]),
	         lay_view_point(v, joint->line.points[k + 1]), &text, 1);
}

/* Width, and the courses to lay before it comes. */
static void tag_field(struct sheet *sheet, const struct lay_view *v, const struct joint *joint)
{
	const struct draft *draft = sheet->draft;
	const struct control *control;
	long courses = count_courses(v, joint, &control);
	const char *lines[2] = {
		draft_text(draft, "tag.field", {"width", draft_width(draft, joint->width)})};
	if (courses)
		lines[1] = courses_text(draft, courses, control);
	else if (!joint->on_joint)
		lines[1] = draft_word(draft, "tag.field-cut");
	size_t k = longest(joint->line);
	draw_tag(sheet, joint->id, LABEL_BOX, lay_view_point(v, joint->line.points[k]),
	         lay_view_point(v, joint->line.points[k + 1]), lines, lines[1] ? 2 : 1);
}

struct joint_look {
	enum pen pen;
	enum legend_mark mark;
};

static struct joint_look look_of(const struct joint *joint)
{
	switch (joint->kind) {
	case JOINT_SOFT:
		return (struct joint_look){PEN_SOFT_JOINT, LEGEND_SOFT_JOINT};
	case JOINT_MOVEMENT:
		return (struct joint_look){PEN_MOVEMENT_JOINT, LEGEND_FIELD_JOINT};
	case JOINT_CARRIED:
		return (struct joint_look){PEN_CARRIED_JOINT, LEGEND_CARRIED_JOINT};
	default:
		return (struct joint_look){PEN_PERIMETER_JOINT, LEGEND_PERIMETER_SEALED};
	}
}

static void draw_joint(struct sheet *sheet, const struct lay_view *v, const struct joint *joint)
{
	struct joint_look look = look_of(joint);
	struct paper_path path = lay_view_line(sheet->draft->arena, v, joint->line);
	if (joint->is_closed && path.count)
		path.lines[0].kind = PAPER_CLOSED;
	/* An open perimeter joint is the gap at the wall: a note says it, no line does. */
	if (joint->kind == JOINT_PERIMETER && joint->is_open)
		return;
	list_stroke(sheet->list, LAYER_JOINTS, look.pen, joint->id, path);
	sheet_use(sheet, look.mark);
	if (joint->kind == JOINT_SOFT)
		tag_soft(sheet, v, joint);
	else if (joint->kind == JOINT_CARRIED)
		tag_straight(sheet, v, joint, "tag.carried", LABEL_HEXAGON);
	else if (joint->kind == JOINT_MOVEMENT)
		tag_field(sheet, v, joint);
}

void draw_joints(struct sheet *sheet, const struct lay_view *v)
{
	const struct joints *joints = v->lay->joints;
	for (size_t i = 0; i < joints->joint_count; i++)
		if (joints->joints[i].line.count >= 2 &&
		    lay_view_has(v, joints->joints[i].line.points[0]))
			draw_joint(sheet, v, &joints->joints[i]);
}

static bool is_seen(const struct lay_view *v, const struct joint *joint)
{
	return joint->line.count >= 2 && lay_view_has(v, joint->line.points[0]);
}

static void draw_scheduled(struct sheet *sheet, const struct lay_view *v, const struct joint *joint)
{
	struct joint_look look = look_of(joint);
	struct paper_path path = lay_view_line(sheet->draft->arena, v, joint->line);
	if (joint->is_closed && path.count)
		path.lines[0].kind = PAPER_CLOSED;
	size_t k = longest(joint->line);
	const char *text = draft_tag(sheet->draft, joint->id);
	list_stroke(sheet->list, LAYER_JOINTS, look.pen, joint->id, path);
	draw_tag(sheet, joint->id, LABEL_BOX, lay_view_point(v, joint->line.points[k]),
	         lay_view_point(v, joint->line.points[k + 1]), &text, 1);
	sheet_use(sheet, look.mark);
}

void draw_scheduled_joints(struct sheet *sheet, const struct lay_view *v)
{
	const struct joints *joints = v->lay->joints;
	for (size_t i = 0; i < joints->joint_count; i++)
		if (is_seen(v, &joints->joints[i]))
			draw_scheduled(sheet, v, &joints->joints[i]);
}
