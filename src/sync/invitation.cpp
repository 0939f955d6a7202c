#include "sync/invitation.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "seal/digest.h"
#include "seal/wire.h"
#include "sync/limits.h"

namespace jambline::sync {

namespace {
constexpr std::string_view invitation_start = "jambline:1?";
constexpr std::size_t most_invitation_signs = 512;
constexpr std::size_t most_host_signs = 253;

Error bad_invitation(std::string field) {
  return Error{Code::Malformed, "read", "invitation", {}}.with("field", std::move(field));
}

bool host_sign(char sign) {
  return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') ||
         (sign >= '0' && sign <= '9') || sign == '.' || sign == '-';
}
bool six_sign(char sign) {
  return (sign >= 'a' && sign <= 'f') || (sign >= 'A' && sign <= 'F') ||
         (sign >= '0' && sign <= '9') || sign == ':' || sign == '.' || sign == '%' ||
         host_sign(sign);
}
}  // namespace

std::string Address::text() const {
  const bool six = host.find(':') != std::string::npos;
  return (six ? "[" + host + "]" : host) + ":" + std::to_string(port);
}

Result<Address> parse_address(std::string_view text) {
  Address out;
  std::string_view port;
  if (!text.empty() && text.front() == '[') {
    const auto end = text.find(']');
    if (end == std::string_view::npos) return fail(bad_invitation("at"));
    out.host = text.substr(1, end - 1);
    if (!std::all_of(out.host.begin(), out.host.end(), six_sign)) return fail(bad_invitation("at"));
    // Without a colon it is none of IPv6, and text() would write it so that nobody can read it.
    if (out.host.find(':') == std::string::npos) return fail(bad_invitation("at"));
    port = text.substr(end + 1);
  } else {
    const auto end = std::min(text.find(':'), text.size());
    out.host = text.substr(0, end);
    if (!std::all_of(out.host.begin(), out.host.end(), host_sign))
      return fail(bad_invitation("at"));
    port = text.substr(end);
  }
  if (out.host.empty() || out.host.size() > most_host_signs) return fail(bad_invitation("at"));
  if (port.empty()) {
    out.port = usual_port;
    return out;
  }
  if (port.front() != ':') return fail(bad_invitation("at"));
  port.remove_prefix(1);
  const auto read = std::from_chars(port.data(), port.data() + port.size(), out.port);
  if (read.ec != std::errc{} || read.ptr != port.data() + port.size() || out.port == 0)
    return fail(bad_invitation("at"));
  return out;
}

std::string encode(const Invitation& invitation) {
  std::string out(invitation_start);
  out += "hub=" + invitation.hub.hex() + "&shop=" + invitation.shop.hex() +
         "&code=" + invitation.code.hex();
  for (const auto& address : invitation.at) out += "&at=" + address.text();
  return out;
}

Result<Invitation> decode_invitation(std::string_view text) {
  while (!text.empty() && (text.back() == '\n' || text.back() == '\r' || text.back() == ' '))
    text.remove_suffix(1);
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  if (text.size() > most_invitation_signs) return fail(bad_invitation("length"));
  if (text.substr(0, invitation_start.size()) != invitation_start)
    return fail(bad_invitation("start"));
  text.remove_prefix(invitation_start.size());
  Invitation out;
  bool hub = false;
  bool shop = false;
  bool code = false;
  while (!text.empty()) {
    const auto end = std::min(text.find('&'), text.size());
    const std::string_view part = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const auto equals = part.find('=');
    if (equals == std::string_view::npos) return fail(bad_invitation("part"));
    const std::string_view name = part.substr(0, equals);
    const std::string_view value = part.substr(equals + 1);
    if (name == "hub") {
      if (std::exchange(hub, true) || !from_hex(value, out.hub.bytes))
        return fail(bad_invitation("hub"));
    } else if (name == "shop") {
      if (std::exchange(shop, true) || !from_hex(value, out.shop.bytes))
        return fail(bad_invitation("shop"));
    } else if (name == "code") {
      if (std::exchange(code, true) || !from_hex(value, out.code.bytes))
        return fail(bad_invitation("code"));
    } else if (name == "at") {
      if (out.at.size() == most_addresses) return fail(bad_invitation("at"));
      JAMBLINE_ASSIGN(out.at.emplace_back(), parse_address(value));
    } else {
      return fail(bad_invitation("part"));
    }
  }
  if (!hub) return fail(bad_invitation("hub"));
  if (!shop) return fail(bad_invitation("shop"));
  if (!code) return fail(bad_invitation("code"));
  if (out.at.empty()) return fail(bad_invitation("at"));
  return out;
}

std::string six_digits(const ShopId& shop, const seal::Key& device, const seal::Key& hub,
                       const Nonce& nonce) {
  const Hash hash = seal::Sha256()
                        .add(seal::tag::digits)
                        .add(shop.bytes)
                        .add(device.bytes)
                        .add(hub.bytes)
                        .add(nonce.bytes)
                        .finish();
  std::uint64_t number = 0;
  seal::ByteReader(hash.bytes).number(number);
  std::string digits = std::to_string(number % 1'000'000);
  digits.insert(0, 6 - digits.size(), '0');
  return digits.substr(0, 3) + " " + digits.substr(3);
}

Hash session_words(const ShopId& shop, const seal::Key& hub, const DeviceId& device,
                   const Challenge& challenge) {
  return seal::Sha256()
      .add(seal::tag::session)
      .add(shop.bytes)
      .add(hub.bytes)
      .add(device.bytes)
      .add(challenge.bytes)
      .finish();
}

Hash enrol_words(const ShopId& shop, const seal::Key& hub, const EnrolAsk& ask) {
  const std::uint8_t brings = ask.brings_shop ? 1 : 0;
  return seal::Sha256()
      .add(seal::tag::enrol)
      .add(shop.bytes)
      .add(hub.bytes)
      .add(ask.code.bytes)
      .add(ask.device_key.bytes)
      .add({&brings, 1})
      .add(ask.device_name)
      .finish();
}

Hash code_words(const InviteCode& code) {
  return seal::Sha256().add(seal::tag::code).add(code.bytes).finish();
}

}  // namespace jambline::sync
