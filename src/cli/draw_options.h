/* draw_options.h - what draw was asked for: command line over plan over defaults.
 * Owns: the job's arena. Fails: every wrong value is reported, those of the plan with the
 * line of its <sheets>; then STATUS_INPUT. */
#ifndef CLI_DRAW_OPTIONS_H
#define CLI_DRAW_OPTIONS_H
#include "cli/job.h"
#include "sheets/draft.h"

enum draw_form { DRAW_SVG, DRAW_PDF, DRAW_PNG, DRAW_HTML, DRAW_TRACE, DRAW_CSV, DRAW_FORMS };

struct draw_options {
	bool forms[DRAW_FORMS];
	const char *folder;
	const char **sheets; /* names; count 0: all */
	size_t sheet_count;
	const struct paper_size *paper;
	double scale; /* 0: the largest that fits */
	const struct style *style;
};

/* What needs no plan: forms, folder, names. */
CHECK_USED enum status draw_options_read(struct job *, struct draw_options *out_options);
/* The rest, once the plan is resolved. */
CHECK_USED enum status draw_options_resolve(struct job *, struct draw_options *);
/* job_run, and what the plan asks of its sheets resolved, where there is a plan. */
CHECK_USED enum status job_run_drawn(struct job *, struct draw_options *);
/* The same for a command that draws nothing: looked at all the same. */
CHECK_USED enum status job_run_undrawn(struct job *);

#endif
