// network.hpp - the borders of the cells round a crack as a graph, built from the record's
// lattice alone, and the cheapest way through it.
#ifndef ORACLE_NETWORK_HPP
#define ORACLE_NETWORK_HPP
#include "cracks.hpp"

class Network
{
      public:
	// All cells of the panel that meet the box.
	Network(const Floor &, size_t panel, const Box &);

	// Cells that the group's cracks cross, and cells wholly enclosed by such.
	void mark_crossed(const std::vector<const Tile *> &);

	struct Edge {
		int from, to;
		double length;
		std::vector<int> cells; // beside it
		bool open = false;      // may be walked
		bool on_crossed = false;
	};
	std::vector<Point> nodes;
	std::vector<Edge> edges;
	std::vector<char> on_border; // per node: cut at the panel's edge

	std::vector<char> crossed; // per cell
	std::vector<Ring> cells;

	Segment segment(const Edge &) const;
	int node_at(Point, double within) const; // -1: none
	int cell_at(int face, int i, int j) const;
	// Least cost from one of `starts` to one of `ends` by open edges; negative: no way. `way`
	// takes its nodes from the end back, all but the first.
	double cheapest(const std::vector<int> &starts, const std::vector<int> &ends,
	                double penalty, std::vector<int> *way) const;
	// The same by trying every way; for few open edges.
	double cheapest_of_all(const std::vector<int> &starts, const std::vector<int> &ends,
	                       double penalty) const;

      private:
	struct Address {
		int face, i, j;
		bool operator<(const Address &o) const
		{
			return std::tie(face, i, j) < std::tie(o.face, o.i, o.j);
		}
	};
	std::map<Address, int> cell_of;
	std::map<std::pair<long, long>, std::vector<int>> bins;

	int node(Point);
	void add_edges(const Panel &);
};

// Of two segments that follow each other: how far the way turns, in quarter turns.
double quarter_turns(Point before, Point after);

// Length, and turns in quarter turns; a line that ends where it begins turns there too.
struct SoftFigures {
	double length = 0, turns = 0;
	bool is_closed = false;
};
SoftFigures soft_figures(const Line &);
void check_soft(const Floor &, double penalty, Report &);
// Partial coverage is questioned where it must be, with both areas.
void check_questions(const Floor &, Report &);
// Tile bonded to what the group crosses ends at soft joints or at what serves as one.
void check_present(const Floor &, const Group &, Report &);
#endif
