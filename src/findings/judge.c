#include "findings/judge.h"

#include <stdlib.h>
#include <string.h>

#include "geometry/line.h"
#include "units/number.h"

/* ---- adding ---- */

enum { ARGS_MAX = 12 };

/* {measured} and {limit}; they read alike only where to meet the limit is to pass it. */
static void say_both(const struct judging *judging, const struct raised *raised, const char *unit,
                     struct word_arg args[2])
{
	const struct saying *say = &judging->say;
	struct said_pair said = {say_value(say, raised->measured, unit),
	                         say_value(say, raised->limit, unit)};
	if (raised->rule->side != RULE_FROM)
		said = say_apart(say, raised->measured, raised->limit, unit);
	args[0] = (struct word_arg){"measured", said.a};
	args[1] = (struct word_arg){"limit", said.b};
}

/* A note asks nothing: only an answer that names it is about it. */
static const struct plan_answer *answer_of(const struct judging *judging,
                                           const struct raised *raised)
{
	if (raised->is_asked)
		return raised->answer;
	const char *about = raised->of ? raised->of : raised->about;
	const struct plan_answer *answer = judge_answer_to(judging, about, raised->rule);
	bool is_named = answer != NULL && answer->rule != NULL;
	return raised->rule->weight == RULE_NOTE && !is_named ? NULL : answer;
}

static void push(struct judging *judging, const struct raised *raised, const char *unit,
                 const char *text)
{
	const struct plan_answer *answer = answer_of(judging, raised);
	if (answer != NULL) {
		text = judge_answered_text(judging, text, answer);
		judge_use_answer(judging, answer);
	}
	*array_push(judging->arena, &judging->list) = (struct finding){
		.rule = raised->rule,
		.weight = answer != NULL ? RULE_NOTE : raised->rule->weight,
		.state = answer != NULL ? FINDING_ANSWERED : FINDING_OPEN,
		.about = raised->about,
		.line = raised->line,
		.at = raised->at,
		.measured = raised->measured,
		.limit = raised->limit,
		.unit = unit,
		.text = text,
	};
}

void judge_add(struct judging *judging, struct raised raised, const struct word_arg *args,
               size_t arg_count)
{
	const struct rule *rule = raised.rule;
	const char *unit = raised.unit != NULL ? raised.unit : rule->unit;
	struct word_arg all[ARGS_MAX] = {{"about", raised.about}};
	size_t count = 3;
	say_both(judging, &raised, unit, &all[1]);
	for (size_t i = 0; i < arg_count && count < ARGS_MAX; i++)
		all[count++] = args[i];
	const char *text =
		words_format(judging->arena, judging->say.words,
	                     raised.message != NULL ? raised.message : rule->message, all, count);
	push(judging, &raised, unit, text);
}

void judge_plainly(struct judging *judging, struct raised raised)
{
	judge_add(judging, raised, NULL, 0);
}

const struct rule *judge_rule(const struct judging *judging, enum rule_id id)
{
	return rules_rule(judging->placed->rules, id);
}

double judge_figure(const struct judging *judging, enum figure figure)
{
	return rules_figure(judging->placed->rules, figure);
}

const char *judge_length(const struct judging *judging, double mm)
{
	return say_length(&judging->say, mm);
}

const char *judge_area(const struct judging *judging, double mm2)
{
	return say_area(&judging->say, mm2);
}

/* ---- where things are ---- */

struct point judge_middle_of_lay(const struct placed_lay *lay)
{
	struct box box = region_box(&lay->field->region);
	struct point middle = {(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2};
	return frame_out(lay->field->frame, middle);
}

struct point judge_middle_of_line(struct line line)
{
	double length = line_length(line), passed = 0;
	for (size_t i = 1; i < line.count; i++) {
		double step = point_distance(line.points[i - 1], line.points[i]);
		if (passed + step >= length / 2 && step > 0)
			return point_between(line.points[i - 1], line.points[i],
			                     (length / 2 - passed) / step);
		passed += step;
	}
	return line.points[0];
}

bool judge_is_large(const struct judging *judging, const struct placed_lay *lay)
{
	double side = lay->module->tile_long + lay->module->joint;
	return number_order(side, judge_figure(judging, FIGURE_LARGE_TILE_SIDE)) >= 0;
}

double judge_partial_mm2(const struct placed_lay *lay)
{
	double area = 0;
	for (size_t i = 0; i < lay->strips->strip_count; i++)
		area += region_area(&lay->strips->strips[i].region);
	return area;
}

double judge_full_mm2(const struct placed_lay *lay)
{
	return lay->strips->cover.ground_mm2;
}

struct raised judge_raise_lay(const struct judging *judging, enum rule_id id,
                              const struct placed_lay *lay)
{
	const struct rule *rule = judge_rule(judging, id);
	return (struct raised){
		.rule = rule,
		.about = lay->field->lay->id,
		.line = lay->field->lay->line,
		.at = judge_middle_of_lay(lay),
		.limit = rule->limit,
	};
}

/* ---- the list ---- */

/* By line, rule, element, text: never equal unless they say the same. */
static int compare_findings(const void *a, const void *b)
{
	const struct finding *p = a, *q = b;
	if (p->line != q->line)
		return p->line < q->line ? -1 : 1;
	int order = strcmp(p->rule->name, q->rule->name);
	if (order == 0)
		order = strcmp(p->about, q->about);
	return order != 0 ? order : strcmp(p->text, q->text);
}

/* An element that lies in two lays is told of once. */
static size_t drop_repeats(struct finding *items, size_t count)
{
	size_t kept = 0;
	for (size_t i = 0; i < count; i++)
		if (kept == 0 || compare_findings(&items[kept - 1], &items[i]) != 0)
			items[kept++] = items[i];
	return kept;
}

static const struct findings *judge_all(struct arena *arena, const struct placed *placed,
                                        const struct words *words,
                                        const struct alternatives **alternatives)
{
	static void (*const judges[])(struct judging *) = {
		judge_slabs,     judge_readings,  judge_rooms,       judge_needs,
		judge_cracks,    judge_movements, judge_slab_joints, judge_soft_joints,
		judge_membranes, judge_tile,      judge_answers,
	};
	struct judging judging = {.arena = arena,
	                          .placed = placed,
	                          .alternatives = alternatives,
	                          .say = {arena, words, placed->site->inches}};
	judging.answer_is_used = ARENA_ARRAY(arena, bool, placed->site->plan->answer_count);
	struct findings *findings = ARENA_NEW(arena, struct findings);
	for (size_t i = 0; i < sizeof judges / sizeof judges[0]; i++)
		judges[i](&judging);
	findings->items = judging.list.items;
	if (judging.list.count > 0)
		qsort(findings->items, judging.list.count, sizeof *findings->items,
		      compare_findings);
	findings->count = drop_repeats(findings->items, judging.list.count);
	findings->alternatives = alternatives;
	return findings;
}

const struct findings *findings_judge(struct arena *arena, const struct placed *placed,
                                      const struct words *words)
{
	const struct alternatives **alternatives =
		ARENA_ARRAY(arena, const struct alternatives *, placed->lay_count);
	for (size_t i = 0; i < placed->lay_count; i++)
		alternatives[i] = alternatives_of_lay(arena, placed->rules, &placed->lays[i]);
	return judge_all(arena, placed, words, alternatives);
}

const struct findings *findings_judge_plainly(struct arena *arena, const struct placed *placed,
                                              const struct words *words)
{
	return judge_all(arena, placed, words, NULL);
}
