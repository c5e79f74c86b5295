/* finding_change.h - findings that appeared, went, were answered, or measure otherwise now;
 * what their text tells beside is no change of theirs.
 * Owns: arena; findings are borrowed. */
#ifndef COMPARE_FINDING_CHANGE_H
#define COMPARE_FINDING_CHANGE_H
#include "base/array.h"
#include "findings/finding.h"

enum finding_fate {
	FINDING_APPEARED,
	FINDING_WENT,
	FINDING_WAS_ANSWERED,
	FINDING_REOPENED,
	FINDING_READS_OTHERWISE,
};

struct finding_change {
	enum finding_fate fate;
	const struct finding *finding; /* as it is now; of one that went, as it was */
};

struct finding_changes {
	ARRAY_OF(struct finding_change) list;
};

struct finding_changes finding_changes_find(struct arena *, const struct findings *before,
                                            const struct findings *after);

#endif
