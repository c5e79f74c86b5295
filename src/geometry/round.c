#include "geometry/round.h"

#include "geometry/frame.h"
#include "geometry/tolerance.h"

/* Corners of a quarter circle, the end left out: the fewest that keep the sagitta. */
static size_t quarter_count(double radius)
{
	size_t count = 1;
	while (radius * (1 - frame_from_deg(45.0 / (double)count).cos) > TOLERANCE_SAGITTA)
		count++;
	return count;
}

/* Corner `i` of `count` in the first quarter of the unit circle; the second half of the
 * quarter mirrors the first, and the middle lies on the diagonal to the last bit. */
static struct point quarter_corner(size_t i, size_t count)
{
	if (2 * i == count)
		return (struct point){sqrt(0.5), sqrt(0.5)};
	bool mirrored = 2 * i > count;
	size_t step = mirrored ? count - i : i;
	struct frame turn = frame_from_deg(90.0 * (double)step / (double)count);
	return mirrored ? (struct point){turn.sin, turn.cos} : (struct point){turn.cos, turn.sin};
}

struct ring round_ring(struct arena *arena, struct point centre, double radius)
{
	size_t quarter = quarter_count(radius);
	struct ring ring = {ARENA_ARRAY(arena, struct point, 4 * quarter), 4 * quarter};
	for (size_t i = 0; i < quarter; i++) {
		struct point spoke = point_scale(quarter_corner(i, quarter), radius);
		for (size_t turns = 0; turns < 4; turns++) {
			ring.points[turns * quarter + i] = point_add(centre, spoke);
			spoke = point_left(spoke);
		}
	}
	return ring;
}
