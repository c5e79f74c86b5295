#include "sheets/hatch_turn.h"

#include <math.h>

/* Lines of a hexagon's joints that are no quarter turn apart. */
static const double HEXAGON_TURNS[] = {0, 30, -30};
static const int TURNS[] = {0, 15, -15, 30, -30, 45}; /* least first */
static const enum area OVER_TILE[] = {AREA_HOLD, AREA_STRIP, AREA_STRIP_PENDING};
enum {
	HEXAGON_COUNT = sizeof HEXAGON_TURNS / sizeof *HEXAGON_TURNS,
	TURN_COUNT = sizeof TURNS / sizeof *TURNS,
	OVER_COUNT = sizeof OVER_TILE / sizeof *OVER_TILE,
};

/* Between two directions and all at quarter turns to them: 0 to 45. */
static double apart(double a, double b)
{
	return fabs(remainder(a - b, 90));
}

/* From the joint lines of all lays. */
static double apart_from_tile(const struct placed *placed, double angle)
{
	double least = 45;
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct field *field = placed->lays[i].field;
		struct point u = {field->frame.cos, field->frame.sin};
		int count = field->lay->pattern == PLAN_PATTERN_HEXAGON ? HEXAGON_COUNT : 1;
		for (int k = 0; k < count; k++)
			least = fmin(least, apart(angle, frame_deg_off_axis(u) + HEXAGON_TURNS[k]));
	}
	return least;
}

/* How well a hatch reads at an angle: first by what it is nearest to, then by the tile. */
static long long rank(const struct placed *placed, double angle)
{
	double tile = apart_from_tile(placed, angle);
	double least = fmin(tile, apart(angle, 0));
	return llround(least * 10) * 1000 + llround(tile * 10);
}

static int turned(const struct placed *placed, int angle)
{
	int best = 0;
	for (int i = 1; i < TURN_COUNT; i++)
		if (rank(placed, angle + TURNS[i]) > rank(placed, angle + TURNS[best]))
			best = i;
	return (angle + TURNS[best] + 180) % 180;
}

const struct style *hatch_turned(struct arena *arena, const struct style *style,
                                 const struct placed *placed)
{
	struct style *copy = ARENA_NEW(arena, struct style);
	*copy = *style;
	for (int i = 0; i < OVER_COUNT; i++) {
		struct area_style *area = &copy->areas[OVER_TILE[i]];
		area->angle_deg = turned(placed, area->angle_deg);
	}
	return copy;
}
