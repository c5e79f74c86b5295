/* grammar.h - the floor description as one table: elements, attributes, kinds of value,
 * defaults, ranges, meanings.
 * The reader, the schema (docs/floor.xsd) and the reference page (docs/floor-format.md) all
 * come from it. A capability that is in the format but not built yet is marked `later` and
 * refused by name. */
#ifndef PLAN_GRAMMAR_H
#define PLAN_GRAMMAR_H
#include "plan/plan.h"

/* What an attribute holds, and the C type at its offset. */
enum grammar_value {
	GRAMMAR_TEXT,        /* const char * */
	GRAMMAR_ID,          /* const char *; unique in the floor */
	GRAMMAR_NAME,        /* const char *: id of an element of `ref_kind`, kept as written */
	GRAMMAR_LENGTH,      /* int64_t nm */
	GRAMMAR_ANGLE,       /* double deg */
	GRAMMAR_TEMPERATURE, /* double Celsius */
	GRAMMAR_STRENGTH,    /* double MPa */
	GRAMMAR_MASS,        /* double kg */
	GRAMMAR_VOLUME,      /* double ml */
	GRAMMAR_DENSITY,     /* double kg/l */
	GRAMMAR_AREA,        /* double m2 */
	GRAMMAR_DECIMAL,     /* double */
	GRAMMAR_PERCENT,     /* double share */
	GRAMMAR_SHARE,       /* struct share */
	GRAMMAR_WHOLE,       /* int64_t */
	GRAMMAR_MONEY,       /* struct money */
	GRAMMAR_DATE,        /* struct date */
	GRAMMAR_YES_NO,      /* bool */
	GRAMMAR_WORD,        /* enum, by place in `words` */
	GRAMMAR_WORDS,       /* unsigned bit set, by place in `words` */
	GRAMMAR_REF,         /* const void *: one element of `ref_kind` */
	GRAMMAR_REFS,        /* const void **: several of them; count at `count_offset` */
	GRAMMAR_PLACES,      /* struct plan_ref *: walls or doorways; count at `count_offset` */
	GRAMMAR_SUBJECT,     /* struct plan_subject: one of `words`, or any element with an id */
	GRAMMAR_ABOUT,       /* struct plan_ref: any element with an id */
};

enum grammar_range {
	GRAMMAR_ANY,
	GRAMMAR_NOT_NEGATIVE,
	GRAMMAR_POSITIVE,
	GRAMMAR_PART,      /* more than 0, at most 1 */
	GRAMMAR_COURSES,   /* 0 or more, less than 1; repeats after a bounded number of courses */
	GRAMMAR_TILE_SIDE, /* 5 mm to 5 m */
	GRAMMAR_TURN,      /* 360 degrees either way */
	GRAMMAR_ONE_OR_TWO,
};

struct grammar_attribute {
	const char *name;
	enum grammar_value value;
	size_t offset;
	const char *fallback;      /* default as it would be written; NULL: none, or see meaning */
	const char *fallback_inch; /* where the root's unit is in or ft; NULL: the same */
	const char *const *words;  /* ended by NULL; read by grammar_words */
	enum grammar_range range;
	enum plan_ref_kind ref_kind;
	size_t count_offset;
	bool required, later;
	const char *later_words; /* of `words`, separated by blanks: not built yet */
	const char *meaning;
};

enum grammar_holding {
	GRAMMAR_MANY,   /* array at `offset`, its count at `count_offset` */
	GRAMMAR_ONE,    /* pointer at `offset`, NULL where absent; at most one */
	GRAMMAR_INSIDE, /* the struct itself at `offset`; at most one */
	GRAMMAR_GROUP,  /* no struct of its own: children belong to the parent, whose bool at
	                   `count_offset` (if not 0) says that it was written; at most one */
};

struct grammar_element;

struct grammar_child {
	const struct grammar_element *element;
	enum grammar_holding holding;
	size_t offset, count_offset;
	bool of_parent; /* offsets are in the struct of the parent's parent */
};

struct grammar_element {
	const char *name;
	size_t size, line_offset, given_offset;
	const struct grammar_attribute *attributes;
	size_t attribute_count;
	const struct grammar_child *children;
	size_t child_count;
	enum plan_ref_kind kind; /* of elements with an id */
	bool later;
	const char *meaning;
};

extern const struct grammar_element grammar_floor;

const struct grammar_attribute *grammar_find_attribute(const struct grammar_element *,
                                                       const char *name);
const struct grammar_child *grammar_find_child(const struct grammar_element *, const char *name);
const char *grammar_kind_name(enum plan_ref_kind); /* "a room", for messages */
/* The words it takes, NULL where it takes others; an empty one cannot be written. */
const char *const *grammar_words(const struct grammar_attribute *);
const char *grammar_value_form(enum grammar_value); /* "a date such as 2026-04-06" */

#endif
