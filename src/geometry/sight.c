#include "geometry/sight.h"

#include <math.h>

#include "geometry/clip.h"
#include "geometry/foot.h"
#include "geometry/tolerance.h"

struct sight sight_none(void)
{
	return (struct sight){false, INFINITY};
}

struct sight sight_of(struct arena *arena, const struct region *ground, struct point p,
                      struct line line)
{
	struct foot foot = foot_on_line(line, p);
	struct segment way = {p, foot.at};
	return (struct sight){foot.distance < TOLERANCE_WHOLE || clip_holds(arena, way, ground),
	                      foot.distance};
}

bool sight_is_better(struct sight a, struct sight than)
{
	if (a.is_clear != than.is_clear)
		return a.is_clear;
	return a.distance < than.distance - TOLERANCE_SAME;
}
