// app/demo/times.h: when people of the demo shop work, so that nobody is in two places at once.
//
// Times gives out the moments of one car's visit, each later than the one before.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "base/clock.h"

namespace jambline::demo {

enum class Who : std::uint8_t { Ivo, Mara, Jo, Ana, Ben, Rosa };

class Times {
 public:
  virtual ~Times() = default;
  // The start of `minutes` of work of one person; nullopt when there is no such time before now.
  virtual std::optional<std::int64_t> session(Who who, int minutes) = 0;
  virtual void next_day() = 0;
  std::int64_t tap(int seconds) { return cursor_ms_ += 1000LL * seconds; }
  std::int64_t cursor_ms() const { return cursor_ms_; }

 protected:
  std::int64_t cursor_ms_ = 0;
};

inline constexpr int two_years_weeks = 104;

// The weeks before now in the shop's zone.
class Calendar {
 public:
  explicit Calendar(std::int64_t now_ms, int weeks = two_years_weeks);
  // 07:00 of a working day (Monday to Friday); week 0 is so many weeks before this one.
  std::int64_t morning_ms(int workday) const;
  int workdays() const { return static_cast<int>(mornings_.size()); }
  std::int16_t offset_min(std::int64_t ms) const;

 private:
  std::vector<std::int64_t> mornings_;
  mutable std::int64_t offset_until_ms_ = 0;
  mutable std::int64_t offset_from_ms_ = 0;
  mutable std::int16_t offset_min_ = 0;
};

inline constexpr int visit_workdays = 5;
inline constexpr int lanes = 4;  // cars that are in the shop at once, each with its part of the day
inline constexpr int weeks_without_delivered = 3;

// A delivered car: its own part of each of five working days, so no two cars share a minute.
class LaneTimes final : public Times {
 public:
  LaneTimes(const Calendar& calendar, int begins_workday, int lane);
  std::optional<std::int64_t> session(Who who, int minutes) override;
  void next_day() override;

 private:
  const Calendar& calendar_;
  int workday_;
  int lane_;
};

// Cars in work: the ten hours before now, and the same hours of the working days before.
class Diary {
 public:
  explicit Diary(std::int64_t now_ms);
  std::int64_t day_start_ms(std::size_t days_ago) const { return days_[days_ago]; }
  std::optional<std::int64_t> book(Who who, std::int64_t from_ms, int minutes);
  std::int64_t next_start_ms(std::int64_t after_ms) const;

 private:
  std::vector<std::int64_t> days_;                            // starts, latest first
  std::map<Who, std::map<std::int64_t, std::int64_t>> busy_;  // start, end
};

class DiaryTimes final : public Times {
 public:
  DiaryTimes(Diary& diary, std::size_t days_ago, int minute);
  std::optional<std::int64_t> session(Who who, int minutes) override;
  void next_day() override;

 private:
  Diary& diary_;
};

}  // namespace jambline::demo
