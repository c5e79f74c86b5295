/* draft.h - what all sheets of one run are drawn from: the models, words and looks.
 * Owns: nothing; everything is borrowed for the run. Texts it makes live in its arena. */
#ifndef SHEETS_DRAFT_H
#define SHEETS_DRAFT_H
#include "compare/comparison.h"
#include "drawing/style.h"
#include "findings/finding.h"
#include "layout/placed.h"
#include "sheets/paper_size.h"
#include "words/words.h"

struct draft {
	struct arena *arena;
	const struct placed *placed;
	const struct site *site;
	const struct findings *findings;
	const struct words *words;
	const struct style *style;
	struct text_engine *text;
	const struct paper_size *paper;
	double foot;  /* paper mm under the drawing for notes; 0: none */
	double scale; /* asked for; 0: the largest standard scale that fits */
	const struct comparison *comparison; /* what the sheets are clouded for; NULL: nothing */
};

/* A length as every sheet prints it: feet and inches, or whole millimetres. */
const char *draft_length(const struct draft *, double mm);
/* The same with its unit, for sentences: 6 mm. */
const char *draft_measure(const struct draft *, double mm);
/* To the step that draft_length prints. */
double draft_rounded(const struct draft *, double mm);
/* 2026-04-06; nothing for a date that is not stated. */
const char *draft_date(const struct draft *, struct date);
/* A width of a crack or joint: inches to 1/64, or millimetres with a decimal. */
const char *draft_width(const struct draft *, double mm);
/* A width for sentences: no line ends inside it. */
const char *draft_width_measure(const struct draft *, double mm);
const char *draft_word(const struct draft *, const char *key);
/* What floats on a sheet as an identifier is in capitals: `SOUTH`, `K1`. */
const char *draft_tag(const struct draft *, const char *id);

/* The text of a key with its arguments: draft_text(draft, "cut", {"size", size}). */
#define draft_text(draft, key, ...) words_fill((draft)->arena, (draft)->words, key, __VA_ARGS__)

#endif
