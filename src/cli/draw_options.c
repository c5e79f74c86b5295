#include "cli/draw_options.h"

#include <string.h>

#include "cli/command.h"
#include "sheets/drawing_scale.h"
#include "sheets/sheet_set.h"

static const char *const FORM_NAMES[] = {
	[DRAW_SVG] = "svg",   [DRAW_PDF] = "pdf",     [DRAW_PNG] = "png",
	[DRAW_HTML] = "html", [DRAW_TRACE] = "trace", [DRAW_CSV] = "csv"};

static void read_form(struct job *job, struct draw_options *options, const char *name)
{
	const char *expected = "svg, pdf, png or html";
	bool has_csv = strstr(job->command->forms, FORM_NAMES[DRAW_CSV]) != NULL;
	for (int i = 0; i < DRAW_FORMS; i++)
		if (strcmp(name, FORM_NAMES[i]) == 0 && (i != DRAW_CSV || has_csv)) {
			options->forms[i] = true;
			return;
		}
	if (has_csv)
		expected = "svg, pdf, png, html or csv";
	job_refuse(job, "option --as: `%s` is no form of a sheet, expected %s", name, expected);
}

static void read_forms(struct job *job, struct draw_options *options)
{
	const char *asked = job->options.values[OPTION_AS];
	size_t count;
	const char **names = options_split(job->arena, asked ? asked : "svg,pdf,png,html", &count);
	/* What goes with sheets where nobody asks for less. */
	options->forms[DRAW_CSV] = !asked;
	for (size_t i = 0; i < count; i++)
		read_form(job, options, names[i]);
}

static bool is_file_name(const char *name)
{
	return strchr(name, '/') || strchr(name, '.');
}

static void read_style_file(struct job *job, const char *path, struct style *out_style)
{
	struct bytes bytes;
	struct diag_list diags = diag_list_in(job->arena, path);
	if (job_read_file(job, path, &bytes) != STATUS_OK)
		return;
	if (style_parse(job->arena, bytes, path, &diags, out_style) != STATUS_OK)
		job_refuse(job, "option --style: %s is no style", path);
	diag_print(&diags, stderr);
}

/* A value with the place that it came from, for messages. */
struct setting {
	const char *text; /* NULL: nobody said */
	struct diag_list *diags;
	int line;
};

static void set_paper(struct job *job, struct draw_options *options, struct setting s)
{
	options->paper = paper_size_find(s.text);
	if (!options->paper)
		diag_error(s.diags, s.line, "paper `%s` is not known, expected one of: %s", s.text,
		           paper_size_names(job->arena));
}

static void set_scale(struct job *job, struct draw_options *options, struct setting s)
{
	(void)job;
	if (!drawing_scale_parse(s.text, &options->scale))
		diag_error(s.diags, s.line, "scale `%s` is none, expected 1:50 or 1/4in", s.text);
}

static void set_style(struct job *job, struct draw_options *options, struct setting s)
{
	struct style *style = ARENA_NEW(job->arena, struct style);
	options->style = style;
	if (is_file_name(s.text))
		read_style_file(job, s.text, style);
	else if (style_embedded(job->arena, s.text, s.line, s.diags, style) != STATUS_OK)
		options->style = NULL;
}

/* Settings that command line or plan may give. */
static const struct {
	enum option option;
	void (*set)(struct job *, struct draw_options *, struct setting);
} SETTINGS[] = {{OPTION_PAPER, set_paper}, {OPTION_SCALE, set_scale}, {OPTION_STYLE, set_style}};

enum { SETTING_COUNT = sizeof SETTINGS / sizeof SETTINGS[0] };

static size_t error_count(const struct job *job)
{
	return job->diags.diags.count + job->plan_diags.diags.count;
}

enum status draw_options_read(struct job *job, struct draw_options *out_options)
{
	size_t before = error_count(job);
	const char *folder = job->options.values[OPTION_OUT];
	const char *sheets = job->options.values[OPTION_SHEET];
	*out_options = (struct draw_options){.folder = folder ? folder : "."};
	read_forms(job, out_options);
	if (sheets)
		out_options->sheets = options_split(job->arena, sheets, &out_options->sheet_count);
	for (int i = 0; i < SETTING_COUNT; i++) {
		const char *asked = job->options.values[SETTINGS[i].option];
		if (asked)
			SETTINGS[i].set(job, out_options, (struct setting){asked, &job->diags, 0});
	}
	return error_count(job) == before ? STATUS_OK : STATUS_INPUT;
}

/* What the plan states of a setting; NULL: nothing. */
static const char *stated(const struct plan_sheets *sheets, enum option option)
{
	switch (option) {
	case OPTION_PAPER:
		return sheets->paper;
	case OPTION_SCALE:
		return sheets->scale;
	default:
		return sheets->style;
	}
}

static const char *by_default(const struct site *site, enum option option)
{
	if (option == OPTION_PAPER)
		return site->inches ? "tabloid" : "a3";
	return option == OPTION_STYLE ? "paper" : NULL;
}

enum status draw_options_resolve(struct job *job, struct draw_options *options)
{
	size_t before = error_count(job);
	for (int i = 0; i < SETTING_COUNT; i++) {
		enum option option = SETTINGS[i].option;
		const char *text = stated(&job->plan->sheets, option);
		struct setting s = {text, &job->plan_diags, job->plan->sheets.line};
		if (job->options.values[option])
			continue; /* the command line wins, right or wrong */
		if (!text)
			s = (struct setting){by_default(job->site, option), &job->diags, 0};
		if (s.text)
			SETTINGS[i].set(job, options, s);
	}
	for (size_t i = 0; i < options->sheet_count; i++)
		if (sheet_set_check(job->site, job->command->run == command_compare,
		                    options->sheets[i], &job->diags) != STATUS_OK)
			continue; /* the others may be wrong too */
	return error_count(job) == before ? STATUS_OK : STATUS_INPUT;
}

enum status job_run_drawn(struct job *job, struct draw_options *options)
{
	enum status status = job_run(job);
	enum status resolved = job->site ? draw_options_resolve(job, options) : STATUS_OK;
	return status == STATUS_OK ? resolved : status;
}

enum status job_run_undrawn(struct job *job)
{
	return job_run_drawn(job, &(struct draw_options){0});
}
