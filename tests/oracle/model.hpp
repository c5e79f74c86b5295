// model.hpp - what the checker reads: the record's own lattice and outlines, and from the
// plan the figures the record does not repeat. Units: mm, mm2.
#ifndef ORACLE_MODEL_HPP
#define ORACLE_MODEL_HPP
#include <map>
#include <set>
#include <string>
#include <vector>

#include "markup.hpp"
#include "shape.hpp"

struct PlanLay {
	std::set<std::string> rooms;
	double joint = 0, gap = 0, gap_max = 0;
	double tile_width = 0, tile_long = 0; // greatest shorter side, greatest longer side
	std::set<std::string> spacings;       // figures that limit a run of its tile, by name
};
struct PlanTile {
	double wide = 0, tall = 0; // without joint; a hexagon across flats
	bool is_hexagon = false;
};
struct PlanCrack {
	double width = 0, step = 0, wander = 0;
	bool moving = false;
	Line line;
};
struct PlanJoint {
	std::string kind;
	double width = 0;
	bool relocate = false;
	Line line;
};
struct PlanMembrane {
	std::set<std::string> rooms;
	std::string kind;
	double strip = 0, overrun = 0, roll_wide = 0;
	bool one = false;
};
struct Obstacle {
	std::string id, kind;
	Ring ring;        // round ones drawn outside
	double round = 0; // length round a circle, else 0
};
// A doorway as one of its rooms has it: its opening in the wall, and how far out it is tiled.
struct Recess {
	Segment opening, end; // end.a lies out from opening.a
	bool is_open;         // the tile goes on at its end
	bool is_deep() const
	{
		return norm(end.a - opening.a) > 0 || norm(end.b - opening.b) > 0;
	}
};
struct Plan {
	bool inches = false;
	std::string rules;
	std::map<std::string, PlanLay> lays;
	std::map<std::string, PlanTile> tiles;
	std::map<std::string, PlanCrack> cracks;
	std::map<std::string, PlanJoint> joints;
	std::vector<PlanMembrane> membranes;
	std::map<std::string, std::vector<Obstacle>> obstacles; // by room
	std::map<std::string, std::vector<Recess>> recesses;    // by room
	std::map<std::string, Recess> doorway_joints;           // by doorway: its whole depth
	std::map<std::string, std::vector<Segment>> open_edges; // by room: the tile goes on
};
Plan read_plan(const std::string &path);
// One length of the plan's forms in mm; `unit` for a bare decimal.
double length_of(const std::string &text, const std::string &unit);

struct Panel {
	std::string id;
	Point at;
	double area = 0; // as recorded
	Shape shape;
	std::vector<Segment> border;
	Box box;
};
struct Field {
	std::string lay;
	std::set<std::string> rooms;
	double area = 0;
	Point u; // along the courses, length 1
	Point a, b;
	std::vector<Ring> faces, cells;
	std::vector<std::string> face_tiles;
	std::vector<Panel> panels;
	const Element *tiles = nullptr;
};
struct Crack {
	std::string id, state, group;
	std::vector<Line> runs;
};
struct Piece {
	Shape shape;
	double length = 0, wide = 0;
};
struct Strip {
	std::string id;
	std::set<std::string> cracks;
	double area = 0;
	Shape shape;
	std::vector<Piece> pieces;
};
struct Hold {
	std::string id;
	std::set<std::string> cracks;
	double area = 0;
	Shape shape;
};
struct Joint {
	std::string id, kind, of, side;
	bool is_cut = false; // through tile, not on tile joints
	double width = 0, length = 0, turns = 0, cost = 0;
	Line line;
};
struct Room {
	std::string id;
	double area = 0;
	Shape shape;
};
struct Control {
	std::string id, room;
	Segment line;
};
struct First {
	std::string room;
	Point at;
};
struct Record {
	Element root;
	std::vector<Room> rooms;
	std::vector<Field> fields;
	std::vector<Crack> cracks;
	std::vector<Strip> strips;
	std::vector<Hold> holds;
	std::vector<Joint> joints;
	std::vector<Shape> full_covers;
	std::vector<Control> controls;
	std::vector<First> firsts;
};
Record read_record(const std::string &path, const Plan &);
#endif
