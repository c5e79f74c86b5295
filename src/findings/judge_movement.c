/* judge_movement.c - how far a crack may still open, against what is laid over it. */
#include "findings/judge.h"
#include "layout/crack_movement.h"
#include "units/length.h"
#include "units/number.h"

/* Of its group, all on this lay; 0 where other joints serve it. */
static double count_softs(const struct placed_lay *lay, const struct placed_crack *crack)
{
	double count = 0;
	for (size_t i = 0; i < lay->strips->soft_count; i++)
		count += lay->strips->softs[i].group == crack->group;
	return count;
}

/* What the figure rests on, so that who is asked can work it again. */
static const char *basis_of(const struct judging *judging, const struct crack_movement *movement)
{
	const struct saying *say = &judging->say;
	const struct concrete *concrete = &movement->concrete;
	const char *age = concrete->age_days < 0
	                          ? words_find(say->words, "movement.age-unknown")
	                          : words_fill(judging->arena, say->words, "movement.age",
	                                       {"days", say_number(say, concrete->age_days, 0)});
	return words_fill(judging->arena, say->words, "movement.basis",
	                  {"length", say_length(say, movement->length)},
	                  {"slab", movement->slab->id},
	                  {"strength", say_number(say, concrete->strength_mpa, 1)},
	                  {"cement", arena_printf(judging->arena, "%c", concrete->cement)},
	                  {"ambient", say_value(say, concrete->humidity_share, "share")},
	                  {"age", age}, {"shrinkage", say_length(say, movement->shrinkage)},
	                  {"warming", say_warming(say, movement->warming)},
	                  {"thermal", say_length(say, movement->thermal)});
}

/* An upper bound against a limit: over it somebody is asked, under it nothing is cleared. */
static void judge_against(struct judging *judging, enum rule_id id,
                          const struct placed_crack *crack, const struct crack_movement *movement,
                          double limit)
{
	if (limit <= 0 || number_order(movement->total, limit) <= 0)
		return;
	judge_say(judging,
	          ((struct raised){.rule = judge_rule(judging, id),
	                           .about = crack->id,
	                           .line = crack->crack->plan->line,
	                           .at = judge_middle_of_line(crack->crack->line),
	                           .measured = movement->total,
	                           .limit = limit,
	                           .unit = "mm"}),
	          {"basis", basis_of(judging, movement)});
}

static void judge_crack(struct judging *judging, const struct placed_lay *lay,
                        const struct placed_crack *crack)
{
	const struct site *site = judging->placed->site;
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	if (crack->state != CRACK_ISOLATE || membrane == NULL)
		return;
	struct crack_movement movement =
		crack_movement_of(judging->arena, site, judging->placed->rules, crack->crack);
	if (movement.slab == NULL)
		return;
	judge_against(judging, RULE_CRACK_MOVEMENT, crack, &movement,
	              length_mm(membrane->movement_nm));
	judge_against(judging, RULE_SOFT_JOINT_CAPACITY, crack, &movement,
	              count_softs(lay, crack) * lay->module->joint *
	                      share_value(site->plan->sealant.movement));
}

void judge_movements(struct judging *judging)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct placed_lay *lay = &judging->placed->lays[i];
		for (size_t c = 0; c < lay->cracks->crack_count; c++)
			judge_crack(judging, lay, &lay->cracks->cracks[c]);
	}
}
