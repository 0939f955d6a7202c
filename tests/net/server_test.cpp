// The server's side of HTTP, asked by hand. Held against net/server.h and RFC 9112 (chunked bodies,
// Expect: 100-continue, Connection: close).
#include <future>

#include "tests/net/net_world.h"

namespace jambline::test {
namespace {

std::string request(const std::string& first, const std::string& more = {},
                    const std::string& body = {}) {
  return first + " HTTP/1.1\r\nHost: hub\r\n" + more + "\r\n" + body;
}

TEST(NetServer, AChunkedBodyIsPutTogether) {
  NetWorld world([](const auto&, std::optional<std::uint64_t> body_bytes) {
    EXPECT_FALSE(body_bytes);
    return echo();
  });
  const std::string answer =
      RawClient(world.port())
          .ask(request("POST /v1", "Transfer-Encoding: chunked\r\nConnection: close\r\n",
                       "6\r\nfirst \r\n6\r\nsecond\r\n0\r\n\r\n"));
  EXPECT_TRUE(answer.starts_with("HTTP/1.1 200")) << answer;
  EXPECT_TRUE(answer.ends_with("\r\n\r\nfirst second")) << answer;
}

TEST(NetServer, AChunkedBodyOverTheLimitIsRefusedOnTheWay) {
  NetWorld world([](const auto&, auto) { return echo(8); });
  RawClient client(world.port());
  ASSERT_TRUE(client.write(
      request("POST /v1", "Transfer-Encoding: chunked\r\n", "6\r\nfirst \r\n6\r\nsecond\r\n")));
  EXPECT_TRUE(client.read_until("\r\n\r\n").starts_with("HTTP/1.1 413"));
}

TEST(NetServer, AnExpectantClientIsToldToGoOn) {
  NetWorld world([](const auto&, auto) { return echo(); });
  RawClient client(world.port());
  ASSERT_TRUE(client.write(request("POST /v1", "Expect: 100-continue\r\nContent-Length: 5\r\n")));
  EXPECT_EQ(client.read_until("\r\n\r\n"), "HTTP/1.1 100 Continue\r\n\r\n");
  ASSERT_TRUE(client.write("words"));
  EXPECT_TRUE(client.read_until("\r\n\r\nwords").ends_with("words"));
}

TEST(NetServer, AnExpectantClientIsRefusedBeforeItsBody) {
  NetWorld world([](const auto&, auto) { return sync::refused(sync::Refusal::Revoked); });
  RawClient client(world.port());
  ASSERT_TRUE(
      client.write(request("POST /v1", "Expect: 100-continue\r\nContent-Length: 10737418240\r\n")));
  EXPECT_TRUE(client.read_until("\r\n\r\n").starts_with("HTTP/1.1 403"));
}

TEST(NetServer, RequestsOnOneConnectionAreAnsweredInTheirOrder) {
  NetWorld world([](const auto&, auto) { return echo(); });
  RawClient client(world.port());
  std::string all;
  for (int i = 0; i < 5; ++i)
    all += request("POST /v1", "Content-Length: 1\r\n", std::to_string(i));
  ASSERT_TRUE(client.write(all));
  for (int i = 0; i < 5; ++i) {
    const std::string wanted = "\r\n\r\n" + std::to_string(i);
    EXPECT_TRUE(client.read_until(wanted).ends_with(wanted));
  }
}

TEST(NetServer, APollIsAnsweredWhenItsPlaceChangesAndWhenItsTimeIsOver) {
  std::atomic<int> asked = 0;
  std::shared_ptr<FunctionPlace> place;
  NetWorld world([&](const sync::Request& head, auto) -> std::unique_ptr<sync::Handling> {
    if (head.target == "/change") {
      ++place->changed;
      return say({204, {}, {}});
    }
    const std::int64_t wait_ms = head.target == "/short" ? 50 : 25'000;
    return std::make_unique<sync::Whole>(
        0, [&, wait_ms, first = true](const auto&) mutable -> sync::Outcome {
          ++asked;
          const bool wait = std::exchange(first, false) || (wait_ms > 1'000 && place->changed == 0);
          if (wait) return sync::Waiting{wait_ms};
          return sync::Response{200, {}, "now"};
        });
  });
  place = world.site.place;
  EXPECT_EQ(world.client().send(get("/short"))->body, "now");
  auto poll =
      std::async(std::launch::async, [&] { return world.client().send(get("/p"), 25'000); });
  ASSERT_TRUE(soon([&] { return asked >= 3; }));
  EXPECT_EQ(world.client().send(get("/change"))->status, 204);
  const auto answer = poll.get();
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->body, "now");
}

TEST(NetServer, APollerThatWentAwayHurtsNobody) {
  std::shared_ptr<FunctionPlace> place;
  NetWorld world([&](const sync::Request& head, auto) -> std::unique_ptr<sync::Handling> {
    if (head.target == "/change") {
      ++place->changed;
      return say({204, {}, {}});
    }
    return std::make_unique<sync::Whole>(0, [&](const auto&) -> sync::Outcome {
      if (place->changed == 0) return sync::Waiting{25'000};
      return sync::Response{200, {}, std::string(100'000, 'x')};
    });
  });
  place = world.site.place;
  for (int i = 0; i < 10; ++i) ASSERT_TRUE(RawClient(world.port()).write(request("GET /poll")));
  ASSERT_TRUE(soon([&] { return place->begun == 10; }));
  EXPECT_EQ(world.client().send(get("/change"))->status, 204);
  EXPECT_TRUE(soon([&] { return world.server->connections() == 0; }));
}

TEST(NetServer, StopsWhilePollsAndUploadsAreOnTheirWay) {
  NetWorld world([&](const auto&, std::optional<std::uint64_t> body) {
    if (body == 0)
      return std::unique_ptr<sync::Handling>(std::make_unique<sync::Whole>(
          0, [](const auto&) { return sync::Outcome(sync::Waiting{25'000}); }));
    return echo();
  });
  std::vector<std::unique_ptr<RawClient>> clients;
  for (int i = 0; i < 20; ++i) {
    clients.push_back(std::make_unique<RawClient>(world.port()));
    clients.back()->write(i % 2 == 0 ? request("GET /poll")
                                     : request("POST /v1", "Content-Length: 1000\r\n", "part"));
  }
  ASSERT_TRUE(soon([&] { return world.site.place->begun == 20; }));
  world.stop();
  for (auto& client : clients) EXPECT_EQ(client->read_until("\r\n\r\n"), "");
}

TEST(NetServer, WhatHasNoPlaceIsAnsweredAndCounted) {
  NetWorld world([](const auto&, auto) { return echo(); });
  auto client = world.client();
  EXPECT_EQ(client.send(get("/nowhere"))->status, 404);
  EXPECT_EQ(client.send(get("/nowhere"))->status, 404);
  EXPECT_EQ(world.server->connections(), 1U);
  world.stop();
  EXPECT_EQ(world.noted("requests refused", 404), 2U);
}

TEST(NetServer, AFloodOfHeadersIs431AndCounted) {
  NetWorld world([](const auto&, auto) { return echo(); });
  std::string flood;
  for (int i = 0; i < 5'000; ++i) flood += "X-" + std::to_string(i) + ": y\r\n";
  for (const std::string& headers : {flood, "X: " + std::string(9'000, 'x') + "\r\n"}) {
    RawClient client(world.port());
    client.write(request("GET /v1", headers));
    EXPECT_TRUE(client.read_until("\r\n\r\n").starts_with("HTTP/1.1 431"));
  }
  EXPECT_EQ(world.site.place->begun, 0);
  world.stop();
  EXPECT_EQ(world.noted("requests refused", 431), 2U);
}

TEST(NetServer, WhatIsNoHttpIs400AndAnUnknownMethod405) {
  NetWorld world([](const auto&, auto) { return echo(); });
  EXPECT_TRUE(RawClient(world.port()).ask("what is this?\r\n\r\n").starts_with("HTTP/1.1 400"));
  EXPECT_TRUE(RawClient(world.port())
                  .ask(request("POST /v1", "Content-Length: minus\r\n"))
                  .starts_with("HTTP/1.1 400"));
  EXPECT_TRUE(RawClient(world.port()).ask(request("BREW /v1")).starts_with("HTTP/1.1 405"));
  EXPECT_EQ(world.site.place->begun, 0);
  world.stop();
  EXPECT_EQ(world.noted("requests refused", 400), 2U);
}

TEST(NetServer, OnlyTls13IsSpoken) {
  NetWorld world([](const auto&, auto) { return echo(); });
  const RawClient old(world.port(), TLS1_2_VERSION);
  EXPECT_TRUE(old.error);
  EXPECT_EQ(world.site.place->begun, 0);
  EXPECT_EQ(RawClient(world.port()).error.message(), "Success");
  ASSERT_TRUE(soon([&] { return world.noted("handshakes failed") == 1; }));
}

TEST(NetServer, SlowOnesAreCutAndSaidNothing) {
  net::ServerOptions limits;
  limits.handshake_ms = 100;
  limits.header_ms = 100;
  limits.body_grace_ms = 100;
  NetWorld world([](const auto&, auto) { return echo(); }, limits);
  asio::io_context io;
  asio::ip::tcp::socket mute(io);
  mute.connect({asio::ip::make_address("127.0.0.1"), world.port()});
  RawClient no_header(world.port());
  RawClient no_body(world.port());
  ASSERT_TRUE(no_body.write(request("POST /v1", "Content-Length: 10\r\n", "five.")));
  EXPECT_EQ(no_header.read_until("\n"), "");
  EXPECT_EQ(no_body.read_until("\n"), "");
  std::array<char, 8> piece{};
  boost::system::error_code ec;
  EXPECT_EQ(mute.read_some(asio::buffer(piece), ec), 0U);
  EXPECT_TRUE(ec);
}

TEST(NetServer, MoreConnectionsThanItTakesAreClosedAndCounted) {
  net::ServerOptions limits;
  limits.most_connections = 5;
  NetWorld world([](const auto&, auto) { return echo(); }, limits);
  std::vector<std::unique_ptr<RawClient>> clients;
  for (int i = 0; i < 5; ++i) {
    clients.push_back(std::make_unique<RawClient>(world.port()));
    ASSERT_FALSE(clients.back()->error);
  }
  EXPECT_TRUE(RawClient(world.port()).error);
  clients.clear();
  ASSERT_TRUE(soon([&] { return world.server->connections() == 0; }));
  EXPECT_TRUE(world.client().send(get("/v1")));
  world.stop();
  EXPECT_EQ(world.noted("connections refused"), 1U);
}

TEST(NetServer, WorkAtAPlaceRunsBetweenItsRequests) {
  std::atomic<int> inside = 0;
  std::atomic<bool> met = false;
  NetWorld world([&](const auto&, auto) {
    if (++inside != 1) met = true;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
    --inside;
    return say({204, {}, {}});
  });
  std::vector<std::thread> askers;
  for (int i = 0; i < 4; ++i)
    askers.emplace_back([&] {
      auto client = world.client();
      for (int n = 0; n < 25; ++n) EXPECT_TRUE(client.send(get("/v1")));
    });
  for (int n = 0; n < 25; ++n)
    world.server->run_at(world.site.place, [&] {
      if (++inside != 1) met = true;
      --inside;
    });
  for (auto& asker : askers) asker.join();
  EXPECT_FALSE(met);
}

TEST(NetServer, AnAddressThatIsTakenIsSaid) {
  NetWorld world([](const auto&, auto) { return echo(); });
  net::ServerOptions same;
  same.host = "127.0.0.1";
  same.port = world.port();
  const auto second = net::Server::start(hub_tls(world.key), world.site, same, {});
  ASSERT_FALSE(second);
  EXPECT_EQ(second.error().code, Code::NoContact);
  EXPECT_EQ(second.error().arg("address"), "127.0.0.1:" + std::to_string(world.port()));
}

}  // namespace
}  // namespace jambline::test
