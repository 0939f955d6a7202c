// seal/sign.h: a device's key pair, signing and checking.
//
// Shape:   Ed25519 by libsodium. The secret lives in `device.key` (0600): 32 byte seed as hex, one
//          line. It is not encrypted: who holds the unlocked tablet holds the key (SECURITY.md).
// Threads: SigningKey is read-only after it was made; any thread.
// Errors:  NoSuchFile, Malformed, ReadOnly, DiskFull, FileFailed.
// Source:  RFC 8032.
#pragma once

#include <filesystem>
#include <span>

#include "base/random.h"
#include "seal/header.h"

namespace jambline::seal {

DeviceId device_of(const Key& key);

class SigningKey {
 public:
  static SigningKey from_seed(const std::array<std::uint8_t, 32>& seed);
  static SigningKey make(Random& random);
  static Result<SigningKey> load(const std::filesystem::path& file);
  Status save(const std::filesystem::path& file) const;  // new file only, fsync'd, 0600

  const Key& key() const { return key_; }
  // The secret itself: for the TLS certificates that a hub signs with its key, and nothing else.
  std::array<std::uint8_t, 32> seed() const;
  DeviceId device() const { return device_of(key_); }
  Signature sign(std::span<const std::uint8_t> message) const;
  Signature sign(const Hash& entry_hash) const { return sign(entry_hash.bytes); }

 private:
  std::array<std::uint8_t, 64> secret_{};
  Key key_;
};

bool verify(const Key& key, std::span<const std::uint8_t> message, const Signature& signature);

}  // namespace jambline::seal
