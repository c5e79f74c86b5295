// holds.cpp - what is not tiled over: holds of stepped cracks, carried slab joints.
#include <algorithm>
#include <cmath>

#include "cracks.hpp"

namespace
{

const double NEAR = 0.01;

std::vector<Shape> panels_of(const Field &field)
{
	std::vector<Shape> shapes;
	for (const Panel &panel : field.panels)
		shapes.push_back(panel.shape);
	return shapes;
}

// Parts of the crack's line on the field, outside of the holds.
double bare_length(const Floor &floor, const Crack &crack, const std::vector<Shape> &holds,
                   Point &where)
{
	const std::vector<Shape> panels = panels_of(floor.field);
	double bare = 0;
	for (const Line &run : crack.runs)
		for (const Segment &s : segments_of(run)) {
			std::vector<Segment> borders;
			for (const auto *list : {&panels, &holds})
				for (const Shape &shape : *list)
					for (const Segment &b : segments_of(shape))
						borders.push_back(b);
			std::vector<double> at = cuts(s, borders);
			for (size_t i = 0; i + 1 < at.size(); i++) {
				Point middle = s.a + (s.b - s.a) * ((at[i] + at[i + 1]) / 2);
				if (Floor::in_any(panels, middle, 0) &&
				    !Floor::in_any(holds, middle, NEAR)) {
					bare += (at[i + 1] - at[i]) * norm(s.b - s.a);
					where = middle;
				}
			}
		}
	return bare;
}

// How much of the hold's border lies neither on a cell border nor on the field's edge.
double loose_border(const Floor &floor, const Hold &hold)
{
	Box box = box_of(hold.shape);
	box.grow(1);
	std::vector<Segment> borders;
	for (const Panel &panel : floor.field.panels) {
		borders.insert(borders.end(), panel.border.begin(), panel.border.end());
		each_place(floor.field, panel, box, floor.field.cells,
		           [&](int, int, int, const Ring &cell) {
				   for (const Segment &s : segments_of(Shape{cell}))
					   borders.push_back(s);
			   });
	}
	double loose = 0;
	for (const Segment &s : segments_of(hold.shape)) {
		std::vector<double> at = cuts(s, borders);
		for (size_t i = 0; i + 1 < at.size(); i++)
			if (distance(s.a + (s.b - s.a) * ((at[i] + at[i + 1]) / 2), borders) > NEAR)
				loose += (at[i + 1] - at[i]) * norm(s.b - s.a);
	}
	return loose;
}

// What of a crack lies on bare ground: under a wall or an obstacle it is interrupted.
std::vector<Segment> on_bare_ground(const Floor &floor, const Crack &crack)
{
	std::vector<Shape> ground = floor.ground(), obstacles = floor.obstacles();
	std::vector<Segment> borders, parts;
	for (const std::vector<Shape> *shapes : {&ground, &obstacles})
		for (const Shape &shape : *shapes)
			for (const Segment &side : segments_of(shape))
				borders.push_back(side);
	for (const Line &run : crack.runs)
		for (const Segment &s : segments_of(run)) {
			std::vector<double> at = cuts(s, borders);
			Point d = s.b - s.a;
			for (size_t i = 0; i + 1 < at.size(); i++) {
				Point middle = s.a + d * ((at[i] + at[i + 1]) / 2);
				if (Floor::in_any(ground, middle, 0) &&
				    !Floor::in_any(obstacles, middle, 0))
					parts.push_back({s.a + d * at[i], s.a + d * at[i + 1]});
			}
		}
	return parts;
}

// Tile within one tile width of the crack's band that the hold leaves out, where the crack
// runs in the same panel.
int left_out(const Floor &floor, const Crack &crack, const std::vector<Shape> &holds)
{
	double reach = reach_of(floor.plan, crack) + floor.lay.tile_width;
	const std::vector<Segment> parts = on_bare_ground(floor, crack);
	std::vector<std::vector<Segment>> lines(floor.field.panels.size()); // of each panel
	for (size_t p = 0; p < lines.size(); p++)
		for (const Segment &s : parts)
			if (length_where(s, {floor.field.panels[p].shape}, true, 0) > NEAR)
				lines[p].push_back(s);
	int count = 0;
	for (const Tile &tile : floor.tiling.tiles) {
		const std::vector<Segment> &here = lines[tile.panel];
		bool near = false;
		for (const Ring &quad : tile.quads)
			near = near || (!here.empty() && distance(quad, here) < reach - NEAR);
		count += near && !Floor::in_any(holds, tile.middle, 0);
	}
	return count;
}

void check_hold(const Floor &floor, const Hold &hold, Report &report)
{
	double area = area_of(hold.shape);
	report.check(std::fabs(area - hold.area) <= 1, "hold-area",
	             "hold %s: %.3f mm2, recorded %.3f", hold.id.c_str(), area, hold.area);
	double loose = loose_border(floor, hold);
	report.check(loose <= NEAR, "hold-border",
	             "hold %s: %.3f mm of its border off the tile joints", hold.id.c_str(), loose);
	double soft = 0;
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "soft" || joint.kind == "movement")
			for (const Segment &s : segments_of(joint.line))
				soft += length_where(s, {hold.shape}, true, NEAR);
	report.check(soft <= NEAR, "hold-clear",
	             "hold %s: %.3f mm of soft or movement joints inside", hold.id.c_str(), soft);
	report.cases++;
}

// A slab joint that bends is carried in several straight lines; a side of it is the nearest
// line's to follow, by its middle.
bool follows(const Floor &floor, const Joint &joint, const Segment &side)
{
	Point middle = (side.a + side.b) * 0.5;
	double own = distance(middle, segments_of(joint.line));
	for (const Joint &other : floor.record.joints)
		if (other.kind == "carried" && other.of == joint.of && other.line.size() >= 2 &&
		    distance(middle, segments_of(other.line)) < own)
			return false;
	return true;
}

// One carried joint against its slab joint.
void check_one_carried(const Floor &floor, const Joint &joint, Report &report)
{
	if (!floor.plan.joints.count(joint.of)) {
		report.check(floor.plan.cracks.count(joint.of) > 0, "carried-line",
		             "joint %s: carries no slab joint or crack of the plan",
		             joint.id.c_str());
		return;
	}
	const PlanJoint &slab = floor.plan.joints.at(joint.of);
	Point a = joint.line.front(), d = joint.line.back() - a;
	double length = norm(d), bend = 0, deviation = 0;
	for (Point p : joint.line)
		bend = std::max(bend, std::fabs(cross(d, p - a)) / length);
	const Line lying = landed(floor, joint.of);
	for (const Segment &s : segments_of(lying)) { // where the two run side by side
		if (!follows(floor, joint, s))
			continue;
		double t0 = dot(s.a - a, d) / length, t1 = dot(s.b - a, d) / length;
		for (double limit : {0.0, length})
			if ((t0 < limit) != (t1 < limit)) {
				Point p = s.a + (s.b - s.a) * ((limit - t0) / (t1 - t0));
				deviation =
					std::max(deviation, std::fabs(cross(d, p - a)) / length);
			}
		if (t0 >= 0 && t0 <= length)
			deviation = std::max(deviation, std::fabs(cross(d, s.a - a)) / length);
		if (t1 >= 0 && t1 <= length)
			deviation = std::max(deviation, std::fabs(cross(d, s.b - a)) / length);
	}
	report.cases++;
	report.check(
		bend <= NEAR && deviation <= joint.width / 2 &&
			joint.width >= slab.width + 2 * deviation - NEAR,
		"carried-line",
		"joint %s: %.3f mm wide, slab joint %s %.3f, deviates %.3f at most, bends %.3f",
		joint.id.c_str(), joint.width, joint.of.c_str(), slab.width, deviation, bend);
}

// Every stretch of slab joint under the lay is carried, unless it is to be relocated.
void check_presence(const Floor &floor, const std::string &id, const PlanJoint &slab,
                    Report &report)
{
	if (slab.relocate)
		return;
	std::vector<Shape> ground = floor.ground(), obstacles = floor.obstacles();
	double missing = 0;
	for (const Segment &s : segments_of(landed(floor, id))) {
		double length = norm(s.b - s.a);
		int steps = static_cast<int>(length / 2) + 1;
		for (int i = 0; i < steps; i++) {
			Point p = s.a + (s.b - s.a) * ((i + 0.5) / steps);
			if (!Floor::in_any(ground, p, 0) || Floor::in_any(obstacles, p, 0))
				continue;
			bool carried = false;
			for (const Joint &joint : floor.record.joints)
				carried = carried || (joint.kind == "carried" && joint.of == id &&
				                      distance(p, segments_of(joint.line)) <=
				                              joint.width / 2 + NEAR);
			missing += carried ? 0 : length / steps;
		}
	}
	// Round columns and the gap at a wall may cost the last few millimetres.
	report.check(missing <= 30, "carried-present", "slab joint %s: %.1f mm not carried",
	             id.c_str(), missing);
}

double common(const Shape &a, const Shape &b)
{
	return total_area(
		trapezoids({&a, &b}, box_of(a), [](const auto &in) { return in[0] && in[1]; }));
}

} // namespace

void check_holds(const Floor &floor, Report &report)
{
	for (const Hold &hold : floor.record.holds)
		check_hold(floor, hold, report);
	for (const Crack &crack : floor.record.cracks) {
		if (crack.state != "hold")
			continue;
		std::vector<Shape> holds;
		for (const Hold &hold : floor.record.holds)
			holds.push_back(hold.shape);
		Point where;
		double bare = bare_length(floor, crack, holds, where);
		int missed = left_out(floor, crack, holds);
		report.cases++;
		report.check(bare <= NEAR, "hold-covers",
		             "crack %s: %.3f mm of its line outside of holds, at %.1f,%.1f",
		             crack.id.c_str(), bare, where.x, where.y);
		report.check(missed == 0, "hold-extent",
		             "crack %s: %d tiles within a tile width not held", crack.id.c_str(),
		             missed);
	}
}

void check_carried(const Floor &floor, Report &report)
{
	std::vector<Shape> bands = carried_bands(floor.record);
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "carried" && joint.line.size() >= 2)
			check_one_carried(floor, joint, report);
	for (const auto &[id, slab] : floor.plan.joints)
		check_presence(floor, id, slab, report);
	double tiled = 0;
	for (const Panel &panel : floor.field.panels)
		for (const Shape &band : bands)
			tiled += common(band, panel.shape);
	report.check(tiled <= 1, "carried-open",
	             "lay %s: %.3f mm2 of field in the bands of carried joints",
	             floor.field.lay.c_str(), tiled);
}
