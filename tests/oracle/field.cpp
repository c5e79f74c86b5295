// field.cpp - the ground that is tiled, drawn anew from the rooms and the plan, and the
// control lines on it.
#include <algorithm>
#include <cmath>

#include "cracks.hpp"

namespace
{

const double NEAR = 0.01;
const double NEAR_WALL = 20; // what the plan says of a wall lies this near to it
const double SAGITTA = 0.1;  // between a circle and the polygon drawn for it

// The walls of a room without its openings, and the sides of the openings.
std::vector<Segment> walls_of(const Floor &floor, const Room &room)
{
	std::vector<Segment> walls = segments_of(room.shape);
	if (auto open = floor.plan.open_edges.find(room.id); open != floor.plan.open_edges.end())
		for (const Segment &edge : open->second)
			walls.erase(std::remove_if(walls.begin(), walls.end(),
			                           [&](const Segment &wall) {
							   return distance(wall.a, edge) <
				                                          NEAR_WALL &&
				                                  distance(wall.b, edge) <
				                                          NEAR_WALL;
						   }),
			            walls.end());
	auto found = floor.plan.recesses.find(room.id);
	if (found == floor.plan.recesses.end())
		return walls;
	for (const Recess &recess : found->second) {
		if (!recess.is_deep() && !recess.is_open)
			continue;
		std::vector<Segment> rest;
		for (const Segment &wall : walls) {
			Point d = wall.b - wall.a;
			double square = dot(d, d);
			double t0 = dot(recess.opening.a - wall.a, d) / square;
			double t1 = dot(recess.opening.b - wall.a, d) / square;
			if (std::max(distance(recess.opening.a, wall),
			             distance(recess.opening.b, wall)) > NEAR_WALL) {
				rest.push_back(wall);
				continue;
			}
			rest.push_back({wall.a, wall.a + d * std::min(t0, t1)});
			rest.push_back({wall.a + d * std::max(t0, t1), wall.b});
		}
		rest.push_back({recess.opening.a, recess.end.a});
		rest.push_back({recess.opening.b, recess.end.b});
		if (!recess.is_open)
			rest.push_back(recess.end);
		walls = rest;
	}
	return walls;
}

// What field joints take: a band about each line, or about the whole straight that it is on.
std::vector<Shape> line_bands(const Floor &floor, bool is_endless)
{
	std::vector<Shape> bands;
	for (const Joint *joint : field_lines(floor)) {
		Point a = joint->line.front(), b = joint->line.back(),
		      d = (b - a) * (1 / norm(b - a));
		double taken = taken_by(floor, *joint), past = is_endless ? 1e5 : taken;
		Point out = Point{-d.y, d.x} * (taken / 2);
		a = a - d * past, b = b + d * past;
		bands.push_back({{a - out, b - out, b + out, a + out}});
	}
	return bands;
}

std::vector<Shape> round_holds(const Floor &floor)
{
	std::vector<Shape> shapes;
	for (const Hold &hold : floor.record.holds) {
		shapes.push_back(hold.shape);
		for (const Segment &s : segments_of(hold.shape))
			shapes.push_back({capsule(s, 2 * floor.line_width + NEAR)});
	}
	// Along a wall, past its end, a line may take the sliver that is left there.
	for (const Room &room : floor.record.rooms)
		for (const Segment &wall : segments_of(room.shape))
			shapes.push_back({capsule(wall, floor.lay.gap + floor.line_width)});
	return shapes;
}

// Panels and what the lines between them take make up the recorded field.
void check_field_area(const Floor &floor, Report &report)
{
	double panels = 0, lines = 0, slack = std::max(1.0, 1e-9 * floor.field.area);
	for (const Panel &panel : floor.field.panels)
		panels += area_of(panel.shape);
	std::vector<const Joint *> joints = field_lines(floor);
	for (size_t k = 0; k < joints.size(); k++) {
		double taken = taken_by(floor, *joints[k]);
		lines += taken * norm(joints[k]->line.back() - joints[k]->line.front());
		slack += 2 * taken * taken; // a skew or a corner at its ends
		for (size_t m = 0; m < k; m++)
			if (distance(Segment{joints[k]->line.front(), joints[k]->line.back()},
			             Segment{joints[m]->line.front(), joints[m]->line.back()}) <= 0)
				lines -= taken * taken_by(floor, *joints[m]);
	}
	double held = 0; // a line stops at a hold, what it takes does not
	for (const Hold &hold : floor.record.holds) {
		Box box = box_of(hold.shape);
		held += floor.line_width * (box.x1 - box.x0 + box.y1 - box.y0);
	}
	double lack = floor.field.area - panels - lines;
	report.check(lack >= -slack && lack <= slack + held, "E-T1.field",
	             "lay %s: %zu panels %.3f mm2 and lines %.3f, field recorded %.3f",
	             floor.field.lay.c_str(), floor.field.panels.size(), panels, lines,
	             floor.field.area);
}

} // namespace

std::vector<const Joint *> field_lines(const Floor &floor)
{
	std::vector<const Joint *> lines;
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "movement" && joint.of == floor.field.lay &&
		    joint.line.size() >= 2)
			lines.push_back(&joint);
	return lines;
}

// On tile joints the tile beyond is moved by what the line is wider; a cut takes its width.
double taken_by(const Floor &floor, const Joint &joint)
{
	return joint.is_cut ? joint.width : joint.width - floor.lay.joint;
}

// What a gap outside (or inside) a ring, mitred at its corners, holds more than a round one.
double mitred(const Ring &ring, double gap, bool is_inside)
{
	double area = 0, sense = (signed_area(ring) > 0) != is_inside ? 1 : -1;
	for (size_t i = 0; i < ring.size(); i++) {
		Point a = ring[i], b = ring[(i + 1) % ring.size()], c = ring[(i + 2) % ring.size()];
		double turn = sense * std::atan2(cross(b - a, c - b), dot(b - a, c - b));
		if (turn > 0)
			area += gap * gap * (std::tan(turn / 2) - turn / 2);
	}
	return area;
}

Trapezoid largest_of(const std::vector<Trapezoid> &all)
{
	Trapezoid largest{};
	for (const Trapezoid &t : all)
		if (t.area() > largest.area())
			largest = t;
	return largest;
}

// Every room's obstacles: the ground they and the gap round them take, and what that gap holds
// more than a round one.
std::vector<Shape> obstacle_stops(const Floor &floor, const Room &room, double &slack)
{
	std::vector<Shape> stops;
	double gap = floor.lay.gap;
	auto found = floor.plan.obstacles.find(room.id);
	if (found == floor.plan.obstacles.end())
		return stops;
	for (const Obstacle &obstacle : found->second) {
		stops.push_back({obstacle.ring});
		slack += obstacle.round * 1.5 * SAGITTA +
		         (obstacle.round > 0 ? 0 : mitred(obstacle.ring, gap, false));
		if (obstacle.kind == "drain")
			continue;
		for (const Segment &side : segments_of(Shape{obstacle.ring}))
			stops.push_back({capsule(side, gap)});
	}
	return stops;
}

// Rooms and recesses, less obstacles, less the gap all round (none at drains), less the
// bands of carried and doorway joints and what field joints take: that much the panels are,
// but for the corners of the gap, which are round here and mitred there, and circles.
void check_field(const Floor &floor, Report &report)
{
	check_field_area(floor, report);
	std::vector<Shape> ground = floor.ground(), stops = carried_bands(floor.record), panels;
	for (const Joint &joint : floor.record.joints)
		if (floor.plan.doorway_joints.count(joint.of) && joint.kind == "movement")
			add_band(joint, stops);
	double gap = floor.lay.gap, slack = 5;
	for (const Room &room : floor.record.rooms) {
		if (!floor.lay.rooms.count(room.id))
			continue;
		if (auto found = floor.plan.recesses.find(room.id);
		    found != floor.plan.recesses.end())
			slack += 2 * gap * gap * static_cast<double>(found->second.size());
		for (const Segment &wall : walls_of(floor, room))
			stops.push_back({capsule(wall, gap)}), slack += gap * gap / 4;
		for (const Ring &ring : room.shape)
			slack += mitred(ring, gap, true);
		for (const Shape &stop : obstacle_stops(floor, room, slack))
			stops.push_back(stop);
	}
	for (const Panel &panel : floor.field.panels)
		panels.push_back(panel.shape);
	const std::vector<Shape> bands = line_bands(floor, false), held = round_holds(floor);
	std::vector<Shape> far = line_bands(floor, true);
	for (const Shape &band : unbuilt_bands(floor))
		far.push_back(band);
	const std::vector<const std::vector<Shape> *> lists = {&ground, &stops, &panels,
	                                                       &bands,  &far,   &held};
	std::vector<const Shape *> shapes;
	Box box;
	for (const std::vector<Shape> *list : lists)
		for (const Shape &shape : *list)
			shapes.push_back(&shape);
	for (const std::vector<Shape> *list : {lists[0], lists[2]})
		for (const Shape &shape : *list)
			for (const Ring &ring : shape)
				for (Point p : ring)
					box.add(p);
	std::vector<std::ptrdiff_t> end; // of each list in `in`
	for (const std::vector<Shape> *list : lists)
		end.push_back(static_cast<std::ptrdiff_t>(list->size()) +
		              (end.empty() ? 0 : end.back()));
	std::vector<Trapezoid> apart = trapezoids(shapes, box, [&end](const auto &in) {
		auto is_in = [&](size_t list) {
			return std::count(in.begin() + (list ? end[list - 1] : 0),
			                  in.begin() + end[list], 1) > 0;
		};
		// A line that stops at a hold, or lies in one, may still part the tile inside it.
		if (is_in(4) && is_in(5) && !is_in(3))
			return false;
		return (is_in(0) && !is_in(1) && !is_in(3)) != is_in(2);
	});
	double area = total_area(apart);
	Point most = largest_of(apart).middle();
	report.cases++;
	report.check(area <= slack, "field",
	             "lay %s: drawn anew it differs by %.3f mm2, allowed %.3f, most at %.0f,%.0f",
	             floor.field.lay.c_str(), area, slack, most.x, most.y);
}

// Control lines lie on edges of faces, the first tile has a corner where they cross.
void check_controls(const Floor &floor, Report &report)
{
	for (const Control &control : floor.record.controls) {
		if (!floor.lay.rooms.count(control.room))
			continue;
		Point d = control.line.b - control.line.a;
		double length = norm(d), least = 1e300;
		// Without an edge that way (hexagons) a row is where its corners are.
		bool has_edges = false;
		for (const Ring &face : floor.field.faces)
			for (const Segment &s : segments_of(Shape{face}))
				has_edges = has_edges || std::fabs(cross(d, s.b - s.a)) <=
				                                 1e-6 * length * norm(s.b - s.a);
		Box box;
		box.add(control.line.a);
		box.add(control.line.b);
		box.grow(1);
		auto off = [&](Point p) {
			return std::fabs(cross(d, p - control.line.a)) / length;
		};
		for (const Panel &panel : floor.field.panels)
			each_place(floor.field, panel, box, floor.field.faces,
			           [&](int, int, int, const Ring &face) {
					   for (const Segment &s : segments_of(Shape{face}))
						   least = std::min(least,
					                            has_edges ? std::max(off(s.a),
					                                                 off(s.b))
					                                      : off(s.a));
				   });
		report.cases++;
		report.check(least <= NEAR, "L1", "control %s: nearest row edge %.3f mm off",
		             control.id.c_str(), least);
	}
	for (const First &first : floor.record.firsts) {
		if (!floor.lay.rooms.count(first.room))
			continue;
		double corner = 1e300, line = 0;
		Box box;
		box.add(first.at);
		box.grow(1);
		for (const Panel &panel : floor.field.panels)
			if (inside(panel.shape, first.at) || distance(first.at, panel.border) < 1)
				each_place(floor.field, panel, box, floor.field.faces,
				           [&](int, int, int, const Ring &face) {
						   for (Point p : face)
							   corner = std::min(corner,
						                             norm(p - first.at));
					   });
		for (const Control &control : floor.record.controls)
			if (control.room == first.room)
				line = std::max(line, distance(first.at, control.line));
		report.cases++;
		report.check(
			corner <= NEAR && line <= NEAR, "L5",
			"first tile of %s: %.3f mm from a corner of a face, %.3f from the lines",
			first.room.c_str(), corner, line);
	}
}
