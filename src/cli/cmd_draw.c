/* cmd_draw.c - the sheets of a plan: drawn, replayed to memory, published as one set. */
#include "cli/command.h"
#include "cli/sheet_files.h"

static enum status draw(struct job *job, const struct draw_options *options)
{
	struct sheet_files out = {.job = job};
	enum status status = sheet_files_draw(&out, options, NULL);
	if (status != STATUS_OK)
		return status;
	return publish_set(options->folder, out.files.items, out.files.count, &job->diags);
}

/* All that is wrong is said at once: options that need no plan, the plan, then the rest. */
enum exit_code command_draw(struct job *job)
{
	struct draw_options options;
	enum status asked = draw_options_read(job, &options);
	enum status status = job_run_drawn(job, &options);
	if (status == STATUS_OK)
		status = asked;
	return command_end(job, status == STATUS_OK ? draw(job, &options) : status);
}
