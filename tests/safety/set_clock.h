// tests/safety/set_clock.h: a life of a shop in a process of its own, on the machine's real clocks.
// what: "spray": makes the shop, sprays, puts the gun down and is killed; "look": prints the wall
// clock in s, the booth's state and the seconds that are left. Returns the process's exit code.
#pragma once

namespace jambline::safety {
int child(const char* what, const char* folder);
}
