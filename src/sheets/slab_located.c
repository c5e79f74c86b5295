#include "sheets/slab_located.h"

#include "geometry/clip.h"
#include "sheets/lay_view.h"
#include "sheets/parts.h"

/* A room with more cracks, joints and fixtures than this is listed: own design. */
enum { DRAWN_MOST = 16 };
/* Floor mm: a wall this near to a side of the room's box lies on it. */
static const double ON_SIDE = 1;

struct lister {
	struct notes *notes;
	const struct draft *draft;
	const struct site_room *room;
	struct region named; /* of its ground what this sheet names */
	struct point from;   /* where both distances are 0 */
};

static size_t lines_within(struct arena *arena, struct line line, const struct region *ground)
{
	size_t count;
	clip_line(arena, line, ground, &count);
	return count;
}

/* The longest wall on the left (or lower) side of the room's box; NULL: none. */
static const struct site_edge *wall_on(const struct site_room *room, bool is_left)
{
	struct box box = ring_box(room->outline);
	const struct site_edge *best = NULL;
	double most = 0;
	for (size_t i = 0; i < room->edge_count; i++) {
		const struct site_edge *edge = &room->edges[i];
		double off = is_left ? fmax(edge->from.x, edge->to.x) - box.x0
		                     : fmax(edge->from.y, edge->to.y) - box.y0;
		double length = point_distance(edge->from, edge->to);
		if (off > ON_SIDE || length <= most + ON_SIDE)
			continue;
		most = length;
		best = edge;
	}
	return best;
}

bool slab_located_is_listed(const struct draft *draft, const struct site_room *room)
{
	const struct site *site = draft->site;
	struct region ground = site_room_ground(draft->arena, room);
	size_t count = room->obstacle_count;
	for (size_t i = 0; i < site->crack_count; i++)
		count += lines_within(draft->arena, site->cracks[i].line, &ground);
	for (size_t i = 0; i < site->slab_joint_count; i++)
		count += lines_within(draft->arena, site->slab_joints[i].line, &ground);
	return count > DRAWN_MOST && wall_on(room, true) && wall_on(room, false);
}

static const char *size(const struct lister *l, double mm)
{
	return draft_length(l->draft, mm);
}

static void add_box(struct lister *l, const char *id, struct box box)
{
	struct word_arg args[] = {{"x", size(l, box.x0 - l->from.x)},
	                          {"x2", size(l, box.x1 - l->from.x)},
	                          {"y", size(l, box.y0 - l->from.y)},
	                          {"y2", size(l, box.y1 - l->from.y)}};
	notes_item(l->notes, NOTE_CORNER, draft_tag(l->draft, id),
	           words_format(l->draft->arena, l->draft->words, "located.box", args, 4));
}

/* From its first point to its last; a closed one as wide and deep as it is. */
static void add_line(struct lister *l, const char *id, struct line line)
{
	if (lines_within(l->draft->arena, line, &l->named) == 0)
		return;
	struct point a = line.points[0], b = line.points[line.count - 1];
	if (line.count > 3 && point_distance(a, b) < ON_SIDE) {
		add_box(l, id, ring_box((struct ring){line.points, line.count - 1}));
		return;
	}
	struct word_arg args[] = {{"x", size(l, a.x - l->from.x)},
	                          {"y", size(l, a.y - l->from.y)},
	                          {"x2", size(l, b.x - l->from.x)},
	                          {"y2", size(l, b.y - l->from.y)}};
	notes_item(l->notes, NOTE_CORNER, draft_tag(l->draft, id),
	           words_format(l->draft->arena, l->draft->words, "located.ends", args, 4));
}

static void add_obstacle(struct lister *l, const struct site_obstacle *obstacle)
{
	if (region_holds(&l->named, ring_middle(obstacle->ring)))
		add_box(l, obstacle->id, ring_box(obstacle->ring));
}

static void list_room(struct notes *notes, const struct site_room *room, const struct view *view)
{
	const struct draft *draft = notes->sheet->draft;
	const struct site *site = draft->site;
	struct box box = ring_box(room->outline);
	struct view named = {.scale = 1, .window = view->core};
	struct lister l = {notes,
	                   draft,
	                   room,
	                   region_from_ring(draft->arena, room->outline),
	                   {box.x0, box.y0}};
	if (named.window)
		l.named = view_ground(draft->arena, &named, room);
	notes_title(notes, NOTE_CORNER,
	            draft_text(draft, "located.heading", {"room", draft_tag(draft, room->name)},
	                       {"left", draft_tag(draft, wall_on(room, true)->id)},
	                       {"under", draft_tag(draft, wall_on(room, false)->id)}));
	for (size_t i = 0; i < site->crack_count; i++)
		add_line(&l, site->cracks[i].id, site->cracks[i].line);
	for (size_t i = 0; i < site->slab_joint_count; i++)
		add_line(&l, site->slab_joints[i].id, site->slab_joints[i].line);
	for (size_t i = 0; i < room->obstacle_count; i++)
		add_obstacle(&l, &room->obstacles[i]);
}

void slab_located_list(struct notes *notes)
{
	const struct sheet *sheet = notes->sheet;
	struct view view = parts_extent(sheet);
	for (size_t i = 0; i < sheet->draft->site->room_count; i++)
		if (slab_located_is_listed(sheet->draft, &sheet->draft->site->rooms[i]))
			list_room(notes, &sheet->draft->site->rooms[i], &view);
}
