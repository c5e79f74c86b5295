// lay.cpp - one lay of a record: its ground, and what of the record lies on it.
#include <algorithm>
#include <cmath>
#include <type_traits>

#include "cracks.hpp"

namespace
{

// A millimetre into the room at each end, so that the two are joined.
Shape recess_shape(const Recess &recess)
{
	Point a = recess.end.a - recess.opening.a, b = recess.end.b - recess.opening.b;
	a = a * (1 / norm(a)), b = b * (1 / norm(b));
	double past = recess.is_open ? 1 : 0;
	Ring ring = {recess.opening.a - a, recess.opening.b - b, recess.end.b + b * past,
	             recess.end.a + a * past};
	if (signed_area(ring) < 0)
		std::reverse(ring.begin(), ring.end());
	return {ring};
}

} // namespace

std::vector<Shape> ground_of(const Record &record, const Plan &plan, const PlanLay &lay)
{
	std::vector<Shape> shapes;
	for (const Room &room : record.rooms) {
		if (!lay.rooms.count(room.id))
			continue;
		shapes.push_back(room.shape);
		auto found = plan.recesses.find(room.id);
		if (found != plan.recesses.end())
			for (const Recess &recess : found->second)
				if (recess.is_deep())
					shapes.push_back(recess_shape(recess));
	}
	return shapes;
}

std::vector<Shape> Floor::ground() const
{
	return ground_of(record, plan, lay);
}

std::vector<Shape> Floor::obstacles() const
{
	std::vector<Shape> shapes;
	for (const auto &[room, obstacles] : plan.obstacles)
		if (lay.rooms.count(room))
			for (const Obstacle &obstacle : obstacles)
				shapes.push_back({obstacle.ring});
	return shapes;
}

std::vector<Shape> Floor::covered() const
{
	std::vector<Shape> shapes = record.full_covers;
	for (const Strip &strip : record.strips)
		shapes.push_back(strip.shape);
	return shapes;
}

const PlanMembrane *Floor::membrane() const
{
	for (const PlanMembrane &membrane : plan.membranes)
		for (const std::string &room : lay.rooms)
			if (membrane.rooms.count(room))
				return &membrane;
	return nullptr;
}

double Floor::half_width() const
{
	const PlanMembrane *m = membrane();
	return std::max(m ? m->strip : 0, 3 * lay.tile_width) / 2;
}

double Floor::overrun() const
{
	const PlanMembrane *m = membrane();
	return m && m->overrun >= 0 ? m->overrun : std::max(lay.tile_long, 12 * 25.4);
}

bool Floor::on_panel(Point p, double slack) const
{
	for (const Panel &panel : field.panels)
		if (inside(panel.shape, p) || distance(p, panel.border) <= slack)
			return true;
	return false;
}

bool Floor::in_any(const std::vector<Shape> &shapes, Point p, double slack)
{
	for (const Shape &shape : shapes)
		if (inside(shape, p) || (slack > 0 && distance(p, segments_of(shape)) <= slack))
			return true;
	return false;
}

namespace
{

bool is_here(const Shape &shape, const std::vector<Shape> &ground)
{
	double here = 0, all = 0;
	std::vector<const Shape *> shapes = {&shape};
	for (const Shape &own : ground)
		shapes.push_back(&own);
	for (const Trapezoid &t :
	     trapezoids(shapes, box_of(shape), [](const auto &in) { return in[0] != 0; })) {
		all += t.area();
		here += std::count(t.in.begin() + 1, t.in.end(), 1) > 0 ? t.area() : 0;
	}
	return here > all / 2;
}

bool is_here(const Line &line, const std::vector<Shape> &ground)
{
	double here = 0, all = 0;
	for (const Segment &s : segments_of(line)) {
		here += length_where(s, ground, true, 0);
		all += norm(s.b - s.a);
	}
	return here > all / 2;
}

template <typename Part> void keep_here(std::vector<Part> &parts, const std::vector<Shape> &ground)
{
	auto away = [&](const Part &part) {
		if constexpr (std::is_same_v<Part, Joint>)
			return !is_here(part.line, ground);
		else if constexpr (std::is_same_v<Part, Shape>)
			return !is_here(part, ground);
		else
			return !is_here(part.shape, ground);
	};
	parts.erase(std::remove_if(parts.begin(), parts.end(), away), parts.end());
}

} // namespace

Record record_of_lay(const Record &record, const std::vector<Shape> &ground)
{
	Record part = record;
	keep_here(part.strips, ground);
	keep_here(part.holds, ground);
	keep_here(part.joints, ground);
	keep_here(part.full_covers, ground);
	return part;
}
