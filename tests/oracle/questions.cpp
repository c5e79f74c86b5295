// questions.cpp - partial coverage is questioned where the contract says so, and nowhere else,
// with the area of both: E-C4.
#include <algorithm>
#include <cmath>
#include <regex>

#include "network.hpp"

namespace
{

const double MANY = 0.40;            // share of the field
const double NEAR_TILES = 2;         // strips nearer to each other than so many tiles
const double LARGE_INCH = 15 * 25.4; // nominal side; the tables' metric form is a round one
const double LARGE_METRIC = 380;
const double LONG = 2; // soft joint against its crack
const double TURNS_BY_FOOT = 1, FOOT = 304.8;
const double TURNS = 2;   // the sealant's maker is asked beyond
const double SURE = 1e-6; // nearer to a limit than this share either answer is right

// What holds of a quantity and its limit: yes, no, or too near to say.
enum class Held { NO, YES, EITHER };

Held over(double measured, double limit)
{
	if (std::fabs(measured - limit) <= SURE * limit)
		return Held::EITHER;
	return measured > limit ? Held::YES : Held::NO;
}

Held either(Held a, Held b)
{
	if (a == Held::YES || b == Held::YES)
		return Held::YES;
	return a == Held::EITHER ? a : b;
}

const Element *finding_of(const Floor &floor, const std::string &rule, const std::string &about)
{
	for (const Element *finding : floor.record.root.all("finding"))
		if (finding->get("rule") == rule && finding->get("about") == about)
			return finding;
	return nullptr;
}

double area_where(const std::vector<Shape> &in, const std::vector<Shape> &out)
{
	std::vector<const Shape *> shapes;
	Box box;
	for (const Shape &shape : in)
		shapes.push_back(&shape);
	for (const Shape &shape : out)
		shapes.push_back(&shape);
	for (const Shape &shape : in)
		for (const Ring &ring : shape)
			for (Point p : ring)
				box.add(p);
	auto first_out = static_cast<long>(in.size());
	return total_area(trapezoids(shapes, box, [&](const auto &inside) {
		return std::count(inside.begin(), inside.begin() + first_out, 1) > 0 &&
		       std::count(inside.begin() + first_out, inside.end(), 1) == 0;
	}));
}

std::vector<Shape> strip_shapes(const Floor &floor)
{
	std::vector<Shape> shapes;
	for (const Strip &strip : floor.record.strips)
		shapes.push_back(strip.shape);
	return shapes;
}

double full_area(const Floor &floor)
{
	std::vector<Shape> off = carried_bands(floor.record);
	for (const Shape &shape : floor.obstacles())
		off.push_back(shape);
	for (const Hold &hold : floor.record.holds)
		off.push_back(hold.shape);
	return area_where(floor.ground(), off);
}

double least_gap(const Shape &a, const Shape &b)
{
	double least = 1e300;
	for (const Segment &s : segments_of(a))
		for (const Segment &t : segments_of(b))
			least = std::min(least, distance(s, t));
	return least;
}

Held are_near(const Floor &floor)
{
	Held near = Held::NO;
	const std::vector<Strip> &strips = floor.record.strips;
	double limit = NEAR_TILES * floor.lay.tile_long;
	for (size_t i = 0; i < strips.size(); i++)
		for (size_t k = i + 1; k < strips.size(); k++) {
			double gap = least_gap(strips[i].shape, strips[k].shape);
			near = either(near, over(limit, gap));
		}
	return near;
}

// The areas that a question names: strips, full coverage.
bool names_both(const Floor &floor, const Element &finding, double strips, double full)
{
	static const std::regex AREAS(
		"([0-9.,]+) [^0-9,]* ?in strips,\\s+([0-9.,]+) [^0-9,]* ?in full");
	const double SQUARE_FOOT = FOOT * FOOT, SQUARE_METRE = 1e6;
	std::smatch found;
	if (!std::regex_search(finding.text, found, AREAS))
		return false;
	double unit = floor.plan.inches ? SQUARE_FOOT : SQUARE_METRE;
	// Half of the last digit printed, and a little for round obstacles, drawn outside here.
	double half = (floor.plan.inches ? 0.05 : 0.005) * 1.05;
	auto is = [&](std::string text, double area) {
		text.erase(std::remove(text.begin(), text.end(), ','), text.end());
		return std::fabs(number_of(text) - area / unit) <= half;
	};
	return is(found[1], strips) && is(found[2], full);
}

void compare(Report &report, Held wanted, bool is_asked, bool is_whole, const char *what,
             const std::string &about, const std::string &text)
{
	report.cases++;
	report.check((wanted == Held::EITHER || is_asked == (wanted == Held::YES)) && is_whole,
	             "E-C4", "%s of %s: %s, wanted %s %s", what, about.c_str(),
	             is_asked ? "asked" : "not asked", wanted == Held::NO ? "not" : "",
	             text.c_str());
}

// Beside full coverage nobody asks for full coverage.
void check_many(const Floor &floor, double strips, double full, Report &report)
{
	Held wanted = Held::NO;
	if (!floor.record.strips.empty() && floor.record.full_covers.empty()) {
		double large = floor.plan.inches ? LARGE_INCH : LARGE_METRIC;
		double side = floor.lay.tile_long + floor.lay.joint;
		wanted = either(over(strips, MANY * floor.field.area), are_near(floor));
		wanted = either(wanted, side >= large * (1 - SURE) ? Held::YES : Held::NO);
	}
	const Element *asked = finding_of(floor, "cracks-many", floor.field.lay);
	compare(report, wanted, asked, !asked || names_both(floor, *asked, strips, full),
	        "cracks-many", floor.field.lay, asked ? asked->text : "");
}

// Where a group runs in tile, and where it runs in rooms, outside of obstacles: between the two
// lie the gaps at walls, field joints and carried joints.
double length_in_tile(const Floor &floor, const std::vector<Segment> &line)
{
	double length = 0;
	for (const Panel &panel : floor.field.panels)
		for (const Segment &s : inside_of(panel.shape, line))
			length += norm(s.b - s.a);
	return length;
}

double length_in_rooms(const Floor &floor, const std::vector<Segment> &line)
{
	double length = 0;
	for (const Segment &s : line)
		length += length_where(s, floor.ground(), true, 0) -
		          length_where(s, floor.obstacles(), true, 0);
	return length;
}

Held is_long(const Floor &floor, const Joint &joint, double length)
{
	std::vector<Group> groups = groups_of(floor.record);
	const Group *group = group_of(groups, joint);
	std::vector<Segment> line = group ? group->line : std::vector<Segment>();
	Held sure = over(length, LONG * length_in_rooms(floor, line));
	Held may = over(length, LONG * length_in_tile(floor, line));
	return sure == may ? sure : Held::EITHER;
}

void check_ragged(const Floor &floor, const Joint &joint, double strips, double full,
                  Report &report)
{
	SoftFigures own = soft_figures(joint.line);
	Held wanted = Held::NO;
	if (floor.record.full_covers.empty())
		wanted = either(over(own.turns / (own.length / FOOT), TURNS_BY_FOOT),
		                is_long(floor, joint, own.length));
	const Element *asked = finding_of(floor, "soft-path-ragged", joint.id);
	compare(report, wanted, asked, !asked || names_both(floor, *asked, strips, full),
	        "soft-path-ragged", joint.id, asked ? asked->text : "");
}

// Once a lay, about its joint with the most turns.
void check_stepped(const Floor &floor, Report &report)
{
	double most = 0;
	bool is_asked = false;
	for (const Joint &joint : floor.record.joints) {
		if (joint.kind != "soft")
			continue;
		most = std::max(most, soft_figures(joint.line).turns);
		is_asked = is_asked || finding_of(floor, "soft-path-stepped", joint.id);
	}
	compare(report, over(most, TURNS), is_asked, true, "soft-path-stepped", floor.field.lay,
	        std::to_string(most));
}

} // namespace

void check_questions(const Floor &floor, Report &report)
{
	double strips = 0, full = full_area(floor);
	for (const Shape &shape : strip_shapes(floor))
		strips += area_of(shape);
	double together = area_where(strip_shapes(floor), {});
	report.check(std::fabs(strips - together) <= 1, "strips-apart",
	             "strips of %.3f mm2 cover %.3f", strips, together);
	check_many(floor, strips, full, report);
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "soft" && joint.line.size() > 1)
			check_ragged(floor, joint, strips, full, report);
	check_stepped(floor, report);
}
