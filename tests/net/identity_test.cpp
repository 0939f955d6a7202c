// What the hub's certificates say, read by OpenSSL's own checks of a chain, and whom a device
// takes for its hub. Held against net/identity.h.
#include <openssl/pem.h>
#include <openssl/x509v3.h>

#include "tests/net/net_world.h"

namespace jambline::test {
namespace {

X509* certificate_of(const std::string& pem) {
  BIO* memory = BIO_new_mem_buf(pem.data(), static_cast<int>(pem.size()));
  X509* out = PEM_read_bio_X509(memory, nullptr, nullptr, nullptr);
  BIO_free(memory);
  return out;
}

// A client that knows the authority as any other TLS client would, by name and chain.
long verified_by_chain(std::uint16_t port, const std::string& pem, const char* host) {
  SSL_CTX* context = SSL_CTX_new(TLS_client_method());
  X509* authority = certificate_of(pem);
  X509_STORE_add_cert(SSL_CTX_get_cert_store(context), authority);
  SSL_CTX_set_verify(context, SSL_VERIFY_NONE, nullptr);
  SSL* ssl = SSL_new(context);
  SSL_set1_host(ssl, host);
  asio::io_context io;
  asio::ip::tcp::socket socket(io);
  socket.connect({asio::ip::make_address("127.0.0.1"), port});
  SSL_set_fd(ssl, static_cast<int>(socket.native_handle()));
  EXPECT_EQ(SSL_connect(ssl), 1);
  const long out = SSL_get_verify_result(ssl);
  SSL_free(ssl);
  X509_free(authority);
  SSL_CTX_free(context);
  return out;
}

TEST(NetIdentity, OtherClientsFindAWholeChainUpToTheIdentityKey) {
  NetWorld world([](const auto&, auto) { return echo(); });
  const auto pem = net::authority_pem(world.key, SystemClock());
  ASSERT_TRUE(pem);
  EXPECT_EQ(verified_by_chain(world.port(), *pem, "localhost"), X509_V_OK);
  EXPECT_EQ(verified_by_chain(world.port(), *pem, "elsewhere"), X509_V_ERR_HOSTNAME_MISMATCH);
  const auto other = net::authority_pem(net_key(8), SystemClock());
  EXPECT_NE(verified_by_chain(world.port(), *other, "localhost"), X509_V_OK);
}

TEST(NetIdentity, EachStartHasAnotherLeafAndTheDeviceTakesAllOfThem) {
  NetWorld world([](const auto&, auto) { return echo(); });
  auto client = world.client();
  for (int start = 0; start < 3; ++start) {
    EXPECT_TRUE(client.send(get("/v1")));
    world.stop();
    world.start();
  }
}

TEST(NetIdentity, AClockOf1970MakesNoDifference) {
  FakeClock clock;
  OnePlace site([](const auto&, auto) { return echo(); });
  net::ServerOptions options;
  options.host = "127.0.0.1";
  options.port = 0;
  const auto tls = net::hub_context(net_key(3), clock);
  ASSERT_TRUE(tls);
  const auto server = net::Server::start(*tls, site, options, {});
  ASSERT_TRUE(server);
  net::Client client(net::device_context(net_key(3).key()), {{"127.0.0.1", (*server)->port()}});
  EXPECT_TRUE(client.send(get("/v1")));
}

// A certificate that says the same names but was signed by another key, or by itself.
TEST(NetIdentity, TheSameNamesUnderAnotherKeyAreRefused) {
  NetWorld mine([](const auto&, auto) { return echo(); });
  for (std::uint8_t number = 20; number < 30; ++number) {
    net::Client client(net::device_context(net_key(number).key()), {{"127.0.0.1", mine.port()}});
    const auto answer = client.send(get("/v1"));
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().code, Code::WrongServer);
  }
}

}  // namespace
}  // namespace jambline::test
