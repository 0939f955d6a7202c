// trade/concentration.h: parts per million and milligrams per cubic meter, at the real temperature
// and pressure.
//
// Formula: mg/m3 = ppm x molar mass / molar volume; molar volume = R T / p of an ideal gas, 24.45
//          L/mol at 25 C and 101.325 kPa (what US limits rest on; European ones use 20 C). The
//          printed pairs of a list of limits are rounded: a limit keeps its own unit.
// Shape:   one of the two is given, the other comes out.
// Errors:  OutOfRange (a temperature under absolute zero), Missing (neither), Malformed (both).
// Threads: pure.
#pragma once

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

struct Concentration {
  std::optional<double> ppm;
  std::optional<double> mg_m3;
  double molar_mass_g{};
  double air_c = 25;
  double pressure_kpa = 101.325;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "ppm", .unit = "ppm", .min = 0, .max = 1e6}, self.ppm);
    visit(Field{.name = "mg_m3", .unit = "mg/m3", .min = 0, .max = 1e9}, self.mg_m3);
    visit(Field{.name = "molar_mass_g", .unit = "g/mol", .min = 1, .max = 1e5}, self.molar_mass_g);
    visit(Field{.name = "air_c", .unit = "C", .min = -100, .max = 500}, self.air_c);
    visit(Field{.name = "pressure_kpa", .unit = "kPa", .min = 10, .max = 1000}, self.pressure_kpa);
  }
};

struct ConcentrationResult {
  double ppm{};
  double mg_m3{};
  double molar_volume_l{};
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "ppm", .unit = "ppm"}, self.ppm);
    visit(Field{.name = "mg_m3", .unit = "mg/m3"}, self.mg_m3);
    visit(Field{.name = "molar_volume_l", .unit = "L/mol"}, self.molar_volume_l);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ConcentrationResult> convert_concentration(const Concentration& concentration);

}  // namespace jambline::trade
