#include "screen/fact.h"

#include <string.h>

#include "count/totals.h"
#include "findings/say.h"
#include "sheets/joint_tag.h"
#include "units/number.h"

struct telling {
	const struct draft *draft;
	const struct element *element;
	struct facts facts;
};

static void add(struct telling *t, const char *name, const char *value)
{
	if (value != NULL && *value != '\0')
		*array_push(t->draft->arena, &t->facts.list) = (struct fact){name, value, NULL};
}

static void add_word(struct telling *t, const char *key, const char *value)
{
	add(t, draft_word(t->draft, key), value);
}

/* An id that leads on to what it names. */
static void add_id(struct telling *t, const char *key, const char *id)
{
	if (id != NULL && *id != '\0')
		*array_push(t->draft->arena, &t->facts.list) =
			(struct fact){draft_word(t->draft, key), id, id};
}

static void add_length(struct telling *t, const char *key, double mm)
{
	add_word(t, key, draft_measure(t->draft, mm));
}

static void add_width(struct telling *t, const char *key, double mm)
{
	if (mm > 0)
		add_word(t, key, draft_width(t->draft, mm));
}

static void add_area(struct telling *t, double mm2)
{
	struct saying say = {t->draft->arena, t->draft->words, t->draft->site->inches};
	add_word(t, "page.fact.area", say_area(&say, mm2));
}

static void add_count(struct telling *t, const char *key, long count)
{
	add_word(t, key, arena_printf(t->draft->arena, "%ld", count));
}

static void add_pending(struct telling *t, bool pending)
{
	if (pending)
		add_word(t, "page.fact.pending", draft_word(t->draft, "page.yes"));
}

/* ---- as placed, by kind ---- */

static void tell_crack(struct telling *t, const struct site_crack *crack)
{
	static const char *const keys[] = {[CRACK_ISOLATE] = "decision.isolate",
	                                   [CRACK_HOLD] = "decision.hold",
	                                   [CRACK_CARRY] = "decision.carry"};
	struct crack_total total = crack_total(t->draft->placed, crack);
	if (!total.is_placed)
		return;
	add_word(t, "page.fact.treatment", draft_word(t->draft, keys[total.state]));
	add_pending(t, total.pending);
	if (strcmp(total.group, crack->id) != 0)
		add_id(t, "page.fact.group", total.group);
}

static void tell_hold(struct telling *t, const struct hold *hold)
{
	const struct cracks *cracks = t->element->lay->cracks;
	const struct crack_group *group = &cracks->groups[hold->group];
	for (size_t i = 0; i < group->crack_count; i++)
		add_id(t, "page.fact.crack", cracks->cracks[group->cracks[i]].id);
	add_area(t, hold->area_mm2);
	add_count(t, "page.fact.whole", hold->whole_count);
	add_count(t, "page.fact.cut", hold->cut_count);
}

static void tell_strip(struct telling *t, const struct strip *strip)
{
	for (size_t i = 0; i < strip->crack_count; i++)
		add_id(t, "page.fact.crack", strip->cracks[i]);
	add_pending(t, strip->pending);
	add_length(t, "joints.width", strip->width);
	add_length(t, "joints.length", strip->length);
	add_area(t, region_area(&strip->region));
	add_count(t, "page.fact.pieces", (long)strip->piece_count);
}

static void tell_joint(struct telling *t, const struct joint *joint)
{
	const struct draft *draft = t->draft;
	add_word(t, "joints.kind", joint_tag_kind(draft, joint));
	add_id(t, "page.fact.of", joint->of);
	add_width(t, "joints.width", joint->width);
	add_width(t, "joints.depth", joint->depth);
	add_word(t, "joints.back", joint_tag_back(draft, joint));
	add_length(t, "joints.length", joint->length);
	add_word(t, "joints.turns", number_text(draft->arena, joint->turns, 0));
	add_word(t, "joints.place", joint_tag_where(draft, t->element->lay, joint));
	const struct rule *rule = rules_find(draft->placed->rules, joint->why);
	add_word(t, "joints.why", joint->why);
	if (rule != NULL)
		add_word(t, "page.fact.source", rule->source);
}

static void tell_control(struct telling *t, const struct control *control)
{
	const struct draft *draft = t->draft;
	add_word(t, "page.fact.line",
	         draft_word(draft, control->along_u ? "tag.line-u" : "tag.line-v"));
	add_id(t, "page.fact.room", control->room->id);
	add_length(t, "joints.length", point_distance(control->from, control->to));
	for (size_t i = 0; i < control->offset_count; i++)
		add(t, draft_text(draft, "page.fact.from", {"wall", control->offsets[i].wall}),
		    draft_measure(draft, control->offsets[i].distance));
}

static void tell_panel(struct telling *t, const struct panel *panel)
{
	add_word(t, "page.fact.size",
	         draft_text(t->draft, "panel.size",
	                    {"long", draft_measure(t->draft, panel->long_side)},
	                    {"short", draft_measure(t->draft, panel->short_side)}));
	add_area(t, panel->area_mm2);
	add_count(t, "page.fact.whole", panel->whole_count);
	add_count(t, "page.fact.cut", (long)panel->piece_count);
	add_id(t, "page.fact.lay", t->element->lay->field->lay->id);
}

static void tell_room(struct telling *t, const struct site_room *room)
{
	struct region ground = site_room_ground(t->draft->arena, room);
	add(t, draft_word(t->draft, "page.fact.name"), room->name);
	add_area(t, region_area(&ground));
	if (room->closing_error > 0)
		add_width(t, "page.fact.closing", room->closing_error);
}

static void tell_lay(struct telling *t, const struct placed_lay *lay)
{
	struct tile_total total = tile_total(lay);
	add_area(t, lay->field->area_mm2);
	add_count(t, "page.fact.whole", total.whole);
	add_count(t, "page.fact.cut", total.cut);
	add_length(t, "page.fact.smallest", lay->position->smallest_cut);
}

struct facts facts_placed(const struct draft *draft, const struct element *element)
{
	struct telling t = {draft, element, {{0}}};
	switch (element->thing || element->lay ? element->kind : ELEMENT_OTHER) {
	case ELEMENT_CRACK:
		tell_crack(&t, element->thing);
		break;
	case ELEMENT_HOLD:
		tell_hold(&t, element->thing);
		break;
	case ELEMENT_STRIP:
		tell_strip(&t, element->thing);
		break;
	case ELEMENT_JOINT:
		tell_joint(&t, element->thing);
		break;
	case ELEMENT_CONTROL:
		tell_control(&t, element->thing);
		break;
	case ELEMENT_PANEL:
		tell_panel(&t, element->thing);
		break;
	case ELEMENT_ROOM:
		tell_room(&t, element->thing);
		break;
	case ELEMENT_LAY:
		tell_lay(&t, element->lay);
		break;
	default:
		break;
	}
	return t.facts;
}

/* ---- as written, as assumed: in the plan's own words ---- */

struct facts facts_written(const struct draft *draft, const struct element *element)
{
	struct telling t = {draft, element, {{0}}};
	const struct markup *node = element->written;
	for (size_t i = 0; node != NULL && i < node->attribute_count; i++)
		if (strcmp(node->attributes[i].name, "id") != 0)
			add(&t, node->attributes[i].name, node->attributes[i].value);
	return t.facts;
}

struct facts facts_assumed(const struct draft *draft, const struct element *element)
{
	struct telling t = {draft, element, {{0}}};
	const struct plan *plan = draft->site->plan;
	for (size_t i = 0; element->written != NULL && i < plan->default_count; i++) {
		const struct plan_default *d = &plan->defaults[i];
		if (d->id != NULL && strcmp(d->id, element->id) == 0)
			add(&t, d->attribute, d->value);
	}
	return t.facts;
}
