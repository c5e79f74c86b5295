/* job.h - one run of the program: the command line, the plan, and what comes of it.
 * Owns: everything lives in the job's arena, released at its end; nothing is global.
 * Invariant: each model is const once its step has passed; a step that failed has said
 * why in one of the two lists. */
#ifndef CLI_JOB_H
#define CLI_JOB_H
#include "base/strbuf.h"
#include "cli/options.h"
#include "findings/finding.h"
#include "layout/placed.h"

struct command;

struct job {
	struct arena *arena;
	struct diag_list diags;      /* of the command line and of outputs */
	struct diag_list plan_diags; /* of the plan, by its lines */
	const struct command *command;
	struct options options;
	struct bytes plan_bytes;
	const struct plan *plan;
	const struct site *site;
	const struct rules *rules;
	const struct words *words;
	const struct placed *placed;
	const struct findings *findings;
};

/* Reads the plan that the first operand names (`-`: standard input), resolves, places and
 * judges it: all models of the job. */
CHECK_USED enum status job_run(struct job *);
/* Says a fault of the command line; gives the status to return with it. */
enum status job_refuse(struct job *, const char *format, ...) CHECK_PRINTF(2, 3);
/* All bytes of a file; STATUS_INPUT where it cannot be read. */
CHECK_USED enum status job_read_file(struct job *, const char *path, struct bytes *out_bytes);
/* Name of the plan's file without its folders. */
const char *job_plan_name(const struct job *);

#endif
