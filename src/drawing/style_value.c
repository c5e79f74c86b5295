#include "drawing/style_value.h"

#include <stddef.h>
#include <string.h>

static bool is_blank(char c)
{
	return c == ' ' || c == '\t' || c == '\r';
}

char *style_trimmed(char *line)
{
	for (char *c = line; *c; c++)
		if (*c == '#' && (c == line || (is_blank(c[-1]) && (is_blank(c[1]) || !c[1]))))
			*c = '\0';
	while (is_blank(*line))
		line++;
	size_t length = strlen(line);
	while (length > 0 && is_blank(line[length - 1]))
		line[--length] = '\0';
	return line;
}

bool style_value_split(struct style_value *v, char *text)
{
	while (is_blank(*text))
		text++;
	while (*text) {
		if (v->count == STYLE_WORDS)
			return false;
		v->words[v->count++] = text;
		while (*text && !is_blank(*text))
			text++;
		while (is_blank(*text))
			*text++ = '\0';
	}
	return true;
}

const char *style_value_next(struct style_value *v)
{
	return v->next < v->count ? v->words[v->next++] : NULL;
}

bool style_value_take(struct style_value *v, const char *word)
{
	if (v->next >= v->count || strcmp(v->words[v->next], word) != 0)
		return false;
	v->next++;
	return true;
}

bool style_thousandths(const char *text, int *out)
{
	enum { LARGEST = 100000 }; /* no length or angle of a style is near it */
	int value = 0, places = -1;
	if (*text < '0' || *text > '9')
		return false;
	for (; *text; text++) {
		if (*text == '.' && places < 0) {
			places = 0;
			continue;
		}
		if (*text < '0' || *text > '9' || value > LARGEST || places == 3)
			return false;
		value = value * 10 + (*text - '0');
		places += places >= 0;
	}
	for (places = places < 0 ? 0 : places; places < 3; places++)
		value *= 10;
	*out = value;
	return true;
}
