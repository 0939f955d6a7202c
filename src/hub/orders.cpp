#include "hub/orders.h"

namespace jambline::hub {

SaidError said_error(const Error& error) {
  SaidError out{std::string(code_name(error.code)), error.operation, error.subject, {}};
  for (const auto& [name, value] : error.args) out.facts.push_back({name, value});
  return out;
}

Error error_of(const SaidError& said) {
  Error out{Code::FileFailed, said.operation, said.subject, {}};
  for (int code = 0; code <= static_cast<int>(Code::Busy); ++code)
    if (code_name(static_cast<Code>(code)) == said.code) out.code = static_cast<Code>(code);
  for (const auto& fact : said.facts) out.args.emplace_back(fact.name, fact.value);
  return out;
}

Report carry_out(Hub& hub, const Order& order, const Upkeep* upkeep, const std::stop_token& stop) {
  Report out;
  const auto put = [&](auto result, auto& place) {
    if (result)
      place = std::move(*result);
    else
      out.error = said_error(result.error());
  };
  const auto invitation_text = [](Result<sync::Invitation> made) -> Result<std::string> {
    if (!made) return fail(made.error());
    std::string text = sync::encode(*made);
    JAMBLINE_TRY(sync::decode_invitation(text));  // what nobody could read is not given out
    return text;
  };
  const std::int64_t lives_ms = std::int64_t{order.minutes} * 60'000;
  switch (order.command) {
    case Command::Found:
      put(found_shop(hub), out.founded);
      break;
    case Command::Join:
      put(invitation_text(expect_shop(hub, lives_ms)), out.invitation);
      break;
    case Command::Invite:
      put(invitation_text(invite_device(hub, order.shop, lives_ms)), out.invitation);
      break;
    case Command::Pending:
      put(waiting_devices(hub, order.shop), out.waiting);
      break;
    case Command::Admit:
      put(admit_device(hub, order.shop, order.text, order.manager), out.admitted);
      break;
    case Command::Refuse:
      put(turn_away(hub, order.shop, order.text), out.refused);
      break;
    case Command::Revoke:
      put(revoke_device(hub, order.shop, order.text), out.revoked);
      break;
    case Command::Backup:
      put(back_up(hub, order.text, stop), out.backed_up);
      break;
    case Command::Scrub:
      put(scrub_shops(hub, order.shop, stop), out.scrubbed);
      break;
    case Command::Verify:
      put(audit_shops(hub, order.shop, stop), out.audited);
      break;
    case Command::Status:
      put(status_of(hub, upkeep), out.status);
      break;
  }
  return out;
}

}  // namespace jambline::hub
