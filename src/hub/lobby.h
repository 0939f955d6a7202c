// hub/lobby.h: where requests go that belong to no shop of the hub: who it is (GET /v1), and a shop
// that comes with a code.
//
// Rule:    nothing is made for a shop before its request has a code that was given out, holds, and
//          is signed by the key that asks.
// Threads: one owner at a time.
#pragma once

#include <functional>
#include <memory>

#include "hub/expected_shops.h"
#include "hub/shop_place.h"
#include "sync/rate.h"

namespace jambline::hub {

class Lobby final : public net::Place {
 public:
  struct Parts {
    const seal::SigningKey& key;
    const Clock& clock;
    std::string hub_name;
    // Makes the shop's folder with the code in it; nobody else has the shop before welcome().
    std::function<Result<std::shared_ptr<ShopPlace>>(const ShopId&, const sync::Invited&)> make;
    std::function<void(const std::shared_ptr<ShopPlace>&)> welcome;
    std::function<bool(const ShopId&)> is_here;
    sync::NoteEvent note;
  };
  Lobby(Parts parts, ExpectedShops expected)
      : parts_(std::move(parts)), expected_(std::move(expected)) {}

  std::unique_ptr<sync::Handling> begin(const sync::Request& head,
                                        std::optional<std::uint64_t> body_bytes,
                                        const std::string& peer) override;
  std::uint64_t changes() const override { return 0; }
  ExpectedShops& expected() { return expected_; }

 private:
  sync::Response enrol(const sync::Request& head, const ShopId& shop, const std::string& body,
                       const std::string& peer);

  Parts parts_;
  ExpectedShops expected_;
  sync::Buckets<std::string> rates_{sync::strangers_a_second, sync::strangers_saved_up};
};

}  // namespace jambline::hub
