#include "layout/soft_side.h"

#include <string.h>

#include "geometry/tolerance.h"
#include "layout/soft_bars.h"
#include "layout/soft_round.h"

struct finding {
	struct arena *arena;
	const struct soft_setting *setting;
	struct soft_unit *unit;
	struct soft_side side;
	struct soft_outline outline; /* of the side */
	struct outline_run *runs;
	size_t run_count;
	struct soft_side_found found;
};

static bool is_listed(const char *ids, const char *id)
{
	size_t length = strlen(id);
	for (const char *at = ids; (at = strstr(at, id)) != NULL; at += length)
		if ((at == ids || at[-1] == ' ') && (at[length] == ' ' || at[length] == '\0'))
			return true;
	return false;
}

static void add_use(struct finding *finding, struct point at)
{
	const char *uses = finding->found.uses, *id = soft_setting_joint_at(finding->setting, at);
	if (id && !is_listed(uses, id))
		finding->found.uses =
			arena_printf(finding->arena, *uses ? "%s %s" : "%s%s", uses, id);
}

/* A place where both ends may be, at a border, or in the field, at a strip's end; NULL: none. */
static const struct soft_port *shared_port(const struct soft_ports *from,
                                           const struct soft_ports *to, bool at_border)
{
	for (size_t k = 0; k < from->ports.count; k++)
		for (size_t n = 0; n < to->ports.count; n++) {
			const struct soft_port *a = &from->ports.items[k], *b = &to->ports.items[n];
			if (a->at_border == at_border && b->at_border == at_border &&
			    point_distance(a->at, b->at) < TOLERANCE_WHOLE)
				return a;
		}
	return NULL;
}

/* True where the side runs round the tile and comes back to a place: what it encloses with it is
 * the tile, or else what lies between the two. */
static bool goes_round(const struct finding *finding, struct point place)
{
	const struct soft_outline *outline = &finding->outline;
	double twice = 0;
	for (size_t k = 0; k < outline->count; k++) {
		struct point a = point_sub(outline->stretches[k].line.from, place);
		twice += point_cross(a, point_sub(outline->stretches[k].line.to, place));
	}
	return twice > region_area(&finding->unit->crossed);
}

/* A corner in the field that both strips end at, where the side goes round the tile to it; NULL:
 * none. */
static const struct soft_port *round_corner(const struct finding *finding,
                                            const struct soft_ports *from,
                                            const struct soft_ports *to)
{
	const struct soft_port *met = shared_port(from, to, false);
	return met && goes_round(finding, met->at) ? met : NULL;
}

/* Of the joints along the side the one farthest from a place. */
static const struct outline_stretch *farthest_joint(const struct finding *finding,
                                                    struct point place)
{
	const struct outline_stretch *farthest = NULL;
	double most = 0;
	for (size_t k = 0; k < finding->outline.count; k++) {
		const struct outline_stretch *stretch = &finding->outline.stretches[k];
		double distance = segment_distance(stretch->line, place);
		if (!stretch->is_joint || distance <= most)
			continue;
		most = distance;
		farthest = stretch;
	}
	return farthest;
}

static bool search_side(struct finding *finding, const struct soft_ports *from,
                        const struct soft_ports *to, const struct soft_port *shared,
                        struct soft_walk *out_walk)
{
	const struct outline_stretch *far = NULL;
	if (shared)
		far = farthest_joint(finding, shared->at);
	if (!far)
		return soft_search(finding->arena, finding->setting, finding->unit, from, to,
		                   out_walk);
	struct segment ray = soft_spoke(finding->setting, finding->unit->outline.ring, far->line);
	return soft_round_walk_over(finding->arena, finding->setting, finding->unit, ray,
	                            !finding->side.is_backwards, from, to, out_walk);
}

/* Adds the least walk of the side from the one lot of ports to the other, or what serves
 * instead of one. */
static bool add_walk(struct finding *finding, const struct soft_ports *from,
                     const struct soft_ports *to)
{
	struct soft_walk walk;
	bool backwards = finding->side.is_backwards;
	const struct soft_port *shared = shared_port(from, to, true);
	if (shared && !goes_round(finding, shared->at)) {
		add_use(finding, shared->at);
		return true;
	}
	if (!shared)
		shared = round_corner(finding, from, to);
	if (!search_side(finding, backwards ? to : from, backwards ? from : to, shared, &walk))
		return false;
	*array_push(finding->arena, &finding->found.walks) = walk;
	return true;
}

/* True where the tile lies against a border beside an end of the side, before any joint. */
static bool is_against_at(const struct finding *finding, bool at_end)
{
	const struct soft_outline *outline = &finding->outline;
	for (size_t k = 0; k < outline->count; k++) {
		const struct outline_stretch *stretch =
			&outline->stretches[at_end ? outline->count - 1 - k : k];
		if (stretch->is_joint || stretch->is_against)
			return stretch->is_against;
	}
	return false;
}

static struct soft_ports ports_of_run(const struct finding *finding, size_t index, bool at_end)
{
	return soft_run_ports(finding->arena, finding->setting, finding->unit,
	                      &finding->runs[index], at_end);
}

/* Ports at one end of the side; past its first extent also where the tile beside the end
 * comes away from the border. */
static struct soft_ports ports_at(const struct finding *finding, bool at_end,
                                  enum soft_extent extent)
{
	const struct soft_end *end = at_end ? finding->side.to : finding->side.from;
	struct soft_ports ports = soft_end_ports(finding->arena, finding->setting, finding->unit,
	                                         end, !at_end, extent);
	if (extent > SOFT_EXTENT_LINE && finding->run_count > 0 && is_against_at(finding, at_end)) {
		struct soft_ports more =
			ports_of_run(finding, at_end ? finding->run_count - 1 : 0, at_end);
		soft_ports_join(finding->arena, &ports, &more);
	}
	return ports;
}

/* From where one run of joints begins to where another ends; the side's own ends, if any, are where
 * the first begins and the last ends. */
static bool find_from_to(struct finding *finding, size_t first, size_t last)
{
	bool has_ends = finding->side.from != NULL;
	bool is_first = has_ends && first == 0;
	bool is_last = has_ends && last + 1 >= finding->run_count;
	for (int extent = SOFT_EXTENT_LINE; extent < SOFT_EXTENTS; extent++) {
		enum soft_extent own = (enum soft_extent)extent;
		struct soft_ports from = is_first ? ports_at(finding, false, own)
		                                  : ports_of_run(finding, first, false);
		struct soft_ports to =
			is_last ? ports_at(finding, true, own) : ports_of_run(finding, last, true);
		const struct soft_port *met = shared_port(&from, &to, false);
		finding->found.is_nothing =
			own == SOFT_EXTENT_LINE && met && !goes_round(finding, met->at);
		if (finding->found.is_nothing || add_walk(finding, &from, &to))
			return true;
	}
	return false;
}

/* Joints that the tile lies against; what an end at a border meets there serves no side. */
static void add_uses(struct finding *finding)
{
	const struct soft_outline *outline = &finding->outline;
	size_t first = 0, end = outline->count;
	bool skips = finding->run_count > 0 && finding->side.from;
	while (skips && finding->side.from->at_border && !outline->stretches[first].is_joint)
		first++;
	while (skips && finding->side.to->at_border && !outline->stretches[end - 1].is_joint)
		end--;
	for (size_t k = first; k < end; k++) {
		struct segment line = outline->stretches[k].line;
		if (outline->stretches[k].is_against)
			add_use(finding, point_between(line.from, line.to, 0.5));
	}
}

/* Tile lies against a border between the ends: run by run, in the order of walking. */
static void find_runs(struct finding *finding)
{
	for (size_t k = 0; k < finding->run_count; k++) {
		size_t run = finding->side.is_backwards ? finding->run_count - 1 - k : k;
		find_from_to(finding, run, run);
	}
	add_uses(finding);
}

/* Where a side begins on the outline, and where it ends. All round, it begins where the tile lies
 * against a border. */
static struct soft_outline outline_of(struct arena *arena, const struct soft_unit *unit,
                                      struct soft_side side)
{
	const struct soft_outline *all = &unit->outline;
	if (side.from)
		return soft_outline_between(arena, all, side.from->round, side.to->round);
	double round = 0;
	for (size_t k = 0; k < all->count && round == 0; k++)
		if (!all->stretches[k].is_joint)
			round = all->stretches[k].round;
	return soft_outline_between(arena, all, round, round);
}

/* Some of the outline lies neither beside tile nor against a border: beyond it is crossed tile, or
 * ground that crossed tile encloses. */
static bool is_enclosed(const struct soft_outline *outline)
{
	for (size_t k = 0; k < outline->count; k++)
		if (!outline->stretches[k].is_joint && !outline->stretches[k].is_against)
			return true;
	return false;
}

struct soft_side_found soft_side_find(struct arena *arena, const struct soft_setting *setting,
                                      struct soft_unit *unit, struct soft_side side)
{
	struct finding finding = {.arena = arena,
	                          .setting = setting,
	                          .unit = unit,
	                          .side = side,
	                          .found = {.uses = ""}};
	struct corridor_bars bars = soft_bars(arena, setting, unit, side.from, side.to);
	finding.outline = outline_of(arena, unit, side);
	finding.runs = soft_outline_runs(arena, &finding.outline, &finding.run_count);
	unit->corridor.side = &bars;
	size_t last = finding.run_count > 0 ? finding.run_count - 1 : 0;
	if (!side.from || !find_from_to(&finding, 0, last))
		find_runs(&finding);
	unit->corridor.side = NULL;
	bool is_bare = finding.found.walks.count == 0 && !finding.found.is_nothing;
	finding.found.is_missing = is_bare && finding.run_count > 0 && !*finding.found.uses;
	finding.found.is_enclosed = is_bare && is_enclosed(&finding.outline);
	return finding.found;
}
