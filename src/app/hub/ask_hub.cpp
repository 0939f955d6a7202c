#include "app/hub/ask_hub.h"

#include <chrono>
#include <iostream>
#include <thread>

#include "app/command_line_words.h"
#include "app/hub/local_hub.h"
#include "base/json.h"
#include "hub/control.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
// A hub that has just been started holds its folder and does not listen yet.
constexpr int tries = 25;
constexpr auto between_tries = std::chrono::milliseconds(200);
}  // namespace

Result<hub::Report> ask_hub(const std::string& folder, const hub::Order& order) {
  hub::Report report;
  for (int left = tries;; --left) {
    JAMBLINE_ASSIGN(const auto answer, hub::ask_control(folder, to_json(order)));
    if (answer) {
      JAMBLINE_ASSIGN(report, from_json<hub::Report>(*answer));
      break;
    }
    const auto local = open_local_hub(folder);
    if (local) {
      report = hub::carry_out(*(*local)->hub, order, nullptr, {});
      break;
    }
    if (local.error().code != Code::FolderInUse || left == 0) return fail(local.error());
    std::this_thread::sleep_for(between_tries);
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
