/* cmd_compare.c - what changed between two plans: said on standard output, listed and drawn. */
#include <string.h>

#include "cli/command.h"
#include "cli/progress.h"
#include "cli/sheet_files.h"
#include "compare/comparison_write.h"

/* The base is a job of its own: its errors are told apart. */
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

/* In the words of the revised plan. */
static const struct comparison *compare(const struct job *job, const struct job *base)
{
	struct arena *arena = job->arena;
	return comparison_of(arena,
	                     floor_state_placed(arena, base->plan_bytes, base->placed, job->words),
	                     floor_state_placed(arena, job->plan_bytes, job->placed, job->words),
	                     job->words, progress_say);
}

static void add(struct sheet_files *out, const char *name, struct bytes bytes)
{
	*array_push(out->job->arena, &out->files) = (struct output_file){name, bytes};
}

/* Where nothing has changed no file is written. */
static enum status write_comparison(struct job *job, const struct comparison *comparison,
                                    const struct draw_options *options)
{
	struct bytes text = comparison_text(job->arena, comparison, job->words);
	struct sheet_files out = {.job = job};
	if (comparison->line_count == 0)
		return publish_stdout(text, &job->diags);
	enum status status = sheet_files_draw(&out, options, comparison);
	if (status != STATUS_OK)
		return status;
	if (options->forms[DRAW_CSV])
		add(&out, "changes.csv", comparison_csv(job->arena, comparison));
	add(&out, NULL, text);
	return publish_set(options->folder, out.files.items, out.files.count, &job->diags);
}

/* All that is wrong is said at once, as draw does. */
enum exit_code command_compare(struct job *job)
{
	struct job base = base_of(job);
	struct draw_options options;
	enum status asked = draw_options_read(job, &options);
	enum status status = read_both(job, &base);
	enum status resolved = job->site ? draw_options_resolve(job, &options) : STATUS_OK;
	if (status == STATUS_OK)
		status = asked != STATUS_OK ? asked : resolved;
	if (status == STATUS_OK)
		status = write_comparison(job, compare(job, &base), &options);
	command_end(&base, status);
	return command_end(job, status);
}
