// picture/file_parts.h: what lies where in a picture file, read without making a pixel.
//
// Shape:   parts in the order of the file; `at` and `size` take in the whole part, with its marker
// or
//          length. end is where the picture ends; what follows it in the file is no part of it.
// Errors:  as picture/read.h: Missing, Malformed, TooLarge.
// Threads: pure.
// Source:  ITU-T T.81 annex B; PNG specification (third edition) chapters 5 and 11.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "base/error.h"
#include "picture/read.h"

namespace jambline::picture {

struct FilePart {
  std::string name;  // of a chunk; of a JPEG "E1" to "EF" (APP), "FE" (comment), "DA" (scan), ...
  std::size_t at{};
  std::size_t size{};
};

struct FileParts {
  Format format{};
  int width_px{};  // as stored, before it is turned upright
  int height_px{};
  std::vector<FilePart> parts;
  std::size_t end{};
};

Result<FileParts> parts_of(std::span<const std::uint8_t> bytes);

}  // namespace jambline::picture
