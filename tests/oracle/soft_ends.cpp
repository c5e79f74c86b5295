// soft_ends.cpp - where a soft joint that ends at the edge of its panel might as well end.
#include <algorithm>
#include <cmath>

#include "soft.hpp"

namespace
{

// An end from which the group goes on: straight ahead lies another of its cracks.
bool points_inwards(const Floor &floor, const Group &group, const Crack &crack, Point end,
                    Point before)
{
	Point on = (end - before) * (1 / norm(end - before));
	Segment way{end, end + on * std::max(floor.overrun(), floor.lay.tile_long)};
	for (const Crack *other : group.cracks)
		if (other != &crack)
			for (const Line &run : other->runs)
				for (const Segment &s : segments_of(run))
					if (distance(way, s) <= floor.lay.tile_width)
						return true;
	return false;
}

// The straight way between points, which may lie on the border themselves, leaves the panel.
bool is_parted(Point a, Point b, const Panel &panel)
{
	double reach = norm(b - a);
	for (double t : cuts({a, b}, panel.border))
		if (t * reach > SOFT_NEAR && (1 - t) * reach > SOFT_NEAR)
			return true;
	return reach > SOFT_NEAR && !inside(panel.shape, (a + b) * 0.5);
}

// The end of a crack of the group that is nearest to `p` in its panel; far away where it has none.
Point nearest_end(const Floor &floor, const Group &group, Point p, const Panel &panel)
{
	Point nearest = {1e9, 1e9};
	double least = 1e300;
	for (const Crack *crack : group.cracks)
		for (Line run : crack->runs)
			for (int turn = 0; turn < 2; turn++) {
				std::reverse(run.begin(), run.end());
				if (norm(run.back() - p) >= least || goes_on(*crack, run.back()) ||
				    is_parted(p, run.back(), panel) ||
				    points_inwards(floor, group, *crack, run.back(),
				                   run[run.size() - 2]))
					continue;
				least = norm(run.back() - p);
				nearest = run.back();
			}
	return nearest;
}

// Nodes at the panel's edge where a joint that ends at `end` might as well end: those that hang
// together with it along the edge, not through a crossed cell, as long as the crack is within
// one tile of the edge (which serves there), and, where the crack's end lies within one tile of
// the edge, those between the flanks of the strip there.
class NodesAlongEdge
{
      public:
	NodesAlongEdge(const Floor &f, const SoftJoint &s, const Network &n, Point e)
	    : floor(f), soft(s), network(n), end(e),
	      crack_end(nearest_end(f, s.group, e, f.field.panels[s.panel])),
	      lines(inside_of(f.field.panels[s.panel].shape, own_line(s))), other_ends(ways_out())
	{
		for (size_t c = 0; c < network.cells.size(); c++)
			if (network.crossed[c])
				crossed_cells.push_back({network.cells[c]});
		for (const Ring &ring : panel().shape)
			if (distance(end, segments_of(Shape{ring})) <=
			    distance(end, panel().border) + SOFT_NEAR) {
				walk(ring);
				walk({ring.rbegin(), ring.rend()});
			}
	}
	std::vector<int> found;

      private:
	const Floor &floor;
	const SoftJoint &soft;
	const Network &network;
	const Point end, crack_end;
	const std::vector<Segment> lines, other_ends;
	std::vector<Shape> crossed_cells;

	const Panel &panel() const
	{
		return floor.field.panels[soft.panel];
	}

	// Half a millimetre inside the limits, where both verdicts would be right. The strip must
	// lie there too.
	bool is_near(Point p) const
	{
		double half = floor.half_width() - 0.5;
		double tile = floor.lay.tile_long - 0.5;
		return distance(p, lines) <= std::min(half, tile) ||
		       (norm(p - crack_end) <= half && distance(crack_end, panel().border) <= tile);
	}

	// A joint on the left or right is of one crack, others of all its group.
	static std::vector<Segment> own_line(const SoftJoint &soft)
	{
		std::vector<Segment> line;
		for (const Crack *crack : soft.group.cracks)
			if (soft.joint.side == "left" || soft.joint.side == "right"
			            ? crack->id == soft.joint.of
			            : true)
				for (const Line &run : crack->runs)
					for (const Segment &s : segments_of(run))
						line.push_back(s);
		return line;
	}

	// Where another end of the group's cracks comes to the edge begins another side.
	bool is_another_end(Point p) const
	{
		return distance(p, other_ends) <= 1;
	}

	std::vector<Segment> ways_out() const
	{
		std::vector<Segment> ways;
		double far = std::max(floor.overrun(), floor.lay.tile_long);
		for (const Crack *crack : soft.group.cracks)
			for (Line run : crack->runs)
				for (int turn = 0; turn < 2; turn++) {
					std::reverse(run.begin(), run.end());
					Point p = run.back(), d = p - run[run.size() - 2];
					d = d * (1 / norm(d));
					if (norm(p - crack_end) > 0)
						ways.push_back({p - d, p + d * far});
				}
		std::vector<Segment> ends;
		for (const Segment &way : ways)
			if (std::vector<double> at = cuts(way, panel().border); at.size() > 2) {
				Point first = way.a + (way.b - way.a) * at[1];
				ends.push_back({first, first});
			}
		return ends;
	}

	bool is_clear(Point p) const
	{
		for (const Shape &cell : crossed_cells)
			if (inside(cell, p) && distance(p, segments_of(cell)) > SOFT_NEAR)
				return false;
		return true;
	}

	// Along a field joint the crossed cells end at the edge: a hair to either side.
	bool is_free(Point p, Point along) const
	{
		Point aside = Point{-along.y, along.x} * (5 * SOFT_NEAR);
		return is_near(p) && !is_another_end(p) && is_clear(p) && is_clear(p + aside) &&
		       is_clear(p - aside);
	}

	void take(Point p)
	{
		for (size_t n = 0; n < network.nodes.size(); n++)
			if (network.on_border[n] && norm(network.nodes[n] - p) <= 2 &&
			    std::find(found.begin(), found.end(), static_cast<int>(n)) ==
			            found.end())
				found.push_back(static_cast<int>(n));
	}

	// From the end round the ring, in steps of about 1 mm.
	void walk(const Ring &ring)
	{
		size_t n = ring.size(), start = 0;
		while (start < n && distance(end, Segment{ring[start], ring[(start + 1) % n]}) >
		                            distance(end, panel().border) + SOFT_NEAR)
			start++;
		Point at = end;
		take(at);
		for (size_t k = 0; k <= n; k++) {
			Point to = ring[(start + 1 + k) % n];
			double length = norm(to - at);
			int steps = static_cast<int>(length) + 1;
			for (int i = 1; i <= steps; i++) {
				Point p = at + (to - at) * (static_cast<double>(i) / steps);
				if (!is_free(p, (to - at) * (1 / length)))
					return;
				take(p);
			}
			at = to;
		}
	}
};

} // namespace

std::vector<int> nodes_along_edge(const Floor &floor, const SoftJoint &soft, const Network &network,
                                  Point end)
{
	return NodesAlongEdge(floor, soft, network, end).found;
}
