// app/demo/in_work.h: the cars that stand in the demo shop, each at another point of its visit.
#pragma once

#include <string>

#include "app/demo/visit.h"

namespace jambline::demo {

inline constexpr int most_in_work = 15;

// Visit number 0 to 14, told from now backwards.
Visit car_in_work(int number, std::int64_t now_ms, Diary& diary, const Crew& crew,
                  const House& house, SeededRandom& random, SeededRandom story,
                  std::int64_t camera_from_ms);

}  // namespace jambline::demo
