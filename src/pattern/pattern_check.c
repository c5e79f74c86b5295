#include "pattern/pattern_check.h"

#include "pattern/period_proof.h"
#include "units/length.h"
#include "units/number.h"

struct checking {
	struct arena *arena;
	struct diag_list *diags;
	bool inches;
	const struct plan_lay *lay;
	const struct period *period;
};

/* As it may be written in a plan: nothing is rounded. */
static const char *exact(const struct checking *c, int64_t nm)
{
	const int64_t sixty_fourth_nm = 396875;
	struct strbuf text = strbuf_in(c->arena);
	if (c->inches && nm % sixty_fourth_nm == 0) {
		length_add_feet_inches(&text, length_mm(nm), 64);
		return text.text;
	}
	number_add_short(&text, length_mm(nm), 6);
	strbuf_add(&text, "mm");
	return text.text;
}

/* The line of a piece of the plan's own module; else the lay's. */
static int line_of(const struct checking *c, size_t cell)
{
	int line = c->period->cells[cell].line;
	return line > 0 ? line : c->lay->line;
}

static const char *tile_of(const struct checking *c, size_t cell)
{
	return c->lay->tiles[c->period->cells[cell].tile]->id;
}

/* The second tile, by the line of its piece where it has one of its own. */
static const char *other_tile(const struct checking *c, struct period_proof proof)
{
	int line = c->period->cells[proof.second].line;
	const char *tile = tile_of(c, proof.second);
	if (line == 0)
		return arena_printf(c->arena, "a next \"%s\"", tile);
	if (proof.first == proof.second)
		return arena_printf(c->arena, "its own next \"%s\"", tile);
	return arena_printf(c->arena, "\"%s\" of line %d", tile, line);
}

static const char *cure_text(const struct checking *c, struct period_proof proof)
{
	static const char *const sides[] = {[PERIOD_LONG] = "long", [PERIOD_WIDE] = "wide"};
	struct period_cure cure;
	if (!period_find_cure(c->arena, c->lay, proof, &cure))
		return "tile and joint that fill the floor; no one size alone closes it";
	if (cure.side == PERIOD_JOINT)
		return arena_printf(c->arena, "joint=\"%s\"", exact(c, cure.size_nm));
	return arena_printf(c->arena, "%s=\"%s\" of tile \"%s\"", sides[cure.side],
	                    exact(c, cure.size_nm), c->lay->tiles[cure.tile]->id);
}

static void say(struct checking *c, struct period_proof proof)
{
	bool overlaps = proof.fault == PERIOD_OVERLAPS;
	diag_error(c->diags, line_of(c, proof.first),
	           "<lay> \"%s\": tile \"%s\" %s %s by %s, %s,%s from its lower left corner; "
	           "expected %s",
	           c->lay->id, tile_of(c, proof.first),
	           overlaps ? "or its joint overlaps" : "is parted beyond the joint from",
	           other_tile(c, proof), exact(c, proof.size_nm), exact(c, proof.x),
	           exact(c, proof.y), cure_text(c, proof));
}

static void check_lay(struct checking *c)
{
	c->period = period_from_lay(c->arena, c->lay);
	struct period_proof proof = period_prove(c->arena, c->period);
	if (proof.fault == PERIOD_FLAT)
		diag_error(c->diags, c->lay->module->steps[1].line,
		           "<step> runs along the other one; expected two in different directions");
	else if (proof.fault != PERIOD_FILLS)
		say(c, proof);
}

/* False where a value the period rests on was reported already. */
static bool is_sound(const struct plan_lay *lay)
{
	const struct plan_module *module = lay->pattern == PLAN_PATTERN_MODULE ? lay->module : NULL;
	uint64_t given = lay->given;
	for (size_t i = 0; i < lay->tile_count; i++)
		given |= lay->tiles[i]->given;
	if (lay->tile_count == 0 || (lay->pattern == PLAN_PATTERN_MODULE && !module))
		return false;
	given |= module ? module->given : 0;
	for (size_t i = 0; module && i < module->piece_count; i++)
		given |= module->pieces[i].given;
	for (size_t i = 0; module && i < module->step_count; i++)
		given |= module->steps[i].given;
	return !(given & PLAN_FAULTY);
}

enum status pattern_check(struct arena *arena, const struct plan *plan, struct diag_list *diags)
{
	struct checking c = {.arena = arena, .diags = diags, .inches = plan_has_inches(plan)};
	size_t before = diags->diags.count;
	for (size_t i = 0; i < plan->lay_count; i++) {
		c.lay = &plan->lays[i];
		if (period_has_pattern(c.lay->pattern) && is_sound(c.lay))
			check_lay(&c);
	}
	return diags->diags.count > before ? STATUS_INPUT : STATUS_OK;
}
