#include "support/program.h"
#include "support/shapes.h"

#include <string.h>

#include "geometry/overlay.h"
#include "geometry/tolerance.h"

/* Vectors: printed survey areas (AR1..AR4); two quadrilaterals clipped by four independent
 * libraries (Q02); Steiner's formula (Q03, Q04); closed forms for bands (Q05..Q08). */

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

static void assert_points(struct ring ring, const struct point *points, size_t count)
{
	assert_int_equal(ring.count, count);
	assert_memory_equal(ring.points, points, count * sizeof *points);
}

/* What the header promises of every result. */
static void assert_normal_ring(struct ring ring, double sign)
{
	assert_true(ring.count >= 3);
	assert_true(sign * ring_area(ring) > 0);
	for (size_t i = 0; i < ring.count; i++) {
		struct point before = ring.points[(i + ring.count - 1) % ring.count];
		struct point p = ring.points[i], after = ring.points[(i + 1) % ring.count];
		struct point chord = point_sub(after, before);
		assert_true(p.x >= ring.points[0].x - TOLERANCE_SAME);
		assert_true(point_distance(p, after) > TOLERANCE_SAME);
		assert_true(fabs(point_cross(chord, point_sub(p, before))) >
		            TOLERANCE_SAME * point_length(chord));
	}
}

static void assert_normal(const struct region *region)
{
	for (size_t i = 0; i < region->count; i++) {
		const struct polygon *polygon = &region->polygons[i];
		assert_normal_ring(polygon->outline, 1);
		for (size_t h = 0; h < polygon->hole_count; h++)
			assert_normal_ring(polygon->holes[h], -1);
		if (i > 0)
			assert_true(polygon_area(polygon) <=
			            polygon_area(&region->polygons[i - 1]) + TOLERANCE_AREA_MM2);
	}
}

static void test_printed_survey_areas(void **state)
{
	(void)state;
	const struct {
		struct ring ring;
		double area;
	} cases[] = {
		{RING({1259.97, 406.31}, {1489.47, 235.12}, {1126.40, 65.81}, {942.04, 317.89},
	              {1282.54, 675.32}),
	         140493.107},
		{RING({2215.890, 1541.207}, {2336.574, 1373.915}, {2350.205, 1299.818},
	              {2523.212, 1343.189}, {2359.080, 1569.360}),
	         38965.816},
		{RING({1000.000, 600.000}, {1209.288, 254.542}, {566.876, 97.543},
	              {397.969, 470.303}),
	         250552.089},
		{RING({0, 0}, {300, 0}, {300, 200}, {0, 200}), 60000},
	};
	for (size_t i = 0; i < COUNT(cases); i++)
		assert_near(fabs(ring_area(cases[i].ring)), cases[i].area, 1e-3);
	assert_true(ring_area(cases[3].ring) > 0);
	assert_near(ring_length(cases[3].ring), 1000, 0);
}

static void test_area_holds_far_from_the_origin(void **state)
{
	(void)state;
	double x = 2e7, y = -2e7;
	struct ring far = RING({x, y}, {x + 3, y}, {x + 3, y + 2}, {x, y + 2});
	assert_near(ring_area(far), 6, 0);
}

static void test_ring_holds_and_distance(void **state)
{
	(void)state;
	struct ring notch = RING({0, 0}, {10, 0}, {10, 10}, {5, 4}, {0, 10});
	assert_true(ring_holds(notch, (struct point){5, 3}));
	assert_false(ring_holds(notch, (struct point){5, 5}));
	assert_false(ring_holds(notch, (struct point){-1, 0}));
	assert_true(ring_holds(notch, (struct point){1, 8}));
	assert_near(ring_distance(notch, (struct point){5, -3}), 3, 0);
	assert_near(ring_distance(notch, (struct point){13, 14}), 5, 1e-12);
	assert_near(ring_distance(notch, (struct point){5, 1}), 1, 0);
}

static void test_ring_turned_keeps_its_first_point(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct ring clockwise = RING({0, 0}, {0, 2}, {3, 2}, {3, 0});
	struct ring turned = ring_turned(arena, clockwise, true);
	assert_points(turned, (struct point[]){{0, 0}, {3, 0}, {3, 2}, {0, 2}}, 4);
	assert_points(ring_turned(arena, turned, true), turned.points, 4);
	assert_points(ring_turned(arena, turned, false), clockwise.points, 4);
	arena_free(arena);
}

static void test_quadrilaterals_as_printed(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region a = region_from_ring(arena, RING({0, 0}, {7, 1}, {8, 6}, {3, 8}, {-1, 4}));
	struct region b = region_from_ring(arena, RING({2, -1}, {9, 3}, {5, 9}, {1, 5}));
	struct region both = overlay_intersection(arena, &a, &b);
	struct region either = overlay_union(arena, &a, &b);
	struct region a_only = overlay_difference(arena, &a, &b);
	struct region b_only = overlay_difference(arena, &b, &a);
	assert_near(region_area(&a), 50, 1e-12);
	assert_near(region_area(&b), 43, 1e-12);
	assert_near(region_area(&both), 36.004277418006, 1e-10);
	assert_near(region_area(&either), 56.995722581994, 1e-10);
	assert_near(region_area(&a_only), 13.995722581994, 1e-10);
	assert_near(region_area(&b_only), 6.995722581994, 1e-10);
	struct region apart[] = {a_only, b_only};
	struct region unlike = overlay_union_all(arena, apart, 2);
	assert_near(region_area(&unlike), 20.991445163988, 1e-10);
	assert_normal(&both);
	assert_normal(&either);
	assert_normal(&a_only);
	assert_normal(&b_only);
	arena_free(arena);
}

/* A number of thirds and sevenths of an inch, as rooms are measured. */
static double random_coordinate(unsigned *seed)
{
	*seed = *seed * 1103515245u + 12345u;
	return (double)((*seed >> 16) % 4000) * 25.4 / 21;
}

static void test_areas_are_conserved(void **state)
{
	(void)state;
	unsigned seed = 7;
	for (int i = 0; i < 300; i++) {
		struct arena *arena = arena_new();
		struct region regions[2];
		for (int k = 0; k < 2; k++) {
			struct point p[3];
			for (int n = 0; n < 3; n++)
				p[n] = (struct point){random_coordinate(&seed),
				                      random_coordinate(&seed)};
			regions[k] = region_from_ring(arena, (struct ring){p, 3});
		}
		const struct region *a = &regions[0], *b = &regions[1];
		struct region both = overlay_intersection(arena, a, b);
		struct region either = overlay_union(arena, a, b);
		struct region rest = overlay_difference(arena, a, b);
		double scale = region_area(a) + region_area(b);
		double slack = 1e-9 * scale + 3 * TOLERANCE_AREA_MM2;
		assert_near(scale, region_area(&either) + region_area(&both), slack);
		assert_near(region_area(a), region_area(&rest) + region_area(&both), slack);
		assert_normal(&both);
		assert_normal(&either);
		assert_normal(&rest);
		arena_free(arena);
	}
}

static void assert_coordinates_of(const struct region *result, const double *xs, const double *ys,
                                  size_t count)
{
	for (size_t i = 0; i < result->count; i++) {
		struct ring ring = result->polygons[i].outline;
		for (size_t k = 0; k < ring.count; k++) {
			size_t x_found = 0, y_found = 0;
			for (size_t n = 0; n < count; n++) {
				x_found += memcmp(&xs[n], &ring.points[k].x, sizeof *xs) == 0;
				y_found += memcmp(&ys[n], &ring.points[k].y, sizeof *ys) == 0;
			}
			assert_true(x_found > 0 && y_found > 0);
		}
	}
}

static void test_axis_parallel_coordinates_pass_bit_for_bit(void **state)
{
	(void)state;
	unsigned seed = 11;
	for (int i = 0; i < 500; i++) {
		struct arena *arena = arena_new();
		double xs[4], ys[4];
		for (int k = 0; k < 4; k++) {
			xs[k] = random_coordinate(&seed) + 1e5;
			ys[k] = random_coordinate(&seed) - 1e6;
		}
		if (xs[0] == xs[1] || xs[2] == xs[3] || ys[0] == ys[1] || ys[2] == ys[3]) {
			arena_free(arena);
			continue;
		}
		struct region a = shape_rectangle(arena, xs[0], ys[0], xs[1], ys[1]);
		struct region b = shape_rectangle(arena, xs[2], ys[2], xs[3], ys[3]);
		struct region results[] = {overlay_union(arena, &a, &b),
		                           overlay_intersection(arena, &a, &b),
		                           overlay_difference(arena, &a, &b)};
		for (size_t k = 0; k < COUNT(results); k++)
			assert_coordinates_of(&results[k], xs, ys, 4);
		arena_free(arena);
	}
}

static void test_touching_rectangles_become_one(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region row[3];
	for (int i = 0; i < 3; i++)
		row[i] = shape_rectangle(arena, 25.4 * i, 0, 25.4 * (i + 1), 12.7);
	struct region one = overlay_union_all(arena, row, 3);
	assert_int_equal(one.count, 1);
	assert_points(one.polygons[0].outline,
	              (struct point[]){{0, 0}, {25.4 * 3, 0}, {25.4 * 3, 12.7}, {0, 12.7}}, 4);
	arena_free(arena);
}

static void test_results_are_normalised(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region parts[] = {shape_rectangle(arena, 50, 50, 51, 51),
	                         shape_rectangle(arena, 0, 0, 10, 10),
	                         shape_rectangle(arena, 30, 0, 31, 1)};
	struct region hole = shape_rectangle(arena, 2, 2, 4, 5);
	struct region all = overlay_union_all(arena, parts, 3);
	struct region result = overlay_difference(arena, &all, &hole);
	assert_int_equal(result.count, 3);
	const struct polygon *first = &result.polygons[0];
	assert_points(first->outline, (struct point[]){{0, 0}, {10, 0}, {10, 10}, {0, 10}}, 4);
	assert_int_equal(first->hole_count, 1);
	assert_points(first->holes[0], (struct point[]){{2, 2}, {2, 5}, {4, 5}, {4, 2}}, 4);
	assert_near(result.polygons[1].outline.points[0].x, 30, 0);
	assert_near(result.polygons[2].outline.points[0].x, 50, 0);
	assert_near(polygon_area(first), 94, 0);
	assert_true(region_holds(&result, (struct point){50.5, 50.5}));
	assert_false(region_holds(&result, (struct point){3, 3}));
	assert_near(region_distance(&result, (struct point){3, 3}), 1, 0);
	assert_near(region_length(&result), 40 + 10 + 4 + 4, 0);
	arena_free(arena);
}

static void test_empty_regions_are_values(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region none = {NULL, 0}, some = shape_rectangle(arena, 0, 0, 1, 1);
	struct region beside = shape_rectangle(arena, 1, 0, 2, 1);
	struct region results[] = {overlay_union(arena, &none, &none),
	                           overlay_intersection(arena, &some, &none),
	                           overlay_difference(arena, &none, &some),
	                           overlay_difference(arena, &some, &some),
	                           overlay_intersection(arena, &some, &beside),
	                           overlay_offset(arena, &none, 5, OVERLAY_MITRE),
	                           overlay_offset(arena, &some, -2, OVERLAY_MITRE),
	                           overlay_union_all(arena, NULL, 0)};
	for (size_t i = 0; i < COUNT(results); i++) {
		assert_int_equal(results[i].count, 0);
		assert_near(region_area(&results[i]), 0, 0);
	}
	struct region kept = overlay_difference(arena, &some, &none);
	assert_near(region_area(&kept), 1, 0);
	arena_free(arena);
}

static void test_offset_round_as_steiner(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const double arc = 3.136548490545939; /* disc of radius 1, 16 chords a quarter */
	struct region rect = shape_rectangle(arena, 0, 0, 4, 3);
	struct region grown = overlay_offset(arena, &rect, 0.5, OVERLAY_ROUND);
	assert_near(region_area(&grown), 12 + 14 * 0.5 + arc * 0.25, 1e-9);
	struct region triangle = region_from_ring(arena, RING({0, 0}, {4, 0}, {0, 3}));
	struct region wide = overlay_offset(arena, &triangle, 1, OVERLAY_ROUND);
	assert_true(region_area(&wide) < 21.141593);
	assert_near(region_area(&wide), 21.141593, 0.006);
	assert_normal(&wide);
	arena_free(arena);
}

static void test_offset_mitre(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region rect = shape_rectangle(arena, 0, 0, 4, 3);
	struct region grown = overlay_offset(arena, &rect, 0.5, OVERLAY_MITRE);
	assert_near(region_area(&grown), 20, 1e-12);
	struct region triangle = region_from_ring(arena, RING({0, 0}, {4, 0}, {0, 3}));
	struct region shrunk = overlay_offset(arena, &triangle, -0.5, OVERLAY_MITRE);
	assert_near(region_area(&shrunk), 1.5, 1e-7);
	struct region bevelled = overlay_offset(arena, &rect, 0.5, OVERLAY_BEVEL);
	assert_near(region_area(&bevelled), 20 - 4 * 0.125, 1e-9);
	arena_free(arena);
}

/* Lengths of a plan are whole nanometres: borders moved by one come out as such. */
static void test_offset_of_axis_parallel_is_exact(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region room = region_from_ring(arena, RING({0, 0}, {6096, 0}, {6096, 2438.4},
	                                                  {3048, 2438.4}, {3048, 4572}, {0, 4572}));
	struct region field = overlay_offset(arena, &room, -6.35, OVERLAY_MITRE);
	assert_int_equal(field.count, 1);
	assert_points(field.polygons[0].outline,
	              (struct point[]){{6.35, 6.35},
	                               {6089.65, 6.35},
	                               {6089.65, 2432.05},
	                               {3041.65, 2432.05},
	                               {3041.65, 4565.65},
	                               {6.35, 4565.65}},
	              6);
	arena_free(arena);
}

static void test_arc_is_an_inscribed_polygon(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region disc = overlay_band(arena, LINE({10, 20}), 1);
	assert_int_equal(disc.polygons[0].outline.count, 64);
	assert_near(region_area(&disc), 3.136548, 1e-6);
	arena_free(arena);
}

static void test_band_of_a_bent_line(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct line bent = LINE({0, 0}, {4, 0}, {6, 2}, {6, 5}, {9, 7});
	struct region band = overlay_band(arena, bent, 0.15);
	assert_int_equal(band.count, 1);
	assert_true(region_area(&band) < 4.098925998);
	assert_near(region_area(&band), 4.098925998, 2e-4);
	struct region none = overlay_band(arena, (struct line){NULL, 0}, 1);
	assert_int_equal(none.count, 0);
	arena_free(arena);
}

static void test_simple_outlines(void **state)
{
	(void)state;
	assert_true(overlay_is_simple(RING({0, 0}, {1, 0}, {1, 1})));
	assert_true(overlay_is_simple(RING({0, 0}, {0, 1}, {1, 1}, {1, 0})));
	assert_false(overlay_is_simple(RING({0, 0}, {1, 1}, {1, 0}, {0, 1.5})));
	assert_false(overlay_is_simple(RING({0, 0}, {1, 0}, {2, 0})));
	assert_false(overlay_is_simple(RING({0, 0}, {1, 0})));
	assert_false(overlay_is_simple(RING({0, 0}, {2, 0}, {2, 2}, {1, 0}, {0, 2})));
	assert_false(overlay_is_simple(RING({0, 0}, {NAN, 0}, {2, 2})));
}

/* A strip across a doorway whose side comes within the last digits of a wall, as a floor drew
 * it: GEOS 3.11 finds only points in common. */
static void test_ground_beside_a_border_nearly_the_same(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct point near_door[] = {{1780.7774929623545, 1144.609757703761},
	                            {2055.6077992512755, 906.37486326666829},
	                            {1870.8296271915976, 643.0607984652338},
	                            {3227.8435479664458, -309.21097603872687},
	                            {3953.840859814547, 948.25325424061111},
	                            {3846.6719625800961, 1041.1519278415808},
	                            {2205.4589839868031, 1988.706682829926}};
	struct point in_room[] = {{3414.8418409249457, -435.3204317059558},
	                          {3991.971833180261, -807.47715075655503},
	                          {4389.5154666681783, -1176.6071262331113},
	                          {4455.014831063042, -1106.0659698854956},
	                          {4654.6112792558852, -1234.7738178407278},
	                          {5233.5779419845439, -336.92888189790438},
	                          {3912.1306570155921, 426.00906379881985}};
	struct point walls[] = {{2749.6306570155925, -1587.4999999999998},
	                        {5888.9727457341824, -3399.9999999999995},
	                        {7056.8854045078351, -1389.6159362011799},
	                        {3912.1306570155921, 426.00906379881985},
	                        {3187.1306570155925, -829.72777168861603},
	                        {2862.1306570155925, -1392.6442841485011}};
	struct polygon parts[] = {{.outline = {near_door, 7}}, {.outline = {in_room, 7}}};
	struct region strip = {parts, 2}, room = region_from_ring(arena, (struct ring){walls, 6});
	struct region own = overlay_intersection(arena, &strip, &room);
	struct region rest = overlay_difference(arena, &strip, &room);
	assert_near(region_area(&own), polygon_area(&parts[1]), 1e-3);
	assert_near(region_area(&rest), polygon_area(&parts[0]), 1e-3);
	arena_free(arena);
}

static void test_library_is_named(void **state)
{
	(void)state;
	assert_true(strncmp(overlay_library(), "GEOS 3.", 7) == 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_printed_survey_areas),
		cmocka_unit_test(test_area_holds_far_from_the_origin),
		cmocka_unit_test(test_ring_holds_and_distance),
		cmocka_unit_test(test_ring_turned_keeps_its_first_point),
		cmocka_unit_test(test_quadrilaterals_as_printed),
		cmocka_unit_test(test_areas_are_conserved),
		cmocka_unit_test(test_axis_parallel_coordinates_pass_bit_for_bit),
		cmocka_unit_test(test_touching_rectangles_become_one),
		cmocka_unit_test(test_results_are_normalised),
		cmocka_unit_test(test_empty_regions_are_values),
		cmocka_unit_test(test_offset_round_as_steiner),
		cmocka_unit_test(test_offset_mitre),
		cmocka_unit_test(test_offset_of_axis_parallel_is_exact),
		cmocka_unit_test(test_arc_is_an_inscribed_polygon),
		cmocka_unit_test(test_band_of_a_bent_line),
		cmocka_unit_test(test_simple_outlines),
		cmocka_unit_test(test_ground_beside_a_border_nearly_the_same),
		cmocka_unit_test(test_library_is_named),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
