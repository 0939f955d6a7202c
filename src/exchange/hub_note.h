// exchange/hub_note.h: what this device knows of its hub: hub.json beside the log.
//
// Shape:   one JSON object. No secret but the code of an invitation, which is over after minutes.
// Durable: written to a file beside it, synced, renamed over the old one.
// Errors:  Malformed (args: field) for a file that is none of ours; NoSuchFile is no error:
// nothing.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "exchange/exchange.h"

namespace jambline::exchange {

enum class HubStep : std::uint8_t {
  Asked,    // for admission; a manager has not said anything yet
  Confirm,  // the shop comes to the hub: the hub has to be taken in here
  Member,
  TurnedAway,
};

struct HubNote {
  HubStep step{};
  seal::Key hub;
  std::string hub_name;
  std::vector<std::string> at;
  ShopId shop;
  bool joins = false;  // the shop was not founded in this folder
  sync::InviteCode code;
  sync::Nonce nonce;  // zero: the hub has not answered yet
  bool paused = false;
  PicturesWhen pictures_when = PicturesWhen::NotMetered;
  bool new_key = false;  // a forked device asks again, under the key in device.key.new
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "step"}, self.step);
    visit(Field{.name = "hub"}, self.hub);
    visit(Field{.name = "hub_name"}, self.hub_name);
    visit(Field{.name = "at"}, self.at);
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "joins"}, self.joins);
    visit(Field{.name = "code"}, self.code);
    visit(Field{.name = "nonce"}, self.nonce);
    visit(Field{.name = "paused"}, self.paused);
    visit(Field{.name = "pictures_when"}, self.pictures_when);
    visit(Field{.name = "new_key"}, self.new_key);
  }
};

Result<std::optional<HubNote>> read_hub_note(const std::filesystem::path& folder);
Status write_hub_note(const std::filesystem::path& folder, const HubNote& note);
Status forget_hub_note(const std::filesystem::path& folder);

std::vector<sync::Address> addresses_of(const HubNote& note);

}  // namespace jambline::exchange

template <>
inline constexpr auto jambline::enum_words<jambline::exchange::HubStep> =
    std::to_array<std::string_view>({"asked", "confirm", "member", "turned away"});
template <>
inline constexpr auto jambline::enum_words<jambline::exchange::PicturesWhen> =
    std::to_array<std::string_view>({"always", "not metered", "never"});
