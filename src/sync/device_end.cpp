#include "sync/device_end.h"

#include <algorithm>
#include <limits>

#include "base/json.h"
#include "seal/digest.h"
#include "sync/limits.h"
#include "sync/target.h"
#include "sync/tus.h"

namespace jambline::sync {

namespace {
constexpr std::int64_t never_ms = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t look_for_admission_ms = 3'000;
constexpr std::int64_t before_token_ends_ms = 60'000;

Error wrong_hub(std::string cause) {
  return Error{Code::WrongServer, "sync", "hub", {{"cause", std::move(cause)}}};
}
}  // namespace

DeviceEnd::DeviceEnd(const Parts& parts)
    : parts_(parts), own_(parts_.key.device()), random_(parts_.seed) {}
DeviceEnd::~DeviceEnd() = default;

Request DeviceEnd::request(Path path, Method method, std::string body,
                           std::string_view media_type) const {
  Target target;
  target.path = path;
  target.shop = parts_.shop;
  Request out;
  out.method = method;
  out.target = target_of(target);
  if (!media_type.empty()) out.headers.push_back({"Content-Type", std::string(media_type)});
  if (session_) out.headers.push_back({"Authorization", "Bearer " + session_->token.hex()});
  out.body = std::move(body);
  return out;
}

void DeviceEnd::local_changed() {
  of(Lane::Push).not_before_ms =
      std::min<std::int64_t>(of(Lane::Push).not_before_ms, state_.again_ms);
}

void DeviceEnd::try_now() {
  state_.again_ms = 0;
  barred_.clear();
  for (LaneState& lane : lanes_) lane.not_before_ms = 0;
}

std::optional<Token> DeviceEnd::token(std::int64_t now_ms) {
  if (!session_ || state_.revoked || session_->until_ms <= now_ms || state_.again_ms > now_ms)
    return std::nullopt;
  return session_->token;
}

void DeviceEnd::no_contact(const Error& error, std::int64_t now_ms) {
  failed(of(Lane::Push), error, now_ms);
}

void DeviceEnd::contact() {
  state_.in_contact = true;
  if (state_.again_ms == 0) return;
  state_.again_ms = 0;
  of(Lane::Push).not_before_ms = 0;
  of(Lane::Push).back_off.good();
}

DeviceEnd::Next DeviceEnd::next(Lane which, std::int64_t now_ms) {
  LaneState& lane = of(which);
  if (lane.asked != Asked::Nothing) return {std::nullopt, never_ms};  // its answer is to come
  const std::int64_t not_before = std::max(lane.not_before_ms, state_.again_ms);
  if (now_ms < not_before) return {std::nullopt, not_before};
  if (session_ && session_->until_ms <= now_ms) session_.reset();
  if (!session_) return ask_for_session(which, now_ms);
  return which == Lane::Push ? ask_push(now_ms) : ask_pull(now_ms);
}

DeviceEnd::Next DeviceEnd::ask_for_session(Lane which, std::int64_t) {
  if (making_session_ && *making_session_ != which) return {std::nullopt, never_ms};
  making_session_ = which;
  if (challenge_) {
    of(which).asked = Asked::ForSession;
    const Hash words = session_words(parts_.shop, parts_.hub, own_, *challenge_);
    const SessionAsk ask{own_, *challenge_, parts_.key.sign(words)};
    challenge_.reset();
    return {Ask{request(Path::Session, Method::Post, to_json(ask), json_media_type)}, 0};
  }
  of(which).asked = Asked::ForChallenge;
  return {
      Ask{request(Path::AskChallenge, Method::Post, to_json(ChallengeAsk{own_}), json_media_type)},
      0};
}

DeviceEnd::Next DeviceEnd::ask_push(std::int64_t now_ms) {
  LaneState& lane = of(Lane::Push);
  if (state_.tail_missing) return {std::nullopt, never_ms};
  const auto heads = parts_.store.heads();
  if (!heads) {
    failed(lane, heads.error(), now_ms);
    return {std::nullopt, lane.not_before_ms};
  }
  // The own ones first.
  std::vector<Head> order = *heads;
  std::stable_sort(order.begin(), order.end(), [this](const Head& a, const Head& b) {
    return (a.device == own_) > (b.device == own_);
  });
  for (const Head& head : order) {
    if (barred_.count(head.device)) continue;
    const bool forked_here = head.device == own_ && state_.fork_common_seq;
    if (forked_here && fork_told_) continue;
    if (state_.revoked && head.device != own_) continue;
    const auto there = session_->heads.find(head.device);
    std::uint64_t have = there == session_->heads.end() ? 0 : there->second.seq;
    if (head.device == own_) have = std::max(have, state_.apart_through);
    if (forked_here) have = *state_.fork_common_seq;  // once more, so that the hub knows of it
    if (head.seq <= have) continue;
    auto run = parts_.store.run_from(head.device, have + 1);
    if (!run) {
      failed(lane, run.error(), now_ms);
      return {std::nullopt, lane.not_before_ms};
    }
    lane.asked = Asked::Push;
    lane.pushed = head.device;
    lane.pushed_through = run->last_seq;
    Target target;
    target.path = Path::Log;
    target.shop = parts_.shop;
    target.device = head.device;
    target.number = have + 1;
    Ask ask{request(Path::Log, Method::Post, std::move(run->pack), pack_media_type)};
    ask.request.target = target_of(target);
    return {std::move(ask), 0};
  }
  return {std::nullopt, never_ms};
}

std::optional<DeviceEnd::Cursor> DeviceEnd::read_cursor() {
  const auto text = parts_.store.cursor();
  if (!text || !*text) return std::nullopt;
  const auto colon = (*text)->find(':');
  if (colon == std::string::npos) return std::nullopt;
  Cursor out;
  const auto after = decimal(std::string_view(**text).substr(colon + 1));
  if (!from_hex(std::string_view(**text).substr(0, colon), out.epoch.bytes) || !after)
    return std::nullopt;
  out.after = *after;
  return out;
}

DeviceEnd::Next DeviceEnd::ask_pull(std::int64_t now_ms) {
  LaneState& lane = of(Lane::Pull);
  if (state_.revoked) return {std::nullopt, never_ms};
  if (cursor_ && cursor_->epoch != session_->epoch) {
    state_.hub_was_restored = true;
    cursor_.reset();
  }
  if (!cursor_) {
    cursor_ = Cursor{session_->epoch, 0};
  }
  if (cursor_->after == 0) by_heads_ = true;
  const auto heads = parts_.store.heads();
  if (!heads) {
    failed(lane, heads.error(), now_ms);
    return {std::nullopt, lane.not_before_ms};
  }
  PullAsk ask;
  ask.epoch = cursor_->epoch;
  ask.after = cursor_->after;
  for (const Head& head : *heads)
    if (by_heads_ || head.device == own_) ask.heads.push_back(head);
  if (ask.heads.size() > most_heads) ask.heads.resize(most_heads);
  ask.wait_s = state_.caught_up ? longest_poll_s : 0;
  lane.asked = Asked::Pull;
  return {Ask{request(Path::Pull, Method::Post, to_json(ask), json_media_type),
              std::int64_t{1000} * ask.wait_s},
          0};
}

void DeviceEnd::answered(Lane which, const Result<Response>& answer, std::int64_t now_ms) {
  LaneState& lane = of(which);
  const Asked asked = std::exchange(lane.asked, Asked::Nothing);
  if (asked == Asked::Nothing) return;
  if (!answer) {
    if (asked == Asked::ForChallenge || asked == Asked::ForSession) making_session_.reset();
    return failed(lane, answer.error(), now_ms);
  }
  if (answer->status >= 300) {
    if (asked == Asked::ForChallenge || asked == Asked::ForSession) making_session_.reset();
    return refused(lane, *answer, now_ms);
  }
  switch (asked) {
    case Asked::ForChallenge:
    case Asked::ForSession:
      return challenged(lane, *answer, now_ms);
    case Asked::Push:
      return pushed(lane, *answer, now_ms);
    case Asked::Pull:
      return pulled(lane, *answer, now_ms);
    case Asked::Nothing:
      return;
  }
}

void DeviceEnd::went_well(LaneState& lane) {
  state_.in_contact = true;
  state_.trouble.reset();
  state_.again_ms = 0;
  lane.not_before_ms = 0;
  lane.back_off.good();
}

void DeviceEnd::failed(LaneState& lane, Error error, std::int64_t now_ms,
                       std::int64_t at_least_ms) {
  const bool nobody = error.code == Code::NoContact || error.code == Code::WrongServer;
  lane.not_before_ms = now_ms + lane.back_off.next_ms(random_, at_least_ms);
  if (nobody) {
    state_.in_contact = false;
    state_.caught_up = false;
    state_.again_ms = lane.not_before_ms;
  }
  state_.trouble = std::move(error);
}

// The two steps of saying who we are.
void DeviceEnd::challenged(LaneState& lane, const Response& response, std::int64_t now_ms) {
  if (const auto answer = from_json<ChallengeAnswer>(response.body)) {
    challenge_ = answer->challenge;
    lane.not_before_ms = 0;
    return;
  }
  making_session_.reset();
  const auto answer = from_json<SessionAnswer>(response.body);
  if (!answer) return failed(lane, wrong_hub("session"), now_ms);
  session_opened(*answer, now_ms);
  went_well(lane);
}

void DeviceEnd::session_opened(const SessionAnswer& answer, std::int64_t now_ms) {
  session_ = Session{answer.token,
                     answer.epoch,
                     answer.hub_seq,
                     now_ms + token_lives_ms - before_token_ends_ms,
                     {}};
  for (const Head& head : answer.heads) session_->heads[head.device] = head;
  state_.not_admitted = false;
  state_.revoked = answer.revoked;
  state_.caught_up = false;
  looked_by_heads_ = false;
  state_.blob_mark = answer.blob_mark;
  barred_.clear();
  ++state_.sessions;
  // A hub that was put back may have lost what it kept apart, and its heads say nothing of that:
  // it is sent once more, and kept once.
  state_.apart_through = 0;
  if (!cursor_read_) {
    cursor_ = read_cursor();
    cursor_read_ = true;
  }
  if (cursor_ && cursor_->epoch == answer.epoch && cursor_->after > answer.hub_seq) {
    state_.hub_was_restored = true;  // its count went back, and it says nothing of it
    cursor_.reset();                 // what we send now gives numbers out again
  }
  look_at_receipts();
  look_at_own_chain();
}

// What counts as sent: a receipt is here, and the hub has it.
void DeviceEnd::look_at_receipts() {
  const auto receipt = parts_.store.last_receipt(session_->epoch);
  if (!receipt) return;  // the next step meets the same error and says it
  const auto own = session_->heads.find(own_);
  const std::uint64_t held = own == session_->heads.end() ? 0 : own->second.seq;
  const std::uint64_t receipted = *receipt ? (*receipt)->seq : 0;
  if (receipted > held) state_.hub_was_restored = true;  // it had more, and says nothing of it
  state_.receipted_seq = std::min(receipted, held);
}

// The hub's last own entry has to be here, and the same.
void DeviceEnd::look_at_own_chain() {
  const auto there = session_->heads.find(own_);
  if (there == session_->heads.end()) {
    state_.tail_missing = false;
    return;
  }
  const auto here = parts_.store.hash_at(own_, there->second.seq);
  if (!here) return;  // the next step meets the same error and says it
  state_.tail_missing = !here->has_value();
  if (*here && **here != there->second.hash) forked();
}

void DeviceEnd::forked() {
  if (!state_.fork_common_seq) state_.fork_common_seq = state_.receipted_seq;
  state_.tail_missing = false;
}

// An entry of ours that is another one than the one here, or follows another one.
Result<bool> DeviceEnd::tells_of_another_chain(const PullPage& page) {
  const auto another = [this](std::uint64_t seq, const Hash& hash) -> Result<bool> {
    JAMBLINE_ASSIGN(const auto here, parts_.store.hash_at(own_, seq));
    return here && *here != hash;
  };
  for (const auto& receipt : page.receipts) {
    if (receipt.device != own_) continue;
    JAMBLINE_ASSIGN(const bool is, another(receipt.seq, receipt.hash));
    if (is) return true;
  }
  for (const auto& entry : page.entries) {
    if (entry.header.device != own_) continue;
    JAMBLINE_ASSIGN(const bool is, another(entry.header.seq, entry.hash));
    JAMBLINE_ASSIGN(const bool follows_another,
                    another(entry.header.seq - 1, entry.header.prev_hash));
    if (is || follows_another) return true;
  }
  return false;
}

Status DeviceEnd::take_receipt(const seal::Receipt& receipt) {
  JAMBLINE_TRY(seal::check(receipt, {parts_.shop, parts_.hub, session_->epoch, receipt.device}));
  JAMBLINE_ASSIGN(const auto here, parts_.store.hash_at(receipt.device, receipt.seq));
  if (!here || *here != receipt.hash) return fail(Error{Code::BadHash, "sync", "receipt", {}});
  PullPage page;
  page.epoch = session_->epoch;
  page.receipts.push_back(receipt);
  return parts_.store.take(page, std::nullopt);
}

void DeviceEnd::pushed(LaneState& lane, const Response& response, std::int64_t now_ms) {
  if (response.status == 202) {
    const auto apart = from_json<QuarantinedAnswer>(response.body);
    if (!apart || apart->through > lane.pushed_through)
      return failed(lane, wrong_hub("quarantine"), now_ms);
    if (lane.pushed != own_) {  // of another device, after its cut: the hub has them apart
      barred_[lane.pushed] = false;
      return went_well(lane);
    }
    state_.revoked = true;
    state_.apart_through = apart->through;
    return went_well(lane);
  }
  if (!session_) return;  // refused to another lane meanwhile: it is pushed again
  const auto receipt = seal::decode_receipt(seal::bytes_of(response.body));
  if (!receipt || receipt->device != lane.pushed) return failed(lane, wrong_hub("receipt"), now_ms);
  const bool has_more = receipt->seq > lane.pushed_through;
  const auto here = parts_.store.hash_at(receipt->device, receipt->seq);
  const bool not_here = has_more && here && !here->has_value();
  const Status taken =
      not_here ? seal::check(*receipt, {parts_.shop, parts_.hub, session_->epoch, lane.pushed})
               : take_receipt(*receipt);
  if (!taken) {
    const Code code = taken.error().code;
    const bool foreign = code == Code::BadSignature || code == Code::WrongShop ||
                         code == Code::Unknown || code == Code::BadHash ||
                         code == Code::NotAdmitted;
    return failed(lane, foreign ? wrong_hub("receipt") : taken.error(), now_ms);
  }
  // For more than was sent: that came another way, or the receipt is from before the hub was put
  // back. What the hub has now only a session says.
  if (has_more) {
    if (not_here && lane.pushed == own_) state_.tail_missing = true;
    session_.reset();
    lane.not_before_ms = now_ms + lane.back_off.next_ms(random_) - first_back_off_ms / 2;
    return;
  }
  session_->heads[receipt->device] = {receipt->device, receipt->seq, receipt->hash};
  if (receipt->device == own_) state_.receipted_seq = receipt->seq;
  for (auto one = barred_.begin(); one != barred_.end();)
    one = one->second ? barred_.erase(one) : std::next(one);
  went_well(lane);
}

void DeviceEnd::pulled(LaneState& lane, const Response& response, std::int64_t now_ms) {
  if (!session_) return;
  auto page = decode_page(seal::bytes_of(response.body));
  if (!page) return failed(lane, wrong_hub("page"), now_ms);
  if (page->epoch != session_->epoch || !cursor_ || page->next < cursor_->after)
    return failed(lane, wrong_hub("epoch"), now_ms);
  const auto another_chain = tells_of_another_chain(*page);
  if (!another_chain) return failed(lane, another_chain.error(), now_ms);
  if (*another_chain) forked();
  if (state_.fork_common_seq) {  // of the others all is taken; our name stands for two chains
    std::erase_if(page->entries, [this](const auto& one) { return one.header.device == own_; });
    std::erase_if(page->receipts, [this](const auto& one) { return one.device == own_; });
  }
  const bool moved = page->next != cursor_->after;
  const Cursor next{page->epoch, page->next};
  // A long history comes page by page, and the entry that admits the hub may be its last: until
  // then nothing is known of the hub's receipts. They are asked for once more when it is here, or
  // when this device starts again.
  const bool admitted = parts_.store.hub_is_admitted();
  if (!admitted) page->receipts.clear();
  if (moved || !page->entries.empty() || !page->receipts.empty()) {
    const Status taken = parts_.store.take(
        *page, next.epoch.hex() + ":" + std::to_string(admitted ? next.after : 0));
    if (!taken) {
      const Code code = taken.error().code;
      // What the hub has of this device does not follow from what is here: it was written twice.
      if ((code == Code::ChainBroken || code == Code::Fork) &&
          taken.error().arg("device") == own_.hex()) {
        forked();
        return went_well(lane);
      }
      if (code == Code::ChainBroken || code == Code::NotAdmitted) {
        cursor_ = Cursor{session_->epoch, 0};  // something was missed: by what is here, then
        by_heads_ = true;
      }
      return failed(lane, taken.error(), now_ms);
    }
  }
  for (const auto& entry : page->entries) {
    Head& head = session_->heads[entry.header.device];
    if (head.seq < entry.header.seq) head = {entry.header.device, entry.header.seq, entry.hash};
  }
  cursor_ = next;
  if (!admitted && parts_.store.hub_is_admitted()) cursor_ = Cursor{session_->epoch, 0};
  // The answer to a push may be lost: its receipt comes this way, too.
  for (const auto& receipt : page->receipts) {
    if (receipt.device != own_ || receipt.seq <= state_.receipted_seq) continue;
    Head& head = session_->heads[own_];
    if (head.seq < receipt.seq) head = {own_, receipt.seq, receipt.hash};
    look_at_receipts();
  }
  went_well(lane);
  if (state_.tail_missing) look_at_own_chain();
  if (page->more()) {
    state_.caught_up = false;
    return;
  }
  // By the hub's count all is here. Were it put back to an older state, it would not be.
  const auto heads = parts_.store.heads();
  bool missed = false;
  for (const auto& known : session_->heads) {
    const Head& head = known.second;
    const auto here = heads
                          ? std::find_if(heads->begin(), heads->end(),
                                         [&](const Head& one) { return one.device == known.first; })
                          : decltype(heads->begin()){};
    missed = missed || (heads && (here == heads->end() || here->seq < head.seq));
  }
  if (missed && !by_heads_ && !looked_by_heads_) {
    looked_by_heads_ = true;
    cursor_ = Cursor{session_->epoch, 0};
    by_heads_ = true;
    return;
  }
  by_heads_ = false;
  state_.caught_up = true;
}

void DeviceEnd::refused(LaneState& lane, const Response& response, std::int64_t now_ms) {
  const auto why = problem_of(response);
  const auto refusal = why ? refusal_of(*why) : std::nullopt;
  if (!refusal) return failed(lane, wrong_hub("status " + std::to_string(response.status)), now_ms);
  state_.in_contact = true;
  const std::int64_t wait_ms = std::int64_t{1000} * why->retry_s.value_or(0);
  switch (*refusal) {
    case Refusal::NoSession:
      session_.reset();
      lane.not_before_ms = now_ms + lane.back_off.next_ms(random_) - first_back_off_ms / 2;
      return;
    case Refusal::NotAdmitted:
      if (session_ && lane.pushed != own_ && &lane == &of(Lane::Push)) {
        barred_[lane.pushed] = true;  // until what admits it has gone
        return;
      }
      session_.reset();
      state_.not_admitted = true;
      lane.not_before_ms = now_ms + look_for_admission_ms;
      return;
    case Refusal::Revoked:
      state_.revoked = true;
      return;
    case Refusal::Fork:
      if (lane.pushed == own_) {
        fork_told_ = true;
        forked();
      } else {
        barred_[lane.pushed] = false;
      }
      return;
    case Refusal::Gap:
      if (session_ && why->have_seq && why->have_hash) {
        session_->heads[lane.pushed] = {lane.pushed, *why->have_seq, *why->have_hash};
        if (lane.pushed == own_) look_at_own_chain();
      }
      lane.not_before_ms = now_ms + lane.back_off.next_ms(random_) - first_back_off_ms / 2;
      return;
    case Refusal::OtherEpoch:
      session_.reset();
      cursor_ = std::nullopt;
      cursor_read_ = true;
      state_.hub_was_restored = true;
      lane.not_before_ms = now_ms;
      return;
    case Refusal::Full:
      return failed(lane, Error{Code::DiskFull, "sync", "hub", {}}, now_ms, wait_ms);
    case Refusal::TooMany:
    case Refusal::Busy:
      return failed(lane, Error{Code::Busy, "sync", "hub", {}}, now_ms, wait_ms);
    default:
      if (&lane == &of(Lane::Push)) barred_[lane.pushed] = false;
      return failed(lane,
                    Error{Code::Malformed, "sync", "hub", {{"cause", why->type}}}.with(
                        "detail", why->detail.value_or("")),
                    now_ms, wait_ms);
  }
}

}  // namespace jambline::sync
