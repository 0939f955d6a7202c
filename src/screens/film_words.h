// screens/film_words.h: what the film calculation says of a panel, in words.
//
// Words:   never that something is safe. A chance is a count; what it rests on is always said.
// Units:   µm whole, mil with one place.
#pragma once

#include <QString>

#include "folds/film_of_panel.h"
#include "screens/state_kind.h"
#include "screens/units.h"

namespace jambline::screens {

QString words_of(trade::FilmWord word);  // "room", "one light pass", "do not cut"
StateKind state_of(trade::FilmWord word);
QString film_unit_words(Units units);               // "µm", "mil"
QString film_number_words(double um, Units units);  // "47", "1.9"
QString film_words(double um, Units units);         // "47 µm"
// What rounds take is less than the clear by far: one place more, "6.5 ± 1.4 µm", "0.26 ± 0.06
// mil".
QString removal_words(double um, double sd_um, Units units);

struct FilmSaid {
  StateKind state{};
  QString word;   // "One light pass"; "Readings do not fit" when nothing can be worked out
  QString range;  // "about 47 µm, could be 36 to 58 µm"
  QString rests;  // "coat estimate, 2 coats, nothing read"
  QString limit;  // "3 in 10 that less than 40 µm is left"
};

inline Units units_of_film(job::FilmUnit unit) {
  return unit == job::FilmUnit::Mil ? Units::Us : Units::Metric;
}

// A reading is asked for only where the coats alone say "one light pass".
bool asks_reading(const folds::FilmOfPanel& film, const Result<trade::FilmBudgetResult>& result);

FilmSaid say_film(const folds::FilmOfPanel& film, const Result<trade::FilmBudgetResult>& result,
                  Units units);

}  // namespace jambline::screens
