// net/server.h: HTTP/1.1 over TLS for a hub: connections, limits and time, nothing of the protocol.
//
// Shape:   each request goes to Site::begin(), which names the place (a shop) where it is handled;
//          what belongs to one place runs one thing at a time, and places do not wait for each
//          other. Bodies come in pieces; a long poll is asked again when Site says that its place
//          changed.
// Limits:  connections in all and unfinished handshakes; headers 8 KiB; a body needs 8 KiB a second
//          after a grace; a connection may idle. What is over is closed, and noted.
// Threads: the server has its own; Site and Place are called on them as said above.
// Notes:   have no time of their own (at_ms 0): whoever writes them down knows it.
// Errors:  of start(): NoContact (args: address, cause).
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "net/identity.h"
#include "sync/hub_shop.h"

namespace jambline::net {

// One shop, or what belongs to none. Calls come one at a time.
class Place {
 public:
  virtual ~Place() = default;
  virtual std::unique_ptr<sync::Handling> begin(const sync::Request& head,
                                                std::optional<std::uint64_t> body_bytes,
                                                const std::string& peer) = 0;
  virtual std::uint64_t changes() const = 0;  // a poll is asked again when this has grown
};

class Site {
 public:
  virtual ~Site() = default;
  // The place of a request, by its target alone; null: answered with `refused`. Any thread.
  virtual std::shared_ptr<Place> place_of(const sync::Request& head, sync::Response& refused) = 0;
};

struct ServerOptions {
  std::string host = "0.0.0.0";
  std::uint16_t port = sync::usual_port;  // 0: the kernel chooses
  int threads = 8;                        // that work; a place whose disk stands still holds one
  std::size_t most_connections = 2'000;
  std::size_t most_handshakes = 256;  // that are not finished; the oldest goes for a new one
  std::int64_t handshake_ms = 10'000;
  std::int64_t header_ms = 15'000;
  std::int64_t idle_ms = 120'000;
  std::int64_t body_grace_ms = 30'000;
  std::uint64_t body_bytes_a_second = 8'192;
};

class Server {
 public:
  static Result<std::unique_ptr<Server>> start(std::shared_ptr<TlsContext> tls, Site& site,
                                               ServerOptions options, sync::NoteEvent note);
  ~Server();  // cuts all connections
  std::uint16_t port() const;
  std::size_t connections() const;
  // Runs `work` where the place's requests run, one at a time with them, and waits for its end.
  void run_at(const std::shared_ptr<Place>& place, const std::function<void()>& work);

 private:
  struct Core;
  explicit Server(std::unique_ptr<Core> core);
  std::unique_ptr<Core> core_;
};

}  // namespace jambline::net
