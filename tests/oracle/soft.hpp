// soft.hpp - one soft joint of a record, where else it might end, and what the cheapest way costs.
// Units: mm.
#ifndef ORACLE_SOFT_HPP
#define ORACLE_SOFT_HPP
#include "network.hpp"

const double SOFT_NEAR = 0.01; // points nearer than this are one
const double SOFT_BEYOND = 50; // how far a strip reaches past the far edge of its soft joints

struct SoftJoint {
	const Joint &joint;
	const Group &group;
	size_t panel;
};

// Nodes at the panel's edge where a joint that ends at `end` might as well end.
std::vector<int> nodes_along_edge(const Floor &, const SoftJoint &, const Network &, Point end);
// No dearer than the cheapest way from end to end, or, of a closed one, right round.
void check_cheapest(const Floor &, const SoftJoint &, Network, double penalty, Report &);
#endif
