/* draw_joints.c - soft, field, carried and perimeter joints: as a crew builds them, or as the
 * schedule names them. */
#include "sheets/draw_floor.h"
#include "sheets/draw_tile.h"
#include "sheets/joint_tag.h"

struct joint_look {
	enum pen pen;
	enum legend_mark mark;
};

static struct joint_look look_of(const struct joint *joint)
{
	static const struct joint_look LOOKS[] = {
		[JOINT_SOFT] = {PEN_SOFT_JOINT, LEGEND_SOFT_JOINT},
		[JOINT_MOVEMENT] = {PEN_MOVEMENT_JOINT, LEGEND_FIELD_JOINT},
		[JOINT_CARRIED] = {PEN_CARRIED_JOINT, LEGEND_CARRIED_JOINT},
		[JOINT_PERIMETER] = {PEN_PERIMETER_JOINT, LEGEND_PERIMETER_SEALED},
	};
	return LOOKS[joint->kind];
}

/* False: nothing of it is in the room. */
static bool draw_line(struct sheet *sheet, const struct lay_view *v, const struct joint *joint)
{
	struct joint_look look = look_of(joint);
	struct paper_path path = {0};
	if (joint->line.count >= 2)
		path = lay_view_line(sheet->draft->arena, v, joint->line);
	if (path.count == 0)
		return false;
	if (joint->is_closed && path.count == 1)
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

void draw_joints(struct sheet *sheet, const struct lay_view *v)
{
	const struct draft *draft = sheet->draft;
	const struct joints *joints = v->lay->joints;
	struct joint_tag *tags = ARENA_ARRAY(draft->arena, struct joint_tag, joints->joint_count);
	size_t count = 0;
	for (size_t i = 0; i < joints->joint_count; i++) {
		const struct joint *joint = &joints->joints[i];
		if (!is_gap(joint) && draw_line(sheet, v, joint))
			tags[count++] = joint_tag_make(draft, v, joint);
	}
	draw_tags(sheet, v, tags, count);
}

void draw_scheduled_joints(struct sheet *sheet, const struct lay_view *v)
{
	const struct joints *joints = v->lay->joints;
	for (size_t i = 0; i < joints->joint_count; i++) {
		const struct joint *joint = &joints->joints[i];
		const char *text = draft_tag(sheet->draft, joint->id);
		/* A perimeter joint is found by its wall, whose name stands there. */
		if (!draw_line(sheet, v, joint) || joint->kind == JOINT_PERIMETER)
			continue;
		struct line named = lay_view_named(sheet->draft->arena, v, joint->line);
		if (named.count >= 2)
			place_tag(sheet, v, joint->id, LABEL_BOX, named, &text, 1);
	}
}
