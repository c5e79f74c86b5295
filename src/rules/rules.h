/* rules.h - the trade's limits and figures for one region, read from its table.
 * Every number that decides anything is here, with unit and source; no limit is written
 * twice. Units: mm, days, degrees, shares as the name says. Owns: arena; the table's
 * text travels in the binary (rules/us.rules). Fails: unknown table: an error in the list.
 * Invariant: a loaded table has every figure of figures.h and every rule of rule_names.h, once. */
#ifndef RULES_RULES_H
#define RULES_RULES_H
#include <stdbool.h>

#include "base/diag.h"
#include "base/status.h"
#include "rules/figures.h"
#include "rules/rule_names.h"

enum rule_weight { RULE_NOTE, RULE_ASK, RULE_STOP };

/* On which side of its limit a measured value raises the rule. */
enum rule_side {
	RULE_WHEN,  /* nothing to measure: the condition itself */
	RULE_OVER,  /* greater than the limit */
	RULE_FROM,  /* the limit and greater */
	RULE_UNDER, /* less than the limit */
};

/* What is measured against a limit, and what follows. */
struct rule {
	const char *name;     /* crack-wide */
	const char *quantity; /* what is measured */
	const char *unit;     /* mm, kg, days, tiles, turns/ft, share, none */
	enum rule_side side;
	double limit;
	enum rule_weight weight;
	const char *who;     /* engineer, designer, owner, maker, GC, crew */
	const char *source;  /* citation, with its id in docs/sources.md */
	const char *message; /* key into the words table */
};

struct rules;

/* The table shipped as `name` ("us"), as it holds in plans drawn in inches or in metric
 * ones; NULL with an error in the list: no such table. */
const struct rules *rules_load(struct arena *, const char *name, bool inches, struct diag_list *);
/* A table from its text; every fault of it goes to the list, and NULL comes back. */
const struct rules *rules_parse(struct arena *, const char *name, bool inches, const char *text,
                                struct diag_list *);
/* Value of a figure in the unit its name states (mm where it states none). */
double rules_figure(const struct rules *, enum figure);
const char *rules_figure_use(const struct rules *, enum figure);
const char *rules_figure_source(const struct rules *, enum figure);
const struct rule *rules_rule(const struct rules *, enum rule_id);
const struct rule *rules_find(const struct rules *, const char *name); /* NULL: no such rule */
const struct rule *rules_at(const struct rules *, size_t index);       /* NULL past the end */
const char *rules_name(const struct rules *);
const char *rules_title(const struct rules *);

/* True where `measured` raises the rule, against the rule's own limit or another in its
 * place (a membrane's own, a wall's). Compared in millionths, so that the last bits of a
 * computed value never decide. RULE_WHEN is never raised by a number. */
bool rule_is_raised(const struct rule *, double measured);
bool rule_is_raised_by(const struct rule *, double measured, double limit);
const char *rule_weight_word(enum rule_weight); /* note, ask, stop */

#endif
