// screens/typed_words.h: what people type for times and durations.
#pragma once

#include <QString>
#include <QTime>
#include <optional>

namespace jambline::screens {

// "14:30", "1430", "2:30 pm"
std::optional<QTime> typed_time(const QString& text);
// Minutes: "45", "45 min", "16 h", "1 h 30 min", "1:30", "7 d"
std::optional<double> typed_minutes(const QString& text);

}  // namespace jambline::screens
