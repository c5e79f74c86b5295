/* Filling a room with tile, against clipping every face of it by the general library.
 * Nine runs of each in turn; medians, spread, ratio and slope. Counts work as well as time:
 * runs and pieces stored. */
#define GEOS_USE_ONLY_R_API
#include <geos_c.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <time.h>

#include "base/strbuf.h"
#include "layout/tiling.h"
#include "support/program.h"
#include "support/rooms.h"

enum { RUNS = 9, CORNERS = 100, HOLES = 10, TILE = 300, JOINT = 3 };

static double seconds(void)
{
	struct timespec now;
	clock_gettime(CLOCK_MONOTONIC, &now);
	return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

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

struct room {
	const struct site *site;
	const struct rules *rules;
	const struct module *module;
	const struct field *field;
};

/* The field as one panel without field joints: the filling alone is measured. */
static const struct movement *one_panel(struct arena *arena, const struct field *field)
{
	struct movement *movement = ARENA_NEW(arena, struct movement);
	movement->panel_count = field->region.count;
	movement->panels = ARENA_ARRAY(arena, struct movement_panel, field->region.count);
	for (size_t i = 0; i < field->region.count; i++)
		movement->panels[i] =
			(struct movement_panel){i, field->region.polygons[i], {100, 100}};
	return movement;
}

struct result {
	long whole;
	size_t runs, pieces;
	double area_mm2;
};

static double time_ours(const struct room *room, struct result *out)
{
	struct arena *arena = arena_new();
	double start = seconds();
	const struct field *field =
		field_place(arena, room->site, room->rules, &room->site->plan->lays[0], NULL);
	const struct tiling *tiling =
		tiling_place(arena, field, room->module, one_panel(arena, field));
	*out = (struct result){0};
	for (size_t i = 0; i < tiling->panel_count; i++) {
		out->whole += tiling->panels[i].whole_count;
		out->runs += tiling->panels[i].run_count;
		out->pieces += tiling->panels[i].piece_count;
		out->area_mm2 += tiling->panels[i].tile_mm2 + tiling->panels[i].lost_mm2;
	}
	double took = seconds() - start;
	arena_free(arena);
	return took;
}

static GEOSGeometry *geos_ring(GEOSContextHandle_t geos, struct ring ring)
{
	GEOSCoordSequence *points = GEOSCoordSeq_create_r(geos, (unsigned)ring.count + 1, 2);
	for (size_t i = 0; i <= ring.count; i++)
		GEOSCoordSeq_setXY_r(geos, points, (unsigned)i, ring.points[i % ring.count].x,
		                     ring.points[i % ring.count].y);
	return GEOSGeom_createLinearRing_r(geos, points);
}

static double time_library(GEOSContextHandle_t geos, const struct room *room, double *out_area)
{
	const struct polygon *ground = &room->field->region.polygons[0];
	GEOSGeometry *holes[HOLES + 1];
	for (size_t h = 0; h < ground->hole_count; h++)
		holes[h] = geos_ring(geos, ground->holes[h]);
	GEOSGeometry *area = GEOSGeom_createPolygon_r(geos, geos_ring(geos, ground->outline), holes,
	                                              (unsigned)ground->hole_count);
	struct box box = ring_box(ground->outline);
	double pitch = TILE + JOINT, sum = 0, start = seconds();
	for (double x = 100 - pitch * ceil((100 - box.x0) / pitch) + JOINT / 2.0; x < box.x1;
	     x += pitch)
		for (double y = 100 - pitch * ceil((100 - box.y0) / pitch) + JOINT / 2.0;
		     y < box.y1; y += pitch) {
			GEOSGeometry *piece =
				GEOSClipByRect_r(geos, area, x, y, x + TILE, y + TILE);
			double mm2 = 0;
			GEOSArea_r(geos, piece, &mm2);
			sum += mm2;
			GEOSGeom_destroy_r(geos, piece);
		}
	double took = seconds() - start;
	GEOSGeom_destroy_r(geos, area);
	*out_area = sum;
	return took;
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

static double median(double *values)
{
	qsort(values, RUNS, sizeof *values, by_value);
	return values[RUNS / 2];
}

static double bench(long tiles, bool with_library)
{
	struct arena *arena = arena_new();
	struct room room = {.site = site_from_text(arena, floor_text(arena, tiles)),
	                    .rules = rules_for_tests(arena)};
	const struct plan_lay *lay = &room.site->plan->lays[0];
	room.module = module_from_lay(arena, lay);
	room.field = field_place(arena, room.site, room.rules, lay, NULL);
	GEOSContextHandle_t geos = GEOS_init_r();
	double ours[RUNS], library[RUNS] = {0}, library_area = 0;
	struct result result;
	for (int i = 0; i < RUNS; i++) {
		ours[i] = time_ours(&room, &result);
		if (with_library && i < 3)
			library[RUNS - 1 - i] = time_library(geos, &room, &library_area);
	}
	double mine = median(ours);
	printf("%9ld whole, %6zu runs, %6zu pieces: %8.2f ms (%.2f to %.2f)", result.whole,
	       result.runs, result.pieces, mine * 1e3, ours[0] * 1e3, ours[RUNS - 1] * 1e3);
	if (with_library) {
		qsort(library + RUNS - 3, 3, sizeof *library, by_value);
		double theirs = library[RUNS - 2];
		printf("; library %.0f ms, ratio %.0f; areas apart %.2g mm2", theirs * 1e3,
		       theirs / mine, fabs(library_area - result.area_mm2));
	}
	printf("\n");
	GEOS_finish_r(geos);
	arena_free(arena);
	return mine;
}

int main(void)
{
	double small = bench(100000, true), middle = bench(1000000, true),
	       large = bench(10000000, false);
	printf("slope of time against tiles: %.2f, then %.2f\n", log10(middle / small),
	       log10(large / middle));
	struct rusage usage;
	getrusage(RUSAGE_SELF, &usage);
	printf("peak memory of the process: %.0f MiB\n", (double)usage.ru_maxrss / 1024);
	return 0;
}
