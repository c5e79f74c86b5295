#include "sheets/parts.h"

#include "sheets/lay_view.h"

/* Paper mm, own design: what a part shows past its match line; how far a match line keeps
 * from what lies along it; and between the places that are tried for it. */
static const double OVERLAP = 12, CLEAR = 8, TRY_STEP = 2;
/* A match line is moved by no more than this share of a part. */
static const double MOVED_MOST = 0.25;
/* Floor mm2: a part with less ground has no sheet. */
static const double GROUND_LEAST = 100;

/* One axis of the floor: x, or y. */
struct axis {
	const struct draft *draft;
	bool is_x;
	double from, to;
	double scale;
	double room;  /* floor mm that a sheet shows along it */
	double *cuts; /* count + 1 of them, from `from` to `to` */
	int count;
};

static double along(const struct axis *axis, struct point p)
{
	return axis->is_x ? p.x : p.y;
}

static double across(const struct axis *axis, struct point p)
{
	return axis->is_x ? p.y : p.x;
}

/* ---- where a match line hides least ---- */

/* Paper mm of a stretch that a match line at `at` would lie on or beside. */
static double hidden(const struct axis *axis, double at, struct point a, struct point b)
{
	double clear = CLEAR * axis->scale;
	double low = fmin(along(axis, a), along(axis, b)),
	       high = fmax(along(axis, a), along(axis, b));
	double length = fabs(across(axis, b) - across(axis, a));
	/* What crosses it is cut once, wherever it lies. */
	if (length < high - low || at < low - clear || at > high + clear)
		return 0;
	return length / axis->scale;
}

static double hidden_line(const struct axis *axis, double at, struct line line)
{
	double sum = 0;
	for (size_t i = 0; i + 1 < line.count; i++)
		sum += hidden(axis, at, line.points[i], line.points[i + 1]);
	return sum;
}

/* A box is better whole than cut. */
static double hidden_box(const struct axis *axis, double at, struct box box)
{
	struct point a = {box.x0, box.y0}, b = {box.x1, box.y1};
	double clear = CLEAR * axis->scale;
	bool is_met = at > along(axis, a) - clear && at < along(axis, b) + clear;
	return is_met ? CLEAR + fabs(across(axis, b) - across(axis, a)) / axis->scale : 0;
}

static double hidden_room(const struct axis *axis, double at, const struct site_room *room)
{
	double sum = 0;
	for (size_t i = 0; i < room->edge_count; i++)
		sum += hidden(axis, at, room->edges[i].from, room->edges[i].to);
	for (size_t i = 0; i < room->obstacle_count; i++)
		sum += hidden_box(axis, at, ring_box(room->obstacles[i].ring));
	for (size_t i = 0; i < room->doorway_count; i++) {
		struct box box = box_with(box_with(box_empty(), room->doorways[i].from),
		                          room->doorways[i].to);
		sum += hidden_box(axis, at, box);
	}
	return sum;
}

static double hidden_controls(const struct axis *axis, double at, const struct placed_lay *lay)
{
	double sum = 0;
	for (size_t i = 0; i < lay->controls->control_count; i++) {
		const struct control *control = &lay->controls->controls[i];
		sum += hidden(axis, at, frame_out(lay->field->frame, control->from),
		              frame_out(lay->field->frame, control->to));
	}
	return sum;
}

static long long hidden_all(const struct axis *axis, double at)
{
	const struct site *site = axis->draft->site;
	double sum = 0;
	for (size_t i = 0; i < site->room_count; i++)
		sum += hidden_room(axis, at, &site->rooms[i]);
	for (size_t i = 0; i < site->slab_joint_count; i++)
		sum += hidden_line(axis, at, site->slab_joints[i].line);
	for (size_t i = 0; i < site->crack_count; i++)
		sum += hidden_line(axis, at, site->cracks[i].line);
	for (size_t i = 0; i < axis->draft->placed->lay_count; i++)
		sum += hidden_controls(axis, at, &axis->draft->placed->lays[i]);
	return llround(sum * 10);
}

/* The place within `slack` of `middle` that hides least; of equal ones the nearest. */
static double place_cut(const struct axis *axis, double middle, double slack)
{
	double step = TRY_STEP * axis->scale, best = middle;
	long long least = hidden_all(axis, middle);
	for (int i = 1; i * step <= slack; i++)
		for (int sign = -1; sign <= 1; sign += 2) {
			double at = middle + sign * i * step;
			long long cost = hidden_all(axis, at);
			if (cost >= least)
				continue;
			least = cost;
			best = at;
		}
	return best;
}

/* ---- the grid ---- */

/* The least count of equal stretches that fit, with their overlaps. */
static int least_count(const struct axis *axis, size_t most)
{
	double length = axis->to - axis->from, overlap = OVERLAP * axis->scale;
	if (length <= axis->room)
		return 1;
	for (int count = 2; (size_t)count <= most; count++)
		if (length / count + (count > 2 ? 2 : 1) * overlap <= axis->room)
			return count;
	return 0;
}

static void cut_axis(struct arena *arena, struct axis *axis)
{
	int n = axis->count;
	double each = (axis->to - axis->from) / n;
	double slack = axis->room - each - (n > 2 ? 2 : 1) * OVERLAP * axis->scale;
	slack = fmin(slack / 2, MOVED_MOST * each);
	axis->cuts = ARENA_ARRAY(arena, double, (size_t)n + 1);
	axis->cuts[0] = axis->from;
	axis->cuts[n] = axis->to;
	for (int i = 1; i < n; i++)
		axis->cuts[i] = place_cut(axis, axis->from + i * each, slack);
}

static bool has_ground(const struct draft *draft, struct box core)
{
	struct view view = {.scale = 1, .window = &core};
	double area = 0;
	for (size_t i = 0; i < draft->site->room_count; i++) {
		struct region ground = view_ground(draft->arena, &view, &draft->site->rooms[i]);
		area += region_area(&ground);
	}
	return area > GROUND_LEAST;
}

static struct part part_at(const struct axis *x, const struct axis *y, int column, int row)
{
	int up = y->count - 1 - row;
	double over = OVERLAP * x->scale;
	struct part part = {.core = {x->cuts[column], y->cuts[up], x->cuts[column + 1],
	                             y->cuts[up + 1]},
	                    .column = column,
	                    .row = row};
	part.window =
		(struct box){fmax(x->from, part.core.x0 - over), fmax(y->from, part.core.y0 - over),
	                     fmin(x->to, part.core.x1 + over), fmin(y->to, part.core.y1 + over)};
	return part;
}

static void list_parts(const struct draft *draft, struct parts *parts, const struct axis *x,
                       const struct axis *y, const char *name)
{
	size_t cells = (size_t)x->count * (size_t)y->count;
	parts->list = ARENA_ARRAY(draft->arena, struct part, cells);
	for (size_t i = 0; i < cells; i++) {
		struct part part = part_at(x, y, (int)i % x->count, (int)i / x->count);
		if (!has_ground(draft, part.core))
			continue;
		size_t number = parts->count + 1;
		part.name = number == 1 ? name : arena_printf(draft->arena, "%s-%zu", name, number);
		parts->list[parts->count++] = part;
	}
}

struct parts parts_divide(const struct draft *draft, const struct margin *margin,
                          struct paper_box drawing, double scale, const char *name, size_t most)
{
	const double *need = margin->need;
	struct box w = margin->window;
	double wide = drawing.x1 - drawing.x0 - need[SIDE_LEFT] - need[SIDE_RIGHT];
	double high = drawing.y1 - drawing.y0 - need[SIDE_TOP] - need[SIDE_BOTTOM];
	struct axis x = {draft, true, w.x0, w.x1, scale, wide * scale, NULL, 0};
	struct axis y = {draft, false, w.y0, w.y1, scale, high * scale, NULL, 0};
	struct parts parts = {.scale = scale, .whole = *margin, .drawing = drawing};
	x.count = least_count(&x, most);
	y.count = least_count(&y, most);
	if (x.count == 0 || y.count == 0 || (size_t)x.count * (size_t)y.count > most)
		return parts;
	cut_axis(draft->arena, &x);
	cut_axis(draft->arena, &y);
	parts.columns = x.count;
	parts.rows = y.count;
	list_parts(draft, &parts, &x, &y, name);
	return parts;
}

struct view parts_view(const struct parts *parts, size_t part)
{
	const double *need = parts->whole.need;
	struct paper_box d = parts->drawing;
	struct paper_box box = {d.x0 + need[SIDE_LEFT], d.y0 + need[SIDE_TOP],
	                        d.x1 - need[SIDE_RIGHT], d.y1 - need[SIDE_BOTTOM]};
	struct view view = view_make(parts->list[part].window, 90, parts->scale, box);
	view.window = &parts->list[part].window;
	view.core = &parts->list[part].core;
	return view;
}

const struct part *parts_next_to(const struct parts *parts, const struct part *part, enum side side)
{
	static const int COLUMN[] = {
		[SIDE_LEFT] = -1, [SIDE_RIGHT] = 1, [SIDE_TOP] = 0, [SIDE_BOTTOM] = 0};
	static const int ROW[] = {
		[SIDE_LEFT] = 0, [SIDE_RIGHT] = 0, [SIDE_TOP] = -1, [SIDE_BOTTOM] = 1};
	for (size_t i = 0; i < parts->count; i++)
		if (parts->list[i].column == part->column + COLUMN[side] &&
		    parts->list[i].row == part->row + ROW[side])
			return &parts->list[i];
	return NULL;
}

struct view parts_extent(const struct sheet *sheet)
{
	struct view view = {.frame = frame_from_deg(0), .scale = 1};
	if (!sheet->parts)
		return view;
	view.window = &sheet->parts->list[sheet->part].window;
	view.core = &sheet->parts->list[sheet->part].core;
	return view;
}

bool parts_is_outer(const struct sheet *sheet, enum side side)
{
	const struct parts *parts = sheet->parts;
	if (!parts)
		return true;
	const struct part *part = &parts->list[sheet->part];
	const bool outer[] = {[SIDE_LEFT] = part->column == 0,
	                      [SIDE_RIGHT] = part->column == parts->columns - 1,
	                      [SIDE_TOP] = part->row == 0,
	                      [SIDE_BOTTOM] = part->row == parts->rows - 1};
	return outer[side];
}
