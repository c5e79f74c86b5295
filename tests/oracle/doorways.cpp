// doorways.cpp - joints in doorways between rooms of one lay.

#include "cracks.hpp"

#include <algorithm>

// A doorway that has a joint is parted by one: straight from jamb to jamb, in the depth of the
// wall, as wide as a field joint.
void check_doorways(const Floor &floor, Report &report)
{
	for (const auto &[id, depth] : floor.plan.doorway_joints) {
		if (!Floor::in_any(floor.ground(), depth.opening.a, 1))
			continue;
		const Segment jambs[] = {{depth.opening.a, depth.end.a},
		                         {depth.opening.b, depth.end.b}};
		int found = 0;
		for (const Joint &joint : floor.record.joints) {
			if (joint.of != id || joint.kind != "movement" || joint.line.size() != 2)
				continue;
			double off = 1e300;
			for (int turn = 0; turn < 2; turn++)
				off = std::min(off,
				               std::max(distance(joint.line[turn], jambs[0]),
				                        distance(joint.line[1 - turn], jambs[1])));
			found++;
			report.check(off <= 0.05 && joint.width >= floor.line_width - 1e-6,
			             "doorway-joint", "%s: %.3f mm off its jambs, %.3f wide",
			             joint.id.c_str(), off, joint.width);
		}
		report.check(found == 1, "doorway-joint", "doorway %s: %d joints", id.c_str(),
		             found);
	}
}
