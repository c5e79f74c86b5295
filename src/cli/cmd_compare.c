/* cmd_compare.c - what changed between two plans: said on standard output, listed and drawn. */
#include <string.h>

#include "cli/command.h"
#include "cli/publish.h"
#include "compare/comparison_write.h"

/* The base is a job of its own, in the words of the revised plan. */
static struct job base_of(const struct job *job)
{
	return (struct job){.arena = job->arena,
	                    .diags = diag_list_in(job->arena, job->diags.file),
	                    .plan_diags = diag_list_in(job->arena, job->plan_diags.file),
	                    .command = job->command,
	                    .options = job->options};
}

static enum status read_both(struct job *job, struct job *base)
{
	const char **names = job->options.operands;
	if (strcmp(names[0], "-") == 0 && strcmp(names[1], "-") == 0)
		return job_refuse(job,
		                  "both plans from standard input, expected one file at least");
	enum status base_status = job_run(base);
	job->options.operands = &names[1];
	enum status status = job_run(job);
	return base_status != STATUS_OK ? base_status : status;
}

static const struct floor_state *state_of(struct job *job, const struct words *words)
{
	return floor_state_placed(job->arena, job->plan_bytes, job->placed, words);
}

static enum status compare(struct job *job, struct job *base)
{
	struct arena *arena = job->arena;
	const struct floor_state *before = state_of(base, job->words),
				 *after = state_of(job, job->words);
	const struct comparison *comparison = comparison_of(arena, before, after, job->words);
	struct bytes text = comparison_text(arena, comparison, job->words);
	return publish_stdout(text, &job->diags);
}

enum exit_code command_compare(struct job *job)
{
	struct job base = base_of(job);
	enum status status = read_both(job, &base);
	if (status == STATUS_OK)
		status = compare(job, &base);
	command_end(&base, status);
	return command_end(job, status);
}
