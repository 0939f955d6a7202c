// screens/units.h: stored numbers as people read them. The only place where units are converted.
//
// Rules: stored in one fine unit, rounded only here; true minus; a space before the unit; "1.4" and
//        "1,4" are both read. Times in the shop's zone; today without a date ("16:30"), within a
//        week "Tue 15:40", else "Nov 24". Durations: "14 min", "2 h 10 min"; hours of work "0.1 h".
#pragma once

#include <QString>
#include <cstdint>
#include <optional>

namespace jambline::screens {

enum class Units : std::uint8_t { Metric, Us };

QString length_words(double mm, Units units);  // "300 mm" / "12 in"
QString area_words(double mm2, Units units);   // "1.0 m²" / "11 ft²"
QString hours_words(std::int64_t ms);          // "0.1 h" (tenths, half up)
QString duration_words(std::int64_t ms);       // "14 min"
QString running_words(std::int64_t ms);        // "0:06:41"
QString time_words(std::int64_t wall_ms, std::int64_t now_ms, const QString& zone);
QString clock_words(std::int64_t wall_ms, const QString& zone);  // "16:30" always
QString day_words(std::int64_t wall_ms, const QString& zone);    // "Tue Nov 24"
QString temperature_words(double celsius, Units units);          // "41 °C" / "106 °F", whole
QString temperature_step_words(double celsius, Units units);     // a difference: "5 °C" / "9 °F"
QString temperature_unit(Units units);                           // "°C"
double temperature_shown(double celsius, Units units);
double celsius_of(double shown, Units units);
std::optional<double> typed_number(const QString& text);

}  // namespace jambline::screens
