#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"

namespace jambline::app {

int hub_revoke(const RevokeAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Revoke;
  order.text = asked.device;
  const auto report = asked_or_said(asked.folder, asked.shop, order);
  if (!report) return 2;
  std::cout << report->revoked->name << " is revoked: its entries up to "
            << report->revoked->cut_seq
            << " stand,\nlater ones wait for a manager. This is final.\n";
  return 0;
}

}  // namespace jambline::app
