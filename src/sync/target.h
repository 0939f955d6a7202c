// sync/target.h: the paths of the protocol, taken apart and put together.
//
// Shape:   /v1 and what follows it; lower-case hex of fixed length, numbers without leading zeros;
//          nothing is percent-decoded, and what is not one of these paths to the letter is none.
//          So no part of a path ever reaches a file name unchecked.
// Source:  PROTOCOL.md section 2.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "seal/header.h"

namespace jambline::sync {

enum class Path : std::uint8_t {
  About,         // GET /v1
  AskChallenge,  // POST /v1/{shop}/challenge
  Session,       // POST /v1/{shop}/session
  Enrol,         // POST /v1/{shop}/enrol
  EnrolState,    // GET /v1/{shop}/enrol/{device}
  Invite,        // POST /v1/{shop}/invite
  Pending,       // GET /v1/{shop}/pending
  Refuse,        // POST /v1/{shop}/refuse/{device}
  Log,           // POST /v1/{shop}/log/{device}
  Pull,          // POST /v1/{shop}/pull
  Quarantine,    // GET /v1/{shop}/quarantine
  Kept,          // GET /v1/{shop}/quarantine/{device}?from=SEQ
  Settle,        // POST /v1/{shop}/quarantine/{device}/settled?through=SEQ
  Devices,       // GET /v1/{shop}/devices
  Have,          // POST /v1/{shop}/have
  Files,         // POST, OPTIONS /v1/{shop}/files
  File,          // HEAD, PATCH, DELETE /v1/{shop}/files/{upload}
  Blob,          // GET, HEAD /v1/{shop}/blobs/{hash}
};

// The name of an upload says which file, how large, and which try: hash-size-random.
struct UploadId {
  Hash blob;
  std::uint64_t size_bytes{};
  Bytes<8, struct UploadTag> random;
  std::string text() const;
  friend bool operator==(const UploadId&, const UploadId&) = default;
};
std::optional<UploadId> parse_upload(std::string_view text);

struct Target {
  Path path{};
  ShopId shop;
  DeviceId device;
  Hash blob;
  UploadId upload;
  std::uint64_t number{};  // from, through
};

std::optional<Target> parse_target(std::string_view text);
std::string target_of(const Target& target);

}  // namespace jambline::sync
