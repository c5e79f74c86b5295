#include "cli/progress.h"

#include <stdio.h>
#include <unistd.h>

void progress_say(const char *text)
{
	if (!isatty(STDERR_FILENO))
		return;
	fprintf(stderr, "\r\033[K%s", text);
	fflush(stderr);
}
