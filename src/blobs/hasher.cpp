#include "blobs/hasher.h"

#include <openssl/evp.h>

namespace jambline::blobs {

void Hasher::Free::operator()(evp_md_ctx_st* context) const {
  EVP_MD_CTX_free(context);
}

Hasher::Hasher() : context_(EVP_MD_CTX_new()) {
  good_ = context_ && EVP_DigestInit_ex(context_.get(), EVP_sha256(), nullptr) == 1;
}

void Hasher::update(std::span<const std::uint8_t> bytes) {
  good_ = good_ && EVP_DigestUpdate(context_.get(), bytes.data(), bytes.size()) == 1;
}

Result<Hash> Hasher::finish() {
  Hash hash;
  unsigned size = 0;
  good_ = good_ && EVP_DigestFinal_ex(context_.get(), hash.bytes.data(), &size) == 1 &&
          size == Hash::size;
  if (!good_) return fail(Error{Code::FileFailed, "hash", "", {{"cause", "sha256"}}});
  return hash;
}

}  // namespace jambline::blobs
