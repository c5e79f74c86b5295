// lines.cpp - field joints: on the edges of tile or cut, no run of tile longer than the limit.
#include <algorithm>
#include <cmath>

#include "cracks.hpp"

namespace
{

const double NEAR = 0.01;

// The part of a segment beside a stretch of line: its ends in the line's own axes, x along it.
bool beside(Segment s, double length, Segment &part)
{
	if (s.a.x > s.b.x)
		std::swap(s.a, s.b);
	if (s.b.x < 0 || s.a.x > length)
		return false;
	Point d = s.b - s.a;
	auto at = [&](double x) { return d.x > 0 ? s.a + d * ((x - s.a.x) / d.x) : s.a; };
	part = {s.a.x < 0 ? at(0) : s.a, s.b.x > length ? at(length) : s.b};
	return true;
}

// A quad no wider than the printed digits has its corners anywhere on its upright sides.
bool is_needle(const Ring &quad)
{
	Box box = box_of(quad);
	return box.x1 - box.x0 < 1e-5;
}

// Edges of tile on the two sides of a line: at half its width, and none nearer.
void check_on_joint(const Floor &floor, const Joint &joint, Report &report)
{
	Point a = joint.line.front(), d = joint.line.back() - a;
	double length = norm(d), left = 1e300, right = 1e300;
	d = d * (1 / length);
	auto own = [&](Point p) { return Point{dot(p - a, d), cross(d, p - a)}; };
	for (const Tile &tile : floor.tiling.tiles)
		for (const Ring &quad : tile.quads) {
			if (is_needle(quad))
				continue;
			for (const Segment &s : segments_of(Shape{quad})) {
				Segment part;
				if (!beside({own(s.a), own(s.b)}, length, part))
					continue;
				for (Point p : {part.a, part.b})
					(p.y > 0 ? left : right) =
						std::min(p.y > 0 ? left : right, std::fabs(p.y));
			}
		}
	report.cases++;
	double half = joint.width / 2;
	// Beside a run shorter than a tile, between borders, what would lie there may be no tile.
	bool is_short = length < floor.lay.tile_width;
	double most = is_short ? std::min(left, right) : std::max(left, right);
	report.check(std::min(left, right) >= half - NEAR && most <= half + NEAR,
	             "E-M4.line", "joint %s: tile %.3f and %.3f mm from its centre line, %.3f wide",
	             joint.id.c_str(), left, right, joint.width);
}

// The longest run of panel along a direction, through a point and by every corner.
double longest_run(const Shape &shape, Point along)
{
	double longest = 0;
	Point across = {-along.y, along.x};
	std::vector<Segment> border = segments_of(shape);
	for (const Segment &corner : border)
		for (double aside : {-0.02, 0.02}) {
			Point p = corner.a + across * aside;
			Segment ray{p - along * 1e5, p + along * 1e5};
			std::vector<double> at = cuts(ray, border);
			for (size_t i = 0; i + 1 < at.size(); i++) {
				double length = (at[i + 1] - at[i]) * 2e5;
				Point middle = ray.a + (ray.b - ray.a) * ((at[i] + at[i + 1]) / 2);
				if (length > NEAR && inside(shape, middle))
					longest = std::max(longest, length);
			}
		}
	return longest;
}

// Sides of a panel that run along a direction, in its axes: x along, y across.
std::vector<Segment> sides_along(const Panel &panel, Point along)
{
	std::vector<Segment> sides;
	for (const Segment &s : panel.border) {
		Segment own{{dot(s.a, along), cross(along, s.a)},
		            {dot(s.b, along), cross(along, s.b)}};
		if (std::fabs(own.b.x - own.a.x) > NEAR &&
		    std::fabs(own.b.y - own.a.y) <= NEAR / 10)
			sides.push_back(own);
	}
	return sides;
}

bool lie_beside(const Segment &s, const Segment &t)
{
	return std::min(std::max(s.a.x, s.b.x), std::max(t.a.x, t.b.x)) -
	               std::max(std::min(s.a.x, s.b.x), std::min(t.a.x, t.b.x)) >
	       NEAR;
}

} // namespace

std::vector<Shape> unbuilt_bands(const Floor &floor)
{
	std::vector<Shape> bands;
	const std::vector<Panel> &panels = floor.field.panels;
	Point u = floor.field.u, v = {-u.y, u.x};
	auto add = [&](Point along, const Segment &low, const Segment &high) {
		double taken = high.a.y - low.a.y;
		bool is_line = std::fabs(taken - floor.line_width) <= NEAR ||
		               std::fabs(taken - (floor.line_width - floor.lay.joint)) <= NEAR;
		if (taken <= NEAR || !is_line || !lie_beside(low, high))
			return;
		Point across = {-along.y, along.x}, far = along * 1e5;
		Point a = along * low.a.x + across * low.a.y, b = a + across * taken;
		bands.push_back({{a - far, a + far, b + far, b - far}});
	};
	for (Point along : {u, v})
		for (const Panel &panel : panels)
			for (const Panel &other : panels)
				for (const Segment &low : sides_along(panel, along))
					for (const Segment &high : sides_along(other, along))
						add(along, low, high);
	return bands;
}

void check_field_joints(const Floor &floor, double limit, Report &report)
{
	for (const Joint *joint : field_lines(floor))
		check_on_joint(floor, *joint, report);
	Point u = floor.field.u, v = {-u.y, u.x};
	for (const Panel &panel : floor.field.panels) {
		double run = std::max(longest_run(panel.shape, u), longest_run(panel.shape, v));
		report.cases++;
		report.check(run <= limit + NEAR, "E-M1",
		             "panel %s: longest run %.3f mm, limit %.3f", panel.id.c_str(), run,
		             limit);
	}
}
