// screens/exposure_words.h: concentrations, limits, protection factors and what a respirator may be
// worn up to, as people read them.
//
// Numbers: up to four figures that count, without an exponent; one that would read like the limit
// it
//          is held against, and is not it, gets more places.
// Words:   "over" and "below" a named limit, and nothing else is ever said of a number.
// Threads: any.
#pragma once

#include <QString>

#include "base/error.h"
#include "folds/exposure_of_shift.h"

namespace jambline::screens {

QString concentration_number(double value, std::optional<double> against = {});
QString concentration_unit(const std::string& unit);  // "mg/m³"
QString concentration_words(double value, const std::string& unit,
                            std::optional<double> against = {});

QString limit_title(const job::ExposureLimit& limit);  // "HDI, 8 hours"
QString limit_from(const job::ExposureLimit& limit);   // "NIOSH (recommended) 2019"
QString factor_words(const job::Respirator& said);     // "50, US scheme, OSHA 2006"

struct MaximumUseWords {
  QString value;  // "0.25 ppm"; "" nothing can be said
  QString note;   // what holds it, or why nothing is said
  Result<trade::MaximumUseResult> result;
};
MaximumUseWords words_of(const folds::UseOfLimit& use);

}  // namespace jambline::screens
