#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"
#include "base/json.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
void print_shop(const hub::ShopStatus& shop) {
  std::cout << "\nshop        " << seal::fingerprint(shop.shop) << '\n';
  if (!shop.shut.empty()) {
    std::cout << "BAD         not served: " << shop.shut << '\n';
    return;
  }
  std::cout << "entries     " << shop.entries << ", " << shop.audited
            << " checked since the start\n"
            << "devices     " << shop.devices.size() << ", of them revoked " << shop.revoked
            << "; waiting " << shop.waiting << '\n';
  for (const auto& device : shop.devices)
    std::cout << "  " << device.device.hex() << "  " << device.entries << " entries  "
              << device.name << (device.manager ? ", manager" : "")
              << (device.cut_seq ? ", revoked" : "") << '\n';
  std::cout << "files       " << shop.files << " (" << shop.file_bytes << " bytes), " << shop.parts
            << " on their way\n"
            << "database    " << shop.database_bytes << " bytes\n"
            << "hub admits  " << (shop.hub_manages ? "yes" : "no, a manager's device does") << '\n';
  if (shop.quarantined > 0)
    std::cout << "quarantine  " << shop.quarantined
              << " devices with entries after their cut: a manager looks at them\n";
  if (shop.forked > 0)
    std::cout << "forks       " << shop.forked
              << " devices whose folder was copied and used twice\n";
  if (!shop.first_bad.empty()) std::cout << "BAD         " << shop.first_bad << '\n';
}
}  // namespace

int hub_status(const LookAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Status;
  const auto report = asked_or_said(asked.folder, {}, order);
  if (!report) return 2;
  const hub::HubStatus& status = *report->status;
  bool good = true;
  for (const auto& shop : status.shops) good = good && shop.shut.empty() && shop.first_bad.empty();
  if (asked.json) {
    std::cout << to_json(status) << '\n';
    return good ? 0 : 1;
  }
  std::cout << "hub         " << status.name << "\nkey         " << status.hub.hex()
            << "\nserving     " << (status.serving ? "yes" : "no") << "\naddresses  ";
  for (const auto& address : status.addresses) std::cout << ' ' << address;
  std::cout << "\nfree        " << status.free_bytes << " bytes\n";
  if (status.expected > 0)
    std::cout << "expected    " << status.expected << " shops may come with a code\n";
  for (const auto& shop : status.shops) print_shop(shop);
  return good ? 0 : 1;
}

}  // namespace jambline::app
