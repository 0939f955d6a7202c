// screens/dirt_words.h: the sentences of "dirt over time".
//
// Rules: an event is said by its date and what was done; a change is never said to come from it.
//        Ratios with two digits that count.
#pragma once

#include <QStringList>

#include "screens/dirt_numbers.h"
#include "screens/units.h"

namespace jambline::screens {

struct DirtSaying {
  Units units{};
  QString zone;
  std::int64_t now_ms{};
};

QString cars_words(int cars);                   // "1 car", "31 cars"
QString times_words(double ratio);              // "0.62"
QString look_words(trade::ChartSignal look);    // "above the limit"; "" for none
QString look_meaning(trade::ChartSignal look);  // one line that explains it

QString answer_words(const DirtNumbers& numbers, const DirtSaying& saying);
QString rests_on_words(const DirtNumbers& numbers, const DirtSaying& saying);
QString car_words(const DirtCar& car, const DirtSaying& saying);  // nibs, area, rate, limits, sign
QString limits_words(const DirtCar& car, const DirtSaying& saying);

QString event_title(const DirtChange& event,
                    const DirtSaying& saying);  // "Filters changed, May 12"
QString event_state(const DirtChange& event);   // "less dirt", "too early to say"
QString event_words(const DirtChange& event);   // ratio, interval, cars before and after
QString event_details(const DirtChange& event, int events);  // chances before and after correction
QString painter_words(const DirtPainter& painter, const DirtSaying& saying);

}  // namespace jambline::screens
