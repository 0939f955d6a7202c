#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "trade/geometry.h"

namespace jambline::trade {
namespace {

double coordinate() {
  return *rc::gen::inRange(-600'000, 600'000) / 100.0;
}
Point_mm point() {
  return {coordinate(), coordinate()};
}

RC_GTEST_PROP(GeometryProperty, APlacementGivesEveryPointBack, ()) {
  const Placement place{*rc::gen::arbitrary<bool>(), *rc::gen::inRange(-9, 9),
                        *rc::gen::element(0.0, 0.0, 12.5, -77.0), point()};
  const Point_mm there = point();
  RC_ASSERT(distance_mm(place.back(place.apply(there)), there) < 1e-9);
  RC_ASSERT(distance_mm(place.apply(place.back(there)), there) < 1e-9);
}

RC_GTEST_PROP(GeometryProperty, APlacementKeepsDistancesAndAreas, ()) {
  const Placement place{*rc::gen::arbitrary<bool>(), *rc::gen::inRange(-9, 9),
                        *rc::gen::element(0.0, 31.0), point()};
  const Point_mm a = point();
  const Point_mm b = point();
  const Point_mm c = point();
  RC_ASSERT(std::abs(distance_mm(place.apply(a), place.apply(b)) - distance_mm(a, b)) < 1e-6);
  const double sign = place.mirrored ? -1 : 1;
  RC_ASSERT(std::abs(signed_area_mm2(place.apply(Polygon{{a, b, c}})) -
                     sign * signed_area_mm2({{a, b, c}})) < 1e-2);
}

// A point of a triangle is where all three small triangles add up to the large one.
RC_GTEST_PROP(GeometryProperty, InsideAgreesWithAreasOfTriangles, ()) {
  const Polygon triangle{{point(), point(), point()}};
  const Point_mm p = point();
  const auto& c = triangle.corners;
  const double whole = area_mm2(triangle);
  const double parts =
      area_mm2({{p, c[0], c[1]}}) + area_mm2({{p, c[1], c[2]}}) + area_mm2({{p, c[2], c[0]}});
  RC_PRE(std::abs(parts - whole) > 1 || parts - whole < 1e-3);
  RC_ASSERT(contains(triangle, p) == (parts - whole < 1e-3));
}

}  // namespace
}  // namespace jambline::trade
