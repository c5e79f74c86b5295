// present.cpp - soft joints are there: a look aside from a crack meets one, or what serves.
#include <algorithm>
#include <cmath>

#include "network.hpp"

namespace
{

const double NEAR = 0.01;
const double END_REACH = 25.4; // an end this near a border lies on it

// What a look aside from a crack must meet before it passes the strip's greatest reach.
struct Lookout {
	const Floor &floor;
	std::vector<Segment> softs;
	std::vector<Segment> own;  // the group's cracks, and the way on from their ends
	double far, near;          // how far to look for a soft joint, for the field's end
	std::vector<Segment> ends; // of the cracks, as points

	bool meets(Point p, Point aside) const
	{
		Segment ray{p, p + aside * far};
		// At a field joint the look ends: it serves beside it, or where a soft joint ends.
		for (const Joint *line : field_lines(floor))
			for (const Segment &s : segments_of(line->line))
				if (std::vector<double> at = cuts(ray, {s}); at.size() > 2)
					ray.b = p + aside * (norm(ray.b - p) * at[1]);
		bool at_line = norm(ray.b - p) < far - NEAR;
		for (const Segment &soft : softs)
			if (distance(ray, soft) <= NEAR)
				return true;
		for (const Segment &other : own)
			if (distance(p, other) > 1 &&
			    (distance(ray, other) <= 0 || runs_beside(aside, ray, other)))
				return true;
		if (at_line)
			return norm(ray.b - p) <= near || is_by_a_soft_end(ray.b);
		for (double r = 0; r <= far; r += 5)
			if (is_stop(p + aside * r, p)) // does what lies there serve?
				return r <= near || is_by_an_end(p + aside * r);
		return false;
	}

	// A carried or perimeter joint; or the edge of a hold, where no joint is laid before an
	// answer.
	bool is_stop(Point p, Point from) const
	{
		if (!floor.on_panel(p, 0))
			return true;
		for (const Hold &hold : floor.record.holds)
			if (inside(hold.shape, p) && !inside(hold.shape, from))
				return true;
		return false;
	}

	// A look from where a branch leaves goes along the branch, between its own two joints.
	bool runs_beside(Point aside, const Segment &ray, const Segment &branch) const
	{
		const double straight = 0.8; // cosine
		Point along = (branch.b - branch.a) * (1 / norm(branch.b - branch.a));
		return std::fabs(along.x * aside.x + along.y * aside.y) > straight &&
		       distance(ray, branch) <= floor.lay.tile_width;
	}

	bool is_by_a_soft_end(Point p) const
	{
		for (const Joint &joint : floor.record.joints)
			if (joint.kind == "soft" && !joint.line.empty())
				for (Point end : {joint.line.front(), joint.line.back()})
					if (norm(end - p) <= floor.lay.tile_long)
						return true;
		return false;
	}

	bool is_by_an_end(Point p) const
	{
		for (const Segment &s : ends)
			if (distance(p, s) <= far)
				return true;
		return false;
	}

	// Sides that have a joint, looking square to the crack there and to its whole run.
	int sides(Point p, Point along, Point chord) const
	{
		if (distance(p, softs) <= floor.lay.joint)
			return 2; // the crack runs in the joint
		int found = 0;
		for (double side : {1.0, -1.0})
			found += meets(p, Point{-along.y, along.x} * side) ||
			         meets(p, Point{-chord.y, chord.x} * side);
		return found;
	}
};

} // namespace

void check_present(const Floor &floor, const Group &group, Report &report)
{
	double reach = 0;
	for (const Crack *crack : group.cracks)
		reach = std::max(reach, reach_of(floor.plan, *crack));
	Lookout lookout{floor,
	                {},
	                group.line,
	                floor.half_width() + 2 * floor.lay.tile_long,
	                floor.lay.tile_long + reach + END_REACH,
	                {}};
	for (const Crack *crack : group.cracks)
		for (const Line &run : crack->runs)
			for (Point p : {run.front(), run.back()})
				lookout.ends.push_back({p, p});
	// Over the way on from an end a look goes out between the joints of its two sides.
	for (const Crack *crack : group.cracks)
		for (const OpenEnd &end : open_ends(floor, *crack))
			lookout.own.push_back({end.at, end.at + end.along * floor.overrun()});
	for (const Joint &joint : floor.record.joints)
		if (joint.kind == "soft")
			for (const Segment &s : segments_of(joint.line))
				lookout.softs.push_back(s);
	long samples = 0, open = 0;
	Point first;
	int wanted = floor.membrane()->one && group.cracks.size() == 1 ? 1 : 2;
	for (const Crack *crack : group.cracks)
		for (const Line &run : crack->runs) {
			Point chord = run.back() - run.front();
			chord = chord * (1 / norm(chord));
			for (const Segment &s : segments_of(run)) {
				Point along = (s.b - s.a) * (1 / norm(s.b - s.a));
				for (double t = 20; t < norm(s.b - s.a) - 10; t += 40) {
					Point p = s.a + along * t;
					if (!floor.on_panel(p, 0))
						continue;
					samples++;
					if (lookout.sides(p, along, chord) < wanted && open++ == 0)
						first = p;
				}
			}
		}
	report.cases += samples;
	report.check(
		open == 0, "E-C3.present",
		"group %s: %ld of %ld points of it without a joint beside them, first %.0f,%.0f",
		group.id.c_str(), open, samples, first.x, first.y);
}
