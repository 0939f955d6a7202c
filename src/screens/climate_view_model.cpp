#include "screens/climate_view_model.h"

#include <QLocale>
#include <algorithm>
#include <cmath>

#include "screens/booth_view_model.h"
#include "screens/spans.h"
#include "screens/state_kind.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using trade::ClimateCheck;
using trade::ClimateGate;

constexpr std::int64_t reading_is_old_ms = 60 * 60'000;  // common practice, no source

QString plain(double value, int places) {
  const QString text = QLocale::c().toString(std::abs(value), 'f', places);
  const bool zero = text.toDouble() == 0;
  return value < 0 && !zero ? QChar(0x2212) + text : text;
}

template <class T>
void narrow_low(std::optional<T>& low, const std::optional<T>& other) {
  if (other) low = low ? std::max(*low, *other) : *other;
}

template <class T>
void narrow_high(std::optional<T>& high, const std::optional<T>& other) {
  if (other) high = high ? std::min(*high, *other) : *other;
}

QString title_of(ClimateGate gate) {
  switch (gate) {
    case ClimateGate::DewMargin:
      return ClimateViewModel::tr("Over the dew point");
    case ClimateGate::Surface:
      return ClimateViewModel::tr("Surface");
    case ClimateGate::SurfaceNearAir:
      return ClimateViewModel::tr("Between surface and air");
    case ClimateGate::Air:
      return ClimateViewModel::tr("Air");
    case ClimateGate::Humidity:
      break;
  }
  return ClimateViewModel::tr("Humidity");
}
}  // namespace

ClimateViewModel::ClimateViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      booths_({"key", "title", "chosen"}, this),
      fields_({"key", "title", "words", "chosen"}, this),
      gates_({"key", "title", "value", "limit", "shape", "spoken"}, this),
      sum_(this) {
  connect(&session_, &Session::carOrShopChanged, this, &ClimateViewModel::refresh);
  refresh();
}

void ClimateViewModel::begin() {
  values_ = {};
  field_ = Number::Air;
  typed_.clear();
  wrong_.clear();
  emit typedChanged();
  refresh();
}

void ClimateViewModel::refresh() {
  const std::optional<JobId> job =
      session_.car() ? std::optional(session_.car()->job) : std::nullopt;
  if (job != job_) {
    job_ = job;
    values_ = {};
    field_ = Number::Air;
    booth_.reset();
  }
  std::vector<QVariantList> rows;
  for (const auto& one : session_.shop().booths) {
    if (!job::may_be_sprayed_in(one.kind)) continue;
    if (!booth_ &&
        (!session_.car() || !session_.car()->booth || session_.car()->booth == one.booth))
      booth_ = one.booth;
    rows.push_back({QString::fromStdString(one.booth.hex()), QString::fromStdString(one.name),
                    booth_ == one.booth});
  }
  booths_.set(std::move(rows));
  work_out();
}

trade::Climate ClimateViewModel::with_window(trade::Climate climate) const {
  if (const auto* car = session_.car())
    for (const auto& mix : car->air.mixes) {
      const auto* product = session_.shop().air.find(mix.product);
      if (!product || folds::elapsed_ms(mix.at, session_.now()) > mix_is_of_today_ms) continue;
      narrow_low(climate.air_min_c, product->said.air_min_c);
      narrow_high(climate.air_max_c, product->said.air_max_c);
      narrow_low(climate.humidity_min_percent, product->said.humidity_min_percent);
      narrow_high(climate.humidity_max_percent, product->said.humidity_max_percent);
    }
  return climate;
}

std::optional<trade::Climate> ClimateViewModel::asked() const {
  if (!values_[0] || !values_[1] || !values_[2]) return std::nullopt;
  trade::Climate out;
  out.air_c = *values_[0];
  out.surface_c = *values_[1];
  out.humidity_percent = *values_[2];
  return with_window(out);
}

QString ClimateViewModel::number_words(Number field) const {
  const auto& value = values_[static_cast<std::size_t>(field)];
  if (!value) return {};
  return field == Number::Humidity ? tr("%1 %").arg(plain(*value, 0))
                                   : temperature_words(*value, session_.units());
}

void ClimateViewModel::work_out() {
  std::vector<QVariantList> rows, gates;
  const QStringList titles{tr("Air"), tr("Surface"), tr("Humidity")};
  for (int i = 0; i < 3; ++i)
    rows.push_back(
        {i, titles[i], number_words(static_cast<Number>(i)), static_cast<int>(field_) == i});
  fields_.set(std::move(rows));
  result_.reset();
  if (const auto climate = asked()) result_ = trade::check_climate(*climate);
  if (result_ && *result_)
    for (const ClimateCheck& check : (*result_)->checks) {
      const bool open = !check.low && !check.high;
      const QString title = title_of(check.gate);
      const QString limit = gate_words(check);
      const QString value =
          check.gate == ClimateGate::Humidity ? tr("%1 %").arg(plain(check.value, 0))
          : check.gate == ClimateGate::DewMargin || check.gate == ClimateGate::SurfaceNearAir
              ? temperature_step_words(check.value, session_.units())
              : temperature_words(check.value, session_.units());
      const StateKind shape = open           ? StateKind::None
                              : check.passes ? StateKind::Done
                                             : StateKind::Waits;
      gates.push_back({static_cast<int>(check.gate), title, value, limit, shape_of(shape),
                       tr("%1 %2, %3").arg(title, value, limit)});
    }
  gates_.set(std::move(gates));
  emit changed();
}

// The limit; where the value rounds onto it and fails, the value with one more place stands by it.
QString ClimateViewModel::gate_words(const ClimateCheck& check) const {
  const Units units = session_.units();
  const bool step =
      check.gate == ClimateGate::DewMargin || check.gate == ClimateGate::SurfaceNearAir;
  const auto shown = [&](double value) {
    if (check.gate == ClimateGate::Humidity) return value;
    if (step) return units == Units::Metric ? value : value * 1.8;
    return temperature_shown(value, units);
  };
  const auto words = [&](double value) {
    if (check.gate == ClimateGate::Humidity) return tr("%1 %").arg(plain(value, 0));
    return step ? temperature_step_words(value, units) : temperature_words(value, units);
  };
  if (!check.low && !check.high) return tr("no limit entered");
  QString out = check.low && check.high
                    ? tr("needs %1 to %2").arg(words(*check.low), words(*check.high))
                : check.low ? tr("needs %1 or more").arg(words(*check.low))
                            : tr("needs %1 or less").arg(words(*check.high));
  const auto onto = [&](const std::optional<double>& limit) {
    return limit && std::round(shown(*limit)) == std::round(shown(check.value));
  };
  if (!check.passes && (onto(check.low) || onto(check.high)))
    out = tr("%1, is %2").arg(out, plain(shown(check.value), 1));
  return out;
}

QString ClimateViewModel::fieldTitle() const {
  switch (field_) {
    case Number::Air:
      return tr("Air in the booth");
    case Number::Surface:
      return tr("Surface of the panel");
    case Number::Humidity:
      break;
  }
  return tr("Relative humidity");
}

QString ClimateViewModel::unitWords() const {
  return field_ == Number::Humidity ? tr("%") : temperature_unit(session_.units());
}

// The pad goes on by itself after two digits, unless they can be the first two of three.
int ClimateViewModel::digits() const {
  if (field_ == Number::Humidity) return typed_.startsWith(QLatin1String("10")) ? 3 : 2;
  return session_.units() == Units::Us && typed_.startsWith(QLatin1Char('1')) ? 3 : 2;
}

void ClimateViewModel::setTyped(const QString& typed) {
  if (typed_ == typed) return;
  typed_ = typed;
  if (!typed_.isEmpty()) wrong_.clear();
  emit typedChanged();
  emit changed();
}

std::optional<double> ClimateViewModel::stored(Number field, double shown) const {
  if (field == Number::Humidity)
    return shown >= 1 && shown <= 100 ? std::optional(shown) : std::nullopt;
  const double c = celsius_of(shown, session_.units());
  return c >= -45 && c <= 60 ? std::optional(c) : std::nullopt;
}

void ClimateViewModel::type(int value) {
  const auto taken = stored(field_, value);
  typed_.clear();
  if (!taken) {
    wrong_ = field_ == Number::Humidity ? tr("Humidity is from 1 to 100 %. Type it again.")
                                        : tr("Over %1 nothing is sprayed. Type it again.")
                                              .arg(temperature_words(60, session_.units()));
  } else {
    wrong_.clear();
    values_[static_cast<std::size_t>(field_)] = taken;
    for (std::size_t i = 0; i < values_.size(); ++i)
      if (!values_[i]) {
        field_ = static_cast<Number>(i);
        break;
      }
  }
  emit typedChanged();
  work_out();
}

// What is typed again is not there until then: the pad comes back.
void ClimateViewModel::chooseField(int field) {
  if (field < 0 || field > 2) return;
  field_ = static_cast<Number>(field);
  values_[static_cast<std::size_t>(field)].reset();
  typed_.clear();
  wrong_.clear();
  emit typedChanged();
  work_out();
}

void ClimateViewModel::chooseBooth(const QString& booth) {
  if (const auto id = BoothId::parse(booth.toStdString())) booth_ = *id;
  refresh();
}

QString ClimateViewModel::answer() const {
  if (!result_) return {};
  return *result_ && (*result_)->go ? tr("Go for the paint") : tr("Wait");
}

int ClimateViewModel::answerShape() const {
  if (!result_) return shape_of(StateKind::None);
  return shape_of(*result_ && (*result_)->go ? StateKind::Done : StateKind::Waits);
}

QString ClimateViewModel::reason() const {
  if (!result_) return {};
  if (!*result_) return tr("The windows of the mixed products do not meet. Look at their sheets.");
  QStringList parts;
  for (const ClimateCheck& check : (*result_)->checks) {
    if (check.passes) continue;
    const bool under = check.low && check.value < *check.low;
    switch (check.gate) {
      case ClimateGate::DewMargin:
        parts << tr("surface too near the dew point");
        break;
      case ClimateGate::Surface:
        parts << tr("surface too cold");
        break;
      case ClimateGate::SurfaceNearAir:
        parts << tr("surface and air too far apart");
        break;
      case ClimateGate::Air:
        parts << (under ? tr("air colder than the sheet") : tr("air warmer than the sheet"));
        break;
      case ClimateGate::Humidity:
        parts << (under ? tr("drier than the sheet") : tr("more humid than the sheet"));
        break;
    }
  }
  if (parts.isEmpty()) return tr("Every gate is met. This is about the paint, not about health.");
  return sentence(parts.join(QStringLiteral(", "))) + QChar('.');
}

QString ClimateViewModel::windowWords() const {
  QStringList names;
  if (const auto* car = session_.car())
    for (const auto& mix : car->air.mixes) {
      const auto* product = session_.shop().air.find(mix.product);
      if (!product || folds::elapsed_ms(mix.at, session_.now()) > mix_is_of_today_ms) continue;
      const QString name = QString::fromStdString(product->said.product_name);
      if (!names.contains(name)) names << name;
    }
  return names.isEmpty()
             ? tr("No mix is logged: only the usual gates, common practice.")
             : tr("Window of %1, as the shop typed it.").arg(names.join(QStringLiteral(", ")));
}

QString ClimateViewModel::mainText() const {
  if (!typed_.isEmpty() || !complete()) return tr("Take this number");
  return tr("Keep this reading");
}

QString ClimateViewModel::mainSecond() const {
  if (!session_.hasPerson()) return tr("say who you are first");
  if (!typed_.isEmpty()) return fieldTitle();
  return complete() ? tr("%1, %2, %3")
                          .arg(number_words(Number::Air), number_words(Number::Surface),
                               number_words(Number::Humidity))
                    : tr("type it first");
}

bool ClimateViewModel::mainWaits() const {
  if (!session_.car() || session_.readOnly()) return true;
  if (!typed_.isEmpty()) return false;
  return !complete() || !session_.hasPerson();
}

void ClimateViewModel::act() {
  if (mainWaits()) return;
  if (!typed_.isEmpty())
    type(typed_.toInt());
  else
    keep();
}

void ClimateViewModel::keep() {
  if (!complete() || !session_.car()) return;
  session_.post(acts::ReadClimate{session_.car()->job, booth_.value_or(BoothId{}), *values_[0],
                                  *values_[1], *values_[2]},
                [this](const Result<engine::Wrote>& wrote) {
                  if (!wrote) return;
                  begin();
                  emit kept();
                });
}

void ClimateViewModel::openSum() {
  if (!result_ || !*result_) return;
  sum_.show(tr("Air and surface"), answer(), (*result_)->basis, session_.units(), reason());
  emit sumOpened();
}

QString ClimateViewModel::lastWords() const {
  const auto* car = session_.car();
  if (!car || car->air.climates.empty()) return tr("Air and surface not read yet");
  const auto& read = car->air.climates.back();
  const auto age_ms = folds::elapsed_ms(read.at, session_.now());
  const QString when = ago_words(session_.now().wall_ms - age_ms, session_.now().wall_ms);
  const QString words = tr("air %1, surface %2, %3 %")
                            .arg(temperature_words(read.air_c, session_.units()),
                                 temperature_words(read.surface_c, session_.units()),
                                 plain(read.humidity_percent, 0));
  return tr("%1: %2, %3")
      .arg(lastShape() == shape_of(StateKind::Done)     ? tr("Go for the paint")
           : lastShape() == shape_of(StateKind::NotYet) ? tr("Read it again")
                                                        : tr("Wait"),
           words, when);
}

int ClimateViewModel::lastShape() const {
  const auto* car = session_.car();
  if (!car || car->air.climates.empty()) return shape_of(StateKind::NotYet);
  const auto& read = car->air.climates.back();
  if (folds::elapsed_ms(read.at, session_.now()) > reading_is_old_ms)
    return shape_of(StateKind::NotYet);
  trade::Climate climate;
  climate.air_c = read.air_c;
  climate.surface_c = read.surface_c;
  climate.humidity_percent = read.humidity_percent;
  const auto result = trade::check_climate(with_window(climate));
  return shape_of(result && result->go ? StateKind::Done : StateKind::Waits);
}

}  // namespace jambline::screens
