// net/server_connection.h: one connection of a hub's server; for net/*.cpp only.
#pragma once

#include <boost/asio/ip/tcp.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http.hpp>
#include <optional>

#include "net/server_places.h"
#include "net/tls_stream.h"

namespace jambline::net {

class Connection;

class ConnectionOwner {
 public:
  virtual ~ConnectionOwner() = default;
  virtual const ServerOptions& limits() const = 0;
  virtual Site& served() = 0;
  virtual Places& lanes() = 0;
  virtual void greeted(Connection& connection) = 0;  // its handshake is over
  virtual void refused_unasked(int status) = 0;      // without any place
  virtual void closed(Connection& connection, bool greeted_before) = 0;
};

class Connection : public std::enable_shared_from_this<Connection> {
 public:
  Connection(ConnectionOwner& owner, boost::asio::ip::tcp::socket socket, TlsContext& tls);
  ~Connection();
  void start();
  void cut();  // any thread

 private:
  using Parser = boost::beast::http::request_parser<boost::beast::http::buffer_body>;
  using Answer = boost::beast::http::response<boost::beast::http::string_body>;
  using FileHead = boost::beast::http::response<boost::beast::http::buffer_body>;
  using FileSerializer = boost::beast::http::response_serializer<boost::beast::http::buffer_body>;

  void read_header(std::int64_t within_ms);
  void on_header();
  void begin_at_place(sync::Request head, std::optional<std::uint64_t> body_bytes);
  void refuse(sync::Refusal why);
  void go_on(std::optional<sync::Response> early);
  void continue_then_read();
  void read_body();
  void on_body(std::size_t got, const boost::system::error_code& ec);
  void finish_body();
  void finish_at_place();
  void answer(sync::Outcome outcome);
  void respond(sync::Response response);
  void send_file(sync::FileReply reply);
  void send_file_piece();
  void after_answer();
  void close();
  void drain();
  void expire_after(std::int64_t ms);
  template <class Work>
  void on_own_thread(Work work);

  ConnectionOwner& owner_;
  TlsStream stream_;
  boost::beast::flat_buffer buffer_;
  std::string peer_;
  bool greeted_ = false;

  // Of the request that is being handled.
  std::optional<Parser> parser_;
  bool head_only_ = false;
  bool keep_open_ = true;
  std::shared_ptr<Place> place_;
  std::unique_ptr<sync::Handling> handling_;
  std::vector<std::uint8_t> piece_;
  std::uint64_t body_bytes_ = 0;
  std::size_t drained_bytes_ = 0;
  std::chrono::steady_clock::time_point body_began_;
  std::optional<Answer> answer_;
  std::optional<FileHead> file_head_;
  std::optional<FileSerializer> file_serializer_;
  std::unique_ptr<sync::FileSource> file_;
  std::uint64_t file_left_bytes_ = 0;
};

}  // namespace jambline::net
