// tests/bench/screens/pan.h: from frame to frame while a finger moves a panel full of marks.
#pragma once

namespace jambline::bench {

// In a process of its own, which has no other Qt application. Returns its exit code.
int pan(int argc, char** argv);

}  // namespace jambline::bench
