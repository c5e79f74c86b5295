#include "words/words.h"

#include <stdlib.h>
#include <string.h>

#include "base/embedded.h"
#include "base/strbuf.h"
#include "rules/lines.h"

struct word {
	const char *key, *text;
	int line;
};

struct words {
	const char *language;
	ARRAY_OF(struct word) words; /* by key */
};

static int compare_words(const void *a, const void *b)
{
	const struct word *p = a, *q = b;
	int order = strcmp(p->key, q->key);
	return order != 0 ? order : (p->line > q->line) - (p->line < q->line);
}

static void read_entry(struct words *words, struct lines *lines, struct diag_list *diags)
{
	char *text = lines->text;
	const char *key = lines_word(&text);
	const char *equals = lines_word(&text);
	if (strcmp(equals, "=") != 0 || *text == '\0') {
		diag_error(diags, lines->number, "expected `key = text`");
		return;
	}
	*array_push(lines->arena, &words->words) = (struct word){key, text, lines->number};
}

static void read_continuation(struct words *words, struct lines *lines, struct diag_list *diags)
{
	if (words->words.count == 0) {
		diag_error(diags, lines->number, "a line that is set in needs a text above it");
		return;
	}
	struct word *last = &words->words.items[words->words.count - 1];
	last->text = arena_printf(lines->arena, "%s %s", last->text, lines->text);
}

static void check_unique(const struct words *words, struct diag_list *diags)
{
	for (size_t i = 1; i < words->words.count; i++) {
		const struct word *word = &words->words.items[i];
		if (strcmp(word->key, words->words.items[i - 1].key) == 0)
			diag_error(diags, word->line, "key `%s` is there already, on line %d",
			           word->key, words->words.items[i - 1].line);
	}
}

const struct words *words_parse(struct arena *arena, const char *language, const char *text,
                                struct diag_list *diags)
{
	struct words *words = ARENA_NEW(arena, struct words);
	size_t faults = diags->diags.count;
	words->language = arena_strdup(arena, language);
	for (struct lines lines = lines_of(arena, text); lines_next(&lines);) {
		if (lines.is_set_in)
			read_continuation(words, &lines, diags);
		else
			read_entry(words, &lines, diags);
	}
	if (words->words.count > 0)
		qsort(words->words.items, words->words.count, sizeof *words->words.items,
		      compare_words);
	check_unique(words, diags);
	return diags->diags.count == faults ? words : NULL;
}

const struct words *words_load(struct arena *arena, const char *language, struct diag_list *diags)
{
	const struct embedded *file =
		embedded_find(arena_printf(arena, "words/%s.words", language));
	if (file == NULL) {
		diag_error(diags, 0, "no words for the language `%s`", language);
		return NULL;
	}
	struct diag_list faults = diag_list_in(arena, file->name);
	const struct words *words = words_parse(arena, language, (const char *)file->data, &faults);
	lines_pass_faults(&faults, diags);
	return words;
}

/* Two fifths of a text's length, in words of dots. */
static const char *filling(struct arena *arena, const char *text)
{
	struct strbuf dots = strbuf_in(arena);
	for (size_t i = 0; i < strlen(text) * 2 / 5; i++)
		strbuf_add(&dots, i % 6 == 5 ? " " : "·");
	return dots.text;
}

const struct words *words_pseudo(struct arena *arena, const struct words *from)
{
	struct words *words = ARENA_NEW(arena, struct words);
	words->language = arena_printf(arena, "%s-pseudo", from->language);
	for (size_t i = 0; i < from->words.count; i++) {
		struct word word = from->words.items[i];
		word.text = arena_printf(arena, "⟦%s%s⟧", word.text, filling(arena, word.text));
		*array_push(arena, &words->words) = word;
	}
	return words;
}

const char *words_language(const struct words *words)
{
	return words->language;
}

static int compare_key(const void *key, const void *word)
{
	return strcmp(key, ((const struct word *)word)->key);
}

static const struct word *find(const struct words *words, const char *key)
{
	if (words->words.count == 0)
		return NULL;
	return bsearch(key, words->words.items, words->words.count, sizeof *words->words.items,
	               compare_key);
}

bool words_has(const struct words *words, const char *key)
{
	return find(words, key) != NULL;
}

const char *words_find(const struct words *words, const char *key)
{
	const struct word *word = find(words, key);
	return word != NULL ? word->text : key;
}

const char *words_key_at(const struct words *words, size_t index)
{
	return index < words->words.count ? words->words.items[index].key : NULL;
}

/* ---- filling ---- */

/* The inside of one pair of braces, without them. */
struct slot {
	const char *text;
	size_t length;
};

static const struct word_arg *arg_of(struct slot slot, const struct word_arg *args, size_t count)
{
	size_t length = 0;
	while (length < slot.length && slot.text[length] != '|')
		length++;
	for (size_t i = 0; i < count; i++)
		if (strlen(args[i].name) == length && strncmp(args[i].name, slot.text, length) == 0)
			return &args[i];
	return NULL;
}

static void add_choice(struct strbuf *out, struct slot slot, const char *first, bool is_one)
{
	const char *end = slot.text + slot.length;
	const char *one = first + 1;
	const char *bar = memchr(one, '|', (size_t)(end - one));
	const char *one_end = bar != NULL ? bar : end;
	const char *many = bar != NULL ? bar + 1 : end;
	if (is_one)
		strbuf_add_bytes(out, one, (size_t)(one_end - one));
	else
		strbuf_add_bytes(out, many, (size_t)(end - many));
}

static void add_slot(struct strbuf *out, struct slot slot, const struct word_arg *args,
                     size_t arg_count)
{
	const struct word_arg *arg = arg_of(slot, args, arg_count);
	const char *bar = memchr(slot.text, '|', slot.length);
	if (arg == NULL)
		strbuf_printf(out, "{%.*s}", (int)slot.length, slot.text);
	else if (bar != NULL)
		add_choice(out, slot, bar, strcmp(arg->text, "1") == 0);
	else
		strbuf_add(out, arg->text);
}

const char *words_format(struct arena *arena, const struct words *words, const char *key,
                         const struct word_arg *args, size_t arg_count)
{
	struct strbuf out = strbuf_in(arena);
	for (const char *p = words_find(words, key); *p != '\0';) {
		size_t plain = strcspn(p, "{");
		strbuf_add_bytes(&out, p, plain);
		p += plain;
		if (*p == '\0')
			break;
		const char *end = strchr(p, '}');
		if (p[1] == '{' || end == NULL) {
			strbuf_add_char(&out, '{');
			p += p[1] == '{' ? 2 : 1;
			continue;
		}
		add_slot(&out, (struct slot){p + 1, (size_t)(end - p - 1)}, args, arg_count);
		p = end + 1;
	}
	return out.text;
}
