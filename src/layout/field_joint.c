#include "layout/field_joint.h"

#include "base/array.h"
#include "geometry/clip.h"
#include "geometry/line.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct listing {
	struct arena *arena;
	struct region held;
	ARRAY_OF(struct field_joint) joints;
};

/* Parts of a straight run outside of the holds. A line on tile joints runs between two panels
 * and their holds: the holds are grown by half its width, so that they meet across it. */
static struct line *built_of(struct listing *listing, const struct movement_line *line,
                             struct line run, size_t *out_count)
{
	struct arena *arena = listing->arena;
	struct region held = overlay_offset(arena, &listing->held, line->width / 2, OVERLAY_MITRE);
	struct region band = overlay_band(arena, run, TOLERANCE_WHOLE);
	struct region open = overlay_difference(arena, &band, &held);
	return clip_line(arena, run, &open, out_count);
}

static void add_line(struct listing *listing, const struct movement_line *line)
{
	size_t parts = 0;
	for (size_t r = 0; r < line->run_count; r++) {
		size_t count = 1;
		const struct line *built = &line->runs[r];
		if (listing->held.count > 0)
			built = built_of(listing, line, line->runs[r], &count);
		for (size_t k = 0; k < count; k++) {
			/* Between a wall and a column: nothing to fill. */
			if (line_length(built[k]) <= line->width)
				continue;
			const char *id = line->id;
			if (parts++ > 0)
				id = arena_printf(listing->arena, "%s.part.%zu", id, parts);
			*array_push(listing->arena, &listing->joints) =
				(struct field_joint){id, line, built[k]};
		}
	}
}

struct field_joint *field_joints(struct arena *arena, const struct tiling *tiling,
                                 const struct cracks *cracks, size_t *out_count)
{
	struct listing listing = {.arena = arena, .held = cracks_held_ground(arena, cracks)};
	for (size_t k = 0; k < tiling->movement->line_count; k++)
		add_line(&listing, &tiling->movement->lines[k]);
	*out_count = listing.joints.count;
	return listing.joints.items;
}

const char *field_joint_at(const struct field_joint *joints, size_t count, struct point p)
{
	for (size_t k = 0; k < count; k++) {
		struct line line = joints[k].line;
		struct segment whole = {line.points[0], line.points[line.count - 1]};
		if (segment_distance(whole, p) <= joints[k].of->width / 2 + TOLERANCE_WHOLE)
			return joints[k].id;
	}
	return NULL;
}
