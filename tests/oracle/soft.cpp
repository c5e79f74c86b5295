// soft.cpp - soft joints: on tile joints, over the strip, round the crossed cells, and no
// dearer than the cheapest way the contract allows.
#include <algorithm>
#include <cmath>

#include "network.hpp"

namespace
{

const double NEAR = 0.01;
const double END_REACH = 25.4; // an end this near a border lies on it
const long FEW = 40;           // edges of a corridor in which every way is tried

struct SoftJoint {
	const Joint &joint;
	const Group &group;
	size_t panel;
};

// The group a joint belongs to, by the ids its `of` lists.
const Group *group_of(const std::vector<Group> &groups, const Joint &joint)
{
	for (const std::string &id : words(joint.of))
		for (const Group &group : groups)
			for (const Crack *crack : group.cracks)
				if (crack->id == id)
					return &group;
	return nullptr;
}

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
	double length = 0, turns = 0;
	for (size_t i = 0; i + 1 < joint.line.size(); i++) {
		length += norm(joint.line[i + 1] - joint.line[i]);
		if (i > 0)
			turns += quarter_turns(joint.line[i] - joint.line[i - 1],
			                       joint.line[i + 1] - joint.line[i]);
	}
	report.check(std::fabs(length - joint.length) <= NEAR &&
	                     std::fabs(turns - joint.turns) <= 1e-4 &&
	                     std::fabs(length + penalty * turns - joint.cost) <=
	                             NEAR + 1e-4 * penalty,
	             "E-C3.figures",
	             "joint %s: length %.3f, turns %.4f, cost %.3f; recorded %.3f, %.4f, %.3f",
	             joint.id.c_str(), length, turns, length + penalty * turns, joint.length,
	             joint.turns, joint.cost);
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
	for (int i = 0; i <= steps; i++)
		if (distance(a + (b - a) * (static_cast<double>(i) / steps), lines) >
		    floor.half_width() - 0.5)
			return false;
	return true;
}

// Nodes at the panel's edge that are joined with `end` along the edge, beside the crack but
// not through a crossed cell.
std::vector<int> nodes_along_edge(const Floor &floor, const SoftJoint &soft, const Network &network,
                                  Point end)
{
	std::vector<int> found;
	std::vector<Shape> crossed_cells;
	for (size_t c = 0; c < network.cells.size(); c++)
		if (network.crossed[c])
			crossed_cells.push_back({network.cells[c]});
	auto is_free = [&](Point p) {
		if (distance(p, soft.group.line) > floor.half_width() - 0.5)
			return false;
		for (const Shape &cell : crossed_cells)
			if (inside(cell, p) && distance(p, segments_of(cell)) > NEAR)
				return false;
		return true;
	};
	// Along a field joint the crossed cells end at the edge: a hair to either side.
	auto is_beside = [&](Point p, Point along) {
		Point aside = Point{-along.y, along.x} * (5 * NEAR);
		return is_free(p + aside) && is_free(p - aside);
	};
	auto take = [&](Point p) {
		for (size_t n = 0; n < network.nodes.size(); n++)
			if (network.on_border[n] &&
			    distance(network.nodes[n], Segment{p, p}) <= 2 &&
			    std::find(found.begin(), found.end(), static_cast<int>(n)) ==
			            found.end())
				found.push_back(static_cast<int>(n));
	};
	for (const Ring &ring : floor.field.panels[soft.panel].shape) {
		if (distance(end, segments_of(Shape{ring})) > NEAR)
			continue;
		for (int way : {1, -1}) { // walk the ring in steps of about 1 mm, both ways
			Ring turned = ring;
			if (way < 0)
				std::reverse(turned.begin(), turned.end());
			size_t n = turned.size(), start = 0;
			while (start < n && distance(end, Segment{turned[start],
			                                          turned[(start + 1) % n]}) > NEAR)
				start++;
			Point at = end;
			take(at);
			for (size_t k = 0, stop = 0; k <= n && !stop; k++) {
				Point to = turned[(start + 1 + k) % n];
				double length = norm(to - at);
				int steps = static_cast<int>(length) + 1;
				for (int i = 1; i <= steps && !stop; i++) {
					Point p = at + (to - at) * (static_cast<double>(i) / steps);
					Point step = (to - at) * (1 / length);
					stop = !is_free(p) || !is_beside(p, step);
					if (!stop)
						take(p);
				}
				at = to;
			}
		}
	}
	return found;
}

bool is_crossing(const Segment &edge, const std::vector<Segment> &barrier)
{
	for (const Segment &b : barrier)
		if (distance(edge, b) <= 0)
			return true;
	return false;
}

void check_cheapest(const Floor &floor, const SoftJoint &soft, Network network, double penalty,
                    Report &report)
{
	const Joint &joint = soft.joint;
	std::vector<int> ends[2];
	bool at_border[2] = {false, false};
	for (int e = 0; e < 2; e++) {
		Point p = e ? joint.line.back() : joint.line.front();
		if (distance(p, floor.field.panels[soft.panel].border) <= 2 * NEAR) {
			ends[e] = nodes_along_edge(floor, soft, network, p);
			at_border[e] = true;
		}
		int own = network.node_at(p, 2 * NEAR);
		if (own >= 0 && std::find(ends[e].begin(), ends[e].end(), own) == ends[e].end())
			ends[e].push_back(own);
	}
	std::vector<Segment> barrier;
	for (const Crack *crack : soft.group.cracks)
		for (const OpenEnd &end : open_ends(floor, *crack))
			if (!at_border[norm(joint.line.back() - end.at) <
			               norm(joint.line.front() - end.at)])
				barrier.push_back(
					{end.at, end.at + end.along * (2 * floor.overrun())});
	long open = 0;
	for (Network::Edge &edge : network.edges) {
		Segment s{network.nodes[static_cast<size_t>(edge.from)],
		          network.nodes[static_cast<size_t>(edge.to)]};
		// Along the panel's own edge runs another joint.
		bool is_edge = distance((s.a + s.b) * 0.5,
		                        floor.field.panels[soft.panel].border) <= NEAR;
		edge.open = surely_in_corridor(floor, network, edge, soft.group.line) &&
		            !is_edge && !is_crossing(s, barrier);
		open += edge.open;
	}
	double best = network.cheapest(ends[0], ends[1], penalty);
	double cost = soft_cost(joint.line, penalty);
	report.cases += best >= 0;
	if (open <= FEW) {
		double all = network.cheapest_of_all(ends[0], ends[1], penalty);
		report.check(std::fabs(all - best) <= 1e-6, "search",
		             "joint %s: %.6f by search, %.6f by trying all", joint.id.c_str(), best,
		             all);
	}
	report.check(best < 0 || cost <= best + NEAR, "E-C3.cheapest",
	             "joint %s: cost %.3f, %s %.3f in a corridor of %ld edges (penalty %g)",
	             joint.id.c_str(), cost, best < 0 ? "no other way" : "cheapest", best, open,
	             penalty);
}

// The strip reaches 50 mm beyond the far edge of its soft joints.
void check_beyond(const Floor &floor, const Joint &joint, Report &report)
{
	std::vector<Shape> ground = floor.ground(), stops = floor.obstacles(),
			   covers = floor.covered();
	for (const Shape &band : carried_bands(floor.record))
		stops.push_back(band);
	for (const Hold &hold : floor.record.holds)
		stops.push_back(hold.shape);
	double reach = floor.lay.joint / 2 + 50 - NEAR;
	int bare = 0, samples = 0;
	for (const Segment &s : segments_of(joint.line)) {
		Point d = (s.b - s.a) * (1 / norm(s.b - s.a));
		for (double t = 5; t < norm(s.b - s.a); t += 10)
			for (double side : {reach, -reach}) {
				Point p = s.a + d * t, q = p + Point{-d.y, d.x} * side;
				if (length_where({p, q}, ground, false, 0) > 0 ||
				    length_where({p, q}, stops, true, 0) > 0)
					continue;
				samples++;
				bare += !Floor::in_any(covers, q, NEAR);
			}
	}
	report.check(bare == 0, "E-C3.beyond",
	             "joint %s: %d of %d points 50 mm beyond it off the strip", joint.id.c_str(),
	             bare, samples);
}

// What a look aside from a crack must meet before it passes the strip's greatest reach.
struct Lookout {
	const Floor &floor;
	std::vector<Segment> softs;
	const std::vector<Segment> &own; // the group's cracks
	double far, near;                // how far to look for a soft joint, for the field's end
	std::vector<Segment> ends;       // of the cracks, as points

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
			if (!floor.on_panel(p + aside * r,
			                    0)) // does a carried or perimeter joint serve?
				return r <= near || is_by_an_end(p + aside * r);
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

void check_present(const Floor &floor, const Group &group, Report &report)
{
	double reach = 0;
	for (const Crack *crack : group.cracks)
		reach = std::max(reach, reach_of(floor.plan, *crack));
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
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "soft")
			for (const Segment &s : segments_of(joint.line))
				lookout.softs.push_back(s);
	long samples = 0, open = 0;
	Point first;
	int wanted = floor.membrane()->one && group.cracks.size() == 1 ? 1 : 2;
	for (const Crack *crack : group.cracks)
		for (const Line &run : crack->runs) {
			Point chord = run.back() - run.front();
			chord = chord * (1 / norm(chord));
			for (const Segment &s : segments_of(run)) {
				Point along = (s.b - s.a) * (1 / norm(s.b - s.a));
				for (double t = 20; t < norm(s.b - s.a) - 10; t += 40) {
					Point p = s.a + along * t;
					if (!floor.on_panel(p, 0))
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

bool wants_soft_joints(const Floor &floor)
{
	const PlanMembrane *membrane = floor.membrane();
	return membrane && (membrane->kind == "liquid" || membrane->kind == "sheet");
}

} // namespace

double soft_cost(const Line &line, double penalty)
{
	double cost = 0;
	for (size_t i = 0; i + 1 < line.size(); i++) {
		cost += norm(line[i + 1] - line[i]);
		if (i > 0)
			cost += penalty *
			        quarter_turns(line[i] - line[i - 1], line[i + 1] - line[i]);
	}
	return cost;
}

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
		check_cheapest(floor, soft, network, penalty, report);
		check_beyond(floor, joint, report);
	}
	for (const Group &group : groups)
		if (group.state == "isolate" && wants_soft_joints(floor))
			check_present(floor, group, report);
}
