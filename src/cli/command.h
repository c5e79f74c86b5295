/* command.h - the commands of the program, one table.
 * A command gives its exit code; what it says of a plan goes to standard error as
 * diagnostics, what it was asked for to its outputs. */
#ifndef CLI_COMMAND_H
#define CLI_COMMAND_H
#include "cli/job.h"

enum exit_code {
	EXIT_DONE = 0,
	EXIT_OPEN = 1,   /* check: a finding stops or asks */
	EXIT_INPUT = 2,  /* command line or plan wrong */
	EXIT_OUTPUT = 3, /* an output could not be written */
};

struct command {
	const char *name;
	const char *operands; /* what it wants beside options */
	const char *about;
	unsigned options;  /* set of OPTION_BIT */
	const char *forms; /* what --as takes; NULL: not an option of it */
	enum exit_code (*run)(struct job *);
};

const struct command *command_find(const char *name); /* NULL: no such command */
const struct command *command_at(size_t index);       /* NULL past the last */

enum exit_code command_draw(struct job *);
enum exit_code command_check(struct job *);
enum exit_code command_count(struct job *);
enum exit_code command_record(struct job *);
enum exit_code command_compare(struct job *);
enum exit_code command_help(struct job *);
enum exit_code command_version(struct job *);

/* Prints the job's diagnostics and turns the status of its last step into an exit code. */
enum exit_code command_end(struct job *, enum status);

#endif
