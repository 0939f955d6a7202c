// What a finger or a key does on the film screen.
#include <algorithm>
#include <cmath>

#include "job/body_shape.h"
#include "screens/correct_words.h"
#include "screens/film_view_model.h"
#include "screens/map_geometry.h"
#include "screens/words.h"

namespace jambline::screens {

using job::FilmGauge;
using job::FilmUnit;
using job::FilmWhen;

namespace {
constexpr double same_spot_mm = 60;
}

void FilmViewModel::tell_wrong(const QString& words) {
  wrong_ = words;
  refresh();
}

QString FilmViewModel::typed_words(double typed) const {
  return QStringLiteral("%1 %2").arg(QString::number(typed, 'g', 6), unitWords());
}

QString FilmViewModel::others_words() const {
  const int count = readingCount();
  if (count == 0) return tr("Type it again.");
  return count == 1 ? tr("The other reading stands. Type it again.")
                    : tr("The other %1 readings stand. Type it again.").arg(count);
}

QString FilmViewModel::unreadable(double typed) const {
  const double um = in_um(typed);
  if (um >= job::least_reading_um && um <= job::most_reading_um(gauge_)) return {};
  return (um < job::least_reading_um ? tr("%1 is no film.") : tr("%1 is past the gauge."))
             .arg(typed_words(typed)) +
         QChar(' ') + others_words();
}

bool FilmViewModel::take(double typed) {
  const QString why = unreadable(typed);
  if (!why.isEmpty()) {
    tell_wrong(why);
    return false;
  }
  std::vector<double>& all = this->typed();
  if (chosen_ && *chosen_ < static_cast<int>(all.size())) {
    all[static_cast<std::size_t>(*chosen_)] = typed;
  } else if (all.size() >= static_cast<std::size_t>(job::most_readings)) {
    tell_wrong(tr("A spot takes at most %1 readings. Keep it, then take another spot.")
                   .arg(job::most_readings));
    return false;
  } else {
    all.push_back(typed);
  }
  chosen_.reset();
  wrong_.clear();
  return true;
}

void FilmViewModel::type(int value) {
  if (!view() || value < 0) return;
  if (!gaugeWords().isEmpty()) {
    tell_wrong(gaugeWords());
    return;
  }
  pending_ = -1;
  if (!take(tenths() ? value / 10.0 : value)) return;
  refresh();
  emit taken();
}

void FilmViewModel::typeRow(const QString& text) {
  if (!view()) return;
  QString words = text;
  words.replace(QLatin1Char(';'), QLatin1Char(' '));
  if (!tenths()) words.replace(QLatin1Char(','), QLatin1Char(' '));
  std::vector<double> all;
  for (QString word : words.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    if (word.endsWith(QLatin1Char(','))) word.chop(1);
    const auto number = typed_number(word);
    if (!number) {
      tell_wrong(
          tr("“%1” is no number. Nothing was kept; what you typed is still there.").arg(word));
      return;
    }
    all.push_back(*number);
  }
  const std::vector<double> before = std::exchange(typed(), {});
  chosen_.reset();
  for (const double number : all)
    if (!take(number)) {
      const QString why = wrong_;
      typed() = before;
      tell_wrong(why);
      return;
    }
  if (readingCount() < job::least_readings) {
    typed() = before;
    tell_wrong(tr("A spot takes three readings or more; here are %1.").arg(all.size()));
    return;
  }
  refresh();
  keep();
}

void FilmViewModel::chooseWhen(int when) {
  if (!view() || when < 0 || when >= static_cast<int>(enum_words<FilmWhen>.size())) return;
  when_ = static_cast<FilmWhen>(when);
  if (when_ == FilmWhen::BeforeBase && trade::is_metal(view()->plan.substrate))
    gauge_ = FilmGauge::Total;
  chosen_.reset();
  wrong_.clear();
  if (!corrected()) spot_ = next_spot(0);
  refresh();
}

void FilmViewModel::chooseGauge(int gauge) {
  if (!view() || gauge < 0 || gauge >= static_cast<int>(enum_words<FilmGauge>.size())) return;
  gauge_ = static_cast<FilmGauge>(gauge);
  chosen_.reset();
  wrong_ = gaugeWords();
  if (!corrected()) spot_ = next_spot(0);
  refresh();
}

void FilmViewModel::chooseSpot(int spot) {
  if (!view() || spot < 1 || spot > job::most_spots) return;
  spot_ = spot;
  chosen_.reset();
  corrects_.reset();
  wrong_.clear();
  refresh();
}

void FilmViewModel::placeSpot(double x_mm, double y_mm) {
  if (!view() || !drawing()) return;
  const trade::Placement place = upright(*drawing());
  if (!trade::contains(place.apply(drawing()->shape.outline), {x_mm, y_mm})) {
    tell_wrong(tr("Off the panel. The spot stays where it was."));
    return;
  }
  const trade::Point_mm at = place.back({x_mm, y_mm});
  for (const int spot : known_spots()) {
    const auto known = place_of(spot);
    if (!known || spot == spot_) continue;
    if (std::hypot(known->first - at.x_mm, known->second - at.y_mm) > same_spot_mm) continue;
    chooseSpot(spot);
    return;
  }
  places_[spot_] = {at.x_mm, at.y_mm};
  wrong_.clear();
  refresh();
}

void FilmViewModel::chooseReading(int reading) {
  if (reading < 0 || reading >= readingCount()) return;
  chosen_ = chosen_ == reading ? std::nullopt : std::optional(reading);
  wrong_.clear();
  refresh();
}

void FilmViewModel::dropReading() {
  std::vector<double>& all = typed();
  if (all.empty()) return;
  all.erase(all.begin() + chosen_.value_or(static_cast<int>(all.size()) - 1));
  chosen_.reset();
  wrong_.clear();
  refresh();
}

void FilmViewModel::switchUnit() {
  if (readingCount() > 0) {
    tell_wrong(tr("These readings are in %1. Keep them or take them out first.").arg(unitWords()));
    return;
  }
  unit_ = unit_ == FilmUnit::Mil ? FilmUnit::Micron : FilmUnit::Mil;
  thick_ = false;
  wrong_.clear();
  refresh();
}

void FilmViewModel::switchThick() {
  thick_ = !thick_;
  emit changed();
}

void FilmViewModel::setPending(int pending) {
  if (pending == pending_) return;
  pending_ = pending;
  emit changed();
}

void FilmViewModel::mainAct() {
  if (pending_ >= 0)
    type(pending_);
  else
    keep();
}

void FilmViewModel::keep() {
  if (!may_keep()) return;
  acts::ReadFilm read;
  read.job = session_.car()->job;
  read.panel = *panel_;
  read.spot = spot_;
  read.when = when_;
  read.gauge = gauge_;
  read.unit = unit_;
  read.typed = typed();
  if (const auto place = place_of(spot_)) {
    read.x_mm = place->first;
    read.y_mm = place->second;
  }
  if (corrected()) read.corrects = *corrects_;
  const QString key = typed_key();
  const int spot = spot_;
  session_.post(read, [this, key, spot](const Result<engine::Wrote>& wrote) {
    if (!wrote) {
      const ErrorWords why = words_of(wrote.error());
      tell_wrong(why.what + QChar(' ') + why.kept);
      return;
    }
    typed_.erase(key);
    places_.erase(spot);
    corrects_.reset();
    wrong_.clear();
    if (view() && key == typed_key()) spot_ = next_spot(spot);
    refresh();
    emit rowTaken();
  });
}

void FilmViewModel::correct(const QString& reading) {
  const auto id = ReadingId::parse(reading.toStdString());
  const bool again = id && corrects_ == *id;
  corrects_ = again ? std::nullopt : id;
  const folds::FilmView* film = corrected();
  if (!film) {
    corrects_.reset();
    if (view()) spot_ = next_spot(0);
    refresh();
    return;
  }
  when_ = film->when;
  gauge_ = film->gauge;
  unit_ = film->unit;
  spot_ = film->spot;
  thick_ = std::any_of(film->typed.begin(), film->typed.end(),
                       [&](double typed) { return typed >= (tenths() ? 10 : 1000); });
  chosen_.reset();
  wrong_.clear();
  typed() = film->typed;
  refresh();
}

void FilmViewModel::takeBack() {
  const folds::FilmView* film = corrected();
  if (!film || film->heads.empty() || session_.readOnly()) return;
  typed_.erase(typed_key());
  const Hash head = film->heads.front();
  corrects_.reset();
  spot_ = next_spot(0);
  session_.post(acts::Withdraw{session_.car()->job, head, {}});
}

void FilmViewModel::openSum() {
  if (!result_) return;
  sum_.show(tr("Clear on the %1").arg(words_of(*panel_, session_.car()->body)), said_.range,
            result_->basis, units_of_film(unit_), said_.word + QStringLiteral(": ") + said_.limit);
  emit sumOpened();
}

}  // namespace jambline::screens
