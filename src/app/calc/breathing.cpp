#include "app/calc/calculation.h"
#include "trade/concentration.h"
#include "trade/exposure.h"
#include "trade/protection.h"

namespace jambline::app {

namespace {
// Limits as the shop entered them.
trade::Exposure exposure_example() {
  using trade::LimitKind;
  return {{{"toluene", 62, 0, 1.5},
           {"toluene", 118, 1.5, 1.75},
           {"toluene", 35, 1.75, 7.5},
           {"xylene", 21, 0, 7.5}},
          {{"toluene", LimitKind::EightHours, 200, "ppm", "OSHA", 1971},
           {"toluene", LimitKind::Ceiling, 300, "ppm", "OSHA", 1971},
           {"toluene", LimitKind::FifteenMinutes, 150, "ppm", "NIOSH", 2007},
           {"xylene", LimitKind::EightHours, 100, "ppm", "OSHA", 1971}}};
}

trade::Concentration concentration_example() {
  trade::Concentration out;
  out.ppm = 0.005;
  out.molar_mass_g = 168.2;
  return out;
}

trade::MaximumUse use_example() {
  using trade::FactorScheme;
  return {50, FactorScheme::Us, 0.005, "ppm", "NIOSH", 2007, FactorScheme::Us, {}, {}};
}

trade::FitTest fit_test_example() {
  return {{812, 640, 705, 590, 733, 668, 701}, trade::Facepiece::Full, 210, 365};
}

trade::Cartridge cartridge_example() {
  return {16, "maker's service life at 50 ppm, 70 % humidity, 2024", {2.5, 3.25, 1.75, 4}};
}
}  // namespace

std::vector<Calculation> breathing_calculations() {
  return {
      calculation<&trade::compare_exposure, &exposure_example>(
          "exposure", "samples against limits: 8 hours, 15 minutes, ceiling, mixture"),
      calculation<&trade::convert_concentration, &concentration_example>(
          "concentration", "ppm to mg/m3 and back at the real temperature and pressure"),
      calculation<&trade::maximum_use, &use_example>("maximum-use",
                                                     "what a respirator may be used up to"),
      calculation<&trade::fit_test, &fit_test_example>("fit-test",
                                                       "overall fit factor and when it is due"),
      calculation<&trade::cartridge_left, &cartridge_example>("cartridge",
                                                              "hours left of a change schedule"),
  };
}

}  // namespace jambline::app
