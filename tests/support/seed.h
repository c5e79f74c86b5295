/* seed.h - random numbers of a test: printed, and repeatable with JURYSTICK_SEED. */
#ifndef SUPPORT_SEED_H
#define SUPPORT_SEED_H
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

struct seed {
	uint64_t state;
};

static inline struct seed seed_start(const char *test)
{
	const char *given = getenv("JURYSTICK_SEED");
	uint64_t state = given ? strtoull(given, NULL, 10) : 20260402;
	printf("%s: JURYSTICK_SEED=%llu\n", test, (unsigned long long)state);
	return (struct seed){state};
}

/* splitmix64, public domain construction (Steele, Lea, Flood 2014). */
static inline uint64_t seed_next(struct seed *seed)
{
	uint64_t z = (seed->state += 0x9e3779b97f4a7c15u);
	z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
	z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
	return z ^ (z >> 31);
}

/* A whole number from 0 to below - 1. */
static inline int seed_below(struct seed *seed, int below)
{
	return (int)(seed_next(seed) % (uint64_t)below);
}

/* Uniform in [from, to). */
static inline double seed_between(struct seed *seed, double from, double to)
{
	return from + (to - from) * (double)(seed_next(seed) >> 11) / 9007199254740992.0;
}

#endif
