#include "screens/limits_view_model.h"

#include <algorithm>
#include <array>

#include "screens/air_words.h"
#include "screens/exposure_words.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr auto units_of_limits = std::to_array<const char*>({"ppm", "mg/m3"});
constexpr int no_scheme = static_cast<int>(enum_words<trade::FactorScheme>.size());

}  // namespace

LimitsViewModel::LimitsViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      limits_({"key", "substance", "kindWords", "value", "unit", "from", "source", "own", "retired",
               "spoken"},
              this) {
  connect(&session, &Session::shopChanged, this, &LimitsViewModel::refresh);
  refresh();
}

void LimitsViewModel::refresh() {
  std::vector<const folds::LimitView*> all;
  for (const auto& limit : session().shop().air.limits) all.push_back(&limit);
  std::stable_sort(all.begin(), all.end(), [](const auto* a, const auto* b) {
    return !a->said.retired && b->said.retired;
  });
  std::vector<QVariantList> rows;
  for (const auto* limit : all) {
    const auto& said = limit->said;
    const QString value = concentration_number(said.value);
    const QString unit = concentration_unit(said.unit);
    QString spoken = tr("%1, %2 %3, %4. Source: %5")
                         .arg(limit_title(said), value, unit, limit_from(said), text(said.source));
    if (said.retired) spoken = tr("%1. Does not hold here.").arg(spoken);
    rows.push_back({text(limit->limit.hex()), text(said.substance), words_of(said.kind), value,
                    unit, limit_from(said), text(said.source), !limit->usual, said.retired,
                    spoken});
  }
  limits_.set(std::move(rows));
  emit changed();
  emit openChanged();
}

QString LimitsViewModel::countWords() const {
  const auto& all = session().shop().air.limits;
  const auto held =
      std::count_if(all.begin(), all.end(), [](const auto& one) { return !one.said.retired; });
  const auto retired = static_cast<long>(all.size()) - held;
  return retired == 0 ? tr("%1 limits").arg(held)
                      : tr("%1 limits, %2 retired").arg(held).arg(retired);
}

QStringList LimitsViewModel::kinds() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<trade::LimitKind>.size(); ++i)
    out << sentence(words_of(static_cast<trade::LimitKind>(i)));
  return out;
}

QStringList LimitsViewModel::unitNames() const {
  QStringList out;
  for (const char* unit : units_of_limits) out << concentration_unit(unit);
  return out;
}

QStringList LimitsViewModel::schemes() const {
  QStringList out;
  for (int i = 0; i < no_scheme; ++i) out << words_of(static_cast<trade::FactorScheme>(i));
  return out << tr("None");
}

QString LimitsViewModel::value() const {
  return open_ ? concentration_number(shown_.value) : QString();
}

int LimitsViewModel::unit() const {
  return shown_.unit == units_of_limits[1] ? 1 : 0;
}

QString LimitsViewModel::year() const {
  return open_ ? QString::number(shown_.year) : QString();
}

int LimitsViewModel::scheme() const {
  return shown_.scheme ? static_cast<int>(*shown_.scheme) : no_scheme;
}

QString LimitsViewModel::dangerous() const {
  return shown_.dangerous ? concentration_number(*shown_.dangerous) : QString();
}

const folds::LimitView* LimitsViewModel::find(const LimitId& limit) const {
  for (const auto& one : session().shop().air.limits)
    if (one.limit == limit) return &one;
  return nullptr;
}

void LimitsViewModel::open(const QString& limit) {
  nothingWrong();
  const auto id = LimitId::parse(limit.toStdString());
  const auto* known = id ? find(LimitId{*id}) : nullptr;
  open_ = known ? std::optional(known->limit) : std::nullopt;
  shown_ = known ? known->said : job::ExposureLimit{};
  emit openChanged();
}

void LimitsViewModel::keep(const QString& substance, int kind, const QString& value, int unit,
                           const QString& authority, const QString& year, const QString& source,
                           int scheme, const QString& dangerous) {
  nothingWrong();
  if (kind < 0 || kind >= static_cast<int>(enum_words<trade::LimitKind>.size()) || unit < 0 ||
      unit >= static_cast<int>(units_of_limits.size()) || scheme < 0 || scheme > no_scheme)
    return;
  const auto what = words(QStringLiteral("substance"), substance);
  const auto most = number(QStringLiteral("value"), value, 1e-9, 1e9);
  const auto by = words(QStringLiteral("authority"), authority);
  const auto of_year = whole(QStringLiteral("year"), year, 1900, 2200);
  const auto from = words(QStringLiteral("source"), source);
  std::optional<double> at_once;
  if (!dangerous.trimmed().isEmpty())
    at_once = number(QStringLiteral("dangerous"), dangerous, 1e-9, 1e9);
  if (refused()) return;
  job::ExposureLimit said;
  said.substance = *what;
  said.kind = static_cast<trade::LimitKind>(kind);
  said.value = *most;
  said.unit = units_of_limits[static_cast<std::size_t>(unit)];
  said.authority = *by;
  said.year = *of_year;
  said.source = *from;
  said.retired = shown_.retired;
  if (scheme != no_scheme) said.scheme = static_cast<trade::FactorScheme>(scheme);
  said.dangerous = at_once;
  if (open_ && said == shown_) {
    emit kept();
    return;
  }
  keep_as(acts::SetLimit{open_, said});
}

void LimitsViewModel::retire(bool retired) {
  if (!open_ || shown_.retired == retired) return;
  job::ExposureLimit said = shown_;
  said.retired = retired;
  keep_as(acts::SetLimit{open_, said});
}

}  // namespace jambline::screens
