#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"
#include "seal/fingerprint.h"

namespace jambline::app {

int hub_found(const FoundAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Found;
  const auto report = asked_or_said(asked.folder, {}, order);
  if (!report) return 2;
  std::cout << "shop   " << seal::fingerprint(*report->founded)
            << "\nnext:  jambline-hub invite, read the square code with the first device,\n"
               "       then jambline-hub admit DIGITS --manager\n";
  return 0;
}

}  // namespace jambline::app
