/* points.c - the points a layout crew stakes, as CSV in metres. */
#include "count/totals.h"
#include "geometry/tolerance.h"
#include "record/record.h"
#include "units/number.h"

enum { METRE_DECIMALS = 4 };

struct staking {
	struct arena *arena;
	struct strbuf out;
	const struct placed_lay *lay;
};

/* One row; `at` in the lay's own axes. Names are ids, which hold no comma and no quote. */
static void add_point(struct staking *s, const char *name, struct point at, const char *what)
{
	struct point p = frame_out(s->lay->field->frame, at);
	strbuf_printf(&s->out, "%s,", name);
	number_add(&s->out, p.x / 1000, METRE_DECIMALS);
	strbuf_add_char(&s->out, ',');
	number_add(&s->out, p.y / 1000, METRE_DECIMALS);
	strbuf_printf(&s->out, ",%s\r\n", what);
}

static const char *numbered(struct staking *s, const char *id, size_t number)
{
	return arena_printf(s->arena, "%s.%zu", id, number);
}

static bool is_turn(struct point before, struct point at, struct point after)
{
	struct point in = point_unit(point_sub(at, before));
	struct point out = point_unit(point_sub(after, at));
	return fabs(point_cross(in, out)) > TOLERANCE_PARALLEL || point_dot(in, out) < 0;
}

static void add_joint(struct staking *s, const struct joint *joint)
{
	const struct line *line = &joint->line;
	const char *kind = joint_kind_word(joint->kind);
	size_t number = 0;
	for (size_t i = 0; i < line->count; i++) {
		bool is_end = !joint->is_closed && (i == 0 || i + 1 == line->count);
		size_t before = (i + line->count - 1) % line->count, after = (i + 1) % line->count;
		if (!is_end && !is_turn(line->points[before], line->points[i], line->points[after]))
			continue;
		add_point(s, numbered(s, joint->id, ++number), line->points[i],
		          arena_printf(s->arena, "%s joint %s", kind, is_end ? "end" : "turn"));
	}
}

/* Corners of all its rings, those on a straight edge left out. */
static void add_strip(struct staking *s, const struct strip *strip)
{
	size_t number = 0;
	for (size_t p = 0; p < strip->region.count; p++) {
		const struct polygon *polygon = &strip->region.polygons[p];
		for (size_t h = 0; h <= polygon->hole_count; h++) {
			struct ring ring = h == 0 ? polygon->outline : polygon->holes[h - 1];
			for (size_t i = 0, n = ring.count; i < n; i++)
				if (is_turn(ring.points[(i + n - 1) % n], ring.points[i],
				            ring.points[(i + 1) % n]))
					add_point(s,
					          arena_printf(s->arena, "%s.corner.%zu", strip->id,
					                       ++number),
					          ring.points[i], "strip corner");
		}
	}
}

static void add_controls(struct staking *s, const struct controls *controls)
{
	for (size_t i = 0; i < controls->control_count; i++) {
		const struct control *control = &controls->controls[i];
		add_point(s, numbered(s, control->id, 1), control->from, "control line");
		add_point(s, numbered(s, control->id, 2), control->to, "control line");
	}
	for (size_t i = 0; i < controls->first_count; i++)
		add_point(s, arena_printf(s->arena, "%s.first", controls->firsts[i].room->id),
		          controls->firsts[i].at, "first tile");
}

struct bytes record_points(struct arena *arena, const struct placed *placed)
{
	struct staking s = {.arena = arena, .out = strbuf_in(arena)};
	strbuf_add(&s.out, "name,x,y,what\r\n");
	for (size_t i = 0; i < placed->lay_count; i++) {
		s.lay = &placed->lays[i];
		add_controls(&s, s.lay->controls);
		/* What the walls give needs no stake. */
		for (size_t j = 0; j < s.lay->joints->joint_count; j++)
			if (s.lay->joints->joints[j].kind != JOINT_PERIMETER)
				add_joint(&s, &s.lay->joints->joints[j]);
		for (size_t j = 0; j < s.lay->strips->strip_count; j++)
			add_strip(&s, &s.lay->strips->strips[j]);
	}
	return strbuf_bytes(&s.out);
}
