#include "sheets/joint_tag.h"

#include <string.h>

#include "layout/courses.h"

/* What a joint along a whole wall may lack of it, for the gaps at its ends (floor mm). */
static const double WHOLE_WALL = 60;
/* A joint of more turns follows the tile as drawn: courses to one of its runs mislead. */
static const double FEW_TURNS = 2;
/* A joint whose ends are as far as this (mm) from a line runs beside it. */
static const double SAME_OFFSET = 1;

struct segment joint_tag_stretch(struct line line)
{
	size_t best = 0;
	for (size_t i = 1; i + 1 < line.count; i++)
		if (point_distance(line.points[i], line.points[i + 1]) >
		    point_distance(line.points[best], line.points[best + 1]) + 1)
			best = i;
	return (struct segment){line.points[best], line.points[best + 1]};
}

static const struct first_tile *first_tile_of(const struct lay_view *v)
{
	const struct controls *controls = v->lay->controls;
	for (size_t i = 0; i < controls->first_count; i++)
		if (controls->firsts[i].room == v->room)
			return &controls->firsts[i];
	return NULL;
}

/* Where a joint lies, counted from the control line beside its longest stretch. */
struct place {
	const struct control *control; /* NULL: not to be counted */
	long courses;                  /* 0: on the line itself */
};

static struct place place_of(const struct lay_view *v, const struct joint *joint, struct line seen)
{
	struct segment run = joint_tag_stretch(seen);
	bool along_u = fabs(run.to.x - run.from.x) > fabs(run.to.y - run.from.y);
	const struct first_tile *first = first_tile_of(v);
	struct place place = {.control = lay_view_control(v, along_u)};
	if (joint->turns > FEW_TURNS || !place.control || !first ||
	    !courses_between(v->lay->tiling, first, along_u, run, joint->width, &place.courses))
		place.control = NULL;
	return place;
}

static const char *line_name(const struct draft *draft, const struct control *control)
{
	return draft_word(draft, control->along_u ? "tag.line-u" : "tag.line-v");
}

static const char *number(const struct draft *draft, long value)
{
	return arena_printf(draft->arena, "%ld", value);
}

static const char *courses_text(const struct draft *draft, const struct place *place)
{
	return draft_text(draft, place->courses ? "tag.courses" : "tag.on-line",
	                  {"count", number(draft, place->courses)},
	                  {"line", line_name(draft, place->control)});
}

/* How a joint that runs along the tile is found; NULL: nothing to add to the drawing. */
static const char *way_text(const struct draft *draft, const struct lay_view *v,
                            const struct joint_tag *tag)
{
	struct place place = place_of(v, tag->joint, tag->seen);
	if (place.control)
		return courses_text(draft, &place);
	if (!tag->joint->on_joint)
		return draft_word(draft, "tag.field-cut");
	return tag->joint->turns > FEW_TURNS ? draft_word(draft, "tag.stepped") : NULL;
}

bool joint_tag_is_pending(const struct placed_lay *lay, const struct joint *joint)
{
	const struct cracks *cracks = lay->cracks;
	for (size_t i = 0; i < cracks->crack_count && joint->kind == JOINT_SOFT; i++)
		if (strcmp(cracks->cracks[i].id, joint->of) == 0)
			return cracks->cracks[i].pending;
	return false;
}

struct joint_tag joint_tag_make(const struct draft *draft, const struct lay_view *v,
                                const struct joint *joint)
{
	static const char *const KEYS[] = {[JOINT_SOFT] = "tag.soft",
	                                   [JOINT_MOVEMENT] = "tag.field",
	                                   [JOINT_CARRIED] = "tag.carried",
	                                   [JOINT_PERIMETER] = NULL};
	struct joint_tag tag = {.joint = joint,
	                        .seen = lay_view_named(draft->arena, v, joint->line),
	                        .frame = joint->kind == JOINT_CARRIED ? LABEL_HEXAGON : LABEL_BOX};
	if (tag.seen.count < 2 || !KEYS[joint->kind])
		return tag;
	tag.lines[0] = draft_text(draft, KEYS[joint->kind], {"id", draft_tag(draft, joint->of)},
	                          {"width", draft_width(draft, joint->width)});
	tag.line_count = 1;
	const char *way = joint->kind == JOINT_CARRIED ? NULL : way_text(draft, v, &tag);
	if (way)
		tag.lines[tag.line_count++] = way;
	if (joint_tag_is_pending(v->lay, joint))
		tag.lines[tag.line_count++] = draft_word(draft, "tag.pending");
	return tag;
}

static bool is_same_text(const struct joint_tag *a, const struct joint_tag *b)
{
	if (a->line_count != b->line_count || strcmp(a->joint->side, b->joint->side) != 0 ||
	    strcmp(a->joint->of, b->joint->of) != 0)
		return false;
	for (size_t i = 0; i < a->line_count; i++)
		if (strcmp(a->lines[i], b->lines[i]) != 0)
			return false;
	return true;
}

bool joint_tag_is_said(const struct joint_tag *tag, const struct joint_tag *other)
{
	if (tag == other || tag->joint->kind != other->joint->kind || !is_same_text(tag, other))
		return false;
	double more = other->joint->length - tag->joint->length;
	return more > 1 || (more >= -1 && other < tag);
}

/* The one wall of the lay's rooms with this id that is straight; NULL: there is none. */
static const struct site_edge *straight_wall(const struct placed_lay *lay, const char *id)
{
	const struct site_edge *wall = NULL;
	for (size_t i = 0; i < lay->field->room_count; i++) {
		const struct site_room *room = lay->field->rooms[i];
		for (size_t k = 0; k < room->edge_count; k++) {
			if (strcmp(room->edges[k].id, id) != 0)
				continue;
			if (wall)
				return NULL;
			wall = &room->edges[k];
		}
	}
	return wall;
}

/* Of a joint along a part of a wall, between doorways and carried joints: which part. */
static const char *wall_text(const struct draft *draft, const struct placed_lay *lay,
                             const struct joint *joint)
{
	const struct site_edge *wall = straight_wall(lay, joint->of);
	if (!wall || joint->line.count < 2)
		return "";
	struct point along = point_unit(point_sub(wall->to, wall->from));
	double ends[2];
	for (int i = 0; i < 2; i++) {
		struct point p = joint->line.points[i ? joint->line.count - 1 : 0];
		p = point_sub(frame_out(lay->field->frame, p), wall->from);
		ends[i] = p.x * along.x + p.y * along.y;
	}
	double from = fmin(ends[0], ends[1]), to = fmax(ends[0], ends[1]);
	if (to - from > point_distance(wall->from, wall->to) - WHOLE_WALL)
		return draft_word(draft, "joints.whole-wall");
	return draft_text(draft, "joints.along-wall", {"from", draft_length(draft, from)},
	                  {"to", draft_length(draft, to)});
}

/* Of a straight joint that no course tells the place of: how far it runs from the control line
 * beside it. */
static const char *offset_text(const struct draft *draft, const struct lay_view *v,
                               const struct joint *joint, struct line seen)
{
	struct segment run = joint_tag_stretch(seen);
	bool along_u = fabs(run.to.x - run.from.x) > fabs(run.to.y - run.from.y);
	const struct control *control = lay_view_control(v, along_u);
	if (!control || joint->turns > FEW_TURNS)
		return "";
	double from = along_u ? run.from.y - control->from.y : run.from.x - control->from.x,
	       to = along_u ? run.to.y - control->from.y : run.to.x - control->from.x;
	if (fabs(to - from) >= SAME_OFFSET)
		return "";
	return draft_text(draft, "joints.from-line",
	                  {"distance", draft_length(draft, fabs(from + to) / 2)},
	                  {"line", line_name(draft, control)});
}

static const char *place_text(const struct draft *draft, const struct lay_view *v,
                              const struct joint *joint)
{
	struct line seen = lay_view_named(draft->arena, v, joint->line);
	if (seen.count < 2)
		return "";
	if (joint->kind == JOINT_CARRIED)
		return offset_text(draft, v, joint, seen);
	struct place place = place_of(v, joint, seen);
	if (!place.control)
		return joint->on_joint ? draft_word(draft, "joints.along")
		                       : offset_text(draft, v, joint, seen);
	if (place.courses == 0)
		return draft_text(draft, "joints.on-line",
		                  {"line", line_name(draft, place.control)});
	return draft_text(draft, "joints.between", {"count", number(draft, place.courses)},
	                  {"next", number(draft, place.courses + 1)},
	                  {"line", line_name(draft, place.control)});
}

const char *joint_tag_where(const struct draft *draft, const struct placed_lay *lay,
                            const struct joint *joint)
{
	const char *text = "";
	if (joint->kind == JOINT_PERIMETER)
		return wall_text(draft, lay, joint);
	for (size_t i = 0; i < lay->field->room_count && !*text; i++) {
		struct view plain = {.scale = 1};
		struct lay_view v = lay_view_make(draft->arena, lay, &plain, lay->field->rooms[i]);
		text = place_text(draft, &v, joint);
	}
	return text;
}

const char *joint_tag_why(const struct draft *draft, const struct joint *joint)
{
	/* Rules that have no word here are told by their name. */
	static const char *const KEYS[][2] = {
		{"crack-plain", "why.crack-plain"},
		{"crack-fill", "why.crack-fill"},
		{"crack-wide", "why.crack-wide"},
		{"crack-suspended", "why.crack-suspended"},
		{"crack-tensioned", "why.crack-tensioned"},
		{"crack-step", "why.crack-step"},
		{"crack-moving", "why.crack-moving"},
		{"crack-movement", "why.crack-movement"},
		{"crack-beside-joint", "why.crack-beside-joint"},
		{"joint-relocated", "why.joint-relocated"},
		{"joint-carried", "why.joint-carried"},
		{"field-joint", "why.field-joint"},
		{"doorway-joint", "why.doorway-joint"},
		{"perimeter-joint", "why.perimeter-joint"},
	};
	for (size_t i = 0; i < sizeof KEYS / sizeof *KEYS; i++)
		if (strcmp(KEYS[i][0], joint->why) == 0)
			return draft_word(draft, KEYS[i][1]);
	return joint->why;
}

const char *joint_tag_kind(const struct draft *draft, const struct joint *joint)
{
	static const char *const keys[] = {[JOINT_SOFT] = "joint.soft",
	                                   [JOINT_MOVEMENT] = "joint.field",
	                                   [JOINT_CARRIED] = "joint.carried",
	                                   [JOINT_PERIMETER] = "joint.perimeter"};
	return draft_word(draft, keys[joint->kind]);
}

const char *joint_tag_back(const struct draft *draft, const struct joint *joint)
{
	static const char *const keys[] = {[JOINT_BACK_NONE] = "back.none",
	                                   [JOINT_BACK_ROD] = "back.rod",
	                                   [JOINT_BACK_TAPE] = "back.tape"};
	return draft_word(draft, joint->is_open ? "back.open" : keys[joint->back]);
}
