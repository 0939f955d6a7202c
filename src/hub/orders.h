// hub/orders.h: what the command line asks a hub to do, as a value: carried out in the same
// process, or sent as one line of JSON to the one that serves.
//
// Threads: carry_out() any.
#pragma once

#include <optional>
#include <stop_token>
#include <string>

#include "hub/backup.h"
#include "hub/hub_status.h"
#include "hub/operator_acts.h"

namespace jambline::hub {

enum class Command : std::uint8_t {
  Found,
  Join,
  Invite,
  Pending,
  Admit,
  Refuse,
  Revoke,
  Backup,
  Scrub,
  Verify,
  Status,
};

struct Order {
  Command command{};
  std::optional<ShopId> shop;
  std::string text;  // digits of admit and refuse, device of revoke, folder of backup
  bool manager{};    // of admit
  int minutes = 10;  // of join and invite
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "command"}, self.command);
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "text"}, self.text);
    visit(Field{.name = "manager"}, self.manager);
    visit(Field{.name = "minutes", .unit = "min", .min = 1, .max = 1440}, self.minutes);
  }
};

struct SaidFact {
  std::string name;
  std::string value;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "value"}, self.value);
  }
};
struct SaidError {
  std::string code;
  std::string operation;
  std::string subject;
  std::vector<SaidFact> facts;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "code"}, self.code);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "subject"}, self.subject);
    visit(Field{.name = "facts"}, self.facts);
  }
};
SaidError said_error(const Error& error);
Error error_of(const SaidError& said);

struct Report {
  std::optional<SaidError> error;
  std::optional<ShopId> founded;
  std::optional<std::string> invitation;
  std::optional<std::vector<WaitingDevice>> waiting;
  std::optional<WaitingDevice> admitted;
  std::optional<WaitingDevice> refused;
  std::optional<RevokedDevice> revoked;
  std::optional<std::vector<BackedUpShop>> backed_up;
  std::optional<std::vector<ScrubbedShop>> scrubbed;
  std::optional<std::vector<AuditedShop>> audited;
  std::optional<HubStatus> status;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "error"}, self.error);
    visit(Field{.name = "founded"}, self.founded);
    visit(Field{.name = "invitation"}, self.invitation);
    visit(Field{.name = "waiting"}, self.waiting);
    visit(Field{.name = "admitted"}, self.admitted);
    visit(Field{.name = "refused"}, self.refused);
    visit(Field{.name = "revoked"}, self.revoked);
    visit(Field{.name = "backed_up"}, self.backed_up);
    visit(Field{.name = "scrubbed"}, self.scrubbed);
    visit(Field{.name = "audited"}, self.audited);
    visit(Field{.name = "status"}, self.status);
  }
};

Report carry_out(Hub& hub, const Order& order, const Upkeep* upkeep, const std::stop_token& stop);

}  // namespace jambline::hub

template <>
inline constexpr auto jambline::enum_words<jambline::hub::Command> =
    std::to_array<std::string_view>({"found", "join", "invite", "pending", "admit", "refuse",
                                     "revoke", "backup", "scrub", "verify", "status"});
