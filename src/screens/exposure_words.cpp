#include "screens/exposure_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "screens/air_words.h"
#include "screens/text.h"

namespace jambline::screens {

namespace {
constexpr int most_places = 9;

QString exposure_tr(const char* words) {
  return QCoreApplication::translate("exposure", words);
}

QString fixed(double value, int places) {
  QString out = QLocale::c().toString(value, 'f', places);
  if (out.contains(QLatin1Char('.'))) {
    while (out.endsWith(QLatin1Char('0'))) out.chop(1);
    if (out.endsWith(QLatin1Char('.'))) out.chop(1);
  }
  return out;
}

// Four figures that count.
int places_of(double value) {
  if (value <= 0) return 0;
  const int before = static_cast<int>(std::floor(std::log10(value))) + 1;
  return std::clamp(4 - before, 0, most_places);
}
}  // namespace

QString concentration_number(double value, std::optional<double> against) {
  int places = places_of(value);
  QString out = fixed(value, places);
  if (!against || *against == value) return out;
  const QString limit = fixed(*against, places_of(*against));
  while (out == limit && places < most_places) out = fixed(value, ++places);
  return out;
}

QString concentration_unit(const std::string& unit) {
  return unit == "mg/m3" ? exposure_tr(QT_TRANSLATE_NOOP("exposure", "mg/m\u00b3")) : text(unit);
}

QString concentration_words(double value, const std::string& unit, std::optional<double> against) {
  return concentration_number(value, against) + QChar(' ') + concentration_unit(unit);
}

QString limit_title(const job::ExposureLimit& limit) {
  return exposure_tr(QT_TRANSLATE_NOOP("exposure", "%1, %2"))
      .arg(text(limit.substance), words_of(limit.kind));
}

QString limit_from(const job::ExposureLimit& limit) {
  return exposure_tr(QT_TRANSLATE_NOOP("exposure", "%1, %2"))
      .arg(text(limit.authority))
      .arg(limit.year);
}

QString factor_words(const job::Respirator& said) {
  return exposure_tr(QT_TRANSLATE_NOOP("exposure", "%1, %2 scheme, %3 %4"))
      .arg(fixed(said.assigned_factor, 2), words_of(said.scheme), text(said.authority))
      .arg(said.year);
}

MaximumUseWords words_of(const folds::UseOfLimit& use) {
  MaximumUseWords out{{}, {}, fail(Code::Missing, "maximum use", "scheme")};
  if (!use.asked) {
    out.note = exposure_tr(QT_TRANSLATE_NOOP(
        "exposure", "Not computed: no scheme of protection factors goes with this limit."));
    return out;
  }
  out.result = trade::maximum_use(*use.asked);
  if (!out.result && use.asked->factor_scheme != use.asked->limit_scheme) {
    out.note =
        exposure_tr(
            QT_TRANSLATE_NOOP("exposure", "Not computed: a %1 factor does not go with a %2 limit."))
            .arg(words_of(use.asked->factor_scheme), words_of(use.asked->limit_scheme));
  } else if (!out.result) {
    out.note = exposure_tr(QT_TRANSLATE_NOOP("exposure",
                                             "Not computed: the factor or the limit is no number "
                                             "that it can be computed from."));
  } else {
    out.value = concentration_words(out.result->most, use.asked->unit);
    if (out.result->bound_by == "immediately dangerous")
      out.note = exposure_tr(QT_TRANSLATE_NOOP(
          "exposure", "held by what is dangerous at once, not by factor × limit"));
    else if (use.asked->dangerous)
      out.note = exposure_tr(QT_TRANSLATE_NOOP("exposure", "factor × limit"));
    else
      out.note = exposure_tr(QT_TRANSLATE_NOOP(
          "exposure", "factor × limit; no value that is dangerous at once is entered"));
  }
  return out;
}

}  // namespace jambline::screens
