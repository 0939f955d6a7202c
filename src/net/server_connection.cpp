#include "net/server_connection.h"

#include <limits>

#include "net/tls_context.h"
#include "sync/limits.h"
#include "sync/problem.h"

namespace jambline::net {

namespace asio = boost::asio;
namespace http = boost::beast::http;
using boost::system::error_code;

namespace {
constexpr std::size_t body_piece_bytes = std::size_t{32} * 1024;
constexpr std::size_t file_piece_bytes = std::size_t{128} * 1024;
constexpr std::int64_t answer_ms = 30'000;
constexpr std::int64_t goodbye_ms = 2'000;
constexpr std::size_t most_drained_bytes = std::size_t{4} << 20U;
}  // namespace

Connection::Connection(ConnectionOwner& owner, asio::ip::tcp::socket socket, TlsContext& tls)
    : owner_(owner), stream_(std::move(socket), tls.context) {
  error_code ec;
  const auto peer = stream_.tcp().socket().remote_endpoint(ec);
  if (!ec) peer_ = peer.address().to_string();
  stream_.tcp().socket().set_option(asio::ip::tcp::no_delay(true), ec);
}

Connection::~Connection() {
  owner_.closed(*this, greeted_);
}

template <class Work>
void Connection::on_own_thread(Work work) {
  asio::post(stream_.get_executor(),
             [self = shared_from_this(), work = std::move(work)]() mutable { work(); });
}

void Connection::expire_after(std::int64_t ms) {
  stream_.tcp().expires_after(std::chrono::milliseconds(ms));
}

void Connection::cut() {
  on_own_thread([this] {
    error_code ignored;
    stream_.tcp().socket().close(ignored);
  });
}

void Connection::start() {
  on_own_thread([this] {
    expire_after(owner_.limits().handshake_ms);
    stream_.async_handshake(asio::ssl::stream_base::server,
                            [self = shared_from_this(), this](const error_code& ec) {
                              if (ec) return;  // the last one to hold it lets it go
                              greeted_ = true;
                              owner_.greeted(*this);
                              read_header(owner_.limits().header_ms);
                            });
  });
}

void Connection::read_header(std::int64_t within_ms) {
  parser_.emplace();
  parser_->header_limit(static_cast<std::uint32_t>(sync::most_header_bytes));
  parser_->body_limit(std::numeric_limits<std::uint64_t>::max());
  keep_open_ = true;
  head_only_ = false;
  body_bytes_ = 0;
  handling_.reset();
  place_.reset();
  expire_after(within_ms);
  http::async_read_header(
      stream_, buffer_, *parser_,
      [self = shared_from_this(), this](const error_code& ec, std::size_t) {
        if (ec == http::error::end_of_stream) return close();
        if (ec == http::error::partial_message) return;
        const bool no_http =
            ec && ec.category() == http::make_error_code(http::error::bad_version).category();
        if (ec && !no_http) return;
        if (!ec) return on_header();
        refuse(ec == http::error::header_limit ? sync::Refusal::HeaderTooLarge
                                               : sync::Refusal::BadRequest);
      });
}

void Connection::on_header() {
  const auto& message = parser_->get();
  head_only_ = message.method() == http::verb::head;
  keep_open_ = message.keep_alive();
  const auto method = sync::method_of(
      std::string_view(message.method_string().data(), message.method_string().size()));
  if (!method) return refuse(sync::Refusal::NoSuchMethod);
  sync::Request head;
  head.method = *method;
  head.target = std::string(message.target());
  for (const auto& field : message)
    head.headers.push_back({std::string(field.name_string()), std::string(field.value())});
  std::optional<std::uint64_t> body_bytes;
  if (const auto length = parser_->content_length()) body_bytes = *length;
  if (!body_bytes && !parser_->chunked()) body_bytes = 0;
  sync::Response refused;
  place_ = owner_.served().place_of(head, refused);
  if (!place_) {
    keep_open_ = keep_open_ && parser_->is_done();
    owner_.refused_unasked(refused.status);
    return respond(std::move(refused));
  }
  begin_at_place(std::move(head), body_bytes);
}

// What is no request that anybody could handle.
void Connection::refuse(sync::Refusal why) {
  keep_open_ = false;
  auto response = sync::response_of(sync::problem(why));
  owner_.refused_unasked(response.status);
  respond(std::move(response));
}

void Connection::begin_at_place(sync::Request head, std::optional<std::uint64_t> body_bytes) {
  owner_.lanes().run(place_, [self = shared_from_this(), this, head = std::move(head), body_bytes] {
    handling_ = place_->begin(head, body_bytes, peer_);
    // Whoever knows the answer by the head alone gives it before any body.
    auto early = body_bytes == 0 ? std::nullopt : handling_->take({});
    on_own_thread([this, early = std::move(early)]() mutable { go_on(std::move(early)); });
  });
}

void Connection::go_on(std::optional<sync::Response> early) {
  if (parser_->is_done()) return finish_body();
  if (early) {
    keep_open_ = false;
    return respond(std::move(*early));
  }
  body_began_ = std::chrono::steady_clock::now();
  if (sync::same_name(std::string_view(parser_->get()[http::field::expect].data(),
                                       parser_->get()[http::field::expect].size()),
                      "100-continue"))
    return continue_then_read();
  read_body();
}

void Connection::continue_then_read() {
  static constexpr std::string_view go_ahead = "HTTP/1.1 100 Continue\r\n\r\n";
  expire_after(answer_ms);
  asio::async_write(stream_, asio::buffer(go_ahead.data(), go_ahead.size()),
                    [self = shared_from_this(), this](const error_code& ec, std::size_t) {
                      if (!ec) read_body();
                    });
}

void Connection::read_body() {
  piece_.resize(body_piece_bytes);
  buffer_.reserve(body_piece_bytes);  // else as much is read at a time as a header took: 512 bytes
  parser_->get().body().data = piece_.data();
  parser_->get().body().size = piece_.size();
  const auto& limits = owner_.limits();
  const auto earned_ms = static_cast<std::int64_t>(1000 * body_bytes_ / limits.body_bytes_a_second);
  stream_.tcp().expires_at(body_began_ +
                           std::chrono::milliseconds(limits.body_grace_ms + earned_ms));
  http::async_read_some(stream_, buffer_, *parser_,
                        [self = shared_from_this(), this](error_code ec, std::size_t) {
                          if (ec == http::error::need_buffer) ec = {};
                          on_body(piece_.size() - parser_->get().body().size, ec);
                        });
}

// What came before a connection was cut is taken as well.
void Connection::on_body(std::size_t got, const error_code& ec) {
  body_bytes_ += got;
  auto early = got > 0 ? handling_->take(std::span(piece_).first(got)) : std::nullopt;
  if (early) {
    keep_open_ = keep_open_ && parser_->is_done();
    return respond(std::move(*early));
  }
  if (ec) {
    handling_.reset();
    return;
  }
  if (parser_->is_done()) return finish_body();
  read_body();
}

void Connection::finish_body() {
  piece_.clear();
  piece_.shrink_to_fit();
  if (!handling_->beside_the_shop())
    return owner_.lanes().run(place_, [self = shared_from_this(), this] { finish_at_place(); });
  owner_.lanes().beside([self = shared_from_this(), this] {
    auto outcome = std::make_shared<sync::Outcome>(handling_->finish());
    on_own_thread([this, outcome] { answer(std::move(*outcome)); });
  });
}

void Connection::finish_at_place() {
  auto outcome = std::make_shared<sync::Outcome>(handling_->finish());
  if (const auto* waiting = std::get_if<sync::Waiting>(&*outcome)) {
    const auto wait = std::chrono::milliseconds(
        std::clamp<std::int64_t>(waiting->for_ms, 1, std::int64_t{1000} * sync::longest_poll_s));
    owner_.lanes().wait(place_, wait, [self = shared_from_this(), this] { finish_at_place(); });
    // Nobody reads meanwhile: the time of a poll is no idle time.
    return on_own_thread([this] { stream_.tcp().expires_never(); });
  }
  on_own_thread([this, outcome] { answer(std::move(*outcome)); });
}

void Connection::answer(sync::Outcome outcome) {
  if (auto* file = std::get_if<sync::FileReply>(&outcome)) return send_file(std::move(*file));
  respond(std::move(std::get<sync::Response>(outcome)));
}

void Connection::respond(sync::Response response) {
  answer_.emplace(static_cast<http::status>(response.status), 11);
  bool length_said = false;
  for (const auto& field : response.headers) {
    answer_->insert(field.name, field.value);
    length_said = length_said || sync::same_name(field.name, "Content-Length");
  }
  answer_->keep_alive(keep_open_);
  if (response.status != 204 && !length_said)
    answer_->set(http::field::content_length, std::to_string(response.body.size()));
  if (!head_only_) answer_->body() = std::move(response.body);
  expire_after(answer_ms);
  http::async_write(stream_, *answer_,
                    [self = shared_from_this(), this](const error_code& ec, std::size_t) {
                      answer_.reset();
                      if (!ec) after_answer();
                    });
}

void Connection::send_file(sync::FileReply reply) {
  file_head_.emplace(static_cast<http::status>(reply.head.status), 11);
  for (const auto& field : reply.head.headers) file_head_->insert(field.name, field.value);
  file_head_->keep_alive(keep_open_);
  file_head_->set(http::field::content_length, std::to_string(reply.size_bytes));
  file_head_->body().data = nullptr;
  file_head_->body().more = true;
  file_serializer_.emplace(*file_head_);
  file_ = std::move(reply.file);
  file_left_bytes_ = reply.size_bytes;
  expire_after(answer_ms);
  http::async_write_header(stream_, *file_serializer_,
                           [self = shared_from_this(), this](const error_code& ec, std::size_t) {
                             if (!ec) send_file_piece();
                           });
}

void Connection::send_file_piece() {
  piece_.resize(file_piece_bytes);
  const auto want =
      static_cast<std::size_t>(std::min<std::uint64_t>(piece_.size(), file_left_bytes_));
  const auto got = file_->read(std::span(piece_).first(want));
  if (!got || *got == 0) return cut();  // shorter than it was said to be
  file_left_bytes_ -= *got;
  file_head_->body().data = piece_.data();
  file_head_->body().size = *got;
  file_head_->body().more = file_left_bytes_ > 0;
  expire_after(answer_ms);
  http::async_write(stream_, *file_serializer_,
                    [self = shared_from_this(), this](error_code ec, std::size_t) {
                      if (ec == http::error::need_buffer) ec = {};
                      if (ec) return;
                      if (file_left_bytes_ > 0) return send_file_piece();
                      file_.reset();
                      file_serializer_.reset();
                      file_head_.reset();
                      piece_.clear();
                      piece_.shrink_to_fit();
                      after_answer();
                    });
}

void Connection::after_answer() {
  if (!keep_open_) return close();
  read_header(owner_.limits().idle_ms);
}

// Who still sends a body that nobody wants reads the answer first when its bytes are taken in for a
// while: a socket that is closed with bytes unread takes back what it has sent.
void Connection::close() {
  const bool unread = parser_ && !parser_->is_done();
  expire_after(goodbye_ms);
  if (unread) {
    drained_bytes_ = 0;
    piece_.resize(body_piece_bytes);
    return drain();
  }
  stream_.async_shutdown([self = shared_from_this()](const error_code&) {});
}

void Connection::drain() {
  stream_.async_read_some(asio::buffer(piece_),
                          [self = shared_from_this(), this](const error_code& ec, std::size_t got) {
                            drained_bytes_ += got;
                            if (!ec && drained_bytes_ < most_drained_bytes) drain();
                          });
}

}  // namespace jambline::net
