// tests/bench/screens/floor.h: the floor with sixty cars and their forecasts.
#pragma once

namespace jambline::bench {

// In a process of its own, which has no other Qt application. Returns its exit code.
int floor_60(int argc, char** argv);

}  // namespace jambline::bench
