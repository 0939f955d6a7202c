// app/hub/ask_hub.h: an order carried out by the hub that serves the folder, or right here when
// none does.
//
// Errors:  of the order itself, and those of hub/hub.h and hub/control.h.
#pragma once

#include <optional>
#include <string>

#include "hub/orders.h"

namespace jambline::app {

Result<hub::Report> ask_hub(const std::string& folder, const hub::Order& order);
// With the shop as it was typed; says why and gives nothing when it did not work.
std::optional<hub::Report> asked_or_said(const std::string& folder, const std::string& shop,
                                         hub::Order order);

}  // namespace jambline::app
