/* mixture.h - the description of a floor between two others: some changes made, others not.
 * Owns: arena; what has not changed is borrowed. Ids are those of the revised floor. */
#ifndef COMPARE_MIXTURE_H
#define COMPARE_MIXTURE_H
#include "compare/pairing.h"

/* `is_revised` says of each pair which of its two sides holds. */
const struct markup *mixture_of(struct arena *, const struct pairing *, const bool *is_revised);

#endif
