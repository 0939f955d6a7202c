#include "sync/problem.h"

#include <array>

#include "base/json.h"

namespace jambline::sync {

namespace {
struct Kind {
  std::string_view type;
  std::string_view title;
  int status;
};

constexpr std::array<Kind, 23> kinds{{
    {"/problems/bad-request", "The request does not fit the protocol", 400},
    {"/problems/no-session", "Nobody is signed in with this token", 401},
    {"/problems/not-admitted", "The device is no member of this shop", 403},
    {"/problems/revoked", "The device was revoked", 403},
    {"/problems/not-a-manager", "Only a manager's device may do this", 403},
    {"/problems/bad-code", "The code is unknown, used or over", 403},
    {"/problems/not-here", "There is nothing under this path", 404},
    {"/problems/no-such-method", "This path does not take this method", 405},
    {"/problems/fork", "Another entry stands at this place", 409},
    {"/problems/gap", "An entry before these is missing", 409},
    {"/problems/other-epoch", "The hub was restored from a backup", 409},
    {"/problems/other-offset", "The upload is at another offset", 409},
    {"/problems/gone", "The upload is not here any more", 410},
    {"/problems/other-tus-version", "This version of tus is not spoken here", 412},
    {"/problems/too-large", "This is over the limit", 413},
    {"/problems/other-media-type", "This media type or coding is not taken", 415},
    {"/problems/bad-entry", "An entry does not pass the checks", 422},
    {"/problems/other-bytes", "The bytes are not those that their hash names", 422},
    {"/problems/too-many", "Too many requests", 429},
    {"/problems/header-too-large", "The header is over the limit", 431},
    {"/problems/failed", "The hub failed", 500},
    {"/problems/busy", "The hub is busy", 503},
    {"/problems/full", "The disk of the hub is full", 507},
}};
static_assert(static_cast<std::size_t>(Refusal::Full) + 1 == kinds.size());
}  // namespace

Problem problem(Refusal refusal, std::string detail) {
  const Kind& kind = kinds.at(static_cast<std::size_t>(refusal));
  Problem out;
  out.type = kind.type;
  out.title = kind.title;
  out.status = kind.status;
  if (!detail.empty()) out.detail = std::move(detail);
  return out;
}

std::optional<Refusal> refusal_of(const Problem& problem) {
  for (std::size_t i = 0; i < kinds.size(); ++i)
    if (kinds[i].type == problem.type) return static_cast<Refusal>(i);
  return std::nullopt;
}

Response response_of(const Problem& problem) {
  Response out{
      problem.status, {{"Content-Type", std::string(problem_media_type)}}, to_json(problem)};
  if (problem.retry_s) out.headers.push_back({"Retry-After", std::to_string(*problem.retry_s)});
  return out;
}

std::optional<Problem> problem_of(const Response& response) {
  if (response.status < 400 || response.header("Content-Type") != problem_media_type)
    return std::nullopt;
  auto out = from_json<Problem>(response.body);
  if (!out || out->status != response.status) return std::nullopt;
  return std::move(*out);
}

Problem problem_of(const Error& error) {
  switch (error.code) {
    case Code::DiskFull:
      return problem(Refusal::Full);
    case Code::Busy: {
      Problem out = problem(Refusal::Busy);
      out.retry_s = 1;
      return out;
    }
    case Code::NoSuchFile:
      return problem(Refusal::NotHere);
    case Code::BadHash:
      return problem(Refusal::OtherBytes);
    case Code::TooLarge:
      return problem(Refusal::TooLarge);
    default:
      return problem(Refusal::Failed, std::string(code_name(error.code)));
  }
}

}  // namespace jambline::sync
