// net/tls_context.h: what net/identity.h makes; for net/*.cpp only.
#pragma once

#include <boost/asio/ssl/context.hpp>
#include <openssl/evp.h>

#include "net/identity.h"

namespace jambline::net {

struct FreeKey {
  void operator()(EVP_PKEY* key) const { EVP_PKEY_free(key); }
};
using KeyPointer = std::unique_ptr<EVP_PKEY, FreeKey>;

class TlsContext {
 public:
  boost::asio::ssl::context context{boost::asio::ssl::context::tls};
  KeyPointer pinned;  // of a device's context
};

}  // namespace jambline::net
