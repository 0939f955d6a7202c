#include "screens/film_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "screens/sum_rows.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::FilmNote;
using trade::FilmBound;
using trade::FilmSource;
using trade::FilmWord;

QString film_tr(const char* words) {
  return QCoreApplication::translate("film", words);
}

QString range_words(const trade::FilmBudgetResult& result, Units units) {
  if (result.clear.mean_um <= 0) return film_tr("by these numbers no clear is left");
  return film_tr("about %1, could be %2 to %3")
      .arg(film_words(std::max(0.0, result.clear.mean_um), units),
           film_number_words(std::max(0.0, result.likely_low_um), units),
           film_words(std::max(0.0, result.likely_high_um), units));
}

QString source_words(const folds::FilmOfPanel& film) {
  switch (film.source) {
    case FilmSource::Ultrasonic:
      return film_tr("clear read at spot %1").arg(film.spot);
    case FilmSource::TotalLessBase:
      return film_tr("total at spot %1, less total before base").arg(film.spot);
    case FilmSource::CoatsTimesBuild:
      break;
  }
  if (film.old_clear) return film_tr("the clear it came with, not read");
  return film_tr("coat estimate, %1 coats, nothing read").arg(film.budget.coats);
}

QString rests_words(const folds::FilmOfPanel& film, Units units) {
  QStringList words{source_words(film)};
  if (film.note == FilmNote::OneTotalOnly)
    words << film_tr("a total was read, but not both before base and after at one spot");
  if (film.note == FilmNote::NoMetal)
    words << film_tr("totals do not count: there is no metal below");
  const double taken_um = film.budget.taken_before_um +
                          (film.budget.taken_since ? film.budget.taken_since->mean_um : 0);
  if (taken_um > 0) words << film_tr("%1 taken already").arg(film_words(taken_um, units));
  if (film.learned_from > 0)
    words << film_tr("removal from %1 own readings").arg(film.learned_from);
  return words.join(film_tr("; "));
}

QString limit_words(const folds::FilmOfPanel& film, const trade::FilmBudgetResult& result,
                    Units units) {
  const QString chance = chance_words(result.chance_percent);
  switch (result.bound_by) {
    case FilmBound::ClearLeft:
      return film_tr("%1 that less than %2 is left")
          .arg(chance, film_words(film.budget.leave_um, units));
    case FilmBound::TakenInLife:
      return film_tr("%1 that more than %2 is taken in the panel's life")
          .arg(chance, film_words(film.budget.take_at_most_um, units));
    case FilmBound::Surface:
      break;
  }
  return film_tr("this finish is never sanded or polished");
}
}  // namespace

QString words_of(FilmWord word) {
  switch (word) {
    case FilmWord::Room:
      return film_tr("room");
    case FilmWord::OneLightPass:
      return film_tr("one light pass");
    case FilmWord::DoNotCut:
      break;
  }
  return film_tr("do not cut");
}

StateKind state_of(FilmWord word) {
  switch (word) {
    case FilmWord::Room:
      return StateKind::Running;
    case FilmWord::OneLightPass:
      return StateKind::Waits;
    case FilmWord::DoNotCut:
      break;
  }
  return StateKind::Must;
}

QString film_unit_words(Units units) {
  return units == Units::Us ? film_tr("mil") : film_tr("µm");
}

QString film_number_words(double um, Units units) {
  if (units == Units::Us) return QLocale::c().toString(um / job::um_per_mil, 'f', 1);
  return QString::number(std::lround(um));
}

QString film_words(double um, Units units) {
  return film_number_words(um, units) + QChar(' ') + film_unit_words(units);
}

QString removal_words(double um, double sd_um, Units units) {
  const bool mils = units == Units::Us;
  const auto words = [&](double value_um) {
    return QLocale::c().toString(mils ? value_um / job::um_per_mil : value_um, 'f', mils ? 2 : 1);
  };
  return QStringLiteral("%1 \u00b1 %2 %3").arg(words(um), words(sd_um), film_unit_words(units));
}

bool asks_reading(const folds::FilmOfPanel& film, const Result<trade::FilmBudgetResult>& result) {
  return film.source == FilmSource::CoatsTimesBuild && result &&
         result->word == FilmWord::OneLightPass;
}

FilmSaid say_film(const folds::FilmOfPanel& film, const Result<trade::FilmBudgetResult>& result,
                  Units units) {
  FilmSaid out;
  if (!result) {
    out.state = StateKind::Disputed;
    out.word = film_tr("Readings do not fit");
    out.range = film_tr("No clear is left between the total and what lies under it.");
    out.rests = rests_words(film, units);
    out.limit = film_tr("Read the spot again.");
    return out;
  }
  out.state = state_of(result->word);
  out.word = sentence(words_of(result->word));
  out.range = range_words(*result, units);
  out.rests = rests_words(film, units);
  out.limit = limit_words(film, *result, units);
  return out;
}

}  // namespace jambline::screens
