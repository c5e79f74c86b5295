// tiles.hpp - every tile of a field, cut anew from the record's lattice and panels.
#ifndef ORACLE_TILES_HPP
#define ORACLE_TILES_HPP
#include "model.hpp"
#include "report.hpp"

struct Tile {
	size_t panel;
	int face, i, j;
	bool whole, held;
	double area;
	std::vector<Ring> quads; // convex parts that make it up
	Point middle;            // a point inside
	Box box;
};

struct Tiling {
	std::vector<Tile> tiles;
	double lost = 0;
	int undecided = 0; // pieces so near a limit that either verdict is right
};

Ring moved(const Ring &, Point by);
Point lattice(const Field &, const Panel &, int i, int j);
// All lattice positions where a ring of the period may meet the box.
void each_place(const Field &, const Panel &, const Box &, const std::vector<Ring> &rings,
                const std::function<void(int face, int i, int j, const Ring &)> &);

// The tiles; `report` gets the agreement of three ways to clip.
Tiling tile_field(const Record &, const Plan &, const Field &, Report &report);
void check_cells(const Plan &, const Field &, Report &);
void check_counts(const Field &, const Tiling &, Report &);

// The same clip by the library: area and number of parts.
struct Clip {
	double area;
	int parts;
};
Clip library_clip(const Ring &convex, const Shape &);
const char *library_name();
#endif
