#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"
#include "base/json.h"

namespace jambline::app {

int hub_scrub(const LookAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Scrub;
  const auto report = asked_or_said(asked.folder, asked.shop, order);
  if (!report) return 2;
  std::size_t wrong = 0;
  for (const auto& shop : *report->scrubbed) wrong += shop.damaged.size() + shop.unreadable;
  if (asked.json) {
    std::cout << to_json(*report->scrubbed) << '\n';
    return wrong == 0 ? 0 : 1;
  }
  for (const auto& shop : *report->scrubbed) {
    std::cout << "shop " << shop.shop.hex() << ": " << shop.files << " files, " << shop.bytes
              << " bytes read again" << (shop.stopped ? ", stopped before the end\n" : "\n");
    for (const auto& file : shop.damaged) std::cout << "  damaged: " << file.hex() << '\n';
    if (shop.unreadable > 0) std::cout << "  " << shop.unreadable << " could not be read\n";
  }
  if (wrong == 0) return 0;
  std::cout << "BAD    " << wrong
            << " damaged\nkept   what is left of them, in the shop's folder damaged/\n"
               "to do: nothing; devices that have them are asked to send them again\n";
  return 1;
}

}  // namespace jambline::app
