/* count_time.c - hours to wait before the next work may begin. */
#include "count/counting.h"

static void add_wait(struct counting *c, const char *what, const char *id, int64_t hours)
{
	if (hours <= 0)
		return;
	struct count_row *row = counting_number(c, COUNT_WAIT, id, (long)hours);
	row->unit = "hour";
	counting_how(c, row, {"what", words_find(c->words, what)},
	             {"hours", arena_printf(c->arena, "%lld", (long long)hours)});
}

/* The membrane that takes longest, of those that are laid. */
static const struct plan_membrane *slowest(const struct counting *c)
{
	const struct plan_membrane *slow = NULL;
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct cover *cover = &c->placed->lays[i].strips->cover;
		if (cover->membrane == NULL || cover->area_mm2 <= 0)
			continue;
		if (slow == NULL || cover->membrane->cure_hours > slow->cure_hours)
			slow = cover->membrane;
	}
	return slow;
}

/* Materials that nobody wrote have no id: they are named by their element. */
static const char *id_of(const char *id, const char *element)
{
	return id != NULL ? id : element;
}

/* After every part of the count that says what is used. */
void count_time(struct counting *c)
{
	enum { HOURS_A_DAY = 24 };
	const struct plan *plan = c->placed->site->plan;
	const struct plan_membrane *membrane = slowest(c);
	if (counting_sum(c, COUNT_PATCH) > 0)
		add_wait(c, "wait.patch", id_of(plan->patch.id, "patch"), plan->patch.cure_hours);
	if (membrane != NULL)
		add_wait(c, "wait.membrane", membrane->id, membrane->cure_hours);
	if (c->placed->lay_count > 0) {
		add_wait(c, "wait.mortar", id_of(plan->mortar.id, "mortar"),
		         plan->mortar.cure_hours);
		add_wait(c, "wait.grout", id_of(plan->grout.id, "grout"), plan->grout.cure_hours);
	}
	if (counting_sum(c, COUNT_SEALANT) > 0)
		add_wait(c, "wait.sealant", id_of(plan->sealant.id, "sealant"),
		         plan->sealant.cure_hours);
	counting_packages(c, COUNT_WAIT_DAYS, "total", "day", counting_sum(c, COUNT_WAIT), 0,
	                  HOURS_A_DAY);
}
