/* plan.h - one floor as its description states it, read-only after plan_parse.
 * Units: lengths in whole nanometres (_nm), angles in degrees (_deg), temperatures in
 * Celsius (_c), shares and money exact. Owns: everything lives in the arena given to
 * plan_parse. Every element knows its line; `given` has bit i set where attribute i of its
 * element (grammar.h) was written: the rest are defaults.
 * Invariants: ids are unique, references are resolved, arrays are in document order. */
#ifndef PLAN_PLAN_H
#define PLAN_PLAN_H
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "plan/plan_words.h"
#include "units/date.h"
#include "units/quantity.h"

/* Bit of `given`: something of the element itself, or a child it should not have, is in
 * error. A plan that has such elements is judged no further than to find its other errors. */
#define PLAN_FAULTY ((uint64_t)1 << 63)

/* Something another element names. */
enum plan_ref_kind {
	PLAN_REF_ROOM,
	PLAN_REF_WALL,
	PLAN_REF_OBSTACLE,
	PLAN_REF_DOORWAY,
	PLAN_REF_SLAB,
	PLAN_REF_CRACK,
	PLAN_REF_SLAB_JOINT,
	PLAN_REF_TILE,
	PLAN_REF_MODULE,
	PLAN_REF_LAY,
	PLAN_REF_MEMBRANE,
	PLAN_REF_OTHER, /* sealant, mortar, grout, patch, reading */
};
struct plan_ref {
	enum plan_ref_kind kind;
	const char *id;
	int line;            /* of the attribute that names it */
	const void *element; /* struct plan_room, plan_wall … of that kind */
};

struct plan_job {
	int line;
	uint64_t given;
	const char *number, *site, *prepared_for, *prepared_by, *drawn_by, *checked_by;
	struct date date, starts; /* day 0: not stated */
};

struct plan_revision {
	int line;
	uint64_t given;
	const char *mark, *note;
	struct date date;
};

/* A place: coordinates, or along a wall as a tape measures. */
struct plan_at {
	int line;
	uint64_t given;
	bool on_wall;
	int64_t x_nm, y_nm;
	const char *wall; /* id as written, resolved by the site */
	int64_t along_nm, out_nm;
};

struct plan_slab {
	int line;
	uint64_t given;
	const char *id;
	int64_t thickness_nm;
	enum plan_support support;
	enum plan_exposure exposure;
	struct date placed; /* day 0: age not known */
	bool post_tensioned, heated;
	double coldest_c, hottest_c; /* NAN where not stated */
	double strength_mpa;
	const char *cement;
	double ambient_share;
	int64_t joints_nm; /* 0: not stated */
	struct plan_at *corners;
	size_t corner_count;
};

/* A wall, from either way of giving a boundary: a corner and the wall that starts there, or
 * a step of a tape run. */
struct plan_wall {
	int line;
	uint64_t given;
	const char *id;     /* as written, or ROOM.n */
	int64_t x_nm, y_nm; /* of <corner> */
	int64_t length_nm;  /* of <wall> */
	double turn_deg;
	int64_t rise_nm;
	enum plan_wall_kind kind;
	enum plan_base base;
	bool show;
	const struct plan_room *to; /* on the other side of an open edge; NULL: not open */
};

struct plan_diagonal {
	int line;
	uint64_t given;
	const char *from, *to; /* ids of the walls that start at the corners */
	int64_t length_nm;
};

/* A boundary measured as a run of walls; else the walls are corners. */
struct plan_run {
	int line;
	uint64_t given;
	int64_t x_nm, y_nm;
	double heading_deg;
	struct share closing; /* largest closing error as a share of the run's length */
	struct plan_diagonal *diagonals;
	size_t diagonal_count;
};

struct plan_obstacle {
	int line;
	uint64_t given;
	const char *id;
	enum plan_obstacle_kind kind;
	struct plan_at *corners; /* count 0: round, or a turned rectangle about its centre */
	size_t corner_count;
	int64_t x_nm, y_nm;
	int64_t across_nm; /* > 0: round */
	int64_t wide_nm, deep_nm;
	double turn_deg;
};

struct plan_doorway {
	int line;
	uint64_t given;
	const char *id;
	const char *wall; /* id as written */
	int64_t from_nm, width_nm, deep_nm;
	const struct plan_room *to; /* NULL: the scope ends there */
	enum plan_stop stop;
	bool joint;
	bool has_level; /* it was given */
	int64_t level_nm;
};

struct plan_room {
	int line;
	uint64_t given;
	const char *id, *name; /* name NULL: not stated */
	const struct plan_slab *slab;
	enum plan_exposure exposure; /* NONE: the slab's; see plan_room_exposure */
	bool heated;                 /* the slab's where not given */
	bool has_own_heated;         /* it was given */
	unsigned needs;              /* enum plan_need */
	struct plan_run *run;        /* NULL: the boundary is corners */
	struct plan_wall *walls;     /* in written order; 3 or more */
	size_t wall_count;
	struct plan_obstacle *obstacles;
	size_t obstacle_count;
	struct plan_doorway *doorways;
	size_t doorway_count;
};

struct plan_crack {
	int line;
	uint64_t given;
	const char *id, *note;
	const struct plan_room *room;         /* NULL: every room it crosses */
	int64_t width_nm, step_nm, wander_nm; /* wander: default resolved by unit */
	enum plan_moving moving;
	struct date found;
	struct plan_at *points;
	size_t point_count;
};

struct plan_slab_joint {
	int line;
	uint64_t given;
	const char *id;
	enum plan_joint_kind kind;
	int64_t width_nm, step_nm;
	enum plan_treat treat;
	struct plan_at *points;
	size_t point_count;
};

struct plan_reading {
	int line;
	uint64_t given;
	const char *id;
	enum plan_reading_kind kind;
	const char *value; /* as written, and by kind: */
	double humidity_share;
	double emission_kg;   /* per 1000 sq ft and 24 h */
	int64_t deviation_nm; /* under a straightedge of under_nm */
	bool is_absorbed;
	int64_t under_nm;
	struct date date;
	const struct plan_room *room;
	bool has_at;
	struct plan_at at;
};

struct plan_tile {
	int line;
	uint64_t given;
	const char *id, *name;
	enum plan_tile_kind kind;
	int64_t wide_nm, long_nm, thick_nm;
	enum plan_shape shape;
	enum plan_tile_edge edge;
	int64_t size_spread_nm, warpage_nm;
	double expansion_per_k; /* NAN: not stated */
	bool direction;
	int64_t per_box; /* 0: not stated */
	double weight_kg_m2;
};

/* One period of a pattern of the plan's own. */
struct plan_piece {
	int line;
	uint64_t given;
	const struct plan_tile *tile;
	int64_t x_nm, y_nm; /* lower left corner of the face, pattern axes */
	enum plan_piece_turn turn;
};
struct plan_step {
	int line;
	uint64_t given;
	int64_t x_nm, y_nm; /* joints included */
};
struct plan_module {
	int line;
	uint64_t given;
	const char *id;
	struct plan_piece *pieces;
	size_t piece_count;
	struct plan_step *steps; /* two */
	size_t step_count;
};

struct plan_start {
	int line;
	uint64_t given;
	int64_t x_nm, y_nm;
	enum plan_start_at at;
};

struct plan_lay {
	int line;
	uint64_t given;
	const char *id;
	const struct plan_room **rooms;
	size_t room_count;
	const struct plan_tile **tiles;
	size_t tile_count;
	int64_t joint_nm;
	enum plan_pattern pattern;
	struct share shift; /* default resolved by the tile's nominal side */
	enum plan_stagger stagger;
	int64_t in_pairs;                 /* of herringbone: 1 or 2 */
	const struct plan_module *module; /* NULL: none */
	double angle_deg;
	struct plan_ref *full_at, *centre_on; /* walls or doorways, most important first */
	size_t full_at_count, centre_on_count;
	bool balance;
	int64_t tolerance_nm, gap_nm, gap_max_nm; /* defaults resolved by unit */
	struct plan_start *start;                 /* NULL: searched */
};

struct plan_membrane {
	int line;
	uint64_t given;
	const char *id, *name;
	const struct plan_room **rooms;
	size_t room_count;
	enum plan_membrane_kind kind;
	enum plan_cover cover;
	int64_t movement_nm, thick_nm, strip_nm, roll_wide_nm, roll_long_nm, lap_nm;
	int64_t wet_film_nm, dry_film_nm;
	int64_t coats;
	double per_pail_ml;
	int64_t cure_hours, min_slab_age_days;   /* 0: not stated */
	double max_humidity_share, max_emission; /* NAN: not stated */
	int64_t min_tile_nm;
	unsigned offers;
	enum plan_soft_joints soft_joints;
	int64_t overrun_nm; /* 0: not stated */
};

/* One each, whether written or not; line 0 where all of it is default. */
struct plan_sealant {
	int line;
	uint64_t given;
	const char *id, *name;
	struct share movement;
	double per_tube_ml;
	int64_t cure_hours;
};
struct plan_mortar {
	int line;
	uint64_t given;
	const char *id, *name, *trowel;
	double covers_m2; /* 0: not stated */
	int64_t cure_hours;
};
struct plan_grout {
	int line;
	uint64_t given;
	const char *id, *name, *colour;
	double density_kg_l, bag_kg;
	int64_t cure_hours;
};
struct plan_patch {
	int line;
	uint64_t given;
	const char *id, *name;
	int64_t cure_hours;
};

struct plan_answer {
	int line;
	uint64_t given;
	struct plan_ref about;
	enum plan_decision decision;
	const char *by, *rule, *ref, *note; /* rule, ref, note NULL: not stated */
	struct date on;
};

/* What a rate is for: an element, or where that is NULL a word. */
struct plan_subject {
	enum plan_rate_word word;
	struct plan_ref element;
};
struct plan_rate {
	int line;
	uint64_t given;
	struct plan_subject of;
	struct money each;
	enum plan_per per;
	double hours; /* NAN: not stated */
};
struct plan_markup {
	int line;
	uint64_t given;
	enum plan_markup_of of;
	struct share share;
	const char *name;
};
struct plan_rates {
	int line;
	uint64_t given;
	const char *currency;
	struct plan_rate *rates;
	size_t rate_count;
	struct plan_markup *markups;
	size_t markup_count;
};

struct plan_sheets {
	int line;
	uint64_t given;
	const char *paper, *scale, *style, *words; /* NULL: not stated */
};

/* One default that was used: printed on the sheets. */
struct plan_default {
	const char *element, *id, *attribute, *value;
	int line;
};

struct plan {
	int line;
	uint64_t given;
	int64_t version;
	const char *title; /* NULL: not stated */
	enum plan_unit unit;
	double north_deg;
	const char *rules;
	struct plan_job *job; /* NULL: none */
	struct plan_revision *revisions;
	size_t revision_count;
	struct plan_slab *slabs;
	size_t slab_count;
	struct plan_room *rooms;
	size_t room_count;
	struct plan_crack *cracks;
	size_t crack_count;
	struct plan_slab_joint *slab_joints;
	size_t slab_joint_count;
	struct plan_reading *readings;
	size_t reading_count;
	struct plan_tile *tiles;
	size_t tile_count;
	struct plan_module *modules;
	size_t module_count;
	struct plan_lay *lays;
	size_t lay_count;
	struct plan_membrane *membranes;
	size_t membrane_count;
	struct plan_sealant sealant;
	struct plan_mortar mortar;
	struct plan_grout grout;
	struct plan_patch patch;
	struct plan_answer *answers;
	size_t answer_count;
	struct plan_rates *rates; /* NULL: none */
	struct plan_sheets sheets;
	struct plan_default *defaults; /* used by elements that were written */
	size_t default_count;
};

/* The exposure that holds in a room: its own, or its slab's. */
enum plan_exposure plan_room_exposure(const struct plan_room *);
bool plan_has_inches(const struct plan *); /* root unit in or ft */
/* The lay that a room is in, or NULL. */
const struct plan_lay *plan_lay_of(const struct plan *, const struct plan_room *);
/* The membrane over a room, or NULL. */
const struct plan_membrane *plan_membrane_over(const struct plan *, const struct plan_room *);

#endif
