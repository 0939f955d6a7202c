#include "screens/air_units.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

namespace jambline::screens {

namespace {
constexpr double m_per_ft = 0.3048;
constexpr double pa_per_in_wc = 249.0889;

QString air_tr(const char* words) {
  return QCoreApplication::translate("units", words);
}

// Stored for one that is shown.
double us_unit(AirQuantity quantity) {
  switch (quantity) {
    case AirQuantity::Velocity:
      return m_per_ft / 60;
    case AirQuantity::Pressure:
      return pa_per_in_wc;
    case AirQuantity::Exhaust:
      return m_per_ft * m_per_ft * m_per_ft * 60;
    case AirQuantity::Volume:
      return m_per_ft * m_per_ft * m_per_ft;
  }
  return 1;
}

QString number(double value, int places) {
  const double step = std::pow(10.0, places);
  const double rounded = std::round(value * step) / step;
  QString text =
      QLocale(QLocale::English, QLocale::UnitedStates).toString(std::abs(rounded), 'f', places);
  return rounded < 0 ? QChar(0x2212) + text : text;
}
}  // namespace

double shown_air(AirQuantity quantity, double stored, Units units) {
  return units == Units::Metric ? stored : stored / us_unit(quantity);
}

double stored_air(AirQuantity quantity, double shown, Units units) {
  return units == Units::Metric ? shown : shown * us_unit(quantity);
}

QString air_unit(AirQuantity quantity, Units units) {
  const bool metric = units == Units::Metric;
  switch (quantity) {
    case AirQuantity::Velocity:
      return metric ? air_tr(QT_TRANSLATE_NOOP("units", "m/s"))
                    : air_tr(QT_TRANSLATE_NOOP("units", "ft/min"));
    case AirQuantity::Pressure:
      return metric ? air_tr(QT_TRANSLATE_NOOP("units", "Pa"))
                    : air_tr(QT_TRANSLATE_NOOP("units", "in. w.c."));
    case AirQuantity::Exhaust:
      return metric ? air_tr(QT_TRANSLATE_NOOP("units", "m\u00b3/h"))
                    : air_tr(QT_TRANSLATE_NOOP("units", "ft\u00b3/min"));
    case AirQuantity::Volume:
      return metric ? air_tr(QT_TRANSLATE_NOOP("units", "m\u00b3"))
                    : air_tr(QT_TRANSLATE_NOOP("units", "ft\u00b3"));
  }
  return {};
}

int air_places(AirQuantity quantity, Units units) {
  if (quantity == AirQuantity::Velocity) return units == Units::Metric ? 2 : 0;
  if (quantity == AirQuantity::Pressure) return units == Units::Metric ? 0 : 2;
  return 0;
}

QString air_number(AirQuantity quantity, double stored, Units units) {
  return number(shown_air(quantity, stored, units), air_places(quantity, units));
}

QString air_words(AirQuantity quantity, double stored, Units units) {
  return air_tr(QT_TRANSLATE_NOOP("units", "%1 %2"))
      .arg(air_number(quantity, stored, units), air_unit(quantity, units));
}

QString air_words(AirQuantity quantity, double stored, double limit, Units units) {
  int places = air_places(quantity, units);
  const double shown = shown_air(quantity, stored, units);
  QString text = number(shown, places);
  if (stored != limit && text == number(shown_air(quantity, limit, units), places))
    text = number(shown, ++places);
  return air_tr(QT_TRANSLATE_NOOP("units", "%1 %2")).arg(text, air_unit(quantity, units));
}

QString minutes_seconds(double minutes) {
  const auto seconds = static_cast<long long>(std::ceil(minutes * 60 - 1e-6));
  return QStringLiteral("%1:%2").arg(seconds / 60).arg(seconds % 60, 2, 10, QChar('0'));
}

}  // namespace jambline::screens
