// present.cpp - soft joints are there: from the crossed tile one comes, over plain joints, to
// none that lies far off; where no tile is crossed, or one side is enough, a look aside from the
// crack meets a soft joint or what serves.
#include <algorithm>
#include <cmath>
#include <set>

#include "network.hpp"

namespace
{

const double NEAR = 0.01;
const double END_REACH = 25.4; // an end this near a border lies on it

// What a look aside from a crack must meet before it passes the strip's greatest reach.
struct Lookout {
	const Floor &floor;
	std::vector<Segment> softs;
	std::vector<Segment> own;  // the group's cracks, and the way on from their ends
	double far, near;          // how far to look for a soft joint, for the field's end
	std::vector<Segment> ends; // of the cracks, as points

	bool meets(Point p, Point aside) const
	{
		Segment ray{p, p + aside * far};
		// At a field joint the look ends: it serves beside it, or where a soft joint ends.
		for (const Joint *line : field_lines(floor))
			for (const Segment &s : segments_of(line->line))
				if (std::vector<double> at = cuts(ray, {s}); at.size() > 2)
					ray.b = p + aside * (norm(ray.b - p) * at[1]);
		bool at_line = norm(ray.b - p) < far - NEAR;
		for (const Segment &soft : softs)
			if (distance(ray, soft) <= NEAR)
				return true;
		for (const Segment &other : own)
			if (distance(p, other) > 1 &&
			    (distance(ray, other) <= 0 || runs_beside(aside, ray, other)))
				return true;
		if (at_line)
			return norm(ray.b - p) <= near || is_by_a_soft_end(ray.b);
		for (double r = 0; r <= far; r += 5)
			if (is_stop(p + aside * r, p)) // does what lies there serve?
				return r <= near || is_by_an_end(p + aside * r);
		return false;
	}

	// A carried or perimeter joint; or the edge of a hold, where no joint is laid before an
	// answer.
	bool is_stop(Point p, Point from) const
	{
		if (!floor.on_panel(p, 0))
			return true;
		for (const Hold &hold : floor.record.holds)
			if (inside(hold.shape, p) && !inside(hold.shape, from))
				return true;
		return false;
	}

	// A look from where a branch leaves goes along the branch, between its own two joints.
	bool runs_beside(Point aside, const Segment &ray, const Segment &branch) const
	{
		const double straight = 0.8; // cosine
		Point along = (branch.b - branch.a) * (1 / norm(branch.b - branch.a));
		return std::fabs(along.x * aside.x + along.y * aside.y) > straight &&
		       distance(ray, branch) <= floor.lay.tile_width;
	}

	bool is_by_a_soft_end(Point p) const
	{
		for (const Joint &joint : floor.record.joints)
			if (joint.kind == "soft" && !joint.line.empty())
				for (Point end : {joint.line.front(), joint.line.back()})
					if (norm(end - p) <= floor.lay.tile_long)
						return true;
		return false;
	}

	bool is_by_an_end(Point p) const
	{
		for (const Segment &s : ends)
			if (distance(p, s) <= far)
				return true;
		return false;
	}

	// Sides that have a joint, looking square to the crack there and to its whole run.
	int sides(Point p, Point along, Point chord) const
	{
		if (distance(p, softs) <= floor.lay.joint)
			return 2; // the crack runs in the joint
		int found = 0;
		for (double side : {1.0, -1.0})
			found += meets(p, Point{-along.y, along.x} * side) ||
			         meets(p, Point{-chord.y, chord.x} * side);
		return found;
	}
};

// How far one comes from the crossed tile of a panel over joints that are not soft.
class Spill
{
      public:
	Spill(const Floor &f, const Group &g, size_t p, double greatest_reach)
	    : floor(f), group(g), panel(f.field.panels[p]), network(f, p, box_round(f, g)),
	      far(f.half_width() + 2 * f.lay.tile_long),
	      near(f.lay.tile_long + greatest_reach + END_REACH)
	{
		for (const Tile &tile : floor.tiling.tiles)
			if (int c = tile.panel == p ? network.cell_at(tile.face, tile.i, tile.j)
			                            : -1;
			    c >= 0 && !tile.held)
				pieces[c].push_back(&tile);
		for (const Crack *crack : group.cracks) {
			for (const OpenEnd &end : open_ends(floor, *crack))
				open.push_back(end);
			for (const Line &run : crack->runs)
				for (Point end : {run.front(), run.back()})
					ends.push_back({end, end});
			add_crossed(*crack, p);
		}
		for (const Segment &s : group.line) // where it leaves the panel it ends there
			if (std::vector<double> at = cuts(s, panel.border); at.size() > 2)
				for (double t : at) {
					Point end = s.a + (s.b - s.a) * t;
					ends.push_back({end, end});
				}
		for (const Joint &joint : floor.record.joints)
			if (joint.kind == "soft" && !joint.line.empty()) {
				for (const Segment &s : segments_of(joint.line))
					softs.push_back(s);
				for (Point end : {joint.line.front(), joint.line.back()})
					soft_ends.push_back({end, end});
			}
		network.mark_crossed(with_ways_on(p));
		join();
	}

	std::vector<const Tile *> first;       // crossed
	std::set<const Tile *> reached, loose; // loose: reached, though they should not be

	void run()
	{
		std::vector<const Tile *> from = first;
		reached.insert(from.begin(), from.end());
		while (!from.empty()) {
			const Tile *tile = from.back();
			from.pop_back();
			if (is_far(*tile) || is_at_bare_border(*tile)) {
				loose.insert(tile);
				continue;
			}
			for (const Tile *next : beside[tile])
				if (!is_past_an_end(next->middle) && reached.insert(next).second)
					from.push_back(next);
		}
	}

      private:
	const Floor &floor;
	const Group &group;
	const Panel &panel;
	Network network;
	const double far, near;
	std::map<int, std::vector<const Tile *>> pieces; // by cell
	std::map<const Tile *, std::vector<const Tile *>> beside;
	std::vector<OpenEnd> open;
	std::vector<Segment> ends, softs, soft_ends;

	// Under an obstacle, or beyond a joint that stays open, the crack moves no tile.
	void add_crossed(const Crack &crack, size_t p)
	{
		std::vector<Segment> line;
		for (const Line &run : crack.runs)
			for (const Segment &s : inside_of(panel.shape, segments_of(run)))
				line.push_back(s);
		for (const Tile *tile : crossed(floor, crack))
			for (const Ring &quad : tile->quads)
				if (tile->panel == p && !line.empty() &&
				    distance(quad, line) < reach_of(floor.plan, crack)) {
					first.push_back(tile);
					break;
				}
	}

	// An end whose way on runs into the group encloses ground as a crack that meets it would.
	std::vector<const Tile *> with_ways_on(size_t p) const
	{
		std::vector<const Tile *> tiles = first;
		for (const OpenEnd &end : open) {
			std::vector<Segment> on = {
				{end.at, end.at + end.along * floor.overrun()}};
			for (const Tile &tile : floor.tiling.tiles)
				for (const Ring &quad : tile.quads)
					if (tile.panel == p && distance(quad, on) <= 0)
						tiles.push_back(&tile);
		}
		return tiles;
	}

	static Box box_round(const Floor &floor, const Group &group)
	{
		Box box;
		for (const Segment &s : group.line)
			box.add(s.a), box.add(s.b);
		box.grow(floor.half_width() + floor.overrun() + 4 * floor.lay.tile_long);
		return box;
	}

	// Of a cell the pieces that border on a point of its edge.
	std::vector<const Tile *> pieces_at(int cell, Point p) const
	{
		std::vector<const Tile *> found;
		if (auto list = pieces.find(cell); list != pieces.end())
			for (const Tile *tile : list->second)
				for (const Ring &quad : tile->quads)
					if (distance(p, segments_of(Shape{quad})) <=
					    floor.lay.joint) {
						found.push_back(tile);
						break;
					}
		return found;
	}

	void join()
	{
		for (const Network::Edge &edge : network.edges) {
			Point middle = (network.nodes[static_cast<size_t>(edge.from)] +
			                network.nodes[static_cast<size_t>(edge.to)]) *
			               0.5;
			if (distance(middle, softs) <= NEAR)
				continue;
			for (int a : edge.cells)
				for (int b : edge.cells)
					if (a != b)
						for (const Tile *one : pieces_at(a, middle))
							for (const Tile *other :
							     pieces_at(b, middle))
								beside[one].push_back(other);
		}
	}

	// Beyond an end in the field the two sides' joints stop; they may stop one tile short.
	bool is_past_an_end(Point p) const
	{
		for (const OpenEnd &end : open) {
			double on = dot(p - end.at, end.along);
			if (on > -floor.lay.tile_long && on < floor.overrun() + far &&
			    std::fabs(cross(p - end.at, end.along)) < far)
				return true;
		}
		return false;
	}

	bool is_far(const Tile &tile) const
	{
		int cell = network.cell_at(tile.face, tile.i, tile.j);
		return !network.crossed[static_cast<size_t>(cell)] &&
		       distance(tile.middle, group.line) > far;
	}

	// A border serves within a tile of the crack, and beside an end of it or of a soft joint.
	bool is_at_bare_border(const Tile &tile) const
	{
		for (const Ring &quad : tile.quads)
			for (Point p : quad)
				if (distance(p, panel.border) <= NEAR &&
				    distance(p, group.line) > near && distance(p, ends) > far &&
				    distance(p, soft_ends) > floor.lay.tile_long)
					return true;
		return false;
	}
};

double greatest_reach(const Floor &floor, const Group &group)
{
	double reach = 0;
	for (const Crack *crack : group.cracks)
		reach = std::max(reach, reach_of(floor.plan, *crack));
	return reach;
}

// Panels in which every side is looked for by spilling.
std::set<size_t> check_spill(const Floor &floor, const Group &group, Report &report)
{
	std::set<size_t> seen;
	size_t reached = 0, loose = 0;
	Point first;
	for (size_t p = 0; p < floor.field.panels.size(); p++) {
		Spill spill(floor, group, p, greatest_reach(floor, group));
		if (spill.first.empty())
			continue;
		seen.insert(p);
		spill.run();
		reached += spill.reached.size();
		if (loose == 0 && !spill.loose.empty())
			first = (*spill.loose.begin())->middle;
		loose += spill.loose.size();
	}
	report.cases += static_cast<long>(reached);
	report.check(loose == 0, "E-C3.present",
	             "group %s: of %zu tiles bonded to what it crosses %zu lie too far off, one at "
	             "%.0f,%.0f",
	             group.id.c_str(), reached, loose, first.x, first.y);
	return seen;
}

bool is_in(const Floor &floor, const std::set<size_t> &panels, Point p)
{
	for (size_t k : panels)
		if (inside(floor.field.panels[k].shape, p))
			return true;
	return false;
}

} // namespace

void check_present(const Floor &floor, const Group &group, Report &report)
{
	double reach = greatest_reach(floor, group);
	Lookout lookout{floor,
	                {},
	                group.line,
	                floor.half_width() + 2 * floor.lay.tile_long,
	                floor.lay.tile_long + reach + END_REACH,
	                {}};
	for (const Crack *crack : group.cracks)
		for (const Line &run : crack->runs)
			for (Point p : {run.front(), run.back()})
				lookout.ends.push_back({p, p});
	// Over the way on from an end a look goes out between the joints of its two sides.
	for (const Crack *crack : group.cracks)
		for (const OpenEnd &end : open_ends(floor, *crack))
			lookout.own.push_back({end.at, end.at + end.along * floor.overrun()});
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "soft")
			for (const Segment &s : segments_of(joint.line))
				lookout.softs.push_back(s);
	long samples = 0, open = 0;
	Point first;
	int wanted = floor.membrane()->one && group.cracks.size() == 1 ? 1 : 2;
	std::set<size_t> seen;
	if (wanted == 2)
		seen = check_spill(floor, group, report);
	for (const Crack *crack : group.cracks)
		for (const Line &run : crack->runs) {
			Point chord = run.back() - run.front();
			chord = chord * (1 / norm(chord));
			for (const Segment &s : segments_of(run)) {
				Point along = (s.b - s.a) * (1 / norm(s.b - s.a));
				for (double t = 20; t < norm(s.b - s.a) - 10; t += 40) {
					Point p = s.a + along * t;
					if (!floor.on_panel(p, 0) || is_in(floor, seen, p))
						continue;
					samples++;
					if (lookout.sides(p, along, chord) < wanted && open++ == 0)
						first = p;
				}
			}
		}
	report.cases += samples;
	report.check(
		open == 0, "E-C3.present",
		"group %s: %ld of %ld points of it without a joint beside them, first %.0f,%.0f",
		group.id.c_str(), open, samples, first.x, first.y);
}
