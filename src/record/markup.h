/* markup.h - writes the elements of a record, set in by depth.
 * Units: as given; lengths have 6 decimals, areas 12, and a number never prints as -0.
 * Owns: nothing; adds to the text given. */
#ifndef RECORD_MARKUP_H
#define RECORD_MARKUP_H
#include "base/strbuf.h"
#include "geometry/region.h"

struct markup {
	struct strbuf *out;
	int depth;
	bool is_open; /* inside a start tag */
};

void markup_start(struct markup *, const char *element);
void markup_end(struct markup *, const char *element);
/* Attributes of the element started last. */
void markup_text(struct markup *, const char *name, const char *value); /* NULL: "" */
void markup_count(struct markup *, const char *name, long value);
void markup_length(struct markup *, const char *name, double mm);
void markup_area(struct markup *, const char *name, double mm2);     /* as m2 */
void markup_number(struct markup *, const char *name, double value); /* trimmed */
void markup_point(struct markup *, const char *name, struct point);
/* Adds a length as it stands in an attribute. */
void markup_add_length(struct strbuf *, double mm);
/* An element that holds points: <outline>x,y x,y</outline>. */
void markup_points(struct markup *, const char *element, const struct point *points, size_t count);
/* An outline and its holes, for each polygon. */
void markup_region(struct markup *, const struct region *);
/* Ends the element with text, or with points, and nothing else inside. */
void markup_end_text(struct markup *, const char *element, const char *text);
void markup_end_points(struct markup *, const char *element, const struct point *points,
                       size_t count);

#endif
