#include "cli/command.h"

#include <string.h>

static const struct command COMMANDS[] = {
	{"draw", "PLAN.xml", "draw the sheets", OPTIONS_OF_DRAW,
         "svg,pdf,png,html (all where it is not given), trace: one drawn thing a line, to compare",
         command_draw},
	{"check", "PLAN.xml", "say what the trade's rules find", 0, NULL, command_check},
	{"count", "PLAN.xml", "count tile, membrane and joints", OPTION_BIT(OPTION_AS),
         "text|csv|xml", command_count},
	{"compare", "BASE.xml REVISED.xml", "draw what changed between two plans", OPTIONS_OF_DRAW,
         "svg,pdf,png,html,csv (all where it is not given), trace", command_compare},
	{"record", "PLAN.xml", "write the placed floor",
         OPTION_BIT(OPTION_OUT) | OPTION_BIT(OPTION_POINTS), NULL, command_record},
	{"help", "[COMMAND]", "say how a command is used", 0, NULL, command_help},
	{"--version", "", "say which version this is", 0, NULL, command_version},
};

enum { COMMAND_COUNT = sizeof COMMANDS / sizeof COMMANDS[0] };

const struct command *command_at(size_t index)
{
	return index < COMMAND_COUNT ? &COMMANDS[index] : NULL;
}

static const char *alias(const char *name)
{
	return strcmp(name, "--help") == 0 || strcmp(name, "-h") == 0 ? "help" : name;
}

const struct command *command_find(const char *name)
{
	for (size_t i = 0; i < COMMAND_COUNT; i++)
		if (strcmp(COMMANDS[i].name, alias(name)) == 0)
			return &COMMANDS[i];
	return NULL;
}

enum exit_code command_end(struct job *job, enum status status)
{
	diag_print(&job->plan_diags, stderr);
	diag_print(&job->diags, stderr);
	switch (status) {
	case STATUS_OK:
		return EXIT_DONE;
	case STATUS_INPUT:
		return EXIT_INPUT;
	default:
		return EXIT_OUTPUT;
	}
}
