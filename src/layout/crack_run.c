#include "layout/crack_run.h"

#include "geometry/clip.h"
#include "geometry/overlay.h"

static struct region ground_of(struct arena *arena, const struct field *field,
                               const struct site_crack *crack)
{
	if (!crack->room)
		return field->ground;
	for (size_t i = 0; i < field->room_count; i++)
		if (field->rooms[i] == crack->room)
			return overlay_intersection(arena, &field->room_grounds[i], &field->ground);
	return (struct region){NULL, 0};
}

struct line *crack_runs(struct arena *arena, const struct field *field,
                        const struct site_crack *crack, size_t *out_count)
{
	struct region ground = ground_of(arena, field, crack);
	struct line line = frame_line_in(arena, field->frame, crack->line);
	return clip_line(arena, line, &ground, out_count);
}
