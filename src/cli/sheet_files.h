/* sheet_files.h - the sheets of a plan, or of what changed, drawn and replayed to memory: the
 * files that a command then puts in place as one set.
 * Owns: the job's arena. Fails: as sheet_set_draw and the canvases do. */
#ifndef CLI_SHEET_FILES_H
#define CLI_SHEET_FILES_H
#include "cli/draw_options.h"
#include "cli/publish.h"

struct sheet_files {
	struct job *job;
	ARRAY_OF(struct output_file) files;
};

/* Adds the files of every sheet and form that was asked for; `comparison` NULL: the plan's own
 * set, else the sheets on which something has changed, clouded. */
CHECK_USED enum status sheet_files_draw(struct sheet_files *, const struct draw_options *,
                                        const struct comparison *);

#endif
