/* screen_part.h - what the parts of the page for the screen share. Private to screen/.
 * Owns: everything lives in the draft's arena.
 * Ids of the page: sheet-NAME, finding-N, place-N-NAME (where finding N lies on a sheet),
 * about-ID (what is known of an element). N counts findings from 1 as they are listed: what
 * stops work, what asks, the rest. */
#ifndef SCREEN_SCREEN_PART_H
#define SCREEN_SCREEN_PART_H
#include "screen/html.h"
#include "screen/place.h"

struct screen {
	const struct draft *draft;
	const struct sheet_set *set;
	struct elements elements;
	struct places places;
	size_t *numbers; /* by finding: N */
	struct strbuf out;
};

/* The findings that are open, and apart from them those that are answered or only noted. */
void screen_add_findings(struct screen *);
/* One entry an element, by kind: facts, findings, where it is drawn. */
void screen_add_elements(struct screen *);
/* The sheets with the marks of the findings on them. */
void screen_add_sheets(struct screen *);

/* Numbers them in the order in which they are listed. */
void screen_number_findings(struct screen *);
bool screen_is_question(const struct finding *); /* open, and no mere note */
/* The class of a finding: stop, ask or note. */
const char *screen_weight(const struct finding *);
/* Text in the draft's arena. */
const char *screen_number(const struct screen *, size_t finding);
const char *screen_finding_id(const struct screen *, size_t finding);
const char *screen_place_id(const struct screen *, const struct place *);
const char *screen_sheet_id(const struct screen *, size_t page);
/* Where a finding leads to: `#` and the id of its place, or of the first sheet. */
const char *screen_finding_target(const struct screen *, size_t finding);
/* A link to an element, or its bare id where the page has no such element. */
void screen_add_element_link(struct screen *, const char *id);

#endif
