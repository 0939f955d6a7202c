#include "base/ids.h"

namespace jambline {

namespace {
constexpr std::uint8_t no_digit = 0x80;

constexpr auto values = [] {
  std::array<std::uint8_t, 256> out{};
  out.fill(no_digit);
  for (std::uint8_t i = 0; i < 10; ++i) out['0' + i] = i;
  for (std::uint8_t i = 0; i < 6; ++i)
    out['a' + i] = out['A' + i] = static_cast<std::uint8_t>(10 + i);
  return out;
}();
}  // namespace

std::string to_hex(std::span<const std::uint8_t> bytes) {
  static constexpr char digits[] = "0123456789abcdef";
  std::string out;
  out.reserve(bytes.size() * 2);
  for (std::uint8_t byte : bytes) {
    out.push_back(digits[byte >> 4]);
    out.push_back(digits[byte & 15]);
  }
  return out;
}

bool from_hex(std::string_view hex, std::span<std::uint8_t> bytes) {
  if (hex.size() != bytes.size() * 2) return false;
  const auto* sign = reinterpret_cast<const std::uint8_t*>(hex.data());
  unsigned seen = 0;
  for (std::uint8_t& byte : bytes) {
    const unsigned high = values[*sign++];
    const unsigned low = values[*sign++];
    seen |= high | low;
    byte = static_cast<std::uint8_t>(high << 4U | low);
  }
  return (seen & no_digit) == 0;
}

}  // namespace jambline
