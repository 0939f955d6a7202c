#include "net/client.h"

#include <atomic>
#include <boost/asio/connect.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http.hpp>
#include <limits>
#include <mutex>
#include <optional>

#include "net/tls_context.h"
#include "net/tls_stream.h"
#include "sync/limits.h"

namespace jambline::net {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using boost::system::error_code;

namespace {
constexpr std::size_t client_piece_bytes = std::size_t{128} * 1024;
constexpr std::uint64_t most_answer_bytes = sync::most_page_bytes + 4096;

http::verb verb_of(sync::Method method) {
  return http::string_to_verb(std::string(sync::name_of(method)));
}

// A body of this length that is written piece by piece.
template <class Fields>
void set_length(Fields& message, std::uint64_t length) {
  message.set(http::field::content_length, std::to_string(length));
}
}  // namespace

class Client::Connection {
 public:
  Connection(std::shared_ptr<TlsContext> tls, std::vector<sync::Address> at, Bodies* bodies,
             ClientOptions options)
      : tls_(std::move(tls)), at_(std::move(at)), bodies_(bodies), options_(options) {}

  Result<sync::Response> send(const sync::Request& request, std::int64_t extra_wait_ms) {
    const bool reused = stream_.has_value();
    answered_ = false;
    timed_out_ = false;
    auto answer = once(request, extra_wait_ms);
    // A file is not sent again from where it began: who sends it asks how far it came.
    const bool stale = reused && !answered_ && !timed_out_ && !cancelled_ && !request.send;
    if (!answer && stale && answer.error().code == Code::NoContact)
      answer = once(request, extra_wait_ms);
    return answer;
  }

  void cancel() {
    cancelled_ = true;
    asio::post(io_, [this] { drop(); });
  }

  void set_addresses(std::vector<sync::Address> at) {
    const std::lock_guard lock(mutex_);
    at_ = std::move(at);
  }

  std::uint64_t sent_bytes() const { return sent_bytes_; }

 private:
  void drop() {
    if (!stream_) return;
    error_code ignored;
    stream_->tcp().socket().close(ignored);
  }

  // Starts something that takes a handler, and runs until it was called.
  template <class Start>
  error_code await(Start start) {
    error_code out = asio::error::operation_aborted;
    start([&out](const error_code& ec, auto&&...) { out = ec; });
    io_.restart();
    io_.run();
    return out;
  }

  void expire_after(std::int64_t ms) {
    stream_->tcp().expires_after(std::chrono::milliseconds(ms));
  }

  tl::unexpected<Error> no_contact(const error_code& ec) {
    stream_.reset();
    timed_out_ = timed_out_ || ec == beast::error::timeout;
    if (cancelled_) return fail(Code::Stopped, "ask", "hub");
    return fail(Error{
        Code::NoContact, "ask", "hub", {{"address", connected_to_}, {"cause", ec.message()}}});
  }
  tl::unexpected<Error> wrong_server(std::string cause) {
    stream_.reset();
    return fail(Error{Code::WrongServer,
                      "ask",
                      "hub",
                      {{"address", connected_to_}, {"cause", std::move(cause)}}});
  }

  Status connect() {
    std::vector<sync::Address> at;
    {
      const std::lock_guard lock(mutex_);
      at = at_;
    }
    Status last = fail(Error{Code::NoContact, "ask", "hub", {{"cause", "no address"}}});
    for (const sync::Address& address : at) {
      if (cancelled_) return fail(Code::Stopped, "ask", "hub");
      last = connect_to(address);
      if (last) return last;
    }
    return last;
  }

  Status connect_to(const sync::Address& address) {
    connected_to_ = address.text();
    stream_.emplace(io_, tls_->context);
    buffer_.clear();
    asio::ip::tcp::resolver resolver(io_);
    error_code ec;
    const auto found = resolver.resolve(address.host, std::to_string(address.port),
                                        asio::ip::resolver_base::numeric_service, ec);
    if (ec) return no_contact(ec);
    expire_after(options_.connect_ms);
    ec = await([&](auto handler) { stream_->tcp().async_connect(found, std::move(handler)); });
    if (ec) return no_contact(ec);
    stream_->tcp().socket().set_option(asio::ip::tcp::no_delay(true), ec);
    expire_after(options_.connect_ms);
    ec = await([&](auto handler) {
      stream_->async_handshake(asio::ssl::stream_base::client, std::move(handler));
    });
    if (!ec) return {};
    const bool tls_said_no = ec.category() == asio::error::get_ssl_category();
    return tls_said_no ? wrong_server(ec.message()) : no_contact(ec);
  }

  Result<sync::Response> once(const sync::Request& request, std::int64_t extra_wait_ms) {
    if (cancelled_) return fail(Code::Stopped, "ask", "hub");
    if (!stream_) JAMBLINE_TRY(connect());
    http::request<http::buffer_body> head{verb_of(request.method), request.target, 11};
    head.set(http::field::host, connected_to_);
    for (const auto& field : request.headers) head.insert(field.name, field.value);
    Bodies::Read read;
    std::uint64_t length = request.body.size();
    if (request.send) {
      JAMBLINE_ASSIGN(read, bodies_->read(*request.send));
      length = request.send->size_bytes - request.send->offset;
    }
    const bool has_body =
        length > 0 || request.method == sync::Method::Post || request.method == sync::Method::Patch;
    if (has_body) set_length(head, length);
    head.body().data = nullptr;
    head.body().more = true;
    http::request_serializer<http::buffer_body> serializer(head);
    expire_after(options_.idle_ms);
    error_code ec = await(
        [&](auto handler) { http::async_write_header(*stream_, serializer, std::move(handler)); });
    if (!ec && length > 0) {
      auto written = read ? write_file(head, serializer, read, length)
                          : Result<error_code>(write_piece(
                                head, serializer,
                                {reinterpret_cast<const std::uint8_t*>(request.body.data()),
                                 request.body.size()},
                                false));
      if (!written) {
        stream_.reset();  // the other side waits for bytes that will not come
        return fail(std::move(written.error()));
      }
      ec = *written;
    }
    // An answer may be there already when the other side did not want the rest.
    auto answer = receive(request, extra_wait_ms, /*write_failed=*/static_cast<bool>(ec));
    if (!answer && ec && !answered_ && answer.error().code == Code::NoContact)
      return no_contact(ec);
    return answer;
  }

  template <class Head, class Serializer>
  error_code write_piece(Head& head, Serializer& serializer, std::span<const std::uint8_t> piece,
                         bool more) {
    head.body().data = const_cast<std::uint8_t*>(piece.data());
    head.body().size = piece.size();
    head.body().more = more;
    expire_after(options_.idle_ms);
    const error_code ec =
        await([&](auto handler) { http::async_write(*stream_, serializer, std::move(handler)); });
    if (ec && ec != http::error::need_buffer) return ec;
    sent_bytes_ += piece.size();
    return {};
  }

  template <class Head, class Serializer>
  Result<error_code> write_file(Head& head, Serializer& serializer, const Bodies::Read& read,
                                std::uint64_t length) {
    std::vector<std::uint8_t> piece(client_piece_bytes);
    std::uint64_t sent = 0;
    while (sent < length) {
      const auto want =
          static_cast<std::size_t>(std::min<std::uint64_t>(piece.size(), length - sent));
      JAMBLINE_ASSIGN(const std::size_t got, read(std::span(piece).first(want)));
      if (got == 0) return fail(Code::BadHash, "send", "file");  // shorter than it should be
      sent += got;
      if (const error_code ec =
              write_piece(head, serializer, std::span(piece).first(got), sent < length))
        return ec;
    }
    return error_code();
  }

  Result<sync::Response> receive(const sync::Request& request, std::int64_t extra_wait_ms,
                                 bool write_failed) {
    http::response_parser<http::buffer_body> parser;
    parser.header_limit(static_cast<std::uint32_t>(sync::most_header_bytes));
    parser.body_limit(std::numeric_limits<std::uint64_t>::max());
    if (request.method == sync::Method::Head) parser.skip(true);
    const auto asked_at =
        std::chrono::milliseconds(write_failed ? 1000 : options_.idle_ms + extra_wait_ms);
    stream_->tcp().expires_after(asked_at);
    error_code ec = await([&](auto handler) {
      http::async_read_header(*stream_, buffer_, parser, std::move(handler));
    });
    if (ec) return no_answer(ec);
    answered_ = true;
    sync::Response out;
    out.status = static_cast<int>(parser.get().result_int());
    for (const auto& field : parser.get())
      out.headers.push_back({std::string(field.name_string()), std::string(field.value())});
    Bodies::Write write;
    // All of a file, or the part that was asked for; anything else is no part of it.
    const int wanted = request.receive && request.receive->offset > 0 ? 206 : 200;
    if (request.receive && out.status == wanted) {
      auto opened = bodies_->write(*request.receive);
      if (!opened) {
        stream_.reset();  // its bytes stay unread
        return fail(std::move(opened.error()));
      }
      write = std::move(*opened);
    }
    std::uint64_t written_bytes = 0;
    std::vector<std::uint8_t> piece(write ? client_piece_bytes : std::size_t{16} * 1024);
    if (!parser.is_done()) buffer_.reserve(piece.size());  // else 512 bytes are read at a time
    while (!parser.is_done()) {
      parser.get().body().data = piece.data();
      parser.get().body().size = piece.size();
      expire_after(options_.idle_ms);
      ec = await([&](auto handler) {
        http::async_read_some(*stream_, buffer_, parser, std::move(handler));
      });
      const std::size_t got = piece.size() - parser.get().body().size;
      const auto bytes = std::span<const std::uint8_t>(piece).first(got);
      if (write && got > 0) {
        written_bytes += got;
        if (written_bytes > sync::most_blob_bytes) return wrong_server("an endless answer");
        if (auto kept = write(bytes); !kept) {
          stream_.reset();
          return fail(std::move(kept.error()));
        }
      } else if (got > 0) {
        out.body.append(reinterpret_cast<const char*>(bytes.data()), got);
        if (out.body.size() > most_answer_bytes) return wrong_server("an endless answer");
      }
      if (ec && ec != http::error::need_buffer) return no_answer(ec);
    }
    if (!parser.keep_alive() || write_failed) stream_.reset();
    return out;
  }

  tl::unexpected<Error> no_answer(const error_code& ec) {
    const bool no_http =
        ec.category() == http::make_error_code(http::error::bad_version).category() &&
        ec != http::error::end_of_stream && ec != http::error::partial_message;
    return no_http ? wrong_server(ec.message()) : no_contact(ec);
  }

  asio::io_context io_{1};
  std::shared_ptr<TlsContext> tls_;
  std::mutex mutex_;  // guards at_
  std::vector<sync::Address> at_;
  Bodies* bodies_;
  ClientOptions options_;
  std::optional<TlsStream> stream_;
  beast::flat_buffer buffer_;
  std::string connected_to_;
  std::atomic<bool> cancelled_ = false;
  std::atomic<std::uint64_t> sent_bytes_ = 0;
  bool answered_ = false;
  bool timed_out_ = false;
};

Client::Client(std::shared_ptr<TlsContext> tls, std::vector<sync::Address> at, Bodies* bodies,
               ClientOptions options)
    : connection_(std::make_unique<Connection>(std::move(tls), std::move(at), bodies, options)) {}
Client::~Client() = default;
Result<sync::Response> Client::send(const sync::Request& request, std::int64_t extra_wait_ms) {
  return connection_->send(request, extra_wait_ms);
}
void Client::cancel() {
  connection_->cancel();
}
void Client::set_addresses(std::vector<sync::Address> at) {
  connection_->set_addresses(std::move(at));
}
std::uint64_t Client::sent_bytes() const {
  return connection_->sent_bytes();
}

}  // namespace jambline::net
