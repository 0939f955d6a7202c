// Half-open and slow clients in numbers, while a good one is served. Bounds are counts of the
// server's own; nothing is timed.
#include "tests/hub/hub_world.h"
#include "tests/net/net_world.h"

namespace jambline::test {
namespace {

// Two hundred that say a head and no more, and five hundred that do not even greet.
class Crowd {
 public:
  explicit Crowd(std::uint16_t port) {
    for (int i = 0; i < 200; ++i) {
      slow_.push_back(std::make_unique<RawClient>(port));
      slow_.back()->write("POST /v1 HTTP/1.1\r\nContent-Length: 1000000\r\n" +
                          std::string(i % 2 == 0 ? "" : "\r\nx"));
    }
    for (int i = 0; i < 500; ++i) {
      half_open_.emplace_back(io_);
      half_open_.back().connect({asio::ip::make_address("127.0.0.1"), port});
    }
  }

 private:
  std::vector<std::unique_ptr<RawClient>> slow_;
  asio::io_context io_;
  std::vector<asio::ip::tcp::socket> half_open_;
};

TEST(SecurityCrowds, FiveHundredHalfOpenAndTwoHundredSlowOnesDoNotStopAGoodOne) {
  net::ServerOptions limits;
  limits.most_handshakes = 64;
  NetWorld world([](const auto&, auto) { return echo(); }, limits);
  const Crowd crowd(world.port());
  auto client = world.client();
  for (int i = 0; i < 20; ++i) {
    const auto answer = client.send(post("/v1", "good"));
    ASSERT_TRUE(answer) << answer.error().arg("cause");
    EXPECT_EQ(answer->body, "good");
  }
  // The crowd is held to the limit: slow ones, unfinished handshakes, and the good one.
  EXPECT_TRUE(soon([&] { return world.server->connections() <= 200 + 64 + 1; }));
  world.stop();
  EXPECT_GE(world.noted("handshakes cut"), 500U - 64U);
}

// The same at a hub with a shop, whose members go on writing.
class HubAndCrowd : public HubWorld {};

TEST_F(HubAndCrowd, ACrowdAtTheDoorKeepsNoMemberOutside) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto member = admitted(3, shop);
  const auto tls = get(net::hub_context(hub->key(), clock));
  net::ServerOptions options;
  options.host = "127.0.0.1";
  options.port = 0;
  const auto server = get(net::Server::start(tls, *hub, options, {}));
  const auto trust = net::device_context(hub_key());
  const Crowd crowd(server->port());
  net::Client client(trust, {{"127.0.0.1", server->port()}});
  DeviceChain chain(member, shop);
  for (int i = 0; i < 20; ++i) {
    seal::Packer pack;
    const auto entry = chain.said("n" + std::to_string(i));
    ASSERT_TRUE(pack.add(entry));
    sync::Target target;
    target.path = sync::Path::Log;
    target.shop = shop;
    target.device = entry.header.device;
    target.number = entry.header.seq;
    const auto answer = client.send(member.at(target, sync::Method::Post, pack.bytes()));
    ASSERT_TRUE(answer) << error_words(answer.error());
    ASSERT_EQ(answer->status, 200) << answer->body;
  }
  EXPECT_LE(server->connections(), 200U + options.most_handshakes + 1U);
  EXPECT_GE(member.pulled().entries.size(), 20U);
}

}  // namespace
}  // namespace jambline::test
