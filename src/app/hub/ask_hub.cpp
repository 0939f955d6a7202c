#include "app/hub/ask_hub.h"

#include <iostream>

#include "app/command_line_words.h"
#include "app/hub/local_hub.h"
#include "base/json.h"
#include "hub/control.h"
#include "seal/fingerprint.h"

namespace jambline::app {

Result<hub::Report> ask_hub(const std::string& folder, const hub::Order& order) {
  JAMBLINE_ASSIGN(const auto answer, hub::ask_control(folder, to_json(order)));
  hub::Report report;
  if (answer) {
    JAMBLINE_ASSIGN(report, from_json<hub::Report>(*answer));
  } else {
    JAMBLINE_ASSIGN(const auto local, open_local_hub(folder));
    report = hub::carry_out(*local->hub, order, nullptr, {});
  }
  if (report.error) return fail(hub::error_of(*report.error));
  return report;
}

std::optional<hub::Report> asked_or_said(const std::string& folder, const std::string& shop,
                                         hub::Order order) {
  if (!shop.empty()) {
    order.shop = seal::parse_fingerprint(shop);
    if (!order.shop) {
      std::cerr << "a shop is 32 signs of 0-9 and a-f, with or without hyphens\n";
      return std::nullopt;
    }
  }
  auto report = ask_hub(folder, order);
  if (report) return std::move(*report);
  std::cerr << said(report.error());
  return std::nullopt;
}

}  // namespace jambline::app
