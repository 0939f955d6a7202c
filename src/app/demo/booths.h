// app/demo/booths.h: the booths of the demo shop and what its people logged of them.
//
// Events stand where the hidden causes of dirt.h begin and end (the ceiling filter of the first
// booth is changed, the second one gets a hose that turns out to be a bad one, and another), and at
// times when nothing came of them. They are logged whether or not the causes are there.
#pragma once

#include <vector>

#include "app/demo/visit.h"

namespace jambline::demo {

inline constexpr std::size_t booth_count = 2;
// The second booth has the cars of the early afternoon, and its hose.
constexpr std::size_t booth_of_lane(int lane) {
  return lane == hose_lane ? 1 : 0;
}

std::vector<acts::AddBooth> invented_booths();

// A visit of no car: one step an event, by when it was logged.
Visit booth_events(const Calendar& calendar, std::int64_t now_ms, const Crew& crew,
                   const std::vector<BoothId>& booths);

}  // namespace jambline::demo
