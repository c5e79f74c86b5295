/* fault_at.c - preloaded into the program: the n-th call of one function that puts outputs in
 * place fails, or a signal comes just before it. The file named by FAULT_CALLS grows by one
 * byte a call of that function.
 * FAULT_AT="FUNCTION N ERRNO": the call gives -1 with this errno.
 * FAULT_AT="FUNCTION N ERRNO on": and every later one too.
 * FAULT_AT="FUNCTION N -SIGNAL": the signal comes, then the call is made.
 * FUNCTION: write fsync fchmod mkstemp link rename; write counts files alone. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Whether this call of `function` is to fail. */
static bool is_faulty(const char *function)
{
	static int calls;
	char wanted[16], on[4] = "";
	int number = 0, fault = 0;
	const char *at = getenv("FAULT_AT");
	if (!at || sscanf(at, "%15s %d %d %3s", wanted, &number, &fault, on) < 3 ||
	    strcmp(wanted, function) != 0)
		return false;
	FILE *seen = fopen(getenv("FAULT_CALLS"), "a");
	if (!seen || fputc('.', seen) == EOF || fclose(seen) != 0)
		abort();
	calls++;
	if (*on ? calls < number : calls != number)
		return false;
	if (fault < 0) {
		signal(-fault, SIG_DFL); /* a shell's background ignores some */
		raise(-fault);
	} else {
		errno = fault;
	}
	return fault > 0;
}

static void *next(const char *function)
{
	return dlsym(RTLD_NEXT, function);
}

ssize_t write(int fd, const void *data, size_t size)
{
	ssize_t (*real)(int, const void *, size_t) =
		(ssize_t(*)(int, const void *, size_t))next("write");
	struct stat st;
	bool is_file = fstat(fd, &st) == 0 && S_ISREG(st.st_mode);
	return is_file && is_faulty("write") ? -1 : real(fd, data, size);
}

int fsync(int fd)
{
	int (*real)(int) = (int (*)(int))next("fsync");
	return is_faulty("fsync") ? -1 : real(fd);
}

int fchmod(int fd, mode_t mode)
{
	int (*real)(int, mode_t) = (int (*)(int, mode_t))next("fchmod");
	return is_faulty("fchmod") ? -1 : real(fd, mode);
}

int mkstemp(char *name)
{
	int (*real)(char *) = (int (*)(char *))next("mkstemp");
	return is_faulty("mkstemp") ? -1 : real(name);
}

int link(const char *from, const char *to)
{
	int (*real)(const char *, const char *) = (int (*)(const char *, const char *))next("link");
	return is_faulty("link") ? -1 : real(from, to);
}

int rename(const char *from, const char *to)
{
	int (*real)(const char *, const char *) =
		(int (*)(const char *, const char *))next("rename");
	return is_faulty("rename") ? -1 : real(from, to);
}
