/* warming.h - kelvin between the coldest and the hottest day of a slab: what it states, else
 * by what reaches it. By value; nothing fails. Source: the table's warming figures. */
#ifndef LAYOUT_WARMING_H
#define LAYOUT_WARMING_H
#include "rules/rules.h"
#include "site/site.h"

bool warming_is_stated(const struct plan_slab *);
double warming_of(const struct rules *, const struct site_slab_part *);

#endif
