/* A room of 100 corners with ten columns, its start pinned, filled with tile: from the resolved
 * room to the whole count, every cut piece with its outline, area and extents, and the cuts at
 * every wall; by the passes of the program, against clipping each face that has tile by the
 * general library. Nine runs of each in turn; medians, spread, ratios, slopes, work, memory. */
#include <stdio.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/strbuf.h"
#include "layout/tiling.h"
#include "support/clipper.h"
#include "support/measure.h"
#include "support/program.h"
#include "support/rooms.h"

enum { CORNERS = 100, HOLES = 10, TILE = 300, JOINT = 3 };

/* A ragged ring round (radius, radius); `count` corners, drawn inwards at random. */
static void add_ring(struct strbuf *text, struct seed *seed, double x, double y, double radius,
                     int count)
{
	for (int i = 0; i < count; i++) {
		struct frame turn = frame_from_deg(360.0 * i / count);
		double r = radius * seed_between(seed, 0.8, 1);
		strbuf_printf(text, "<corner x=\"%ld\" y=\"%ld\"/>", lround(x + r * turn.cos),
		              lround(y + r * turn.sin));
	}
}

static const char *floor_text(struct arena *arena, long tiles)
{
	struct seed seed = {1};
	double radius = sqrt((double)tiles * (TILE + JOINT) * (TILE + JOINT) / 2.5);
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text,
	           "<floor version=\"1\" unit=\"mm\"><slab id=\"S\" thickness=\"150\" "
	           "support=\"ground\" exposure=\"indoor\"/><room id=\"R\" slab=\"S\"><corners>");
	add_ring(&text, &seed, 0, 0, radius, CORNERS);
	strbuf_add(&text, "</corners>");
	for (int i = 0; i < HOLES; i++) {
		strbuf_printf(&text, "<obstacle id=\"C%d\" kind=\"column\"><corners>", i);
		struct frame turn = frame_from_deg(36.0 * i);
		add_ring(&text, &seed, radius / 2 * turn.cos, radius / 2 * turn.sin, radius / 20,
		         8);
		strbuf_add(&text, "</corners></obstacle>");
	}
	strbuf_printf(
		&text,
		"</room><tile id=\"T\" kind=\"porcelain\" wide=\"%d\" thick=\"9\"/><lay id=\"L\" "
		"rooms=\"R\" "
		"tile=\"T\" joint=\"%d\" pattern=\"grid\"><start x=\"100\" y=\"100\"/>"
		"</lay></floor>",
		TILE, JOINT);
	return text.text;
}

/* ---- the way of the program ---- */

struct room {
	const struct site *site;
	const struct rules *rules;
};

struct laid {
	const struct field *field;
	const struct position *position;
	const struct tiling *tiling;
	double field_s, position_s, tiling_s;
};

/* The room as one panel: field joints would make other faces of it than the library is given. */
static const struct movement *one_panel(struct arena *arena, const struct field *field,
                                        const struct position *position)
{
	struct movement *movement = ARENA_NEW(arena, struct movement);
	movement->panel_count = field->region.count;
	movement->panels = ARENA_ARRAY(arena, struct movement_panel, field->region.count);
	for (size_t i = 0; i < field->region.count; i++)
		movement->panels[i] =
			(struct movement_panel){i, field->region.polygons[i], position->parts[i]};
	return movement;
}

static struct laid lay_room(struct arena *arena, const struct room *room)
{
	struct laid laid;
	const struct plan_lay *lay = &room->site->plan->lays[0];
	double start = measure_seconds();
	laid.field = field_place(arena, room->site, room->rules, lay, NULL);
	double placed = measure_seconds();
	const struct module *module = module_from_lay(arena, lay);
	laid.position = position_search(arena, laid.field, module, room->rules);
	double positioned = measure_seconds();
	laid.tiling = tiling_place(arena, laid.field, module,
	                           one_panel(arena, laid.field, laid.position));
	laid.field_s = placed - start;
	laid.position_s = positioned - placed;
	laid.tiling_s = measure_seconds() - positioned;
	return laid;
}

static struct room room_of(struct arena *arena, long tiles)
{
	return (struct room){site_from_text(arena, floor_text(arena, tiles)),
	                     rules_for_tests(arena)};
}

/* ---- time ---- */

struct times {
	struct measured all, field, position, tiling, library;
};

static void measure_ours(const struct room *room, struct times *times, int run)
{
	struct arena *arena = arena_new();
	struct laid laid = lay_room(arena, room);
	times->field.runs[run] = laid.field_s;
	times->position.runs[run] = laid.position_s;
	times->tiling.runs[run] = laid.tiling_s;
	times->all.runs[run] = laid.field_s + laid.position_s + laid.tiling_s;
	arena_free(arena);
}

static void print_median(const char *what, struct measured *measured)
{
	double median = measured_median(measured);
	printf("  %-32s %9.3f ms (%.3f to %.3f)\n", what, median * 1e3, measured->runs[0] * 1e3,
	       measured->runs[MEASURE_RUNS - 1] * 1e3);
}

static void print_work(const struct laid *laid)
{
	const struct panel *panel = &laid->tiling->panels[0];
	printf("%ld whole tiles in %zu runs, %zu cut pieces; %ld rows of %ld edges and %ld faces "
	       "looked at\n",
	       panel->whole_count, panel->run_count, panel->piece_count, panel->work.rows,
	       panel->work.edges, panel->work.faces);
}

/* Processor seconds of the whole way, and of the filling alone. */
struct pace {
	double all, tiling;
};

static struct pace bench(long tiles, bool with_library)
{
	struct arena *arena = arena_new();
	struct room room = room_of(arena, tiles);
	struct laid laid = lay_room(arena, &room);
	struct clipper *clipper = clipper_of_region(&laid.field->region);
	struct times times;
	double library_mm2 = 0;
	long faces = 0;
	for (int run = 0; run < MEASURE_RUNS; run++) {
		measure_ours(&room, &times, run);
		double start = measure_seconds();
		if (with_library)
			library_mm2 = clipper_area(clipper, laid.tiling, &faces);
		times.library.runs[run] = measure_seconds() - start;
	}
	print_work(&laid);
	print_median("all", &times.all);
	print_median("the field", &times.field);
	print_median("its start, cuts at walls", &times.position);
	print_median("runs, cut pieces", &times.tiling);
	if (with_library) {
		print_median("library", &times.library);
		printf("  library : ours %.0f on %ld faces; its area is that of the tile and %.0f "
		       "mm2 (%.0f mm2 are remainders that are no tile)\n",
		       measured_median(&times.library) / measured_median(&times.all), faces,
		       library_mm2 - laid.tiling->panels[0].tile_mm2,
		       laid.tiling->panels[0].lost_mm2);
	}
	clipper_free(clipper);
	arena_free(arena);
	return (struct pace){measured_median(&times.all), measured_median(&times.tiling)};
}

/* ---- memory ---- */

/* Most KiB a child has held at once: it runs the program, or lays a room. */
static long peak_of_child(const char *program, long tiles, size_t *out_pieces)
{
	int pipe_ends[2];
	size_t pieces = 0;
	if (pipe(pipe_ends) != 0)
		return 0;
	pid_t child = fork();
	if (child == 0) {
		struct arena *arena = arena_new();
		if (program && freopen("/dev/null", "w", stdout))
			execl(program, program, "--version", (char *)NULL);
		struct room room = room_of(arena, tiles);
		pieces = lay_room(arena, &room).tiling->panels[0].piece_count;
		_exit(write(pipe_ends[1], &pieces, sizeof pieces) != (ssize_t)sizeof pieces);
	}
	struct rusage usage; /* of the child that held most: the program itself comes first */
	close(pipe_ends[1]);
	if (read(pipe_ends[0], out_pieces, sizeof *out_pieces) < 0)
		*out_pieces = 0;
	close(pipe_ends[0]);
	waitpid(child, NULL, 0);
	getrusage(RUSAGE_CHILDREN, &usage);
	return usage.ru_maxrss;
}

static void print_memory(long tiles)
{
	const char *program = getenv("JURYSTICK");
	size_t pieces = 0;
	long idle = peak_of_child(program ? program : "build/jurystick", 0, &pieces);
	long laying = peak_of_child(NULL, tiles, &pieces);
	printf("peak memory at %ld tiles: %.1f MiB above that of --version (%.1f MiB), %.0f bytes "
	       "a cut piece\n",
	       tiles, (double)(laying - idle) / 1024, (double)idle / 1024,
	       (double)(laying - idle) * 1024 / (double)pieces);
	fflush(stdout);
}

int main(void)
{
	print_memory(10000000); /* first: a child starts with what this process holds */
	struct pace small = bench(100000, true), middle = bench(1000000, true),
		    large = bench(10000000, false);
	printf("slope of time against tiles: %.2f, then %.2f; of the filling alone %.2f, then "
	       "%.2f\n",
	       log10(middle.all / small.all), log10(large.all / middle.all),
	       log10(middle.tiling / small.tiling), log10(large.tiling / middle.tiling));
	return 0;
}
