#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"
#include "base/json.h"

namespace jambline::app {

int hub_verify(const LookAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Verify;
  const auto report = asked_or_said(asked.folder, asked.shop, order);
  if (!report) return 2;
  bool good = true;
  for (const auto& shop : *report->audited) good = good && shop.first_bad.empty();
  if (asked.json) {
    std::cout << to_json(*report->audited) << '\n';
    return good ? 0 : 1;
  }
  for (const auto& shop : *report->audited) {
    std::cout << "shop " << shop.shop.hex() << ": " << shop.entries << " entries, " << shop.erased
              << " of them with erased payload, " << shop.receipts << " receipts"
              << (shop.stopped ? ", stopped before the end\n" : "\n");
    if (shop.after_cut > 0)
      std::cout << "  " << shop.after_cut
                << " came before their device's revocation was known and do not count\n";
    if (!shop.first_bad.empty())
      std::cout << "BAD    first bad entry: " << shop.first_bad
                << "\nkept   everything, as it is\n"
                   "to do: copy the folder away, then restore the last backup; devices send\n"
                   "       again what came after it\n";
  }
  if (good) std::cout << "good\n";
  return good ? 0 : 1;
}

}  // namespace jambline::app
