// landing.cpp - where the ends of slab joints lie, as the floor format has it.
#include <algorithm>
#include <cmath>

#include "cracks.hpp"

namespace
{

const double NEAR = 0.01;
const double REACH_INCHES = 25.4, REACH_METRIC = 25; // an end this near lies on it

Point foot(Point p, const Segment &s)
{
	Point d = s.b - s.a;
	double square = dot(d, d);
	return square > 0 ? s.a + d * std::clamp(dot(p - s.a, d) / square, 0.0, 1.0) : s.a;
}

// Where tile ground ends: sides of rooms, recesses and obstacles, but not those that two of
// them share.
bool is_boundary(const Segment &s, Point at, const std::vector<Shape> &ground,
                 const std::vector<Shape> &obstacles)
{
	Point d = s.b - s.a, out = Point{-d.y, d.x} * (NEAR / norm(d));
	// A corner is of both its sides: each is asked a little way along.
	Point in = (s.a + s.b) * 0.5 - at;
	if (norm(in) > 0)
		at = at + in * (std::min(1.0, norm(in)) / norm(in));
	auto is_bare = [&](Point p) {
		return Floor::in_any(ground, p, 0) && !Floor::in_any(obstacles, p, 0);
	};
	return is_bare(at + out) != is_bare(at - out);
}

// On a boundary within reach, or else on another slab joint.
Point landed_end(const Floor &floor, const std::string &id, Point end)
{
	double reach = floor.plan.inches ? REACH_INCHES : REACH_METRIC;
	std::vector<Shape> ground = floor.ground(), obstacles = floor.obstacles();
	Point on_border = end, on_joint = end;
	double to_border = 1e300, to_joint = 1e300;
	auto look = [end](const Segment &s, Point &nearest, double &least) {
		Point at = foot(end, s);
		if (norm(at - end) < least)
			nearest = at, least = norm(at - end);
	};
	for (const std::vector<Shape> *shapes : {&ground, &obstacles})
		for (const Shape &shape : *shapes)
			for (const Segment &side : segments_of(shape))
				if (is_boundary(side, foot(end, side), ground, obstacles))
					look(side, on_border, to_border);
	for (const auto &[other, joint] : floor.plan.joints)
		if (other != id)
			for (const Segment &s : segments_of(joint.line))
				look(s, on_joint, to_joint);
	return to_border <= reach + NEAR ? on_border : to_joint <= reach + NEAR ? on_joint : end;
}

} // namespace

Line landed(const Floor &floor, const std::string &id)
{
	Line line = floor.plan.joints.at(id).line;
	if (norm(line.back() - line.front()) <= NEAR) // closes itself
		return line;
	line.front() = landed_end(floor, id, line.front());
	line.back() = landed_end(floor, id, line.back());
	return line;
}
