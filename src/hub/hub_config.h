// hub/hub_config.h: hub.json: what people call the hub, and where devices find it.
//
// Errors: those of hub/small_file.h; Malformed, OutOfRange.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/describe.h"
#include "sync/invitation.h"

namespace jambline::hub {

struct HubConfig {
  std::string name;
  std::vector<std::string> addresses;  // what invitations say; none: the machine's own
  int port = sync::usual_port;         // for addresses that name none
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "addresses"}, self.addresses);
    visit(Field{.name = "port", .min = 1, .max = 65535}, self.port);
  }
};

Result<HubConfig> read_config(const std::filesystem::path& hub_folder);
Status write_config(const std::filesystem::path& hub_folder, const HubConfig& config);

// At most so many go into a square code that a camera reads at arm's length.
inline constexpr std::size_t most_invited_addresses = 4;
// As the config says, or else the machine's addresses that are not its loopback, IPv4 first.
Result<std::vector<sync::Address>> addresses_of(const HubConfig& config);

}  // namespace jambline::hub
