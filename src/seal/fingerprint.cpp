#include "seal/fingerprint.h"

namespace jambline::seal {

std::string fingerprint(const ShopId& shop) {
  const std::string hex = shop.hex();
  std::string out;
  for (std::size_t i = 0; i < hex.size(); i += 4) {
    if (i) out.push_back('-');
    out += hex.substr(i, 4);
  }
  return out;
}

std::optional<ShopId> parse_fingerprint(std::string_view text) {
  std::string hex;
  for (const char sign : text) {
    if (sign == '-' || sign == ' ' || sign == ':') continue;
    hex.push_back(sign >= 'A' && sign <= 'F' ? static_cast<char>(sign - 'A' + 'a') : sign);
  }
  return ShopId::parse(hex);
}

}  // namespace jambline::seal
