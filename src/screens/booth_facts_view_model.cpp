#include "screens/booth_facts_view_model.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/air_units.h"
#include "screens/booth_air_words.h"

namespace jambline::screens {

namespace {
using job::BoothFacts;
using job::BoothKind;

constexpr std::string_view wanted_from = "wanted_from";
constexpr std::string_view extra_name = "extra_factor_name";

// One number of the facts: where it stands, its range by job/booth.h, and what it is shown in.
struct Number {
  std::string_view key;
  double min = 0;
  double max = 0;
  std::optional<double> value;
};

std::optional<AirQuantity> quantity_of(std::string_view key) {
  if (key == "volume_m3") return AirQuantity::Volume;
  if (key == "wanted_m_s") return AirQuantity::Velocity;
  if (key == "rated_exhaust_m3_h") return AirQuantity::Exhaust;
  if (key == "most_pressure_pa") return AirQuantity::Pressure;
  return std::nullopt;
}

// Reads or writes the field of one name.
struct Reading {
  std::string_view key;
  Number out;
  void operator()(const Field&, const std::string&) {}
  template <class T>
  void operator()(const Field& field, const T& value) {
    if (field.name != key) return;
    out.key = key;
    out.min = field.min;
    out.max = field.max;
    out.value = value;
  }
};
struct Writing {
  std::string_view key;
  std::optional<double> value;
  void operator()(const Field&, std::string&) const {}
  void operator()(const Field& field, std::optional<double>& to) const {
    if (field.name == key) to = value;
  }
  void operator()(const Field& field, double& to) const {
    if (field.name == key && value) to = *value;
  }
  void operator()(const Field& field, int& to) const {
    if (field.name == key && value) to = static_cast<int>(std::lround(*value));
  }
};

Number number_of(const BoothFacts& facts, std::string_view key) {
  Reading reading{key, {}};
  BoothFacts::describe(facts, reading);
  return reading.out;
}

QString plain(double value) {
  return QLocale::c().toString(value, 'g', 6);
}

QString shown(std::string_view key, double value, Units units) {
  const auto quantity = quantity_of(key);
  if (!quantity) return plain(value);
  const double step = std::pow(10.0, air_places(*quantity, units));
  return plain(std::round(shown_air(*quantity, value, units) * step) / step);
}

QString unit_of(std::string_view key, Units units) {
  if (const auto quantity = quantity_of(key)) return air_unit(*quantity, units);
  if (key == "fixed_clear_min") return BoothFactsViewModel::tr("min");
  if (key == "smoke_valid_days") return BoothFactsViewModel::tr("days");
  return {};
}

QString label_of(std::string_view key) {
  if (key == "volume_m3") return BoothFactsViewModel::tr("Volume");
  if (key == "rated_exhaust_m3_h")
    return BoothFactsViewModel::tr("Exhaust on fresh air, rated by the maker");
  if (key == "wanted_m_s") return BoothFactsViewModel::tr("Required air velocity");
  if (key == wanted_from) return BoothFactsViewModel::tr("Required by");
  if (key == "most_pressure_pa") return BoothFactsViewModel::tr("Filter pressure, the most");
  if (key == "fixed_clear_min") return BoothFactsViewModel::tr("The shop's fixed time to clear");
  if (key == "mixing_factor") return BoothFactsViewModel::tr("Mixing factor of the formula");
  if (key == "extra_factor") return BoothFactsViewModel::tr("The shop's extra factor");
  if (key == extra_name) return BoothFactsViewModel::tr("What the shop calls that factor");
  return BoothFactsViewModel::tr("A smoke test holds for");
}

QString hint_of(std::string_view key) {
  if (key == wanted_from)
    return BoothFactsViewModel::tr("the booth's maker, or the authority, year");
  if (key == extra_name) return BoothFactsViewModel::tr("only with a factor over 1");
  return BoothFactsViewModel::tr("not known");
}

std::vector<std::string_view> keys_of(BoothKind kind) {
  if (kind == BoothKind::MixingRoom)
    return {"volume_m3", "rated_exhaust_m3_h", "wanted_m_s", wanted_from, "most_pressure_pa"};
  if (job::is_open(kind))
    return {"wanted_m_s",   wanted_from, "most_pressure_pa", "fixed_clear_min",
            "extra_factor", extra_name,  "smoke_valid_days"};
  return {"volume_m3",       "rated_exhaust_m3_h", "wanted_m_s",   wanted_from, "most_pressure_pa",
          "fixed_clear_min", "mixing_factor",      "extra_factor", extra_name,  "smoke_valid_days"};
}

QString key_words(std::string_view key) {
  return QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()));
}
}  // namespace

BoothFactsViewModel::BoothFactsViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      fields_({"key", "label", "unit", "typed", "hint", "wrong", "digits"}, this) {
  connect(&session, &Session::personChanged, this, &BoothFactsViewModel::changed);
}

const folds::BoothView* BoothFactsViewModel::booth() const {
  return booth_ ? session_.shop().find(booth_) : nullptr;
}

QString BoothFactsViewModel::title() const {
  const auto* one = booth();
  return one ? tr("%1: what is known").arg(QString::fromStdString(one->name)) : QString();
}

QString BoothFactsViewModel::knownWords() const {
  const auto* one = booth();
  if (!one || one->kind == BoothKind::MixingRoom) return {};
  const auto needed =
      folds::clearance_needed(*one, session_.shop().air.find(booth_), session_.now());
  return needed ? tr("Time to clear as it stands: %1, %2")
                      .arg(count_words(needed->minutes * 60), rests_words(session_, *one, *needed))
                : say_smoke_test(session_, *one).note;
}

void BoothFactsViewModel::open(const QString& key) {
  const auto id = BoothId::parse(key.toStdString());
  booth_ = id ? BoothId{*id} : BoothId{};
  typed_.clear();
  const auto* one = booth();
  if (!one) return;
  const auto* air = session_.shop().air.find(booth_);
  const BoothFacts facts = air ? air->facts : BoothFacts{};
  for (const auto field : keys_of(one->kind)) {
    QString text;
    if (field == wanted_from)
      text = QString::fromStdString(facts.wanted_from);
    else if (field == extra_name)
      text = QString::fromStdString(facts.extra_factor_name);
    else if (const auto number = number_of(facts, field); number.value)
      text = shown(field, *number.value, session_.units());
    typed_.push_back({field, text, {}});
  }
  show();
}

void BoothFactsViewModel::show() {
  std::vector<QVariantList> rows;
  for (const auto& one : typed_)
    rows.push_back({key_words(one.key), label_of(one.key), unit_of(one.key, session_.units()),
                    one.text, hint_of(one.key), one.wrong,
                    one.key != wanted_from && one.key != extra_name});
  fields_.set(std::move(rows));
  emit changed();
}

void BoothFactsViewModel::type(const QString& key, const QString& text) {
  for (auto& one : typed_)
    if (key_words(one.key) == key) one.text = text;
}

std::optional<job::BoothFacts> BoothFactsViewModel::read() {
  const auto* air = session_.shop().air.find(booth_);
  BoothFacts facts = air ? air->facts : BoothFacts{};
  const BoothFacts usual;
  bool good = true;
  const auto refuse = [&](Typed& field, const QString& why) {
    field.wrong = why;
    good = false;
  };
  for (auto& field : typed_) {
    field.wrong.clear();
    const QString text = field.text.trimmed();
    if (field.key == wanted_from) {
      facts.wanted_from = text.toStdString();
      continue;
    }
    if (field.key == extra_name) {
      facts.extra_factor_name = text.toStdString();
      continue;
    }
    const auto range = number_of(usual, field.key);
    // A number that must stand takes its usual value again; the others are not known then.
    std::optional<double> value = range.value;
    if (!text.isEmpty()) {
      value = typed_number(text);
      if (!value) {
        refuse(field, tr("This is no number."));
        continue;
      }
      const auto quantity = quantity_of(field.key);
      const auto kept = number_of(air ? air->facts : usual, field.key);
      // What was not touched keeps what it was rounded from.
      if (kept.value && text == shown(field.key, *kept.value, session_.units()))
        value = kept.value;
      else if (quantity)
        value = stored_air(*quantity, *value, session_.units());
      if (*value < range.min || *value > range.max) {
        refuse(field, tr("It lies between %1 and %2 %3.")
                          .arg(shown(field.key, range.min, session_.units()),
                               shown(field.key, range.max, session_.units()),
                               unit_of(field.key, session_.units()))
                          .replace(QStringLiteral(" ."), QStringLiteral(".")));
        continue;
      }
    }
    Writing writing{field.key, value};
    BoothFacts::describe(facts, writing);
  }
  for (auto& field : typed_) {
    if (field.key == wanted_from && facts.wanted_m_s && facts.wanted_from.empty())
      refuse(field, tr("Say who requires it: a number of nobody is no requirement."));
    if (field.key == extra_name && facts.extra_factor != 1 && facts.extra_factor_name.empty())
      refuse(field, tr("Give the factor a name."));
  }
  return good ? std::optional(facts) : std::nullopt;
}

void BoothFactsViewModel::keep() {
  if (!booth() || !mayKeep()) return;
  const auto facts = read();
  show();
  if (!facts) return;
  const auto* air = session_.shop().air.find(booth_);
  if (air && air->facts == *facts && air->facts_heads.size() == 1) {
    emit kept();
    return;
  }
  session_.post(acts::SetBoothFacts{booth_, *facts}, [this](const Result<engine::Wrote>& wrote) {
    if (wrote) emit kept();
  });
}

}  // namespace jambline::screens
