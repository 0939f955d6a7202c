// screens/forecast_words.h: the words for when a car will be ready, and for what holds it.
//
// Rules:   a likely time is a whole quarter of an hour, rounded up: nobody knows the minute. A
//          chance is a count ("4 in 10"), never 0 and never all; without a date for what holds the
//          car there is none. What cannot be on time any more says how late it will be at best.
// Units:   wall times in ms, told in the shop's zone.
// Threads: any.
#pragma once

#include <QString>
#include <cstdint>
#include <optional>

#include "screens/floor_forecasts.h"

namespace jambline::screens {

enum class Outlook : std::uint8_t { Plain, Careful, Trouble };

struct ForecastWords {
  QString chance;   // "4 in 10", "1 h late", "no date"; "" there is nothing to say
  QString about;    // of the chance: "on time", "at best"
  QString percent;  // "41 %"; "" no chance was drawn
  QString likely;   // "Fri 14:45"
  QString earliest;
  QString span;        // "likely Fri 14:45, earliest 11:00"; "" nobody can say
  QString holds;       // "waits for left lamp, Fri 12:00", "7.4 h of work left"
  QString slack;       // "2 h to spare", "45 min short"
  bool waits = false;  // holds is something that is waited for
  Outlook outlook = Outlook::Plain;
};

ForecastWords words_of(const FloorForecasts::Known& known, std::int64_t now_ms,
                       const QString& zone);
QString words_of(const folds::HoldView& hold, std::int64_t now_ms, const QString& zone);
QString late_words(std::int64_t ms);               // "1 h late", "2 days late"
QString on_time_words(double percent);             // "4 in 10", "over 19 in 20"
std::int64_t whole_quarter(std::int64_t wall_ms);  // the next one, or this

}  // namespace jambline::screens
