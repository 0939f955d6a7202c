#include "screens/sum_rows.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <string_view>

#include "job/film_reading.h"
#include "screens/air_units.h"
#include "screens/rate_units.h"

namespace jambline::screens {

namespace {
// The names of terms are the calculation's own; a translation knows them by their English words.
QString said(const std::string& words) {
  return QCoreApplication::translate("sum", words.c_str());
}

QString sum_number(double value, int places) {
  QString text = QLocale::c().toString(std::abs(value), 'f', places);
  if (text.contains(QLatin1Char('.'))) {
    while (text.endsWith(QLatin1Char('0'))) text.chop(1);
    if (text.endsWith(QLatin1Char('.'))) text.chop(1);
  }
  return value < 0 && text != QLatin1String("0") ? QChar(0x2212) + text : text;
}

// Four figures that count.
int sum_places(double value) {
  if (value == 0 || value == std::round(value)) return 0;
  const int before = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  return std::clamp(4 - before, 0, 6);
}

// A gap between two panels, and what is left of it: gauged in mm on every device.
bool is_of_gaps(const trade::Term& term) {
  constexpr std::string_view names[] = {"tolerance", "farthest off after it"};
  constexpr std::string_view begins[] = {"found at ", "wanted at ", "left after a free",
                                         "left within the slots"};
  return std::any_of(std::begin(names), std::end(names),
                     [&](std::string_view one) { return term.name == one; }) ||
         std::any_of(std::begin(begins), std::end(begins),
                     [&](std::string_view one) { return term.name.rfind(one, 0) == 0; });
}

// "pull tape at 20 C": the temperature of a point, in the device's unit.
QString name_words(const trade::Term& term, Units units) {
  static const QRegularExpression place(QStringLiteral("^(found|wanted) at (\\d+)$"));
  const auto gap = place.match(QString::fromStdString(term.name));
  if (gap.hasMatch())
    return (gap.captured(1) == QLatin1String("found") ? SumRows::tr("found at point %1")
                                                      : SumRows::tr("wanted at point %1"))
        .arg(gap.captured(2));
  static const QRegularExpression point(QStringLiteral("^(.*) at (-?\\d+) C$"));
  const auto found = point.match(QString::fromStdString(term.name));
  if (!found.hasMatch()) return said(term.name);
  return SumRows::tr("%1 at %2")
      .arg(said(found.captured(1).toStdString()),
           temperature_words(found.captured(2).toDouble(), units));
}

// Of the air, in the device's units; none: it is something else.
std::optional<QString> air_value(const trade::Term& term, Units units) {
  constexpr std::pair<std::string_view, AirQuantity> known[] = {{"m/s", AirQuantity::Velocity},
                                                                {"Pa", AirQuantity::Pressure},
                                                                {"Pa/d", AirQuantity::Pressure},
                                                                {"m3/h", AirQuantity::Exhaust},
                                                                {"m3", AirQuantity::Volume}};
  for (const auto& [unit, quantity] : known) {
    if (term.unit != unit) continue;
    const double shown = shown_air(quantity, term.value, units);
    const QString words =
        sum_number(shown, sum_places(shown)) + QChar(' ') + air_unit(quantity, units);
    return unit == "Pa/d" ? SumRows::tr("%1 a day").arg(words) : words;
  }
  return std::nullopt;
}

QString value_words(const trade::Term& term, Units units) {
  if (const auto air = air_value(term, units)) return *air;
  if (term.name == "mean day") {
    const auto at_ms = static_cast<std::int64_t>(term.value * 86'400'000);
    return date_words(at_ms, at_ms, QStringLiteral("UTC"));
  }
  if (term.unit == "C") {
    // A spread or a margin is a difference.
    const bool step = term.name.find("spread") != std::string::npos ||
                      term.name.find("margin") != std::string::npos;
    const double shown = step ? temperature_shown(term.value, units) - temperature_shown(0, units)
                              : temperature_shown(term.value, units);
    return sum_number(shown, 1) + QChar(' ') + temperature_unit(units);
  }
  if (term.unit == "um") {
    if (units == Units::Us)
      return SumRows::tr("%1 mil").arg(sum_number(term.value / job::um_per_mil, 2));
    return SumRows::tr("%1 µm").arg(sum_number(term.value, 1));
  }
  const bool chance = term.name.find("chance") != std::string::npos;
  if (term.unit == "%" && chance) return chance_words(term.value);
  if (term.unit == "mm" && is_of_gaps(term))
    return SumRows::tr("%1 mm").arg(sum_number(term.value, 2));
  if (term.unit == "mm") return length_words(term.value, units);
  if (term.unit == "1/m2") {
    const double shown = per_area(term.value, units);
    return SumRows::tr("%1 per %2").arg(sum_number(shown, sum_places(shown)), area_unit(units));
  }
  if (term.unit == "m2") return area_words(term.value * 1e6, units);
  const QString plain = sum_number(term.value, sum_places(term.value));
  return term.unit.empty() ? plain : SumRows::tr("%1 %2").arg(plain, said(term.unit));
}
}  // namespace

QString chance_words(double percent) {
  const double share = percent / 100;
  if (share < 0.001) return SumRows::tr("under 1 in 1,000");
  if (share > 0.98) return SumRows::tr("nearly certain");
  if (share >= 0.15) return SumRows::tr("%1 in 10").arg(std::lround(share * 10));
  const double one_in = 1 / share;
  const double step = one_in < 20 ? 1 : one_in < 100 ? 5 : one_in < 300 ? 50 : 100;
  const auto shown = static_cast<int>(std::lround(one_in / step) * static_cast<long>(step));
  return SumRows::tr("1 in %1").arg(QLocale::c().toString(shown));
}

SumRows::SumRows(QObject* parent)
    : QObject(parent), rows_({"key", "name", "value", "source"}, this) {}

void SumRows::show(const QString& title, const QString& figure, const trade::Basis& basis,
                   Units units, const QString& note) {
  std::vector<Line> lines;
  for (const trade::Term& term : basis.terms)
    lines.push_back({name_words(term, units), value_words(term, units), said(term.source)});
  show_lines(title, figure, basis, lines, note);
}

void SumRows::show_lines(const QString& title, const QString& figure, const trade::Basis& basis,
                         const std::vector<Line>& lines, const QString& note) {
  title_ = title;
  figure_ = figure;
  note_ = note;
  method_ = said(basis.method);
  seed_ = basis.seed ? QString::number(*basis.seed) : QString();
  std::vector<QVariantList> rows;
  for (std::size_t i = 0; i < lines.size(); ++i)
    rows.push_back({static_cast<int>(i), lines[i].name, lines[i].value, lines[i].source});
  rows_.set({});  // another sum: its rows are not the old ones changed
  rows_.set(std::move(rows));
  emit changed();
}

}  // namespace jambline::screens
