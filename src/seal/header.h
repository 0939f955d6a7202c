// seal/header.h: the frozen bytes of an entry.
//
// Shape:  Header = 206 bytes, big-endian, field by field as in FORMAT.md section 2. An entry on
// disk
//         and on the wire is header || signature 64 || erased u8 || salt 16 || payload, never
//         written again.
// Hashes: payload_hash = SHA-256("jambline payload 1" || salt || payload)
//         entry_hash   = SHA-256("jambline entry 1" || header)
//         signature    = Ed25519 over entry_hash by the device's key.
//         So a chain is checked from headers alone, and a payload can be erased or left out.
// Units:  wall_ms UTC since 1970, boottime_ms since boot, offset_min local minus UTC.
// Errors: Malformed (wrong length, unknown format, seq 0, part outside 1..parts), TooLarge (payload
//         over 64 KiB), BadHash (a payload that is not the one its header names). Whatever decodes
//         encodes to the same bytes again.
// Source: FORMAT.md; FIPS 180-4; RFC 8032.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "base/error.h"
#include "base/ids.h"

namespace jambline::seal {

inline constexpr std::uint8_t header_format = 1;
inline constexpr std::size_t most_payload_bytes = 65'536;
inline constexpr std::uint64_t last_seq = INT64_MAX;  // so that a seq fits every database

using Key = Bytes<32, struct PublicKeyTag>;  // Ed25519 public key
using Signature = Bytes<64, struct SignatureTag>;
using Salt = Bytes<16, struct SaltTag>;

namespace clock_flag {
inline constexpr std::uint8_t before_2025 = 1;   // wall clock stands before 2025-01-01
inline constexpr std::uint8_t stepped_back = 2;  // wall clock is behind this device's last entry
inline constexpr std::uint8_t jumped =
    4;  // wall and boot clock disagree by over 2 minutes since then
}  // namespace clock_flag

struct Header {
  ShopId shop;
  DeviceId device;      // first 16 bytes of SHA-256(device public key)
  std::uint64_t seq{};  // 1, 2, 3 ... per device, no gaps
  Hash prev_hash;       // entry_hash of seq - 1; for seq 1 see FORMAT.md section 5
  JobId subject;        // the job, or zero for the shop's own stream
  std::uint64_t hlc{};  // hybrid logical clock: 48 bit ms, 16 bit counter; display order only
  std::int64_t wall_ms{};
  std::int16_t offset_min{};
  std::uint8_t clock_flags{};
  BootId boot;
  std::uint64_t boottime_ms{};
  PersonId person;
  ActionId action;      // all entries of one tap share it
  std::uint8_t part{};  // 1 .. parts
  std::uint8_t parts{};
  std::uint16_t kind{};
  std::uint16_t schema{};
  std::uint32_t payload_bytes{};
  Hash payload_hash;
  friend bool operator==(const Header&, const Header&) = default;
};

// 1+16+16+8+32+16+8+8+2+1+16+8+16+16+1+1+2+2+4+32
inline constexpr std::size_t header_bytes = 206;
inline constexpr std::size_t entry_fixed_bytes = header_bytes + 64 + 1 + 16;
inline constexpr std::size_t most_entry_bytes = entry_fixed_bytes + most_payload_bytes;
using HeaderBytes = std::array<std::uint8_t, header_bytes>;

HeaderBytes encode(const Header& header);
Result<Header> decode_header(std::span<const std::uint8_t> bytes);

Hash sha256(std::span<const std::uint8_t> bytes);
Hash payload_hash(const Salt& salt, std::string_view payload);
Hash entry_hash(std::span<const std::uint8_t, header_bytes> header);

// One entry as it is kept: what was hashed and signed, and what may be missing (erased payload).
struct SealedEntry {
  Header header;
  Hash hash;  // entry_hash, always computed here, never taken from outside
  Signature signature;
  Salt salt;            // zero when the payload was erased
  std::string payload;  // UTF-8 JSON as first written; empty when erased
  bool erased = false;
};

// BadHash when a whole entry's salt and payload are not what its header names.
Status check_payload(const SealedEntry& entry);

// header || signature || flag u8 (0 whole, 1 erased) || salt || payload, as in folders and on the
// wire.
std::string encode(const SealedEntry& entry);
Result<SealedEntry> decode_entry(std::span<const std::uint8_t> bytes);

}  // namespace jambline::seal
