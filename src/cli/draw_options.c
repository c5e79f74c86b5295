#include "cli/draw_options.h"

#include <string.h>

#include "sheets/drawing_scale.h"
#include "sheets/sheet_set.h"

static const char *const FORM_NAMES[] = {
	[DRAW_SVG] = "svg", [DRAW_PDF] = "pdf", [DRAW_PNG] = "png",
	[DRAW_TRACE] = "trace"};

static void read_form(struct job *job, struct draw_options *options, const char *name)
{
	for (int i = 0; i < DRAW_FORMS; i++)
		if (strcmp(name, FORM_NAMES[i]) == 0) {
			options->forms[i] = true;
			return;
		}
	if (strcmp(name, "html") == 0)
		job_refuse(job, "option --as: html is not built yet, expected svg, pdf or png");
	else
		job_refuse(job, "option --as: `%s` is no form of a sheet, expected svg, pdf or png",
		           name);
}

static void read_forms(struct job *job, struct draw_options *options)
{
	const char *asked = job->options.values[OPTION_AS];
	size_t count;
	const char **names = options_split(job->arena, asked ? asked : "svg,pdf,png", &count);
	for (size_t i = 0; i < count; i++)
		read_form(job, options, names[i]);
}

enum status draw_options_read(struct job *job, struct draw_options *out_options)
{
	size_t before = job->diags.diags.count;
	const char *folder = job->options.values[OPTION_OUT];
	const char *sheets = job->options.values[OPTION_SHEET];
	*out_options = (struct draw_options){.folder = folder ? folder : "."};
	read_forms(job, out_options);
	if (sheets)
		out_options->sheets = options_split(job->arena, sheets, &out_options->sheet_count);
	return job->diags.diags.count == before ? STATUS_OK : STATUS_INPUT;
}

/* A value with the place that it came from, for messages. */
struct setting {
	const char *text; /* NULL: nobody said */
	struct diag_list *diags;
	int line;
};

static struct setting setting_of(struct job *job, enum option option, const char *stated)
{
	const char *asked = job->options.values[option];
	if (asked || !stated)
		return (struct setting){asked, &job->diags, 0};
	return (struct setting){stated, &job->plan_diags, job->plan->sheets.line};
}

static void resolve_paper(struct job *job, struct draw_options *options)
{
	struct setting s = setting_of(job, OPTION_PAPER, job->plan->sheets.paper);
	const char *name = s.text ? s.text : job->site->inches ? "tabloid" : "a3";
	options->paper = paper_size_find(name);
	if (!options->paper)
		diag_error(s.diags, s.line, "paper `%s` is not known, expected one of: %s", name,
		           paper_size_names(job->arena));
}

static void resolve_scale(struct job *job, struct draw_options *options)
{
	struct setting s = setting_of(job, OPTION_SCALE, job->plan->sheets.scale);
	if (s.text && !drawing_scale_parse(s.text, &options->scale))
		diag_error(s.diags, s.line, "scale `%s` is none, expected 1:50 or 1/4in", s.text);
}

static bool is_file_name(const char *name)
{
	return strchr(name, '/') || strchr(name, '.');
}

static enum status read_style_file(struct job *job, const char *path, struct style *out_style)
{
	struct bytes bytes;
	enum status status = job_read_file(job, path, &bytes);
	if (status != STATUS_OK)
		return status;
	struct diag_list diags = diag_list_in(job->arena, path);
	status = style_parse(job->arena, bytes, path, &diags, out_style);
	diag_print(&diags, stderr);
	return status;
}

static enum status resolve_style(struct job *job, struct draw_options *options)
{
	struct setting s = setting_of(job, OPTION_STYLE, job->plan->sheets.style);
	struct style *style = ARENA_NEW(job->arena, struct style);
	options->style = style;
	if (s.text && is_file_name(s.text))
		return read_style_file(job, s.text, style);
	return style_embedded(job->arena, s.text ? s.text : "paper", s.diags, style);
}

enum status draw_options_resolve(struct job *job, struct draw_options *options)
{
	size_t before = job->diags.diags.count + job->plan_diags.diags.count;
	resolve_paper(job, options);
	resolve_scale(job, options);
	enum status style = resolve_style(job, options), sheets = STATUS_OK;
	for (size_t i = 0; i < options->sheet_count; i++)
		if (sheet_set_check(job->site, options->sheets[i], &job->diags) != STATUS_OK)
			sheets = STATUS_INPUT;
	if (style != STATUS_OK || sheets != STATUS_OK)
		return style != STATUS_OK ? style : sheets;
	return job->diags.diags.count + job->plan_diags.diags.count == before ? STATUS_OK
	                                                                      : STATUS_INPUT;
}
