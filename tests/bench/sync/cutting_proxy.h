// tests/bench/sync/cutting_proxy.h: a loopback proxy that ends each connection after so many bytes
// of the client's, all of which it passes on first.
#pragma once

#include <atomic>
#include <boost/asio/connect.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/write.hpp>
#include <thread>
#include <vector>

namespace jambline::bench {

class CuttingProxy {
 public:
  // 0: never cuts.
  CuttingProxy(std::uint16_t to, std::uint64_t cut_after_bytes)
      : to_(to),
        cut_after_bytes_(cut_after_bytes),
        acceptor_(io_, {boost::asio::ip::make_address("127.0.0.1"), 0}) {
    accepting_ = std::thread([this] { accept(); });
  }
  ~CuttingProxy() {
    over_ = true;
    boost::system::error_code ec;
    boost::asio::ip::tcp::socket knock(io_);
    knock.connect({boost::asio::ip::make_address("127.0.0.1"), port()}, ec);
    accepting_.join();
    for (auto& one : lines_) {
      one->client.shutdown(boost::asio::ip::tcp::socket::shutdown_both, ec);
      one->hub.shutdown(boost::asio::ip::tcp::socket::shutdown_both, ec);
    }
  }
  std::uint16_t port() const { return acceptor_.local_endpoint().port(); }
  std::uint64_t client_bytes() const { return client_bytes_; }
  std::uint64_t connections() const { return connections_; }
  std::uint64_t cuts() const { return cuts_; }

 private:
  using Socket = boost::asio::ip::tcp::socket;
  struct Line {
    explicit Line(boost::asio::io_context& io) : client(io), hub(io) {}
    ~Line() {
      if (up.joinable()) up.join();
      if (down.joinable()) down.join();
    }
    Socket client;
    Socket hub;
    std::thread up;
    std::thread down;
  };

  void accept() {
    while (true) {
      auto line = std::make_unique<Line>(io_);
      boost::system::error_code ec;
      acceptor_.accept(line->client, ec);
      if (over_ || ec) return;
      line->hub.connect({boost::asio::ip::make_address("127.0.0.1"), to_}, ec);
      if (ec) continue;
      line->client.set_option(boost::asio::ip::tcp::no_delay(true), ec);
      line->hub.set_option(boost::asio::ip::tcp::no_delay(true), ec);
      ++connections_;
      Line& at = *line;
      lines_.push_back(std::move(line));
      at.up = std::thread([this, &at] { pass_up(at); });
      at.down = std::thread([&at] { pass_down(at); });
    }
  }

  void pass_up(Line& line) {
    std::vector<char> piece(64U << 10U);
    std::uint64_t passed = 0;
    boost::system::error_code ec;
    while (!ec) {
      const std::uint64_t left = cut_after_bytes_ == 0 ? piece.size() : cut_after_bytes_ - passed;
      const std::size_t got = line.client.read_some(
          boost::asio::buffer(piece.data(), std::min<std::uint64_t>(piece.size(), left)), ec);
      client_bytes_ += got;
      passed += got;
      boost::system::error_code failed;
      boost::asio::write(line.hub, boost::asio::buffer(piece.data(), got), failed);
      if (failed) break;
      if (cut_after_bytes_ > 0 && passed == cut_after_bytes_) {
        ++cuts_;
        line.client.shutdown(Socket::shutdown_both, failed);
        break;
      }
    }
    line.hub.shutdown(Socket::shutdown_send, ec);
  }
  static void pass_down(Line& line) {
    std::vector<char> piece(64U << 10U);
    boost::system::error_code ec;
    boost::system::error_code failed;
    while (!ec) {
      const std::size_t got = line.hub.read_some(boost::asio::buffer(piece), ec);
      boost::asio::write(line.client, boost::asio::buffer(piece.data(), got), failed);
    }
    line.client.shutdown(Socket::shutdown_both, failed);
  }

  std::uint16_t to_;
  std::uint64_t cut_after_bytes_;
  std::atomic<std::uint64_t> client_bytes_ = 0;
  std::atomic<std::uint64_t> connections_ = 0;
  std::atomic<std::uint64_t> cuts_ = 0;
  std::atomic<bool> over_ = false;
  boost::asio::io_context io_;
  boost::asio::ip::tcp::acceptor acceptor_;
  std::vector<std::unique_ptr<Line>> lines_;
  std::thread accepting_;
};

}  // namespace jambline::bench
