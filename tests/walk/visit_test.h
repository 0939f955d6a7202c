// The first half of a whole visit, in a process of its own that is killed at its end; returns only
// when something went wrong before.
#pragma once

namespace jambline::walk {
int first_half(const char* folder);
}
