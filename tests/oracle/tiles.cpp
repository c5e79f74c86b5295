#include "tiles.hpp"

#include <algorithm>
#include <cmath>

namespace
{

const double WHOLE = 0.05;      // a face this far out of its panel is whole
const double DISC = 0.5 / 2;    // radius of the disc a piece must hold
const double FINE = 1e-6;       // printed coordinates are no finer
const double RESOLUTION = 5e-3; // of a search near a limit
const double CORNER = 0.02;     // a tip of ground (1e-4 mm2) over a limit by less is none

double area_tolerance(double area)
{
	return std::max(1.0, 1e-9 * area);
}

// A clip of one face with a panel, three ways; the trapezoids are kept.
struct Agreement {
	long cases = 0, own_apart = 0, library_apart = 0;
	double worst = 0;

	void compare(const Ring &face, const Shape &shape, double area, int parts)
	{
		double cut = clipped_area(face, shape);
		Clip clip = library_clip(face, shape);
		cases++;
		worst = std::max(worst, std::fabs(area - cut));
		own_apart += std::fabs(area - cut) > 1e-4;
		library_apart += std::fabs(area - clip.area) > 1e-3 || parts != clip.parts;
	}
};

bool meets_border(const Box &box, const std::vector<Segment> &border)
{
	for (const Segment &s : border) {
		Box of_segment;
		of_segment.add(s.a);
		of_segment.add(s.b);
		if (!box.meets(of_segment))
			continue;
		Ring corners = {{box.x0, box.y0},
		                {box.x1, box.y0},
		                {box.x1, box.y1},
		                {box.x0, box.y1}};
		if (distance(corners, {s}) <= 0)
			return true;
	}
	return false;
}

class Tiler
{
      public:
	Tiler(const Plan &plan, const Field &f, size_t p, Tiling &t, Agreement &a)
	    : field(f), panel(f.panels[p]), number(p), lay(plan.lays.at(f.lay)), tiling(t),
	      agreement(a)
	{
	}

	void place(int face, int i, int j, const Ring &ring)
	{
		Box box = box_of(ring);
		box.grow(2 * WHOLE);
		if (meets_border(box, panel.border))
			cut(face, i, j, ring, box);
		else if (inside(panel.shape, ring[0]))
			add({number, face, i, j, true, false, signed_area(ring), {ring}, {}, box});
	}

      private:
	const Field &field;
	const Panel &panel;
	size_t number;
	const PlanLay &lay;
	Tiling &tiling;
	Agreement &agreement;

	void add(Tile tile)
	{
		const Ring *largest = &tile.quads[0];
		for (const Ring &quad : tile.quads)
			if (std::fabs(signed_area(quad)) > std::fabs(signed_area(*largest)))
				largest = &quad;
		for (Point p : *largest)
			tile.middle =
				tile.middle + p * (1.0 / static_cast<double>(largest->size()));
		tiling.tiles.push_back(tile);
	}

	// Each part lies along one side of the border: the distance from a segment is greatest
	// at a corner.
	bool is_rim(const std::vector<Trapezoid> &outside)
	{
		return std::all_of(outside.begin(), outside.end(), [&](const Trapezoid &t) {
			return std::any_of(panel.border.begin(), panel.border.end(),
			                   [&](const Segment &side) {
						   double most = 0;
						   for (Point p : t.ring())
							   most = std::max(most, distance(p, side));
						   return most <= WHOLE;
					   });
		});
	}

	bool is_whole(const Shape &face, const Box &box)
	{
		std::vector<Trapezoid> outside =
			trapezoids({&face, &panel.shape}, box,
		                   [](const auto &in) { return in[0] && !in[1]; });
		if (is_rim(outside))
			return true;
		Bounds reach = greatest(
			outside, [&](Point p) { return distance(p, panel.border); }, WHOLE, 1e-5);
		return reach.most <= WHOLE + 1e-5;
	}

	void cut(int face, int i, int j, const Ring &ring, const Box &box)
	{
		Shape shape = {ring};
		int parts = 0;
		std::vector<Trapezoid> all = trapezoids(
			{&shape, &panel.shape}, box, [](const auto &in) { return in[0] && in[1]; },
			&parts);
		std::vector<std::vector<Trapezoid>> pieces(static_cast<size_t>(parts));
		for (const Trapezoid &t : all)
			pieces[static_cast<size_t>(t.part)].push_back(t);
		int real = 0;
		for (const auto &piece : pieces)
			real += total_area(piece) > 1e-4;
		agreement.compare(ring, panel.shape, total_area(all), real);
		if (real > 0 && is_whole(shape, box)) {
			add({number, face, i, j, true, false, signed_area(ring), {ring}, {}, box});
			return;
		}
		for (const auto &piece : pieces)
			judge(face, i, j, ring, piece, box);
	}

	// A connected part: tile, or lost.
	void judge(int face, int i, int j, const Ring &ring, const std::vector<Trapezoid> &piece,
	           Box box)
	{
		double area = total_area(piece);
		std::vector<Segment> own = segments_of(Shape{ring});
		Bounds disc = greatest(
			piece,
			[&](Point p) {
				return std::min(distance(p, own), distance(p, panel.border));
			},
			DISC, RESOLUTION / 10);
		double margin = lay.gap_max - lay.gap;
		Bounds deep = greatest(
			piece, [&](Point p) { return distance(p, panel.border); }, margin,
			RESOLUTION);
		bool is_dust = disc.most < DISC, is_edge = deep.most <= margin + FINE * 10;
		bool is_tile = disc.least >= DISC && deep.least > margin + FINE * 10;
		bool is_tip = is_tile && deep.least <= margin + CORNER &&
		              greatest(
				      piece, [&](Point p) { return distance(p, panel.border); },
				      margin + CORNER, RESOLUTION)
		                              .most <= margin + CORNER;
		if (!is_dust && !is_edge && (!is_tile || is_tip))
			tiling.undecided++;
		if (is_dust || is_edge || (!is_tile && deep.least <= margin)) {
			tiling.lost += area;
			return;
		}
		Tile tile{number, face, i, j, false, false, area, {}, {}, box};
		for (const Trapezoid &t : piece)
			tile.quads.push_back(t.ring());
		add(tile);
	}
};

} // namespace

Ring moved(const Ring &ring, Point by)
{
	Ring result;
	for (Point p : ring)
		result.push_back(p + by);
	return result;
}

Point lattice(const Field &field, const Panel &panel, int i, int j)
{
	return panel.at + field.a * i + field.b * j;
}

void each_place(const Field &field, const Panel &panel, const Box &box,
                const std::vector<Ring> &rings,
                const std::function<void(int, int, int, const Ring &)> &visit)
{
	double det = cross(field.a, field.b);
	for (size_t face = 0; face < rings.size(); face++) {
		Box of_ring = box_of(rings[face]);
		Box range; // of lattice coordinates
		for (double x : {box.x0 - of_ring.x1, box.x1 - of_ring.x0})
			for (double y : {box.y0 - of_ring.y1, box.y1 - of_ring.y0}) {
				Point d = Point{x, y} - panel.at;
				range.add({cross(d, field.b) / det, cross(field.a, d) / det});
			}
		for (int j = static_cast<int>(std::floor(range.y0)); j <= std::ceil(range.y1); j++)
			for (int i = static_cast<int>(std::floor(range.x0));
			     i <= std::ceil(range.x1); i++) {
				Ring ring = moved(rings[face], lattice(field, panel, i, j));
				if (box.meets(box_of(ring)))
					visit(static_cast<int>(face), i, j, ring);
			}
	}
}

Tiling tile_field(const Record &record, const Plan &plan, const Field &field, Report &report)
{
	Tiling tiling;
	Agreement agreement;
	for (size_t p = 0; p < field.panels.size(); p++) {
		Tiler tiler(plan, field, p, tiling, agreement);
		each_place(field, field.panels[p], field.panels[p].box, field.faces,
		           [&](int face, int i, int j, const Ring &ring) {
				   tiler.place(face, i, j, ring);
			   });
	}
	for (Tile &tile : tiling.tiles)
		for (const Hold &hold : record.holds)
			tile.held = tile.held || inside(hold.shape, tile.middle);
	report.cases += agreement.cases;
	report.check(agreement.own_apart == 0 && agreement.library_apart == 0, "clippers",
	             "lay %s: %ld clips, own two ways %.2g mm2 apart at most, %s differs in %ld",
	             field.lay.c_str(), agreement.cases, agreement.worst, library_name(),
	             agreement.library_apart);
	return tiling;
}

// Every face is the tile it is said to be: a rectangle of its sides, or a regular hexagon.
static double off_tile(const Ring &face, const PlanTile &tile)
{
	size_t sides = tile.is_hexagon ? 6 : 4;
	if (face.size() != sides)
		return 1e300;
	double off = 0, side = tile.wide / std::sqrt(3.0);
	for (size_t i = 0; i < sides; i++) {
		Point d = face[(i + 1) % sides] - face[i], next = face[(i + 2) % sides] - face[i];
		double turned = tile.is_hexagon
		                        ? side * std::sqrt(3.0)
		                        : std::sqrt(tile.wide * tile.wide + tile.tall * tile.tall);
		double same =
			std::min(std::fabs(norm(d) - tile.wide), std::fabs(norm(d) - tile.tall));
		off = std::max(off, tile.is_hexagon ? std::fabs(norm(d) - side) : same);
		off = std::max(off, std::fabs(norm(next) - turned));
	}
	return off;
}

static void check_faces(const Plan &plan, const Field &field, Report &report)
{
	for (size_t f = 0; f < field.faces.size(); f++) {
		auto tile = plan.tiles.find(field.face_tiles[f]);
		double off =
			tile == plan.tiles.end() ? 1e300 : off_tile(field.faces[f], tile->second);
		report.cases++;
		report.check(off <= 1e-5, "face-is-tile", "lay %s: face %zu is %.6f mm off tile %s",
		             field.lay.c_str(), f, off, field.face_tiles[f].c_str());
	}
}

void check_cells(const Plan &plan, const Field &field, Report &report)
{
	check_faces(plan, field, report);
	double period = std::fabs(cross(field.a, field.b)), cells = 0, perimeter = 0;
	for (const Ring &cell : field.cells) {
		cells += signed_area(cell);
		for (size_t i = 0; i < cell.size(); i++)
			perimeter += norm(cell[(i + 1) % cell.size()] - cell[i]);
	}
	report.check(std::fabs(period - cells) <= FINE * perimeter, "cells-fill-the-plane",
	             "lay %s: period %.6f mm2, its %zu cells %.6f", field.lay.c_str(), period,
	             field.cells.size(), cells);
	double joint = plan.lays.at(field.lay).joint, least = 1e300;
	for (int i = -2; i <= 2; i++)
		for (int j = -2; j <= 2; j++)
			for (size_t f = 0; f < field.faces.size(); f++)
				for (size_t g = 0; g < field.faces.size(); g++)
					if (f != g || i != 0 || j != 0)
						least = std::min(
							least,
							distance(field.faces[f],
						                 segments_of(Shape{moved(
									 field.faces[g],
									 field.a * i +
										 field.b * j)})));
	report.check(std::fabs(least - joint) <= 0.01, "E-M4",
	             "lay %s: nearest faces %.6f mm apart, joint %.6f", field.lay.c_str(), least,
	             joint);
	for (const Panel &panel : field.panels) {
		double sum = 0, area = area_of(panel.shape);
		long count = 0;
		each_place(field, panel, panel.box, field.cells,
		           [&](int, int, int, const Ring &cell) {
				   sum += clipped_area(cell, panel.shape);
				   count++;
			   });
		// The printed lattice is rounded to 1e-6 mm: neighbours overlap by that much.
		double tolerance =
			area_tolerance(area) + FINE * perimeter * static_cast<double>(count);
		report.cases += count;
		report.check(std::fabs(sum - area) <= tolerance &&
		                     std::fabs(area - panel.area) <= 1,
		             "E-T1",
		             "panel %s: outline %.3f mm2, recorded %.3f, sum over %ld cells %.3f",
		             panel.id.c_str(), area, panel.area, count, sum);
	}
}

void check_counts(const Field &field, const Tiling &tiling, Report &report)
{
	long whole = 0, cut = 0, held_whole = 0, held_cut = 0;
	double area = 0, held_area = 0;
	for (const Tile &tile : tiling.tiles) {
		(tile.held ? held_area : area) += tile.area;
		long &count = tile.held ? (tile.whole ? held_whole : held_cut)
		                        : (tile.whole ? whole : cut);
		count++;
	}
	const Element &e = *field.tiles;
	const char *lay = field.lay.c_str();
	auto count = [&](const char *name, const char *key, long own, long slack) {
		double recorded = e.number(key);
		report.cases += own;
		report.check(std::fabs(recorded - static_cast<double>(own)) <=
		                     static_cast<double>(slack),
		             name, "lay %s: %s %ld, recorded %.0f, undecided %ld", lay, key, own,
		             recorded, slack);
	};
	count("E-T4.whole", "whole", whole, 0);
	count("E-T4.cut", "cut", cut, tiling.undecided);
	count("E-T4.held-whole", "held-whole", held_whole, 0);
	count("E-T4.held-cut", "held-cut", held_cut, tiling.undecided);
	auto amount = [&](const char *name, const char *key, double own) {
		double recorded = e.number(key) * 1e6, slack = area_tolerance(own);
		if (tiling.undecided)
			slack += tiling.undecided *
			         1e4; // a remainder at the edge is less than 6 mm wide
		report.check(std::fabs(recorded - own) <= slack, name,
		             "lay %s: %s %.3f mm2, recorded %.3f", lay, key, own, recorded);
	};
	double smallest = 1e300, smallest_free = 1e300; // with and without what is held
	for (const Tile &tile : tiling.tiles)
		if (!tile.whole) {
			smallest = std::min(smallest, tile.area);
			smallest_free = std::min(smallest_free, tile.held ? 1e300 : tile.area);
		}
	if (e.has("smallest-piece") && smallest < 1e300 && !tiling.undecided) {
		double recorded = e.number("smallest-piece") * 1e6;
		report.check(std::min(std::fabs(recorded - smallest),
		                      std::fabs(recorded - smallest_free)) <= 1,
		             "smallest-piece", "lay %s: %.3f mm2, recorded %.3f", lay, smallest,
		             recorded);
	}
	amount("E-T4.area", "area", area);
	amount("E-T4.held-area", "held-area", held_area);
	amount("E-T4.lost", "lost", tiling.lost);
}
