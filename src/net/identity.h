// net/identity.h: TLS 1.3 where the other side is known by one key and nothing else.
//
// Shape:   a hub signs a fresh certificate for each start with its identity key (Ed25519); a device
//          accepts whoever shows a certificate that this key has signed, and looks at no name, no
//          date and no authority: LAN names change and tablets wake up in 1970. Leaf keys rotate
//          by themselves; there is one pin and no schedule.
// Errors:  FileFailed (args: cause, OpenSSL's words).
// Threads: a context is read-only once made.
// Source:  RFC 8446; RFC 8410 (Ed25519 in X.509).
#pragma once

#include <memory>

#include "base/clock.h"
#include "base/error.h"
#include "seal/sign.h"

namespace jambline::net {

class TlsContext;  // an SSL_CTX

std::shared_ptr<TlsContext> device_context(const seal::Key& hub);
Result<std::shared_ptr<TlsContext>> hub_context(const seal::SigningKey& identity,
                                                const Clock& clock);
// The identity's own certificate in PEM, for clients that want an authority (peer tests, curl).
Result<std::string> authority_pem(const seal::SigningKey& identity, const Clock& clock);

}  // namespace jambline::net
