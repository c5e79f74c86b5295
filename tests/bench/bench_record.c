/* A whole run of `record` on the hall of the demo plans, from the start of the process to the last
 * byte, against clipping every face of that floor that has tile by the general library. Nine
 * runs of each in turn; medians, spread, ratio. */
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "layout/placed.h"
#include "support/clipper.h"
#include "support/measure.h"
#include "support/program.h"
#include "support/rooms.h"

static const char PLAN[] = "demo-plans/saltgate-hall.xml";

static const char *text_of_plan(struct arena *arena)
{
	enum { MOST = 1 << 20 };
	char *text = arena_alloc(arena, MOST);
	FILE *in = fopen(PLAN, "rb");
	if (!in || fread(text, 1, MOST - 1, in) == 0) {
		perror(PLAN);
		exit(1);
	}
	fclose(in);
	return text;
}

/* Processor seconds of all children so far, in the system too. */
static double children_seconds(void)
{
	struct rusage usage;
	getrusage(RUSAGE_CHILDREN, &usage);
	return (double)(usage.ru_utime.tv_sec + usage.ru_stime.tv_sec) +
	       (double)(usage.ru_utime.tv_usec + usage.ru_stime.tv_usec) / 1e6;
}

/* One run of the program; its output goes nowhere. */
static double seconds_of_run(const char *command, const char *plan)
{
	const char *program = getenv("JURYSTICK");
	double before = children_seconds();
	int status = 1;
	pid_t child = fork();
	if (child == 0) {
		execl("/bin/sh", "sh", "-c", "exec \"$0\" \"$@\" >/dev/null",
		      program ? program : "build/jurystick", command, plan, (char *)NULL);
		_exit(127);
	}
	waitpid(child, &status, 0);
	if (status != 0)
		exit(1);
	return children_seconds() - before;
}

static double print_median(const char *what, struct measured *measured)
{
	double median = measured_median(measured);
	printf("  %-32s %9.2f ms (%.2f to %.2f)\n", what, median * 1e3, measured->runs[0] * 1e3,
	       measured->runs[MEASURE_RUNS - 1] * 1e3);
	return median;
}

int main(void)
{
	struct arena *arena = arena_new();
	const struct site *site = site_from_text(arena, text_of_plan(arena));
	const struct placed *placed = placed_from_site(arena, site, rules_for_tests(arena));
	const struct placed_lay *lay = &placed->lays[0];
	struct clipper *clipper = clipper_of_region(&lay->field->region);
	struct measured record, start, library;
	long faces = 0;
	for (int run = 0; run < MEASURE_RUNS; run++) {
		record.runs[run] = seconds_of_run("record", PLAN);
		start.runs[run] = seconds_of_run("help", NULL);
		double before = measure_seconds();
		clipper_area(clipper, lay->tiling, &faces);
		library.runs[run] = measure_seconds() - before;
	}
	printf("%s: %zu panels, %ld faces with tile\n", PLAN, lay->tiling->panel_count, faces);
	double ours = print_median("record, process and all", &record);
	print_median("of that the process alone", &start);
	double theirs = print_median("library, face by face", &library);
	printf("  ours : library %.1f\n", ours / theirs);
	clipper_free(clipper);
	arena_free(arena);
	return 0;
}
