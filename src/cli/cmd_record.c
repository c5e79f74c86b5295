/* cmd_record.c - the placed floor in numbers, and points to stake. */
#include "cli/command.h"
#include "cli/publish.h"
#include "record/record.h"

/* Both outputs are made before either is written. */
static enum status write_record(struct job *job)
{
	const char *out = job->options.values[OPTION_OUT];
	const char *points_path = job->options.values[OPTION_POINTS];
	struct bytes record =
		record_write(job->arena, job->placed, job->findings, job_plan_name(job));
	struct bytes points = record_points(job->arena, job->placed);
	enum status status =
		points_path ? publish_file(points_path, points, &job->diags) : STATUS_OK;
	if (status != STATUS_OK)
		return status;
	return out ? publish_file(out, record, &job->diags) : publish_stdout(record, &job->diags);
}

enum exit_code command_record(struct job *job)
{
	enum status status = job_run(job);
	return command_end(job, status == STATUS_OK ? write_record(job) : status);
}
