// tests/fault/wrong_servers.h: small servers on loopback that are not the hub, or are it by halves.
//
// Threads: each has its own; what it is told and asked may come from any.
#pragma once

#include <atomic>
#include <thread>

#include "net/server.h"
#include "tests/fault/real_shop.h"

namespace jambline::fault {

inline constexpr const char* portal_page =
    "HTTP/1.1 200 OK\r\nContent-Type: text/html\r\nContent-Length: 19\r\n\r\n<html>Log in</html>";

// TCP connections, one after the other.
class Listener {
 public:
  std::uint16_t port() const { return port_; }

 protected:
  Listener();
  ~Listener();
  void start();  // when what pass() needs is there
  void stop();
  virtual void pass(int client) = 0;
  bool waits_for(int one, int other, bool& first, bool& second) const;  // false: it is to stop

 private:
  int listens_ = -1;
  int stop_[2] = {-1, -1};
  std::uint16_t port_ = 0;
  std::thread thread_;
};

// Says the same to everybody, without TLS.
class PlainServer final : public Listener {
 public:
  explicit PlainServer(std::string answer);
  ~PlainServer();

 private:
  void pass(int client) override;
  std::string answer_;
};

// Passes connections on and cuts each after so many bytes of the hub's answers.
class CutProxy final : public Listener {
 public:
  explicit CutProxy(std::uint16_t to);
  ~CutProxy();
  void cut_after_bytes(std::uint64_t bytes) { cut_ = bytes; }
  std::uint64_t most_passed_bytes() const { return most_; }  // on one connection

 private:
  void pass(int client) override;
  std::uint16_t to_;
  std::atomic<std::uint64_t> cut_{UINT64_MAX};
  std::atomic<std::uint64_t> most_{0};
};

// Says the same to everybody, over TLS.
class TlsServer final : private net::Site {
 public:
  TlsServer(const seal::SigningKey& key, sync::Response answer);
  TlsServer(std::shared_ptr<net::TlsContext> tls, sync::Response answer);
  ~TlsServer() override;
  std::uint16_t port() const { return server_->port(); }
  std::uint64_t requests() const { return requests_; }

 private:
  std::shared_ptr<net::Place> place_of(const sync::Request& head, sync::Response& refused) override;
  sync::Response answer_;
  std::atomic<std::uint64_t> requests_{0};
  std::unique_ptr<net::Server> server_;
};

// As net::hub_context(), but good from 2001 to 2002 only.
std::shared_ptr<net::TlsContext> certificate_that_is_over(const seal::SigningKey& key);

class WrongServers : public RealShop {
 protected:
  fs::path device_at(std::uint16_t port) { return make_device(1, port); }
  // A device program that looks there for its hub says so and counts nothing as sent; when it then
  // looks at the right place, all ends equal.
  void expect_nothing_goes_to(std::uint16_t port);
  void cut_every_answer();
  void cut_the_line();
};

}  // namespace jambline::fault
