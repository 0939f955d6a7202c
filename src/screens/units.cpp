#include "screens/units.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <cmath>
#include <cstdlib>

#include "base/spans.h"
#include "base/zones.h"

namespace jambline::screens {

namespace {
constexpr double mm_per_in = 25.4;
constexpr double mm2_per_ft2 = 304.8 * 304.8;
constexpr double f_per_c = 1.8;
constexpr double f_at_0_c = 32;
constexpr std::int64_t ms_per_tenth_h = 360'000;

QString unit_tr(const char* words) {
  return QCoreApplication::translate("units", words);
}

// Shortest of at most `places`, with a true minus.
QString plain_number(double value, int places) {
  const double step = std::pow(10.0, places);
  const double rounded = std::round(value * step) / step;
  QString text = QLocale::c().toString(std::abs(rounded), 'f', places);
  return rounded < 0 ? QChar(0x2212) + text : text;
}

QString with_unit(const QString& text, const char* unit) {
  return text + QChar(' ') + unit_tr(unit);
}

int offset_s(std::int64_t wall_ms, const QString& zone) {
  return offset_s_at(zone.toStdString(), wall_ms).value_or(0);
}

std::int64_t local_minute(std::int64_t wall_ms, const QString& zone) {
  const std::int64_t local_ms = wall_ms + std::int64_t{offset_s(wall_ms, zone)} * 1000;
  return local_ms >= 0 ? local_ms / minute_ms : (local_ms - minute_ms + 1) / minute_ms;
}

QDate local_day_of(std::int64_t wall_ms, const QString& zone) {
  const std::int64_t minute = local_minute(wall_ms, zone);
  const std::int64_t day = minute >= 0 ? minute / 1440 : (minute - 1439) / 1440;
  return QDate(1970, 1, 1).addDays(day);
}

QString weekday(const QDate& day) {
  return QLocale().standaloneDayName(day.dayOfWeek(), QLocale::ShortFormat);
}

QString month_day(const QDate& day) {
  return QLocale().standaloneMonthName(day.month(), QLocale::ShortFormat) + QChar(' ') +
         QString::number(day.day());
}
}  // namespace

QString length_words(double mm, Units units) {
  if (units == Units::Metric)
    return with_unit(plain_number(mm, 0), QT_TRANSLATE_NOOP("units", "mm"));
  const double in = mm / mm_per_in;
  return with_unit(plain_number(in, std::abs(in) < 9.95 ? 1 : 0), QT_TRANSLATE_NOOP("units", "in"));
}

QString area_words(double mm2, Units units) {
  if (units == Units::Metric)
    return with_unit(plain_number(mm2 / 1e6, 1), QT_TRANSLATE_NOOP("units", "m\u00b2"));
  return with_unit(plain_number(mm2 / mm2_per_ft2, 0), QT_TRANSLATE_NOOP("units", "ft\u00b2"));
}

QString temperature_unit(Units units) {
  return units == Units::Metric ? unit_tr(QT_TRANSLATE_NOOP("units", "\u00b0C"))
                                : unit_tr(QT_TRANSLATE_NOOP("units", "\u00b0F"));
}

double temperature_shown(double celsius, Units units) {
  return units == Units::Metric ? celsius : celsius * f_per_c + f_at_0_c;
}

double celsius_of(double shown, Units units) {
  return units == Units::Metric ? shown : (shown - f_at_0_c) / f_per_c;
}

QString temperature_words(double celsius, Units units) {
  return plain_number(temperature_shown(celsius, units), 0) + QChar(' ') + temperature_unit(units);
}

QString temperature_step_words(double celsius, Units units) {
  return plain_number(units == Units::Metric ? celsius : celsius * f_per_c, 0) + QChar(' ') +
         temperature_unit(units);
}

QString hours_words(std::int64_t ms) {
  const std::int64_t tenths = (ms + ms_per_tenth_h / 2) / ms_per_tenth_h;
  return with_unit(plain_number(static_cast<double>(tenths) / 10.0, 1),
                   QT_TRANSLATE_NOOP("units", "h"));
}

QString duration_words(std::int64_t ms) {
  const std::int64_t minutes = (std::abs(ms) + minute_ms / 2) / minute_ms;
  const QString rest = with_unit(QString::number(minutes % 60), QT_TRANSLATE_NOOP("units", "min"));
  if (minutes < 60) return rest;
  const QString hours = with_unit(QString::number(minutes / 60), QT_TRANSLATE_NOOP("units", "h"));
  return minutes % 60 == 0 ? hours : hours + QChar(' ') + rest;
}

QString running_words(std::int64_t ms) {
  const std::int64_t seconds = ms > 0 ? ms / 1000 : 0;
  return QStringLiteral("%1:%2:%3")
      .arg(seconds / 3600)
      .arg(seconds / 60 % 60, 2, 10, QChar('0'))
      .arg(seconds % 60, 2, 10, QChar('0'));
}

QString clock_words(std::int64_t wall_ms, const QString& zone) {
  const std::int64_t minute = ((local_minute(wall_ms, zone) % 1440) + 1440) % 1440;
  return QStringLiteral("%1:%2")
      .arg(minute / 60, 2, 10, QChar('0'))
      .arg(minute % 60, 2, 10, QChar('0'));
}

QString time_words(std::int64_t wall_ms, std::int64_t now_ms, const QString& zone) {
  const QDate day = local_day_of(wall_ms, zone);
  const qint64 apart = local_day_of(now_ms, zone).daysTo(day);
  if (apart == 0) return clock_words(wall_ms, zone);
  if (std::abs(apart) < 7) return weekday(day) + QChar(' ') + clock_words(wall_ms, zone);
  return month_day(day);
}

QString day_words(std::int64_t wall_ms, const QString& zone) {
  const QDate day = local_day_of(wall_ms, zone);
  return weekday(day) + QChar(' ') + month_day(day);
}

std::optional<double> typed_number(const QString& text) {
  QString plain = text.trimmed();
  plain.replace(QChar(0x2212), QChar('-'));
  plain.replace(QChar(','), QChar('.'));
  bool good = false;
  QLocale c = QLocale::c();
  c.setNumberOptions(QLocale::RejectGroupSeparator);
  const double value = c.toDouble(plain, &good);
  if (!good || !std::isfinite(value)) return std::nullopt;
  return value;
}

}  // namespace jambline::screens
