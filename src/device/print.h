// device/print.h: a file handed to the printer of this device, by Debian's CUPS.
//
// Shape:   runs `lp`, without a shell; the printer is the one that the device has set as usual.
// Promise: Accepted only when the printing program said that it has taken the file.
// Threads: any; waits at most 20 s.
#pragma once

#include <QString>
#include <cstdint>
#include <filesystem>

namespace jambline::device {

struct Printed {
  enum class Answer : std::uint8_t { Accepted, NoProgram, Refused };
  Answer answer{};
  QString words;  // what the program said
};

Printed print(const std::filesystem::path& file);

}  // namespace jambline::device
