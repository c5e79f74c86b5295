// field.cpp - the ground that is tiled, drawn anew from the rooms and the plan, and the
// control lines on it.
#include <algorithm>
#include <cmath>

#include "cracks.hpp"

namespace
{

const double NEAR = 0.01;
const double SAGITTA = 0.1; // between a circle and the polygon drawn for it

Shape recess_shape(const Recess &recess)
{
	Point out = recess.into * -recess.deep, in = recess.into * 1.0; // joined to the room
	Ring ring = {recess.opening.a + in, recess.opening.b + in, recess.opening.b + out,
	             recess.opening.a + out};
	if (signed_area(ring) < 0)
		std::reverse(ring.begin(), ring.end());
	return {ring};
}

// The walls of a room without its openings, and the sides of the openings.
std::vector<Segment> walls_of(const Floor &floor, const Room &room)
{
	std::vector<Segment> walls = segments_of(room.shape);
	auto found = floor.plan.recesses.find(room.id);
	if (found == floor.plan.recesses.end())
		return walls;
	for (const Recess &recess : found->second) {
		if (recess.deep <= 0)
			continue;
		std::vector<Segment> rest;
		for (const Segment &wall : walls) {
			Point d = wall.b - wall.a;
			double square = dot(d, d);
			double t0 = dot(recess.opening.a - wall.a, d) / square;
			double t1 = dot(recess.opening.b - wall.a, d) / square;
			if (std::max(distance(recess.opening.a, wall),
			             distance(recess.opening.b, wall)) > 20) {
				rest.push_back(wall);
				continue;
			}
			rest.push_back({wall.a, wall.a + d * std::min(t0, t1)});
			rest.push_back({wall.a + d * std::max(t0, t1), wall.b});
		}
		Point out = recess.into * -recess.deep;
		rest.push_back({recess.opening.a, recess.opening.a + out});
		rest.push_back({recess.opening.b, recess.opening.b + out});
		rest.push_back({recess.opening.a + out, recess.opening.b + out});
		walls = rest;
	}
	return walls;
}

} // namespace

// Rooms and recesses, less obstacles, less the gap all round (none at drains), less the
// bands of carried joints: that much the panels are, but for the corners of the gap, which
// are round here and mitred there, and circles.
void check_field(const Floor &floor, Report &report)
{
	std::vector<Shape> ground, stops = carried_bands(floor.record), panels;
	double gap = floor.lay.gap, slack = 5;
	for (const Room &room : floor.record.rooms) {
		if (!floor.lay.rooms.count(room.id))
			continue;
		ground.push_back(room.shape);
		if (auto found = floor.plan.recesses.find(room.id);
		    found != floor.plan.recesses.end())
			for (const Recess &recess : found->second)
				if (recess.deep > 0)
					ground.push_back(recess_shape(recess)),
						slack += 2 * gap * gap;
		for (const Segment &wall : walls_of(floor, room))
			stops.push_back({capsule(wall, gap)}), slack += gap * gap / 4;
		if (auto found = floor.plan.obstacles.find(room.id);
		    found != floor.plan.obstacles.end())
			for (const Obstacle &obstacle : found->second) {
				stops.push_back({obstacle.ring});
				slack += obstacle.round * 1.5 * SAGITTA +
				         (obstacle.round > 0 ? 0 : gap * gap * 2);
				if (obstacle.kind == "drain")
					continue;
				for (const Segment &side : segments_of(Shape{obstacle.ring}))
					stops.push_back({capsule(side, gap)});
			}
	}
	for (const Panel &panel : floor.field.panels)
		panels.push_back(panel.shape);
	std::vector<const Shape *> shapes;
	Box box;
	for (const std::vector<Shape> *list : {&ground, &stops, &panels})
		for (const Shape &shape : *list)
			shapes.push_back(&shape);
	for (const std::vector<Shape> *list : {&ground, &panels})
		for (const Shape &shape : *list)
			for (const Ring &ring : shape)
				for (Point p : ring)
					box.add(p);
	auto g = static_cast<std::ptrdiff_t>(ground.size()),
	     s = static_cast<std::ptrdiff_t>(stops.size());
	std::vector<Trapezoid> apart = trapezoids(shapes, box, [g, s](const auto &in) {
		bool field = std::count(in.begin(), in.begin() + g, 1) > 0 &&
		             std::count(in.begin() + g, in.begin() + g + s, 1) == 0;
		return field != (std::count(in.begin() + g + s, in.end(), 1) > 0);
	});
	double area = total_area(apart);
	report.cases++;
	report.check(area <= slack, "field",
	             "lay %s: drawn anew it differs by %.3f mm2, allowed %.3f",
	             floor.field.lay.c_str(), area, slack);
}

// Control lines lie on edges of faces, the first tile has a corner where they cross.
void check_controls(const Floor &floor, Report &report)
{
	for (const Control &control : floor.record.controls) {
		if (!floor.lay.rooms.count(control.room))
			continue;
		Point d = control.line.b - control.line.a;
		double length = norm(d), least = 1e300;
		Box box;
		box.add(control.line.a);
		box.add(control.line.b);
		box.grow(1);
		for (const Panel &panel : floor.field.panels)
			each_place(
				floor.field, panel, box, floor.field.faces,
				[&](int, int, int, const Ring &face) {
					for (const Segment &s : segments_of(Shape{face}))
						least = std::min(
							least,
							std::max(std::fabs(cross(
									 d, s.a - control.line.a)),
					                         std::fabs(cross(
									 d,
									 s.b - control.line.a))) /
								length);
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
