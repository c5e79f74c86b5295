// library.cpp - the clip of one face by Boost.Geometry, to hold against the checker's own.
// Its rescaling of coordinates to whole numbers is switched off: it moves corners by 5e-5 mm.
#define BOOST_GEOMETRY_NO_ROBUSTNESS
#define BOOST_ALLOW_DEPRECATED_HEADERS
#pragma GCC diagnostic ignored "-Wmaybe-uninitialized" // of its own
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/version.hpp>

#include "tiles.hpp"

namespace bg = boost::geometry;
using LibraryPoint = bg::model::d2::point_xy<double>;
using LibraryPolygon = bg::model::polygon<LibraryPoint>;
using LibraryRegion = bg::model::multi_polygon<LibraryPolygon>;

static LibraryRegion region_of(const Shape &shape)
{
	LibraryRegion region;
	for (const Ring &ring : shape) {
		bg::model::ring<LibraryPoint> points;
		for (Point p : ring)
			points.push_back({p.x, p.y});
		if (signed_area(ring) > 0 || region.empty()) {
			region.emplace_back();
			region.back().outer() = points;
		} else {
			region.back().inners().push_back(points);
		}
	}
	bg::correct(region);
	return region;
}

Clip library_clip(const Ring &convex, const Shape &shape)
{
	LibraryRegion result;
	bg::intersection(region_of({convex}), region_of(shape), result);
	Clip clip{bg::area(result), 0};
	for (const LibraryPolygon &part : result)
		clip.parts += bg::area(part) > 1e-4; // dust of its own rounding is no part
	return clip;
}

const char *library_name()
{
	return "Boost.Geometry " BOOST_LIB_VERSION;
}
