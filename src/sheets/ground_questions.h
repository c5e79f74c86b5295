/* ground_questions.h - open questions about a room and the slab under it: the room itself, its
 * slabs and the readings that speak for it. What is asked about cracks, joints and tile stands
 * beside them on the drawing.
 * Owns: the draft's arena. Source: the findings (findings/finding.h). */
#ifndef SHEETS_GROUND_QUESTIONS_H
#define SHEETS_GROUND_QUESTIONS_H
#include "sheets/draft.h"

/* Tags of what they are about, by commas, each once; empty: none is open. */
const char *ground_questions(const struct draft *, const struct site_room *);

#endif
