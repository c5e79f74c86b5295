/* relocated.h - contraction joints that a membrane takes over: isolated like a crack, with the
 * joint of the floor in the tile joint beside them.
 * It takes a plan that wishes it, a liquid or sheet membrane, sides without a step, and the word of
 * two people: the membrane's maker and the designer. Else the joint is carried.
 * Owns: arena. Source: R-C20, R-C22, R-K1, docs/sources.md. */
#ifndef LAYOUT_RELOCATED_H
#define LAYOUT_RELOCATED_H
#include "layout/field.h"

enum relocation {
	RELOCATION_NONE,       /* not wished for */
	RELOCATION_IMPOSSIBLE, /* a step, or no membrane that bridges */
	RELOCATION_OPEN,
	RELOCATION_HALF, /* one of two has agreed */
	RELOCATION_DECLINED,
	RELOCATION_AGREED,
};

/* What was decided, and by whom: `answers[0]` declined, or was the first to agree. */
struct relocating {
	enum relocation state;
	const struct plan_answer *answers[2];
};

struct relocating relocating_of(const struct field *, const struct site_slab_joint *);
/* Those agreed upon, each as a crack of its width that does not wander. */
struct site_crack *relocated_place(struct arena *, const struct field *, size_t *out_count);

#endif
