/* cmd_record.c - the placed floor in numbers, and points to stake. */
#include <string.h>

#include "cli/command.h"
#include "cli/draw_options.h"
#include "cli/publish.h"
#include "record/record.h"

/* Both outputs are made before either is written; they are put in place as one set. */
static enum status write_record(struct job *job)
{
	const char *out = job->options.values[OPTION_OUT];
	const char *points_path = job->options.values[OPTION_POINTS];
	if (out && points_path && strcmp(out, points_path) == 0)
		return job_refuse(job, "-o and --points name the same file: %s", out);
	const struct output_file files[] = {
		{out, record_write(job->arena, job->placed, job->findings, job_plan_name(job))},
		{points_path, record_points(job->arena, job->placed)},
	};
	return publish_files(files, points_path ? 2 : 1, &job->diags);
}

enum exit_code command_record(struct job *job)
{
	enum status status = job_run_undrawn(job);
	return command_end(job, status == STATUS_OK ? write_record(job) : status);
}
