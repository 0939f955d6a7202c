#include "screens/rate_units.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <cmath>

#include "base/spans.h"
#include "base/zones.h"

namespace jambline::screens {

namespace {
constexpr double m2_per_ft2 = 0.3048 * 0.3048;

QString rate_tr(const char* words) {
  return QCoreApplication::translate("units", words);
}

QDate rate_date(std::int64_t wall_ms, const QString& zone) {
  return QDate(1970, 1, 1).addDays(static_cast<qint64>(std::floor(local_days(wall_ms, zone))));
}
}  // namespace

double per_area(double per_m2, Units units) {
  return units == Units::Metric ? per_m2 : per_m2 * m2_per_ft2;
}

QString area_unit(Units units) {
  return units == Units::Metric ? rate_tr(QT_TRANSLATE_NOOP("units", "m\u00b2"))
                                : rate_tr(QT_TRANSLATE_NOOP("units", "ft\u00b2"));
}

QString rate_number(double per_m2, Units units) {
  return QLocale::c().toString(per_area(per_m2, units), 'f', units == Units::Metric ? 1 : 2);
}

QString rate_words(double per_m2, Units units) {
  return rate_tr(QT_TRANSLATE_NOOP("units", "%1 per %2"))
      .arg(rate_number(per_m2, units), area_unit(units));
}

double local_days(std::int64_t wall_ms, const QString& zone) {
  const int offset_s = offset_s_at(zone.toStdString(), wall_ms).value_or(0);
  return static_cast<double>(wall_ms + std::int64_t{offset_s} * 1000) / ms_per_day;
}

QString date_words(std::int64_t wall_ms, std::int64_t now_ms, const QString& zone) {
  const QDate date = rate_date(wall_ms, zone);
  const QString day = QLocale().standaloneMonthName(date.month(), QLocale::ShortFormat) +
                      QChar(' ') + QString::number(date.day());
  if (date.year() == rate_date(now_ms, zone).year()) return day;
  return rate_tr(QT_TRANSLATE_NOOP("units", "%1, %2")).arg(day).arg(date.year());
}

}  // namespace jambline::screens
