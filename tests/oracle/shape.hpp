// shape.hpp - the checker's own plane geometry: areas, parts and reaches of plane sets.
// Nothing here is shared with the program under test, and nothing leans on a clipping
// library: a set is cut into trapezoids between vertical lines through every corner and
// crossing, so borders that lie on each other cost nothing and lose nothing.
// Units: mm, mm2.
#ifndef ORACLE_SHAPE_HPP
#define ORACLE_SHAPE_HPP
#include <cstddef>
#include <functional>
#include <vector>

struct Point {
	double x = 0, y = 0;
};
inline Point operator+(Point a, Point b)
{
	return {a.x + b.x, a.y + b.y};
}
inline Point operator-(Point a, Point b)
{
	return {a.x - b.x, a.y - b.y};
}
inline Point operator*(Point a, double k)
{
	return {a.x * k, a.y * k};
}
double dot(Point a, Point b);
double cross(Point a, Point b);
double norm(Point a);

struct Segment {
	Point a, b;
};
using Ring = std::vector<Point>;
using Line = std::vector<Point>;
// Rings of one set: outlines anticlockwise, holes clockwise; inside by parity.
using Shape = std::vector<Ring>;

struct Box {
	double x0 = 1e300, y0 = 1e300, x1 = -1e300, y1 = -1e300;
	void add(Point);
	void grow(double by);
	bool meets(const Box &) const;
	bool holds(Point) const;
};
Box box_of(const Shape &);
Box box_of(const Ring &);

double signed_area(const Ring &);
double area_of(const Shape &);
std::vector<Segment> segments_of(const Shape &);
std::vector<Segment> segments_of(const Line &);
bool inside(const Shape &, Point);
// What of the segments lies inside.
std::vector<Segment> inside_of(const Shape &, const std::vector<Segment> &);

double distance(Point, const Segment &);
double distance(Point, const std::vector<Segment> &);
double distance(const Segment &, const Segment &);
// From a convex ring (filled) to the segments.
double distance(const Ring &convex, const std::vector<Segment> &);
// Where the segment crosses or touches the others, as parameters 0..1, ends included, sorted.
std::vector<double> cuts(const Segment &, const std::vector<Segment> &);

// The convex ring, each edge moved out by `by`.
Ring grown(const Ring &convex, double by);
// Everything within `radius` of the segment, as an inscribed polygon.
Ring capsule(const Segment &, double radius);
// The area of (convex ring and shape), by cutting the shape with each edge in turn.
double clipped_area(const Ring &convex, const Shape &);

// A trapezoid with upright sides at x0 and x1.
struct Trapezoid {
	double x0, x1, low0, high0, low1, high1;
	std::vector<char> in; // per shape: inside or not
	int part = 0;         // connected part, numbered from 0
	double area() const
	{
		return (high0 - low0 + high1 - low1) / 2 * (x1 - x0);
	}
	Point middle() const
	{
		return {(x0 + x1) / 2, (low0 + low1 + high0 + high1) / 4};
	}
	Ring ring() const
	{
		return {{x0, low0}, {x1, low1}, {x1, high1}, {x0, high0}};
	}
	bool holds(Point p, double slack) const;
};
using Keep = std::function<bool(const std::vector<char> &in)>;

// The set of points for which `keep` is true, within the window, and its connected parts.
std::vector<Trapezoid> trapezoids(const std::vector<const Shape *> &, const Box &window,
                                  const Keep &keep, int *parts = nullptr);
double total_area(const std::vector<Trapezoid> &);

// Bounds of the greatest value of a function that changes by no more than the distance
// walked (a distance), over the trapezoids; stops once `limit` lies outside the bounds,
// or they are closer than `resolution`.
struct Bounds {
	double least, most;
};
Bounds greatest(const std::vector<Trapezoid> &, const std::function<double(Point)> &, double limit,
                double resolution);
#endif
