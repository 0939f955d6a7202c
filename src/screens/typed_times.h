// screens/typed_times.h: days and times of day as people type them, and days as they read them.
//
// Days:  days since 1970-01-01 in the shop's zone. "2026-03-09" and "3/9/2026" (month first) are
//        read; what could be two days is not guessed. Written "Mar 9, 2026".
// Times: minutes of a day. "7:10", "7.10" and "0710" are read.
// Threads: any.
#pragma once

#include <QString>
#include <cstdint>
#include <optional>

namespace jambline::screens {

std::optional<int> typed_day(const QString& text);
std::optional<int> typed_minute(const QString& text);
int today_of(std::int64_t wall_ms, const QString& zone);
QString day_text(int day);     // "2026-03-09", as it can be typed
QString date_of_day(int day);  // "Mar 9, 2026"
// "in 12 days", "3 months ago", "today"
QString days_apart_words(int day, int today);
// nullopt for a day that no calendar has.
std::optional<std::int64_t> wall_of(int day, int minute, const QString& zone);

}  // namespace jambline::screens
