#include "engine/work_again.h"

#include <algorithm>

#include "base/json.h"
#include "engine/read_entry.h"

namespace jambline::engine {

namespace {
// The entries after a WorkTakenOver in its device's chain are its origins, one for one.
Result<log::Renamed> said_again(log::EntryLog& log) {
  struct Over {
    entries::Order order;
    std::vector<Hash> origins;
  };
  std::vector<Over> overs;
  JAMBLINE_TRY(log.said_of({}, [&](const log::Said& said) {
    const auto& header = said.header;
    if (header.kind != entries::WorkTakenOver::kind) return true;
    if (!log.members().may(header.device, header.seq, said.hash)) return true;  // after its cut
    const entries::Entry entry = read_entry(said);
    if (const auto* over = entry.payload.get_if<entries::WorkTakenOver>())
      overs.push_back({entry.order, over->origins});
    return true;
  }));
  log::Renamed out;
  for (const Over& over : overs) {
    std::size_t at = 0;
    JAMBLINE_TRY(log.read_device(over.order.device, over.order.seq + 1, [&](const auto& stored) {
      if (at == over.origins.size()) return false;
      out[over.origins[at++]] = stored.entry.hash;
      return true;
    }));
  }
  return out;
}
// What a copied folder had erased is erased again.
Result<std::vector<log::Stored>> erase_again(log::EntryLog& log, const seal::SigningKey& key,
                                             const std::vector<seal::SealedEntry>& origins,
                                             const log::Renamed& renamed, const Moment& now,
                                             Random& random) {
  std::vector<log::Stored> out;
  for (const auto& origin : origins) {
    if (origin.header.kind != seal::kind::payload_erased) continue;
    const auto said = from_json<seal::PayloadErased>(origin.payload);
    if (!said) continue;
    const auto again = renamed.find(said->target);
    const Hash target = again == renamed.end() ? said->target : again->second;
    JAMBLINE_ASSIGN(const auto found, log.find(target));
    if (!found || found->entry.erased) continue;
    JAMBLINE_ASSIGN(auto stored, log.erase_payload(key, origin.header.person, target, said->reason,
                                                   entries::erasable_kinds(), now, random));
    out.push_back(std::move(stored));
  }
  return out;
}
}  // namespace

Result<std::vector<log::Stored>> say_work_again(log::EntryLog& log, const seal::SigningKey& key,
                                                const std::vector<seal::SealedEntry>& origins,
                                                entries::TakenOverWhy why, const PersonId& by,
                                                const Moment& now, Random& random) {
  JAMBLINE_ASSIGN(log::Renamed renamed, said_again(log));
  std::vector<seal::SealedEntry> left;
  for (const auto& origin : origins) {
    if (origin.erased || origin.header.kind <= seal::kind::payload_erased) continue;
    if (!renamed.count(origin.hash)) left.push_back(origin);
  }
  std::vector<log::Stored> out;
  for (std::size_t from = 0; from < left.size(); from += entries::WorkTakenOver::most_origins) {
    const std::size_t count = std::min(entries::WorkTakenOver::most_origins, left.size() - from);
    const std::span some(left.data() + from, count);
    entries::WorkTakenOver over{some.front().header.device, why, {}};
    for (const auto& origin : some) over.origins.push_back(origin.hash);
    const auto written = entries::write(over);
    JAMBLINE_ASSIGN(auto stored,
                    log.say_again(key, by, {{}, written.kind, written.schema, written.payload},
                                  some, renamed, now, random));
    out.insert(out.end(), std::make_move_iterator(stored.begin()),
               std::make_move_iterator(stored.end()));
  }
  if (why == entries::TakenOverWhy::CopiedFolder) {
    JAMBLINE_ASSIGN(auto stored, erase_again(log, key, origins, renamed, now, random));
    out.insert(out.end(), std::make_move_iterator(stored.begin()),
               std::make_move_iterator(stored.end()));
  }
  if (out.empty()) return fail(Code::AlreadyDone, "take over", "work");
  return out;
}

}  // namespace jambline::engine
