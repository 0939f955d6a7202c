// sync/problem.h: why a hub refuses, as an RFC 9457 problem document.
//
// Shape:   application/problem+json: type ("/problems/fork"), title, status, and what the kind
//          adds (have_seq, have_hash, epoch, limit). Never anything of a payload or a person.
// Source:  RFC 9457 section 3; PROTOCOL.md section 8 lists every type.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "base/describe.h"
#include "base/error.h"
#include "seal/receipt.h"
#include "sync/http.h"

namespace jambline::sync {

enum class Refusal : std::uint8_t {
  BadRequest,       // 400
  NoSession,        // 401: say who you are, again
  NotAdmitted,      // 403: the device is no member of the shop (yet)
  Revoked,          // 403: it was, until its cut
  NotAManager,      // 403
  BadCode,          // 403: the code is unknown, over, or another device's
  NotHere,          // 404
  NoSuchMethod,     // 405
  Fork,             // 409: have_seq, have_hash: another entry stands here
  Gap,              // 409: have_seq, have_hash: something is missing before
  OtherEpoch,       // 409: epoch: the hub was restored
  OtherOffset,      // 409: limit = the offset that it is at
  Gone,             // 410
  OtherTusVersion,  // 412
  TooLarge,         // 413: limit
  OtherMediaType,   // 415
  BadEntry,         // 422: an entry's chain, signature, shop or hash
  OtherBytes,       // 422: the whole file is not what its hash says; begin again
  TooMany,          // 429: retry_s
  HeaderTooLarge,   // 431
  Failed,           // 500
  Busy,             // 503: retry_s
  Full,             // 507: the hub's disk
};

struct Problem {
  std::string type;
  std::string title;
  int status{};
  std::optional<std::string> detail;  // a word for who looks into it, not for people
  std::optional<std::uint64_t> have_seq;
  std::optional<Hash> have_hash;
  std::optional<seal::Epoch> epoch;
  std::optional<std::uint64_t> limit;
  std::optional<int> retry_s;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "type"}, self.type);
    visit(Field{.name = "title"}, self.title);
    visit(Field{.name = "status", .min = 400, .max = 599}, self.status);
    visit(Field{.name = "detail"}, self.detail);
    visit(Field{.name = "have_seq", .min = 0, .max = 9.3e18}, self.have_seq);
    visit(Field{.name = "have_hash"}, self.have_hash);
    visit(Field{.name = "epoch"}, self.epoch);
    visit(Field{.name = "limit", .min = 0, .max = 1.9e19}, self.limit);
    visit(Field{.name = "retry_s", .unit = "s", .min = 0, .max = 86400}, self.retry_s);
  }
};

Problem problem(Refusal refusal, std::string detail = {});
std::optional<Refusal> refusal_of(const Problem& problem);
Response response_of(const Problem& problem);
// Nothing when the answer is no problem document.
std::optional<Problem> problem_of(const Response& response);

// What a storage error means to who asked.
Problem problem_of(const Error& error);

inline constexpr std::string_view problem_media_type = "application/problem+json";

}  // namespace jambline::sync
