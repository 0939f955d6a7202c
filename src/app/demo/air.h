// app/demo/air.h: the air of the demo shop: facts and readings of its booths, protection and
// products of our own invention, and what was mixed, sprayed, baked and bonded on the cars in work.
//
// Story:   ten weeks before now the shop began to keep it. One fit test and one training have run
//          out, a smoke test is overdue. This morning a windshield was set.
// Random:  of its own: whether it is kept changes nothing else.
// Numbers: points, tables and readings are made up; no product of anybody is meant.
#pragma once

#include "app/demo/visit.h"

namespace jambline::demo {

// A visit of no car.
Visit air_of_shop(const Calendar& calendar, std::int64_t now_ms, const Crew& crew,
                  const std::vector<BoothId>& booths);

// What was sprayed when the car was, and what happened today to some of those in work.
void add_air(Visit& visit, std::int64_t now_ms, const Crew& crew, const House& house, int in_work);

}  // namespace jambline::demo
