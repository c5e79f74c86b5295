#include "cli/sheet_files.h"

#include "cli/progress.h"
#include "screen/screen.h"
#include "sheets/hatch_turn.h"
#include "sheets/sheet_set.h"

/* Dots an inch of a PNG: thin lines of 0.18 mm are one dot. Common practice. */
enum { PNG_DPI = 150 };

static void add_file(struct sheet_files *out, const char *stem, const char *end, struct bytes bytes)
{
	const char *name = arena_printf(out->job->arena, "%s.%s", stem, end);
	*array_push(out->job->arena, &out->files) = (struct output_file){name, bytes};
}

static enum status add_page(struct sheet_files *out, const struct draw_options *options,
                            const struct page *page)
{
	struct job *job = out->job;
	progress_say(page->name);
	if (options->forms[DRAW_SVG])
		add_file(out, page->name, "svg", canvas_svg(job->arena, page));
	if (options->forms[DRAW_TRACE])
		add_file(out, page->name, "trace", canvas_trace(job->arena, page));
	if (!options->forms[DRAW_PNG])
		return STATUS_OK;
	struct bytes bytes;
	enum status status = canvas_png(job->arena, page, PNG_DPI, &job->diags, &bytes);
	if (status == STATUS_OK)
		add_file(out, page->name, "png", bytes);
	return status;
}

/* The plan was read once already: what it says now is known to be well-formed. */
static enum status add_screen(struct sheet_files *out, const struct draft *draft,
                              const struct sheet_set *set)
{
	struct job *job = out->job;
	struct markup *plan;
	enum status status = markup_parse(job->arena, job->plan_bytes.data, job->plan_bytes.length,
	                                  &job->plan_diags, &plan);
	if (status == STATUS_OK)
		add_file(out, "set", "html", screen_write(draft, set, plan));
	return status;
}

/* Every form of every sheet in memory; nothing is written yet. */
static enum status replay(struct sheet_files *out, const struct draw_options *options,
                          const struct draft *draft, const struct sheet_set *set)
{
	struct job *job = out->job;
	enum status status = STATUS_OK;
	if (options->forms[DRAW_PDF]) {
		struct bytes bytes;
		status = canvas_pdf(job->arena, &set->document, set->pages, set->page_count,
		                    &job->diags, &bytes);
		if (status == STATUS_OK)
			add_file(out, "set", "pdf", bytes);
	}
	if (status == STATUS_OK && options->forms[DRAW_HTML])
		status = add_screen(out, draft, set);
	for (size_t i = 0; status == STATUS_OK && i < set->page_count; i++)
		status = add_page(out, options, &set->pages[i]);
	return status;
}

enum status sheet_files_draw(struct sheet_files *out, const struct draw_options *options,
                             const struct comparison *comparison)
{
	struct job *job = out->job;
	struct draft draft = {.arena = job->arena,
	                      .placed = job->placed,
	                      .site = job->site,
	                      .findings = job->findings,
	                      .words = job->words,
	                      .style = hatch_turned(job->arena, options->style, job->placed),
	                      .paper = options->paper,
	                      .scale = options->scale,
	                      .comparison = comparison};
	struct sheet_set set;
	enum status status = text_engine_embedded(job->arena, &draft.text);
	if (status == STATUS_OK)
		status = sheet_set_draw(&draft, options->sheets, options->sheet_count, progress_say,
		                        &job->diags, &set);
	if (status == STATUS_OK)
		status = replay(out, options, &draft, &set);
	progress_say("");
	return status;
}
