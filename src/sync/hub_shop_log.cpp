// Entries in and out of a hub's shop.
#include <algorithm>

#include "seal/chain.h"
#include "seal/digest.h"
#include "sync/handlings.h"
#include "sync/limits.h"

namespace jambline::sync {

namespace {
constexpr std::size_t most_kept_apart = 20'000;  // entries of one revoked device
constexpr std::size_t usual_pack_bytes = 256U << 10U;

Response with_have(Refusal refusal, std::uint64_t seq, const Hash& hash) {
  Problem out = problem(refusal);
  out.have_seq = seq;
  out.have_hash = hash;
  return response_of(out);
}

Response bad_entry(const Error& error) {
  return response_of(problem(Refusal::BadEntry, std::string(code_name(error.code))));
}

// Of one device and shop, one after the other, each with its own payload.
std::optional<Response> not_a_run(const std::vector<seal::SealedEntry>& entries, const ShopId& shop,
                                  const DeviceId& device, std::uint64_t from) {
  if (entries.empty()) return response_of(problem(Refusal::BadRequest, "no entries"));
  if (entries.front().header.seq != from) return response_of(problem(Refusal::BadRequest, "from"));
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const auto& entry = entries[i];
    if (entry.header.shop != shop) return bad_entry({Code::WrongShop, {}, {}, {}});
    if (entry.header.device != device || entry.header.seq != from + i)
      return response_of(problem(Refusal::BadRequest, "order"));
    if (i > 0 && entry.header.prev_hash != entries[i - 1].hash)
      return bad_entry({Code::ChainBroken, {}, {}, {}});
    if (const Status payload = seal::check_payload(entry); !payload)
      return bad_entry(payload.error());
    if (entry.erased && entry.header.kind <= seal::kind::payload_erased)
      return bad_entry({Code::NotErasable, {}, {}, {}});
  }
  return std::nullopt;
}

std::vector<Hash> erased_by(std::span<const seal::SealedEntry> entries) {
  std::vector<Hash> out;
  for (const auto& entry : entries) {
    if (entry.header.kind != seal::kind::payload_erased) continue;
    if (const auto said = from_json<seal::PayloadErased>(entry.payload))
      out.push_back(said->target);
  }
  return out;
}
}  // namespace

Response HubShop::push(const Session& session, const DeviceId& device, std::uint64_t from,
                       const std::string& body) {
  std::uint64_t taken = 0;
  const auto answer = [&]() -> Response {
    auto decoded = seal::decode_pack(seal::bytes_of(body));
    if (!decoded) return response_of(problem(Refusal::BadRequest, "pack"));
    const std::vector<seal::SealedEntry> entries = std::move(*decoded);
    if (auto refused = not_a_run(entries, parts_.storage.shop(), device, from)) return *refused;

    const auto known = heads_.find(device);
    const Head head = known == heads_.end() ? Head{device, 0, {}} : known->second;
    std::span<const seal::SealedEntry> fresh(entries);
    if (from <= head.seq) {  // some of it is here: all of that when the last of it is
      const std::uint64_t last = std::min(head.seq, entries.back().header.seq);
      const auto here = parts_.storage.hash_at(device, last);
      if (!here) return response_of(problem_of(here.error()));
      if (!*here || **here != entries[last - from].hash) {
        if (auto noted = parts_.storage.note_fork(device, last, wall_ms()); !noted)
          return response_of(problem_of(noted.error()));
        return with_have(Refusal::Fork, last, here->value_or(Hash{}));
      }
      fresh = fresh.subspan(last - from + 1);
      if (fresh.empty()) {
        const auto receipt = parts_.storage.last_receipt(device);
        if (!receipt) return response_of(problem_of(receipt.error()));
        if (!*receipt) return response_of(problem(Refusal::Failed, "receipt"));
        return {200, {{"Content-Type", std::string(receipt_media_type)}}, encode(**receipt)};
      }
    }

    seal::Members members = members_;
    const seal::Member* member = members.find(device);
    std::size_t stands = 0;
    bool revoked = false;
    for (const auto& entry : fresh) {
      const bool joins = seal::is_membership(entry.header.kind);
      const auto before = joins ? std::optional(members) : std::nullopt;
      if (joins) {
        (void)members.apply(entry);  // badly made or not a manager's: admits nobody
        member = members.find(device);
      }
      if (!member) return response_of(problem(Refusal::NotAdmitted, "author"));
      const bool last = &entry == &fresh.back();
      if ((joins || last) && !seal::verify(member->key, entry.hash.bytes, entry.signature))
        return bad_entry({Code::BadSignature, {}, {}, {}});
      const Status may = (before && before->find(device) ? *before : members)
                             .may(device, entry.header.seq, entry.hash);
      if (!may) {
        revoked = may.error().code == Code::Revoked;
        if (!revoked) return bad_entry(may.error());
        break;
      }
      ++stands;
    }

    if (stands > 0) {
      const auto& first = fresh.front();
      if (first.header.seq != head.seq + 1) return with_have(Refusal::Gap, head.seq, head.hash);
      seal::ChainWalk walk(&members);
      if (head.seq > 0) walk.start_at(device, {head.seq, head.hash});
      if (const Status link = walk.next(first.header, first.hash); !link) {
        if (head.seq > 0) {  // the entry before ours is not the one that stands here
          if (auto noted = parts_.storage.note_fork(device, head.seq, wall_ms()); !noted)
            return response_of(problem_of(noted.error()));
          return with_have(Refusal::Fork, head.seq, head.hash);
        }
        return bad_entry(link.error());
      }
      const auto standing = fresh.first(stands);
      const auto& last = standing.back();
      const auto receipt = parts_.storage.append(standing, erased_by(standing), receipt_for(last));
      if (!receipt) return response_of(problem_of(receipt.error()));
      members_ = std::move(members);
      heads_[device] = {device, last.header.seq, last.hash};
      ++changes_;
      taken = stands;
      return {200, {{"Content-Type", std::string(receipt_media_type)}}, encode(*receipt)};
    }

    // All of it came after the cut: it is kept apart, for a manager to look at.
    const auto apart = parts_.storage.quarantine();
    if (!apart) return response_of(problem_of(apart.error()));
    for (const auto& one : *apart)
      if (one.device == device && one.last_seq - one.first_seq + fresh.size() > most_kept_apart)
        return response_of(problem(Refusal::Full, "quarantine"));
    if (const Status kept = parts_.storage.keep_apart(fresh, wall_ms()); !kept)
      return response_of(problem_of(kept.error()));
    ++changes_;
    return json_answer(QuarantinedAnswer{fresh.back().header.seq}, 202);
  };
  Response response = answer();
  note("push", session.device, response, taken, body.size());
  return response;
}

// Nothing when the caller may wait for something new.
std::optional<Response> HubShop::pull(const Session& session, const PullAsk& ask, bool last_call) {
  const seal::Member* member = members_.find(session.device);
  if (member && member->cut) return response_of(problem(Refusal::Revoked));
  HubStorage& storage = parts_.storage;
  if ((ask.epoch && *ask.epoch != storage.epoch()) || ask.after > storage.hub_seq()) {
    Problem out = problem(Refusal::OtherEpoch);
    out.epoch = storage.epoch();
    return response_of(out);
  }
  if (ask.after == storage.hub_seq() && ask.wait_s > 0 && !last_call) return std::nullopt;

  std::unordered_map<DeviceId, std::uint64_t> there;
  for (const Head& head : ask.heads) there[head.device] = head.seq;
  std::uint64_t next = ask.after;
  std::string pack;
  pack.reserve(usual_pack_bytes);
  std::uint64_t count = 0;
  const Status read =
      storage.read_after(ask.after, [&](std::uint64_t hub_seq, const DeviceId& device,
                                        std::uint64_t seq, std::string_view bytes) {
        // So many looked at, not given out: a page never has more receipts than that.
        if (hub_seq - ask.after > seal::most_pack_entries) return false;
        const auto found = there.find(device);
        if (found == there.end() || seq > found->second) {
          if (pack.size() + 4 + bytes.size() > seal::most_pack_bytes) return false;
          for (int shift = 24; shift >= 0; shift -= 8)
            pack.push_back(static_cast<char>(bytes.size() >> static_cast<unsigned>(shift)));
          pack += bytes;
          ++count;
        }
        next = hub_seq;
        return true;
      });
  if (!read) return response_of(problem_of(read.error()));
  const auto receipts = storage.receipts(ask.after, next, most_page_receipts);
  if (!receipts) return response_of(problem_of(receipts.error()));
  Response out{200,
               {{"Content-Type", std::string(page_media_type)}},
               encode_page(storage.epoch(), next, storage.hub_seq(), *receipts, pack)};
  if (count > 0) note("pull", session.device, out, count, out.body.size());
  return out;
}

SignReceipt HubShop::receipt_for(const seal::SealedEntry& last) {
  return [this, device = last.header.device, seq = last.header.seq, hash = last.hash](
             std::uint64_t hub_seq_first, std::uint64_t hub_seq_last) {
    seal::Receipt out;
    out.shop = parts_.storage.shop();
    out.epoch = parts_.storage.epoch();
    out.device = device;
    out.seq = seq;
    out.hash = hash;
    out.hub_seq_first = hub_seq_first;
    out.hub_seq_last = hub_seq_last;
    out.received_ms = wall_ms();
    seal::sign(out, parts_.key);
    return out;
  };
}

Status HubShop::append_own(std::span<const seal::SealedEntry> entries) {
  seal::Members members = members_;
  for (const auto& entry : entries)
    if (seal::is_membership(entry.header.kind)) JAMBLINE_TRY(members.apply(entry));
  const auto& last = entries.back();
  JAMBLINE_TRY(members.may(last.header.device, last.header.seq, last.hash));
  JAMBLINE_TRY(parts_.storage.append(entries, erased_by(entries), receipt_for(last)));
  members_ = std::move(members);
  heads_[last.header.device] = {last.header.device, last.header.seq, last.hash};
  ++changes_;
  return {};
}

}  // namespace jambline::sync
