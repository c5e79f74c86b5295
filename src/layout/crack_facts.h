/* crack_facts.h - what the table of cracks needs to know of a crack, gathered.
 * Units: mm. Owns: answers live in the arena given. */
#ifndef LAYOUT_CRACK_FACTS_H
#define LAYOUT_CRACK_FACTS_H
#include "layout/field.h"
#include "rules/crack_rule.h"

/* The slabs are those of the field's rooms that the crack crosses. */
struct crack_facts crack_facts_of(struct arena *, const struct field *, const struct site_crack *);

#endif
