// soft_ways.cpp - the ways a soft joint might have taken: none is cheaper.
#include <algorithm>
#include <cmath>

#include "soft.hpp"

namespace
{

const long FEW = 40; // edges of a corridor in which every way is tried

// So far from the crack a joint may lie that the strip, which never goes farther than half its
// width and one tile, still reaches 50 mm beyond the joint's far edge.
double joint_limit(const Floor &floor)
{
	return floor.half_width() + floor.lay.tile_long - SOFT_BEYOND - floor.lay.joint / 2;
}

// The contract's strip, before it grew to its soft joints, holds at least this much: what
// lies within half a width of the crack, and every border of a crossed cell.
bool surely_in_corridor(const Floor &floor, const Network &network, const Network::Edge &edge,
                        const std::vector<Segment> &lines)
{
	int beside = 0;
	for (int c : edge.cells)
		beside += network.crossed[static_cast<size_t>(c)];
	if (beside >= 2)
		return false;
	if (beside == 1)
		return true;
	Point a = network.nodes[static_cast<size_t>(edge.from)],
	      b = network.nodes[static_cast<size_t>(edge.to)];
	double far = std::min(floor.half_width(), joint_limit(floor)) - 0.5;
	// A distance changes by no more than the way walked.
	for (double t = 0; t <= edge.length;) {
		double d = distance(a + (b - a) * (t / edge.length), lines);
		if (d > far)
			return false;
		t += std::max(0.5, far - d);
	}
	return true;
}

bool is_crossing(const Segment &edge, const std::vector<Segment> &barrier)
{
	for (const Segment &b : barrier)
		if (distance(edge, b) <= 0)
			return true;
	return false;
}

// Across the side that a joint is not of, from the middle of its crack's line in the panel:
// without it the way round the other side would serve as well.
std::vector<Segment> other_side(const Floor &floor, const SoftJoint &soft)
{
	std::vector<Segment> here =
		inside_of(floor.field.panels[soft.panel].shape, soft.group.line);
	bool left = soft.joint.side == "left";
	if (here.empty() || soft.group.cracks.size() > 1 || !(left || soft.joint.side == "right"))
		return {};
	Segment middle = here[here.size() / 2];
	Point along = (middle.b - middle.a) * (1 / norm(middle.b - middle.a));
	Point foot = (middle.a + middle.b) * 0.5, out = Point{along.y, -along.x} * (left ? 1 : -1);
	return {{foot, foot + out * (floor.half_width() + 2 * floor.lay.tile_long)}};
}

std::string text_of(const Network &network, const std::vector<int> &way)
{
	std::string text = ":";
	for (int n : way) {
		Point p = network.nodes[static_cast<size_t>(n)];
		text += " " + std::to_string(std::lround(p.x)) + "," +
		        std::to_string(std::lround(p.y));
	}
	return text;
}

// Cells in which there is tile: between tile and a remainder that is none there is no joint.
std::vector<char> tiled_cells(const Floor &floor, const SoftJoint &soft, const Network &network)
{
	std::vector<char> tiled(network.cells.size(), 0);
	for (const Tile &tile : floor.tiling.tiles)
		if (tile.panel == soft.panel)
			if (int c = network.cell_at(tile.face, tile.i, tile.j); c >= 0)
				tiled[static_cast<size_t>(c)] = 1;
	return tiled;
}

// Edges that a joint of the side may run along.
long open_edges(const Floor &floor, const SoftJoint &soft, const std::vector<Segment> &barrier,
                Network &network)
{
	long open = 0;
	std::vector<char> tiled = tiled_cells(floor, soft, network);
	for (Network::Edge &edge : network.edges) {
		Segment s = network.segment(edge);
		bool is_joint = edge.cells.size() == 2;
		for (int c : edge.cells)
			is_joint = is_joint && tiled[static_cast<size_t>(c)];
		// Along the panel's own edge runs another joint.
		bool is_edge = distance((s.a + s.b) * 0.5, floor.field.panels[soft.panel].border) <=
		               SOFT_NEAR;
		edge.open = is_joint && surely_in_corridor(floor, network, edge, soft.group.line) &&
		            !is_edge && !is_crossing(s, barrier);
		open += edge.open;
	}
	return open;
}

// From the crossed tile away: every way round crosses it.
Segment ray_from(const Network &network, double length)
{
	const Point away = {0.0271828, 1};
	Point from;
	double most = -1e300;
	for (size_t c = 0; c < network.cells.size(); c++)
		for (Point p : network.cells[c])
			if (network.crossed[c] && dot(p, away) > most) {
				most = dot(p, away);
				from = p;
			}
	// Not from the very corner: edges end there.
	Point start = from + Point{-0.0314159, 0.0271828} - away * 0.1;
	return {start, start + away * length};
}

// The cheapest way right round, through each edge that crosses the ray in turn.
double cheapest_round(Network network, const Segment &ray, double penalty)
{
	std::vector<Network::Edge> across;
	for (Network::Edge &edge : network.edges)
		if (edge.open && distance(network.segment(edge), ray) <= 0) {
			across.push_back(edge);
			edge.open = false;
		}
	double best = -1;
	for (const Network::Edge &edge : across) {
		std::vector<int> way;
		double cost = network.cheapest({edge.to}, {edge.from}, penalty, &way);
		if (cost < 0)
			continue;
		Segment s = network.segment(edge);
		auto node = [&](int n) { return network.nodes[static_cast<size_t>(n)]; };
		Point second = node(way.back()), last = way.size() > 1 ? node(way[1]) : s.b;
		cost += edge.length + penalty * (quarter_turns(s.b - s.a, second - s.b) +
		                                 quarter_turns(s.a - last, s.b - s.a));
		best = best < 0 ? cost : std::min(best, cost);
	}
	return best;
}

void check_round(const Floor &floor, const SoftJoint &soft, Network network, double penalty,
                 Report &report)
{
	open_edges(floor, soft, {}, network);
	Segment ray = ray_from(network, 2 * (floor.half_width() + floor.lay.tile_long));
	double best = cheapest_round(network, ray, penalty);
	SoftFigures own = soft_figures(soft.joint.line);
	double cost = own.length + penalty * own.turns;
	report.cases++;
	report.check(best > 0 && cost <= best + SOFT_NEAR, "E-C3.round",
	             "joint %s: cost %.3f, cheapest right round %.3f", soft.joint.id.c_str(), cost,
	             best);
}

} // namespace

void check_cheapest(const Floor &floor, const SoftJoint &soft, Network network, double penalty,
                    Report &report)
{
	const Joint &joint = soft.joint;
	if (soft_figures(joint.line).is_closed) {
		check_round(floor, soft, network, penalty, report);
		return;
	}
	double rim = floor.lay.gap_max - floor.lay.gap + floor.lay.joint;
	std::vector<int> ends[2];
	for (int e = 0; e < 2; e++) {
		Point p = e ? joint.line.back() : joint.line.front();
		// Tile may stop short of the border by what is no tile any more.
		if (distance(p, floor.field.panels[soft.panel].border) <= rim + 2 * SOFT_NEAR)
			ends[e] = nodes_along_edge(floor, soft, network, p);
		int own = network.node_at(p, 2 * SOFT_NEAR);
		if (own >= 0 && std::find(ends[e].begin(), ends[e].end(), own) == ends[e].end())
			ends[e].push_back(own);
	}
	// Where both ends may be anywhere along one edge, a way round nothing would be cheapest.
	for (int n : ends[0])
		if (std::find(ends[1].begin(), ends[1].end(), n) != ends[1].end())
			return;
	std::vector<Segment> barrier = other_side(floor, soft);
	for (const Crack *crack : soft.group.cracks)
		for (const OpenEnd &end : open_ends(floor, *crack))
			barrier.push_back({end.at, end.at + end.along * (2 * floor.overrun())});
	long open = open_edges(floor, soft, barrier, network);
	std::vector<int> way;
	double best = network.cheapest(ends[0], ends[1], penalty, &way);
	SoftFigures own = soft_figures(joint.line);
	double cost = own.length + penalty * own.turns;
	report.cases += best >= 0;
	if (open <= FEW) {
		double all = network.cheapest_of_all(ends[0], ends[1], penalty);
		report.check(std::fabs(all - best) <= 1e-6, "search",
		             "joint %s: %.6f by search, %.6f by trying all", joint.id.c_str(), best,
		             all);
	}
	report.check(best < 0 || cost <= best + SOFT_NEAR, "E-C3.cheapest",
	             "joint %s: cost %.3f, %s %.3f in a corridor of %ld edges (penalty %g)%s",
	             joint.id.c_str(), cost, best < 0 ? "no other way" : "cheapest", best, open,
	             penalty, cost > best + SOFT_NEAR ? text_of(network, way).c_str() : "");
}
