#include "screens/dirt_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "screens/correct_words.h"
#include "screens/rate_units.h"
#include "screens/sum_rows.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using trade::ChartSignal;

QString dirt_tr(const char* words) {
  return QCoreApplication::translate("dirt", words);
}

// "filters changed and new suits"; each only once.
QString done_words(const DirtChange& change) {
  QStringList all;
  for (const auto& done : change.change.done)
    if (const QString words = words_of(done.what); !all.contains(words)) all << words;
  if (all.size() < 2) return all.join(QString());
  const QString last = all.takeLast();
  return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 and %2"))
      .arg(all.join(dirt_tr(QT_TRANSLATE_NOOP("dirt", ", "))), last);
}

int count_of(const DirtNumbers& numbers, ChartSignal look) {
  return static_cast<int>(
      std::count_if(numbers.cars.begin(), numbers.cars.end(),
                    [&](const DirtCar& car) { return car.point.signal == look; }));
}
}  // namespace

QString cars_words(int cars) {
  return cars == 1 ? dirt_tr(QT_TRANSLATE_NOOP("dirt", "1 car"))
                   : dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 cars")).arg(QLocale().toString(cars));
}

QString times_words(double ratio) {
  if (ratio >= 99.5) return QLocale::c().toString(ratio, 'f', 0);
  QString out = QLocale::c().toString(ratio, 'g', 2);
  return out.contains(QChar('e')) ? QLocale::c().toString(ratio, 'f', 4) : out;
}

QString look_words(ChartSignal look) {
  switch (look) {
    case ChartSignal::Above:
      return dirt_tr(QT_TRANSLATE_NOOP("dirt", "above the limit"));
    case ChartSignal::Below:
      return dirt_tr(QT_TRANSLATE_NOOP("dirt", "below the limit"));
    case ChartSignal::RunAbove:
      return dirt_tr(QT_TRANSLATE_NOOP("dirt", "eight in a row above the middle"));
    case ChartSignal::RunBelow:
      return dirt_tr(QT_TRANSLATE_NOOP("dirt", "eight in a row below the middle"));
    case ChartSignal::None:
      break;
  }
  return {};
}

QString look_meaning(ChartSignal look) {
  switch (look) {
    case ChartSignal::Above:
      return dirt_tr(QT_TRANSLATE_NOOP(
          "dirt", "More dirt than 1 car in 740 has by chance. Look at this car."));
    case ChartSignal::Below:
      return dirt_tr(QT_TRANSLATE_NOOP(
          "dirt", "Less dirt than 1 car in 740 has by chance. See what went well."));
    case ChartSignal::RunAbove:
      return dirt_tr(QT_TRANSLATE_NOOP(
          "dirt", "Eight cars or more with more dirt than the middle line: something stays."));
    case ChartSignal::RunBelow:
      return dirt_tr(QT_TRANSLATE_NOOP(
          "dirt", "Eight cars or more with less dirt than the middle line: something stays."));
    case ChartSignal::None:
      break;
  }
  return dirt_tr(QT_TRANSLATE_NOOP("dirt", "One car. Between its limits nothing stands out."));
}

QString answer_words(const DirtNumbers& numbers, const DirtSaying& saying) {
  for (auto event = numbers.changes.rbegin(); event != numbers.changes.rend(); ++event) {
    if (!event->flagged()) continue;
    const QString what =
        dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 (%2)"))
            .arg(date_words(event->happened_ms(), saying.now_ms, saying.zone), done_words(*event));
    const auto& effect = *event->effect;
    if (effect.unbounded)
      return dirt_tr(QT_TRANSLATE_NOOP("dirt", "More dirt since %1: nothing was found before it."))
          .arg(what);
    if (effect.ratio <= 0)
      return dirt_tr(QT_TRANSLATE_NOOP("dirt", "Less dirt since %1: nothing was found after it."))
          .arg(what);
    return (effect.ratio < 1
                ? dirt_tr(QT_TRANSLATE_NOOP("dirt", "Less dirt since %1: %2 times as much."))
                : dirt_tr(QT_TRANSLATE_NOOP("dirt", "More dirt since %1: %2 times as much.")))
        .arg(what, times_words(effect.ratio));
  }
  const int cars = static_cast<int>(numbers.cars.size());
  if (const int above = count_of(numbers, ChartSignal::Above); above > 0)
    return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 of %2 had more dirt than its limit."))
        .arg(above)
        .arg(cars_words(cars));
  if (count_of(numbers, ChartSignal::RunAbove) > 0)
    return dirt_tr(
        QT_TRANSLATE_NOOP("dirt", "Eight cars in a row or more had more dirt than usual."));
  if (count_of(numbers, ChartSignal::RunBelow) > 0)
    return dirt_tr(
        QT_TRANSLATE_NOOP("dirt", "Eight cars in a row or more had less dirt than usual."));
  return dirt_tr(
      QT_TRANSLATE_NOOP("dirt", "Nothing stands out: it goes up and down as chance does."));
}

QString rests_on_words(const DirtNumbers& numbers, const DirtSaying& saying) {
  if (numbers.cars.empty()) return {};
  const QString usual =
      dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 with %2 sprayed, %3 nibs: %4 on average."))
          .arg(cars_words(static_cast<int>(numbers.cars.size())),
               area_words(numbers.sprayed_m2 * 1e6, saying.units),
               QLocale().toString(static_cast<qlonglong>(numbers.nibs)),
               rate_words(static_cast<double>(numbers.nibs) / numbers.sprayed_m2, saying.units));
  if (numbers.left_out == 0) return usual;
  return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 %2 not looked over to the end: left out."))
      .arg(usual, cars_words(numbers.left_out));
}

QString limits_words(const DirtCar& car, const DirtSaying& saying) {
  return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 to %2"))
      .arg(rate_number(car.point.limits.low, saying.units),
           rate_number(car.point.limits.high, saying.units));
}

QString car_words(const DirtCar& car, const DirtSaying& saying) {
  const QString nibs = car.lesson.all_over
                           ? dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 nibs or more, dirt all over"))
                       : car.lesson.nibs == 1 ? dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 nib"))
                                              : dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 nibs"));
  QString out =
      dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 on %2: %3, limits %4"))
          .arg(nibs.arg(car.lesson.nibs), area_words(car.lesson.sprayed_m2 * 1e6, saying.units),
               rate_words(car.point.rate_m2, saying.units), limits_words(car, saying));
  const QString look = look_words(car.point.signal);
  return look.isEmpty() ? out : dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1; %2")).arg(out, look);
}

QString event_title(const DirtChange& event, const DirtSaying& saying) {
  return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1, %2"))
      .arg(sentence(done_words(event)),
           date_words(event.happened_ms(), saying.now_ms, saying.zone));
}

QString event_state(const DirtChange& event) {
  if (!event.enough())
    return event.change.cars_before < event.change.cars_after
               ? dirt_tr(QT_TRANSLATE_NOOP("dirt", "too few to say"))
               : dirt_tr(QT_TRANSLATE_NOOP("dirt", "too early to say"));
  if (!event.flagged()) return dirt_tr(QT_TRANSLATE_NOOP("dirt", "no clear change"));
  return !event.effect->unbounded && event.effect->ratio < 1
             ? dirt_tr(QT_TRANSLATE_NOOP("dirt", "less dirt"))
             : dirt_tr(QT_TRANSLATE_NOOP("dirt", "more dirt"));
}

QString event_words(const DirtChange& event) {
  if (!event.enough())
    return event.change.cars_before < event.change.cars_after
               ? dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 of 10 cars before it"))
                     .arg(event.change.cars_before)
               : dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 of 10 cars after it"))
                     .arg(event.change.cars_after);
  const auto& effect = *event.effect;
  QString change;
  if (effect.unbounded && effect.interval.low <= 0)
    change = dirt_tr(QT_TRANSLATE_NOOP("dirt", "nothing was found before it or after it"));
  else if (effect.unbounded)
    change =
        dirt_tr(QT_TRANSLATE_NOOP("dirt", "nothing was found before it; %1 times as much at least"))
            .arg(times_words(effect.interval.low));
  else if (effect.ratio <= 0)
    change =
        dirt_tr(QT_TRANSLATE_NOOP("dirt", "nothing was found after it; %1 times as much at most"))
            .arg(times_words(effect.interval.high));
  else if (times_words(effect.ratio) == QStringLiteral("1"))
    change = dirt_tr(QT_TRANSLATE_NOOP("dirt", "as much as before, %1 to %2 times"))
                 .arg(times_words(effect.interval.low), times_words(effect.interval.high));
  else
    change = dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 times as much, %2 to %3"))
                 .arg(times_words(effect.ratio), times_words(effect.interval.low),
                      times_words(effect.interval.high));
  return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1; %2 before, %3 after"))
      .arg(change, cars_words(event.change.cars_before))
      .arg(event.change.cars_after);
}

QString event_details(const DirtChange& event, int events) {
  if (!event.enough())
    return dirt_tr(
        QT_TRANSLATE_NOOP("dirt", "From 10 cars before it and 10 after it on something is said."));
  return dirt_tr(QT_TRANSLATE_NOOP(
                     "dirt",
                     "By chance alone: %1; corrected for %2 events at once: %3. It is flagged from "
                     "less than 1 in 100 on. The range holds the true ratio 19 times in 20."))
      .arg(chance_words(100 * event.effect->chance))
      .arg(events)
      .arg(chance_words(100 * event.effect->holm_chance));
}

QString painter_words(const DirtPainter& painter, const DirtSaying& saying) {
  if (!painter.ranked)
    return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1 of 20: not ranked")).arg(cars_words(painter.cars));
  return dirt_tr(QT_TRANSLATE_NOOP("dirt", "%1, %2 to %3; %4, %5"))
      .arg(rate_words(painter.per_m2(), saying.units),
           rate_number(painter.rate_m2.low, saying.units),
           rate_number(painter.rate_m2.high, saying.units), cars_words(painter.cars),
           area_words(painter.sprayed_m2 * 1e6, saying.units));
}

}  // namespace jambline::screens
