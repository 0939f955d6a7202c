// folds/set_glass.h: glass that was bonded into a car, with the coldest and driest air that was
// logged since: what the maker's drive-away table is asked with.
//
// Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/car_air_view.h"

namespace jambline::folds {

struct SetGlass {
  BondId bond;
  ProductId product;
  std::string what;
  std::string case_name;
  Stamp at{};
  std::int64_t set_before_ms{};  // how long before it was tapped
  std::optional<double> coldest_c = {};
  std::optional<double> driest_percent = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "bond"}, self.bond);
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "case_name"}, self.case_name);
    visit(Field{.name = "at"}, self.at);
    visit(Field{.name = "set_before_ms", .unit = "ms"}, self.set_before_ms);
    visit(Field{.name = "coldest_c", .unit = "C"}, self.coldest_c);
    visit(Field{.name = "driest_percent", .unit = "%"}, self.driest_percent);
  }
  // Without the order, which is not kept on the shelf.
  friend bool operator==(const SetGlass& a, const SetGlass& b) {
    return a.bond == b.bond && a.product == b.product && a.what == b.what &&
           a.case_name == b.case_name && a.at.wall_ms == b.at.wall_ms && a.at.boot == b.at.boot &&
           a.at.since_boot_ms == b.at.since_boot_ms && a.set_before_ms == b.set_before_ms &&
           a.coldest_c == b.coldest_c && a.driest_percent == b.driest_percent;
  }
};

// A bond of a car, glass or not, with the air since.
SetGlass set_glass(const BondView& bond, const CarAirView& air);
// All glass of a car: what was bonded by an airbag and belt case.
std::vector<SetGlass> glass_of(const CarAirView& air);

}  // namespace jambline::folds
