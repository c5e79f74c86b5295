// recount.cpp - recomputes a placed floor from its own record, apart from the program that
// wrote it: tile by tile, strip by strip, joint by joint.
//   recount PLAN.xml RECORD.xml [--penalty MM | --rules FILE]
// Prints one line a check, `ok NAME: figures` or `FAIL NAME: figures`; 1 when any failed or
// nothing was compared, 2 when a file could not be read as what it should be.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <set>
#include <sstream>
#include <stdexcept>

#include "network.hpp"

void Report::check(bool ok, const char *name, const char *format, ...)
{
	checks++;
	failed += !ok;
	std::printf("%s %s: ", ok ? "ok" : "FAIL", name);
	va_list args;
	va_start(args, format);
	std::vprintf(format, args);
	va_end(args);
	std::printf("\n");
}

namespace
{

const char *const RULES = "src/rules/us.rules";
const char *const PENALTY = "soft-turn-penalty";

// A figure of a rule table, in the plan's units: `figure field-spacing-indoor = 25 ft or 7.6 m`.
double figure_from(const std::string &path, const std::string &name, bool inches)
{
	const std::string start = "figure " + name + " =";
	std::ifstream file(path);
	for (std::string line; std::getline(file, line);) {
		if (line.rfind(start, 0) != 0)
			continue;
		std::string figure = line.substr(start.size());
		if (size_t either = figure.find(" or "); either != std::string::npos)
			figure = inches ? figure.substr(0, either) : figure.substr(either + 4);
		std::string all;
		for (const std::string &part : words(figure))
			all += part;
		return length_of(all, "mm");
	}
	throw std::runtime_error(path + ": no figure " + name);
}

double longest_run_allowed(const Plan &plan, const PlanLay &lay)
{
	double limit = 1e300;
	for (const std::string &name : lay.spacings)
		limit = std::min(limit,
		                 figure_from(plan.rules, "field-spacing-" + name, plan.inches));
	return limit;
}

// At least as wide as a tile joint.
double line_width(const Plan &plan, const PlanLay &lay)
{
	double width = figure_from(plan.rules, "carried-width-indoor", plan.inches);
	if (lay.spacings.count("outdoor"))
		width = std::max(width,
		                 figure_from(plan.rules, "field-width-outdoor", plan.inches));
	return std::max(width, lay.joint);
}

void collect_ids(const Element &e, std::set<std::string> &ids, int &twice, int &bad)
{
	if (e.has("id") && !ids.insert(e.get("id")).second) {
		std::printf("     id %s twice\n", e.get("id").c_str());
		twice++;
	}
	for (const auto &[key, value] : e.attributes)
		for (const std::string &word : words(value))
			bad += word == "nan" || word == "-nan" || word == "inf" || word == "-inf";
	for (const Element &child : e.children)
		collect_ids(child, ids, twice, bad);
}

void check_document(const Record &record, Report &report)
{
	std::set<std::string> ids;
	int twice = 0, bad = 0;
	collect_ids(record.root, ids, twice, bad);
	report.check(record.root.name == "placed" && record.root.get("version") == "1" && bad == 0,
	             "document", "root %s version %s, %d numbers that are none",
	             record.root.name.c_str(), record.root.get("version").c_str(), bad);
	report.check(twice == 0, "ids", "%zu ids, %d twice", ids.size(), twice);
	for (const Room &room : record.rooms) {
		double area = area_of(room.shape);
		report.check(std::fabs(area - room.area) <= 1, "room-area",
		             "room %s: %.3f mm2, recorded %.3f", room.id.c_str(), area, room.area);
	}
	report.check(!record.fields.empty(), "fields", "%zu", record.fields.size());
}

size_t count_placed(const Record &record)
{
	return record.strips.size() + record.holds.size() + record.joints.size() +
	       record.full_covers.size();
}

int recount(const std::string &plan_path, const std::string &record_path, double penalty)
{
	Plan plan = read_plan(plan_path);
	Record record = read_record(record_path, plan);
	Report report;
	check_document(record, report);
	for (const auto &[id, crack] : plan.cracks) {
		bool found = false;
		for (const Crack &own : record.cracks)
			found = found || own.id == id;
		report.check(found, "crack-recorded", "crack %s", id.c_str());
	}
	size_t at_home = 0;
	for (const Field &field : record.fields) {
		const PlanLay &lay = plan.lays.at(field.lay);
		Record own = record_of_lay(record, ground_of(record, plan, lay));
		at_home += count_placed(own);
		check_cells(plan, field, report);
		Tiling tiling = tile_field(own, plan, field, report);
		check_counts(field, tiling, report);
		Floor floor{own, plan, field, tiling, lay, line_width(plan, lay)};
		check_field(floor, report);
		check_doorways(floor, report);
		check_field_joints(floor, longest_run_allowed(plan, floor.lay), report);
		check_controls(floor, report);
		check_cracks(floor, report);
		check_strips(floor, report);
		check_holds(floor, report);
		check_carried(floor, report);
		check_soft(floor, penalty, report);
		check_questions(floor, report);
	}
	report.check(at_home == count_placed(record), "home",
	             "%zu strips, holds, joints and covers, %zu on the ground of one lay",
	             count_placed(record), at_home);
	std::printf("%s: %d checks, %d failed, %ld cases compared, with %s\n", record_path.c_str(),
	            report.checks, report.failed, report.cases, library_name());
	return report.failed > 0 || report.cases == 0 ? 1 : 0;
}

} // namespace

int main(int count, char **arguments)
{
	std::vector<std::string> paths;
	std::string rules = RULES, penalty;
	for (int i = 1; i < count; i++) {
		std::string word = arguments[i];
		if (word == "--penalty" && i + 1 < count)
			penalty = arguments[++i];
		else if (word == "--rules" && i + 1 < count)
			rules = arguments[++i];
		else
			paths.push_back(word);
	}
	try {
		if (paths.size() != 2)
			throw std::runtime_error(
				"usage: recount PLAN.xml RECORD.xml [--penalty MM | --rules FILE]");
		return recount(paths[0], paths[1],
		               penalty.empty() ? figure_from(rules, PENALTY, false)
		                               : number_of(penalty));
	} catch (const std::exception &error) {
		std::printf("FAIL read: %s\n", error.what());
		return 2;
	}
}
