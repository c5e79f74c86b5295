#include "layout/joints.h"

#include <string.h>

#include "geometry/clip.h"
#include "geometry/line.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"
#include "layout/perimeter.h"
#include "units/length.h"

struct making {
	struct arena *arena;
	const struct tiling *tiling;
	const struct cracks *cracks;
	const struct rules *rules;
	ARRAY_OF(struct joint) joints;
};

static double thinnest_tile(const struct plan_lay *lay)
{
	double least = INFINITY;
	for (size_t t = 0; t < lay->tile_count; t++)
		least = fmin(least, length_mm(lay->tiles[t]->thick_nm));
	return least;
}

/* Depth of sealant, and what stops it: a rod where there is room under it, else tape. */
static void fill_joint(const struct making *making, struct joint *joint)
{
	const struct rules *rules = making->rules;
	double share = rules_figure(rules, FIGURE_SEALANT_DEPTH_SHARE);
	double least = rules_figure(rules, FIGURE_SEALANT_DEPTH_LEAST);
	double most = rules_figure(rules, FIGURE_SEALANT_DEPTH_MOST);
	double room =
		thinnest_tile(making->tiling->field->lay) + rules_figure(rules, FIGURE_BOND_COAT);
	double rod = joint->width + rules_figure(rules, FIGURE_ROD_OVERSIZE);
	joint->depth = fmin(fmax(joint->width * share, least), most);
	joint->back =
		joint->depth + rod <= room + TOLERANCE_SAME ? JOINT_BACK_ROD : JOINT_BACK_TAPE;
}

static void add_joint(struct making *making, struct joint joint)
{
	joint.serves = "";
	*array_push(making->arena, &making->joints) = joint;
}

/* Why a group's cracks want a soft joint: what the table says of its first. */
static const char *why_soft(const struct making *making, size_t group)
{
	const struct crack_group *cracks = &making->cracks->groups[group];
	return making->cracks->cracks[cracks->cracks[0]].verdict.causes[0].rule->name;
}

/* The soft joint round cracks without an end names its first point once more. */
static bool comes_back(struct line line)
{
	return line.count > 3 &&
	       point_distance(line.points[0], line.points[line.count - 1]) < TOLERANCE_SAME;
}

static void add_soft(struct making *making, const struct soft_joint *soft)
{
	if (soft->uses)
		return;
	bool is_closed = comes_back(soft->line);
	struct joint joint = {
		.id = soft->id,
		.kind = JOINT_SOFT,
		.of = soft->crack,
		.side = soft->side,
		.on_joint = true,
		.width = making->tiling->module->joint,
		.length = soft->length,
		.turns = soft->turns,
		.cost = soft->cost,
		.ends = soft->ends,
		.why = why_soft(making, soft->group),
		.line = {soft->line.points, soft->line.count - is_closed},
		.is_closed = is_closed,
	};
	fill_joint(making, &joint);
	add_joint(making, joint);
}

/* True where no tile beside the border would reach across it if it were whole. */
static bool is_on_tile_joint(const struct making *making, const struct field_border *border)
{
	struct line line = {(struct point[]){border->from, border->to}, 2};
	struct point along = point_unit(point_sub(border->to, border->from));
	size_t count;
	const struct tile_ref *tiles =
		tiling_near(making->arena, making->tiling, line, TOLERANCE_WHOLE, &count);
	for (size_t t = 0; t < count; t++) {
		const struct panel *panel = &making->tiling->panels[tiles[t].panel];
		if (panel->part != border->part)
			continue;
		struct ring face = module_face_at(making->arena, making->tiling->module,
		                                  tiles[t].at, panel->position);
		for (size_t k = 0; k < face.count; k++)
			if (point_cross(along, point_sub(face.points[k], border->from)) <
			    -TOLERANCE_WHOLE)
				return false;
	}
	return true;
}

static bool lies_beside(const struct field_border *border, const struct field_carried *carried)
{
	struct point middle = point_between(border->from, border->to, 0.5);
	return border->is_carried && border->of == carried->of &&
	       segment_distance((struct segment){carried->from, carried->to}, middle) <=
	               carried->width / 2 + TOLERANCE_WHOLE;
}

static bool carried_on_joint(const struct making *making, const struct field_carried *carried)
{
	const struct field *field = making->tiling->field;
	bool on_joint = true;
	for (size_t b = 0; b < field->border_count; b++)
		if (lies_beside(&field->borders[b], carried))
			on_joint = on_joint && is_on_tile_joint(making, &field->borders[b]);
	return on_joint;
}

/* The wall, obstacle or other joint nearest to an end of a carried joint. */
static const char *met_at(const struct making *making, const struct field_carried *carried,
                          struct point end)
{
	const struct field *field = making->tiling->field;
	const char *met = carried->of;
	double least = INFINITY;
	for (size_t b = 0; b < field->border_count; b++) {
		const struct field_border *border = &field->borders[b];
		double distance = segment_distance((struct segment){border->from, border->to}, end);
		if (lies_beside(border, carried) || distance >= least - TOLERANCE_SAME)
			continue;
		least = distance;
		met = border->of;
	}
	return met;
}

static void add_carried(struct making *making, const struct field_carried *carried)
{
	struct line whole = {(struct point[]){carried->from, carried->to}, 2};
	size_t count;
	const struct line *parts =
		clip_line(making->arena, whole, &making->tiling->field->ground, &count);
	for (size_t k = 0; k < count; k++) {
		struct point from = parts[k].points[0], to = parts[k].points[parts[k].count - 1];
		struct joint joint = {
			.id = k == 0 ? carried->id
		                     : arena_printf(making->arena, "%s.part.%zu", carried->id,
		                                    k + 1),
			.kind = carried->joint ? JOINT_CARRIED : JOINT_MOVEMENT,
			.of = carried->of,
			.side = "",
			.on_joint = carried_on_joint(making, carried),
			.width = carried->width,
			.length = line_length(parts[k]),
			.ends = arena_printf(making->arena, "%s %s", met_at(making, carried, from),
		                             met_at(making, carried, to)),
			.why = carried->joint ? rules_rule(making->rules, RULE_JOINT_CARRIED)->name
		                              : "doorway-joint",
			.line = parts[k],
		};
		joint.cost = joint.length;
		fill_joint(making, &joint);
		add_joint(making, joint);
	}
}

/* A hold, else the border of the field that is nearest to the end of a field joint. */
static const char *field_joint_met(const struct making *making, const struct field_joint *joint,
                                   struct point end)
{
	const struct field *field = making->tiling->field;
	for (size_t h = 0; h < making->cracks->hold_count; h++)
		if (region_distance(&making->cracks->holds[h].region, end) <
		    joint->of->width + TOLERANCE_WHOLE)
			return making->cracks->holds[h].id;
	size_t border = perimeter_nearest(field, end);
	return border < field->border_count ? field->borders[border].of : field->lay->id;
}

static void add_field_joint(struct making *making, const struct field_joint *built)
{
	struct line line = built->line;
	struct joint joint = {
		.id = built->id,
		.kind = JOINT_MOVEMENT,
		.of = making->tiling->field->lay->id,
		.side = "",
		.on_joint = built->of->on_joint,
		.width = built->of->width,
		.length = line_length(line),
		.ends = arena_printf(making->arena, "%s %s",
	                             field_joint_met(making, built, line.points[0]),
	                             field_joint_met(making, built, line.points[line.count - 1])),
		.why = "field-joint",
		.line = line,
	};
	joint.cost = joint.length;
	fill_joint(making, &joint);
	add_joint(making, joint);
}

static bool is_one_of(const char *id, const char *ids)
{
	size_t length = strlen(id);
	for (; *ids; ids += strcspn(ids, " "), ids += strspn(ids, " "))
		if (strcspn(ids, " ") == length && strncmp(ids, id, length) == 0)
			return true;
	return false;
}

/* A side that uses other joints is said by each of them. */
static void add_uses(struct making *making, const struct soft_joint *soft)
{
	for (size_t k = 0; soft->uses && k < making->joints.count; k++) {
		struct joint *joint = &making->joints.items[k];
		if (is_one_of(joint->id, soft->uses) && !is_one_of(soft->id, joint->serves))
			joint->serves =
				arena_printf(making->arena, *joint->serves ? "%s %s" : "%s%s",
			                     joint->serves, soft->id);
	}
}

static struct line line_of_run(const struct making *making, const struct perimeter_run *run)
{
	const struct field_border *borders = making->tiling->field->borders;
	struct line line = {ARENA_ARRAY(making->arena, struct point, run->border_count + 1), 0};
	for (size_t k = 0; k < run->border_count; k++)
		line.points[line.count++] = borders[run->borders[k]].from;
	if (!run->is_closed)
		line.points[line.count++] = borders[run->borders[run->border_count - 1]].to;
	return line;
}

/* A base covers all of the gap; in a doorway none stands on the stop line. */
static bool is_covered(const struct making *making, const struct perimeter_run *run)
{
	for (size_t k = 0; k < run->border_count; k++) {
		const struct field_border *border =
			&making->tiling->field->borders[run->borders[k]];
		if (border->base != SITE_BASE_COVERS || border->kind == SITE_EDGE_GLASS ||
		    border->kind == SITE_EDGE_OTHER_FLOOR)
			return false;
	}
	return true;
}

static void add_perimeter(struct making *making, const struct perimeter_run *run)
{
	const struct field_border *first = &making->tiling->field->borders[run->borders[0]];
	struct joint joint = {
		.id = run->id,
		.kind = JOINT_PERIMETER,
		.of = run->of,
		.side = "",
		.is_open = is_covered(making, run),
		.width = first->gap,
		.ends = "",
		.why = "perimeter-joint",
		.line = line_of_run(making, run),
		.is_closed = run->is_closed,
	};
	joint.length = joint.is_closed
	                       ? ring_length((struct ring){joint.line.points, joint.line.count})
	                       : line_length(joint.line);
	joint.cost = joint.length;
	if (!joint.is_open)
		fill_joint(making, &joint);
	add_joint(making, joint);
}

const struct joints *joints_place(struct arena *arena, const struct tiling *tiling,
                                  const struct cracks *cracks, const struct strips *strips,
                                  const struct rules *rules)
{
	struct making making = {.arena = arena, .tiling = tiling, .cracks = cracks, .rules = rules};
	for (size_t k = 0; k < strips->soft_count; k++)
		add_soft(&making, &strips->softs[k]);
	for (size_t k = 0; k < tiling->field->carried_count; k++)
		add_carried(&making, &tiling->field->carried[k]);
	size_t count;
	const struct field_joint *lines = field_joints(arena, tiling, cracks, &count);
	for (size_t k = 0; k < count; k++)
		add_field_joint(&making, &lines[k]);
	const struct perimeter_run *runs = perimeter_runs(arena, tiling->field, &count);
	for (size_t k = 0; k < count; k++)
		add_perimeter(&making, &runs[k]);
	for (size_t k = 0; k < strips->soft_count; k++)
		add_uses(&making, &strips->softs[k]);
	struct joints *joints = ARENA_NEW(arena, struct joints);
	*joints = (struct joints){making.joints.items, making.joints.count};
	return joints;
}
