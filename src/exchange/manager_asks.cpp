#include "exchange/manager_asks.h"

namespace jambline::exchange {

sync::Request manager_request(sync::Method method, const sync::Target& target,
                              const sync::Token& token) {
  sync::Request out;
  out.method = method;
  out.target = sync::target_of(target);
  out.headers.push_back({"Authorization", "Bearer " + token.hex()});
  return out;
}

Result<std::string> read_answer(const Result<sync::Response>& answer) {
  if (!answer) return fail(answer.error());
  if (answer->status < 300) return answer->body;
  const auto why = sync::problem_of(*answer);
  const auto refusal = why ? sync::refusal_of(*why) : std::nullopt;
  if (!refusal)
    return fail(
        Error{Code::WrongServer, "ask", "hub", {{"cause", std::to_string(answer->status)}}});
  switch (*refusal) {
    case sync::Refusal::NotAManager:
    case sync::Refusal::NotAdmitted:
      return fail(Code::NotAllowed, "ask", "hub");
    case sync::Refusal::Revoked:
      return fail(Code::Revoked, "ask", "hub");
    case sync::Refusal::NotHere:
      return fail(Code::NoSuchFile, "ask", "hub");
    case sync::Refusal::Full:
      return fail(Code::DiskFull, "ask", "hub");
    case sync::Refusal::BadCode:
      return fail(Error{Code::Unknown, "ask", "invitation", {}});
    default:
      return fail(Error{Code::Busy, "ask", "hub", {{"cause", why->type}}});
  }
}

}  // namespace jambline::exchange
