// picture/facts.h: what others wrote into a picture file: which way is up, when, and where.
//
// Place:   the Exif GPS block, and the place fields of XMP and IPTC.
// Errors:  none: what cannot be read is not there.
// Threads: any; Exiv2 is made ready once, silent, its XMP part behind a lock.
// Source:  Exif 2.32; IPTC IIM 4.2; XMP part 2 (by Exiv2).
#pragma once

#include <memory>
#include <optional>
#include <span>

#include "picture/file_parts.h"
#include "picture/read.h"

namespace Exiv2 {
class Image;
}

namespace jambline::picture {

struct Facts {
  int orientation = 1;  // of Exif, 1 to 8
  std::optional<Taken> taken;
  bool has_location = false;
};

Facts facts_of(std::span<const std::uint8_t> bytes, const FileParts& parts);

// The file opened and read by Exiv2, or null. The bytes must outlive it.
std::unique_ptr<Exiv2::Image> opened(std::span<const std::uint8_t> bytes, const FileParts& parts);
// Whether it names a place; with `take_out`, it names none any more. May throw.
bool names_place(Exiv2::Image& image, bool take_out);

}  // namespace jambline::picture
