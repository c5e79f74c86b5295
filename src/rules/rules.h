/* rules.h - the trade's limits and figures for one region, read from its table.
 * Every number that decides anything is here, with unit and source; no limit is written
 * twice. Units: mm, mm2, degrees, days, shares as the name says. Owns: arena; the table's
 * text travels in the binary (rules/us.rules). Fails: unknown table: STATUS_INPUT.
 * Invariant: a loaded table has every figure of figures.h and every rule it names. */
#ifndef RULES_RULES_H
#define RULES_RULES_H
#include "base/diag.h"
#include "base/status.h"
#include "rules/figures.h"

enum rule_weight { RULE_NOTE, RULE_ASK, RULE_STOP };

/* What is measured against a limit, and what follows. */
struct rule {
	const char *name;     /* crack-wide */
	const char *quantity; /* what is measured */
	const char *unit;     /* mm, days, share, none */
	double limit;
	enum rule_weight weight;
	const char *who;      /* engineer, designer, owner, maker, GC, crew */
	const char *source;   /* citation, with its id in docs/sources.md */
	const char *message;  /* key into the words table */
};

struct rules;

const struct rules *rules_load(struct arena *, const char *name, struct diag_list *);
/* Value of a figure in the unit its name states (mm where it states none). */
double rules_figure(const struct rules *, enum figure);
const char *rules_figure_source(const struct rules *, enum figure);
const struct rule *rules_find(const struct rules *, const char *name); /* NULL: no such rule */
const struct rule *rules_at(const struct rules *, size_t index);       /* NULL past the end */
const char *rules_name(const struct rules *);

#endif
