#include "cracks.hpp"

#include <algorithm>
#include <cmath>

namespace
{

const double NEAR = 0.01;      // lines and borders this close lie on each other
const double END_REACH = 25.4; // an end this near a border lies on it
const double ON_ROUND = 0.2;   // so near to the polygon drawn for it a point lies on a circle
const double SLIVER_MM2 = 1;

std::vector<const Shape *> pointers(const std::vector<const std::vector<Shape> *> &lists)
{
	std::vector<const Shape *> all;
	for (const auto *list : lists)
		for (const Shape &shape : *list)
			all.push_back(&shape);
	return all;
}

double uncovered(const Ring &quad, const std::vector<Shape> &covers)
{
	Shape shape = {quad};
	std::vector<Shape> first = {shape};
	return total_area(trapezoids(pointers({&first, &covers}), box_of(quad), [](const auto &in) {
		return in[0] && std::count(in.begin() + 1, in.end(), 1) == 0;
	}));
}

// Area inside one of `a` and one of `b`.
double common_area(const std::vector<Shape> &a, const std::vector<Shape> &b)
{
	if (a.empty() || b.empty())
		return 0;
	Box box;
	for (const Shape &shape : a)
		for (const Ring &ring : shape)
			for (Point p : ring)
				box.add(p);
	auto n = static_cast<std::ptrdiff_t>(a.size());
	return total_area(trapezoids(pointers({&a, &b}), box, [n](const auto &in) {
		return std::count(in.begin(), in.begin() + n, 1) &&
		       std::count(in.begin() + n, in.end(), 1);
	}));
}

std::vector<Shape> hold_shapes(const Record &record)
{
	std::vector<Shape> shapes;
	for (const Hold &hold : record.holds)
		shapes.push_back(hold.shape);
	return shapes;
}

} // namespace

std::vector<Group> groups_of(const Record &record)
{
	std::vector<Group> groups;
	for (const Crack &crack : record.cracks) {
		std::string id = crack.group.empty() ? crack.id : crack.group;
		auto found = std::find_if(groups.begin(), groups.end(),
		                          [&](const Group &g) { return g.id == id; });
		if (found == groups.end())
			found = groups.insert(groups.end(), {id, crack.state, {}, {}});
		found->cracks.push_back(&crack);
		for (const Line &run : crack.runs)
			for (const Segment &s : segments_of(run))
				found->line.push_back(s);
	}
	return groups;
}

const Group *group_of(const std::vector<Group> &groups, const Joint &joint)
{
	for (const std::string &id : words(joint.of))
		for (const Group &group : groups)
			for (const Crack *crack : group.cracks)
				if (crack->id == id)
					return &group;
	return nullptr;
}

double reach_of(const Plan &plan, const Crack &crack)
{
	const PlanCrack &own = plan.cracks.at(crack.id);
	return own.width / 2 + own.wander;
}

std::vector<const Tile *> crossed(const Floor &floor, const Crack &crack)
{
	double reach = reach_of(floor.plan, crack);
	std::vector<const Tile *> found;
	for (const Line &run : crack.runs) {
		std::vector<Segment> line = segments_of(run);
		Box box = box_of(run);
		box.grow(reach);
		for (const Tile &tile : floor.tiling.tiles) {
			if (!box.meets(tile.box))
				continue;
			bool near = false; // clearly: 1e-4 mm inside the reach
			for (const Ring &quad : tile.quads)
				near = near || distance(quad, line) < reach - 1e-4;
			if (near && std::find(found.begin(), found.end(), &tile) == found.end())
				found.push_back(&tile);
		}
	}
	return found;
}

void add_band(const Joint &joint, std::vector<Shape> &bands)
{
	for (const Segment &s : segments_of(joint.line)) {
		Point d = s.b - s.a;
		Point out = Point{-d.y, d.x} * (joint.width / 2 / norm(d));
		bands.push_back({{s.a - out, s.b - out, s.b + out, s.a + out}});
	}
}

std::vector<Shape> carried_bands(const Record &record)
{
	std::vector<Shape> bands;
	for (const Joint &joint : record.joints)
		if (joint.kind == "carried")
			add_band(joint, bands);
	return bands;
}

double length_where(const Segment &s, const std::vector<Shape> &shapes, bool is_inside,
                    double slack)
{
	std::vector<Segment> borders;
	for (const Shape &shape : shapes)
		for (const Segment &border : segments_of(shape))
			borders.push_back(border);
	std::vector<double> at = cuts(s, borders);
	double length = norm(s.b - s.a), sum = 0;
	for (size_t i = 0; i + 1 < at.size(); i++) {
		Point middle = s.a + (s.b - s.a) * ((at[i] + at[i + 1]) / 2);
		if ((at[i + 1] - at[i]) * length > 1e-9 && distance(middle, borders) > slack &&
		    Floor::in_any(shapes, middle, 0) == is_inside)
			sum += (at[i + 1] - at[i]) * length;
	}
	return sum;
}

bool goes_on(const Crack &crack, Point end)
{
	int ends = 0;
	for (const Line &run : crack.runs)
		for (Point p : {run.front(), run.back()})
			ends += norm(p - end) <= END_REACH;
	return ends > 1;
}

std::vector<OpenEnd> open_ends(const Floor &floor, const Crack &crack)
{
	std::vector<Segment> stops;
	for (const std::vector<Shape> &list :
	     {floor.ground(), floor.obstacles(), carried_bands(floor.record)})
		for (const Shape &shape : list)
			for (const Segment &s : segments_of(shape))
				stops.push_back(s);
	for (const auto &[id, joint] : floor.plan.joints)
		for (const Segment &s : segments_of(joint.line))
			stops.push_back(s);
	for (const Crack &other : floor.record.cracks)
		for (const Line &run : other.runs)
			if (&other != &crack)
				for (const Segment &s : segments_of(run))
					stops.push_back(s);
	std::vector<OpenEnd> ends;
	for (const Line &run : crack.runs) {
		if (run.size() < 2)
			continue;
		size_t n = run.size();
		for (auto [end, before] :
		     {std::pair{run[0], run[1]}, std::pair{run[n - 1], run[n - 2]}})
			if (!goes_on(crack, end) && distance(end, stops) > END_REACH)
				ends.push_back({end, (end - before) * (1 / norm(end - before))});
	}
	return ends;
}

bool runs_in(const Floor &floor, const Crack &crack, size_t panel)
{
	for (const Line &run : crack.runs)
		for (const Segment &s : segments_of(run))
			if (length_where(s, {floor.field.panels[panel].shape}, true, 0) > NEAR)
				return true;
	return false;
}

bool in_other_hold(const Floor &floor, const Crack &crack, const Tile &tile)
{
	for (const Hold &hold : floor.record.holds)
		if (!hold.cracks.count(crack.id) && inside(hold.shape, tile.middle))
			return true;
	return false;
}

namespace
{

bool is_here(const Floor &floor, const Crack &crack)
{
	for (const Line &run : crack.runs)
		for (const Segment &s : segments_of(run))
			if (Floor::in_any(floor.ground(), s.a + (s.b - s.a) * 0.5, 0))
				return true;
	return false;
}

void check_line(const Floor &floor, const Crack &crack, Report &report)
{
	std::vector<Segment> drawn = segments_of(floor.plan.cracks.at(crack.id).line);
	double worst = 0;
	for (const Line &run : crack.runs)
		for (Point p : run)
			worst = std::max(worst, distance(p, drawn));
	report.check(worst <= END_REACH, "crack-line",
	             "crack %s: recorded up to %.3f mm off the plan", crack.id.c_str(), worst);
	const PlanCrack &own = floor.plan.cracks.at(crack.id);
	report.check((own.step <= 0 && !own.moving) || crack.state != "isolate", "crack-state",
	             "crack %s: %s, step %.3f mm", crack.id.c_str(), crack.state.c_str(), own.step);
}

void check_crossed(const Floor &floor, const Crack &crack, Report &report)
{
	std::vector<Shape> covers = floor.covered();
	int count = 0, bare = 0, beyond = 0;
	double worst = 0;
	for (const Tile *tile : crossed(floor, crack)) {
		if (!runs_in(floor, crack, tile->panel)) {
			beyond++; // beyond a joint that stays open: nothing moves it
			continue;
		}
		if (in_other_hold(floor, crack, *tile)) // no strip lies there before an answer
			continue;
		double open = 0;
		for (const Ring &quad : tile->quads)
			open += uncovered(quad, covers);
		count++;
		bare += open > SLIVER_MM2;
		worst = std::max(worst, open);
	}
	report.cases += count;
	report.check(
		bare == 0, "E-C1.crossed",
		"crack %s: %d crossed pieces, %d not on the strip, worst by %.3f mm2; %d more in "
		"panels it does not run in",
		crack.id.c_str(), count, bare, worst, beyond);
}

// Round a hold nothing is asked for: between its edge and the wall there is only the gap.
// A joint that ends on a border is open right up to it, however slantwise: what its square end
// leaves there, within a width of its end.
std::vector<Shape> slant_ends(const Floor &floor)
{
	std::vector<Segment> borders;
	for (const std::vector<Shape> &list : {floor.ground(), floor.obstacles()})
		for (const Shape &shape : list)
			for (const Segment &s : segments_of(shape))
				borders.push_back(s);
	std::vector<Shape> ends;
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "carried")
			for (Point end : {joint.line.front(), joint.line.back()})
				if (distance(end, borders) <= ON_ROUND)
					ends.push_back({capsule({end, end + Point{NEAR, 0}},
					                        joint.width)});
	return ends;
}

std::vector<Shape> stops_of(const Floor &floor)
{
	std::vector<Shape> stops = floor.obstacles();
	for (const std::vector<Shape> &more :
	     {carried_bands(floor.record), slant_ends(floor), hold_shapes(floor.record)})
		stops.insert(stops.end(), more.begin(), more.end());
	for (const Hold &hold : floor.record.holds)
		for (const Segment &s : segments_of(hold.shape))
			stops.push_back({capsule(s, floor.lay.gap + NEAR)});
	return stops;
}

// The ground beside the crack, up to walls, obstacles, carried joints and holds, as far as
// it hangs together with the crack.
void check_beside(const Floor &floor, const Crack &crack, Report &report)
{
	std::vector<Shape> ground = floor.ground(), stops = stops_of(floor),
			   covers = floor.covered();
	std::vector<Shape> bands;
	Box box;
	for (const Line &run : crack.runs)
		for (const Segment &s : segments_of(run)) {
			bands.push_back({capsule(s, floor.half_width())});
			for (Point p : bands.back()[0])
				box.add(p);
		}
	auto g = static_cast<std::ptrdiff_t>(ground.size()),
	     s = static_cast<std::ptrdiff_t>(stops.size()),
	     b = static_cast<std::ptrdiff_t>(bands.size());
	auto any = [](const auto &in, std::ptrdiff_t from, std::ptrdiff_t count) {
		return std::count(in.begin() + from, in.begin() + from + count, 1) > 0;
	};
	int parts = 0;
	std::vector<Trapezoid> beside = trapezoids(
		pointers({&ground, &stops, &bands, &covers}), box,
		[&](const auto &in) {
			return any(in, 0, g) && !any(in, g, s) && any(in, g + s, b);
		},
		&parts);
	std::vector<char> touched(static_cast<size_t>(parts), 0);
	for (const Line &run : crack.runs)
		for (const Segment &seg : segments_of(run)) {
			int steps = static_cast<int>(norm(seg.b - seg.a) / 5) + 2;
			for (int i = 1; i < steps; i++) {
				Point p =
					seg.a + (seg.b - seg.a) * (static_cast<double>(i) / steps);
				for (const Trapezoid &t : beside)
					if (t.holds(p, 0))
						touched[static_cast<size_t>(t.part)] = 1;
			}
		}
	double area = 0, bare = 0, largest = 0;
	Point first;
	for (const Trapezoid &t : beside)
		if (touched[static_cast<size_t>(t.part)]) {
			area += t.area();
			if (any(t.in, g + s + b, static_cast<std::ptrdiff_t>(covers.size())))
				continue;
			bare += t.area();
			if (t.area() > largest)
				largest = t.area(), first = t.middle();
		}
	report.cases++;
	double length = 0;
	for (const Line &run : crack.runs)
		for (const Segment &seg : segments_of(run))
			length += norm(seg.b - seg.a);
	report.check(bare <= std::max(SLIVER_MM2, 2 * NEAR * length), "E-C1.beside",
	             "crack %s: ground within %.3f mm of it %.0f mm2, bare %.3f, most at %.0f,%.0f",
	             crack.id.c_str(), floor.half_width(), area, bare, first.x, first.y);
}

void check_overrun(const Floor &floor, const Crack &crack, Report &report)
{
	std::vector<Shape> ground = floor.ground(), stops = stops_of(floor),
			   covers = floor.covered();
	int ends = 0;
	double bare = 0;
	for (const OpenEnd &end : open_ends(floor, crack)) {
		ends++;
		for (double d = 0; d <= floor.overrun() - NEAR; d += 1) {
			Point p = end.at + end.along * d;
			if (!Floor::in_any(ground, p, 0) || Floor::in_any(stops, p, 0))
				break;
			if (!Floor::in_any(covers, p, NEAR))
				bare = std::max(bare, floor.overrun() - d);
		}
	}
	report.cases += ends;
	report.check(bare <= 0, "E-C1.overrun",
	             "crack %s: %d ends in the field, overrun %.3f mm, short by %.3f",
	             crack.id.c_str(), ends, floor.overrun(), bare);
}

void check_strip_pieces(const Floor &floor, const Strip &strip, Report &report)
{
	std::vector<Shape> pieces, outline = {strip.shape};
	int odd = 0;
	double step = floor.plan.inches ? 25.4 : 25;
	const PlanMembrane *membrane = floor.membrane();
	auto is_stepped = [&](double value) {
		return std::fabs(value - std::round(value / step) * step) < 1e-3;
	};
	for (const Piece &piece : strip.pieces) {
		pieces.push_back(piece.shape);
		bool is_roll = membrane && std::fabs(piece.wide - membrane->roll_wide) < 1e-3;
		odd += !is_stepped(piece.length) || !(is_stepped(piece.wide) || is_roll);
	}
	report.check(odd == 0 && !pieces.empty(), "strip-sizes",
	             "strip %s: %zu pieces, %d not in whole steps of %g mm", strip.id.c_str(),
	             pieces.size(), odd, step);
	Box box = box_of(strip.shape);
	for (const Shape &piece : pieces)
		for (const Ring &ring : piece)
			for (Point p : ring)
				box.add(p);
	double apart =
		total_area(trapezoids(pointers({&outline, &pieces}), box, [](const auto &in) {
			return (in[0] != 0) != (std::count(in.begin() + 1, in.end(), 1) > 0);
		}));
	double area = area_of(strip.shape);
	report.check(apart <= SLIVER_MM2 && std::fabs(area - strip.area) <= 1, "strip-union",
	             "strip %s: outline and pieces differ by %.3f mm2; area %.3f, recorded %.3f",
	             strip.id.c_str(), apart, area, strip.area);
}

void check_strip_reach(const Floor &floor, const Strip &strip, Report &report)
{
	std::vector<Segment> lines;
	for (const Group &group : groups_of(floor.record)) {
		bool mine = false;
		for (const Crack *crack : group.cracks)
			mine = mine || strip.cracks.count(crack->id);
		for (const Crack *crack : group.cracks)
			for (const Line &run : crack->runs)
				if (mine)
					for (const Segment &s : segments_of(run)) {
						Point d = (s.b - s.a) *
						          (floor.overrun() / norm(s.b - s.a));
						lines.push_back(s);
						if (norm(s.a - run.front()) == 0)
							lines.push_back({s.a - d, s.a});
						if (norm(s.b - run.back()) == 0)
							lines.push_back({s.b, s.b + d});
					}
	}
	double limit = floor.half_width() + floor.lay.tile_long;
	Bounds far = greatest(
		trapezoids({&strip.shape}, box_of(strip.shape),
	                   [](const auto &in) { return in[0] != 0; }),
		[&](Point p) { return distance(p, lines); }, limit + NEAR, 0.1);
	report.cases++;
	report.check(!lines.empty() && far.least <= limit + NEAR, "E-C2.reach",
	             "strip %s: reaches %.3f mm from its crack, allowed %.3f", strip.id.c_str(),
	             far.least, limit);
	std::vector<Shape> self = {strip.shape};
	double in_holds = common_area(self, hold_shapes(floor.record));
	double in_bands = common_area(self, carried_bands(floor.record));
	report.check(in_holds <= SLIVER_MM2 && in_bands <= SLIVER_MM2, "E-C2.clear",
	             "strip %s: %.3f mm2 in holds, %.3f in carried joints", strip.id.c_str(),
	             in_holds, in_bands);
	double out = total_area(trapezoids({&strip.shape}, box_of(strip.shape),
	                                   [](const auto &in) { return in[0] != 0; })) -
	             common_area(self, floor.ground());
	double blocked = common_area(self, floor.obstacles());
	// Round obstacles are drawn outside here, inscribed there: 0.1 mm all round.
	report.check(out <= SLIVER_MM2 && blocked <= 500, "strip-on-ground",
	             "strip %s: %.3f mm2 outside the room, %.3f under obstacles", strip.id.c_str(),
	             out, blocked);
}

} // namespace

void check_cracks(const Floor &floor, Report &report)
{
	for (const Crack &crack : floor.record.cracks) {
		if (!is_here(floor, crack))
			continue;
		check_line(floor, crack, report);
		if (crack.state != "isolate" || !floor.membrane())
			continue;
		check_crossed(floor, crack, report);
		check_beside(floor, crack, report);
		check_overrun(floor, crack, report);
	}
}

void check_strips(const Floor &floor, Report &report)
{
	for (const Strip &strip : floor.record.strips) {
		check_strip_pieces(floor, strip, report);
		check_strip_reach(floor, strip, report);
	}
}
