// The client against our server and against others, over real sockets on loopback. Held against
// net/client.h; what is said by status and header is RFC 9110's.
#include <future>

#include "tests/net/net_world.h"

namespace jambline::test {
namespace {

class MemoryBodies final : public net::Bodies {
 public:
  std::string out;  // what is read from
  std::string in;
  std::size_t most_in = SIZE_MAX;
  bool refuse_to_open = false;
  Result<Read> read(const sync::BlobPart& part) override {
    return [this, at = part.offset](std::span<std::uint8_t> bytes) mutable -> Result<std::size_t> {
      const std::size_t count = std::min<std::size_t>(bytes.size(), out.size() - at);
      std::copy_n(out.begin() + static_cast<std::ptrdiff_t>(at), count, bytes.begin());
      at += count;
      return count;
    };
  }
  Result<Write> write(const sync::BlobPart&) override {
    if (refuse_to_open) return fail(Code::Busy, "write", "file");
    return [this](std::span<const std::uint8_t> bytes) -> Status {
      if (in.size() + bytes.size() > most_in) return fail(Code::DiskFull, "write", "file");
      in.append(reinterpret_cast<const char*>(bytes.data()), bytes.size());
      return {};
    };
  }
};

std::string pattern(std::size_t size_bytes) {
  std::string out(size_bytes, '\0');
  SeededRandom(5).fill({reinterpret_cast<std::uint8_t*>(out.data()), out.size()});
  return out;
}

class StringSource final : public sync::FileSource {
 public:
  explicit StringSource(std::string bytes) : bytes_(std::move(bytes)) {}
  Result<std::size_t> read(std::span<std::uint8_t> into) override {
    const std::size_t count = std::min(into.size(), bytes_.size() - at_);
    std::copy_n(bytes_.begin() + static_cast<std::ptrdiff_t>(at_), count, into.begin());
    at_ += count;
    return count;
  }

 private:
  std::string bytes_;
  std::size_t at_ = 0;
};

// Gives a file out; `said_bytes` is what the head promises.
class FileHandling final : public sync::Handling {
 public:
  FileHandling(int status, std::string bytes, std::uint64_t said_bytes)
      : status_(status), bytes_(std::move(bytes)), said_bytes_(said_bytes) {}
  std::uint64_t most_body_bytes() const override { return 0; }
  std::optional<sync::Response> take(std::span<const std::uint8_t>) override {
    return std::nullopt;
  }
  sync::Outcome finish() override {
    return sync::FileReply{{status_, {}, {}}, std::make_unique<StringSource>(bytes_), said_bytes_};
  }

 private:
  int status_;
  std::string bytes_;
  std::uint64_t said_bytes_;
};

Result<sync::Response> ask_at(std::uint16_t port, const seal::Key& key,
                              net::ClientOptions how = {}) {
  net::Client client(net::device_context(key), {{"127.0.0.1", port}}, nullptr, how);
  return client.send(get("/v1"));
}

TEST(NetClient, OneConnectionServesManyRequests) {
  NetWorld world([](const auto&, auto) { return echo(); });
  auto client = world.client();
  for (int i = 0; i < 20; ++i) {
    const auto answer = client.send(post("/v1", "words " + std::to_string(i)));
    ASSERT_TRUE(answer) << code_name(answer.error().code);
    EXPECT_EQ(answer->status, 200);
    EXPECT_EQ(answer->body, "words " + std::to_string(i));
    EXPECT_EQ(world.server->connections(), 1U);
  }
  EXPECT_EQ(world.site.place->begun, 20);
}

TEST(NetClient, StatusAndHeadersComeAsTheyWereSaid) {
  NetWorld world([](const sync::Request& head, auto) {
    return say({418, {{"Upload-Offset", "70"}, {"Got", std::string(head.header("x-one"))}}, "{}"});
  });
  auto client = world.client();
  sync::Request request = get("/v1/thing?from=1");
  request.headers = {{"X-One", "two"}, {"Upload-Metadata", "sha256 YWJj,name"}};
  const auto answer = client.send(request);
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 418);
  EXPECT_EQ(answer->header("upload-offset"), "70");
  EXPECT_EQ(answer->header("Got"), "two");
  EXPECT_EQ(answer->body, "{}");
}

TEST(NetClient, HeadAndNoContentHaveNoBodyAndKeepTheConnection) {
  NetWorld world([](const sync::Request& head, auto) {
    if (head.method == sync::Method::Head)
      return say({200, {{"Content-Length", "1500000"}, {"Upload-Offset", "3"}}, {}});
    return say({204, {}, {}});
  });
  auto client = world.client();
  for (int i = 0; i < 3; ++i) {
    const auto head = client.send({sync::Method::Head, "/v1", {}, {}});
    ASSERT_TRUE(head);
    EXPECT_EQ(head->header("Content-Length"), "1500000");
    EXPECT_TRUE(head->body.empty());
    const auto none = client.send({sync::Method::Delete, "/v1", {}, {}});
    ASSERT_TRUE(none);
    EXPECT_EQ(none->status, 204);
  }
  EXPECT_EQ(world.server->connections(), 1U);
}

TEST(NetClient, FilesGoUpAndComeDownWhole) {
  const std::string bytes = pattern(5'000'003);
  NetWorld world([&](const sync::Request& head, auto) -> std::unique_ptr<sync::Handling> {
    if (head.method == sync::Method::Get)
      return std::make_unique<FileHandling>(206, bytes.substr(1000), bytes.size() - 1000);
    return echo();
  });
  MemoryBodies bodies;
  bodies.out = bytes;
  auto client = world.client(&bodies);
  sync::Request up{sync::Method::Patch, "/v1", {}, {}};
  up.send = sync::BlobPart{{}, 3, bytes.size()};
  up.receive = sync::BlobPart{{}, 0, bytes.size()};
  const auto echoed = client.send(up);
  ASSERT_TRUE(echoed);
  EXPECT_EQ(echoed->body, "");  // it went where files go
  EXPECT_TRUE(bodies.in == bytes.substr(3));
  EXPECT_EQ(client.sent_bytes(), bytes.size() - 3);

  bodies.in.clear();
  sync::Request down = get("/v1");
  down.receive = sync::BlobPart{{}, 1000, bytes.size()};
  const auto got = client.send(down);
  ASSERT_TRUE(got);
  EXPECT_TRUE(bodies.in == bytes.substr(1000));
  EXPECT_EQ(world.server->connections(), 1U);
}

TEST(NetClient, AnAnswerThatIsNoPartOfTheFileIsNotWrittenIntoIt) {
  NetWorld world([](const sync::Request& head, auto) {
    return say({head.target == "/whole" ? 200 : 404, {}, "another thing"});
  });
  MemoryBodies bodies;
  auto client = world.client(&bodies);
  for (const char* target : {"/whole", "/missing"}) {
    sync::Request down = get(target);
    down.receive = sync::BlobPart{{}, 1000, 2000};
    const auto got = client.send(down);
    ASSERT_TRUE(got);
    EXPECT_EQ(got->body, "another thing");
    EXPECT_EQ(bodies.in, "");
  }
}

TEST(NetClient, WhatTheDiskRefusesIsSaidAndTheNextRequestIsAnsweredByItsOwnAnswer) {
  const std::string bytes = pattern(400'000);
  NetWorld world([&](const sync::Request& head, auto) -> std::unique_ptr<sync::Handling> {
    if (head.target == "/file") return std::make_unique<FileHandling>(200, bytes, bytes.size());
    return say({200, {}, "words"});
  });
  MemoryBodies bodies;
  auto client = world.client(&bodies);
  sync::Request down = get("/file");
  down.receive = sync::BlobPart{{}, 0, bytes.size()};
  bodies.most_in = 150'000;
  const auto full = client.send(down);
  ASSERT_FALSE(full);
  EXPECT_EQ(full.error().code, Code::DiskFull);
  EXPECT_EQ(client.send(get("/v1"))->body, "words");
  bodies.refuse_to_open = true;
  const auto busy = client.send(down);
  ASSERT_FALSE(busy);
  EXPECT_EQ(busy.error().code, Code::Busy);
  EXPECT_EQ(client.send(get("/v1"))->body, "words");
}

TEST(NetClient, AFileThatIsShorterThanItWasSaidToBeIsNeverTakenAsWhole) {
  NetWorld world([](const auto&, auto) {
    return std::make_unique<FileHandling>(200, pattern(300'000), 300'001);
  });
  MemoryBodies bodies;
  auto client = world.client(&bodies);
  sync::Request down = get("/file");
  down.receive = sync::BlobPart{{}, 0, 300'001};
  const auto got = client.send(down);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().code, Code::NoContact);
  bodies.out = pattern(10);
  sync::Request up{sync::Method::Patch, "/v1", {}, {}};
  up.send = sync::BlobPart{{}, 0, 11};
  const auto short_one = client.send(up);
  ASSERT_FALSE(short_one);
  EXPECT_EQ(short_one.error().code, Code::BadHash);
}

TEST(NetClient, ARestartedServerIsAskedOnceMore) {
  NetWorld world([](const auto&, auto) { return echo(); });
  auto client = world.client();
  ASSERT_TRUE(client.send(post("/v1", "before")));
  world.stop();
  world.start();
  const auto answer = client.send(post("/v1", "after"));
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->body, "after");
  world.stop();
  const auto gone = client.send(post("/v1", "nobody"));
  ASSERT_FALSE(gone);
  EXPECT_EQ(gone.error().code, Code::NoContact);
  EXPECT_EQ(gone.error().arg("address"), "127.0.0.1:" + std::to_string(world.port()));
  EXPECT_FALSE(gone.error().arg("cause").empty());
}

TEST(NetClient, CancelEndsALongPollFromAnotherThread) {
  std::promise<void> waiting;
  NetWorld world([&](const auto&, auto) {
    return std::make_unique<sync::Whole>(10, [&, said = false](const auto&) mutable {
      if (!std::exchange(said, true)) waiting.set_value();
      return sync::Outcome(sync::Waiting{25'000});
    });
  });
  auto client = world.client();
  std::thread other([&] {
    waiting.get_future().wait();
    client.cancel();
  });
  const auto answer = client.send(get("/v1"), 25'000);
  other.join();
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::Stopped);
  const auto later = client.send(get("/v1"));
  ASSERT_FALSE(later);
  EXPECT_EQ(later.error().code, Code::Stopped);
  EXPECT_EQ(world.site.place->begun, 1);
}

TEST(NetClient, AServerThatSaysNothingIsLeftInTimeAndNotAskedTwice) {
  NetWorld world([](const auto&, auto) {
    return std::make_unique<sync::Whole>(
        10, [](const auto&) { return sync::Outcome(sync::Waiting{25'000}); });
  });
  auto client = world.client(nullptr, {.connect_ms = 5'000, .idle_ms = 200});
  for (int i = 1; i <= 2; ++i) {
    const auto answer = client.send(get("/v1"));
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().code, Code::NoContact);
    EXPECT_EQ(world.site.place->begun, i);
  }
}

TEST(NetClient, TheNextAddressIsTriedWhenOneIsDead) {
  NetWorld world([](const auto&, auto) { return echo(); });
  std::uint16_t dead = 0;
  {
    asio::io_context io;
    asio::ip::tcp::acceptor acceptor(io, {asio::ip::make_address("127.0.0.1"), 0});
    dead = acceptor.local_endpoint().port();
  }
  net::Client client(net::device_context(world.key.key()),
                     {{"127.0.0.1", dead}, {"127.0.0.1", world.port()}});
  ASSERT_TRUE(client.send(post("/v1", "x")));
  net::Client none(net::device_context(world.key.key()), {});
  EXPECT_EQ(none.send(get("/v1")).error().code, Code::NoContact);
  none.set_addresses({{"127.0.0.1", world.port()}});
  EXPECT_TRUE(none.send(get("/v1")));
}

TEST(NetClient, AnotherHubsCertificateIsAWrongServer) {
  NetWorld world([](const auto&, auto) { return echo(); });
  const auto answer = ask_at(world.port(), net_key(8).key());
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::WrongServer);
  EXPECT_NE(answer.error().arg("cause").find("certificate"), std::string::npos)
      << answer.error().arg("cause");
  EXPECT_EQ(world.site.place->begun, 0);
}

TEST(NetClient, PlainHttpIsAWrongServer) {
  PlainServer portal("HTTP/1.1 200 OK\r\nContent-Length: 2\r\n\r\nok");
  const auto answer = ask_at(portal.port(), net_key(7).key());
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::WrongServer);
}

TEST(NetClient, AServerThatHangsUpIsNoContact) {
  PlainServer mute("");
  const auto answer = ask_at(mute.port(), net_key(7).key());
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::NoContact);
  EXPECT_EQ(mute.connections, 1);
}

TEST(NetClient, AFloodOfHeadersInAnAnswerIsRefused) {
  NetWorld world([](const auto&, auto) {
    return say({200, {{"X-Long", std::string(20'000, 'x')}}, "ok"});
  });
  const auto answer = ask_at(world.port(), world.key.key());
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::WrongServer);
}

TEST(NetClient, AnEndlessAnswerIsRefused) {
  NetWorld world([](const auto&, auto) { return say({200, {}, std::string(3U << 20U, 'x')}); });
  const auto answer = ask_at(world.port(), world.key.key());
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::WrongServer);
}

TEST(NetClient, AnAnswerBeforeTheBodyIsReadThoughTheBodyIsNotWanted) {
  NetWorld world([](const auto&, auto) {
    return say(sync::response_of(sync::problem(sync::Refusal::NoSession)));
  });
  auto client = world.client();
  for (int i = 0; i < 5; ++i) {
    const auto answer = client.send(post("/v1", std::string(1U << 20U, 'x')));
    ASSERT_TRUE(answer) << answer.error().arg("cause");
    EXPECT_EQ(answer->status, 401);
  }
}

}  // namespace
}  // namespace jambline::test
