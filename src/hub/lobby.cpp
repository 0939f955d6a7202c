#include "hub/lobby.h"

#include "base/json.h"
#include "seal/digest.h"
#include "sync/limits.h"
#include "sync/page.h"
#include "sync/target.h"

namespace jambline::hub {

using sync::problem;
using sync::Refusal;
using sync::Response;
using sync::response_of;

namespace {
class KnownAnswer final : public sync::Handling {
 public:
  explicit KnownAnswer(Response response) : response_(std::move(response)) {}
  std::uint64_t most_body_bytes() const override { return 0; }
  std::optional<Response> take(std::span<const std::uint8_t>) override { return response_; }
  sync::Outcome finish() override { return response_; }

 private:
  Response response_;
};

class SmallBody final : public sync::Handling {
 public:
  using Then = std::function<Response(const std::string& body)>;
  explicit SmallBody(Then then) : then_(std::move(then)) {}
  std::uint64_t most_body_bytes() const override { return sync::most_json_bytes; }
  std::optional<Response> take(std::span<const std::uint8_t> piece) override {
    if (body_.size() + piece.size() > sync::most_json_bytes)
      return response_of(problem(Refusal::TooLarge));
    body_.append(reinterpret_cast<const char*>(piece.data()), piece.size());
    return std::nullopt;
  }
  sync::Outcome finish() override { return then_(body_); }

 private:
  Then then_;
  std::string body_;
};

std::unique_ptr<sync::Handling> at_once(Refusal refusal) {
  return std::make_unique<KnownAnswer>(response_of(problem(refusal)));
}
}  // namespace

std::unique_ptr<sync::Handling> Lobby::begin(const sync::Request& head,
                                             std::optional<std::uint64_t> body_bytes,
                                             const std::string& peer) {
  const auto target = sync::parse_target(head.target);
  if (!target) return at_once(Refusal::NotHere);
  if (!rates_.take(peer, static_cast<std::int64_t>(parts_.clock.now().since_boot_ms))) {
    auto why = problem(Refusal::TooMany);
    why.retry_s = 1;
    return std::make_unique<KnownAnswer>(response_of(why));
  }
  const std::string_view coding = head.header("Content-Encoding");
  if (!coding.empty() && !sync::same_name(coding, "identity"))
    return at_once(Refusal::OtherMediaType);
  if (target->path == sync::Path::About) {
    if (head.method != sync::Method::Get) return at_once(Refusal::NoSuchMethod);
    return std::make_unique<KnownAnswer>(
        Response{200,
                 {{"Content-Type", std::string(sync::json_media_type)}},
                 to_json(sync::About{sync::protocol_version, parts_.key.key(), parts_.hub_name})});
  }
  if (target->path != sync::Path::Enrol || head.method != sync::Method::Post)
    return at_once(Refusal::NotHere);
  if (body_bytes && *body_bytes > sync::most_json_bytes) return at_once(Refusal::TooLarge);
  return std::make_unique<SmallBody>(
      [this, head, shop = target->shop, peer](const std::string& body) {
        Response response = enrol(head, shop, body, peer);
        if (parts_.note && response.status >= 400) {
          const auto why = sync::problem_of(response);
          parts_.note({parts_.clock.now().wall_ms,
                       "enrol",
                       {},
                       {},
                       response.status,
                       0,
                       0,
                       why ? why->type : std::string()});
        }
        return response;
      });
}

Response Lobby::enrol(const sync::Request& head, const ShopId& shop, const std::string& body,
                      const std::string& peer) {
  const auto ask = from_json<sync::EnrolAsk>(body);
  if (!ask) return response_of(problem(Refusal::BadRequest, ask.error().subject));
  if (parts_.is_here(shop)) {  // it came while this request was on its way
    auto why = problem(Refusal::Busy);
    why.retry_s = 1;
    return response_of(why);
  }
  if (!shop || !ask->brings_shop || !ask->code) return response_of(problem(Refusal::BadCode));
  const auto invited = expected_.find(sync::code_words(ask->code), parts_.clock.now().wall_ms);
  if (!invited) return response_of(problem(Refusal::BadCode));
  if (ask->device_name.empty() || ask->device_name.size() > sync::most_name_bytes)
    return response_of(problem(Refusal::BadRequest, "device_name"));
  const Hash words = sync::enrol_words(shop, parts_.key.key(), *ask);
  if (!seal::verify(ask->device_key, words.bytes, ask->proof))
    return response_of(problem(Refusal::BadRequest, "proof"));

  const auto made = parts_.make(shop, *invited);
  if (!made) return response_of(sync::problem_of(made.error()));
  // The code stands in the shop now. If this file cannot be written it goes at the next start.
  if (const Status dropped = expected_.drop(invited->code); !dropped && parts_.note)
    parts_.note({parts_.clock.now().wall_ms,
                 "expected",
                 shop.hex(),
                 {},
                 0,
                 0,
                 0,
                 std::string(code_name(dropped.error().code))});
  const auto handling = (*made)->begin(head, body.size(), peer);
  const auto early = handling->take(seal::bytes_of(body));
  Response response = early ? *early : std::get<Response>(handling->finish());
  parts_.welcome(*made);
  return response;
}

}  // namespace jambline::hub
