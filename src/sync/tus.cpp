#include "sync/tus.h"

#include <charconv>

namespace jambline::sync {

namespace {
constexpr std::string_view base64_signs =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

std::optional<std::string> decode_base64(std::string_view text) {
  std::string out;
  if (text.size() % 4 != 0) return std::nullopt;
  while (!text.empty() && text.back() == '=' && out.size() < 2) {
    text.remove_suffix(1);
    out.push_back('=');
  }
  out.clear();
  std::uint32_t bits = 0;
  int count = 0;
  for (const char sign : text) {
    const auto value = base64_signs.find(sign);
    if (value == std::string_view::npos) return std::nullopt;
    bits = (bits << 6U) | static_cast<std::uint32_t>(value);
    count += 6;
    if (count >= 8) {
      count -= 8;
      out.push_back(static_cast<char>((bits >> static_cast<unsigned>(count)) & 0xFFU));
    }
  }
  return out;
}
}  // namespace

std::optional<std::uint64_t> decimal(std::string_view text) {
  std::uint64_t out = 0;
  if (text.empty() || text.size() > 19) return std::nullopt;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), out);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size()) return std::nullopt;
  return out;
}

std::optional<std::string> metadata_value(std::string_view header, std::string_view key) {
  while (!header.empty()) {
    const auto end = header.find(',');
    std::string_view pair = header.substr(0, end);
    header.remove_prefix(end == std::string_view::npos ? header.size() : end + 1);
    while (!pair.empty() && pair.front() == ' ') pair.remove_prefix(1);
    const auto space = pair.find(' ');
    if (pair.substr(0, space) != key) continue;
    if (space == std::string_view::npos) return std::string();
    return decode_base64(pair.substr(space + 1));
  }
  return std::nullopt;
}

std::string metadata_of(std::string_view key, std::string_view value) {
  std::string out(key);
  out.push_back(' ');
  for (std::size_t at = 0; at < value.size(); at += 3) {
    std::uint32_t bits = 0;
    const std::size_t count = value.size() - at < 3 ? value.size() - at : 3;
    for (std::size_t i = 0; i < 3; ++i)
      bits = (bits << 8U) | (i < count ? static_cast<std::uint8_t>(value[at + i]) : 0U);
    for (std::size_t i = 0; i < 4; ++i)
      out.push_back(i <= count ? base64_signs[(bits >> (18 - 6 * static_cast<unsigned>(i))) & 63U]
                               : '=');
  }
  return out;
}

std::optional<std::uint64_t> range_start(std::string_view header) {
  constexpr std::string_view unit = "bytes=";
  if (header.substr(0, unit.size()) != unit || header.back() != '-') return std::nullopt;
  header.remove_prefix(unit.size());
  header.remove_suffix(1);
  return decimal(header);
}

}  // namespace jambline::sync
