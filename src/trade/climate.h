// trade/climate.h: may it be sprayed in this air, on this surface? Dew point, margin and gates.
//
// Source:  Magnus form of the WMO (CIMO guide, annex 4.B: 17.62, 243.12 C; its year 2008 from
//          memory) from -45 to 60 C; margin of 3 C (common practice; the form of ISO 8502-4);
//          other gates are common practice, no source, unless the product's sheet gives its own.
// Promise: "go" only when every gate is passed; a margin on its own is necessary, never enough. It
//          says nothing on health.
// Errors:  OutOfRange, naming the field: temperatures outside -45..60 C, humidity outside 0..100
//          (0 has no dew point), a window whose low is over its high.
// Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

double dew_point_c(double air_c, double humidity_percent);
double vapor_g_m3(double air_c, double humidity_percent);

enum class ClimateGate : std::uint8_t { DewMargin, Surface, SurfaceNearAir, Air, Humidity };

struct Climate {
  double air_c{};
  double surface_c{};
  double humidity_percent{};
  double dew_margin_min_c = 3;
  double surface_min_c = 15;
  double surface_from_air_max_c = 5;
  std::optional<double> air_min_c;  // the sheet's window
  std::optional<double> air_max_c;
  std::optional<double> humidity_min_percent;
  std::optional<double> humidity_max_percent;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    constexpr double low = -45, high = 60;
    visit(Field{.name = "air_c", .unit = "C", .min = low, .max = high}, self.air_c);
    visit(Field{.name = "surface_c", .unit = "C", .doc = "of the panel", .min = low, .max = high},
          self.surface_c);
    visit(Field{.name = "humidity_percent", .unit = "%", .doc = "relative", .min = 0.1, .max = 100},
          self.humidity_percent);
    visit(Field{.name = "dew_margin_min_c", .unit = "C", .min = 0, .max = 20},
          self.dew_margin_min_c);
    visit(Field{.name = "surface_min_c", .unit = "C", .min = low, .max = high}, self.surface_min_c);
    visit(Field{.name = "surface_from_air_max_c", .unit = "C", .min = 0, .max = 40},
          self.surface_from_air_max_c);
    visit(Field{.name = "air_min_c",
                .unit = "C",
                .doc = "of the product's sheet",
                .min = low,
                .max = high},
          self.air_min_c);
    visit(Field{.name = "air_max_c", .unit = "C", .min = low, .max = high}, self.air_max_c);
    visit(Field{.name = "humidity_min_percent", .unit = "%", .min = 0, .max = 100},
          self.humidity_min_percent);
    visit(Field{.name = "humidity_max_percent", .unit = "%", .min = 0, .max = 100},
          self.humidity_max_percent);
  }
};

struct ClimateCheck {
  ClimateGate gate{};
  bool passes = false;
  double value{};
  std::optional<double> low;
  std::optional<double> high;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "gate"}, self.gate);
    visit(Field{.name = "passes"}, self.passes);
    visit(Field{.name = "value"}, self.value);
    visit(Field{.name = "low"}, self.low);
    visit(Field{.name = "high"}, self.high);
  }
};

struct ClimateResult {
  bool go = false;
  double dew_point_c{};
  double dew_margin_c{};
  double vapor_g_m3{};
  std::vector<ClimateCheck> checks;  // every gate, in the order of ClimateGate
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "go"}, self.go);
    visit(Field{.name = "dew_point_c", .unit = "C"}, self.dew_point_c);
    visit(Field{.name = "dew_margin_c", .unit = "C"}, self.dew_margin_c);
    visit(Field{.name = "vapor_g_m3", .unit = "g/m3"}, self.vapor_g_m3);
    visit(Field{.name = "checks"}, self.checks);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ClimateResult> check_climate(const Climate& climate);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::ClimateGate> =
    std::to_array<std::string_view>({"dew margin", "surface", "surface near air", "air",
                                     "humidity"});
