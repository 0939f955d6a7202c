// seal/digest.h: SHA-256 over pieces, and the domain tags that keep hashes of one use apart.
//
// Shape:   every hash that is signed or names something starts with its own tag, so that bytes of
//          one use can never stand for bytes of another. The device id is the one exception: it is
//          the plain SHA-256 of the public key, cut to 16 bytes.
// Threads: any; a Sha256 belongs to one owner.
// Source:  FIPS 180-4, by OpenSSL; FORMAT.md section 1.
#pragma once

#include <memory>
#include <span>
#include <string_view>

#include "base/ids.h"

namespace jambline::seal {

namespace tag {
inline constexpr std::string_view entry = "jambline entry 1";
inline constexpr std::string_view payload = "jambline payload 1";
inline constexpr std::string_view shop = "jambline shop 1";
inline constexpr std::string_view receipt = "jambline receipt 1";
inline constexpr std::string_view session = "jambline session 1";
inline constexpr std::string_view enrol = "jambline enrol 1";
inline constexpr std::string_view digits = "jambline digits 1";
inline constexpr std::string_view code = "jambline code 1";
}  // namespace tag

inline std::span<const std::uint8_t> bytes_of(std::string_view text) {
  return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

class Sha256 {
 public:
  Sha256();
  ~Sha256();
  Sha256(const Sha256&) = delete;
  Sha256& operator=(const Sha256&) = delete;
  Sha256& add(std::span<const std::uint8_t> bytes);
  Sha256& add(std::string_view text) { return add(bytes_of(text)); }
  Hash finish();  // and starts afresh

 private:
  void* context_;
};

}  // namespace jambline::seal
