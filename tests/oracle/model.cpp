#include "model.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace
{

const std::map<std::string, double> UNITS = {{"mm", 1},         {"cm", 10},      {"m", 1000},
                                             {"in", 25.4},      {"ft", 304.8},   {"'", 304.8},
                                             {"\"", 25.4},      {"mil", 0.0254}, {"um", 0.001},
                                             {"\u2032", 304.8}, {"\u2033", 25.4}};

std::set<std::string> set_of(const std::string &list)
{
	std::vector<std::string> all = words(list);
	return {all.begin(), all.end()};
}

Ring turned(Ring ring, bool anticlockwise)
{
	if ((signed_area(ring) > 0) != anticlockwise)
		std::reverse(ring.begin(), ring.end());
	return ring;
}

} // namespace

double length_of(const std::string &text, const std::string &unit)
{
	double total = 0, pending = 0;
	bool is_pending = false, minus = false;
	for (size_t i = 0; i < text.size();) {
		if (std::isspace(static_cast<unsigned char>(text[i]))) {
			i++;
		} else if (text[i] == '-') {
			minus = minus || i == 0; // 12'-6": the dash only joins
			i++;
		} else if (std::isdigit(static_cast<unsigned char>(text[i])) || text[i] == '.') {
			char *end = nullptr;
			double value = std::strtod(text.c_str() + i, &end);
			if (*end == '/')
				value /= std::strtod(end + 1, &end);
			i = static_cast<size_t>(end - text.c_str());
			pending += value;
			is_pending = true;
		} else {
			std::string best;
			for (const auto &[name, mm] : UNITS)
				if (text.compare(i, name.size(), name) == 0 &&
				    name.size() > best.size())
					best = name;
			if (best.empty() || !is_pending)
				throw std::runtime_error("no length: '" + text + "'");
			total += pending * UNITS.at(best);
			pending = 0, is_pending = false;
			i += best.size();
		}
	}
	if (is_pending)
		total += pending * UNITS.at(unit);
	return minus ? -total : total;
}

namespace
{

// Reads one plan; walls are collected first, because points may be given along them.
class PlanReader
{
      public:
	explicit PlanReader(const Element &floor) : root(floor), unit(floor.get("unit"))
	{
		plan.inches = unit == "in" || unit == "ft";
		plan.rules = "src/rules/" + root.get("rules", "us") + ".rules";
		for (const Element *room : root.all("room"))
			walls_of(*room);
	}

	Plan read()
	{
		for (const Element *room : root.all("room")) {
			for (const Element *e : room->all("obstacle"))
				plan.obstacles[room->get("id")].push_back(
					{e->get("id"), e->get("kind"), ring_of(*e),
				         length(*e, "across", 0) * M_PI});
			for (const Element *e : room->all("doorway"))
				add_doorway(*e, room->get("id"));
		}
		for (const Element *e : root.all("tile")) {
			double wide = length(*e, "wide", 0);
			plan.tiles[e->get("id")] = {wide, length(*e, "long", wide),
			                            e->get("shape") == "hexagon"};
		}
		for (const Element *lay : root.all("lay"))
			plan.lays[lay->get("id")] = lay_of(*lay);
		for (const Element *e : root.all("crack"))
			plan.cracks[e->get("id")] = {length(*e, "width", 0), length(*e, "step", 0),
			                             length(*e, "wander", plan.inches ? 12.7 : 12),
			                             e->get("moving") == "yes", line_of(*e)};
		for (const Element *e : root.all("slab-joint"))
			plan.joints[e->get("id")] = {e->get("kind"), length(*e, "width", 0),
			                             is_relocated(*e), line_of(*e)};
		for (const Element *e : root.all("slab-joint"))
			if (is_relocated(*e))
				plan.cracks[e->get("id")] = {length(*e, "width", 0), 0, 0, false,
				                             line_of(*e)};
		for (const Element *e : root.all("membrane"))
			plan.membranes.push_back({set_of(e->get("rooms")), e->get("kind"),
			                          length(*e, "strip", 0), length(*e, "overrun", -1),
			                          length(*e, "roll-wide", 0),
			                          e->get("soft-joints") == "one"});
		return plan;
	}

      private:
	// Two people said so, and nobody against it; sides without a step.
	bool is_relocated(const Element &joint) const
	{
		std::set<std::string> agreed;
		bool is_refused = joint.get("treat") != "relocate" || length(joint, "step", 0) > 0;
		for (const Element *e : root.all("answer"))
			if (e->get("about") == joint.get("id") &&
			    e->get("rule", "joint-relocated") == "joint-relocated") {
				agreed.insert(e->get("by"));
				is_refused = is_refused || e->get("decision") != "proceed";
			}
		return !is_refused && agreed.size() > 1;
	}

	struct Wall {
		Segment chord;
		Point into; // square into the room, length 1
		std::string room;
	};
	const Element &root;
	std::string unit;
	Plan plan;
	std::map<std::string, Wall> walls;

	double length(const Element &e, const char *key, double otherwise) const
	{
		return e.has(key) ? length_of(e.get(key), unit) : otherwise;
	}

	Point point(const Element &e) const
	{
		if (!e.has("wall"))
			return {length(e, "x", 0), length(e, "y", 0)};
		const Wall &wall = walls.at(e.get("wall"));
		Point d = wall.chord.b - wall.chord.a;
		return wall.chord.a + d * (length(e, "along", 0) / norm(d)) +
		       wall.into * length(e, "out", 0);
	}

	Line line_of(const Element &e) const
	{
		Line line;
		for (const Element *at : e.all("at"))
			line.push_back(point(*at));
		return line;
	}

	void walls_of(const Element &room)
	{
		Ring ring;
		std::vector<std::string> ids, open; // of each side: the room beyond an open edge
		for (const Element *corners : room.all("corners"))
			for (const Element *corner : corners->all("corner")) {
				ring.push_back(point(*corner));
				ids.push_back(corner->get("id"));
				open.push_back(corner->get("to"));
			}
		for (const Element *run : room.all("walls")) {
			Point at = point(*run);
			std::vector<double> walked = {0};
			double heading = number_of(run->get("heading", "0"));
			for (const Element *wall : run->all("wall")) {
				ring.push_back(at);
				ids.push_back(wall->get("id"));
				open.push_back(wall->get("to"));
				double angle = heading * M_PI / 180;
				at = at + Point{std::cos(angle), std::sin(angle)} *
				                  length(*wall, "length", 0);
				heading += number_of(wall->get("turn", "90"));
				walked.push_back(walked.back() + length(*wall, "length", 0));
			}
			Point error = at - ring[0]; // spread by the compass rule
			for (size_t i = 0; i < ring.size(); i++)
				ring[i] = ring[i] - error * (walked[i] / walked.back());
		}
		double side = signed_area(ring) > 0 ? 1 : -1;
		for (size_t i = 0; i < ring.size(); i++) {
			Segment chord{ring[i], ring[(i + 1) % ring.size()]};
			Point d = (chord.b - chord.a) * (side / norm(chord.b - chord.a));
			std::string id = ids[i].empty()
			                         ? room.get("id") + "." + std::to_string(i + 1)
			                         : ids[i];
			if (!open[i].empty() && is_one_lay(room.get("id"), open[i]))
				plan.open_edges[room.get("id")].push_back(chord);
			walls[id] = {chord, {-d.y, d.x}, room.get("id")};
		}
	}

	Ring ring_of(const Element &obstacle) const
	{
		Ring ring;
		for (const Element *corners : obstacle.all("corners"))
			for (const Element *corner : corners->all("corner"))
				ring.push_back(point(*corner));
		Point middle = point(obstacle);
		if (obstacle.has("across")) {
			const int sides =
				180; // drawn round the circle, so that no floor is claimed in it
			double radius = length(obstacle, "across", 0) / 2 / std::cos(M_PI / sides);
			for (int i = 0; i < sides; i++)
				ring.push_back(middle + Point{std::cos(2 * M_PI * i / sides),
				                              std::sin(2 * M_PI * i / sides)} *
				                                radius);
		} else if (obstacle.has("wide")) {
			double angle = number_of(obstacle.get("turn", "0")) * M_PI / 180;
			Point u = Point{std::cos(angle), std::sin(angle)} *
			          (length(obstacle, "wide", 0) / 2);
			Point v = Point{-std::sin(angle), std::cos(angle)} *
			          (length(obstacle, "deep", 0) / 2);
			ring = {middle - u - v, middle + u - v, middle + u + v, middle - u + v};
		}
		return turned(ring, true);
	}

	bool is_one_lay(const std::string &a, const std::string &b) const
	{
		for (const Element *lay : root.all("lay")) {
			std::set<std::string> rooms = set_of(lay->get("rooms"));
			if (rooms.count(a) || rooms.count(b))
				return rooms.count(a) && rooms.count(b);
		}
		return true;
	}

	// Where lines out of an opening meet the nearest wall of the room behind it.
	Segment facing(Segment opening, Point out, const std::string &room) const
	{
		Segment nearest = opening;
		double least = 1e300;
		for (const auto &[id, wall] : walls) {
			Point d = wall.chord.b - wall.chord.a;
			double turn = cross(out, d);
			if (wall.room != room || std::fabs(turn) < norm(d) / 2)
				continue;
			double deep[2], along[2];
			Segment met;
			for (int k = 0; k < 2; k++) {
				Point from = k ? opening.b : opening.a;
				deep[k] = cross(wall.chord.a - from, d) / turn;
				Point at = from + out * deep[k];
				along[k] = dot(at - wall.chord.a, d) / dot(d, d);
				(k ? met.b : met.a) = at;
			}
			double far = std::max(deep[0], deep[1]);
			if (deep[0] > 0 && deep[1] > 0 && far < least &&
			    std::min(along[0], along[1]) > -1e-6 &&
			    std::max(along[0], along[1]) < 1 + 1e-6) {
				least = far;
				nearest = met;
			}
		}
		return nearest;
	}

	void add_doorway(const Element &e, const std::string &room)
	{
		const Wall &wall = walls.at(e.get("wall"));
		Point d = wall.chord.b - wall.chord.a, along = d * (1 / norm(d));
		Point out = wall.into * -1;
		double from = length(e, "from", 0), wide = length(e, "width", 0);
		std::string stop = e.get("stop", "middle"), to = e.get("to");
		double share = stop == "near" ? 0 : stop == "far" ? 1 : 0.5;
		Segment opening = {wall.chord.a + along * from,
		                   wall.chord.a + along * (from + wide)};
		if (to.empty()) {
			Point deep = out * (length(e, "deep", 0) * share);
			plan.recesses[room].push_back(
				{opening, {opening.a + deep, opening.b + deep}, false});
			return;
		}
		Segment far = facing(opening, out, to);
		if (is_one_lay(room, to)) {
			plan.recesses[room].push_back({opening, far, true});
			plan.recesses[to].push_back({far, far, true});
			if (e.get("joint", "no") == "yes")
				plan.doorway_joints[e.get("id")] = {opening, far, true};
			return;
		}
		Segment end = {opening.a + (far.a - opening.a) * share,
		               opening.b + (far.b - opening.b) * share};
		plan.recesses[room].push_back({opening, end, false});
		plan.recesses[to].push_back({far, end, false});
	}

	// What is over and under a room of tile, as the tables name the runs it allows.
	void add_spacings(const Element &room, std::set<std::string> &spacings) const
	{
		for (const Element *slab : root.all("slab")) {
			if (slab->get("id") != room.get("slab"))
				continue;
			std::string own = slab->get("exposure", "indoor");
			std::string exposure = room.get("exposure", own);
			if (exposure == "sunlit" || exposure == "wet")
				spacings.insert("sunlit");
			if (exposure == "outdoor")
				spacings.insert("outdoor");
			if (slab->get("support") == "suspended")
				spacings.insert("suspended");
			if (room.get("heated", slab->get("heated")) == "yes")
				spacings.insert("heated");
		}
		for (const Element *e : root.all("membrane"))
			if (e->get("kind") == "mortar-bed" &&
			    set_of(e->get("rooms")).count(room.get("id")))
				spacings.insert("mortar-bed");
	}

	PlanLay lay_of(const Element &e) const
	{
		PlanLay lay;
		lay.rooms = set_of(e.get("rooms"));
		lay.spacings = {"indoor"};
		for (const Element *room : root.all("room"))
			if (lay.rooms.count(room->get("id")))
				add_spacings(*room, lay.spacings);
		lay.joint = length(e, "joint", 0);
		lay.gap = length(e, "gap", plan.inches ? 6.35 : 6);
		lay.gap_max = length(e, "gap-max", plan.inches ? 12.7 : 12);
		for (const std::string &id : words(e.get("tile"))) {
			const PlanTile &tile = plan.tiles.at(id);
			lay.tile_width = std::max(lay.tile_width, std::min(tile.wide, tile.tall));
			lay.tile_long = std::max(lay.tile_long, std::max(tile.wide, tile.tall));
		}
		return lay;
	}
};

Point pair_of(const std::string &text)
{
	size_t comma = text.find(',');
	if (comma == std::string::npos)
		throw std::runtime_error("no point: '" + text + "'");
	return {number_of(text.substr(0, comma)), number_of(text.substr(comma + 1))};
}

Line points_of(const std::string &text)
{
	Line line;
	for (const std::string &word : words(text))
		line.push_back(pair_of(word));
	return line;
}

Shape shape_of(const Element &e)
{
	Shape shape;
	for (const Element &child : e.children)
		if (child.name == "outline" || child.name == "hole") {
			Ring ring = points_of(child.text);
			if (ring.size() < 3)
				throw std::runtime_error(e.name + " " + e.get("id") +
				                         ": outline of fewer than 3 points");
			shape.push_back(turned(ring, child.name == "outline"));
		}
	return shape;
}

Field field_of(const Element &e, const Plan &plan)
{
	Field field;
	field.lay = e.get("lay");
	field.rooms = set_of(e.get("rooms"));
	field.area = e.number("area") * 1e6;
	if (!plan.lays.count(field.lay))
		throw std::runtime_error("the plan has no lay " + field.lay);
	for (const Element *grid : e.all("grid")) {
		double angle = grid->number("angle") * M_PI / 180;
		field.u = {std::cos(angle), std::sin(angle)};
		field.a = pair_of(grid->get("a"));
		field.b = pair_of(grid->get("b"));
		for (const Element *face : grid->all("face")) {
			field.faces.push_back(turned(points_of(face->text), true));
			field.face_tiles.push_back(face->get("tile"));
			field.cells.push_back(
				grown(field.faces.back(), plan.lays.at(field.lay).joint / 2));
		}
	}
	for (const Element *p : e.all("panel")) {
		Panel panel;
		panel.id = p->get("id");
		panel.at = {p->number("x"), p->number("y")};
		panel.area = p->number("area") * 1e6;
		panel.shape = shape_of(*p);
		panel.border = segments_of(panel.shape);
		panel.box = box_of(panel.shape);
		field.panels.push_back(panel);
	}
	for (const Element *tiles : e.all("tiles"))
		field.tiles = tiles;
	if (field.faces.empty() || field.panels.empty() || !field.tiles)
		throw std::runtime_error("field of " + field.lay + " lacks grid, panel or tiles");
	return field;
}

Strip strip_of(const Element &e)
{
	Strip strip{e.get("id"), set_of(e.get("crack")), e.number("area") * 1e6, shape_of(e), {}};
	for (const Element *piece : e.all("piece"))
		strip.pieces.push_back(
			{shape_of(*piece), piece->number("length"), piece->number("wide")});
	return strip;
}

Joint joint_of(const Element &e)
{
	Joint joint;
	joint.id = e.get("id"), joint.kind = e.get("kind");
	joint.of = e.get("of"), joint.side = e.get("side");
	joint.is_cut = e.get("on") == "cut";
	joint.width = e.number("width"), joint.length = e.number("length");
	joint.turns = e.has("turns") ? e.number("turns") : 0;
	joint.cost = e.has("cost") ? e.number("cost") : 0;
	for (const Element *line : e.all("line"))
		joint.line = points_of(line->text);
	return joint;
}

} // namespace

Plan read_plan(const std::string &path)
{
	return PlanReader(parse_file(path)).read();
}

Record read_record(const std::string &path, const Plan &plan)
{
	Record record;
	record.root = parse_file(path);
	const Element &root = record.root;
	for (const Element *e : root.all("room"))
		record.rooms.push_back({e->get("id"), e->number("area") * 1e6, shape_of(*e)});
	for (const Element *e : root.all("crack")) {
		Crack crack{e->get("id"), e->get("state"), e->get("group"), {}};
		for (const Element *line : e->all("line"))
			crack.runs.push_back(points_of(line->text));
		record.cracks.push_back(crack);
	}
	for (const Element *e : root.all("field"))
		record.fields.push_back(field_of(*e, plan));
	for (const Element *e : root.all("strip"))
		record.strips.push_back(strip_of(*e));
	for (const Element *e : root.all("hold"))
		record.holds.push_back({e->get("id"), set_of(e->get("crack")),
		                        e->number("area") * 1e6, shape_of(*e)});
	for (const Element *e : root.all("joint"))
		record.joints.push_back(joint_of(*e));
	for (const Element *e : root.all("control"))
		record.controls.push_back(
			{e->get("id"),
		         e->get("room"),
		         {{e->number("x1"), e->number("y1")}, {e->number("x2"), e->number("y2")}}});
	for (const Element *e : root.all("first"))
		record.firsts.push_back({e->get("room"), {e->number("x"), e->number("y")}});
	for (const Element *e : root.all("cover"))
		if (e->get("scope") == "full")
			record.full_covers.push_back(shape_of(*e));
	return record;
}
