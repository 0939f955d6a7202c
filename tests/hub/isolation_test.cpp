// Many shops on one hub: no request of one reads, writes, lists or slows anything of another.
// Held against issue "Sync and the hub", item 5.
#include <condition_variable>
#include <future>

#include "net/client.h"
#include "net/server.h"
#include "tests/hub/hub_world.h"

namespace jambline::test {
namespace {

class ManyShops : public HubWorld {
 protected:
  ManyShops() : one(get(hub::found_shop(*hub))), two(get(hub::found_shop(*hub))) {}

  // Every request that the protocol knows, at a shop.
  std::vector<sync::Request> every_request(const TestDevice& asks, const ShopId& shop,
                                           const TestDevice& victim, const Hash& blob) {
    using sync::Method;
    using sync::Path;
    std::vector<sync::Request> out;
    const auto add = [&](Path path, Method method, std::string body = {}) {
      sync::Target target;
      target.path = path;
      target.shop = shop;
      target.device = victim.key().device();
      target.blob = blob;
      target.number = 1;
      target.upload.blob = blob;
      target.upload.size_bytes = 10;
      auto request = asks.at(target, method, std::move(body));
      request.headers.push_back({"Tus-Resumable", "1.0.0"});
      request.headers.push_back({"Upload-Length", "10"});
      request.headers.push_back({"Upload-Offset", "0"});
      request.headers.push_back({"Upload-Metadata", sync::metadata_of("sha256", blob.hex())});
      request.headers.push_back({"Content-Type", std::string(sync::tus_media_type)});
      out.push_back(std::move(request));
    };
    add(Path::Invite, Method::Post);
    add(Path::Pending, Method::Get);
    add(Path::Refuse, Method::Post);
    add(Path::Log, Method::Post, "x");
    add(Path::Pull, Method::Post, to_json(sync::PullAsk{}));
    add(Path::Quarantine, Method::Get);
    add(Path::Kept, Method::Get);
    add(Path::Settle, Method::Post);
    add(Path::Devices, Method::Get);
    add(Path::Have, Method::Post, to_json(sync::HaveAsk{{blob}}));
    add(Path::Files, Method::Post);
    add(Path::File, Method::Head);
    add(Path::File, Method::Patch, "0123456789");
    add(Path::File, Method::Delete);
    add(Path::Blob, Method::Get);
    add(Path::Blob, Method::Head);
    return out;
  }
  static std::string everything_of(hub::ShopPlace& place) {
    std::string out;
    good(place.shop().storage().read_after(0, [&](auto, const auto&, auto, auto bytes) {
      out += bytes;
      return true;
    }));
    for (const Hash& blob : get(place.files().blobs().list())) out += blob.hex();
    out += std::to_string(get(place.files().parts()));
    out += std::to_string(get(place.shop().storage().quarantine()).size());
    out += std::to_string(get(place.shop().storage().invited()).size());
    for (const auto& seen : get(place.shop().storage().seen())) out += to_json(seen);
    return out;
  }
  std::shared_ptr<hub::ShopPlace> place_of(const ShopId& shop) {
    for (const auto& place : hub->shops())
      if (place->id() == shop) return place;
    return nullptr;
  }

  ShopId one;
  ShopId two;
};

TEST_F(ManyShops, AManagerOfOneShopIsNobodyInAnother) {
  auto of_one = admitted(2, one, true);
  auto of_two = admitted(3, two, true);
  DeviceChain chain(of_two, two);
  ASSERT_EQ(of_two.push({chain.said("secret of two")}).status, 200);
  const Hash picture = of_two.upload("picture of two");
  const std::string before = everything_of(*place_of(two));
  std::size_t refused = 0;
  for (const auto& request : every_request(of_one, two, of_two, picture)) {
    const auto response = ask_site(*hub, request);
    EXPECT_EQ(response.status, 401) << request.target << " " << response.body;
    EXPECT_EQ(response.body.find("two"), std::string::npos);
    ++refused;
  }
  EXPECT_EQ(refused, 16U);
  EXPECT_EQ(everything_of(*place_of(two)), before) << "and nothing was written";
  // The same requests mean something to a member.
  for (const auto& request : every_request(of_two, two, of_two, picture))
    EXPECT_NE(ask_site(*hub, request).status, 401) << request.target;
}

TEST_F(ManyShops, AKeyOfOneShopDoesNotSignInAtAnother) {
  auto of_one = admitted(2, one, true);
  const auto at_two = device(2, two);
  EXPECT_EQ(
      problem_type(at_two.send(at_two.request(sync::Path::AskChallenge, sync::Method::Post,
                                              to_json(sync::ChallengeAsk{at_two.key().device()})))),
      "/problems/not-admitted");
  // A challenge of one, answered at the other: the proof names the shop.
  const auto of_two = admitted(3, two);
  const auto challenge =
      of_one.send(of_one.request(sync::Path::AskChallenge, sync::Method::Post,
                                 to_json(sync::ChallengeAsk{of_one.key().device()})));
  sync::SessionAsk ask{
      of_two.key().device(), get(from_json<sync::ChallengeAnswer>(challenge.body)).challenge, {}};
  ask.proof = of_two.key().sign(sync::session_words(two, hub_key(), ask.device, ask.challenge));
  EXPECT_EQ(problem_type(
                of_two.send(of_two.request(sync::Path::Session, sync::Method::Post, to_json(ask)))),
            "/problems/no-session");
}

TEST_F(ManyShops, EntriesOfOneShopAreNotTakenByAnother) {
  auto of_one = admitted(2, one);
  auto of_two = admitted(2, two);  // the same tablet, in both
  DeviceChain chain(of_one, one);
  const auto entry = chain.said("of one");
  EXPECT_EQ(problem_type(of_two.push({entry})), "/problems/bad-entry");
  EXPECT_EQ(of_one.push({entry}).status, 200);
}

TEST_F(ManyShops, AnInvitationAndDigitsHoldInTheirShopOnly) {
  const auto invitation = get(hub::invite_device(*hub, one, 600'000));
  const auto tablet = device(2, two);
  EXPECT_EQ(problem_type(tablet.enrol(invitation.code)), "/problems/bad-code");
  const auto at_one = device(2, one);
  const auto asked = at_one.enrol(invitation.code);
  ASSERT_EQ(asked.status, 200);
  EXPECT_EQ(code_of(hub::admit_device(*hub, two, at_one.digits(asked), false)), Code::Unknown);
  EXPECT_EQ(code_of(hub::invite_device(*hub, std::nullopt, 1000)), Code::Missing)
      << "with two shops it has to be said which";
}

TEST_F(ManyShops, OneFileInTwoShopsIsTwoFiles) {
  const auto of_one = admitted(2, one);
  const auto of_two = admitted(3, two);
  const Hash picture = of_one.upload("the same bytes");
  const auto have = of_two.send(
      of_two.request(sync::Path::Have, sync::Method::Post, to_json(sync::HaveAsk{{picture}})));
  EXPECT_EQ(get(from_json<sync::HaveAnswer>(have.body)).missing, std::vector{picture})
      << "nobody learns what another shop has";
  EXPECT_EQ(problem_type(of_two.download(picture)), "/problems/not-here");
}

// A hub of which one shop's storage stands still.
class Stalling final : public net::Site {
 public:
  explicit Stalling(net::Site& behind, ShopId stalled)
      : behind_(behind), stalled_(std::make_shared<StalledPlace>()), shop_(stalled) {}
  std::shared_ptr<net::Place> place_of(const sync::Request& head,
                                       sync::Response& refused) override {
    const auto target = sync::parse_target(head.target);
    if (target && target->shop == shop_) return stalled_;
    return behind_.place_of(head, refused);
  }
  void let_go() { stalled_->let_go(); }
  int inside() const { return stalled_->inside; }

 private:
  class StalledPlace final : public net::Place {
   public:
    std::unique_ptr<sync::Handling> begin(const sync::Request&, std::optional<std::uint64_t>,
                                          const std::string&) override {
      ++inside;
      std::unique_lock lock(mutex_);
      changed_.wait(lock, [&] { return free_; });
      class Gone final : public sync::Handling {
       public:
        std::uint64_t most_body_bytes() const override { return 1 << 20; }
        std::optional<sync::Response> take(std::span<const std::uint8_t>) override {
          return std::nullopt;
        }
        sync::Outcome finish() override {
          return sync::response_of(sync::problem(sync::Refusal::Failed));
        }
      };
      return std::make_unique<Gone>();
    }
    std::uint64_t changes() const override { return 0; }
    void let_go() {
      const std::lock_guard lock(mutex_);
      free_ = true;
      changed_.notify_all();
    }
    std::atomic<int> inside = 0;

   private:
    std::mutex mutex_;
    std::condition_variable changed_;
    bool free_ = false;
  };

  net::Site& behind_;
  std::shared_ptr<StalledPlace> stalled_;
  ShopId shop_;
};

TEST_F(ManyShops, AShopWhoseStorageStandsStillDelaysNoOther) {
  const auto of_two = admitted(3, two);
  Stalling site(*hub, one);
  const auto tls = get(net::hub_context(hub->key(), clock));
  net::ServerOptions options;
  options.host = "127.0.0.1";
  options.port = 0;
  const auto server = get(net::Server::start(tls, site, options, {}));
  const std::vector<sync::Address> at{{"127.0.0.1", server->port()}};
  const auto trust = net::device_context(hub_key());

  // Many devices of the stalled shop wait, more than the server has threads.
  std::vector<std::jthread> waiting;
  const auto of_one = device(2, one);
  for (int i = 0; i < 20; ++i)
    waiting.emplace_back([&] {
      net::Client client(trust, at);
      (void)client.send(of_one.request(sync::Path::Pull, sync::Method::Post, "{}"));
    });
  net::Client client(trust, at);
  const auto there = client.send({sync::Method::Get, "/v1", {}, {}});
  ASSERT_TRUE(there) << error_words(there.error());
  for (int i = 0; i < 2000 && site.inside() == 0; ++i)
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
  for (int i = 0; i < 30; ++i) {  // an answer that waited for the other shop would never come
    const auto response = client.send(of_two.request(sync::Path::Devices, sync::Method::Get));
    ASSERT_TRUE(response) << error_words(response.error());
    EXPECT_EQ(response->status, 200) << response->body;
  }
  EXPECT_EQ(site.inside(), 1) << "one of the stalled shop's requests holds one thread";
  site.let_go();
}

}  // namespace
}  // namespace jambline::test
