// job/check_in.h: the state in which a car came, and a signature on glass.
//
// Shape: a signature is its strokes in parts of the width of the box that it was written in, y
// down.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"

namespace jambline::job {

enum class OdometerUnit : std::uint8_t { Miles, Kilometers };

struct CheckIn {
  std::optional<int> odometer = {};
  OdometerUnit unit{};
  std::optional<int> fuel_percent = {};  // or charge
  int keys = 0;
  std::string warning_lamps;
  std::string old_damage;
  std::string state_of_pack;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "odometer", .min = 0, .max = 9999999}, self.odometer);
    visit(Field{.name = "unit"}, self.unit);
    visit(Field{.name = "fuel_percent", .unit = "%", .doc = "or charge", .min = 0, .max = 100},
          self.fuel_percent);
    visit(Field{.name = "keys", .min = 0, .max = 20}, self.keys);
    visit(Field{.name = "warning_lamps", .doc = "lit when it came; empty: none"},
          self.warning_lamps);
    visit(Field{.name = "old_damage", .doc = "not of this job"}, self.old_damage);
    visit(Field{.name = "state_of_pack", .doc = "of a hybrid or electric car, as found"},
          self.state_of_pack);
  }
  friend bool operator==(const CheckIn&, const CheckIn&) = default;
};

enum class SignedFor : std::uint8_t { CheckIn, Delivery };

struct StrokePoint {
  double x{};
  double y{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "x", .min = 0, .max = 1}, self.x);
    visit(Field{.name = "y", .min = 0, .max = 1}, self.y);
  }
  friend bool operator==(const StrokePoint&, const StrokePoint&) = default;
};
struct Stroke {
  std::vector<StrokePoint> points;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "points"}, self.points);
  }
  friend bool operator==(const Stroke&, const Stroke&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::OdometerUnit> =
    std::to_array<std::string_view>({"mi", "km"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::SignedFor> =
    std::to_array<std::string_view>({"check-in", "delivery"});
