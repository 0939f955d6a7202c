#include "seal/digest.h"

#include <cstdlib>
#include <openssl/evp.h>

#include "seal/header.h"

namespace jambline::seal {

namespace {
// One fetch for the whole program: an implicit fetch per hash costs more than the hash.
const EVP_MD* algorithm() {
  static const EVP_MD* const fetched = EVP_MD_fetch(nullptr, "SHA256", nullptr);
  if (!fetched) std::abort();  // a libcrypto without SHA-256: nothing here can go on
  return fetched;
}
void must(int done) {
  if (done != 1) std::abort();  // only out of memory gets here
}
EVP_MD_CTX* of(void* context) {
  return static_cast<EVP_MD_CTX*>(context);
}

Sha256& own() {
  thread_local Sha256 digest;
  return digest;
}
}  // namespace

Sha256::Sha256() : context_(EVP_MD_CTX_new()) {
  if (!context_) std::abort();
  must(EVP_DigestInit_ex2(of(context_), algorithm(), nullptr));
}
Sha256::~Sha256() {
  EVP_MD_CTX_free(of(context_));
}

Sha256& Sha256::add(std::span<const std::uint8_t> bytes) {
  must(EVP_DigestUpdate(of(context_), bytes.data(), bytes.size()));
  return *this;
}

Hash Sha256::finish() {
  Hash out;
  must(EVP_DigestFinal_ex(of(context_), out.bytes.data(), nullptr));
  must(EVP_DigestInit_ex2(of(context_), nullptr, nullptr));
  return out;
}

Hash sha256(std::span<const std::uint8_t> bytes) {
  return own().add(bytes).finish();
}

Hash payload_hash(const Salt& salt, std::string_view payload) {
  return own().add(tag::payload).add(salt.bytes).add(payload).finish();
}

Hash entry_hash(std::span<const std::uint8_t, header_bytes> header) {
  std::array<std::uint8_t, tag::entry.size() + header_bytes> whole;
  std::memcpy(whole.data(), tag::entry.data(), tag::entry.size());
  std::memcpy(whole.data() + tag::entry.size(), header.data(), header_bytes);
  return own().add(whole).finish();
}

}  // namespace jambline::seal
