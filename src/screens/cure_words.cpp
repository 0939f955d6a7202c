#include "screens/cure_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "base/spans.h"
#include "screens/air_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using trade::CureMilestone;
using trade::CureWord;

constexpr double cure_step_ms = 5 * ms_per_min;

QString cure_tr(const char* words) {
  return QCoreApplication::translate("cure", words);
}

enum class Round { Nearest, Down, Up };

// A time of a clock that stands at `now_min`, on the wall.
struct Wall {
  double now_min;
  const CureSeen& seen;
  std::int64_t ms(double at_min) const {
    return seen.at.wall_ms + static_cast<std::int64_t>((at_min - now_min) * ms_per_min);
  }
  QString exact(double at_min) const { return time_words(ms(at_min), seen.at.wall_ms, seen.zone); }
  QString rounded(double at_min, Round how) const {
    const double steps = static_cast<double>(ms(at_min)) / cure_step_ms;
    const double whole = how == Round::Nearest ? std::round(steps)
                         : how == Round::Down  ? std::floor(steps)
                                               : std::ceil(steps);
    return time_words(static_cast<std::int64_t>(whole * cure_step_ms), seen.at.wall_ms, seen.zone);
  }
};

// "about 15:40 (15:10 to 16:20)"
QString about(const trade::CureStanding& standing, const Wall& wall) {
  const QString time = wall.rounded(*standing.reached_min, Round::Nearest);
  if (!standing.early_min) return cure_tr(QT_TRANSLATE_NOOP("cure", "about %1")).arg(time);
  const QString early = wall.rounded(*standing.early_min, Round::Down);
  if (!standing.late_min)
    return cure_tr(QT_TRANSLATE_NOOP("cure", "about %1, later where it is colder")).arg(time);
  return cure_tr(QT_TRANSLATE_NOOP("cure", "about %1 (%2 to %3)"))
      .arg(time, early, wall.rounded(*standing.late_min, Round::Up));
}

StandingWords run_out_words(const trade::CureStanding& standing, const Wall& wall) {
  switch (standing.word) {
    case CureWord::Reached:
    case CureWord::Gated:
      return {standing.reached_min ? cure_tr(QT_TRANSLATE_NOOP("cure", "over since %1"))
                                         .arg(wall.exact(*standing.reached_min))
                                   : cure_tr(QT_TRANSLATE_NOOP("cure", "over")),
              StateKind::Must};
    case CureWord::NotYet:
      if (!standing.early_min)
        return {cure_tr(QT_TRANSLATE_NOOP("cure", "until about %1"))
                    .arg(wall.rounded(*standing.reached_min, Round::Down)),
                StateKind::Running};
      return {cure_tr(QT_TRANSLATE_NOOP("cure", "until about %1, %2 where it is warmer"))
                  .arg(wall.rounded(*standing.reached_min, Round::Down),
                       wall.rounded(*standing.early_min, Round::Down)),
              StateKind::Running};
    case CureWord::Stalled:
    case CureWord::NotComputed:
      break;
  }
  return {cure_tr(QT_TRANSLATE_NOOP("cure", "outside the sheet's points: nothing can be said")),
          StateKind::Must};
}

StandingWords not_reached_words(const trade::CureStanding& standing, const Wall& wall,
                                bool under_minimum) {
  if (standing.word == CureWord::NotYet && standing.reached_min)
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "not yet, %1")).arg(about(standing, wall)),
            StateKind::NotYet};
  if (standing.word == CureWord::NotComputed)
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "no clock: the sheet's words hold")),
            StateKind::Unseen};
  return {under_minimum
              ? cure_tr(QT_TRANSLATE_NOOP("cure", "stalled: colder than it cures"))
              : cure_tr(QT_TRANSLATE_NOOP("cure", "stalled: colder than the sheet's points")),
          StateKind::Paused};
}

bool touched(CureMilestone milestone) {
  return milestone == CureMilestone::SandFrom || milestone == CureMilestone::PolishFrom ||
         milestone == CureMilestone::LastPolish;
}

// What was read is no longer believed, and it was too hot to touch then.
bool may_still_be_hot(const folds::CureOfGroup& clock) {
  return clock.read_again && clock.surface_c && clock.asked &&
         *clock.surface_c > clock.asked->surface_max_c;
}

QString sheet_duration(double minutes) {
  constexpr double min_a_day = 1440;
  if (minutes >= 2 * min_a_day && std::fmod(minutes, min_a_day) == 0)
    return cure_tr(QT_TRANSLATE_NOOP("cure", "%1 d")).arg(std::lround(minutes / min_a_day));
  return duration_words(std::llround(minutes * ms_per_min));
}
}  // namespace

bool runs_out(CureMilestone milestone) {
  return milestone == CureMilestone::PolishUntil || milestone == CureMilestone::PotLife;
}

StandingWords standing_words(const folds::CureOfGroup& clock, const trade::CureStanding& standing,
                             const CureSeen& seen) {
  const Wall wall{clock.asked ? clock.asked->now_min : 0, seen};
  const trade::CureResult& result = **clock.result;
  if (runs_out(standing.milestone)) return run_out_words(standing, wall);
  if (standing.word == CureWord::Gated) {
    if (result.too_hot)
      return {cure_tr(QT_TRANSLATE_NOOP("cure", "too hot to touch: %1, at most %2"))
                  .arg(temperature_words(clock.surface_c.value_or(0), seen.units),
                       temperature_words(clock.asked->surface_max_c, seen.units)),
              StateKind::Must};
    if (standing.gate_until_min && *standing.gate_until_min > wall.now_min)
      return {
          (clock.asked->bake_end_min
               ? cure_tr(QT_TRANSLATE_NOOP("cure", "waits: rest after the bake until %1"))
               : cure_tr(QT_TRANSLATE_NOOP("cure", "waits: longer rest of heavy film until %1")))
              .arg(wall.rounded(*standing.gate_until_min, Round::Up)),
          StateKind::Waits};
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "waits: the thumbnail said not yet")),
            StateKind::Waits};
  }
  if (standing.word == CureWord::Reached) {
    if (touched(standing.milestone) && may_still_be_hot(clock))
      return {cure_tr(QT_TRANSLATE_NOOP("cure", "read the panel again: it was %1"))
                  .arg(temperature_words(*clock.surface_c, seen.units)),
              StateKind::Waits};
    return {standing.reached_min ? cure_tr(QT_TRANSLATE_NOOP("cure", "reached %1"))
                                       .arg(wall.exact(*standing.reached_min))
                                 : cure_tr(QT_TRANSLATE_NOOP("cure", "reached")),
            StateKind::Done};
  }
  return not_reached_words(standing, wall, result.stalled);
}

QString short_standing(const folds::CureOfGroup& clock, const trade::CureStanding& standing,
                       const CureSeen& seen) {
  if (standing.word == CureWord::NotYet && standing.reached_min && !runs_out(standing.milestone))
    return cure_tr(QT_TRANSLATE_NOOP("cure", "about %1"))
        .arg(Wall{clock.asked->now_min, seen}.rounded(*standing.reached_min, Round::Nearest));
  return standing_words(clock, standing, seen).words;
}

StandingWords strength_words(const trade::CureStanding& standing, double now_min,
                             const CureSeen& seen) {
  const Wall wall{now_min, seen};
  if (standing.word == CureWord::Reached)
    return {standing.reached_min ? cure_tr(QT_TRANSLATE_NOOP("cure", "reached %1"))
                                       .arg(wall.exact(*standing.reached_min))
                                 : cure_tr(QT_TRANSLATE_NOOP("cure", "reached")),
            StateKind::Done};
  return not_reached_words(standing, wall, false);
}

QString points_words(const std::vector<trade::CurePoint>& points, Units units) {
  QStringList out;
  for (const auto& point : points)
    out << cure_tr(QT_TRANSLATE_NOOP("cure", "%1 at %2"))
               .arg(sheet_duration(point.minutes), temperature_words(point.at_c, units));
  return out.join(QStringLiteral(", "));
}

QString learned_words(const folds::LearnedFilm::Of& learned) {
  const QString factor = QLocale::c().toString(learned.factor, 'f', 2);
  if (learned.cars == 1)
    return cure_tr(QT_TRANSLATE_NOOP(
                       "cure",
                       "Taken %1 times as long: on the last car checked it was still soft "
                       "then."))
        .arg(factor);
  return cure_tr(
             QT_TRANSLATE_NOOP("cure",
                               "Taken %1 times as long: on %2 of the last %3 cars checked it was "
                               "still soft then."))
      .arg(factor)
      .arg(learned.soft)
      .arg(learned.cars);
}

StandingWords clock_words_of(const folds::CureOfGroup& clock, const folds::ProductView* product,
                             const CureSeen& seen) {
  if (product && product->said.steps.empty())
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "No times of its sheet are entered: no clock.")),
            StateKind::Unseen};
  const bool heat = product && (product->said.cure == trade::CureKind::TwoPack ||
                                product->said.cure == trade::CureKind::Infrared);
  if (product && !heat)
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "%1: no heat clock. The words of its sheet hold."))
                .arg(sentence(words_of(product->said.cure))),
            StateKind::Unseen};
  if (!clock.result)
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "No panel temperature yet: nothing is counted.")),
            StateKind::Waits};
  if (!*clock.result)
    return {
        cure_tr(QT_TRANSLATE_NOOP("cure", "The sheet's points contradict each other: no clock.")),
        StateKind::Must};
  const auto& result = **clock.result;
  if (result.stalled)
    return {
        cure_tr(QT_TRANSLATE_NOOP("cure", "Colder than it cures: %1 at least. It stands still."))
            .arg(temperature_words(clock.asked->minimum_c.value_or(0), seen.units)),
        StateKind::Paused};
  if (clock.read_again)
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "Read it again: it has cooled since. %1 is counted."))
                .arg(temperature_words(clock.asked->readings.back().surface_c, seen.units)),
            StateKind::Waits};
  if (result.too_hot)
    return {cure_tr(QT_TRANSLATE_NOOP("cure", "Too hot to touch the film.")), StateKind::Must};
  if (result.outside_points)
    return {cure_tr(QT_TRANSLATE_NOOP("cure",
                                      "A reading lies outside the sheet's points: the stricter way "
                                      "holds.")),
            StateKind::Waits};
  return {};
}

QString do_not_drive_words(const std::optional<folds::DoNotDrive>& said, std::int64_t now_ms,
                           const QString& zone) {
  if (!said) return {};
  if (!said->until_ms)
    return cure_tr(QT_TRANSLATE_NOOP("cure", "Do not drive: no time from the maker's table"));
  // Up to the whole minute.
  const std::int64_t until = (*said->until_ms + minute_ms - 1) / minute_ms * minute_ms;
  return cure_tr(QT_TRANSLATE_NOOP("cure", "Do not drive until %1"))
      .arg(time_words(until, now_ms, zone));
}

QString drive_away_note(const folds::BondOfCar& bond, Units units) {
  if (!bond.asked)
    return cure_tr(QT_TRANSLATE_NOOP("cure", "The maker's table of this case is not entered."));
  const auto& asked = *bond.asked;
  QStringList air;
  if (asked.coldest_c)
    air << cure_tr(QT_TRANSLATE_NOOP("cure", "coldest %1"))
               .arg(temperature_words(*asked.coldest_c, units));
  if (asked.driest_percent)
    air << cure_tr(QT_TRANSLATE_NOOP("cure", "driest %1 %"))
               .arg(std::lround(*asked.driest_percent));
  const bool none = !bond.result || !*bond.result || !(*bond.result)->minutes;
  if (none)
    return cure_tr(QT_TRANSLATE_NOOP("cure",
                                     "Colder or drier than the maker's table (%1). Ask the "
                                     "adhesive's maker."))
        .arg(air.join(QStringLiteral(", ")));
  if (air.isEmpty())
    return cure_tr(
        QT_TRANSLATE_NOOP("cure", "Air not logged: the longest time of the maker's table."));
  return cure_tr(QT_TRANSLATE_NOOP("cure", "By the maker's table: %1."))
      .arg(air.join(QStringLiteral(", ")));
}

FilmGate film_gate(const std::vector<folds::CureOfGroup>& cures, const folds::CarView& car,
                   const std::vector<job::Panel>& panels, CureMilestone milestone,
                   const CureSeen& seen) {
  FilmGate out;
  bool all_open = !panels.empty();
  double latest = -1;
  for (const job::Panel panel : panels) {
    const auto at = folds::standing_of(cures, panel, milestone);
    if (!at.standing || at.standing->word == CureWord::NotComputed) {
      all_open = false;
      continue;
    }
    const auto said = standing_words(*at.group, *at.standing, seen);
    if (said.shape == StateKind::Done) continue;
    all_open = false;
    // Of what has no time, which is the latest of all, the first.
    const double until = at.standing->word == CureWord::NotYet && at.standing->reached_min
                             ? *at.standing->reached_min - at.group->asked->now_min
                             : 1e12;
    if (out.word == FilmGate::Word::Closed && until <= latest) continue;
    latest = until;
    out.word = FilmGate::Word::Closed;
    out.words =
        cure_tr(QT_TRANSLATE_NOOP("cure", "%1: %2")).arg(words_of(panel, car.body), said.words);
  }
  if (all_open) out.word = FilmGate::Word::Open;
  return out;
}

}  // namespace jambline::screens
