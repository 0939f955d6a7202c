#include "engine/raw_entry.h"

#include <map>

namespace jambline::engine {

namespace {
// A request's entries lie one after another at the hub, the receipt's entry last.
std::optional<std::uint64_t> hub_seq_of(const seal::Receipt& receipt, std::uint64_t seq) {
  const std::uint64_t before_last = receipt.seq - seq;
  if (receipt.hub_seq_last < receipt.hub_seq_first + before_last) return std::nullopt;
  return receipt.hub_seq_last - before_last;
}
}  // namespace

Result<RawEntry> raw_entry(const std::filesystem::path& folder, const Hash& hash) {
  JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(folder, log::OpenMode::ReadOnly));
  JAMBLINE_ASSIGN(auto stored, log->find(hash));
  if (!stored) return fail(Code::Unknown, "read an entry", "entry");
  RawEntry out;
  out.sealed = std::move(stored->entry);
  const auto& header = out.sealed.header;
  if (const auto* member = log->members().find(header.device)) {
    out.device_name = member->name;
    out.signature_good = seal::verify(member->key, out.sealed.hash.bytes, out.sealed.signature);
  }
  out.payload_good = out.sealed.erased || seal::check_payload(out.sealed).has_value();
  JAMBLINE_ASSIGN(const auto receipts, log->receipts());
  std::map<std::pair<seal::Key, seal::Epoch>, const seal::Receipt*> first;
  for (const auto& receipt : receipts) {
    if (receipt.device != header.device || receipt.seq < header.seq) continue;
    auto& best = first[{receipt.hub, receipt.epoch}];
    if (!best || receipt.seq < best->seq) best = &receipt;
  }
  for (const auto& [of, receipt] : first) {
    const auto hub = log->members().hubs().find(receipt->hub);
    out.received.push_back({*receipt, hub == log->members().hubs().end() ? "" : hub->second,
                            seal::verify(*receipt), hub_seq_of(*receipt, header.seq)});
  }
  return out;
}

}  // namespace jambline::engine
