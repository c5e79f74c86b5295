/* measure.h - what measurements share: the processor's time, medians, memory of a child. */
#ifndef SUPPORT_MEASURE_H
#define SUPPORT_MEASURE_H
#include <stdlib.h>
#include <time.h>

enum { MEASURE_RUNS = 9 };

struct measured {
	double runs[MEASURE_RUNS];
};

/* Of this process alone: what else the machine does is no part of it. */
static inline double measure_seconds(void)
{
	struct timespec now;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
	return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static inline int measure_by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

/* Puts the runs in order. */
static inline double measured_median(struct measured *m)
{
	qsort(m->runs, MEASURE_RUNS, sizeof *m->runs, measure_by_value);
	return m->runs[MEASURE_RUNS / 2];
}

#endif
