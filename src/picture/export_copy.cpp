#include "picture/export_copy.h"

#include <algorithm>
#include <exiv2/exiv2.hpp>
#include <string_view>
#include <utility>

#include "picture/facts.h"
#include "picture/file_parts.h"

namespace jambline::picture {

namespace {
using Bytes = std::vector<std::uint8_t>;

bool begins(std::span<const std::uint8_t> bytes, const FilePart& part, std::string_view word) {
  return part.size >= 4 + word.size() &&
         std::equal(word.begin(), word.end(),
                    bytes.begin() + static_cast<std::ptrdiff_t>(part.at + 4),
                    [](char a, std::uint8_t b) { return static_cast<std::uint8_t>(a) == b; });
}

struct Read {
  bool exif = false;
  bool xmp = false;
  bool iptc = false;
};

Read read_of(const Exiv2::Image* image) {
  if (!image) return {};
  return {!image->exifData().empty(), !image->xmpData().empty(), !image->iptcData().empty()};
}

// Parts that may say the place and that nobody here can read: XMP in pieces, the list of further
// pictures behind this one, a second Exif or XMP part, broken ones.
Bytes without_unread(std::span<const std::uint8_t> bytes, const FileParts& parts, Read read) {
  using std::string_view_literals::operator""sv;
  Bytes out;
  const auto add = [&](std::size_t from, std::size_t to) {
    out.insert(out.end(), bytes.begin() + static_cast<std::ptrdiff_t>(from),
               bytes.begin() + static_cast<std::ptrdiff_t>(to));
  };
  const auto unread = [&](const FilePart& part) {
    const auto is = [&](const char* name, std::string_view word) {
      return part.name == name && begins(bytes, part, word);
    };
    if (is("E1", "Exif\0"sv)) return !std::exchange(read.exif, false);
    if (is("E1", "http://ns.adobe.com/xap/1.0/")) return !std::exchange(read.xmp, false);
    if (is("ED", "Photoshop 3.0")) return !read.iptc;
    if (is("E1", "http://ns.adobe.com/xmp/extension/") || is("E2", "MPF\0"sv)) return true;
    if (part.name == "eXIf") return !read.exif;
    const bool text = part.name == "zTXt" || part.name == "iTXt" || part.name == "tEXt";
    if (text && begins(bytes.subspan(4), {"", part.at, part.size - 4}, "Raw profile type"))
      return !read.exif && !read.iptc && !read.xmp;
    if (text && begins(bytes.subspan(4), {"", part.at, part.size - 4}, "XML:com.adobe.xmp"))
      return !read.xmp;
    return false;
  };
  std::size_t at = 0;
  for (const FilePart& part : parts.parts) {
    if (!unread(part)) continue;
    add(at, part.at);
    at = part.at + part.size;
  }
  add(at, parts.end);
  return out;
}

// Gives empty bytes when there is nothing to take out.
Result<Bytes> rewritten(std::span<const std::uint8_t> bytes, const FileParts& parts) {
  const auto refused = Error{Code::Malformed, "copy a picture", "picture", {{"cause", "location"}}};
  try {
    const auto image = opened(bytes, parts);
    if (!image) return fail(refused);
    if (!names_place(*image, true)) return Bytes{};
    image->writeMetadata();
    Exiv2::BasicIo& io = image->io();
    io.open();
    Bytes out(io.size());
    io.seek(0, Exiv2::BasicIo::beg);
    const long count = io.read(out.data(), static_cast<long>(out.size()));
    io.close();
    if (count != static_cast<long>(out.size())) return fail(refused);
    JAMBLINE_ASSIGN(const FileParts again, parts_of(out));
    if (facts_of(out, again).has_location) return fail(refused);
    return out;
  } catch (const std::exception&) {
    return fail(refused);
  }
}
}  // namespace

Result<Bytes> without_location(std::span<const std::uint8_t> bytes) {
  JAMBLINE_ASSIGN(const FileParts parts, parts_of(bytes));
  Bytes plain = without_unread(bytes, parts, read_of(opened(bytes, parts).get()));
  JAMBLINE_ASSIGN(const FileParts plain_parts, parts_of(plain));
  JAMBLINE_ASSIGN(Bytes out, rewritten(plain, plain_parts));
  return out.empty() ? plain : out;
}

}  // namespace jambline::picture
