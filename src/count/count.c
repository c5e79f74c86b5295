#include "count/count.h"

#include <math.h>
#include <string.h>

#include "count/totals.h"
#include "units/length.h"

enum { LENGTH_DECIMALS = 2, AREA_DECIMALS = 2 };

struct counting {
	struct arena *arena;
	const struct placed *placed;
	const struct words *words;
	ARRAY_OF(struct count_row) rows;
};

static double rounded(double value, int decimals)
{
	double scale = 1;
	for (int i = 0; i < decimals; i++)
		scale *= 10;
	return (double)llround(value * scale) / scale;
}

static struct count_row *add_row(struct counting *c, const char *what, const char *where)
{
	struct count_row *row = array_push(c->arena, &c->rows);
	row->what = what;
	row->where = where;
	row->unit = "each";
	row->how = words_find(c->words, arena_printf(c->arena, "count.how.%s", what));
	return row;
}

static void add_number(struct counting *c, const char *what, const char *where, long number)
{
	if (number != 0)
		add_row(c, what, where)->amount = (double)number;
}

static void add_length(struct counting *c, const char *what, const char *where, double mm)
{
	bool inches = c->placed->site->inches;
	struct count_row *row = add_row(c, what, where);
	row->amount = rounded(mm / (inches ? LENGTH_MM_PER_FOOT : 1000), LENGTH_DECIMALS);
	row->decimals = LENGTH_DECIMALS;
	row->unit = inches ? "ft" : "m";
}

static void add_area(struct counting *c, const char *what, const char *where, double mm2)
{
	bool inches = c->placed->site->inches;
	struct count_row *row = add_row(c, what, where);
	row->amount = rounded(mm2 / (inches ? LENGTH_MM_PER_FOOT * LENGTH_MM_PER_FOOT : 1e6),
	                      AREA_DECIMALS);
	row->decimals = AREA_DECIMALS;
	row->unit = inches ? "sqft" : "m2";
}

/* The sum of all rows of `what`; nothing where there are none. */
static void add_total(struct counting *c, const char *what)
{
	struct count_row sum = {.what = what};
	for (size_t i = 0; i < c->rows.count; i++) {
		const struct count_row *row = &c->rows.items[i];
		if (strcmp(row->what, what) != 0)
			continue;
		sum.amount += row->amount;
		sum.decimals = row->decimals;
		sum.unit = row->unit;
	}
	if (sum.unit == NULL)
		return;
	struct count_row *row = add_row(c, what, "total");
	row->amount = rounded(sum.amount, sum.decimals);
	row->decimals = sum.decimals;
	row->unit = sum.unit;
	row->is_total = true;
}

/* The rooms of a lay: its grid runs through them, so its tile is not told apart by room. */
static const char *rooms_of(struct counting *c, const struct field *field)
{
	struct strbuf ids = strbuf_in(c->arena);
	for (size_t i = 0; i < field->room_count; i++)
		strbuf_printf(&ids, "%s%s", i > 0 ? " " : "", field->rooms[i]->id);
	return ids.text;
}

static void count_tile(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct placed_lay *lay = &c->placed->lays[i];
		struct tile_total total = tile_total(lay);
		const char *where = rooms_of(c, lay->field);
		add_area(c, "field", where, lay->field->area_mm2);
		add_number(c, "tile-whole", where, total.whole);
		add_number(c, "tile-cut", where, total.cut);
		for (size_t h = 0; h < lay->cracks->hold_count; h++) {
			const struct hold *hold = &lay->cracks->holds[h];
			add_area(c, "hold", hold->id, hold->area_mm2);
			add_number(c, "tile-whole-held", hold->id, hold->whole_count);
			add_number(c, "tile-cut-held", hold->id, hold->cut_count);
		}
	}
}

static void count_membrane(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct strips *strips = c->placed->lays[i].strips;
		const struct cover *cover = &strips->cover;
		const char *where = rooms_of(c, c->placed->lays[i].field);
		for (size_t s = 0; s < strips->strip_count; s++) {
			const struct strip *strip = &strips->strips[s];
			add_area(c, strip->pending ? "membrane-strip-pending" : "membrane-strip",
			         strip->id, region_area(&strip->region));
		}
		if (cover->membrane != NULL && cover->is_full)
			add_area(c, "membrane-full", where, cover->area_mm2);
		if (cover->membrane != NULL && cover->alternate_mm2 > 0)
			add_area(c, "membrane-alternate", where, cover->alternate_mm2);
	}
}

static const char *joint_what(struct counting *c, const struct joint *joint)
{
	const char *open = joint->kind == JOINT_PERIMETER && joint->is_open ? "-open" : "";
	return arena_printf(c->arena, "joint-%s%s", joint_kind_word(joint->kind), open);
}

static void count_joints(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct joints *joints = c->placed->lays[i].joints;
		for (size_t j = 0; j < joints->joint_count; j++)
			add_length(c, joint_what(c, &joints->joints[j]), joints->joints[j].id,
			           joints->joints[j].length);
	}
}

/* In the order of the work; each group ends with its total. */
static const char *const order[] = {
	"field",
	"tile-whole",
	"tile-cut",
	"hold",
	"tile-whole-held",
	"tile-cut-held",
	"membrane-strip",
	"membrane-strip-pending",
	"membrane-full",
	"membrane-alternate",
	"joint-soft",
	"joint-movement",
	"joint-carried",
	"joint-perimeter",
	"joint-perimeter-open",
};

static struct count *in_order(struct counting *c)
{
	struct count *count = ARENA_NEW(c->arena, struct count);
	count->rows = ARENA_ARRAY(c->arena, struct count_row, c->rows.count);
	for (size_t k = 0; k < sizeof order / sizeof order[0]; k++)
		for (size_t i = 0; i < c->rows.count; i++)
			if (strcmp(c->rows.items[i].what, order[k]) == 0)
				count->rows[count->row_count++] = c->rows.items[i];
	return count;
}

const struct count *count_from_placed(struct arena *arena, const struct placed *placed,
                                      const struct words *words)
{
	struct counting c = {.arena = arena, .placed = placed, .words = words};
	count_tile(&c);
	count_membrane(&c);
	count_joints(&c);
	for (size_t k = 0; k < sizeof order / sizeof order[0]; k++)
		add_total(&c, order[k]);
	return in_order(&c);
}
