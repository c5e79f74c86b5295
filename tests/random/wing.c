#include "random/wing.h"

#include <math.h>
#include <stdio.h>

enum { ROOMS_MOST = 4, DOORS_MOST = 2 };

/* A rectangle nearly, corners from the south-west anticlockwise; its walls are ID.1 (south) to
 * ID.4 (west). */
struct chamber {
	char id[4];
	struct spot corners[4];
	bool opens_east, opens_west; /* an edge shared with its neighbour, without a wall */
};

/* An opening from the west or south (`a`) to the east or north (`b`). */
struct opening {
	struct spot middle;
};

struct wing {
	struct floor_draft *floor;
	struct chamber rooms[ROOMS_MOST + 1]; /* the last may be the corridor */
	size_t row_count, count;
	double wall;
	struct opening openings[ROOMS_MOST * (DOORS_MOST + 1)];
	size_t opening_count;
};

static int below(struct wing *w, int most)
{
	return seed_below(&w->floor->seed, most);
}

static double between(struct wing *w, double low, double high)
{
	return round(seed_between(&w->floor->seed, low, high) * 4) / 4;
}

/* ---- where the rooms lie ---- */

static void place_rooms(struct wing *w)
{
	double x = 0, top = 100 + below(w, 60);
	w->row_count = 2 + (size_t)below(w, ROOMS_MOST - 1);
	w->wall = 4 + below(w, 6);
	for (size_t i = 0; i < w->row_count; i++) {
		struct chamber *room = &w->rooms[i];
		bool is_open = i > 0 && floor_chance(w->floor, 15);
		double wide = 70 + below(w, 90), high = is_open ? top : 90 + below(w, 80);
		double lean = is_open || floor_chance(w->floor, 60) ? 0 : between(w, -0.5, 0.5);
		x += i == 0 ? 0 : is_open ? 0 : w->wall;
		snprintf(room->id, sizeof room->id, "R%zu", i + 1);
		room->corners[0] = (struct spot){x, 0};
		room->corners[1] = (struct spot){x + wide, 0};
		room->corners[2] = (struct spot){x + wide + lean, high};
		room->corners[3] = (struct spot){x, high};
		if (is_open) {
			struct chamber *west = &w->rooms[i - 1];
			west->opens_east = room->opens_west = true;
			west->corners[2] = (struct spot){x, high};
			west->corners[3].y = high;
			if (west->opens_west)
				w->rooms[i - 2].corners[2].y = w->rooms[i - 2].corners[3].y = high;
		}
		top = high;
		x += wide;
	}
	w->count = w->row_count;
	if (floor_chance(w->floor, 50)) {
		double south = -w->wall - 50 - below(w, 30);
		struct chamber *hall = &w->rooms[w->count++];
		*hall = (struct chamber){"H",
		                         {{0, south}, {x, south}, {x, -w->wall}, {0, -w->wall}},
		                         false,
		                         false};
	}
}

/* ---- writing them ---- */

static void write_doorway(struct wing *w, size_t number, const struct chamber *room, int wall,
                          double from, double wide, const struct chamber *to)
{
	static const char *const STOPS[] = {"near", "middle", "far"};
	printf("<doorway id=\"D%zu\" wall=\"%s.%d\" to=\"%s\"", number, room->id, wall, to->id);
	floor_length(w->floor, "from", from);
	floor_length(w->floor, "width", wide);
	printf(" stop=\"%s\"%s/>\n", FLOOR_PICK(w->floor, STOPS),
	       floor_chance(w->floor, 30) ? " joint=\"yes\"" : "");
}

static void open_up(struct wing *w, struct spot middle)
{
	w->openings[w->opening_count++].middle = middle;
}

/* One door or two through the wall to the east neighbour. */
static void write_doors_east(struct wing *w, size_t i)
{
	const struct chamber *room = &w->rooms[i], *east = &w->rooms[i + 1];
	double high = fmin(room->corners[2].y, east->corners[3].y), wide = 26 + below(w, 8);
	double first = 8 + below(w, 10), x = room->corners[1].x + w->wall / 2;
	write_doorway(w, w->opening_count + 1, room, 2, first, wide, east);
	open_up(w, (struct spot){x, first + wide / 2});
	if (high < first + 2 * wide + 24 || !floor_chance(w->floor, 35))
		return;
	write_doorway(w, w->opening_count + 1, room, 2, first + wide + 14, wide, east);
	open_up(w, (struct spot){x, first + wide * 1.5 + 14});
}

static void write_door_south(struct wing *w, const struct chamber *room)
{
	double wide = 28 + below(w, 10), from = 10 + below(w, 20);
	write_doorway(w, w->opening_count + 1, room, 1, from, wide, &w->rooms[w->count - 1]);
	open_up(w, (struct spot){room->corners[0].x + from + wide / 2, -w->wall / 2});
}

static void write_corner(const struct wing *w, const struct chamber *room, int k, const char *to)
{
	printf("<corner");
	floor_point(w->floor, room->corners[k]);
	if (to)
		printf(" kind=\"open\" to=\"%s\"", to);
	printf("/>");
}

static struct spot within(struct wing *w, const struct chamber *room, double clear)
{
	const struct spot *c = room->corners;
	double right = fmin(c[1].x, c[2].x);
	return (struct spot){between(w, c[0].x + clear, right - clear),
	                     between(w, c[0].y + clear, c[3].y - clear)};
}

static void write_obstacles(struct wing *w, const struct chamber *room)
{
	static const char *const KINDS[] = {"column", "pipe", "drain", "drain", "island"};
	if (!floor_chance(w->floor, 45))
		return;
	printf("<obstacle id=\"%s.C\" kind=\"%s\"", room->id, FLOOR_PICK(w->floor, KINDS));
	struct spot at = within(w, room, 14);
	floor_point(w->floor, at);
	if (floor_chance(w->floor, 50)) {
		floor_length(w->floor, "across", 4 + below(w, 10));
	} else {
		floor_length(w->floor, "wide", 4 + below(w, 14));
		floor_length(w->floor, "deep", 4 + below(w, 14));
		floor_direction(w->floor, "turn", 0);
	}
	printf("/>\n");
}

static void write_rooms(struct wing *w)
{
	for (size_t i = 0; i < w->count; i++) {
		struct chamber *room = &w->rooms[i];
		printf("<room id=\"%s\" slab=\"S1\"%s>\n<corners>", room->id,
		       floor_chance(w->floor, 10) ? " exposure=\"wet\"" : "");
		for (int k = 0; k < 4; k++)
			write_corner(w, room, k,
			             k == 1 && room->opens_east   ? w->rooms[i + 1].id
			             : k == 3 && room->opens_west ? w->rooms[i - 1].id
			                                          : NULL);
		printf("</corners>\n");
		write_obstacles(w, room);
		if (i + 1 < w->row_count && !room->opens_east)
			write_doors_east(w, i);
		if (w->count > w->row_count && i < w->row_count)
			write_door_south(w, room);
		printf("</room>\n");
	}
}

/* ---- the slab ---- */

static void write_line(const struct wing *w, const char *element, const struct spot *points,
                       size_t count)
{
	printf(">");
	for (size_t i = 0; i < count; i++)
		floor_at(w->floor, "at", points[i]);
	printf("</%s>\n", element);
}

/* North through one room, or a trench filled in: two joints across it. */
static void write_joints(struct wing *w)
{
	static const char *const KINDS[] = {"contraction", "construction", "cold"};
	const struct chamber *room = &w->rooms[below(w, (int)w->row_count)];
	bool is_trench = floor_chance(w->floor, 30);
	struct spot at = within(w, room, 28);
	double lean = floor_chance(w->floor, 50) ? 0 : between(w, -12, 12);
	if (!floor_chance(w->floor, 55))
		return;
	for (int k = 0; k < (is_trench ? 2 : 1); k++) {
		double x = at.x + k * 16, y = room->corners[2].y;
		struct spot line[] = {{x, 0}, {x + lean, y}};
		printf("<slab-joint id=\"J%d\" kind=\"%s\"", k + 1,
		       is_trench ? "cold" : FLOOR_PICK(w->floor, KINDS));
		floor_length(w->floor, "width", 0.25);
		write_line(w, "slab-joint", line, 2);
	}
}

static void write_crack(struct wing *w, int number, bool is_stepped, const struct spot *points,
                        size_t count)
{
	static const double WIDTHS[] = {0.03, 0.05, 0.08, 0.1};
	printf("<crack id=\"K%d\"", number);
	floor_length(w->floor, "width", FLOOR_NUMBER(w->floor, WIDTHS));
	if (is_stepped)
		floor_length(w->floor, "step", 0.06);
	write_line(w, "crack", points, count);
}

/* A crack bends, it does not turn back: by less than 60 degrees, and no half of it is short. */
static bool goes_on(struct spot from, struct spot knee, struct spot to)
{
	double ax = knee.x - from.x, ay = knee.y - from.y, bx = to.x - knee.x, by = to.y - knee.y;
	double a = hypot(ax, ay), b = hypot(bx, by);
	return a > 10 && b > 10 && ax * bx + ay * by > a * b / 2;
}

/* Through a door from room to room, its second half stepped at times; or under a wall. */
static void write_cracks(struct wing *w)
{
	int cracks = 1 + below(w, 3), number = 0;
	for (int i = 0; i < cracks; i++) {
		size_t a = (size_t)below(w, (int)w->count), b = (size_t)below(w, (int)w->count);
		struct spot from = within(w, &w->rooms[a], 8), to = within(w, &w->rooms[b], 8);
		struct spot knee = {(from.x + to.x) / 2, (from.y + to.y) / 2 + between(w, -3, 3)};
		bool is_through = w->opening_count > 0 && floor_chance(w->floor, 50);
		if (is_through) {
			knee = w->openings[below(w, (int)w->opening_count)].middle;
			knee.y += between(w, -1, 1);
		}
		if (!goes_on(from, knee, to))
			continue;
		if (is_through && floor_chance(w->floor, 30)) {
			const struct spot first[] = {from, knee}, second[] = {knee, to};
			write_crack(w, ++number, false, first, 2);
			write_crack(w, ++number, true, second, 2);
			continue;
		}
		const struct spot points[] = {from, knee, to};
		write_crack(w, ++number, floor_chance(w->floor, 10), points, 3);
	}
}

/* ---- tile and membrane ---- */

static void write_ids(const struct wing *w, size_t first, size_t end)
{
	for (size_t i = first; i < end; i++)
		printf("%s%s", i > first ? " " : "", w->rooms[i].id);
}

static void write_lay(struct wing *w, int number, size_t first, size_t end)
{
	static const double WIDTHS[] = {6, 8, 12, 12, 16}, SIDES[] = {1, 1, 1.5, 2};
	static const double ANGLES[] = {0, 0, 0, 90, 30, 45};
	double joint = 0.125, wide = FLOOR_NUMBER(w->floor, WIDTHS);
	printf("<tile id=\"T%d\" kind=\"porcelain\"", number);
	floor_length(w->floor, "wide", wide - joint);
	floor_length(w->floor, "long", wide * FLOOR_NUMBER(w->floor, SIDES) - joint);
	floor_length(w->floor, "thick", 0.4);
	double angle = FLOOR_NUMBER(w->floor, ANGLES);
	printf("/>\n<lay id=\"L%d\" tile=\"T%d\" pattern=\"%s\"", number, number,
	       floor_chance(w->floor, 60) ? "grid" : "running");
	floor_direction(w->floor, "angle", angle);
	printf(" rooms=\"");
	write_ids(w, first, end);
	printf("\"");
	floor_length(w->floor, "joint", joint);
	if (number == 1 && w->opening_count > 0 && floor_chance(w->floor, 20))
		printf(" full-at=\"D1\"");
	printf("/>\n<membrane id=\"M%d\" kind=\"%s\" cover=\"%s\" rooms=\"", number,
	       floor_chance(w->floor, 70) ? "sheet" : "liquid",
	       floor_chance(w->floor, 12) ? "full" : "partial");
	write_ids(w, first, end);
	printf("\"");
	floor_length(w->floor, "movement", 0.125);
	printf("/>\n");
}

void wing_write(struct floor_draft *floor)
{
	struct wing wing = {.floor = floor};
	place_rooms(&wing);
	write_rooms(&wing);
	write_joints(&wing);
	write_cracks(&wing);
	size_t parted = floor_chance(floor, 65) ? wing.count : 1 + (size_t)below(&wing, 2);
	write_lay(&wing, 1, 0, parted);
	if (parted < wing.count)
		write_lay(&wing, 2, parted, wing.count);
}
