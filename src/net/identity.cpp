#include "net/identity.h"

#include <openssl/err.h>
#include <openssl/pem.h>
#include <openssl/ssl.h>
#include <openssl/x509v3.h>

#include "net/tls_context.h"

namespace jambline::net {

namespace {
struct FreeCertificate {
  void operator()(X509* certificate) const { X509_free(certificate); }
};
using Certificate = std::unique_ptr<X509, FreeCertificate>;

tl::unexpected<Error> tls_failed(const char* operation) {
  char words[256] = "unknown";
  if (const auto number = ERR_get_error()) ERR_error_string_n(number, words, sizeof words);
  return fail(Error{Code::FileFailed, operation, "certificate", {{"cause", words}}});
}

bool add_extension(X509* to, X509* issuer, int kind, const char* value) {
  X509V3_CTX context;
  X509V3_set_ctx_nodb(&context);
  X509V3_set_ctx(&context, issuer, to, nullptr, nullptr, 0);
  X509_EXTENSION* extension = X509V3_EXT_conf_nid(nullptr, &context, kind, value);
  if (!extension) return false;
  const int added = X509_add_ext(to, extension, -1);
  X509_EXTENSION_free(extension);
  return added == 1;
}

// Nobody looks at the dates; the widest that X.509 can say.
bool fill(X509* certificate, EVP_PKEY* key, const char* name, X509* issuer, std::uint64_t serial) {
  if (X509_set_version(certificate, 2) != 1) return false;
  if (ASN1_INTEGER_set_uint64(X509_get_serialNumber(certificate), serial) != 1) return false;
  if (ASN1_TIME_set_string_X509(X509_getm_notBefore(certificate), "19700101000000Z") != 1)
    return false;
  if (ASN1_TIME_set_string_X509(X509_getm_notAfter(certificate), "99991231235959Z") != 1)
    return false;
  X509_NAME* subject = X509_get_subject_name(certificate);
  if (X509_NAME_add_entry_by_txt(subject, "CN", MBSTRING_ASC,
                                 reinterpret_cast<const unsigned char*>(name), -1, -1, 0) != 1)
    return false;
  if (X509_set_issuer_name(certificate, X509_get_subject_name(issuer)) != 1) return false;
  return X509_set_pubkey(certificate, key) == 1;
}

KeyPointer identity_key(const seal::SigningKey& identity) {
  const auto seed = identity.seed();
  return KeyPointer(
      EVP_PKEY_new_raw_private_key(EVP_PKEY_ED25519, nullptr, seed.data(), seed.size()));
}

Result<Certificate> authority(EVP_PKEY* identity) {
  Certificate out(X509_new());
  if (!out || !fill(out.get(), identity, "Jambline hub identity", out.get(), 1) ||
      !add_extension(out.get(), out.get(), NID_basic_constraints, "critical,CA:TRUE,pathlen:0") ||
      !add_extension(out.get(), out.get(), NID_key_usage, "critical,keyCertSign") ||
      X509_sign(out.get(), identity, nullptr) == 0)
    return tls_failed("make the identity's certificate");
  return out;
}

int look_at_leaf(X509_STORE_CTX* store, void* pinned) {
  X509* leaf = X509_STORE_CTX_get0_cert(store);
  if (leaf && X509_verify(leaf, static_cast<EVP_PKEY*>(pinned)) == 1) return 1;
  ERR_clear_error();  // what is said of it is what the handshake says
  X509_STORE_CTX_set_error(store, X509_V_ERR_CERT_UNTRUSTED);
  return 0;
}
}  // namespace

std::shared_ptr<TlsContext> device_context(const seal::Key& hub) {
  auto out = std::make_shared<TlsContext>();
  SSL_CTX* raw = out->context.native_handle();
  SSL_CTX_set_min_proto_version(raw, TLS1_3_VERSION);
  SSL_CTX_set_mode(raw, SSL_MODE_RELEASE_BUFFERS);
  out->pinned = KeyPointer(
      EVP_PKEY_new_raw_public_key(EVP_PKEY_ED25519, nullptr, hub.bytes.data(), hub.bytes.size()));
  SSL_CTX_set_verify(raw, SSL_VERIFY_PEER, nullptr);
  SSL_CTX_set_cert_verify_callback(raw, look_at_leaf, out->pinned.get());
  return out;
}

Result<std::shared_ptr<TlsContext>> hub_context(const seal::SigningKey& identity,
                                                const Clock& clock) {
  ERR_clear_error();
  const KeyPointer signer = identity_key(identity);
  if (!signer) return tls_failed("use the identity key");
  JAMBLINE_ASSIGN(const Certificate above, authority(signer.get()));
  const KeyPointer leaf_key(EVP_EC_gen("P-256"));
  const Certificate leaf(X509_new());
  const auto serial = static_cast<std::uint64_t>(clock.now().wall_ms) | 2U;
  if (!leaf_key || !leaf ||
      !fill(leaf.get(), leaf_key.get(), "Jambline hub", above.get(), serial) ||
      !add_extension(leaf.get(), above.get(), NID_basic_constraints, "critical,CA:FALSE") ||
      !add_extension(leaf.get(), above.get(), NID_key_usage, "critical,digitalSignature") ||
      !add_extension(leaf.get(), above.get(), NID_ext_key_usage, "serverAuth") ||
      !add_extension(leaf.get(), above.get(), NID_subject_alt_name,
                     "DNS:localhost,IP:127.0.0.1,IP:::1") ||
      X509_sign(leaf.get(), signer.get(), nullptr) == 0)
    return tls_failed("make a certificate");
  auto out = std::make_shared<TlsContext>();
  SSL_CTX* raw = out->context.native_handle();
  SSL_CTX_set_min_proto_version(raw, TLS1_3_VERSION);
  SSL_CTX_set_mode(raw, SSL_MODE_RELEASE_BUFFERS);
  SSL_CTX_set_num_tickets(raw, 0);
  if (SSL_CTX_use_certificate(raw, leaf.get()) != 1 ||
      SSL_CTX_use_PrivateKey(raw, leaf_key.get()) != 1 || SSL_CTX_check_private_key(raw) != 1)
    return tls_failed("use a certificate");
  if (SSL_CTX_add1_chain_cert(raw, above.get()) != 1) return tls_failed("use a certificate");
  return out;
}

Result<std::string> authority_pem(const seal::SigningKey& identity, const Clock&) {
  ERR_clear_error();
  const KeyPointer signer = identity_key(identity);
  if (!signer) return tls_failed("use the identity key");
  JAMBLINE_ASSIGN(const Certificate certificate, authority(signer.get()));
  BIO* memory = BIO_new(BIO_s_mem());
  PEM_write_bio_X509(memory, certificate.get());
  char* text = nullptr;
  const long length = BIO_get_mem_data(memory, &text);
  std::string out(text, static_cast<std::size_t>(length));
  BIO_free(memory);
  return out;
}

}  // namespace jambline::net
