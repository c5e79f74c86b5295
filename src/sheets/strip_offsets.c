#include "sheets/strip_offsets.h"

#include <string.h>

#include "drawing/dimension.h"
#include "sheets/joint_tag.h"

/* The edge that is looked for lies nearer than this many widths of the strip. */
static const double FARTHEST = 1.5;

/* Where a tape laid from `tape.from` first meets the strip's edge; false: nowhere. */
static bool edge_of(const struct strip *strip, struct segment tape, struct point *out_at)
{
	double nearest = 1;
	bool found = false;
	for (size_t i = 0; i < region_ring_count(&strip->region); i++) {
		struct ring ring = region_ring(&strip->region, i);
		for (size_t k = 0; k < ring.count; k++) {
			double share;
			if (!segment_crossing(tape, segment_of_ring(ring, k), &share) ||
			    share >= nearest)
				continue;
			nearest = share;
			found = true;
		}
	}
	*out_at = point_between(tape.from, tape.to, nearest);
	return found;
}

static void draw_offset(struct sheet *sheet, const struct lay_view *v, const struct strip *strip,
                        struct segment tape)
{
	struct point at;
	if (!edge_of(strip, tape, &at) || !lay_view_has(v, at))
		return;
	double distance = point_distance(tape.from, at);
	dimension_pair(sheet->list, v->view, lay_view_plan(v, tape.from), lay_view_plan(v, at), 0,
	               draft_length(sheet->draft, distance), strip->id);
}

static void draw_crack(struct sheet *sheet, const struct lay_view *v, const struct strip *strip,
                       struct line run)
{
	struct line seen = lay_view_named(sheet->draft->arena, v, run);
	if (seen.count < 2)
		return;
	struct segment stretch = joint_tag_stretch(seen);
	struct point along = point_unit(point_sub(stretch.to, stretch.from));
	struct point middle = point_between(stretch.from, stretch.to, 0.5);
	double far = FARTHEST * strip->width;
	for (int side = -1; side <= 1; side += 2) {
		struct point end = {middle.x - side * far * along.y,
		                    middle.y + side * far * along.x};
		draw_offset(sheet, v, strip, (struct segment){middle, end});
	}
}

/* The run with the longest way in the room; a crack may have parts. */
static struct line longest_run(struct arena *arena, const struct lay_view *v,
                               const struct placed_crack *crack)
{
	struct line best = {0};
	double most = 0;
	for (size_t i = 0; i < crack->run_count; i++) {
		struct line seen = lay_view_named(arena, v, crack->runs[i]);
		double length = seen.count < 2 ? 0 : segment_length(joint_tag_stretch(seen));
		if (length > most + 1) {
			most = length;
			best = crack->runs[i];
		}
	}
	return best;
}

void strip_offsets_draw(struct sheet *sheet, const struct lay_view *v, const struct strip *strip)
{
	const struct cracks *cracks = v->lay->cracks;
	for (size_t i = 0; i < strip->crack_count; i++)
		for (size_t k = 0; k < cracks->crack_count; k++)
			if (strcmp(cracks->cracks[k].id, strip->cracks[i]) == 0)
				draw_crack(sheet, v, strip,
				           longest_run(sheet->draft->arena, v, &cracks->cracks[k]));
}
