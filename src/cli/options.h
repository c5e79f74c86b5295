/* options.h - the command line, read by one table that is also the help.
 * Owns: texts are borrowed from argv; the lists live in the arena given.
 * Fails: every fault of the command line is reported in `diags`, then STATUS_INPUT. */
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H
#include <stddef.h>

#include "base/diag.h"
#include "base/status.h"

enum option {
	OPTION_OUT,
	OPTION_AS,
	OPTION_SHEET,
	OPTION_PAPER,
	OPTION_SCALE,
	OPTION_STYLE,
	OPTION_WORDS,
	OPTION_POINTS,
	OPTION_COUNT
};

#define OPTION_BIT(option) (1u << (option))
#define OPTIONS_OF_DRAW                                                                   \
	(OPTION_BIT(OPTION_OUT) | OPTION_BIT(OPTION_AS) | OPTION_BIT(OPTION_SHEET) |      \
	 OPTION_BIT(OPTION_PAPER) | OPTION_BIT(OPTION_SCALE) | OPTION_BIT(OPTION_STYLE) | \
	 OPTION_BIT(OPTION_WORDS))

struct options {
	const char *values[OPTION_COUNT]; /* NULL: not given */
	const char **operands;
	size_t operand_count;
};

struct option_text {
	const char *name, *value, *about;
};

/* What help prints of an option: `-o DIR`, and what it does. */
struct option_text option_text(enum option);

/* Reads the words after the command's name. `allowed` is a set of OPTION_BITs;
 * `operands` says what the command wants beside options ("PLAN.xml"), one word each. */
CHECK_USED enum status options_parse(struct arena *, int argc, char **argv, unsigned allowed,
                                     const char *operands, struct diag_list *,
                                     struct options *out_options);

/* Splits a list by commas; an empty item is kept, so that the caller can refuse it. */
const char **options_split(struct arena *, const char *list, size_t *out_count);

#endif
