#include "hub/hub_config.h"

#include <algorithm>
#include <arpa/inet.h>
#include <array>
#include <cerrno>
#include <ifaddrs.h>
#include <net/if.h>
#include <netinet/in.h>

#include "base/json.h"
#include "blobs/file_layer.h"
#include "hub/small_file.h"

namespace jambline::hub {

namespace {
constexpr const char* config_file = "hub.json";

Result<std::vector<sync::Address>> machine_addresses(std::uint16_t port) {
  ifaddrs* all = nullptr;
  if (getifaddrs(&all) != 0) return fail(blobs::system_error("look up", "addresses", errno));
  std::vector<sync::Address> four;
  std::vector<sync::Address> six;
  for (const ifaddrs* one = all; one; one = one->ifa_next) {
    if (!one->ifa_addr || (one->ifa_flags & IFF_LOOPBACK) || !(one->ifa_flags & IFF_UP)) continue;
    std::array<char, INET6_ADDRSTRLEN> text{};
    if (one->ifa_addr->sa_family == AF_INET) {
      const auto* at = reinterpret_cast<const sockaddr_in*>(one->ifa_addr);
      if (inet_ntop(AF_INET, &at->sin_addr, text.data(), text.size()))
        four.push_back({text.data(), port});
    } else if (one->ifa_addr->sa_family == AF_INET6) {
      const auto* at = reinterpret_cast<const sockaddr_in6*>(one->ifa_addr);
      // One that holds on one cable only says nothing to who scans a code.
      if (!IN6_IS_ADDR_LINKLOCAL(&at->sin6_addr) &&
          inet_ntop(AF_INET6, &at->sin6_addr, text.data(), text.size()))
        six.push_back({text.data(), port});
    }
  }
  freeifaddrs(all);
  four.insert(four.end(), six.begin(), six.end());
  if (four.empty()) four.push_back({"127.0.0.1", port});
  return four;
}
}  // namespace

Result<HubConfig> read_config(const std::filesystem::path& hub_folder) {
  constexpr std::size_t most_bytes = 64U << 10U;
  JAMBLINE_ASSIGN(const std::string text, read_whole(hub_folder / config_file, most_bytes));
  return from_json<HubConfig>(text);
}

Status write_config(const std::filesystem::path& hub_folder, const HubConfig& config) {
  return write_whole(hub_folder / config_file, to_json(config) + "\n");
}

Result<std::vector<sync::Address>> addresses_of(const HubConfig& config) {
  const auto port = static_cast<std::uint16_t>(config.port);
  if (config.addresses.size() > most_invited_addresses)
    return fail(Error{Code::OutOfRange, "say", "addresses", {}}
                    .with("value", std::to_string(config.addresses.size()))
                    .with("max", std::to_string(most_invited_addresses)));
  std::vector<sync::Address> out;
  for (const std::string& text : config.addresses) {
    JAMBLINE_ASSIGN(auto address, sync::parse_address(text));
    const auto colon = text.rfind(':');
    const auto bracket = text.rfind(']');
    const bool six = text.front() == '[';
    const bool names_port =
        six ? colon != std::string::npos && colon > bracket : colon != std::string::npos;
    if (!names_port) address.port = port;
    out.push_back(std::move(address));
  }
  if (out.empty()) {
    JAMBLINE_ASSIGN(out, machine_addresses(port));
  }
  out.resize(std::min(out.size(), most_invited_addresses));
  return out;
}

}  // namespace jambline::hub
