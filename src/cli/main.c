/* main.c - finds the command and runs it. */
#include "cli/command.h"

static const char *PROGRAM = "jurystick";

static enum exit_code run(struct job *job, int argc, char **argv)
{
	const char *name = argc > 1 ? argv[1] : "help";
	job->command = command_find(name);
	if (!job->command)
		return command_end(job, job_refuse(job, "%s: no such command, see `%s help`", name,
		                                   PROGRAM));
	int used = argc > 1 ? 2 : 1;
	enum status status =
		options_parse(job->arena, argc - used, argv + used, job->command->options,
	                      job->command->operands, &job->diags, &job->options);
	return status == STATUS_OK ? job->command->run(job) : command_end(job, status);
}

int main(int argc, char **argv)
{
	struct job job = {.arena = arena_new()};
	job.diags = diag_list_in(job.arena, PROGRAM);
	job.plan_diags = diag_list_in(job.arena, PROGRAM);
	enum exit_code code = run(&job, argc, argv);
	arena_free(job.arena);
	return (int)code;
}
