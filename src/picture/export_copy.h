// picture/export_copy.h: a copy of a picture that does not say where it was taken.
//
// Out:     Exif GPS; the place fields of IPTC and XMP (latitude and longitude, city, region,
// country,
//          location); of a JPEG also what follows the picture in its file (a second picture, a
//          short film) and long XMP in pieces, because those may say the place and are not read
//          here. Also Exif, XMP or IPTC so broken that it cannot be told what they say.
// Kept:    everything else byte for byte: the compressed pixels, all other parts of the file; the
//          parts that held a place are written again with their other fields.
// Not seen: a place in words (a comment, a plate, a street sign) or in a maker's own note.
// Original: only read. A picture that has none of these gives the same bytes.
// Errors:  as picture/read.h; Malformed, args cause: "location" when a place cannot be taken out.
// Threads: any; pure.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "base/error.h"

namespace jambline::picture {

Result<std::vector<std::uint8_t>> without_location(std::span<const std::uint8_t> bytes);

}  // namespace jambline::picture
