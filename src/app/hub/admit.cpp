#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"

namespace jambline::app {

namespace {
std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const auto& word : words) out += word;
  return out;
}
}  // namespace

int hub_admit(const DigitsAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Admit;
  order.text = joined(asked.digits);
  order.manager = asked.manager;
  const auto report = asked_or_said(asked.folder, asked.shop, order);
  if (!report) return 2;
  std::cout << report->admitted->name << " is admitted"
            << (asked.manager ? " as a manager's device\n" : "\n");
  return 0;
}

int hub_refuse(const DigitsAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Refuse;
  order.text = joined(asked.digits);
  const auto report = asked_or_said(asked.folder, asked.shop, order);
  if (!report) return 2;
  std::cout << report->refused->name << " is turned away\n";
  return 0;
}

}  // namespace jambline::app
