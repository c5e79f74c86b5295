/* change_text.h - a change, what it rests on and what follows from it, in words.
 * Owns: arena. */
#ifndef COMPARE_CHANGE_TEXT_H
#define COMPARE_CHANGE_TEXT_H
#include "compare/comparison.h"

/* Crack K2: added */
const char *change_text_what(struct arena *, const struct words *, const struct change *);
/* width: 1.2mm, now 2mm */
const char *change_text_edit(struct arena *, const struct words *, const struct edit *);
/* Seen after cleaning. Found 2026-03-09; "" where nothing is stated. */
const char *change_text_reason(struct arena *, const struct words *, const struct change *);
/* The rooms, or the whole floor. */
const char *change_text_where(const struct words *, const struct change *);
/* appeared, answered: and the finding. */
const char *change_text_finding(struct arena *, const struct words *,
                                const struct finding_change *);
/* The rate that holds; where it has changed, both. */
const char *change_text_rate(struct arena *, const struct row_change *);
/* Exact decimal; "" where there is no price on both sides. */
const char *change_text_cents(struct arena *, const struct row_change *, int64_t cents);
const char *change_text_amount(struct arena *, const struct row_change *, double amount);
/* The same with its sign: +2.10; -3; 0. */
const char *change_text_more(struct arena *, const struct row_change *);
const char *change_text_cents_more(struct arena *, const struct row_change *);

/* The words of files for machines: added, went. */
const char *change_kind_word(enum change_kind);
const char *finding_fate_word(enum finding_fate);

#endif
