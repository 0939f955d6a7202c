// tests/folds/accounts.h: accounts of cars made by hand. Times in hours after a Monday in September
// 2026, 00:00 in New York.
#pragma once

#include "folds/account.h"

namespace jambline::folds {

inline constexpr std::int64_t monday_ms = 1'789'963'200'000;  // 2026-09-21 04:00 UTC
inline constexpr std::int64_t hour_in_ms = 3'600'000;
inline constexpr const char* new_york = "America/New_York";

inline std::int64_t at_hour(double hours) {
  return monday_ms + static_cast<std::int64_t>(hours * hour_in_ms);
}
inline Hash entry_number(int number) {
  Hash out;
  out.bytes[0] = static_cast<std::uint8_t>(number);
  out.bytes[31] = 1;
  return out;
}
inline Account car_number(int number, double opened_h) {
  Account out;
  out.job.bytes[15] = static_cast<std::uint8_t>(number);
  out.plate = "K " + std::to_string(number);
  out.opened_ms = at_hour(opened_h);
  return out;
}
inline const PersonId ivo{{1}};
inline const PersonId mara{{2}};

// Work of so many minutes by each, whose clock ended at that hour.
inline AccountOperation work(int number, job::Stage stage, int estimate_min, double last_h,
                             std::vector<std::pair<PersonId, int>> minutes, bool done = true) {
  AccountOperation out;
  out.operation.bytes[15] = static_cast<std::uint8_t>(number);
  out.stage = stage;
  out.estimate_min = estimate_min;
  out.done = done;
  out.last_ms = at_hour(last_h);
  for (const auto& [person, min] : minutes) out.clocked.push_back({person, min * 60'000LL});
  return out;
}

}  // namespace jambline::folds
