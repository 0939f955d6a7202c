// net/client.h: one connection to a hub, used for one request after another.
//
// Shape:   connects when it must, in the order of the addresses, and keeps the connection. A
// request
//          whose connection had gone stale before anything was answered is sent once more,
//          unless its body is a file.
// Files:   Request::send and Request::receive are read from and written to `Bodies`.
// Errors:  NoContact (args: address, cause), WrongServer (the certificate is not signed by the
//          hub's key, or the answer is no HTTP), Stopped (cancel()), and those of Bodies. An HTTP
//          status is no error.
// Time:    connecting 5 s an address; 30 s without a byte in either direction, plus what a long
//          poll asks for.
// Threads: one owner; cancel() from any thread ends what runs at once.
#pragma once

#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "net/identity.h"
#include "sync/http.h"
#include "sync/invitation.h"

namespace jambline::net {

// Where bodies that are files come from and go to; called on the client's thread.
class Bodies {
 public:
  virtual ~Bodies() = default;
  using Read = std::function<Result<std::size_t>(std::span<std::uint8_t> bytes)>;  // 0 = end
  using Write = std::function<Status(std::span<const std::uint8_t> bytes)>;
  virtual Result<Read> read(const sync::BlobPart& part) = 0;
  virtual Result<Write> write(const sync::BlobPart& part) = 0;
};

struct ClientOptions {
  std::int64_t connect_ms = 5'000;
  std::int64_t idle_ms = 30'000;
};

class Client {
 public:
  Client(std::shared_ptr<TlsContext> tls, std::vector<sync::Address> at, Bodies* bodies = nullptr,
         ClientOptions options = {});
  ~Client();
  Client(const Client&) = delete;
  Client& operator=(const Client&) = delete;

  Result<sync::Response> send(const sync::Request& request, std::int64_t extra_wait_ms = 0);
  void cancel();  // also all later ones
  void set_addresses(std::vector<sync::Address> at);
  // Of bodies that went out; for tests and benches.
  std::uint64_t sent_bytes() const;

 private:
  class Connection;
  std::unique_ptr<Connection> connection_;
};

}  // namespace jambline::net
