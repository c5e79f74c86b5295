/* No memory for GEOS: the process ends as it does where an arena has none, whichever
 * allocation of the library it is that fails. */
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <new>

extern "C" {
#include "geometry/overlay.h"
#include "support/program.h"
}

/* There where leaks are looked for. */
extern "C" void __lsan_disable(void) __attribute__((weak));

static long allocations_left = -1; /* before one fails; less than 0: none does */

/* Of this size and more are the library's handles, which overlay.c makes sure of. */
static const std::size_t HANDLE_BYTES = 1024;

/* Stands before the library's own. */
void *operator new(std::size_t size)
{
	if (size < HANDLE_BYTES && allocations_left == 0)
		throw std::bad_alloc();
	allocations_left -= size < HANDLE_BYTES && allocations_left > 0;
	if (void *block = std::malloc(size ? size : 1))
		return block;
	throw std::bad_alloc();
}

void operator delete(void *block) noexcept
{
	std::free(block);
}

void operator delete(void *block, std::size_t) noexcept
{
	std::free(block);
}

static void add_squares(struct arena *arena)
{
	struct point corners[][4] = {
		{{0, 0}, {10, 0}, {10, 10}, {0, 10}},
		{{5, 5}, {15, 5}, {15, 15}, {5, 15}},
	};
	struct region squares[2];
	for (int i = 0; i < 2; i++)
		squares[i] = region_from_ring(arena, ring{corners[i], 4});
	struct region joined = overlay_union(arena, &squares[0], &squares[1]);
	overlay_offset(arena, &joined, 1, OVERLAY_ROUND);
}

/* The exit status with so many allocations to go. */
static int status_after(long allocations)
{
	pid_t child = fork();
	assert_true(child >= 0);
	if (child == 0) {
		struct arena *arena = arena_new();
		if (!std::freopen("/dev/null", "w", stderr))
			_exit(99);
		/* What the library loses of its own on the way out is not asked here. */
		if (__lsan_disable)
			__lsan_disable();
		allocations_left = allocations;
		add_squares(arena);
		_exit(0);
	}
	int status = 0;
	assert_int_equal(waitpid(child, &status, 0), child);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

static void test_each_allocation_fails(void **state)
{
	(void)state;
	enum { STEP = 7, MOST = 1000000 };
	long allowed = 0, failures = 0;
	for (int status = 3; status != 0; allowed += STEP, failures++) {
		status = status_after(allowed);
		if (status != 0 && status != 3)
			fail_msg("after %ld allocations the process ended with %d", allowed,
			         status);
		assert_true(allowed < MOST);
	}
	assert_true(failures > 10);
}

int main()
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_each_allocation_fails)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
