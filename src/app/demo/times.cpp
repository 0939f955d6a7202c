#include "app/demo/times.h"

#include <algorithm>
#include <chrono>

#include "app/demo/invented.h"
#include "base/spans.h"
#include "base/zones.h"

namespace jambline::demo {

namespace {
constexpr int workdays_in_a_week = 5;
constexpr std::int64_t lane_start_min[lanes] = {30, 150, 330, 450};  // after 07:00
constexpr std::int64_t work_before_now_ms = 10 * hour_ms;
constexpr std::int64_t work_ends_before_now_ms = 100 * minute_ms;
constexpr int diary_days = 12;

std::chrono::sys_days local_day_of(std::int64_t ms) {
  const auto date = local_date_at(shop_zone, ms).value_or(LocalDate{2026, 1, 1});
  return std::chrono::sys_days(std::chrono::year(date.year) / date.month / date.day);
}

// Monday is 0.
int weekday_of(std::chrono::sys_days day) {
  return static_cast<int>(std::chrono::weekday(day).iso_encoding()) - 1;
}

std::int64_t at_seven(std::chrono::sys_days day) {
  const std::chrono::year_month_day date(day);
  const LocalDate local{static_cast<int>(date.year()),
                        static_cast<int>(static_cast<unsigned>(date.month())),
                        static_cast<int>(static_cast<unsigned>(date.day()))};
  return utc_of(shop_zone, local, 7 * 60).value_or(day.time_since_epoch().count() * day_ms);
}
}  // namespace

Calendar::Calendar(std::int64_t now_ms, int weeks) {
  const auto today = local_day_of(now_ms);
  const auto first = today - std::chrono::days(weekday_of(today) + 7 * weeks);
  for (int week = 0; week < weeks; ++week)
    for (int day = 0; day < workdays_in_a_week; ++day)
      mornings_.push_back(at_seven(first + std::chrono::days(7 * week + day)));
}

std::int64_t Calendar::morning_ms(int workday) const {
  return mornings_[static_cast<std::size_t>(workday)];
}

std::int16_t Calendar::offset_min(std::int64_t ms) const {
  if (ms < offset_from_ms_ || ms >= offset_until_ms_) {
    offset_from_ms_ = ms - ms % hour_ms;
    offset_until_ms_ = offset_from_ms_ + hour_ms;
    offset_min_ = static_cast<std::int16_t>(offset_s_at(shop_zone, ms).value_or(0) / 60);
  }
  return offset_min_;
}

LaneTimes::LaneTimes(const Calendar& calendar, int begins_workday, int lane)
    : calendar_(calendar), workday_(begins_workday - 1), lane_(lane) {
  next_day();
}

std::optional<std::int64_t> LaneTimes::session(Who, int minutes) {
  const std::int64_t start = cursor_ms_ + minute_ms;
  cursor_ms_ = start + minutes * minute_ms;
  return start;
}

void LaneTimes::next_day() {
  cursor_ms_ = calendar_.morning_ms(++workday_) + lane_start_min[lane_] * minute_ms;
}

Diary::Diary(std::int64_t now_ms) {
  for (int back = 0; static_cast<int>(days_.size()) < diary_days; ++back) {
    const std::int64_t start = now_ms - back * day_ms - work_before_now_ms;
    if (weekday_of(local_day_of(start)) < workdays_in_a_week) days_.push_back(start);
  }
}

std::optional<std::int64_t> Diary::book(Who who, std::int64_t from_ms, int minutes) {
  const std::int64_t length = minutes * minute_ms;
  auto& busy = busy_[who];
  for (auto day = days_.rbegin(); day != days_.rend(); ++day) {
    const std::int64_t end = *day + work_before_now_ms - work_ends_before_now_ms;
    std::int64_t start = std::max(*day, from_ms);
    for (const auto& [from, to] : busy)
      if (from < start + length + minute_ms && start < to + minute_ms) start = to + minute_ms;
    if (start + length > end) continue;
    busy[start] = start + length;
    return start;
  }
  return std::nullopt;
}

std::int64_t Diary::next_start_ms(std::int64_t after_ms) const {
  for (auto day = days_.rbegin(); day != days_.rend(); ++day)
    if (*day > after_ms) return *day;
  return after_ms;
}

DiaryTimes::DiaryTimes(Diary& diary, std::size_t days_ago, int minute) : diary_(diary) {
  cursor_ms_ = diary.day_start_ms(days_ago) + minute * minute_ms;
}

std::optional<std::int64_t> DiaryTimes::session(Who who, int minutes) {
  const auto start = diary_.book(who, cursor_ms_ + minute_ms, minutes);
  if (start) cursor_ms_ = *start + minutes * minute_ms;
  return start;
}

void DiaryTimes::next_day() {
  cursor_ms_ = diary_.next_start_ms(cursor_ms_);
}

}  // namespace jambline::demo
