#include "sheets/strip_corners.h"

#include <math.h>
#include <string.h>

/* A strip overlaps its cracked tile by more than this at every corner (floor mm; the rule
 * table's ground beyond soft joints), so a corner that sticks out less needs no mark. */
static const double BLUNT = 50;
/* An edge off the square by more than this share of its length is askew. */
static const double ASKEW = 0.004;
/* Paper mm: a letter stands at its corner, or near it with a leader. */
static const double REACH = 25;

/* Distance of a corner from the line between its neighbours: how much of a corner it is. */
static double sharpness(struct ring ring, size_t i)
{
	struct point before = ring.points[(i + ring.count - 1) % ring.count];
	struct point after = ring.points[(i + 1) % ring.count];
	struct point along = point_unit(point_sub(after, before));
	return fabs(point_cross(along, point_sub(ring.points[i], before)));
}

struct ring strip_outline_blunted(struct arena *arena, struct ring ring)
{
	ring = ring_copy(arena, ring.points, ring.count);
	while (ring.count > 3) {
		size_t least = 0;
		for (size_t i = 1; i < ring.count; i++)
			if (sharpness(ring, i) < sharpness(ring, least))
				least = i;
		if (sharpness(ring, least) >= BLUNT)
			break;
		memmove(&ring.points[least], &ring.points[least + 1],
		        (ring.count - least - 1) * sizeof *ring.points);
		ring.count--;
	}
	return ring;
}

static bool is_edge_askew(struct point a, struct point b)
{
	struct point along = point_unit(point_sub(b, a));
	return fmin(fabs(along.x), fabs(along.y)) > ASKEW;
}

bool strip_is_askew(struct arena *arena, const struct lay_view *v, const struct strip *strip)
{
	if (lay_view_is_turned(v))
		return true;
	for (size_t k = 0; k < strip->region.count; k++) {
		struct ring ring = strip_outline_blunted(arena, strip->region.polygons[k].outline);
		for (size_t i = 0; i < ring.count; i++)
			if (is_edge_askew(ring.points[i], ring.points[(i + 1) % ring.count]))
				return true;
	}
	return false;
}

/* A, B … without I and O; then A2, B2 … */
static const char *letter_of(struct arena *arena, size_t index)
{
	static const char LETTERS[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
	size_t round = index / (sizeof LETTERS - 1);
	char letter = LETTERS[index % (sizeof LETTERS - 1)];
	return round ? arena_printf(arena, "%c%zu", letter, round + 1)
	             : arena_printf(arena, "%c", letter);
}

/* Letters run on through the strips of the floor, whatever of them is seen: `index` is that of
 * the outline's first corner. */
static size_t add_ring(struct arena *arena, struct strip_corners *corners, const struct lay_view *v,
                       const struct strip *strip, struct ring outline, size_t index)
{
	struct ring ring = strip_outline_blunted(arena, outline);
	for (size_t i = 0; v && i < ring.count; i++)
		if (lay_view_has(v, ring.points[i]))
			*array_push(arena, &corners->list) =
				(struct strip_corner){letter_of(arena, index + i), strip->id,
			                              ring.points[i]};
	return ring.count;
}

/* `v`: NULL where nothing of the strip is asked for, but its letters are taken. */
static size_t add_strip(struct arena *arena, struct strip_corners *corners,
                        const struct lay_view *v, const struct strip *strip, size_t index)
{
	size_t count = 0;
	for (size_t k = 0; k < strip->region.count; k++)
		count += add_ring(arena, corners, v, strip, strip->region.polygons[k].outline,
		                  index + count);
	return count;
}

struct strip_corners strip_corners_find(struct arena *arena, const struct placed *placed,
                                        const struct lay_view *v, bool all)
{
	struct strip_corners corners = {0};
	size_t index = 0;
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct strips *strips = placed->lays[i].strips;
		for (size_t s = 0; s < strips->strip_count; s++) {
			const struct strip *strip = &strips->strips[s];
			bool is_asked = v->lay == &placed->lays[i] &&
			                (all || strip_is_askew(arena, v, strip));
			index += add_strip(arena, &corners, is_asked ? v : NULL, strip, index);
		}
	}
	return corners;
}

/* A corner in a doorway is of two rooms. */
static bool is_marked(const struct sheet *sheet, const struct strip_corner *corner)
{
	for (size_t i = 0; i < sheet->list->labels.count; i++) {
		const struct label *label = &sheet->list->labels.items[i];
		if (label->element && strcmp(label->element, corner->strip) == 0 &&
		    strcmp(label->lines[0], corner->letter) == 0)
			return true;
	}
	return false;
}

void strip_corners_mark(struct sheet *sheet, const struct lay_view *v,
                        const struct strip_corners *corners)
{
	for (size_t i = 0; i < corners->list.count; i++) {
		const struct strip_corner *corner = &corners->list.items[i];
		struct paper_point at = lay_view_point(v, corner->at);
		if (is_marked(sheet, corner))
			continue;
		list_label(sheet->list, &(struct label){.lines = &corner->letter,
		                                        .line_count = 1,
		                                        .role = TEXT_TAG,
		                                        .layer = LAYER_LABELS,
		                                        .element = corner->strip,
		                                        .where = LABEL_AROUND,
		                                        .a = at,
		                                        .b = at,
		                                        .priority = 8,
		                                        .can_lead = true,
		                                        .reach = REACH,
		                                        .is_clear = true});
	}
}

void strip_corners_note(struct notes *notes, const struct lay_view *v,
                        const struct strip_corners *corners)
{
	const struct draft *draft = notes->sheet->draft;
	const struct control *one = lay_view_control(v, true), *two = lay_view_control(v, false);
	if (corners->list.count == 0 || !one || !two)
		return;
	notes_heading(notes, NOTE_CORNER, "heading.corners");
	/* Each room has lines of its own. */
	if (draft->site->room_count > 1)
		notes_item(notes, NOTE_CORNER, "", v->room->name);
	for (size_t i = 0; i < corners->list.count; i++) {
		struct point at = corners->list.items[i].at;
		notes_half(notes, NOTE_CORNER, corners->list.items[i].letter,
		           draft_text(draft, "corner.at",
		                      {"one", draft_length(draft, fabs(at.y - one->from.y))},
		                      {"two", draft_length(draft, fabs(at.x - two->from.x))}));
	}
}
