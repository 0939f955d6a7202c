#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"
#include "app/hub/print_invitation.h"

namespace jambline::app {

int hub_invite(const InviteAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Invite;
  order.minutes = asked.minutes;
  const auto report = asked_or_said(asked.folder, asked.shop, order);
  if (!report) return 2;
  const int printed = print_invitation(*report->invitation, asked.minutes, asked.text_only);
  if (printed == 0 && !asked.text_only)
    std::cout << "Then compare the six digits of jambline-hub pending with those on the device,\n"
                 "and let it in: jambline-hub admit DIGITS, or on a manager's device.\n";
  return printed;
}

}  // namespace jambline::app
