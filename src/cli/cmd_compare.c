/* cmd_compare.c - the command that will draw what changed between two plans. */
#include "cli/command.h"

enum exit_code command_compare(struct job *job)
{
	return command_end(job, job_refuse(job, "compare: not built yet"));
}
