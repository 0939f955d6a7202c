// tests/bench/record/ten_years.h: a shop of ten years, decided by the acts like any other, every
// entry signed.
#pragma once

#include <cstdint>
#include <filesystem>

namespace jambline::bench {

inline constexpr int ten_years_weeks = 520;
inline constexpr int ten_years_cars = 20'000;

// Does nothing when the folder has a log. Gives back the number of entries made.
std::int64_t make_ten_years(const std::filesystem::path& folder, int cars);

}  // namespace jambline::bench
