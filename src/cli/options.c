#include "cli/options.h"

#include <stdbool.h>
#include <string.h>

static const struct option_text OPTIONS[OPTION_COUNT] = {
	[OPTION_OUT] = {"-o", "PATH", "folder to draw into, or file to record into"},
	[OPTION_AS] = {"--as", "FORM[,FORM]", "forms of the output"},
	[OPTION_SHEET] = {"--sheet", "NAME[,NAME]", "only these sheets"},
	[OPTION_PAPER] = {"--paper", "NAME", "size of the paper"},
	[OPTION_SCALE] = {"--scale", "1:50|1/4in", "ratio, or inches of paper to a foot"},
	[OPTION_STYLE] = {"--style", "NAME|FILE", "how lines, hatches and texts look"},
	[OPTION_WORDS] = {"--words", "en|es", "language of the sheets"},
	[OPTION_POINTS] = {"--points", "FILE.csv", "points to stake out, as a table"},
};

struct option_text option_text(enum option option)
{
	return OPTIONS[option];
}

/* The option that `word` names; its length without a value in *out_length. */
static enum option find_option(const char *word, size_t *out_length)
{
	size_t length = strcspn(word, "=");
	*out_length = length;
	for (int i = 0; i < OPTION_COUNT; i++)
		if (strlen(OPTIONS[i].name) == length &&
		    strncmp(word, OPTIONS[i].name, length) == 0)
			return (enum option)i;
	return OPTION_COUNT;
}

struct reader {
	struct arena *arena;
	char **words;
	int count, next;
	unsigned allowed;
	struct diag_list *diags;
	struct options *options;
};

static void read_option(struct reader *r, const char *word)
{
	size_t length;
	enum option option = find_option(word, &length);
	const char *value = word[length] == '=' ? word + length + 1 : NULL;
	if (option == OPTION_COUNT || !(r->allowed & OPTION_BIT(option))) {
		diag_error(r->diags, 0, "option %.*s: this command has none of that name",
		           (int)length, word);
		return;
	}
	if (!value && r->next < r->count)
		value = r->words[r->next++];
	if (!value || !*value)
		diag_error(r->diags, 0, "option %s: value missing, expected %s",
		           OPTIONS[option].name, OPTIONS[option].value);
	else if (r->options->values[option])
		diag_error(r->diags, 0, "option %s: given twice", OPTIONS[option].name);
	else
		r->options->values[option] = value;
}

/* Words of `text`; with `optional` false only those without brackets. */
static size_t count_words(const char *text, bool optional)
{
	size_t count = 0;
	for (text += strspn(text, " "); *text; text += strspn(text, " ")) {
		count += optional || *text != '[';
		text += strcspn(text, " ");
	}
	return count;
}

static void check_operands(struct reader *r, const char *operands)
{
	size_t most = count_words(operands, true), given = r->options->operand_count;
	if (given < count_words(operands, false))
		diag_error(r->diags, 0, "file name missing, expected %s", operands);
	for (size_t i = most; i < given; i++)
		diag_error(r->diags, 0, "%s: one word too many, expected %s",
		           r->options->operands[i], most ? operands : "none");
}

enum status options_parse(struct arena *arena, int argc, char **argv, unsigned allowed,
                          const char *operands, struct diag_list *diags,
                          struct options *out_options)
{
	struct reader r = {arena, argv, argc, 0, allowed, diags, out_options};
	size_t before = diags->diags.count;
	bool only_operands = false;
	*out_options = (struct options){0};
	out_options->operands = ARENA_ARRAY(arena, const char *, (size_t)argc + 1);
	while (r.next < r.count) {
		const char *word = argv[r.next++];
		if (!only_operands && strcmp(word, "--") == 0)
			only_operands = true;
		else if (!only_operands && word[0] == '-' && word[1])
			read_option(&r, word);
		else
			out_options->operands[out_options->operand_count++] = word;
	}
	check_operands(&r, operands);
	return diags->diags.count == before ? STATUS_OK : STATUS_INPUT;
}

const char **options_split(struct arena *arena, const char *list, size_t *out_count)
{
	const char **items = ARENA_ARRAY(arena, const char *, strlen(list) + 1);
	size_t count = 0;
	for (;;) {
		size_t length = strcspn(list, ",");
		items[count++] = arena_strndup(arena, list, length);
		if (!list[length])
			break;
		list += length + 1;
	}
	*out_count = count;
	return items;
}
