#include "layout/movement.h"

#include <stdlib.h>

#include "base/array.h"
#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "layout/chords.h"
#include "layout/field_limits.h"
#include "layout/movement_choice.h"

struct making {
	struct arena *arena;
	const struct field *field;
	const struct module *module;
	const struct position *position;
	const struct rules *rules;
	struct movement *movement;
	ARRAY_OF(struct movement_line) lines;
	ARRAY_OF(struct movement_panel) panels;
};

static struct region slice(struct arena *arena, const struct polygon *ground, struct box box)
{
	struct region whole = {(struct polygon *)ground, 1};
	struct point corners[] = {{box.x0, box.y0},
	                          {box.x1, box.y0},
	                          {box.x1, box.y1},
	                          {box.x0, box.y1}};
	struct region window = region_from_ring(arena, (struct ring){corners, 4});
	return overlay_intersection(arena, &whole, &window);
}

/* Half the ground that a line takes: what it moves the tile by, or the cut. */
static double half_taken(const struct movement_line *line)
{
	return line->on_joint ? line->moved / 2 : line->width / 2;
}

static void add_panels_in(struct making *m, size_t part, struct box box, struct point moved)
{
	struct region pieces = slice(m->arena, &m->field->region.polygons[part], box);
	for (size_t i = 0; i < pieces.count; i++)
		*array_push(m->arena, &m->panels) =
			(struct movement_panel){part, pieces.polygons[i],
		                                point_add(m->position->parts[part], moved)};
}

/* How far the tile before the first line is moved. */
static double moved_before(const struct movement_line *lines, size_t count)
{
	double moved = 0;
	for (size_t i = 0; i < count; i++)
		moved += lines[i].is_before ? lines[i].moved : 0;
	return moved;
}

/* Every rectangle between neighbouring lines, row by row. */
static void cut_part(struct making *m, size_t part, const struct movement_line *u_lines,
                     size_t u_count, const struct movement_line *v_lines, size_t v_count)
{
	struct box all =
		box_grown(ring_box(m->field->region.polygons[part].outline), TOLERANCE_WHOLE);
	struct point first = {-moved_before(v_lines, v_count), -moved_before(u_lines, u_count)};
	struct point moved = first;
	for (size_t row = 0; row <= u_count; row++) {
		struct box box = all;
		box.y0 = row ? u_lines[row - 1].centre + half_taken(&u_lines[row - 1]) : all.y0;
		box.y1 = row < u_count ? u_lines[row].centre - half_taken(&u_lines[row]) : all.y1;
		moved.y += row ? u_lines[row - 1].moved : 0;
		moved.x = first.x;
		for (size_t column = 0; column <= v_count; column++) {
			box.x0 = column ? v_lines[column - 1].centre +
			                          half_taken(&v_lines[column - 1])
			                : all.x0;
			box.x1 = column < v_count
			                 ? v_lines[column].centre - half_taken(&v_lines[column])
			                 : all.x1;
			moved.x += column ? v_lines[column - 1].moved : 0;
			add_panels_in(m, part, box, moved);
		}
	}
}

static struct line *runs_of_line(struct making *m, size_t part, const struct movement_line *line,
                                 size_t *out_count)
{
	struct region ground = {&m->field->region.polygons[part], 1};
	struct box box = box_grown(ring_box(ground.polygons[0].outline), TOLERANCE_WHOLE);
	struct point ends[2] = {{line->centre, box.y0}, {line->centre, box.y1}};
	if (line->along_u) {
		ends[0] = (struct point){box.x0, line->centre};
		ends[1] = (struct point){box.x1, line->centre};
	}
	return clip_line(m->arena, (struct line){ends, 2}, &ground, out_count);
}

/* Lines of one direction across one part, appended to the lay's. */
static size_t add_lines(struct making *m, size_t part, bool along_u)
{
	struct movement_places places =
		movement_choose(m->arena, m->field, m->module, m->position, part, along_u,
	                        m->movement->limit, field_joint_width(m->field, m->rules),
	                        rules_figure(m->rules, FIGURE_CUT_SMALL_SHARE) *
	                                m->module->tile_width);
	m->movement->missing_count += places.is_missing;
	for (size_t i = 0; i < places.count; i++) {
		struct movement_line line = {
			.id = arena_printf(m->arena, "%s.m%zu", m->field->rooms[0]->id,
		                           m->lines.count + 1),
			.part = part,
			.along_u = along_u,
			.on_joint = places.on_joint,
			.centre = places.centres[i],
			.width = places.width,
			.moved = places.moved,
			.is_before = i < places.before,
		};
		line.runs = runs_of_line(m, part, &line, &line.run_count);
		*array_push(m->arena, &m->lines) = line;
	}
	return places.count;
}

const struct movement *movement_place(struct arena *arena, const struct field *field,
                                      const struct module *module, const struct position *position,
                                      const struct rules *rules)
{
	struct movement *movement = ARENA_NEW(arena, struct movement);
	struct making m = {.arena = arena,
	                   .field = field,
	                   .module = module,
	                   .position = position,
	                   .rules = rules,
	                   .movement = movement};
	movement->limit = field_run_limit(field, rules);
	for (size_t part = 0; part < field->region.count; part++) {
		size_t first = m.lines.count;
		size_t u_count = add_lines(&m, part, true);
		size_t v_count = add_lines(&m, part, false);
		if (u_count + v_count == 0)
			*array_push(arena, &m.panels) =
				(struct movement_panel){part, field->region.polygons[part],
			                                position->parts[part]};
		else
			cut_part(&m, part, m.lines.items + first, u_count,
			         m.lines.items + first + u_count, v_count);
	}
	movement->lines = m.lines.items;
	movement->line_count = m.lines.count;
	movement->panels = m.panels.items;
	movement->panel_count = m.panels.count;
	return movement;
}

/* The panel of the border's part that lies nearest to its middle. */
static const struct movement_panel *panel_beside(const struct movement *movement,
                                                 const struct field_border *border)
{
	struct point middle = point_between(border->from, border->to, 0.5);
	const struct movement_panel *best = NULL;
	double least = INFINITY;
	for (size_t i = 0; i < movement->panel_count; i++) {
		const struct movement_panel *panel = &movement->panels[i];
		struct region ground = {(struct polygon *)&panel->ground, 1};
		if (panel->part != border->part)
			continue;
		double distance = region_distance(&ground, middle);
		if (distance < least - TOLERANCE_SAME) {
			least = distance;
			best = panel;
		}
	}
	return best;
}

struct point *movement_shifts(struct arena *arena, const struct field *field,
                              const struct position *position, const struct movement *movement)
{
	struct point *shifts = ARENA_ARRAY(arena, struct point, field->border_count);
	for (size_t i = 0; movement->line_count > 0 && i < field->border_count; i++) {
		const struct movement_panel *panel = panel_beside(movement, &field->borders[i]);
		if (panel)
			shifts[i] = point_sub(panel->position, position->parts[panel->part]);
	}
	return shifts;
}
