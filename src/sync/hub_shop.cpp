#include "sync/hub_shop.h"

#include <algorithm>
#include <array>

#include "sync/handlings.h"
#include "sync/limits.h"

namespace jambline::sync {

namespace {
enum class Who : std::uint8_t { Anybody, Member, Manager };

struct Rule {
  Path path;
  Method method;
  Who who;
  std::uint64_t most_bytes;
};
constexpr auto rules = std::to_array<Rule>({
    {Path::AskChallenge, Method::Post, Who::Anybody, most_json_bytes},
    {Path::Session, Method::Post, Who::Anybody, most_json_bytes},
    {Path::Enrol, Method::Post, Who::Anybody, most_json_bytes},
    {Path::EnrolState, Method::Get, Who::Anybody, 0},
    {Path::Files, Method::Options, Who::Anybody, 0},
    {Path::Log, Method::Post, Who::Member, seal::most_pack_bytes},
    {Path::Pull, Method::Post, Who::Member, most_json_bytes},
    {Path::Devices, Method::Get, Who::Member, 0},
    {Path::Have, Method::Post, Who::Member, most_have_bytes},
    {Path::Files, Method::Post, Who::Member, 0},
    {Path::File, Method::Head, Who::Member, 0},
    {Path::File, Method::Patch, Who::Member, most_blob_bytes},
    {Path::File, Method::Delete, Who::Member, 0},
    {Path::Blob, Method::Get, Who::Member, 0},
    {Path::Blob, Method::Head, Who::Member, 0},
    {Path::Invite, Method::Post, Who::Manager, 0},
    {Path::Pending, Method::Get, Who::Manager, 0},
    {Path::Refuse, Method::Post, Who::Manager, 0},
    {Path::Quarantine, Method::Get, Who::Manager, 0},
    {Path::Kept, Method::Get, Who::Manager, 0},
    {Path::Settle, Method::Post, Who::Manager, 0},
});

std::string_view event_of(Path path) {
  switch (path) {
    case Path::Log:
      return "push";
    case Path::Pull:
      return "pull";
    case Path::Files:
    case Path::File:
      return "upload";
    case Path::Blob:
      return "download";
    case Path::Enrol:
    case Path::EnrolState:
      return "enrol";
    case Path::AskChallenge:
    case Path::Session:
      return "session";
    default:
      return "manage";
  }
}
}  // namespace

HubShop::HubShop(Parts parts) : parts_(std::move(parts)) {}
HubShop::~HubShop() = default;

Result<std::unique_ptr<HubShop>> HubShop::open(Parts parts) {
  std::unique_ptr<HubShop> shop(new HubShop(std::move(parts)));
  JAMBLINE_TRY(shop->load());
  return shop;
}

Status HubShop::load() {
  JAMBLINE_ASSIGN(const auto membership, parts_.storage.membership());
  for (const auto& entry : membership) (void)members_.apply(entry);
  JAMBLINE_ASSIGN(const auto heads, parts_.storage.heads());
  for (const Head& head : heads) heads_[head.device] = head;
  JAMBLINE_ASSIGN(invited_, parts_.storage.invited());
  return {};
}

std::int64_t HubShop::forward_ms() const {
  return static_cast<std::int64_t>(parts_.clock.now().since_boot_ms);
}

// Who brings its shop is known by the key that used the code, until the shop's entries are here.
const seal::Key* HubShop::key_of(const DeviceId& device) const {
  if (const auto* member = members_.find(device)) return &member->key;
  if (members_.shop()) return nullptr;
  for (const Invited& invited : invited_)
    if (invited.used_by && invited.used_by->brings_shop && !invited.refused &&
        seal::device_of(invited.used_by->device_key) == device)
      return &invited.used_by->device_key;
  return nullptr;
}

HubShop::Session* HubShop::session_of(const Request& head) {
  constexpr std::string_view scheme = "Bearer ";
  std::string_view token = head.header("Authorization");
  if (token.substr(0, scheme.size()) != scheme) return nullptr;
  const auto named = Token::parse(token.substr(scheme.size()));
  if (!named) return nullptr;
  const auto found = sessions_.find(*named);
  if (found == sessions_.end()) return nullptr;
  if (found->second.until_ms < forward_ms()) {
    sessions_.erase(found);
    return nullptr;
  }
  Session& session = found->second;
  const seal::Member* member = members_.find(session.device);
  session.revoked = member && member->cut.has_value();
  session.manager = member && member->manager && !session.revoked;
  return &session;
}

void HubShop::note(std::string event, const DeviceId& device, const Response& response,
                   std::uint64_t entries, std::uint64_t bytes) {
  if (!parts_.note) return;
  HubEvent out{
      wall_ms(), std::move(event), parts_.storage.shop().hex(), {}, response.status, entries, bytes,
      {}};
  if (device) out.device = device.hex();
  if (const auto why = problem_of(response)) out.cause = why->type;
  parts_.note(out);
}

std::unique_ptr<Handling> HubShop::begin(const Request& head, const Target& target,
                                         std::optional<std::uint64_t> body_bytes,
                                         const std::string& peer) {
  auto handling = begin_known(head, target, body_bytes, peer);
  if (auto* early = dynamic_cast<Answered*>(handling.get())) {
    const Outcome outcome = early->finish();
    const auto& response = std::get<Response>(outcome);
    if (response.status >= 400) note(std::string(event_of(target.path)), {}, response);
  }
  return handling;
}

std::unique_ptr<Handling> HubShop::begin_known(const Request& head, const Target& target,
                                               std::optional<std::uint64_t> body_bytes,
                                               const std::string& peer) {
  const Rule* rule = nullptr;
  bool other_method = false;
  for (const Rule& one : rules) {
    if (one.path != target.path) continue;
    if (one.method == head.method) rule = &one;
    other_method = true;
  }
  if (!rule) return refused(other_method ? Refusal::NoSuchMethod : Refusal::NotHere);
  const std::string_view coding = head.header("Content-Encoding");
  if (!coding.empty() && !same_name(coding, "identity")) return refused(Refusal::OtherMediaType);
  if (body_bytes && *body_bytes > rule->most_bytes) {
    Problem out = problem(Refusal::TooLarge);
    out.limit = rule->most_bytes;
    return answered(response_of(out));
  }
  const auto too_many = [] {
    Problem out = problem(Refusal::TooMany);
    out.retry_s = 1;
    return answered(response_of(out));
  };
  Session* known = session_of(head);
  if (!known && !stranger_rates_.take(peer, forward_ms())) return too_many();
  if (known && !device_rates_.take(known->device, forward_ms())) return too_many();
  if (rule->who != Who::Anybody) {
    if (!known) return refused(Refusal::NoSession);
    if (!key_of(known->device)) return refused(Refusal::NotAdmitted);
    const bool own_log = target.path == Path::Log && target.device == known->device;
    if (known->revoked && !own_log) return refused(Refusal::Revoked);
    if (rule->who == Who::Manager && !known->manager) return refused(Refusal::NotAManager);
  }

  const auto whole = [&](auto then) {
    return std::make_unique<Whole>(rule->most_bytes, Whole::Then(std::move(then)));
  };
  const auto noted = [this, path = target.path](const DeviceId& device, Response response,
                                                std::size_t bytes = 0) {
    if (response.status >= 400 || path != Path::AskChallenge)
      note(std::string(event_of(path)), device, response, 0, bytes);
    return response;
  };
  const DeviceId who = known ? known->device : DeviceId{};
  switch (target.path) {
    case Path::AskChallenge:
      return whole([=, this](const std::string& body) { return noted(who, challenge(body)); });
    case Path::Session:
      return whole([=, this](const std::string& body) { return noted(who, session(body)); });
    case Path::Enrol: {
      const std::optional<Session> member = known ? std::optional(*known) : std::nullopt;
      return whole([=, this](const std::string& body) {
        return noted(who, enrol(body, member ? &*member : nullptr));
      });
    }
    case Path::EnrolState:
      return answered(enrol_state(target.device));
    case Path::Invite:
      return answered(noted(who, invite_answer()));
    case Path::Pending:
      return answered(pending_answer());
    case Path::Refuse:
      return answered(noted(who, refuse_answer(target.device)));
    case Path::Devices:
      return answered(devices_answer());
    case Path::Quarantine:
      return answered(quarantine_answer());
    case Path::Kept:
      return answered(kept_answer(target.device, target.number));
    case Path::Settle:
      return answered(noted(who, settle_answer(target.device, target.number)));
    case Path::Have:
      return whole([this](const std::string& body) { return have_answer(body); });
    case Path::Log:
      return whole([session = *known, target, this](const std::string& body) {
        return push(session, target.device, target.number, body);
      });
    case Path::Pull:
      return whole([session = *known, began = std::optional<std::int64_t>(),
                    this](const std::string& body) mutable -> Outcome {
        const auto ask = from_json<PullAsk>(body);
        if (!ask) return response_of(problem(Refusal::BadRequest, ask.error().subject));
        if (ask->heads.size() > most_heads) return response_of(problem(Refusal::TooLarge));
        if (!began) began = forward_ms();
        const std::int64_t until = *began + std::int64_t{1000} * ask->wait_s;
        if (auto response = pull(session, *ask, forward_ms() >= until)) return *response;
        return Waiting{until - forward_ms()};
      });
    default:
      return begin_files(head, target);
  }
}

Response HubShop::challenge(const std::string& body) {
  const auto ask = from_json<ChallengeAsk>(body);
  if (!ask) return response_of(problem(Refusal::BadRequest, ask.error().subject));
  if (!key_of(ask->device)) return response_of(problem(Refusal::NotAdmitted));
  const std::int64_t now = forward_ms();
  if (challenges_.size() >= most_challenges && look_through_challenges_.due(now))
    std::erase_if(challenges_, [&](const auto& one) { return one.second.second < now; });
  if (challenges_.size() >= most_challenges) return response_of(problem(Refusal::Busy));
  const auto made = parts_.random.make<Challenge>();
  challenges_[made] = {ask->device, now + challenge_lives_ms};
  return json_answer(ChallengeAnswer{made});
}

Response HubShop::session(const std::string& body) {
  const auto ask = from_json<SessionAsk>(body);
  if (!ask) return response_of(problem(Refusal::BadRequest, ask.error().subject));
  const std::int64_t now = forward_ms();
  const auto found = challenges_.find(ask->challenge);
  const bool good = found != challenges_.end() && found->second.first == ask->device &&
                    found->second.second >= now;
  if (found != challenges_.end()) challenges_.erase(found);  // one answer, right or wrong
  const seal::Key* key = key_of(ask->device);
  if (!key) return response_of(problem(Refusal::NotAdmitted));
  const Hash words =
      session_words(parts_.storage.shop(), parts_.key.key(), ask->device, ask->challenge);
  if (!good || !seal::verify(*key, words.bytes, ask->proof))
    return response_of(problem(Refusal::NoSession));
  std::erase_if(sessions_, [&](const auto& one) { return one.second.until_ms < now; });
  const auto token = parts_.random.make<Token>();
  const seal::Member* member = members_.find(ask->device);
  const bool revoked = member && member->cut.has_value();
  sessions_[token] = {ask->device, now + token_lives_ms, revoked,
                      member && member->manager && !revoked};
  if (auto seen = parts_.storage.note_seen(ask->device, wall_ms()); !seen)
    return response_of(problem_of(seen.error()));
  SessionAnswer out{token,
                    parts_.storage.epoch(),
                    parts_.storage.hub_seq(),
                    wall_ms(),
                    revoked,
                    parts_.storage.blob_mark(),
                    {}};
  for (const auto& [device, head] : heads_) out.heads.push_back(head);
  return json_answer(out);
}

Response HubShop::enrol(const std::string& body, const Session* member) {
  const auto ask = from_json<EnrolAsk>(body);
  if (!ask) return response_of(problem(Refusal::BadRequest, ask.error().subject));
  if (ask->device_name.empty() || ask->device_name.size() > most_name_bytes)
    return response_of(problem(Refusal::BadRequest, "device_name"));
  const Hash words = enrol_words(parts_.storage.shop(), parts_.key.key(), *ask);
  if (!seal::verify(ask->device_key, words.bytes, ask->proof))
    return response_of(problem(Refusal::BadRequest, "proof"));
  const DeviceId device = seal::device_of(ask->device_key);
  if (members_.find(device))
    return json_answer(EnrolAnswer{EnrolState::Admitted, {}, parts_.hub_name});

  const std::int64_t now = wall_ms();
  const Hash code = ask->code ? code_words(ask->code) : Hash{ask->device_key.bytes};
  Invited* found = nullptr;
  for (Invited& one : invited_) {
    if (one.used_by && one.used_by->device_key == ask->device_key) found = &one;
    if (!found && ask->code && one.code == code) found = &one;
  }
  if (!found && !ask->code &&
      member) {  // a member whose folder was copied asks for a key of its own
    invited_.push_back({code, now + code_lives_ms, false, {}, false});
    found = &invited_.back();
  }
  if (!found || found->for_a_shop != ask->brings_shop)
    return response_of(problem(Refusal::BadCode));
  if (found->refused) return json_answer(EnrolAnswer{EnrolState::Refused, {}, parts_.hub_name});
  if (found->used_by && found->used_by->device_key != ask->device_key)
    return response_of(problem(Refusal::BadCode));
  if (!found->used_by) {
    if (found->until_ms < now) return response_of(problem(Refusal::BadCode));
    const auto waiting = std::count_if(invited_.begin(), invited_.end(), [](const Invited& one) {
      return one.used_by && !one.refused;
    });
    if (static_cast<std::size_t>(waiting) >= most_pending)
      return response_of(problem(Refusal::Busy));
    found->used_by = Pending{ask->device_key, ask->device_name, parts_.random.make<Nonce>(), now,
                             ask->brings_shop};
    if (auto kept = parts_.storage.put_invited(*found); !kept) {
      found->used_by.reset();
      return response_of(problem_of(kept.error()));
    }
    ++changes_;
  }
  return json_answer(EnrolAnswer{EnrolState::Waiting, found->used_by->nonce, parts_.hub_name});
}

Response HubShop::enrol_state(const DeviceId& device) {
  EnrolAnswer out{EnrolState::Unknown, {}, parts_.hub_name};
  if (members_.find(device)) out.state = EnrolState::Admitted;
  for (const Invited& one : invited_)
    if (out.state == EnrolState::Unknown && one.used_by &&
        seal::device_of(one.used_by->device_key) == device) {
      out.state = one.refused ? EnrolState::Refused : EnrolState::Waiting;
      out.nonce = one.used_by->nonce;
    }
  return json_answer(out);
}

Result<InviteCode> HubShop::invite(bool for_a_shop, std::int64_t lives_ms) {
  const auto code = parts_.random.make<InviteCode>();
  const Invited invited{code_words(code), wall_ms() + lives_ms, for_a_shop, {}, false};
  // Those that nobody used and whose time is over go.
  for (auto one = invited_.begin(); one != invited_.end();) {
    const bool over = !one->used_by && one->until_ms < wall_ms();
    if (over) JAMBLINE_TRY(parts_.storage.drop_invited(one->code));
    one = over ? invited_.erase(one) : std::next(one);
  }
  JAMBLINE_TRY(parts_.storage.put_invited(invited));
  invited_.push_back(invited);
  return code;
}

Response HubShop::invite_answer() {
  const auto code = invite(false, code_lives_ms);
  if (!code) return response_of(problem_of(code.error()));
  return json_answer(InviteAnswer{*code, wall_ms() + code_lives_ms});
}

Result<std::vector<Pending>> HubShop::pending() {
  std::vector<Pending> out;
  for (const Invited& one : invited_)
    if (one.used_by && !one.refused && !members_.find(seal::device_of(one.used_by->device_key)) &&
        !(one.used_by->brings_shop && members_.shop()))
      out.push_back(*one.used_by);
  return out;
}

Response HubShop::pending_answer() {
  const auto all = pending();
  if (!all) return response_of(problem_of(all.error()));
  return json_answer(PendingAnswer{*all});
}

Status HubShop::refuse(const DeviceId& device) {
  for (Invited& one : invited_) {
    if (!one.used_by || seal::device_of(one.used_by->device_key) != device) continue;
    Invited changed = one;
    changed.refused = true;
    JAMBLINE_TRY(parts_.storage.put_invited(changed));
    one = changed;
    return {};
  }
  return fail(Code::NoSuchFile, "refuse", "device");
}

Response HubShop::refuse_answer(const DeviceId& device) {
  if (const Status done = refuse(device); !done) return response_of(problem_of(done.error()));
  return {204, {}, {}};
}

Response HubShop::devices_answer() {
  const auto seen = parts_.storage.seen();
  if (!seen) return response_of(problem_of(seen.error()));
  return json_answer(SeenAnswer{wall_ms(), *seen});
}

Response HubShop::quarantine_answer() {
  const auto kept = parts_.storage.quarantine();
  if (!kept) return response_of(problem_of(kept.error()));
  return json_answer(QuarantineAnswer{*kept});
}

Response HubShop::kept_answer(const DeviceId& device, std::uint64_t from) {
  std::string pack;
  std::size_t count = 0;
  const Status read = parts_.storage.read_apart(device, from, [&](std::string_view bytes) {
    if (count == seal::most_pack_entries || pack.size() + 4 + bytes.size() > seal::most_pack_bytes)
      return false;
    for (int shift = 24; shift >= 0; shift -= 8)
      pack.push_back(static_cast<char>(bytes.size() >> static_cast<unsigned>(shift)));
    pack += bytes;
    ++count;
    return true;
  });
  if (!read) return response_of(problem_of(read.error()));
  return {200, {{"Content-Type", std::string(pack_media_type)}}, std::move(pack)};
}

Response HubShop::settle_answer(const DeviceId& device, std::uint64_t through) {
  if (const Status done = parts_.storage.settle(device, through); !done)
    return response_of(problem_of(done.error()));
  return {204, {}, {}};
}

}  // namespace jambline::sync
