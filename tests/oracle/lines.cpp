// lines.cpp - field joints: on the edges of tile or cut, no run of tile longer than the limit.
#include <algorithm>
#include <cmath>

#include "cracks.hpp"

namespace
{

const double NEAR = 0.01;

// Edges of tile on the two sides of a line on tile joints: at half its width, no face of the
// panel there reaching nearer.
void check_on_joint(const Floor &floor, const Joint &joint, Report &report)
{
	Point a = joint.line.front(), d = joint.line.back() - a;
	double length = norm(d), nearest = 1e300, left = 1e300, right = 1e300;
	d = d * (1 / length);
	for (const Tile &tile : floor.tiling.tiles)
		for (const Ring &quad : tile.quads)
			for (Point p : quad) {
				double along = dot(p - a, d), off = cross(d, p - a);
				if (along < 0 || along > length)
					continue;
				nearest = std::min(nearest, std::fabs(off));
				(off > 0 ? left : right) =
					std::min(off > 0 ? left : right, std::fabs(off));
			}
	report.cases++;
	double half = joint.width / 2;
	report.check(nearest >= half - NEAR && left <= half + NEAR && right <= half + NEAR,
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

} // namespace

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
