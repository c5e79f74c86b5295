#include "network.hpp"

#include <algorithm>
#include <cmath>
#include <queue>

namespace
{

const double SAME = 0.005; // nodes this close are one
const double BIN = 20;

std::pair<long, long> bin_of(Point p)
{
	return {std::lround(std::floor(p.x / BIN)), std::lround(std::floor(p.y / BIN))};
}

} // namespace

int Network::node_at(Point p, double within) const
{
	auto [x, y] = bin_of(p);
	int best = -1;
	for (long i = x - 1; i <= x + 1; i++)
		for (long j = y - 1; j <= y + 1; j++) {
			auto found = bins.find({i, j});
			if (found == bins.end())
				continue;
			for (int n : found->second)
				if (norm(nodes[static_cast<size_t>(n)] - p) <= within) {
					best = n;
					within = norm(nodes[static_cast<size_t>(n)] - p);
				}
		}
	return best;
}

int Network::cell_at(int face, int i, int j) const
{
	auto found = cell_of.find({face, i, j});
	return found == cell_of.end() ? -1 : found->second;
}

int Network::node(Point p)
{
	int found = node_at(p, SAME);
	if (found >= 0)
		return found;
	nodes.push_back(p);
	on_border.push_back(0);
	bins[bin_of(p)].push_back(static_cast<int>(nodes.size()) - 1);
	return static_cast<int>(nodes.size()) - 1;
}

Network::Network(const Floor &floor, size_t number, const Box &box)
{
	const Panel &panel = floor.field.panels[number];
	each_place(floor.field, panel, box, floor.field.cells,
	           [&](int face, int i, int j, const Ring &ring) {
			   cell_of[{face, i, j}] = static_cast<int>(cells.size());
			   cells.push_back(ring);
		   });
	crossed.assign(cells.size(), 0);
	for (const Ring &cell : cells)
		for (Point p : cell)
			node(p);
	add_edges(panel);
}

// Cell borders between neighbouring nodes, cut where the panel ends.
void Network::add_edges(const Panel &panel)
{
	std::map<std::pair<int, int>, size_t> known;
	for (size_t c = 0; c < cells.size(); c++)
		for (const Segment &s : segments_of(Shape{cells[c]})) {
			Point d = s.b - s.a;
			double length = norm(d);
			std::vector<double> at = {0, 1};
			Box near;
			near.add(s.a);
			near.add(s.b);
			near.grow(BIN);
			auto low = bin_of({near.x0, near.y0}), high = bin_of({near.x1, near.y1});
			for (long i = low.first; i <= high.first; i++)
				for (long j = low.second; j <= high.second; j++)
					if (auto found = bins.find({i, j}); found != bins.end())
						for (int n : found->second)
							if (distance(nodes[static_cast<size_t>(n)],
							             s) <= SAME)
								at.push_back(
									dot(nodes[static_cast<
										    size_t>(n)] -
								                    s.a,
								            d) /
									(length * length));
			std::vector<double> borders;
			for (double t : cuts(s, panel.border))
				if (t > 0 && t < 1)
					borders.push_back(t);
			at.insert(at.end(), borders.begin(), borders.end());
			std::sort(at.begin(), at.end());
			for (size_t k = 0; k + 1 < at.size(); k++) {
				if ((at[k + 1] - at[k]) * length <= SAME)
					continue;
				Point a = s.a + d * at[k], b = s.a + d * at[k + 1],
				      middle = (a + b) * 0.5;
				if (!inside(panel.shape, middle) &&
				    distance(middle, panel.border) > SAME)
					continue;
				int from = node(a), to = node(b);
				if (from == to)
					continue;
				for (int n : {from, to})
					if (distance(nodes[static_cast<size_t>(n)], panel.border) <=
					    SAME)
						on_border[static_cast<size_t>(n)] = 1;
				auto key = std::minmax(from, to);
				if (!known.count(key)) {
					known[key] = edges.size();
					edges.push_back({from,
					                 to,
					                 norm(nodes[static_cast<size_t>(to)] -
					                      nodes[static_cast<size_t>(from)]),
					                 {},
					                 false,
					                 false});
				}
				edges[known[key]].cells.push_back(static_cast<int>(c));
			}
		}
}

void Network::mark_crossed(const std::vector<const Tile *> &tiles)
{
	for (const Tile *tile : tiles)
		if (auto found = cell_of.find({tile->face, tile->i, tile->j});
		    found != cell_of.end())
			crossed[static_cast<size_t>(found->second)] = 1;
	std::vector<std::vector<int>> beside(cells.size());
	for (const Edge &edge : edges)
		for (int a : edge.cells)
			for (int b : edge.cells)
				if (a != b)
					beside[static_cast<size_t>(a)].push_back(b);
	Box all;
	for (const Ring &cell : cells)
		for (Point p : cell)
			all.add(p);
	all.grow(-1);
	// What is reached from the rim without stepping on a crossed cell lies outside.
	std::vector<char> outside(cells.size(), 0);
	std::vector<int> open;
	for (size_t c = 0; c < cells.size(); c++)
		for (Point p : cells[c])
			if (!crossed[c] && !outside[c] && (!all.holds(p) || beside[c].size() < 3)) {
				outside[c] = 1;
				open.push_back(static_cast<int>(c));
			}
	while (!open.empty()) {
		int c = open.back();
		open.pop_back();
		for (int n : beside[static_cast<size_t>(c)])
			if (!crossed[static_cast<size_t>(n)] && !outside[static_cast<size_t>(n)]) {
				outside[static_cast<size_t>(n)] = 1;
				open.push_back(n);
			}
	}
	for (size_t c = 0; c < cells.size(); c++)
		if (!outside[c] && !beside[c].empty())
			crossed[c] = 1;
	for (Edge &edge : edges)
		for (int c : edge.cells)
			edge.on_crossed = edge.on_crossed || crossed[static_cast<size_t>(c)];
}

double quarter_turns(Point before, Point after)
{
	return std::fabs(std::atan2(cross(before, after), dot(before, after))) / (M_PI / 2);
}

SoftFigures soft_figures(const Line &line)
{
	SoftFigures figures;
	for (size_t i = 0; i + 1 < line.size(); i++) {
		figures.length += norm(line[i + 1] - line[i]);
		if (i > 0)
			figures.turns +=
				quarter_turns(line[i] - line[i - 1], line[i + 1] - line[i]);
	}
	figures.is_closed = line.size() > 3 && norm(line.back() - line.front()) <= 1e-6;
	if (figures.is_closed)
		figures.turns +=
			quarter_turns(line.back() - line[line.size() - 2], line[1] - line.front());
	return figures;
}

Segment Network::segment(const Edge &edge) const
{
	return {nodes[static_cast<size_t>(edge.from)], nodes[static_cast<size_t>(edge.to)]};
}

double Network::cheapest(const std::vector<int> &starts, const std::vector<int> &ends,
                         double penalty, std::vector<int> *way) const
{
	struct State {
		double cost;
		size_t edge; // twice the edge, one more when walked back
		bool operator<(const State &o) const
		{
			return cost > o.cost;
		}
	};
	std::vector<std::vector<size_t>> leaving(nodes.size());
	auto from_of = [&](size_t e) {
		return static_cast<size_t>(e % 2 ? edges[e / 2].to : edges[e / 2].from);
	};
	auto to_of = [&](size_t e) { return from_of(e ^ 1); };
	for (size_t e = 0; e < 2 * edges.size(); e++)
		if (edges[e / 2].open)
			leaving[from_of(e)].push_back(e);
	const size_t none = 2 * edges.size();
	std::vector<double> best(none, 1e300);
	std::vector<size_t> before(none, none);
	std::vector<char> is_end(nodes.size(), 0);
	for (int n : ends)
		is_end[static_cast<size_t>(n)] = 1;
	std::priority_queue<State> open;
	auto offer = [&](size_t e, double cost, size_t from) {
		if (cost < best[e] - 1e-9) {
			best[e] = cost;
			before[e] = from;
			open.push({cost, e});
		}
	};
	for (int n : starts)
		for (size_t e : leaving[static_cast<size_t>(n)])
			offer(e, edges[e / 2].length, none);
	while (!open.empty()) {
		State s = open.top();
		open.pop();
		if (s.cost > best[s.edge])
			continue;
		size_t at = to_of(s.edge);
		if (is_end[at]) {
			for (size_t e = s.edge; way && e != none; e = before[e])
				way->push_back(static_cast<int>(to_of(e)));
			return s.cost;
		}
		for (size_t e : leaving[at])
			if (e != (s.edge ^ 1))
				offer(e,
				      s.cost + edges[e / 2].length +
				              penalty *
				                      quarter_turns(nodes[at] -
				                                            nodes[from_of(s.edge)],
				                                    nodes[to_of(e)] - nodes[at]),
				      s.edge);
	}
	return -1;
}

double Network::cheapest_of_all(const std::vector<int> &starts, const std::vector<int> &ends,
                                double penalty) const
{
	std::vector<std::vector<std::pair<int, double>>> beside(nodes.size());
	for (const Edge &edge : edges)
		if (edge.open) {
			beside[static_cast<size_t>(edge.from)].push_back({edge.to, edge.length});
			beside[static_cast<size_t>(edge.to)].push_back({edge.from, edge.length});
		}
	std::vector<char> used(nodes.size(), 0);
	double best = -1;
	std::function<void(int, int, double)> walk = [&](int before, int at, double cost) {
		if (before >= 0 && std::find(ends.begin(), ends.end(), at) != ends.end())
			best = best < 0 ? cost : std::min(best, cost);
		used[static_cast<size_t>(at)] =
			1; // a way that meets itself is longer and turns more
		for (auto [next, length] : beside[static_cast<size_t>(at)]) {
			if (used[static_cast<size_t>(next)])
				continue;
			Point here = nodes[static_cast<size_t>(at)],
			      there = nodes[static_cast<size_t>(next)];
			double turn =
				before < 0
					? 0
					: quarter_turns(here - nodes[static_cast<size_t>(before)],
			                                there - here);
			walk(at, next, cost + length + penalty * turn);
		}
		used[static_cast<size_t>(at)] = 0;
	};
	for (int n : starts)
		walk(-1, n, 0);
	return best;
}
