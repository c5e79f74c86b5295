#include "shape.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <queue>

double dot(Point a, Point b)
{
	return a.x * b.x + a.y * b.y;
}
double cross(Point a, Point b)
{
	return a.x * b.y - a.y * b.x;
}
double norm(Point a)
{
	return std::sqrt(dot(a, a));
}

void Box::add(Point p)
{
	x0 = std::min(x0, p.x), y0 = std::min(y0, p.y);
	x1 = std::max(x1, p.x), y1 = std::max(y1, p.y);
}

void Box::grow(double by)
{
	x0 -= by, y0 -= by, x1 += by, y1 += by;
}

bool Box::meets(const Box &b) const
{
	return x0 <= b.x1 && b.x0 <= x1 && y0 <= b.y1 && b.y0 <= y1;
}

bool Box::holds(Point p) const
{
	return x0 <= p.x && p.x <= x1 && y0 <= p.y && p.y <= y1;
}

Box box_of(const Ring &ring)
{
	Box box;
	for (Point p : ring)
		box.add(p);
	return box;
}

Box box_of(const Shape &shape)
{
	Box box;
	for (const Ring &ring : shape)
		for (Point p : ring)
			box.add(p);
	return box;
}

double signed_area(const Ring &ring)
{
	double twice = 0;
	for (size_t i = 0; i < ring.size(); i++)
		twice += cross(ring[i] - ring[0], ring[(i + 1) % ring.size()] - ring[0]);
	return twice / 2;
}

double area_of(const Shape &shape)
{
	double area = 0;
	for (const Ring &ring : shape)
		area += signed_area(ring);
	return area;
}

std::vector<Segment> segments_of(const Shape &shape)
{
	std::vector<Segment> segments;
	for (const Ring &ring : shape)
		for (size_t i = 0; i < ring.size(); i++)
			segments.push_back({ring[i], ring[(i + 1) % ring.size()]});
	return segments;
}

std::vector<Segment> segments_of(const Line &line)
{
	std::vector<Segment> segments;
	for (size_t i = 0; i + 1 < line.size(); i++)
		segments.push_back({line[i], line[i + 1]});
	return segments;
}

bool inside(const Shape &shape, Point p)
{
	bool in = false;
	for (const Ring &ring : shape)
		for (size_t i = 0; i < ring.size(); i++) {
			Point a = ring[i], b = ring[(i + 1) % ring.size()];
			if ((a.y > p.y) != (b.y > p.y) &&
			    p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y))
				in = !in;
		}
	return in;
}

std::vector<Segment> inside_of(const Shape &shape, const std::vector<Segment> &lines)
{
	std::vector<Segment> found;
	for (const Segment &s : lines) {
		std::vector<double> at = cuts(s, segments_of(shape));
		for (size_t i = 0; i + 1 < at.size(); i++)
			if (inside(shape, s.a + (s.b - s.a) * ((at[i] + at[i + 1]) / 2)))
				found.push_back(
					{s.a + (s.b - s.a) * at[i], s.a + (s.b - s.a) * at[i + 1]});
	}
	return found;
}

double distance(Point p, const Segment &s)
{
	Point d = s.b - s.a;
	double square = dot(d, d);
	double t = square > 0 ? std::clamp(dot(p - s.a, d) / square, 0.0, 1.0) : 0;
	return norm(p - (s.a + d * t));
}

double distance(Point p, const std::vector<Segment> &segments)
{
	double least = 1e300;
	for (const Segment &s : segments)
		least = std::min(least, distance(p, s));
	return least;
}

// Two segments that are parallel but for printed digits lie apart as their ends do, to within
// that share of their length; which side of each other those ends are on is noise, so that two
// edges in one line, a joint apart, would be taken to cross.
const double PARALLEL = 1e-9;

static bool crosses(const Segment &s, const Segment &t)
{
	Point d = s.b - s.a, e = t.b - t.a;
	if (std::fabs(cross(d, e)) <= PARALLEL * norm(d) * norm(e))
		return false;
	double a_of_t = cross(d, t.a - s.a), b_of_t = cross(d, t.b - s.a);
	double a_of_s = cross(e, s.a - t.a), b_of_s = cross(e, s.b - t.a);
	return (a_of_t > 0) != (b_of_t > 0) && (a_of_s > 0) != (b_of_s > 0);
}

double distance(const Segment &s, const Segment &t)
{
	if (crosses(s, t))
		return 0;
	return std::min({distance(s.a, t), distance(s.b, t), distance(t.a, s), distance(t.b, s)});
}

double distance(const Ring &convex, const std::vector<Segment> &segments)
{
	double least = 1e300;
	for (const Segment &s : segments) {
		if (inside({convex}, s.a))
			return 0;
		for (size_t i = 0; i < convex.size(); i++)
			least = std::min(least, distance(Segment{convex[i],
			                                         convex[(i + 1) % convex.size()]},
			                                 s));
	}
	return least;
}

std::vector<double> cuts(const Segment &s, const std::vector<Segment> &others)
{
	std::vector<double> at = {0, 1};
	Point d = s.b - s.a;
	double length = norm(d);
	for (const Segment &o : others) {
		Point e = o.b - o.a;
		double det = cross(d, e);
		if (std::fabs(det) > 1e-12 * length * norm(e)) {
			double t = cross(o.a - s.a, e) / det, u = cross(o.a - s.a, d) / det;
			if (t > 0 && t < 1 && u >= -1e-9 && u <= 1 + 1e-9)
				at.push_back(t);
		}
		for (Point p : {o.a, o.b}) // corners near the segment: also where it runs along
			if (length > 0 && distance(p, s) < 0.01)
				at.push_back(
					std::clamp(dot(p - s.a, d) / (length * length), 0.0, 1.0));
	}
	std::sort(at.begin(), at.end());
	return at;
}

Ring grown(const Ring &convex, double by)
{
	size_t n = convex.size();
	double sign = signed_area(convex) > 0 ? 1 : -1;
	std::vector<Segment> moved;
	for (size_t i = 0; i < n; i++) {
		Point a = convex[i], b = convex[(i + 1) % n], d = b - a;
		Point out = Point{d.y, -d.x} * (sign * by / norm(d));
		moved.push_back({a + out, b + out});
	}
	Ring result;
	for (size_t i = 0; i < n; i++) {
		const Segment &s = moved[(i + n - 1) % n], &t = moved[i];
		Point d = s.b - s.a, e = t.b - t.a;
		result.push_back(s.a + d * (cross(t.a - s.a, e) / cross(d, e)));
	}
	return result;
}

Ring capsule(const Segment &s, double radius)
{
	const int half = 48;
	Point d = s.b - s.a;
	double length = norm(d);
	Point along = length > 0 ? d * (1 / length) : Point{1, 0}, left = {-along.y, along.x};
	Ring ring;
	for (int i = 0; i <= half; i++) {
		double turn = M_PI * i / half;
		ring.push_back(s.b + (along * std::sin(turn) + left * -std::cos(turn)) * radius);
	}
	for (int i = 0; i <= half; i++) {
		double turn = M_PI * i / half;
		ring.push_back(s.a + (along * -std::sin(turn) + left * std::cos(turn)) * radius);
	}
	return ring;
}

double clipped_area(const Ring &convex, const Shape &shape)
{
	double total = 0, sign = signed_area(convex) > 0 ? 1 : -1;
	for (Ring rest : shape) {
		for (size_t i = 0; i < convex.size(); i++) {
			Point a = convex[i], d = (convex[(i + 1) % convex.size()] - a) * sign;
			Ring next;
			for (size_t k = 0; k < rest.size(); k++) {
				Point p = rest[k], q = rest[(k + 1) % rest.size()];
				double sp = cross(d, p - a), sq = cross(d, q - a);
				if (sp >= 0)
					next.push_back(p);
				if ((sp > 0 && sq < 0) || (sp < 0 && sq > 0))
					next.push_back(p + (q - p) * (sp / (sp - sq)));
			}
			rest = next;
		}
		if (!rest.empty())
			total += signed_area(rest);
	}
	return total;
}

bool Trapezoid::holds(Point p, double slack) const
{
	if (p.x < x0 - slack || p.x > x1 + slack)
		return false;
	double t = x1 > x0 ? std::clamp((p.x - x0) / (x1 - x0), 0.0, 1.0) : 0;
	return p.y >= low0 + t * (low1 - low0) - slack &&
	       p.y <= high0 + t * (high1 - high0) + slack;
}

namespace
{

struct Edge {
	Point a, b; // a.x < b.x
	size_t shape;
	double at(double x) const
	{
		return a.y + (b.y - a.y) * std::clamp((x - a.x) / (b.x - a.x), 0.0, 1.0);
	}
};

struct Joined { // union-find
	std::vector<int> up;
	int add()
	{
		up.push_back(static_cast<int>(up.size()));
		return up.back();
	}
	int top(int i)
	{
		while (up[static_cast<size_t>(i)] != i)
			i = up[static_cast<size_t>(i)] =
				up[static_cast<size_t>(up[static_cast<size_t>(i)])];
		return i;
	}
	void join(int a, int b)
	{
		up[static_cast<size_t>(top(a))] = top(b);
	}
};

std::vector<Edge> edges_in(const std::vector<const Shape *> &shapes, const Box &window)
{
	std::vector<Edge> edges;
	for (size_t s = 0; s < shapes.size(); s++)
		for (Segment e : segments_of(*shapes[s])) {
			if (e.a.x > e.b.x)
				std::swap(e.a, e.b);
			if (e.b.x > e.a.x && e.b.x > window.x0 && e.a.x < window.x1)
				edges.push_back({e.a, e.b, s});
		}
	return edges;
}

std::vector<double> stops_of(const std::vector<const Shape *> &shapes, std::vector<Edge> edges,
                             const Box &window)
{
	std::vector<double> stops = {window.x0, window.x1};
	auto add = [&](double x) {
		if (x > window.x0 && x < window.x1)
			stops.push_back(x);
	};
	for (const Shape *shape : shapes)
		for (const Ring &ring : *shape)
			for (Point p : ring)
				add(p.x);
	std::sort(edges.begin(), edges.end(),
	          [](const Edge &p, const Edge &q) { return p.a.x < q.a.x; });
	for (size_t i = 0; i < edges.size(); i++)
		for (size_t k = i + 1; k < edges.size() && edges[k].a.x < edges[i].b.x; k++) {
			const Edge &p = edges[i], &q = edges[k];
			if (std::max(p.a.y, p.b.y) < std::min(q.a.y, q.b.y) ||
			    std::max(q.a.y, q.b.y) < std::min(p.a.y, p.b.y))
				continue;
			Point d = p.b - p.a, e = q.b - q.a;
			double det = cross(d, e);
			if (std::fabs(det) <= 1e-13 * norm(d) * norm(e))
				continue;
			double t = cross(q.a - p.a, e) / det, u = cross(q.a - p.a, d) / det;
			if (t > 0 && t < 1 && u > 0 && u < 1)
				add(p.a.x + t * d.x);
		}
	std::sort(stops.begin(), stops.end());
	stops.erase(std::unique(stops.begin(), stops.end(),
	                        [](double a, double b) { return b - a < 1e-9; }),
	            stops.end());
	return stops;
}

} // namespace

std::vector<Trapezoid> trapezoids(const std::vector<const Shape *> &shapes, const Box &window,
                                  const Keep &keep, int *parts)
{
	std::vector<Edge> edges = edges_in(shapes, window);
	std::vector<double> stops = stops_of(shapes, edges, window);
	std::vector<Trapezoid> kept;
	Joined joined;
	size_t before_from = 0, before_to = 0; // kept trapezoids of the slab before
	for (size_t s = 0; s + 1 < stops.size(); s++) {
		double x0 = stops[s], x1 = stops[s + 1], xm = (x0 + x1) / 2;
		std::vector<std::pair<double, const Edge *>> over;
		for (const Edge &e : edges)
			if (e.a.x <= xm && e.b.x >= xm)
				over.push_back({e.at(xm), &e});
		std::sort(over.begin(), over.end(),
		          [](const auto &p, const auto &q) { return p.first < q.first; });
		std::vector<char> in(shapes.size(), 0);
		size_t from = kept.size();
		bool joins_below = false;
		for (size_t k = 0; k + 1 < over.size(); k++) {
			const Edge &low = *over[k].second, &high = *over[k + 1].second;
			in[low.shape] ^= 1;
			if (over[k + 1].first - over[k].first <= 1e-12)
				continue;
			if (!keep(in)) {
				joins_below = false;
				continue;
			}
			Trapezoid t{x0,         x1,          low.at(x0), high.at(x0),
			            low.at(x1), high.at(x1), in,         joined.add()};
			if (joins_below)
				joined.join(t.part, kept.back().part);
			kept.push_back(t);
			joins_below = true;
		}
		for (size_t i = before_from; i < before_to; i++)
			for (size_t k = from; k < kept.size(); k++)
				if (std::min(kept[i].high1, kept[k].high0) -
				            std::max(kept[i].low1, kept[k].low0) >
				    1e-6)
					joined.join(kept[i].part, kept[k].part);
		before_from = from, before_to = kept.size();
	}
	std::vector<int> number;
	number.assign(joined.up.size() + 1, -1);
	int count = 0;
	for (Trapezoid &t : kept) {
		int &n = number[static_cast<size_t>(joined.top(t.part))];
		if (n < 0)
			n = count++;
		t.part = n;
	}
	if (parts)
		*parts = count;
	return kept;
}

double total_area(const std::vector<Trapezoid> &all)
{
	double area = 0;
	for (const Trapezoid &t : all)
		area += t.area();
	return area;
}

Bounds greatest(const std::vector<Trapezoid> &all, const std::function<double(Point)> &f,
                double limit, double resolution)
{
	struct Cell {
		Ring quad;
		double most;
		bool operator<(const Cell &o) const
		{
			return most < o.most;
		}
	};
	double least = -1e300;
	std::priority_queue<Cell> open;
	auto add = [&](const Ring &quad) {
		Point c = (quad[0] + quad[1] + quad[2] + quad[3]) * 0.25;
		double reach = 0;
		for (Point p : quad)
			reach = std::max(reach, norm(p - c));
		double value = f(c);
		least = std::max(least, value);
		open.push({quad, value + reach});
	};
	for (const Trapezoid &t : all) {
		for (Point p : t.ring())
			least = std::max(least, f(p));
		add(t.ring());
	}
	for (int step = 0; !open.empty() && step < 400000; step++) {
		Cell cell = open.top();
		if (least > limit || cell.most < limit || cell.most - least < resolution)
			break;
		open.pop();
		const Ring &q = cell.quad;
		Point ab = (q[0] + q[1]) * 0.5, bc = (q[1] + q[2]) * 0.5, cd = (q[2] + q[3]) * 0.5,
		      da = (q[3] + q[0]) * 0.5, m = (ab + cd) * 0.5;
		add({q[0], ab, m, da});
		add({ab, q[1], bc, m});
		add({m, bc, q[2], cd});
		add({da, m, cd, q[3]});
	}
	return {least, open.empty() ? least : std::max(least, open.top().most)};
}
