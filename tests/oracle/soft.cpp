// soft.cpp - soft joints: on tile joints, over the strip, round the crossed cells, and no
// dearer than the cheapest way the contract allows.
#include <algorithm>
#include <cmath>

#include "soft.hpp"

namespace
{

int panel_of(const Field &field, const Line &line)
{
	for (size_t p = 0; p < field.panels.size(); p++) {
		const Panel &panel = field.panels[p];
		bool all = true;
		for (const Segment &s : segments_of(line)) {
			Point middle = (s.a + s.b) * 0.5;
			all = all && (inside(panel.shape, middle) ||
			              distance(middle, panel.border) <= SOFT_NEAR);
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
			if (std::fabs(cross(d, a - s.a)) > SOFT_NEAR * length ||
			    std::fabs(cross(d, b - s.a)) > SOFT_NEAR * length)
				continue;
			double t0 = dot(a - s.a, d) / length, t1 = dot(b - s.a, d) / length;
			under.push_back(std::minmax(t0, t1));
		}
		std::sort(under.begin(), under.end());
		double reached = 0;
		for (auto [from, to] : under) {
			if (to <= reached)
				continue;
			if (from > reached + SOFT_NEAR)
				off += std::min(from, length) - reached;
			reached = std::max(reached, to);
			if (reached >= length)
				break;
		}
		if (reached < length - SOFT_NEAR)
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
		length += length_where(s, cells, true, SOFT_NEAR);
	return length;
}

void check_place(const Floor &floor, const SoftJoint &soft, const Network &network, Report &report)
{
	const Joint &joint = soft.joint;
	double off = off_network(joint.line, network), in = inside_crossed(joint.line, network),
	       bare = 0;
	std::vector<Shape> covers = floor.covered();
	for (const Segment &s : segments_of(joint.line))
		bare += length_where(s, covers, false, SOFT_NEAR);
	report.cases++;
	report.check(off <= SOFT_NEAR, "E-C3.on-joint", "joint %s: %.3f mm off the tile joints",
	             joint.id.c_str(), off);
	report.check(bare <= SOFT_NEAR, "E-C3.on-strip", "joint %s: %.3f mm beside the strip",
	             joint.id.c_str(), bare);
	report.check(in <= SOFT_NEAR, "E-C3.clear", "joint %s: %.3f mm inside crossed cells",
	             joint.id.c_str(), in);
}

void check_figures(const Joint &joint, double penalty, Report &report)
{
	auto [length, turns, is_closed] = soft_figures(joint.line);
	report.check(std::fabs(length - joint.length) <= SOFT_NEAR &&
	                     std::fabs(turns - joint.turns) <= 1e-4 &&
	                     std::fabs(length + penalty * turns - joint.cost) <=
	                             SOFT_NEAR + 1e-4 * penalty,
	             "E-C3.figures",
	             "joint %s%s: length %.3f, turns %.4f, cost %.3f; recorded %.3f, %.4f, %.3f",
	             joint.id.c_str(), is_closed ? ", closed" : "", length, turns,
	             length + penalty * turns, joint.length, joint.turns, joint.cost);
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
	double reach = floor.lay.joint / 2 + SOFT_BEYOND - SOFT_NEAR;
	double farthest = floor.half_width() + floor.lay.tile_long - SOFT_NEAR;
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
				if (!Floor::in_any(covers, q, SOFT_NEAR) && bare++ == 0)
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
		check_cheapest(floor, soft, network, penalty, report);
		check_beyond(floor, soft, report);
	}
	for (const Group &group : groups)
		if (group.state == "isolate" && wants_soft_joints(floor))
			check_present(floor, group, report);
}
