/* cmd_count.c - quantities as text, CSV or XML. */
#include <string.h>

#include "cli/command.h"
#include "cli/draw_options.h"
#include "cli/publish.h"
#include "count/count.h"

enum count_form { COUNT_TEXT, COUNT_CSV, COUNT_XML, COUNT_FORMS };

static const char *const FORMS[] = {"text", "csv", "xml"};

static enum status read_form(struct job *job, enum count_form *out_form)
{
	const char *asked = job->options.values[OPTION_AS];
	*out_form = COUNT_TEXT;
	for (int i = 0; asked && i < COUNT_FORMS; i++)
		if (strcmp(asked, FORMS[i]) == 0) {
			*out_form = (enum count_form)i;
			asked = NULL;
		}
	if (!asked)
		return STATUS_OK;
	return job_refuse(job, "option --as: %s is no form of a count, expected text, csv or xml",
	                  asked);
}

static struct bytes count_bytes(struct job *job, enum count_form form)
{
	const struct count *count = count_from_placed(job->arena, job->placed, job->words);
	switch (form) {
	case COUNT_CSV:
		return count_csv(job->arena, count);
	case COUNT_XML:
		return count_xml(job->arena, count);
	default:
		return count_text(job->arena, count, job->words);
	}
}

enum exit_code command_count(struct job *job)
{
	enum count_form form;
	enum status asked = read_form(job, &form);
	enum status status = job_run_undrawn(job);
	if (status == STATUS_OK)
		status = asked;
	if (status == STATUS_OK)
		status = publish_stdout(count_bytes(job, form), &job->diags);
	return command_end(job, status);
}
