/* cmd_help.c - help and --version, printed from the tables of commands and options. */
#include "cli/command.h"
#include "cli/publish.h"
#include "cli/version.h"

static void add_options(struct strbuf *text, unsigned options)
{
	for (int i = 0; i < OPTION_COUNT; i++)
		if (options & OPTION_BIT(i)) {
			struct option_text option = option_text((enum option)i);
			strbuf_printf(text, "  %-8s %-18s %s\n", option.name, option.value,
			              option.about);
		}
}

static void add_command(struct strbuf *text, const struct command *command)
{
	strbuf_printf(text, "usage: jurystick %s%s%s%s\n\n%s\n", command->name,
	              *command->operands ? " " : "", command->operands,
	              command->options ? " [OPTIONS]" : "", command->about);
	if (command->options)
		strbuf_add(text, "\n");
	add_options(text, command->options);
	if (command->forms)
		strbuf_printf(text, "\n--as takes: %s\n", command->forms);
}

static void add_overview(struct strbuf *text)
{
	strbuf_add(text, "jurystick draws shop drawings for tile over a cracked slab.\n\n");
	const struct command *command;
	for (size_t i = 0; (command = command_at(i)) != NULL; i++)
		strbuf_printf(text, "  jurystick %-9s %-22s %s\n", command->name, command->operands,
		              command->about);
	strbuf_add(text, "\n`-` reads the plan from standard input. "
	                 "`jurystick help COMMAND` lists its options.\n");
}

enum exit_code command_help(struct job *job)
{
	struct strbuf text = strbuf_in(job->arena);
	if (job->options.operand_count == 0) {
		add_overview(&text);
	} else {
		const char *name = job->options.operands[0];
		const struct command *command = command_find(name);
		if (!command)
			return command_end(job, job_refuse(job,
			                                   "%s: no such command, see "
			                                   "`jurystick help`",
			                                   name));
		add_command(&text, command);
	}
	return command_end(job, publish_stdout(strbuf_bytes(&text), &job->diags));
}

enum exit_code command_version(struct job *job)
{
	static const char TEXT[] = "jurystick " VERSION "\n";
	struct bytes bytes = {TEXT, sizeof TEXT - 1};
	return command_end(job, publish_stdout(bytes, &job->diags));
}
