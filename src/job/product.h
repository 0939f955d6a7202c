// job/product.h: what a shop typed from a product's sheet, once, and what was done with it.
//
// Shape:   times at temperatures for each milestone, gates and windows; the sheet always wins. No
//          product is shipped. A product named as activated holds isocyanate hardener.
// Groups:  panels that are about as warm as each other: low panels lag the roof in a bake, plastic
//          differs from metal.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "job/car.h"
#include "trade/cure_clock.h"

namespace jambline::job {

enum class ProductKind : std::uint8_t {
  Primer,
  Base,
  Clear,
  SingleStage,
  PanelAdhesive,
  GlassUrethane
};
enum class PanelGroup : std::uint8_t { Roof, Sides, Low, Plastic };

PanelGroup group_of(Panel panel, trade::Substrate substrate);

// A maker's table for one airbag and belt case.
struct DriveAwayCase {
  std::string case_name;
  std::vector<trade::DriveAwayRow> rows;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "case_name", .doc = "airbag and belt case, in the maker's words"},
          self.case_name);
    visit(Field{.name = "rows"}, self.rows);
  }
  friend bool operator==(const DriveAwayCase&, const DriveAwayCase&) = default;
};

struct Product {
  std::string product_name;
  ProductKind kind{};
  bool activated{};
  trade::CureKind cure{};
  std::vector<trade::CureStep> steps;
  std::optional<double> minimum_c = {};
  double surface_max_c = 30;
  double rest_after_bake_min = 60;
  double heavy_factor = 3;
  std::optional<double> air_min_c = {};
  std::optional<double> air_max_c = {};
  std::optional<double> humidity_min_percent = {};
  std::optional<double> humidity_max_percent = {};
  std::vector<DriveAwayCase> drive_away;
  bool retired{};
  std::optional<double> wax_wait_days = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "product_name"}, self.product_name);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "activated", .doc = "holds isocyanate hardener"}, self.activated);
    visit(Field{.name = "cure"}, self.cure);
    visit(Field{.name = "steps", .doc = "what the sheet says, minutes at a temperature"},
          self.steps);
    visit(Field{.name = "minimum_c",
                .unit = "C",
                .doc = "colder than this it does not cure",
                .min = -20,
                .max = 60},
          self.minimum_c);
    visit(
        Field{
            .name = "surface_max_c", .unit = "C", .doc = "to touch the film", .min = 10, .max = 60},
        self.surface_max_c);
    visit(Field{.name = "rest_after_bake_min", .unit = "min", .min = 0, .max = 10000},
          self.rest_after_bake_min);
    visit(Field{.name = "heavy_factor",
                .doc = "on the rest, for a run or a heavy film",
                .min = 1,
                .max = 10},
          self.heavy_factor);
    visit(Field{.name = "air_min_c", .unit = "C", .min = -45, .max = 60}, self.air_min_c);
    visit(Field{.name = "air_max_c", .unit = "C", .min = -45, .max = 60}, self.air_max_c);
    visit(Field{.name = "humidity_min_percent", .unit = "%", .min = 0, .max = 100},
          self.humidity_min_percent);
    visit(Field{.name = "humidity_max_percent", .unit = "%", .min = 0, .max = 100},
          self.humidity_max_percent);
    visit(Field{.name = "drive_away", .doc = "of a glass urethane"}, self.drive_away);
    visit(Field{.name = "retired"}, self.retired);
    visit(Field{.name = "wax_wait_days",
                .unit = "d",
                .doc = "before wax, sealant, coating or wrap; absent: not on the sheet",
                .min = 0,
                .max = 365},
          self.wax_wait_days);
  }
  friend bool operator==(const Product&, const Product&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::ProductKind> =
    std::to_array<std::string_view>({"primer", "base", "clear", "single stage", "panel adhesive",
                                     "glass urethane"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::PanelGroup> =
    std::to_array<std::string_view>({"roof and hood", "sides", "rockers and low sides",
                                     "plastic covers"});
