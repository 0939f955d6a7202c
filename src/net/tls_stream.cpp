#include "net/tls_stream.h"

namespace jambline::net {

void TlsStream::async_handshake(boost::asio::ssl::stream_base::handshake_type side,
                                Greeted greeted) {
  layer_.async_handshake(side, std::move(greeted));
}

void TlsStream::async_shutdown(Greeted ended) {
  layer_.async_shutdown(std::move(ended));
}

void TlsStream::read_some(const Some<boost::asio::mutable_buffer>& into, Done done) {
  layer_.async_read_some(into, std::move(done));
}

void TlsStream::write_some(const Some<boost::asio::const_buffer>& from, Done done) {
  layer_.async_write_some(from, std::move(done));
}

}  // namespace jambline::net
