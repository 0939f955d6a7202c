// blobs/hasher.h: SHA-256 of bytes that come in pieces (FIPS 180-4, by OpenSSL).
//
// Errors:  FileFailed (args: cause "sha256") if OpenSSL refuses, reported once, by finish().
// Threads: one owner.
#pragma once

#include <cstdint>
#include <memory>
#include <span>

#include "base/error.h"
#include "base/ids.h"

struct evp_md_ctx_st;

namespace jambline::blobs {

class Hasher {
 public:
  Hasher();
  void update(std::span<const std::uint8_t> bytes);
  Result<Hash> finish();  // once

 private:
  struct Free {
    void operator()(evp_md_ctx_st* context) const;
  };
  std::unique_ptr<evp_md_ctx_st, Free> context_;
  bool good_ = false;
};

}  // namespace jambline::blobs
