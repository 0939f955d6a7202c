// screens/rate_units.h: rates per area and days as people read them; beside units.h the only place
// where they are converted.
//
// Rules: stored per m2; shown with one decimal per m2, with two per ft2. Days since 1970-01-01 in
//        the shop's zone, with parts. A date says its year when it is not this one.
#pragma once

#include "screens/units.h"

namespace jambline::screens {

double per_area(double per_m2, Units units);      // the number that is shown
QString area_unit(Units units);                   // "m²" / "ft²"
QString rate_number(double per_m2, Units units);  // "2.1" / "0.20"
QString rate_words(double per_m2, Units units);   // "2.1 per m²" / "0.20 per ft²"
double local_days(std::int64_t wall_ms, const QString& zone);
QString date_words(std::int64_t wall_ms, std::int64_t now_ms, const QString& zone);  // "May 12"

}  // namespace jambline::screens
