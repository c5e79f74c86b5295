/* candidate.h - the places where one label may stand.
 * Units: paper mm; costs about mm of wandering. */
#ifndef DRAWING_CANDIDATE_H
#define DRAWING_CANDIDATE_H
#include "base/array.h"
#include "drawing/list.h"

/* A label set in type: its size with frame, and how its text lies in it. */
struct label_body {
	double cap;
	double width, height; /* level; upright they change places */
	double pad_x;         /* frame to text */
	double first;         /* top of the body to the first baseline */
};

enum { CANDIDATE_LEADER_MAX = 3 };
enum candidate_rated { RATED_NOT, RATED_BODY, RATED_ALL };

struct candidate {
	struct paper_box box;
	bool is_upright;
	struct paper_point leader[CANDIDATE_LEADER_MAX]; /* from the text to what it names */
	int leader_count;                                /* 0: none */
	double place_cost;                               /* of the place itself */
	/* By the solver: what it costs with what it covers and crosses, as far as it is rated. */
	double cost;
	struct paper_box extent; /* of box and leader with what is kept clear */
	bool is_impossible;      /* what stands there forbids it */
	enum candidate_rated rated;
};

struct candidates {
	struct candidate *items;
	size_t count, room;
};

struct label_body label_body_of(const struct list *, const struct label *);
/* Places at what is named, without a leader (save FIXED ones that ask for it). */
struct candidates candidate_near(struct arena *, const struct label *, const struct label_body *);
/* Places away from it, with a leader. */
struct candidates candidate_led(struct arena *, const struct label *, const struct label_body *);
/* The same, many more of them, for a label that found none. */
struct candidates candidate_led_densely(struct arena *, const struct label *,
                                        const struct label_body *);

#endif
