#include "screens/booth_reading_view_model.h"

#include <cmath>
#include <numeric>

#include "base/spans.h"
#include "screens/air_units.h"
#include "screens/air_words.h"
#include "screens/rate_units.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::BoothReading;
using Pad = BoothReadingViewModel::Pad;

std::optional<AirQuantity> quantity_of(BoothReading what) {
  switch (what) {
    case BoothReading::Velocity:
      return AirQuantity::Velocity;
    case BoothReading::FilterPressure:
      return AirQuantity::Pressure;
    case BoothReading::Exhaust:
      return AirQuantity::Exhaust;
    case BoothReading::SmokeTest:
      break;
  }
  return std::nullopt;
}

// As acts/air_acts.cpp has them.
struct Range {
  double least, most;
};
Range range_of(BoothReading what) {
  switch (what) {
    case BoothReading::Velocity:
      return {0.01, 20};
    case BoothReading::FilterPressure:
      return {0, 5000};
    case BoothReading::Exhaust:
      return {1, 1e7};
    case BoothReading::SmokeTest:
      return {0.1, 600};
  }
  return {0, 0};
}

bool may_read(BoothReading what, job::BoothKind kind) {
  return what != BoothReading::SmokeTest || job::may_be_sprayed_in(kind);
}
}  // namespace

BoothReadingViewModel::BoothReadingViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      whats_({"key", "title", "chosen"}, this),
      values_({"key", "words"}, this) {
  connect(&session, &Session::personChanged, this, &BoothReadingViewModel::changed);
  connect(&session, &Session::unitsChanged, this, &BoothReadingViewModel::show);
}

const folds::BoothView* BoothReadingViewModel::booth() const {
  return booth_ ? session_.shop().find(booth_) : nullptr;
}

QString BoothReadingViewModel::title() const {
  const auto* one = booth();
  return one ? tr("%1: %2").arg(QString::fromStdString(one->name), words_of(what_)) : QString();
}

Pad BoothReadingViewModel::pad() const {
  const auto quantity = quantity_of(what_);
  if (!quantity) return Pad::Clock;
  return air_places(*quantity, session_.units()) == 2 ? Pad::Hundredths : Pad::Digits;
}

int BoothReadingViewModel::digits() const {
  switch (what_) {
    case BoothReading::Velocity:
      return 3;
    case BoothReading::FilterPressure:
      return session_.units() == Units::Metric ? 4 : 3;
    case BoothReading::Exhaust:
      return 6;
    case BoothReading::SmokeTest:
      return 4;
  }
  return 3;
}

QString BoothReadingViewModel::unit() const {
  const auto quantity = quantity_of(what_);
  return quantity ? air_unit(*quantity, session_.units()) : tr("min : s");
}

QString BoothReadingViewModel::label() const {
  if (!several()) return sentence(words_of(what_));
  if (what_ == BoothReading::SmokeTest) return tr("Test %1").arg(valueCount() + 1);
  return tr("Point %1").arg(valueCount() + 1);
}

QString BoothReadingViewModel::hint() const {
  switch (what_) {
    case BoothReading::Velocity:
      return tr("At several points across the booth, empty and as it is sprayed in.");
    case BoothReading::FilterPressure:
      return tr("The gauge over the filter, with the fan on.");
    case BoothReading::Exhaust:
      return tr("On fresh air, doors shut. Not in bake.");
    case BoothReading::SmokeTest:
      return tr(
          "Fill it with smoke on fresh air, doors shut, and time it until no smoke is seen "
          "from outside. Of several tests the longest counts.");
  }
  return {};
}

QList<int> BoothReadingViewModel::instruments() const {
  return {3, 5, 10};
}

void BoothReadingViewModel::set_instrument(int percent) {
  if (!instruments().contains(percent)) return;
  instrument_percent_ = percent;
  emit changed();
}

QString BoothReadingViewModel::whenWords() const {
  const std::int64_t now_ms = session_.now().wall_ms;
  return happened_ms_ ? date_words(*happened_ms_, now_ms, session_.zone())
                      : tr("now, %1").arg(clock_words(now_ms, session_.zone()));
}

QString BoothReadingViewModel::words_of_value(double stored) const {
  const auto quantity = quantity_of(what_);
  return quantity ? air_words(*quantity, stored, session_.units()) : minutes_seconds(stored);
}

QString BoothReadingViewModel::valueWords() const {
  if (typed_.empty()) return {};
  const double sum = std::accumulate(typed_.begin(), typed_.end(), 0.0);
  if (what_ == BoothReading::SmokeTest)
    return tr("the longest: %1")
        .arg(words_of_value(*std::max_element(typed_.begin(), typed_.end())));
  return tr("mean of %1: %2")
      .arg(valueCount())
      .arg(words_of_value(sum / static_cast<double>(typed_.size())));
}

void BoothReadingViewModel::open(const QString& key, int what) {
  const auto id = BoothId::parse(key.toStdString());
  booth_ = id ? BoothId{*id} : BoothId{};
  happened_ms_.reset();
  what_ = BoothReading::FilterPressure;
  choose(what);
}

void BoothReadingViewModel::choose(int what) {
  const auto* one = booth();
  if (!one || what < 0 || what >= static_cast<int>(enum_words<BoothReading>.size())) return;
  if (!may_read(static_cast<BoothReading>(what), one->kind)) return;
  what_ = static_cast<BoothReading>(what);
  typed_.clear();
  wrong_.clear();
  emit taken();
  show();
}

void BoothReadingViewModel::show() {
  const auto* one = booth();
  std::vector<QVariantList> rows;
  for (std::size_t i = 0; one && i < enum_words<BoothReading>.size(); ++i) {
    const auto what = static_cast<BoothReading>(i);
    if (may_read(what, one->kind))
      rows.push_back({static_cast<int>(i), sentence(words_of(what)), what == what_});
  }
  whats_.set(std::move(rows));
  std::vector<QVariantList> values;
  for (std::size_t i = 0; i < typed_.size(); ++i)
    values.push_back({static_cast<int>(i), words_of_value(typed_[i])});
  values_.set(std::move(values));
  emit changed();
}

std::optional<double> BoothReadingViewModel::value_of(int typed) {
  double shown = typed;
  const auto quantity = quantity_of(what_);
  if (!quantity) {
    if (typed % 100 > 59) {
      wrong_ = tr("A minute has 60 seconds: type minutes, then two digits of seconds.");
      return std::nullopt;
    }
    shown = typed / 100 + typed % 100 / 60.0;
  } else if (air_places(*quantity, session_.units()) == 2) {
    shown = typed / 100.0;
  }
  const double stored = quantity ? stored_air(*quantity, shown, session_.units()) : shown;
  const auto [least, most] = range_of(what_);
  if (stored < least) {
    wrong_ = what_ == BoothReading::SmokeTest
                 ? tr("No booth is cleared in that time. Type minutes, then seconds.")
                 : tr("At 0 no air moves. If that is so, do not spray: look at the fan.");
    return std::nullopt;
  }
  if (stored > most) {
    wrong_ =
        tr("That is more than such an instrument shows: %1 at most.").arg(words_of_value(most));
    return std::nullopt;
  }
  return stored;
}

void BoothReadingViewModel::type(int value) {
  if (value < 0) return;
  wrong_.clear();
  if (const auto stored = value_of(value)) {
    if (!several()) typed_.clear();
    typed_.push_back(*stored);
    emit taken();
  }
  show();
}

void BoothReadingViewModel::drop(int key) {
  if (key < 0 || key >= valueCount()) return;
  typed_.erase(typed_.begin() + key);
  show();
}

void BoothReadingViewModel::shift(int days) {
  const std::int64_t now_ms = session_.now().wall_ms;
  const std::int64_t moved_ms = happened_ms_.value_or(now_ms) + days * day_ms;
  wrong_ = moved_ms > now_ms ? tr("That day is still to come. The latest is now.") : QString();
  if (wrong_.isEmpty()) happened_ms_ = moved_ms;
  emit changed();
}

void BoothReadingViewModel::sayNow() {
  happened_ms_.reset();
  wrong_.clear();
  emit changed();
}

void BoothReadingViewModel::keep(int pending) {
  if (!booth() || !mayKeep()) return;
  if (pending >= 0) {
    const auto before = typed_;
    type(pending);
    if (!wrong_.isEmpty()) {
      typed_ = before;
      show();
      return;
    }
  }
  if (typed_.empty()) {
    wrong_ = tr("Type the reading first.");
    emit changed();
    return;
  }
  session_.post(acts::ReadBooth{booth_, what_, typed_, static_cast<double>(instrument_percent_),
                                happened_ms_},
                [this](const Result<engine::Wrote>& wrote) {
                  if (!wrote) return;
                  typed_.clear();
                  emit taken();
                  emit kept();
                });
}

}  // namespace jambline::screens
