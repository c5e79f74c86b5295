/* row_change.h - what a count says otherwise than another: amounts and prices before, after,
 * and by how much.
 * Units: those of the rows; money in hundredths. Owns: arena; rows are borrowed.
 * What is only an alternative to the work drawn is left out, and sums are, where the rows they
 * sum are there. A row that one side has not is nothing there: amount 0. */
#ifndef COMPARE_ROW_CHANGE_H
#define COMPARE_ROW_CHANGE_H
#include "base/array.h"
#include "count/count.h"

struct row_change {
	const struct count_row *before, *after; /* NULL: not there; not both */
	double amount_before, amount_after, amount_more;
	int decimals;
	bool is_priced; /* both sides have a price, in one currency */
	int64_t cents_before, cents_after;
};

struct row_changes {
	ARRAY_OF(struct row_change) list;
};

/* Quantities that differ in amount or price. */
struct row_changes row_changes_find(struct arena *, const struct count *before,
                                    const struct count *after);
/* Material, labour, each markup and the total: all of them, where both have prices in one
 * currency; else none. */
struct row_changes row_changes_money(struct arena *, const struct count *before,
                                     const struct count *after);
/* Days of waiting. */
struct row_change row_changes_days(struct arena *, const struct count *before,
                                   const struct count *after);
/* The row that tells what and where: after, or before where it is gone. */
const struct count_row *row_change_row(const struct row_change *);

#endif
