// screens/air_units.h: velocity, pressure, exhaust and volume as people read and type them; beside
// units.h, rate_units.h and temperature_units.h the only place where they are converted.
//
// Shape:   stored in m/s, Pa, m3/h and m3; shown metric as such, US in ft/min, in. w.c., ft3/min
//          and ft3. Minutes are minutes in both.
// Source:  factors of NIST Special Publication 811 (2008), appendix B: foot 0.3048 m exactly, inch
//          of water, conventional, 249.0889 Pa.
// Pure.
#pragma once

#include "screens/units.h"

namespace jambline::screens {

enum class AirQuantity : std::uint8_t { Velocity, Pressure, Exhaust, Volume };

double shown_air(AirQuantity quantity, double stored, Units units);  // the number that is shown
double stored_air(AirQuantity quantity, double shown, Units units);  // and back
QString air_unit(AirQuantity quantity, Units units);                 // "ft/min"
int air_places(AirQuantity quantity, Units units);                   // behind the point
QString air_number(AirQuantity quantity, double stored, Units units);
QString air_words(AirQuantity quantity, double stored, Units units);  // "102 ft/min"
// A value that rounds onto its limit without being it gets one more place.
QString air_words(AirQuantity quantity, double stored, double limit, Units units);
QString minutes_seconds(double minutes);  // "5:00"

}  // namespace jambline::screens
