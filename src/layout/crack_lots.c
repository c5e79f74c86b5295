#include "layout/crack_lots.h"

#include "geometry/line.h"
#include "geometry/tolerance.h"

struct joining {
	struct arena *arena;
	const struct site *site;
	size_t *leaders; /* of each crack of the site: one of its lot, itself at the end */
};

static size_t leader_of(const struct joining *j, size_t crack)
{
	while (j->leaders[crack] != crack)
		crack = j->leaders[crack];
	return crack;
}

static void join(const struct joining *j, const struct site_crack *a, const struct site_crack *b)
{
	if (a->joint || b->joint)
		return;
	size_t one = leader_of(j, (size_t)(a - j->site->cracks));
	size_t other = leader_of(j, (size_t)(b - j->site->cracks));
	j->leaders[one > other ? one : other] = one < other ? one : other;
}

static void join_groups(const struct joining *j, const struct cracks *cracks)
{
	for (size_t g = 0; g < cracks->group_count; g++) {
		const struct crack_group *group = &cracks->groups[g];
		for (size_t k = 1; k < group->crack_count; k++)
			join(j, cracks->cracks[group->cracks[0]].crack,
			     cracks->cracks[group->cracks[k]].crack);
	}
}

/* Runs of two lays that touch where these meet. */
static bool meet(const struct joining *j, const struct laid_cracks *one, size_t a,
                 const struct laid_cracks *other, size_t b)
{
	const struct placed_crack *p = &one->cracks->cracks[a], *q = &other->cracks->cracks[b];
	for (size_t m = 0; m < p->run_count; m++)
		for (size_t n = 0; n < q->run_count; n++) {
			struct line first = frame_line_out(j->arena, one->field->frame, p->runs[m]);
			struct line second =
				frame_line_out(j->arena, other->field->frame, q->runs[n]);
			if (line_gap(first, second) < TOLERANCE_WHOLE)
				return true;
		}
	return false;
}

static void join_over(const struct joining *j, const struct laid_cracks *one,
                      const struct laid_cracks *other)
{
	for (size_t a = 0; a < one->cracks->crack_count; a++)
		for (size_t b = 0; b < other->cracks->crack_count; b++)
			if (meet(j, one, a, other, b))
				join(j, one->cracks->cracks[a].crack,
				     other->cracks->cracks[b].crack);
}

static void add_to(struct crack_lot *lot, const struct placed_crack *crack)
{
	lot->state = crack_state_worse(lot->state, crack->verdict.state);
	lot->pending = lot->pending || crack->verdict.pending;
}

const struct crack_lot *crack_lots_of(struct arena *arena, const struct site *site,
                                      const struct laid_cracks *lays, size_t lay_count)
{
	struct joining j = {arena, site, ARENA_ARRAY(arena, size_t, site->crack_count)};
	struct crack_lot *lots = ARENA_ARRAY(arena, struct crack_lot, site->crack_count);
	for (size_t i = 0; i < site->crack_count; i++)
		j.leaders[i] = i;
	for (size_t i = 0; i < lay_count; i++) {
		join_groups(&j, lays[i].cracks);
		for (size_t k = 0; k < i; k++)
			join_over(&j, &lays[k], &lays[i]);
	}
	for (size_t i = 0; i < lay_count; i++)
		for (size_t k = 0; k < lays[i].cracks->crack_count; k++) {
			const struct placed_crack *crack = &lays[i].cracks->cracks[k];
			if (!crack->crack->joint)
				add_to(&lots[leader_of(&j, (size_t)(crack->crack - site->cracks))],
				       crack);
		}
	for (size_t i = 0; i < site->crack_count; i++) {
		lots[i] = lots[leader_of(&j, i)];
		lots[i].first = leader_of(&j, i);
	}
	return lots;
}
