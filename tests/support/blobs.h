/* blobs.h - what an eye takes for one mark: dark pixels that touch, counted and measured. */
#ifndef SUPPORT_BLOBS_H
#define SUPPORT_BLOBS_H
#include "support/ink.h"

/* A part of a picture in two tones. */
struct tones {
	int width, height;
	uint8_t *dark; /* 1: ink */
};

/* Pixels darker than half in the box given in mm. */
struct tones tones_of(struct arena *, const struct pixels *, int dpi, struct paper_box);
/* Every dark pixel grown by `radius` pixels all round. */
struct tones tones_grown(struct arena *, struct tones, int radius);
struct tones tones_turned(struct arena *, struct tones); /* ink for paper, paper for ink */
int tones_blobs(struct arena *, struct tones);           /* marks that do not touch */
double tones_share(struct tones);                        /* of dark pixels */
/* Dark runs met along all lines in one direction, a mm of line. */
enum scan { SCAN_LEVEL, SCAN_UPRIGHT, SCAN_RISING, SCAN_FALLING, SCAN_COUNT };
double tones_runs(struct tones, int dpi, enum scan);

#endif
