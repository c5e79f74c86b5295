/* draw_joints.c - soft, field, carried and perimeter joints: as a crew builds them, or as the
 * schedule names them. */
#include <string.h>

#include "geometry/line.h"
#include "sheets/draw_floor.h"
#include "sheets/draw_tile.h"
#include "sheets/joint_tag.h"

/* From the wall's line to the line of the joint along it, paper mm: own design, so that both
 * are seen at half size. */
static const double WALL_CLEAR = 1.3;

struct joint_look {
	enum pen pen;
	enum legend_mark mark;
};

static struct joint_look look_of(const struct lay_view *v, const struct joint *joint)
{
	static const struct joint_look LOOKS[] = {
		[JOINT_SOFT] = {PEN_SOFT_JOINT, LEGEND_SOFT_JOINT},
		[JOINT_MOVEMENT] = {PEN_MOVEMENT_JOINT, LEGEND_FIELD_JOINT},
		[JOINT_CARRIED] = {PEN_CARRIED_JOINT, LEGEND_CARRIED_JOINT},
		[JOINT_PERIMETER] = {PEN_PERIMETER_JOINT, LEGEND_PERIMETER_SEALED},
	};
	if (joint_tag_is_pending(v->lay, joint))
		return (struct joint_look){PEN_JOINT_PENDING, LEGEND_SOFT_PENDING};
	return LOOKS[joint->kind];
}

/* The same line this far to its left, its ends drawn in by as much. */
static struct line beside(struct arena *arena, struct line line, bool is_closed, double off)
{
	size_t n = line.count;
	struct line out = {ARENA_ARRAY(arena, struct point, n), n};
	for (size_t i = 0; i < n; i++) {
		bool is_first = !is_closed && i == 0, is_last = !is_closed && i + 1 == n;
		struct point at = line.points[i];
		struct point before = line.points[is_closed ? (i + n - 1) % n : i - !is_first];
		struct point after = line.points[is_closed ? (i + 1) % n : i + !is_last];
		struct point in =
			point_unit(point_sub(is_first ? after : at, is_first ? at : before));
		struct point on =
			point_unit(point_sub(is_last ? at : after, is_last ? before : at));
		double share = off / (1 + point_dot(in, on)), end = off * (is_first - is_last);
		out.points[i] = (struct point){at.x - (in.y + on.y) * share + in.x * end,
		                               at.y + (in.x + on.x) * share + in.y * end};
	}
	return out;
}

/* Where the joint is drawn: one at a wall clear of the wall's own line. */
static struct line drawn_line(struct arena *arena, const struct lay_view *v,
                              const struct joint *joint)
{
	double off = WALL_CLEAR * v->view->scale;
	struct line line = joint->line;
	if (joint->kind == JOINT_PERIMETER && line_length(line) > 4 * off)
		line = beside(arena, line, joint->is_closed, off);
	/* A ring that may be cut goes back to its start. */
	if (joint->is_closed && v->is_cut) {
		struct point *points = ARENA_ARRAY(arena, struct point, line.count + 1);
		for (size_t i = 0; i <= line.count; i++)
			points[i] = line.points[i % line.count];
		line = (struct line){points, line.count + 1};
	}
	return line;
}

/* False: nothing of it is in the room. */
static bool draw_line(struct sheet *sheet, const struct lay_view *v, const struct joint *joint)
{
	struct joint_look look = look_of(v, joint);
	struct paper_path path = {0};
	if (joint->line.count >= 2)
		path = lay_view_line(sheet->draft->arena, v,
		                     drawn_line(sheet->draft->arena, v, joint));
	if (path.count == 0)
		return false;
	if (joint->is_closed && !v->is_cut)
		path.lines[0].kind = PAPER_CLOSED;
	list_stroke(sheet->list, LAYER_JOINTS, look.pen, joint->id, path);
	sheet_use(sheet, look.mark);
	return true;
}

static void place_tag(struct sheet *sheet, const struct lay_view *v, const char *element,
                      enum label_frame frame, struct line seen, const char *const *lines,
                      size_t line_count)
{
	struct segment stretch = joint_tag_stretch(seen);
	draw_tag(sheet, element, frame, lay_view_point(v, stretch.from),
	         lay_view_point(v, stretch.to), lines, line_count);
}

/* Each thing is said once: parts of a joint that are found alike share a tag. */
static void draw_tags(struct sheet *sheet, const struct lay_view *v, const struct joint_tag *tags,
                      size_t count)
{
	for (size_t i = 0; i < count; i++) {
		const struct joint_tag *tag = &tags[i];
		bool is_said = tag->line_count == 0;
		for (size_t k = 0; k < count && !is_said; k++)
			is_said = joint_tag_is_said(tag, &tags[k]);
		if (!is_said)
			place_tag(sheet, v, tag->joint->id, tag->frame, tag->seen, tag->lines,
			          tag->line_count);
	}
}

/* An open perimeter joint is the gap at the wall: a note says it, no line does. */
static bool is_gap(const struct joint *joint)
{
	return joint->kind == JOINT_PERIMETER && joint->is_open;
}

void draw_joint_lines(struct sheet *sheet, const struct lay_view *v)
{
	const struct joints *joints = v->lay->joints;
	for (size_t i = 0; i < joints->joint_count; i++)
		if (!is_gap(&joints->joints[i]))
			draw_line(sheet, v, &joints->joints[i]);
}

static void draw_tagged(struct sheet *sheet, const struct lay_view *v, bool carried_alone)
{
	const struct draft *draft = sheet->draft;
	const struct joints *joints = v->lay->joints;
	struct joint_tag *tags = ARENA_ARRAY(draft->arena, struct joint_tag, joints->joint_count);
	size_t count = 0;
	for (size_t i = 0; i < joints->joint_count; i++) {
		const struct joint *joint = &joints->joints[i];
		bool is_out = carried_alone ? joint->kind != JOINT_CARRIED : is_gap(joint);
		if (!is_out && draw_line(sheet, v, joint))
			tags[count++] = joint_tag_make(draft, v, joint);
	}
	draw_tags(sheet, v, tags, count);
}

void draw_joints(struct sheet *sheet, const struct lay_view *v)
{
	draw_tagged(sheet, v, false);
}

void draw_carried_joints(struct sheet *sheet, const struct lay_view *v)
{
	draw_tagged(sheet, v, true);
}

void draw_scheduled_joints(struct sheet *sheet, const struct lay_view *v)
{
	const struct joints *joints = v->lay->joints;
	for (size_t i = 0; i < joints->joint_count; i++) {
		const struct joint *joint = &joints->joints[i];
		const char *text = draft_tag(sheet->draft, joint->id);
		/* A perimeter joint is found by its wall, whose name stands there. */
		if (is_gap(joint) || !draw_line(sheet, v, joint) || joint->kind == JOINT_PERIMETER)
			continue;
		struct line named = lay_view_named(sheet->draft->arena, v, joint->line);
		if (named.count >= 2)
			place_tag(sheet, v, joint->id, LABEL_BOX, named, &text, 1);
	}
}
