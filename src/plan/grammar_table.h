/* grammar_table.h - what the parts of the grammar's table share.
 * Rows are read across: name, kind of value, place in the struct, then what differs from
 * nothing. IN() names a field of the element's struct. */
#ifndef PLAN_GRAMMAR_TABLE_H
#define PLAN_GRAMMAR_TABLE_H
#include "plan/grammar.h"

#define IN(element, field) offsetof(struct plan_##element, field)
#define ROWS(array) (array), sizeof(array) / sizeof *(array)
#define HEAD(element) sizeof(struct plan_##element), IN(element, line), IN(element, given)

extern const struct grammar_element grammar_answer;
extern const struct grammar_element grammar_at;
extern const struct grammar_element grammar_crack;
extern const struct grammar_element grammar_grout;
extern const struct grammar_element grammar_job;
extern const struct grammar_element grammar_lay;
extern const struct grammar_element grammar_membrane;
extern const struct grammar_element grammar_module;
extern const struct grammar_element grammar_mortar;
extern const struct grammar_element grammar_patch;
extern const struct grammar_element grammar_point;
extern const struct grammar_element grammar_rates;
extern const struct grammar_element grammar_reading;
extern const struct grammar_element grammar_revision;
extern const struct grammar_element grammar_room;
extern const struct grammar_element grammar_sealant;
extern const struct grammar_element grammar_sheets;
extern const struct grammar_element grammar_slab;
extern const struct grammar_element grammar_slab_joint;
extern const struct grammar_element grammar_tile;

extern const char *const grammar_exposures[], *const grammar_needs[];

#endif
