#include "tests/fault/wrong_servers.h"

#include <arpa/inet.h>
#include <array>
#include <fcntl.h>
#include <netinet/tcp.h>
#include <openssl/x509v3.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include "net/tls_context.h"

namespace jambline::fault {

namespace {
int loopback_socket(std::uint16_t port, bool listens) {
  const int out = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  sockaddr_in at{};
  at.sin_family = AF_INET;
  at.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  at.sin_port = htons(port);
  const auto* address = reinterpret_cast<const sockaddr*>(&at);
  const int now = 1;  // what is passed on waits for nothing more
  setsockopt(out, IPPROTO_TCP, TCP_NODELAY, &now, sizeof now);
  const bool good = listens ? bind(out, address, sizeof at) == 0 && listen(out, 16) == 0
                            : connect(out, address, sizeof at) == 0;
  if (good) return out;
  close(out);
  return -1;
}

bool write_all(int to, const char* bytes, std::size_t count) {
  while (count > 0) {
    const ssize_t wrote = send(to, bytes, count, MSG_NOSIGNAL);
    if (wrote <= 0) return false;
    bytes += wrote;
    count -= static_cast<std::size_t>(wrote);
  }
  return true;
}
}  // namespace

Listener::Listener() {
  listens_ = loopback_socket(0, true);
  sockaddr_in at{};
  socklen_t size = sizeof at;
  getsockname(listens_, reinterpret_cast<sockaddr*>(&at), &size);
  port_ = ntohs(at.sin_port);
  if (pipe2(stop_, O_CLOEXEC) != 0) std::abort();
}

Listener::~Listener() {
  for (const int one : {listens_, stop_[0], stop_[1]}) close(one);
}

void Listener::start() {
  thread_ = std::thread([this] {
    bool called = false, ignored = false;
    while (waits_for(listens_, -1, called, ignored)) {
      const int client = accept4(listens_, nullptr, nullptr, SOCK_CLOEXEC);
      if (client < 0) continue;
      pass(client);
      close(client);
    }
  });
}

void Listener::stop() {
  const char over = 0;
  if (write(stop_[1], &over, 1) != 1) std::abort();
  thread_.join();
}

bool Listener::waits_for(int one, int other, bool& first, bool& second) const {
  std::array<pollfd, 3> wait{{{one, POLLIN, 0}, {other, POLLIN, 0}, {stop_[0], POLLIN, 0}}};
  poll(wait.data(), wait.size(), -1);
  first = wait[0].revents != 0;
  second = wait[1].revents != 0;
  return wait[2].revents == 0;
}

PlainServer::PlainServer(std::string answer) : answer_(std::move(answer)) {
  start();
}
PlainServer::~PlainServer() {
  stop();
}
void PlainServer::pass(int client) {
  std::array<char, 4096> piece{};
  bool called = false, ignored = false;
  if (!waits_for(client, -1, called, ignored)) return;
  if (recv(client, piece.data(), piece.size(), 0) <= 0) return;
  write_all(client, answer_.data(), answer_.size());
}

CutProxy::CutProxy(std::uint16_t to) : to_(to) {
  start();
}
CutProxy::~CutProxy() {
  stop();
}
void CutProxy::pass(int client) {
  const int server = loopback_socket(to_, false);
  if (server < 0) return;
  std::uint64_t passed = 0;
  std::array<char, 16384> piece{};
  bool from_client = false, from_server = false;
  while (waits_for(client, server, from_client, from_server)) {
    if (from_client) {
      const ssize_t got = recv(client, piece.data(), piece.size(), 0);
      if (got <= 0 || !write_all(server, piece.data(), static_cast<std::size_t>(got))) break;
    }
    if (from_server) {
      const ssize_t got = recv(server, piece.data(), piece.size(), 0);
      if (got <= 0) break;
      const std::uint64_t left = cut_ > passed ? cut_ - passed : 0;
      const auto count = std::min<std::uint64_t>(static_cast<std::uint64_t>(got), left);
      if (!write_all(client, piece.data(), count)) break;
      passed += count;
      most_ = std::max(most_.load(), passed);
      if (count < static_cast<std::uint64_t>(got)) break;  // cut
    }
  }
  close(server);
}

namespace {
class SamePlace final : public net::Place {
 public:
  explicit SamePlace(sync::Response answer) : answer_(std::move(answer)) {}
  std::unique_ptr<sync::Handling> begin(const sync::Request&, std::optional<std::uint64_t>,
                                        const std::string&) override;
  std::uint64_t changes() const override { return 0; }

 private:
  sync::Response answer_;
};

// Takes the whole body first: only then is its answer heard by everybody.
class Same final : public sync::Handling {
 public:
  explicit Same(sync::Response answer) : answer_(std::move(answer)) {}
  std::uint64_t most_body_bytes() const override { return UINT64_MAX; }
  std::optional<sync::Response> take(std::span<const std::uint8_t>) override {
    return std::nullopt;
  }
  sync::Outcome finish() override { return answer_; }

 private:
  sync::Response answer_;
};

std::unique_ptr<sync::Handling> SamePlace::begin(const sync::Request&, std::optional<std::uint64_t>,
                                                 const std::string&) {
  return std::make_unique<Same>(answer_);
}
}  // namespace

TlsServer::TlsServer(const seal::SigningKey& key, sync::Response answer)
    : TlsServer(simulator::need(net::hub_context(key, SystemClock()), "tls"), std::move(answer)) {}
TlsServer::TlsServer(std::shared_ptr<net::TlsContext> tls, sync::Response answer)
    : answer_(std::move(answer)) {
  net::ServerOptions options;
  options.host = "127.0.0.1";
  options.port = 0;
  server_ = simulator::need(net::Server::start(std::move(tls), *this, options, {}), "serve");
}
TlsServer::~TlsServer() {
  server_.reset();
}
std::shared_ptr<net::Place> TlsServer::place_of(const sync::Request&, sync::Response&) {
  ++requests_;
  return std::make_shared<SamePlace>(answer_);
}

std::shared_ptr<net::TlsContext> certificate_that_is_over(const seal::SigningKey& key) {
  const auto seed = key.seed();
  const net::KeyPointer signer(
      EVP_PKEY_new_raw_private_key(EVP_PKEY_ED25519, nullptr, seed.data(), seed.size()));
  const net::KeyPointer leaf_key(EVP_EC_gen("P-256"));
  const std::unique_ptr<X509, void (*)(X509*)> leaf(X509_new(), X509_free);
  auto out = std::make_shared<net::TlsContext>();
  SSL_CTX* context = out->context.native_handle();
  const auto* name = reinterpret_cast<const unsigned char*>("hub");
  const bool made =
      X509_set_version(leaf.get(), 2) == 1 &&
      ASN1_INTEGER_set(X509_get_serialNumber(leaf.get()), 2) == 1 &&
      ASN1_TIME_set_string_X509(X509_getm_notBefore(leaf.get()), "20010101000000Z") == 1 &&
      ASN1_TIME_set_string_X509(X509_getm_notAfter(leaf.get()), "20020101000000Z") == 1 &&
      X509_NAME_add_entry_by_txt(X509_get_subject_name(leaf.get()), "CN", MBSTRING_ASC, name, -1,
                                 -1, 0) == 1 &&
      X509_set_issuer_name(leaf.get(), X509_get_subject_name(leaf.get())) == 1 &&
      X509_set_pubkey(leaf.get(), leaf_key.get()) == 1 &&
      X509_sign(leaf.get(), signer.get(), nullptr) != 0 &&
      SSL_CTX_use_certificate(context, leaf.get()) == 1 &&
      SSL_CTX_use_PrivateKey(context, leaf_key.get()) == 1;
  EXPECT_TRUE(made);
  return out;
}

void WrongServers::expect_nothing_goes_to(std::uint16_t port) {
  HubProcess hub(hub_folder);
  const auto device = device_at(port);
  std::uint64_t said = 0;
  {
    DeviceProcess one(device);
    said = one.act("note one") + one.act("picture 1 20000");
    ASSERT_EQ(said, 2U);
    EXPECT_TRUE(comes_true([&] { return one.state().find("trouble=") != std::string::npos; }));
    const auto state = one.state();
    const auto trouble = state.find("trouble=WrongServer hub");
    ASSERT_NE(trouble, std::string::npos) << state;
    EXPECT_NE(state.find("cause=", trouble), std::string::npos) << state;
    for (int i = 0; i < 10; ++i) {
      one.ask("go");
      EXPECT_TRUE(one.state().starts_with("state send=2 ")) << one.state();
    }
    EXPECT_EQ(one.close(), 0);
  }
  set_hub_port(device, hub.port());
  DeviceProcess one(device);
  sync_all({&one});
  EXPECT_EQ(one.close(), 0);
  EXPECT_EQ(hub.end(SIGTERM), 0);
  expect_equal({device}, said);
}

}  // namespace jambline::fault
