// tests/fuzz/hub_request.h: a hub's shop and its lobby over memory, asked in the bytes of HTTP/1.1.
//
// Shape:   the same start for every input: a founder, a hub, a tablet and a manager's desk, both
//          with a session. Bytes are parsed as net/server_connection.cpp does, request after
//          request; a body that does not come whole is a connection that was cut.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "hub/lobby.h"
#include "sync/hub_shop.h"
#include "tests/hub/sealed_run.h"
#include "tests/simulator/memory_hub.h"

namespace jambline::fuzz {

class RequestWorld {
 public:
  RequestWorld();
  ~RequestWorld();
  // Answers to the requests that were whole.
  std::vector<sync::Response> talk(std::string_view bytes);
  sync::Response ask(const sync::Request& request);
  void check() const;  // what is on the disk is what its names say

  ShopId shop() const { return disk_->shop; }
  const test::MemoryShop& disk() const { return *disk_; }
  sync::Challenge challenge(const seal::SigningKey& device);
  sync::SessionAsk proof(const seal::SigningKey& device, const sync::Challenge& challenge) const;

  seal::SigningKey hub_key = test::hub_test_key(200);
  seal::SigningKey tablet = test::hub_test_key(2);
  seal::SigningKey desk = test::hub_test_key(3);
  std::string tablet_token;
  std::string desk_token;

 private:
  std::unique_ptr<sync::Handling> begin(const sync::Request& head,
                                        std::optional<std::uint64_t> body_bytes);
  sync::Response end(sync::Handling& handling);
  std::string token(const seal::SigningKey& device);

  std::shared_ptr<test::MemoryShop> disk_;
  FakeClock clock_;
  SeededRandom random_{9};
  std::unique_ptr<test::MemoryHubStorage> storage_;
  std::unique_ptr<test::MemoryHubFiles> files_;
  std::unique_ptr<sync::HubShop> shop_;
  std::unique_ptr<hub::Lobby> lobby_;
};

// The bytes of a request.
std::string http_bytes(const sync::Request& request);

}  // namespace jambline::fuzz
