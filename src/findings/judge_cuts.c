/* judge_cuts.c - the least cut at the edges of a lay, and what would cure it. */
#include "findings/judge.h"

#include "base/strbuf.h"
#include "layout/alternatives.h"
#include "units/number.h"

enum { TURN_DECIMALS = 2 };

/* mm: a cut printed as 0 is told as one that runs out to nothing. */
static const double PRINTED_AS_NONE = 0.5;

static const char *length_of(const struct judging *judging, double mm)
{
	return say_length(&judging->say, mm);
}

/* What is done differently, as the designer is told of it. */
static const char *cure_of(const struct judging *judging, const struct placed_lay *lay,
                           const struct alternative *alternative)
{
	static const char *const KEYS[] = {
		[ALTERNATIVE_START] = "cure.start", [ALTERNATIVE_ALONG] = "cure.along",
		[ALTERNATIVE_FREE] = "cure.free",   [ALTERNATIVE_JOINT] = "cure.joint",
		[ALTERNATIVE_TURN] = "cure.turn",
	};
	double more = alternative->joint - lay->module->joint;
	return words_fill(judging->arena, judging->say.words, KEYS[alternative->kind],
	                  {"edge", alternative->at ? alternative->at : ""},
	                  {"turn",
	                   say_number(&judging->say, fabs(alternative->turn_deg), TURN_DECIMALS)},
	                  {"joint", length_of(judging, alternative->joint)},
	                  {"more", length_of(judging, more)});
}

/* All that leave no small cut, in order. */
static const char *cures(const struct judging *judging, const struct placed_lay *lay,
                         const struct alternatives *others)
{
	struct strbuf list = strbuf_in(judging->arena);
	for (size_t i = 0; i < others->count; i++)
		if (alternative_cures(&others->items[i]))
			strbuf_printf(&list, "%s%s", list.length > 0 ? "; " : "",
			              cure_of(judging, lay, &others->items[i]));
	return list.length > 0 ? list.text : NULL;
}

/* The one whose least cut is the largest; NULL: none is larger than the one there is. */
static const struct alternative *least_bad(const struct alternatives *others)
{
	const struct alternative *best = NULL;
	double share = others->taken.share;
	for (size_t i = 0; i < others->count; i++)
		if (number_order(others->items[i].least.share, share) > 0) {
			best = &others->items[i];
			share = best->least.share;
		}
	return best;
}

static const char *advice_on(const struct judging *judging, const struct placed_lay *lay,
                             const struct alternatives *others)
{
	const struct words *words = judging->say.words;
	const char *list = cures(judging, lay, others);
	const struct alternative *best = least_bad(others);
	if (list != NULL)
		return words_fill(judging->arena, words, "cures", {"list", list});
	if (best == NULL)
		return words_find(words, "cures.none");
	return words_fill(judging->arena, words, "cures.least-bad",
	                  {"what", cure_of(judging, lay, best)},
	                  {"cut", length_of(judging, best->least.cut->least)},
	                  {"edge", best->least.of});
}

/* Once a lay: the border whose cut falls shortest of its limit speaks for all. */
void judge_cuts(struct judging *judging, size_t index)
{
	const struct placed_lay *lay = &judging->placed->lays[index];
	struct raised raised = judge_raise_lay(judging, RULE_CUT_SMALL, lay);
	struct least_cut least = least_cut_of(lay->field, lay->position);
	if (least.cut == NULL || !rule_is_raised_by(raised.rule, least.cut->least, least.limit))
		return;
	const struct field_border *border = &lay->field->borders[least.cut->border];
	raised.at = frame_out(lay->field->frame, point_between(border->from, border->to, 0.5));
	raised.measured = least.cut->least;
	raised.limit = least.limit;
	raised.unit = "mm";
	bool is_plain = judging->alternatives == NULL;
	if (least.cut->least < PRINTED_AS_NONE)
		raised.message =
			is_plain ? "finding.cut-small.none.plainly" : "finding.cut-small.none";
	else if (is_plain)
		raised.message = "finding.cut-small.plainly";
	if (is_plain) {
		judge_say(judging, raised, {"edge", least.of});
		return;
	}
	judge_say(judging, raised, {"edge", least.of},
	          {"advice", advice_on(judging, lay, judging->alternatives[index])});
}
