#include "record/markup.h"

#include "units/number.h"

enum { LENGTH_DECIMALS = 6, AREA_DECIMALS = 12, NUMBER_DECIMALS = 6 };

static void close_tag(struct markup *markup, const char *text)
{
	if (markup->is_open)
		strbuf_add(markup->out, text);
	markup->is_open = false;
}

static void set_in(struct markup *markup)
{
	for (int i = 0; i < markup->depth; i++)
		strbuf_add(markup->out, "  ");
}

void markup_start(struct markup *markup, const char *element)
{
	close_tag(markup, ">\n");
	set_in(markup);
	strbuf_printf(markup->out, "<%s", element);
	markup->is_open = true;
	markup->depth++;
}

void markup_end(struct markup *markup, const char *element)
{
	markup->depth--;
	if (markup->is_open) {
		close_tag(markup, "/>\n");
		return;
	}
	set_in(markup);
	strbuf_printf(markup->out, "</%s>\n", element);
}

/* `name="`, then what the caller adds, then its quote. */
static struct strbuf *start_value(struct markup *markup, const char *name)
{
	strbuf_printf(markup->out, " %s=\"", name);
	return markup->out;
}

static void end_value(struct markup *markup)
{
	strbuf_add_char(markup->out, '"');
}

void markup_text(struct markup *markup, const char *name, const char *value)
{
	strbuf_add_escaped(start_value(markup, name), value != NULL ? value : "");
	end_value(markup);
}

void markup_count(struct markup *markup, const char *name, long value)
{
	strbuf_printf(start_value(markup, name), "%ld", value);
	end_value(markup);
}

void markup_add_length(struct strbuf *out, double mm)
{
	number_add(out, mm, LENGTH_DECIMALS);
}

void markup_length(struct markup *markup, const char *name, double mm)
{
	markup_add_length(start_value(markup, name), mm);
	end_value(markup);
}

void markup_area(struct markup *markup, const char *name, double mm2)
{
	number_add(start_value(markup, name), mm2 / 1e6, AREA_DECIMALS);
	end_value(markup);
}

void markup_number(struct markup *markup, const char *name, double value)
{
	number_add_short(start_value(markup, name), value, NUMBER_DECIMALS);
	end_value(markup);
}

static void add_point(struct strbuf *out, struct point p)
{
	number_add(out, p.x, LENGTH_DECIMALS);
	strbuf_add_char(out, ',');
	number_add(out, p.y, LENGTH_DECIMALS);
}

void markup_point(struct markup *markup, const char *name, struct point p)
{
	add_point(start_value(markup, name), p);
	end_value(markup);
}

static void add_points(struct strbuf *out, const struct point *points, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		if (i > 0)
			strbuf_add_char(out, ' ');
		add_point(out, points[i]);
	}
}

void markup_points(struct markup *markup, const char *element, const struct point *points,
                   size_t count)
{
	close_tag(markup, ">\n");
	set_in(markup);
	strbuf_printf(markup->out, "<%s>", element);
	add_points(markup->out, points, count);
	strbuf_printf(markup->out, "</%s>\n", element);
}

void markup_region(struct markup *markup, const struct region *region)
{
	for (size_t i = 0; i < region->count; i++) {
		const struct polygon *polygon = &region->polygons[i];
		markup_points(markup, "outline", polygon->outline.points, polygon->outline.count);
		for (size_t h = 0; h < polygon->hole_count; h++)
			markup_points(markup, "hole", polygon->holes[h].points,
			              polygon->holes[h].count);
	}
}

void markup_end_text(struct markup *markup, const char *element, const char *text)
{
	markup->depth--;
	close_tag(markup, ">");
	strbuf_add_escaped(markup->out, text);
	strbuf_printf(markup->out, "</%s>\n", element);
}

void markup_end_points(struct markup *markup, const char *element, const struct point *points,
                       size_t count)
{
	markup->depth--;
	close_tag(markup, ">");
	add_points(markup->out, points, count);
	strbuf_printf(markup->out, "</%s>\n", element);
}
