#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"
#include "base/json.h"

namespace jambline::app {

int hub_pending(const PendingAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Pending;
  const auto report = asked_or_said(asked.folder, asked.shop, order);
  if (!report) return 2;
  if (asked.json) {
    std::cout << to_json(*report->waiting) << '\n';
    return 0;
  }
  for (const auto& one : *report->waiting)
    std::cout << one.digits << "  " << one.name << "  shop " << one.shop.hex() << "  "
              << (one.brings_shop     ? "brings its shop: its manager confirms on the device"
                  : one.hub_may_admit ? "admit it here or on a manager's device"
                                      : "a manager's device admits it")
              << '\n';
  std::cout << report->waiting->size() << " waiting\n";
  return 0;
}

}  // namespace jambline::app
