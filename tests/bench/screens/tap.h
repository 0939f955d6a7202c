// tests/bench/screens/tap.h: from a finger's release to the first frame that shows the mark.
#pragma once

namespace jambline::bench {

// In a process of its own, which has no other Qt application. Returns its exit code.
int tap(int argc, char** argv);

}  // namespace jambline::bench
