/* ink.h - what tests of the drawing share: an empty sheet, pixels of a PNG, chance. */
#ifndef SUPPORT_INK_H
#define SUPPORT_INK_H
#include <stdint.h>

#include "drawing/canvas.h"
#include "drawing/finish.h"

struct ink {
	struct arena *arena;
	struct text_engine *text;
	struct style style;
	struct list *list;
	struct diag_list diags;
};

/* A sheet of the style given; ends the test program where it cannot be made. */
struct ink ink_sheet(const char *style, double width, double height);
void ink_release(struct ink *);
struct page ink_page(const struct ink *);

struct pixels {
	int width, height;
	uint8_t *grey; /* 0 is black */
};
struct pixels pixels_read(struct arena *, struct bytes png);
/* The sheet as drawn, in grey. */
struct pixels ink_pixels(struct ink *, int dpi);
/* Box of all pixels darker than half, in pixels; x1, y1 past the last. */
struct pixel_box {
	int x0, y0, x1, y1;
};
struct pixel_box pixels_dark(const struct pixels *);
/* Runs of dark pixels along row y from x0 to x1. */
int pixels_runs(const struct pixels *, int y, int x0, int x1);

/* Share of ink in a box in mm: grey in the mean, the darkest ink there being 1. */
double pixels_tone(const struct pixels *, int dpi, struct paper_box);

/* 0..1, the same everywhere from the same seed. */
double chance(uint32_t *seed);

#endif
