#include "picture/file_parts.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace jambline::picture {

namespace {
using ByteSpan = std::span<const std::uint8_t>;

constexpr std::size_t most_parts = 20'000;
constexpr int most_scans = 100;

tl::unexpected<Error> malformed(const char* cause) {
  return fail(Error{Code::Malformed, "read a picture", "picture", {{"cause", cause}}});
}

tl::unexpected<Error> of_format(const char* format) {
  return fail(Error{Code::Malformed, "read a picture", "picture", {{"cause", "format"}}}.with(
      "format", format));
}

tl::unexpected<Error> too_large(std::int64_t limit, std::int64_t is, const char* unit) {
  return fail(
      Error{Code::TooLarge,
            "read a picture",
            "picture",
            {{"limit", std::to_string(limit)}, {"is", std::to_string(is)}, {"unit", unit}}});
}

bool says(ByteSpan bytes, std::size_t at, std::string_view word) {
  return bytes.size() >= at + word.size() &&
         std::equal(word.begin(), word.end(), bytes.begin() + static_cast<std::ptrdiff_t>(at),
                    [](char a, std::uint8_t b) { return static_cast<std::uint8_t>(a) == b; });
}

std::uint32_t big_endian(ByteSpan bytes, std::size_t at, std::size_t count) {
  std::uint32_t out = 0;
  for (std::size_t i = 0; i < count; ++i) out = (out << 8U) | bytes[at + i];
  return out;
}

// Why something that is neither JPEG nor PNG is not taken.
tl::unexpected<Error> other_kind(ByteSpan bytes) {
  if (says(bytes, 0, "GIF8")) {
    constexpr std::string_view loop = "NETSCAPE2.0";
    const bool loops =
        std::search(bytes.begin(), bytes.end(), loop.begin(), loop.end()) != bytes.end();
    return loops ? malformed("animated") : of_format("gif");
  }
  if (says(bytes, 0, "RIFF") && says(bytes, 8, "WEBP")) {
    const bool moves = says(bytes, 12, "VP8X") && bytes.size() > 20 && (bytes[20] & 2U) != 0;
    return moves ? malformed("animated") : of_format("webp");
  }
  if (says(bytes, 4, "ftyp")) {
    if (says(bytes, 8, "avi")) return of_format("avif");
    for (const char* brand : {"heic", "heix", "hevc", "heim", "heis", "mif1", "msf1"})
      if (says(bytes, 8, brand)) return of_format("heic");
    return of_format("film");
  }
  if (says(bytes, 0, std::string_view("II*\0", 4)) || says(bytes, 0, std::string_view("MM\0*", 4)))
    return of_format("tiff");
  if (says(bytes, 0, "BM")) return of_format("bmp");
  if (says(bytes, 0, "%PDF")) return of_format("pdf");
  return malformed("not a picture");
}

// Half the pixels where a pixel needs twice the memory.
Status fits(const FileParts& out, bool costly) {
  if (out.width_px < 1 || out.height_px < 1) return malformed("broken");
  const std::int64_t is = static_cast<std::int64_t>(out.width_px) * out.height_px;
  const std::int64_t limit = costly ? most_px / 2 : most_px;
  if (is > limit) return too_large(limit, is, "px");
  return {};
}

// Past the compressed bytes of a scan, to the marker that ends it.
std::size_t after_scan(ByteSpan bytes, std::size_t at) {
  while (at + 1 < bytes.size()) {
    if (bytes[at] != 0xFF) {
      ++at;
      continue;
    }
    const std::uint8_t next = bytes[at + 1];
    const bool inside = next == 0 || (next >= 0xD0 && next <= 0xD7);
    if (!inside && next != 0xFF) return at;
    at += inside ? 2 : 1;
  }
  return bytes.size();
}

Result<FileParts> jpeg_parts(ByteSpan bytes) {
  constexpr std::array<char, 17> digits{"0123456789ABCDEF"};
  FileParts out{.format = Format::Jpeg};
  std::size_t at = 2;
  int scans = 0;
  while (out.parts.size() < most_parts) {
    while (at + 1 < bytes.size() && bytes[at] == 0xFF && bytes[at + 1] == 0xFF) ++at;
    if (at + 2 > bytes.size() || bytes[at] != 0xFF) return malformed("broken");
    const std::uint8_t marker = bytes[at + 1];
    if (marker == 0xD9) {
      if (scans == 0) return malformed("broken");
      out.end = at + 2;
      return out;
    }
    if (at + 4 > bytes.size()) return malformed("broken");
    std::size_t size = 2 + big_endian(bytes, at + 2, 2);
    if (size < 4 || at + size > bytes.size()) return malformed("broken");
    const bool frame =
        marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
    if (frame) {
      if (size < 10 || out.width_px != 0) return malformed("broken");
      out.height_px = static_cast<int>(big_endian(bytes, at + 5, 2));
      out.width_px = static_cast<int>(big_endian(bytes, at + 7, 2));
      JAMBLINE_TRY(fits(out, marker != 0xC0 && marker != 0xC1));
    }
    if (marker == 0xDA) {
      if (out.width_px == 0 || ++scans > most_scans) return malformed("broken");
      size = after_scan(bytes, at + size) - at;
    }
    out.parts.push_back({{digits[marker >> 4U], digits[marker & 15U]}, at, size});
    at += size;
  }
  return malformed("broken");
}

Result<FileParts> png_parts(ByteSpan bytes) {
  FileParts out{.format = Format::Png};
  std::size_t at = 8;
  while (out.parts.size() < most_parts) {
    if (at + 12 > bytes.size()) return malformed("broken");
    const std::size_t size = 12 + static_cast<std::size_t>(big_endian(bytes, at, 4));
    if (size > bytes.size() - at) return malformed("broken");
    std::string name(bytes.begin() + static_cast<std::ptrdiff_t>(at + 4),
                     bytes.begin() + static_cast<std::ptrdiff_t>(at + 8));
    if (out.parts.empty() != (name == "IHDR")) return malformed("broken");
    if (name == "IHDR") {
      const std::uint32_t width = size == 25 ? big_endian(bytes, at + 8, 4) : 0;
      const std::uint32_t height = size == 25 ? big_endian(bytes, at + 12, 4) : 0;
      constexpr std::uint32_t most_side = 0x7FFFFFFF;
      if (width > most_side || height > most_side) return malformed("broken");
      out.width_px = static_cast<int>(width);
      out.height_px = static_cast<int>(height);
      JAMBLINE_TRY(fits(out, size == 25 && bytes[at + 16] == 16));
    }
    if (name == "acTL") return malformed("animated");
    const bool last = name == "IEND";
    out.parts.push_back({std::move(name), at, size});
    at += size;
    if (last) {
      out.end = at;
      return out;
    }
  }
  return malformed("broken");
}
}  // namespace

Result<FileParts> parts_of(ByteSpan bytes) {
  if (bytes.empty())
    return fail(Error{Code::Missing, "read a picture", "picture", {{"field", "bytes"}}});
  if (bytes.size() > most_bytes)
    return too_large(static_cast<std::int64_t>(most_bytes), static_cast<std::int64_t>(bytes.size()),
                     "byte");
  if (says(bytes, 0, "\xFF\xD8\xFF")) return jpeg_parts(bytes);
  if (says(bytes, 0, "\x89PNG\r\n\x1A\n")) return png_parts(bytes);
  return other_kind(bytes);
}

}  // namespace jambline::picture
