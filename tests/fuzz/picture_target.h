// tests/fuzz/picture_target.h: any bytes given to what reads and copies picture files.
//
// Ends the program when a promise is broken: that what look_at() takes decode() takes too, upright
// and no longer than asked for, and that a copy names no place and is a picture of the same size.
#pragma once

#include <cstdint>
#include <span>

namespace jambline::fuzz {

void run_picture(std::span<const std::uint8_t> input);

}  // namespace jambline::fuzz
