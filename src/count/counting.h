/* counting.h - a count while its rows are collected: what the parts of the count share.
 * Units: mm, mm2, ml, kg come in; rows hold m or ft, m2 or sqft, ml or floz (of membranes l
 * or gal), kg or lb.
 * Owns: arena. Inside the count only. */
#ifndef COUNT_COUNTING_H
#define COUNT_COUNTING_H
#include "base/array.h"
#include "count/count.h"

struct counting {
	struct arena *arena;
	const struct placed *placed;
	const struct words *words;
	bool inches; /* rows are in feet and inches */
	ARRAY_OF(struct count_row) rows;
};

/* Each adds a row; it counts one thing each where no unit is named. A number of 0 adds
 * nothing and gives NULL. */
struct count_row *counting_number(struct counting *, enum count_kind, const char *where, long);
struct count_row *counting_length(struct counting *, enum count_kind, const char *where, double mm);
struct count_row *counting_area(struct counting *, enum count_kind, const char *where, double mm2);
struct count_row *counting_volume(struct counting *, enum count_kind, const char *where, double ml);
struct count_row *counting_liquid(struct counting *, enum count_kind, const char *where, double ml);
struct count_row *counting_mass(struct counting *, enum count_kind, const char *where, double kg);
/* Millimetres or inches, of which there is no sum. */
struct count_row *counting_height(struct counting *, enum count_kind, const char *where, double mm);
/* Sets apart rows of one kind by their size: the size stands in `what` too. */
void counting_size(struct counting *, struct count_row *, const char *size);
/* Says how the row came about; its text is under the kind's key. `row` is read twice. */
#define counting_how(counting, row, ...)                               \
	((row)->how = words_fill((counting)->arena, (counting)->words, \
	                         counting_how_key((counting), (row)->kind), __VA_ARGS__))
const char *counting_how_key(struct counting *, enum count_kind);

/* The total of a kind so far, as it prints, in mm, mm2, ml or kg; 0 where there is none. */
double counting_sum(const struct counting *, enum count_kind);
double counting_base(const struct count_row *); /* the same of one row */
/* Whole packages of `each` for an amount and a share more for waste. Nothing is bought where
 * nothing is needed: NULL. `where` may be "total": then the row is one. */
struct count_row *counting_packages(struct counting *, enum count_kind, const char *where,
                                    const char *unit, double amount, double waste, double each);

/* Ids of the rooms of a lay, by blanks: `where` of what is not counted room by room. */
const char *counting_rooms(struct counting *, const struct field *);
/* `where` of an element in one room of a lay: ROOM ELEMENT. */
const char *counting_in_room(struct counting *, const struct field *, size_t room,
                             const char *element);
double counting_figure(const struct counting *, enum figure);
/* What stands in a row's `how`. */
const char *counting_width(struct counting *, double mm);
const char *counting_film(struct counting *, double mm); /* 25 mil, 600 um */
const char *counting_area_text(struct counting *, double mm2);
const char *counting_volume_text(struct counting *, double ml);
const char *counting_liquid_text(struct counting *, double ml); /* 13 l, 3.5 gal */
const char *counting_mass_text(struct counting *, double kg);
const char *counting_percent(struct counting *, double share);

struct count_row *counting_hours(struct counting *, enum count_kind, const char *where, double);

/* The parts of the count, in the order of the work; then what rests on their rows. */
void count_tile(struct counting *);
void count_membrane(struct counting *);
void count_setting(struct counting *); /* patch, mortar, grout */
void count_joints(struct counting *);
void count_time(struct counting *);
void count_prices(struct counting *);

#endif
