#include "cli/job.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "pattern/pattern_check.h"
#include "plan/markup.h"
#include "plan/plan_parse.h"

enum status job_refuse(struct job *job, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	const char *text = arena_vprintf(job->arena, format, args);
	va_end(args);
	diag_error(&job->diags, 0, "%s", text);
	return STATUS_INPUT;
}

/* One byte over the limit is enough to see that a plan is too long; the reader says so. Of the room
 * for it only what is read is ever touched. */
static bool read_stream(struct job *job, FILE *in, struct bytes *out_bytes)
{
	size_t most = MARKUP_MOST_BYTES + 1;
	char *text = arena_alloc(job->arena, most);
	*out_bytes = (struct bytes){text, fread(text, 1, most, in)};
	return !ferror(in);
}

enum status job_read_file(struct job *job, const char *path, struct bytes *out_bytes)
{
	FILE *in = fopen(path, "rb");
	bool is_read = in && read_stream(job, in, out_bytes);
	int reason = errno;
	if (in)
		fclose(in);
	if (is_read)
		return STATUS_OK;
	return job_refuse(job, "%s: cannot be read: %s", path, strerror(reason));
}

static enum status read_plan(struct job *job, const char *path)
{
	struct bytes bytes;
	job->plan_diags = diag_list_in(job->arena, path);
	if (strcmp(path, "-") != 0) {
		enum status status = job_read_file(job, path, &bytes);
		if (status != STATUS_OK)
			return status;
	} else if (!read_stream(job, stdin, &bytes)) {
		return job_refuse(job, "standard input: cannot be read: %s", strerror(errno));
	}
	job->plan_bytes = bytes;
	return plan_parse(job->arena, bytes.data, bytes.length, &job->plan_diags, &job->plan);
}

/* The command line wins over the plan; English where neither says. */
static enum status load_words(struct job *job)
{
	const char *asked = job->options.values[OPTION_WORDS], *stated = job->plan->sheets.words;
	job->words = words_load(job->arena, asked ? asked : stated ? stated : "en", &job->diags);
	return job->words ? STATUS_OK : STATUS_INPUT;
}

static enum status load_rules(struct job *job)
{
	job->rules = rules_load(job->arena, job->plan->rules ? job->plan->rules : "us",
	                        plan_has_inches(job->plan), &job->plan_diags);
	return job->rules ? STATUS_OK : STATUS_INPUT;
}

enum status job_run(struct job *job)
{
	enum status read = read_plan(job, job->options.operands[0]);
	if (!job->plan)
		return read;
	/* A plan with errors goes on as far as errors of geometry can be found in it. */
	enum status words = load_words(job), rules = load_rules(job);
	enum status status = site_build(job->arena, job->plan, &job->plan_diags, &job->site);
	enum status pattern = pattern_check(job->arena, job->plan, &job->plan_diags);
	if (read != STATUS_OK || status != STATUS_OK || pattern != STATUS_OK ||
	    words != STATUS_OK || rules != STATUS_OK)
		return STATUS_INPUT;
	job->placed = placed_from_site(job->arena, job->site, job->rules);
	job->findings = findings_judge(job->arena, job->placed, job->words);
	return STATUS_OK;
}

const char *job_plan_name(const struct job *job)
{
	const char *path = job->options.operands[0], *slash = strrchr(path, '/');
	return slash ? slash + 1 : path;
}
