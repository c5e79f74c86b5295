// present.cpp - soft joints are there: from the crossed tile one comes, over plain joints, to
// none that lies far off; and where a crack runs in a tile joint, that joint is soft.
#include <algorithm>
#include <cmath>
#include <set>

#include "network.hpp"

namespace
{

const double NEAR = 0.01;
const double END_REACH = 25.4; // an end this near a border lies on it
const double HAIR = 0.1;       // tile that lies so little deeper lies at a joint

// One side is enough: where the membrane says so, and of a slab joint that is moved to one joint
// of the tile.
bool is_one(const Floor &floor, const Group &group)
{
	bool is_joint = floor.plan.joints.count(group.cracks.front()->id) > 0;
	return group.cracks.size() == 1 && (is_joint || floor.membrane()->one);
}

// How far one comes from the crossed tile of a panel over joints that are not soft.
class Spill
{
      public:
	Spill(const Floor &f, const Group &g, size_t p, double reach)
	    : floor(f), group(g), panel(f.field.panels[p]), network(f, p, box_round(f, g)),
	      greatest_reach(reach), far(f.half_width() + 2 * f.lay.tile_long),
	      near(f.lay.tile_long + reach + END_REACH),
	      flank(f.half_width() + f.lay.tile_long + END_REACH), covers(f.covered())
	{
		for (const Tile &tile : floor.tiling.tiles)
			if (int c = tile.panel == p ? network.cell_at(tile.face, tile.i, tile.j)
			                            : -1;
			    c >= 0 && !in_other_hold(f, *g.cracks.front(), tile))
				pieces[c].push_back(&tile);
		for (const Crack *crack : group.cracks) {
			for (const OpenEnd &end : open_ends(floor, *crack))
				open.push_back(end);
			if (is_one(f, g)) // past any end begins the other side
				for (Line run : crack->runs)
					for (int turn = 0; turn < 2; turn++) {
						std::reverse(run.begin(), run.end());
						Point on = run.back() - run[run.size() - 2];
						open.push_back({run.back(), on * (1 / norm(on))});
					}
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

	// The crossed tiles in lots that hang together.
	std::vector<std::vector<const Tile *>> lots()
	{
		std::vector<std::vector<const Tile *>> lots;
		std::set<const Tile *> left(first.begin(), first.end());
		while (!left.empty()) {
			lots.push_back({*left.begin()});
			left.erase(left.begin());
			for (size_t k = 0; k < lots.back().size(); k++)
				for (auto [next, where] : beside[lots.back()[k]])
					if (left.erase(next))
						lots.back().push_back(next);
		}
		return lots;
	}

	// From some tiles, on both sides of the crack, or only on its left (1) or right (-1).
	void run(std::vector<const Tile *> from, int side)
	{
		std::vector<Segment> line = line_under(from);
		for (int s : {-1, 1})
			served[s > 0] = is_served(line, s);
		loose.clear();
		reached = {from.begin(), from.end()};
		while (!from.empty()) {
			const Tile *tile = from.back();
			from.pop_back();
			if (!is_enclosed(*tile) && (is_far(*tile) || is_at_bare_border(*tile))) {
				loose.insert(tile);
				continue;
			}
			for (auto [next, where] : beside[tile])
				if (!is_past_an_end(where) &&
				    is_looked_at(side_of(next->middle), side) &&
				    reached.insert(next).second)
					from.push_back(next);
		}
	}

      private:
	const Floor &floor;
	const Group &group;
	const Panel &panel;
	Network network;
	const double greatest_reach, far, near, flank;
	const std::vector<Shape> covers;
	std::map<int, std::vector<const Tile *>> pieces;                            // by cell
	std::map<const Tile *, std::vector<std::pair<const Tile *, Point>>> beside; // and where
	std::vector<OpenEnd> open;
	bool served[2] = {}; // right, left
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
			std::vector<Segment> on = {{end.at, end.at + end.along * floor.overrun()}};
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

	// Of a cell the pieces that lie half a joint beside a point of its edge, none where tile
	// ends before the edge does.
	std::vector<const Tile *> pieces_at(int cell, Point p) const
	{
		std::vector<const Tile *> found;
		if (auto list = pieces.find(cell); list != pieces.end())
			for (const Tile *tile : list->second)
				for (const Ring &quad : tile->quads)
					if (distance(p, segments_of(Shape{quad})) <=
					    floor.lay.joint / 2 + HAIR) {
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
								beside[one].push_back(
									{other, middle});
		}
	}

	// The stretches of the crack that some tiles lie over.
	std::vector<Segment> line_under(const std::vector<const Tile *> &tiles) const
	{
		std::vector<Segment> under;
		for (const Segment &s : inside_of(panel.shape, group.line))
			if (std::any_of(tiles.begin(), tiles.end(), [&](const Tile *tile) {
				    return std::any_of(tile->quads.begin(), tile->quads.end(),
				                       [&](const Ring &quad) {
							       return distance(quad, {s}) <
					                              greatest_reach;
						       });
			    }))
				under.push_back(s);
		return under;
	}

	// A border within one tile of all of a lone crack, as far as the tile lies over it, serves
	// that side.
	bool is_served(const std::vector<Segment> &line, int side) const
	{
		if (group.cracks.size() > 1 || line.empty())
			return false;
		for (const Segment &s : line) {
			double length = norm(s.b - s.a);
			Point along = (s.b - s.a) * (1 / length);
			Point aside = Point{-along.y, along.x} * (side * floor.lay.tile_long);
			for (double t = 0; t <= length; t += 10) {
				Point p = s.a + along * t;
				if (cuts({p, p + aside}, panel.border).size() <= 2 &&
				    distance(p, panel.border) > NEAR)
					return false;
			}
		}
		return true;
	}

	bool is_looked_at(int side, int wanted) const
	{
		return (wanted == 0 || side == wanted) && !served[side > 0];
	}

	int side_of(Point p) const
	{
		const Segment *nearest = &group.line.front();
		for (const Segment &s : group.line)
			if (distance(p, s) < distance(p, *nearest))
				nearest = &s;
		return cross(nearest->b - nearest->a, p - nearest->a) > 0 ? 1 : -1;
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

	// Crossed, or inside of what is.
	bool is_enclosed(const Tile &tile) const
	{
		int cell = network.cell_at(tile.face, tile.i, tile.j);
		return network.crossed[static_cast<size_t>(cell)];
	}

	bool is_far(const Tile &tile) const
	{
		return distance(tile.middle, group.line) > far;
	}

	// A border serves within a tile of the crack, as far as the flanks of the strip go, and
	// beside an end of the crack or of a soft joint.
	bool is_at_bare_border(const Tile &tile) const
	{
		for (const Ring &quad : tile.quads)
			for (Point p : quad)
				if (distance(p, panel.border) <= NEAR &&
				    distance(p, group.line) >
				            (Floor::in_any(covers, p, NEAR) ? flank : near) &&
				    distance(p, ends) > far &&
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

// The crack runs in a tile joint: each point of it has a soft joint or a border beside it.
long open_points(const Floor &floor, const Group &group, size_t p, long &samples)
{
	const Panel &panel = floor.field.panels[p];
	std::vector<Segment> joints = panel.border;
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "soft")
			for (const Segment &s : segments_of(joint.line))
				joints.push_back(s);
	double near = floor.lay.joint + greatest_reach(floor, group) + END_REACH;
	long open = 0;
	for (const Segment &s : inside_of(panel.shape, group.line))
		for (double t = 20; t < norm(s.b - s.a) - 10; t += 40) {
			samples++;
			open += distance(s.a + (s.b - s.a) * (t / norm(s.b - s.a)), joints) > near;
		}
	return open;
}

} // namespace

void check_present(const Floor &floor, const Group &group, Report &report)
{
	bool one = is_one(floor, group);
	size_t reached = 0, loose = 0;
	long samples = 0, open = 0;
	Point first;
	for (size_t p = 0; p < floor.field.panels.size(); p++) {
		Spill spill(floor, group, p, greatest_reach(floor, group));
		if (spill.first.empty()) {
			open += open_points(floor, group, p, samples);
			continue;
		}
		for (const std::vector<const Tile *> &lot : spill.lots()) {
			spill.run(lot, one ? 1 : 0);
			if (one && !spill.loose.empty())
				spill.run(lot, -1);
			reached += spill.reached.size();
			if (loose == 0 && !spill.loose.empty())
				first = (*spill.loose.begin())->middle;
			loose += spill.loose.size();
		}
	}
	report.cases += static_cast<long>(reached) + samples;
	report.check(loose == 0 && open == 0, "E-C3.present",
	             "group %s: of %zu tiles bonded to what it crosses %zu lie too far off, one at "
	             "%.0f,%.0f; %ld of %ld points in tile joints without a soft one",
	             group.id.c_str(), reached, loose, first.x, first.y, open, samples);
}
