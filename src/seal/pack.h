// seal/pack.h: many entries in one run of bytes, for files of an exported shop and for sending.
//
// Shape:  per entry a length (u32, big-endian) and the entry's own bytes; nothing before, between
//         or after. At most 500 entries and 1 MiB together.
// Errors: Malformed, TooLarge (args: place = which entry, counted from 1).
// Source: FORMAT.md section 8.
#pragma once

#include <string>
#include <vector>

#include "seal/header.h"

namespace jambline::seal {

inline constexpr std::size_t most_pack_entries = 500;
inline constexpr std::size_t most_pack_bytes = 1U << 20U;

class Packer {
 public:
  // False, and nothing taken, when the pack is full.
  bool add(const SealedEntry& entry);
  std::size_t count() const { return count_; }
  const std::string& bytes() const { return bytes_; }
  void clear();

 private:
  std::string bytes_;
  std::size_t count_ = 0;
};

Result<std::vector<SealedEntry>> decode_pack(std::span<const std::uint8_t> bytes);

}  // namespace jambline::seal
