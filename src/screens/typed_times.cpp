#include "screens/typed_times.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QRegularExpression>
#include <cmath>
#include <cstdlib>

#include "base/zones.h"
#include "screens/rate_units.h"

namespace jambline::screens {

namespace {
const QDate first_day(1970, 1, 1);

QString typed_tr(const char* words) {
  return QCoreApplication::translate("units", words);
}

QDate date_of(int day) {
  return first_day.addDays(day);
}
}  // namespace

std::optional<int> typed_day(const QString& text) {
  static const QRegularExpression year_first(QStringLiteral(R"(^(\d{4})-(\d{1,2})-(\d{1,2})$)"));
  static const QRegularExpression month_first(QStringLiteral(R"(^(\d{1,2})/(\d{1,2})/(\d{4})$)"));
  QDate date;
  if (const auto found = year_first.match(text.trimmed()); found.hasMatch())
    date = QDate(found.captured(1).toInt(), found.captured(2).toInt(), found.captured(3).toInt());
  else if (const auto us = month_first.match(text.trimmed()); us.hasMatch())
    date = QDate(us.captured(3).toInt(), us.captured(1).toInt(), us.captured(2).toInt());
  if (!date.isValid()) return std::nullopt;
  const qint64 day = first_day.daysTo(date);
  if (day < 0 || day > 100'000) return std::nullopt;
  return static_cast<int>(day);
}

std::optional<int> typed_minute(const QString& text) {
  static const QRegularExpression shape(QStringLiteral(R"(^(\d{1,2})(?:[:.]?)(\d{2})$)"));
  const auto found = shape.match(text.trimmed());
  if (!found.hasMatch()) return std::nullopt;
  const int hour = found.captured(1).toInt();
  const int minute = found.captured(2).toInt();
  if (hour > 23 || minute > 59) return std::nullopt;
  return hour * 60 + minute;
}

int today_of(std::int64_t wall_ms, const QString& zone) {
  return static_cast<int>(std::floor(local_days(wall_ms, zone)));
}

QString day_text(int day) {
  return date_of(day).toString(Qt::ISODate);
}

QString date_of_day(int day) {
  const QDate date = date_of(day);
  return typed_tr(QT_TRANSLATE_NOOP("units", "%1 %2, %3"))
      .arg(QLocale().standaloneMonthName(date.month(), QLocale::ShortFormat))
      .arg(date.day())
      .arg(date.year());
}

QString days_apart_words(int day, int today) {
  const int apart = std::abs(day - today);
  if (apart == 0) return typed_tr(QT_TRANSLATE_NOOP("units", "today"));
  QString length;
  if (apart == 1)
    length = typed_tr(QT_TRANSLATE_NOOP("units", "1 day"));
  else if (apart < 60)
    length = typed_tr(QT_TRANSLATE_NOOP("units", "%1 days")).arg(apart);
  else if (apart < 730)
    length = typed_tr(QT_TRANSLATE_NOOP("units", "%1 months")).arg(apart * 12 / 365);
  else
    length = typed_tr(QT_TRANSLATE_NOOP("units", "%1 years")).arg(apart / 365);
  return (day > today ? typed_tr(QT_TRANSLATE_NOOP("units", "in %1"))
                      : typed_tr(QT_TRANSLATE_NOOP("units", "%1 ago")))
      .arg(length);
}

std::optional<std::int64_t> wall_of(int day, int minute, const QString& zone) {
  const QDate date = date_of(day);
  const auto wall = utc_of(zone.toStdString(), {date.year(), date.month(), date.day()}, minute);
  return wall ? std::optional<std::int64_t>(*wall) : std::nullopt;
}

}  // namespace jambline::screens
