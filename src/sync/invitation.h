// sync/invitation.h: what the square code (QR) says that lets a device ask to be admitted.
//
// Shape:   one line of ASCII, at most 512 signs:
//          jambline:1?hub=<64 hex>&shop=<32 hex>&code=<32 hex>&at=<host:port>[&at=<host:port>]
//          shop is 32 zeros when a shop may come to the hub. hub is the hub's identity key: the
//          one thing that a device trusts from then on; addresses may change.
//          Whoever has the code may ask; a manager who compares six digits admits.
// Errors:  Malformed (args: field).
// Source:  PROTOCOL.md section 4.
#pragma once

#include <string>
#include <vector>

#include "base/error.h"
#include "sync/messages.h"

namespace jambline::sync {

struct Address {
  std::string host;
  std::uint16_t port{};
  std::string text() const;  // "192.168.1.20:8740", "[fe80::1]:8740"
  friend bool operator==(const Address&, const Address&) = default;
};
inline constexpr std::uint16_t usual_port = 8740;
inline constexpr std::size_t most_addresses = 8;

Result<Address> parse_address(std::string_view text);

struct Invitation {
  seal::Key hub;
  ShopId shop;  // zero: bring your own
  InviteCode code;
  std::vector<Address> at;
  friend bool operator==(const Invitation&, const Invitation&) = default;
};

std::string encode(const Invitation& invitation);
Result<Invitation> decode_invitation(std::string_view text);

// "042 917": what both sides show, and a manager compares.
std::string six_digits(const ShopId& shop, const seal::Key& device, const seal::Key& hub,
                       const Nonce& nonce);

// What is signed to prove that a key is one's own.
Hash session_words(const ShopId& shop, const seal::Key& hub, const DeviceId& device,
                   const Challenge& challenge);
Hash enrol_words(const ShopId& shop, const seal::Key& hub, const EnrolAsk& ask);
// What a hub keeps of a code.
Hash code_words(const InviteCode& code);

}  // namespace jambline::sync
