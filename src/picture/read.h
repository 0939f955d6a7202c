// picture/read.h: what a picture file is, and its pixels.
//
// Shape:   JPEG and PNG, known by their bytes, never by a name. Width and height as the picture is
//          looked at, turned upright as its Exif says.
// Time:    by the camera's own clock, as written, however wrong that clock is. Exif that cannot be
//          read is no reason to refuse a picture: what it would have said is absent.
// Judged:  on a scaled decode with the limits of picture/photo_limits.h. A JPEG is never decoded in
//          full for it (the DCT is scaled); a PNG has to be.
// Limits:  64 MiB a file; 120 megapixels, half of that for a PNG of 16 bits a channel or a JPEG
// that
//          is stored progressively (both need twice the memory). Read before a pixel is made.
// Errors:  Missing (no bytes at all); Malformed, args cause: "not a picture", "broken" (cut short
// or
//          damaged), "animated", "format" with args format: "heic", "avif", "gif", "webp", "tiff",
//          "bmp", "pdf" or "film"; TooLarge, args limit, is and unit: "byte" or "px".
// Threads: any but the one that draws; nothing is kept between calls. Never throws.
// Source:  ITU-T T.81 and the PNG specification (third edition) for the parts of a file; Exif 2.32.
#pragma once

#include <QImage>
#include <cstdint>
#include <optional>
#include <span>
#include <string>

#include "base/error.h"
#include "base/ids.h"
#include "job/picture.h"
#include "trade/photo_judgement.h"

namespace jambline::picture {

inline constexpr std::uint64_t most_bytes = 64U << 20U;
inline constexpr std::int64_t most_px = 120'000'000;

struct Taken {
  std::string local;              // "2026-11-24T15:40:12", by the camera's own clock
  std::optional<int> offset_min;  // from UTC, where the camera says so
  friend bool operator==(const Taken&, const Taken&) = default;
};

enum class Format : std::uint8_t { Jpeg, Png };

struct Seen {
  Hash file;  // SHA-256 of the bytes: the blob's name
  std::uint64_t size_bytes{};
  Format format{};
  int width_px{};
  int height_px{};
  std::optional<Taken> taken;
  bool has_location = false;  // its Exif, XMP or IPTC names a place
  trade::PhotoJudgementResult judgement;
};

// With `small`, also gives the scaled decode it was judged on: upright, 1280 px at most. Previews
// and thumbnails are made of that without a second decode.
Result<Seen> look_at(std::span<const std::uint8_t> bytes, QImage* small = nullptr);

// Upright, RGB32 (what is transparent lies on white), `longest_side_px` at most, never enlarged.
Result<QImage> decode(std::span<const std::uint8_t> bytes, int longest_side_px);

// The same in the words of the record.
job::PictureFacts facts_for_record(const Seen& seen);

}  // namespace jambline::picture
