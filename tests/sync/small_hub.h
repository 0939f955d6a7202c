// tests/sync/small_hub.h: a hub's shop over memory, asked without sockets, and a device that has a
// session with it.
#pragma once

#include <gtest/gtest.h>

#include "base/json.h"
#include "sync/hub_shop.h"
#include "sync/tus.h"
#include "tests/hub/sealed_run.h"
#include "tests/simulator/memory_hub.h"

namespace jambline::test {

class SmallHub {
 public:
  SmallHub() : disk(std::make_shared<MemoryShop>()) {
    disk->shop = run.shop();
    disk->epoch = epoch_number(0xe0);
    clock.moment.wall_ms = hub_monday_ms;
    clock.moment.since_boot_ms = 1'000'000;
    storage = std::make_unique<MemoryHubStorage>(
        disk, [](std::uint16_t kind) { return kind == erasable_kind; });
    files = std::make_unique<MemoryHubFiles>(disk);
    open();
    const std::vector<seal::SealedEntry> start{run.founded(), run.hub_admitted(key.key()),
                                               run.admitted(tablet, "tablet"),
                                               run.admitted(desk, "desk", true)};
    EXPECT_TRUE(shop->append_own(start));
  }
  void open() {
    auto made = sync::HubShop::open({*storage, *files, key, clock, random, "hub",
                                     [this](const auto& event) { events.push_back(event); }});
    if (!made) std::abort();
    shop = std::move(*made);
  }

  // Head first, then the body in pieces, as the server does it.
  sync::Outcome outcome(const sync::Request& request, const std::string& peer = "10.0.0.1") {
    const auto target = sync::parse_target(request.target);
    if (!target) return sync::response_of(sync::problem(sync::Refusal::NotHere));
    const auto handling = shop->begin(request, *target, request.body.size(), peer);
    for (std::size_t at = 0; at < request.body.size(); at += 1000) {
      const auto piece = std::string_view(request.body).substr(at, 1000);
      if (auto early =
              handling->take({reinterpret_cast<const std::uint8_t*>(piece.data()), piece.size()}))
        return *early;
    }
    return handling->finish();
  }
  sync::Response ask(const sync::Request& request, const std::string& peer = "10.0.0.1") {
    auto out = outcome(request, peer);
    if (auto* response = std::get_if<sync::Response>(&out)) return *response;
    return {std::holds_alternative<sync::Waiting>(out) ? 0 : 200, {}, {}};
  }
  std::string path(const std::string& rest) const { return "/v1/" + run.shop().hex() + "/" + rest; }
  sync::Request post(const std::string& rest, std::string body, const std::string& token = {}) {
    sync::Request out{sync::Method::Post, path(rest), {}, std::move(body)};
    if (!token.empty()) out.headers.push_back({"Authorization", "Bearer " + token});
    return out;
  }
  sync::Challenge challenge(const seal::SigningKey& device) {
    const auto answer = ask(post("challenge", to_json(sync::ChallengeAsk{device.device()})));
    const auto read = from_json<sync::ChallengeAnswer>(answer.body);
    return read ? read->challenge : sync::Challenge{};
  }
  sync::SessionAsk proof(const seal::SigningKey& device, const sync::Challenge& challenge) const {
    const Hash words = sync::session_words(run.shop(), key.key(), device.device(), challenge);
    return {device.device(), challenge, device.sign(words)};
  }
  std::string token(const seal::SigningKey& device) {
    const auto answer = ask(post("session", to_json(proof(device, challenge(device)))));
    const auto read = from_json<sync::SessionAnswer>(answer.body);
    return read ? read->token.hex() : "";
  }
  std::string said_events() const {
    std::string out;
    for (const auto& event : events) out += to_json(event) + "\n";
    return out;
  }

  SealedRun run;
  seal::SigningKey key = hub_test_key(200);
  seal::SigningKey tablet = hub_test_key(2);
  seal::SigningKey desk = hub_test_key(3);
  std::shared_ptr<MemoryShop> disk;
  FakeClock clock;
  SeededRandom random{9};
  std::vector<sync::HubEvent> events;
  std::unique_ptr<MemoryHubStorage> storage;
  std::unique_ptr<MemoryHubFiles> files;
  std::unique_ptr<sync::HubShop> shop;
};

}  // namespace jambline::test
