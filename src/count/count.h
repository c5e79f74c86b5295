/* count.h - quantities of the placed floor: what, where, how much, and by which formula.
 * Units: each row names its own: each; m and m2, or ft and sqft in plans drawn in inches.
 * Owns: arena. Reads the placed floor only. Source: docs/sources.md#quantities.
 * Invariant: amounts are rounded as they print, and a total is the sum of the rows printed
 * above it, so that anyone can add them up. What is bought whole (bags, tubes) is rounded up
 * once, from the total. */
#ifndef COUNT_COUNT_H
#define COUNT_COUNT_H
#include <stdint.h>

#include "base/strbuf.h"
#include "count/kinds.h"
#include "layout/placed.h"
#include "words/words.h"

struct count_row {
	enum count_kind kind;
	const char *what;    /* the kind's name; with a size where it comes in several: rod-9mm */
	const char *size;    /* as a reader sees it; NULL: it comes in one */
	const char *where;   /* ROOM, ROOM ELEMENT, rooms of a lay, a material; `total` */
	const char *element; /* id of what rates may name; NULL: only its word */
	double amount;
	int decimals;     /* the amount prints with */
	const char *unit; /* each, m, m2, ft, sqft … */
	const char *how;  /* the formula, in the language of the words given */
	bool is_total;
	bool is_alone;             /* no sum of it means anything */
	enum count_kind labour_of; /* of hours: the kind of what they are spent on */
	const char *who;           /* who approves what might be laid instead; else NULL */
	const char *of;            /* its element; of a profile its doorway */
	const char *rate;          /* as it prints; "": none is given, and there is no price */
	bool is_priced;
	int64_t cents;
};

struct count {
	struct count_row *rows;
	size_t row_count;
	const char *currency; /* of all prices; NULL: no rates */
};

/* In the units of its plan. */
const struct count *count_from_placed(struct arena *, const struct placed *, const struct words *);
/* In feet and inches, or in metres, whatever the plan is drawn in. */
const struct count *count_in_units(struct arena *, const struct placed *, const struct words *,
                                   bool inches);
/* What a row counts, and where, as a reader of the words reads them. */
const char *count_row_what(struct arena *, const struct count_row *, const struct words *);
const char *count_row_where(const struct count_row *, const struct words *);
/* `what,where,amount,unit,rate,price,how`. */
struct bytes count_csv(struct arena *, const struct count *);
struct bytes count_xml(struct arena *, const struct count *);
/* A table to read on a screen, headed in the language of the words. */
struct bytes count_text(struct arena *, const struct count *, const struct words *);

#endif
