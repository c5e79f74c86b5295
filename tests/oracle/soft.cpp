// soft.cpp - soft joints: on tile joints, over the strip, round the crossed cells, and no
// dearer than the cheapest way the contract allows.
#include <algorithm>
#include <cmath>

#include "network.hpp"

namespace
{

const double NEAR = 0.01;
const double BEYOND = 50; // how far a strip reaches past the far edge of its soft joints
const long FEW = 40;      // edges of a corridor in which every way is tried

struct SoftJoint {
	const Joint &joint;
	const Group &group;
	size_t panel;
};

int panel_of(const Field &field, const Line &line)
{
	for (size_t p = 0; p < field.panels.size(); p++) {
		const Panel &panel = field.panels[p];
		bool all = true;
		for (const Segment &s : segments_of(line)) {
			Point middle = (s.a + s.b) * 0.5;
			all = all && (inside(panel.shape, middle) ||
			              distance(middle, panel.border) <= NEAR);
		}
		if (all)
			return static_cast<int>(p);
	}
	return -1;
}

Box box_round(const Floor &floor, const Group &group, const Joint &joint)
{
	Box box;
	for (const Segment &s : group.line)
		box.add(s.a), box.add(s.b);
	for (Point p : joint.line)
		box.add(p);
	box.grow(floor.half_width() + floor.overrun() + 2 * floor.lay.tile_long);
	return box;
}

std::vector<const Tile *> crossed_by(const Floor &floor, const Group &group, size_t panel)
{
	std::vector<const Tile *> tiles;
	for (const Crack *crack : group.cracks)
		for (const Tile *tile : crossed(floor, *crack))
			if (tile->panel == panel)
				tiles.push_back(tile);
	return tiles;
}

// Length of the line that no edge of the network runs under.
double off_network(const Line &line, const Network &network)
{
	double off = 0;
	for (const Segment &s : segments_of(line)) {
		Point d = s.b - s.a;
		double length = norm(d);
		std::vector<std::pair<double, double>> under;
		for (const Network::Edge &edge : network.edges) {
			Point a = network.nodes[static_cast<size_t>(edge.from)],
			      b = network.nodes[static_cast<size_t>(edge.to)];
			if (std::fabs(cross(d, a - s.a)) > NEAR * length ||
			    std::fabs(cross(d, b - s.a)) > NEAR * length)
				continue;
			double t0 = dot(a - s.a, d) / length, t1 = dot(b - s.a, d) / length;
			under.push_back(std::minmax(t0, t1));
		}
		std::sort(under.begin(), under.end());
		double reached = 0;
		for (auto [from, to] : under) {
			if (to <= reached)
				continue;
			if (from > reached + NEAR)
				off += std::min(from, length) - reached;
			reached = std::max(reached, to);
			if (reached >= length)
				break;
		}
		if (reached < length - NEAR)
			off += length - reached;
	}
	return off;
}

double inside_crossed(const Line &line, const Network &network)
{
	std::vector<Shape> cells;
	for (size_t c = 0; c < network.cells.size(); c++)
		if (network.crossed[c])
			cells.push_back({network.cells[c]});
	double length = 0;
	for (const Segment &s : segments_of(line))
		length += length_where(s, cells, true, NEAR);
	return length;
}

void check_place(const Floor &floor, const SoftJoint &soft, const Network &network, Report &report)
{
	const Joint &joint = soft.joint;
	double off = off_network(joint.line, network), in = inside_crossed(joint.line, network),
	       bare = 0;
	std::vector<Shape> covers = floor.covered();
	for (const Segment &s : segments_of(joint.line))
		bare += length_where(s, covers, false, NEAR);
	report.cases++;
	report.check(off <= NEAR, "E-C3.on-joint", "joint %s: %.3f mm off the tile joints",
	             joint.id.c_str(), off);
	report.check(bare <= NEAR, "E-C3.on-strip", "joint %s: %.3f mm beside the strip",
	             joint.id.c_str(), bare);
	report.check(in <= NEAR, "E-C3.clear", "joint %s: %.3f mm inside crossed cells",
	             joint.id.c_str(), in);
}

void check_figures(const Joint &joint, double penalty, Report &report)
{
	auto [length, turns, is_closed] = soft_figures(joint.line);
	report.check(std::fabs(length - joint.length) <= NEAR &&
	                     std::fabs(turns - joint.turns) <= 1e-4 &&
	                     std::fabs(length + penalty * turns - joint.cost) <=
	                             NEAR + 1e-4 * penalty,
	             "E-C3.figures",
	             "joint %s%s: length %.3f, turns %.4f, cost %.3f; recorded %.3f, %.4f, %.3f",
	             joint.id.c_str(), is_closed ? ", closed" : "", length, turns, length + penalty * turns, joint.length,
	             joint.turns, joint.cost);
}

// So far from the crack a joint may lie that the strip, which never goes farther than half its
// width and one tile, still reaches 50 mm beyond the joint's far edge.
double joint_limit(const Floor &floor)
{
	return floor.half_width() + floor.lay.tile_long - BEYOND - floor.lay.joint / 2;
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
	int steps = static_cast<int>(edge.length / 10) + 1;
	double far = std::min(floor.half_width(), joint_limit(floor)) - 0.5;
	for (int i = 0; i <= steps; i++)
		if (distance(a + (b - a) * (static_cast<double>(i) / steps), lines) > far)
			return false;
	return true;
}

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
		if (t * reach > NEAR && (1 - t) * reach > NEAR)
			return true;
	return reach > NEAR && !inside(panel.shape, (a + b) * 0.5);
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
	    : floor(f), soft(s), network(n), end(e), crack_end(nearest_end(f, s.group, e, f.field.panels[s.panel])),
	      lines(inside_of(f.field.panels[s.panel].shape, own_line(s))), other_ends(ways_out())
	{
		for (size_t c = 0; c < network.cells.size(); c++)
			if (network.crossed[c])
				crossed_cells.push_back({network.cells[c]});
		for (const Ring &ring : panel().shape)
			if (distance(end, segments_of(Shape{ring})) <=
			    distance(end, panel().border) + NEAR) {
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
			if (inside(cell, p) && distance(p, segments_of(cell)) > NEAR)
				return false;
		return true;
	}

	// Along a field joint the crossed cells end at the edge: a hair to either side.
	bool is_free(Point p, Point along) const
	{
		Point aside = Point{-along.y, along.x} * (5 * NEAR);
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
		                            distance(end, panel().border) + NEAR)
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

// Edges that a joint of the side may run along.
long open_edges(const Floor &floor, const SoftJoint &soft, const std::vector<Segment> &barrier,
                Network &network)
{
	long open = 0;
	for (Network::Edge &edge : network.edges) {
		Segment s = network.segment(edge);
		// Along the panel's own edge runs another joint.
		bool is_edge =
			distance((s.a + s.b) * 0.5, floor.field.panels[soft.panel].border) <= NEAR;
		edge.open = surely_in_corridor(floor, network, edge, soft.group.line) && !is_edge &&
		            !is_crossing(s, barrier);
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
	report.check(best > 0 && cost <= best + NEAR, "E-C3.round",
	             "joint %s: cost %.3f, cheapest right round %.3f", soft.joint.id.c_str(), cost,
	             best);
}

void check_cheapest(const Floor &floor, const SoftJoint &soft, Network network, double penalty,
                    Report &report)
{
	const Joint &joint = soft.joint;
	double rim = floor.lay.gap_max - floor.lay.gap + floor.lay.joint;
	std::vector<int> ends[2];
	for (int e = 0; e < 2; e++) {
		Point p = e ? joint.line.back() : joint.line.front();
		// Tile may stop short of the border by what is no tile any more.
		if (distance(p, floor.field.panels[soft.panel].border) <= rim + 2 * NEAR)
			ends[e] = NodesAlongEdge(floor, soft, network, p).found;
		int own = network.node_at(p, 2 * NEAR);
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
	report.check(best < 0 || cost <= best + NEAR, "E-C3.cheapest",
	             "joint %s: cost %.3f, %s %.3f in a corridor of %ld edges (penalty %g)%s",
	             joint.id.c_str(), cost, best < 0 ? "no other way" : "cheapest", best, open,
	             penalty, cost > best + NEAR ? text_of(network, way).c_str() : "");
}

// The strip reaches 50 mm beyond the far edge of its soft joints, as far as it may reach.
void check_beyond(const Floor &floor, const SoftJoint &soft, Report &report)
{
	const Joint &joint = soft.joint;
	std::vector<Shape> ground = floor.ground(), stops = floor.obstacles(),
			   covers = floor.covered();
	for (const Shape &band : carried_bands(floor.record))
		stops.push_back(band);
	for (const Hold &hold : floor.record.holds)
		stops.push_back(hold.shape);
	double reach = floor.lay.joint / 2 + BEYOND - NEAR;
	double farthest = floor.half_width() + floor.lay.tile_long - NEAR;
	int bare = 0, samples = 0;
	Point first;
	for (const Segment &s : segments_of(joint.line)) {
		Point d = (s.b - s.a) * (1 / norm(s.b - s.a));
		for (double t = 5; t < norm(s.b - s.a); t += 10)
			for (double side : {reach, -reach}) {
				Point p = s.a + d * t, q = p + Point{-d.y, d.x} * side;
				if (length_where({p, q}, ground, false, 0) > 0 ||
				    length_where({p, q}, stops, true, 0) > 0 ||
				    distance(q, soft.group.line) > farthest)
					continue;
				samples++;
				if (!Floor::in_any(covers, q, NEAR) && bare++ == 0)
					first = q;
			}
	}
	report.check(bare == 0, "E-C3.beyond",
	             "joint %s: %d of %d points 50 mm beyond it off the strip, first %.0f,%.0f",
	             joint.id.c_str(), bare, samples, first.x, first.y);
}

bool wants_soft_joints(const Floor &floor)
{
	const PlanMembrane *membrane = floor.membrane();
	return membrane && (membrane->kind == "liquid" || membrane->kind == "sheet");
}

} // namespace

void check_soft(const Floor &floor, double penalty, Report &report)
{
	std::vector<Group> groups = groups_of(floor.record);
	for (const Joint &joint : floor.record.joints) {
		if (joint.kind != "soft" || joint.line.size() < 2)
			continue;
		const Group *group = group_of(groups, joint);
		int panel = panel_of(floor.field, joint.line);
		report.check(group && panel >= 0, "E-C3.home", "joint %s: of %s, in panel %s",
		             joint.id.c_str(), joint.of.c_str(),
		             panel < 0 ? "none"
		                       : floor.field.panels[static_cast<size_t>(panel)].id.c_str());
		if (!group || panel < 0)
			continue;
		SoftJoint soft{joint, *group, static_cast<size_t>(panel)};
		Network network(floor, soft.panel, box_round(floor, *group, joint));
		network.mark_crossed(crossed_by(floor, *group, soft.panel));
		check_place(floor, soft, network, report);
		check_figures(joint, penalty, report);
		if (soft_figures(joint.line).is_closed)
			check_round(floor, soft, network, penalty, report);
		else
			check_cheapest(floor, soft, network, penalty, report);
		check_beyond(floor, soft, report);
	}
	for (const Group &group : groups)
		if (group.state == "isolate" && wants_soft_joints(floor))
			check_present(floor, group, report);
}
