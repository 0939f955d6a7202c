// A shop that may spray: two booths with a smoke test of 5 minutes, an air hood, a register that is
// in order, and cars at spraying. Acts go straight to an engine.
#pragma once

#include "engine/engine.h"

namespace jambline::safety {

struct SprayShop {
  PersonId mara, ivo;
  BoothId booth, other_booth;
  RespiratorId hood;
};

constexpr double smoke_test_min = 5;

// Ends the process when it is refused: then no test of it means anything.
engine::Wrote act(engine::Engine& engine, acts::Command command, const PersonId& by);
SprayShop make_shop(engine::Engine& engine, std::int64_t now_ms);
JobId open_car(engine::Engine& engine, const SprayShop& shop, const char* plate);
acts::StartSpray good_day(const SprayShop& shop, const JobId& job, const BoothId& booth);

}  // namespace jambline::safety
