/* joint_tag.h - what a sheet says of one joint that is not grouted: its width, and how a crew
 * finds it: courses from a control line, or along the tile.
 * Units: mm of the lay's axes. Owns: the draft's arena. */
#ifndef SHEETS_JOINT_TAG_H
#define SHEETS_JOINT_TAG_H
#include "drawing/label.h"
#include "sheets/draft.h"
#include "sheets/lay_view.h"

struct joint_tag {
	const struct joint *joint;
	struct line seen; /* the longest part of it in the room; count 0: none */
	const char *lines[3];
	size_t line_count;
	enum label_frame frame;
};

/* A perimeter joint has no tag of its own: line_count 0. */
struct joint_tag joint_tag_make(const struct draft *, const struct lay_view *,
                                const struct joint *);
/* True where one tag says what both would: `other` is the longer, or the earlier of equals. */
bool joint_tag_is_said(const struct joint_tag *, const struct joint_tag *other);
/* The longest straight stretch of a line, for a label beside it. */
struct segment joint_tag_stretch(struct line);
/* A soft joint waits for the same answer as its crack. */
bool joint_tag_is_pending(const struct placed_lay *, const struct joint *);
/* For the schedule: its kind, why it is there, its back-up, and where a crew finds it, between
 * which courses from the lines of the first room that it is seen in; "" where no course says
 * it. */
const char *joint_tag_kind(const struct draft *, const struct joint *);
const char *joint_tag_why(const struct draft *, const struct joint *);
const char *joint_tag_back(const struct draft *, const struct joint *);
const char *joint_tag_where(const struct draft *, const struct placed_lay *, const struct joint *);

#endif
