// net/tls_stream.h: TLS over TCP whose reads and writes end in one kind of handler, whoever asks.
//
// What Beast makes of a request or an answer is a handler of its own kind each time, and TLS, TCP
// and their timeouts were compiled once more for each. Here they are compiled once for reading and
// once for writing, at the price of one allocation an operation. Shape:   an AsyncReadStream and
// AsyncWriteStream of Boost.Asio, for Beast's http functions. Threads: as the stream below;
// handlers run on its executor.
#pragma once

#include <array>
#include <boost/beast/core/tcp_stream.hpp>
#include <boost/beast/ssl/ssl_stream.hpp>
#include <functional>
#include <memory>
#include <utility>

namespace jambline::net {

class TlsStream {
 public:
  using Layer = boost::beast::ssl_stream<boost::beast::tcp_stream>;
  using executor_type = Layer::executor_type;
  using Done = std::function<void(const boost::system::error_code&, std::size_t)>;
  using Greeted = std::function<void(const boost::system::error_code&)>;

  template <class... Args>
  explicit TlsStream(Args&&... args) : layer_(std::forward<Args>(args)...) {}

  executor_type get_executor() { return layer_.get_executor(); }
  boost::beast::tcp_stream& tcp() { return boost::beast::get_lowest_layer(layer_); }

  void async_handshake(boost::asio::ssl::stream_base::handshake_type side, Greeted greeted);
  void async_shutdown(Greeted ended);
  template <class Buffers, class Handler>
  void async_read_some(const Buffers& buffers, Handler&& handler) {
    read_some(some_of<boost::asio::mutable_buffer>(buffers),
              one_kind(std::forward<Handler>(handler)));
  }
  template <class Buffers, class Handler>
  void async_write_some(const Buffers& buffers, Handler&& handler) {
    write_some(some_of<boost::asio::const_buffer>(buffers),
               one_kind(std::forward<Handler>(handler)));
  }

 private:
  template <class Buffer>
  using Some =
      std::array<Buffer, 8>;  // the rest comes with the next call: some is what is promised

  template <class Buffer, class Buffers>
  static Some<Buffer> some_of(const Buffers& buffers) {
    Some<Buffer> out{};
    std::size_t next = 0;
    const auto end = boost::asio::buffer_sequence_end(buffers);
    for (auto at = boost::asio::buffer_sequence_begin(buffers); at != end && next < out.size();
         ++at)
      if (const Buffer one(*at); one.size() > 0) out[next++] = one;
    return out;
  }
  template <class Handler>
  static Done one_kind(Handler&& handler) {
    using Kept = std::decay_t<Handler>;
    return [kept = std::make_shared<Kept>(std::forward<Handler>(handler))](
               const boost::system::error_code& ec, std::size_t bytes) mutable {
      Kept now(std::move(*kept));
      kept.reset();  // what it holds is let go before it asks for more
      now(ec, bytes);
    };
  }
  void read_some(const Some<boost::asio::mutable_buffer>& into, Done done);
  void write_some(const Some<boost::asio::const_buffer>& from, Done done);

  Layer layer_;
};

}  // namespace jambline::net
