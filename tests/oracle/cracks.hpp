// cracks.hpp - crossed pieces, strips, holds and carried joints against the record.
#ifndef ORACLE_CRACKS_HPP
#define ORACLE_CRACKS_HPP
#include "tiles.hpp"

// One lay of a record with what was cut anew from it.
struct Floor {
	const Record &record;
	const Plan &plan;
	const Field &field;
	const Tiling &tiling;
	const PlanLay &lay;
	double line_width; // of a field joint, as the tables have it

	std::vector<Shape> ground() const;    // as ground_of
	std::vector<Shape> obstacles() const; // in those rooms
	std::vector<Shape> covered() const;   // strips and full coverage
	const PlanMembrane *membrane() const; // over the lay, or none
	double half_width() const;            // half of what a strip must cover
	double overrun() const;               // past a crack's end in the field
	bool on_panel(Point, double slack) const;
	// Inside one of the shapes, or within `slack` of its border.
	static bool in_any(const std::vector<Shape> &, Point, double slack);
};

// Outlines of a lay's rooms, and recesses.
std::vector<Shape> ground_of(const Record &, const Plan &, const PlanLay &);
// The record without the strips, holds, joints and covers that lie, for the most part, on
// other ground.
Record record_of_lay(const Record &, const std::vector<Shape> &ground);

struct Group {
	std::string id, state;
	std::vector<const Crack *> cracks;
	std::vector<Segment> line; // of all its cracks
};
std::vector<Group> groups_of(const Record &);
// The group a joint belongs to, by the ids its `of` lists; or none.
const Group *group_of(const std::vector<Group> &, const Joint &);

double reach_of(const Plan &, const Crack &); // width / 2 + wander
std::vector<const Tile *> crossed(const Floor &, const Crack &);
// The crack has a length inside the panel.
bool runs_in(const Floor &, const Crack &, size_t panel);
// The tile lies in the hold of other cracks.
bool in_other_hold(const Floor &, const Crack &, const Tile &);
std::vector<Shape> carried_bands(const Record &);
// The ground that a joint leaves without tile.
void add_band(const Joint &, std::vector<Shape> &bands);
// Length of the segment outside (or inside) of all shapes; nearer than `slack` to a border
// counts for neither.
double length_where(const Segment &, const std::vector<Shape> &, bool is_inside, double slack);
// Two ends of one crack in one place are none: it comes back to its start, there or past a joint.
bool goes_on(const Crack &, Point end);
// Ends of the crack that lie in the field, with the direction in which it would go on.
struct OpenEnd {
	Point at, along;
};
std::vector<OpenEnd> open_ends(const Floor &, const Crack &);

// A slab joint of the plan as it lies: its ends come to what is near them, and it turns a little
// with them.
Line landed(const Floor &, const std::string &joint);

// Field joints of one lay: what they take from the panels on their two sides together.
std::vector<const Joint *> field_lines(const Floor &);
double taken_by(const Floor &, const Joint &);
// Field joints that lie in holds from end to end are not built, but the tile is parted there:
// what each takes, about its straight.
std::vector<Shape> unbuilt_bands(const Floor &);

void check_field(const Floor &, Report &);
void check_doorways(const Floor &, Report &);
void check_field_joints(const Floor &, double longest, Report &);
void check_controls(const Floor &, Report &);
void check_cracks(const Floor &, Report &);
void check_strips(const Floor &, Report &);
void check_holds(const Floor &, Report &);
void check_carried(const Floor &, Report &);
#endif
