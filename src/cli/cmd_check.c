/* cmd_check.c - what the trade's rules say of a plan, one line a finding. */
#include "cli/command.h"
#include "cli/draw_options.h"
#include "cli/publish.h"

enum exit_code command_check(struct job *job)
{
	enum status status = job_run_undrawn(job);
	if (status != STATUS_OK)
		return command_end(job, status);
	struct strbuf text = strbuf_in(job->arena);
	findings_print(job->findings, job->plan_diags.file, &text);
	enum exit_code code = command_end(job, publish_stdout(strbuf_bytes(&text), &job->diags));
	return code == EXIT_DONE && findings_is_open(job->findings) ? EXIT_OPEN : code;
}
