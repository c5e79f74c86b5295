/* plan_parse.h - the text of a floor description into a plan.
 * Owns: the plan lives in the arena given. Fails: STATUS_INPUT, with every error of the
 * text in the diagnostics and none that only follows from another; the plan is there all the
 * same where the text is well-formed and has fewer than 1,000 errors, what is in error marked
 * PLAN_FAULTY; else NULL. */
#ifndef PLAN_PLAN_PARSE_H
#define PLAN_PLAN_PARSE_H
#include "base/diag.h"
#include "base/status.h"
#include "plan/markup.h"
#include "plan/plan.h"

enum status plan_parse(struct arena *, const char *bytes, size_t length, struct diag_list *,
                       const struct plan **out_plan) CHECK_USED;
/* The same from a tree of elements, which the plan goes on to borrow. */
enum status plan_from_markup(struct arena *, const struct markup *root, struct diag_list *,
                             const struct plan **out_plan) CHECK_USED;

#endif
