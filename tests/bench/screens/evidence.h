// tests/bench/screens/evidence.h: from the last verdict of a car to what threw its dirt.
#pragma once

namespace jambline::bench {

// In a process of its own, which has no other Qt application. Returns its exit code.
int evidence(int argc, char** argv);

}  // namespace jambline::bench
