#include "sheets/drawing_scale.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Those of R-D25, and of R-D26 those that close its gaps where rooms are drawn. */
static const double METRIC[] = {5, 10, 20, 25, 40, 50, 75, 100, 200, 500, 1000, 0};
static const double METRIC_DETAIL[] = {0.5, 1, 2, 5, 10, 0};

static const struct {
	double scale;
	const char *text;
} INCHES[] = {
	{4, "3\" = 1'-0\""},      {8, "1 1/2\" = 1'-0\""},  {12, "1\" = 1'-0\""},
	{16, "3/4\" = 1'-0\""},   {24, "1/2\" = 1'-0\""},   {32, "3/8\" = 1'-0\""},
	{48, "1/4\" = 1'-0\""},   {64, "3/16\" = 1'-0\""},  {96, "1/8\" = 1'-0\""},
	{128, "3/32\" = 1'-0\""}, {192, "1/16\" = 1'-0\""}, {0, NULL},
};

static const struct {
	double scale;
	const char *text;
} INCHES_DETAIL[] = {
	{0.5, "24\" = 1'-0\""}, {1, "12\" = 1'-0\""},    {2, "6\" = 1'-0\""},
	{4, "3\" = 1'-0\""},    {8, "1 1/2\" = 1'-0\""}, {0, NULL},
};

double drawing_scale_at(bool inches, size_t index)
{
	return inches ? INCHES[index].scale : METRIC[index];
}

double detail_scale_at(bool inches, size_t index)
{
	return inches ? INCHES_DETAIL[index].scale : METRIC_DETAIL[index];
}

/* Digits only; at most four of them, so that no sum overflows. */
static const char *read_number(const char *text, long *out_number)
{
	char *end;
	if (*text < '0' || *text > '9')
		return NULL;
	*out_number = strtol(text, &end, 10);
	return end - text <= 4 ? end : NULL;
}

static bool parse_ratio(const char *text, double *out_scale)
{
	long paper, floor;
	text = read_number(text, &paper);
	if (!text || *text != ':')
		return false;
	text = read_number(text + 1, &floor);
	if (!text || *text || paper != 1 || floor < 1)
		return false;
	*out_scale = (double)floor;
	return true;
}

/* Inches of paper to a foot of floor: `3in`, `1/4in`, `1 1/2in`. */
static bool parse_inches(const char *text, double *out_scale)
{
	long whole = 0, over, under = 1;
	text = read_number(text, &over);
	if (text && *text == ' ') {
		whole = over;
		text = read_number(text + 1, &over);
		if (text && *text != '/')
			return false;
	}
	if (text && *text == '/')
		text = read_number(text + 1, &under);
	if (!text || strcmp(text, "in") != 0 || under < 1 || whole * under + over < 1)
		return false;
	*out_scale = 12.0 * (double)under / (double)(whole * under + over);
	return true;
}

bool drawing_scale_parse(const char *text, double *out_scale)
{
	return parse_ratio(text, out_scale) || parse_inches(text, out_scale);
}

const char *drawing_scale_text(struct arena *arena, bool inches, double scale)
{
	for (size_t i = 0; inches && INCHES[i].scale > 0; i++)
		if (fabs(INCHES[i].scale - scale) < 1e-9)
			return INCHES[i].text;
	for (size_t i = 0; inches && INCHES_DETAIL[i].scale > 0; i++)
		if (fabs(INCHES_DETAIL[i].scale - scale) < 1e-9)
			return INCHES_DETAIL[i].text;
	if (scale < 1)
		return arena_printf(arena, "%ld:1", lround(1 / scale));
	return arena_printf(arena, "1:%ld", lround(scale));
}
