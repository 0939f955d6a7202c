// screens/cure_words.h: what a cure clock and the drive-away table say, in the words of people.
//
// Times:  "about" to the nearest five minutes, the span round it outwards to five: a surface
//         reading bears no more. What was reached is said to the minute.
// Gate:   of several panels the strictest word. A clock that cannot say anything (no mix, no
//         temperature, UV, moisture cure, no such milestone on the sheet) is no clock: then a
//         person says it.
#pragma once

#include <QString>
#include <vector>

#include "folds/cure_of_car.h"
#include "screens/state_kind.h"
#include "screens/units.h"

namespace jambline::screens {

struct CureSeen {
  Moment at;  // that the clocks are of
  QString zone;
  Units units = Units::Metric;
};

struct StandingWords {
  QString words;
  StateKind shape = StateKind::None;
};

StandingWords standing_words(const folds::CureOfGroup& clock, const trade::CureStanding& standing,
                             const CureSeen& seen);
// The same, in a row among others: only when it will be so.
QString short_standing(const folds::CureOfGroup& clock, const trade::CureStanding& standing,
                       const CureSeen& seen);
// Of a bonded part, which has neither surface nor gates.
StandingWords strength_words(const trade::CureStanding& standing, double now_min,
                             const CureSeen& seen);
// What the sheet says of a milestone: "16 h at 20 °C, 30 min at 60 °C".
QString points_words(const std::vector<trade::CurePoint>& points, Units units);
// "Taken 1.4 times as long: on 2 of the last 5 cars checked it was still soft then."
QString learned_words(const folds::LearnedFilm::Of& learned);
// About the whole clock: no temperature, no clock of this kind, stalled, outside the points.
StandingWords clock_words_of(const folds::CureOfGroup& clock, const folds::ProductView* product,
                             const CureSeen& seen);
// Whether the standing is of something that runs out: polish until, pot life.
bool runs_out(trade::CureMilestone milestone);

// "Do not drive until 15:40", "Do not drive: no time from the maker's table"; "" it may be driven.
QString do_not_drive_words(const std::optional<folds::DoNotDrive>& said, std::int64_t now_ms,
                           const QString& zone);
// Why: "colder or drier than the maker's table", "air not logged: the longest time of the table".
QString drive_away_note(const folds::BondOfCar& bond, Units units);

struct FilmGate {
  enum class Word { NoClock, Open, Closed };
  Word word = Word::NoClock;
  QString words;  // "hood: not yet, about 15:40"; of several the last one to come
};
FilmGate film_gate(const std::vector<folds::CureOfGroup>& cures, const folds::CarView& car,
                   const std::vector<job::Panel>& panels, trade::CureMilestone milestone,
                   const CureSeen& seen);

}  // namespace jambline::screens
