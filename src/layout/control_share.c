#include "layout/control_share.h"

#include "base/array.h"
#include "geometry/tolerance.h"

struct listing {
	struct arena *arena;
	const struct field *field;
	const struct controls *placed;
	double margin;
	ARRAY_OF(struct control_opening) openings;
};

static double place_of(struct point p, bool along_u)
{
	return along_u ? p.y : p.x;
}

static bool runs_through(struct segment opening, double margin, struct point at, bool along_u)
{
	double a = place_of(opening.from, along_u), b = place_of(opening.to, along_u);
	double place = place_of(at, along_u);
	return place >= fmin(a, b) + margin && place <= fmax(a, b) - margin;
}

static const struct first_tile *first_of(const struct controls *placed,
                                         const struct site_room *room)
{
	for (size_t i = 0; i < placed->first_count; i++)
		if (placed->firsts[i].room == room)
			return &placed->firsts[i];
	return NULL;
}

static void add_opening(struct listing *listing, const struct site_room *beyond, struct point from,
                        struct point to)
{
	struct frame frame = listing->field->frame;
	struct control_opening opening = {.at = {frame_in(frame, from), frame_in(frame, to)},
	                                  .first = first_of(listing->placed, beyond)};
	for (size_t i = 0; i < listing->placed->control_count; i++) {
		const struct control *line = &listing->placed->controls[i];
		if (line->room == beyond &&
		    runs_through(opening.at, listing->margin, line->from, line->along_u))
			opening.lines[line->along_u ? 0 : 1] = line;
	}
	*array_push(listing->arena, &listing->openings) = opening;
}

struct control_openings control_openings_of(struct arena *arena, const struct field *field,
                                            const struct site_room *room,
                                            const struct controls *placed)
{
	struct listing listing = {arena, field, placed, .margin = field->gap + TOLERANCE_WHOLE};
	for (size_t i = 0; i < room->doorway_count; i++) {
		const struct site_doorway *doorway = &room->doorways[i];
		if (doorway->beyond && doorway->end == SITE_EDGE_OPEN)
			add_opening(&listing, doorway->beyond, doorway->from, doorway->to);
	}
	for (size_t i = 0; i < room->edge_count; i++) {
		const struct site_edge *edge = &room->edges[i];
		if (edge->kind == SITE_EDGE_OPEN)
			add_opening(&listing, site_room_find(field->site, edge->wall->to->id),
			            edge->from, edge->to);
	}
	return (struct control_openings){listing.openings.items, listing.openings.count,
	                                 listing.margin};
}

static bool is_on_line(const struct control_opening *opening, struct point at, bool along_u)
{
	const struct control *line = opening->lines[along_u ? 0 : 1];
	return line &&
	       fabs(place_of(at, along_u) - place_of(line->from, along_u)) < TOLERANCE_WHOLE;
}

enum control_sharing control_sharing_of(const struct control_openings *openings, struct point at,
                                        bool along_u)
{
	enum control_sharing best = SHARING_NONE;
	for (size_t i = 0; i < openings->count; i++) {
		const struct control_opening *opening = &openings->items[i];
		if (is_on_line(opening, at, along_u))
			return SHARING_LINE;
		if (!opening->first && runs_through(opening->at, openings->margin, at, along_u))
			best = SHARING_OPENING;
	}
	return best;
}

void control_share_direction(const struct control_openings *openings, struct first_tile *first)
{
	bool is_set[2] = {false, false};
	for (size_t i = 0; i < openings->count; i++) {
		const struct control_opening *opening = &openings->items[i];
		if (opening->lines[0] && !is_set[0])
			first->towards_v = opening->first->towards_v;
		if (opening->lines[1] && !is_set[1])
			first->towards_u = opening->first->towards_u;
		is_set[0] = is_set[0] || opening->lines[0];
		is_set[1] = is_set[1] || opening->lines[1];
	}
}
