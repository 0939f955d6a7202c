// tests/net/net_world.h: a server on loopback with places that a test says, and a raw client that
// may send what no good client sends.
#pragma once

#include <atomic>
#include <boost/asio/connect.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/read.hpp>
#include <boost/asio/ssl.hpp>
#include <boost/asio/write.hpp>
#include <gtest/gtest.h>
#include <mutex>
#include <sys/socket.h>
#include <sys/time.h>
#include <thread>

#include "net/client.h"
#include "net/server.h"
#include "sync/handlings.h"

namespace jambline::test {

namespace asio = boost::asio;

inline seal::SigningKey net_key(std::uint8_t number) {
  std::array<std::uint8_t, 32> seed{};
  seed.fill(number);
  return seal::SigningKey::from_seed(seed);
}

inline std::shared_ptr<net::TlsContext> hub_tls(const seal::SigningKey& key) {
  auto context = net::hub_context(key, SystemClock());
  if (!context) std::abort();
  return *context;
}

// Answers with what the test's function makes of head and body.
class FunctionPlace final : public net::Place {
 public:
  using Begin = std::function<std::unique_ptr<sync::Handling>(
      const sync::Request& head, std::optional<std::uint64_t> body_bytes)>;
  explicit FunctionPlace(Begin begin) : begin_(std::move(begin)) {}
  std::unique_ptr<sync::Handling> begin(const sync::Request& head,
                                        std::optional<std::uint64_t> body_bytes,
                                        const std::string&) override {
    ++begun;
    return begin_(head, body_bytes);
  }
  std::uint64_t changes() const override { return changed; }
  std::atomic<int> begun = 0;
  std::atomic<std::uint64_t> changed = 0;

 private:
  Begin begin_;
};

// One place for every target but /nowhere.
class OnePlace final : public net::Site {
 public:
  explicit OnePlace(FunctionPlace::Begin begin)
      : place(std::make_shared<FunctionPlace>(std::move(begin))) {}
  std::shared_ptr<net::Place> place_of(const sync::Request& head,
                                       sync::Response& refused) override {
    if (head.target != "/nowhere") return place;
    refused = sync::response_of(sync::problem(sync::Refusal::NotHere));
    return nullptr;
  }
  std::shared_ptr<FunctionPlace> place;
};

inline std::unique_ptr<sync::Handling> say(sync::Response response) {
  return sync::answered(std::move(response));
}
inline std::unique_ptr<sync::Handling> echo(std::uint64_t most_bytes = 64U << 20U) {
  return std::make_unique<sync::Whole>(most_bytes, [](const std::string& body) {
    return sync::Response{200, {}, body};
  });
}

// A server, and the events that it noted.
class NetWorld {
 public:
  explicit NetWorld(FunctionPlace::Begin begin, net::ServerOptions options = {})
      : site(std::move(begin)), options_(std::move(options)) {
    options_.host = "127.0.0.1";
    options_.port = 0;
    start();
  }
  ~NetWorld() { stop(); }  // it notes its counts as it ends
  void start() {
    auto made = net::Server::start(hub_tls(key), site, options_, [this](const auto& event) {
      const std::lock_guard lock(mutex_);
      events_.push_back(event);
    });
    if (!made) std::abort();
    server = std::move(*made);
    options_.port = server->port();
  }
  void stop() { server.reset(); }
  std::uint16_t port() const { return options_.port; }
  net::Client client(net::Bodies* bodies = nullptr, net::ClientOptions how = {}) const {
    return net::Client(net::device_context(key.key()), {{"127.0.0.1", port()}}, bodies, how);
  }
  // Counts are noted once a second and at the end.
  std::uint64_t noted(const std::string& event, int status = 0) {
    const std::lock_guard lock(mutex_);
    std::uint64_t out = 0;
    for (const auto& one : events_)
      if (one.event == event && one.status == status) out += one.bytes + one.entries;
    return out;
  }

  seal::SigningKey key = net_key(7);
  OnePlace site;
  std::unique_ptr<net::Server> server;

 private:
  net::ServerOptions options_;
  std::mutex mutex_;
  std::vector<sync::HubEvent> events_;
};

// TLS without any checks, text as it is given; reads with a limit of time on the socket.
class RawClient {
 public:
  explicit RawClient(std::uint16_t port, int version = TLS1_3_VERSION)
      : tls_(asio::ssl::context::tls_client), stream_(io_, tls_) {
    SSL_set_min_proto_version(stream_.native_handle(), version);
    SSL_set_max_proto_version(stream_.native_handle(), version);
    stream_.next_layer().connect({asio::ip::make_address("127.0.0.1"), port});
    const timeval patience{10, 0};
    setsockopt(stream_.next_layer().native_handle(), SOL_SOCKET, SO_RCVTIMEO, &patience,
               sizeof patience);
    stream_.handshake(asio::ssl::stream_base::client, error);
  }
  bool write(const std::string& text) {
    asio::write(stream_, asio::buffer(text), error);
    return !error;
  }
  // Up to `end`, or until the other side has no more to say.
  std::string read_until(const std::string& end) {
    std::string out;
    char sign{};
    while (out.find(end) == std::string::npos) {
      if (stream_.read_some(asio::buffer(&sign, 1), error) == 1) out += sign;
      if (error) break;
    }
    return out;
  }
  std::string ask(const std::string& text) {
    write(text);
    std::string all;
    std::array<char, 4096> piece{};
    while (true) {
      const std::size_t got = stream_.read_some(asio::buffer(piece), error);
      all.append(piece.data(), got);
      if (error) return all;
    }
  }
  boost::system::error_code error;

 private:
  asio::io_context io_;
  asio::ssl::context tls_;
  asio::ssl::stream<asio::ip::tcp::socket> stream_;
};

// Plain TCP that answers each connection with the same bytes, after it has read something.
class PlainServer {
 public:
  explicit PlainServer(std::string answer)
      : answer_(std::move(answer)), acceptor_(io_, {asio::ip::make_address("127.0.0.1"), 0}) {
    thread_ = std::thread([this] {
      while (!over_) {
        boost::system::error_code ec;
        asio::ip::tcp::socket socket(io_);
        acceptor_.accept(socket, ec);
        if (ec || over_) return;
        ++connections;
        std::array<char, 4096> piece{};
        socket.read_some(asio::buffer(piece), ec);
        if (!answer_.empty()) asio::write(socket, asio::buffer(answer_), ec);
        socket.shutdown(asio::ip::tcp::socket::shutdown_both, ec);
      }
    });
  }
  ~PlainServer() {
    over_ = true;
    boost::system::error_code ec;
    asio::io_context io;
    asio::ip::tcp::socket knock(io);
    knock.connect({asio::ip::make_address("127.0.0.1"), port()}, ec);
    thread_.join();
  }
  std::uint16_t port() const { return acceptor_.local_endpoint().port(); }
  std::atomic<int> connections = 0;

 private:
  std::string answer_;
  std::atomic<bool> over_ = false;
  asio::io_context io_;
  asio::ip::tcp::acceptor acceptor_;
  std::thread thread_;
};

inline sync::Request get(std::string target) {
  return {sync::Method::Get, std::move(target), {}, {}};
}
inline sync::Request post(std::string target, std::string body) {
  return {sync::Method::Post, std::move(target), {}, std::move(body)};
}

// Waits for what other threads do; the limit is only for a test that would hang.
template <class Condition>
bool soon(Condition condition) {
  for (int i = 0; i < 1'500; ++i) {
    if (condition()) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  return false;
}

}  // namespace jambline::test
