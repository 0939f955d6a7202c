#include "hub/own_entry.h"

#include "seal/hlc.h"

namespace jambline::hub {

namespace {
constexpr std::uint16_t own_schema = 1;
constexpr std::int64_t first_ms_of_2025 = 1735689600000;
}  // namespace

std::vector<seal::SealedEntry> own_entries(const seal::SigningKey& hub, OwnPlace place,
                                           const std::vector<OwnWords>& words, const Moment& moment,
                                           Random& random) {
  std::vector<seal::SealedEntry> out;
  seal::Header header;
  header.shop = place.shop;
  header.device = hub.device();
  header.wall_ms = moment.wall_ms;
  header.offset_min = moment.offset_min;
  header.boot = moment.boot;
  header.boottime_ms = moment.since_boot_ms;
  header.action = random.make<ActionId>();
  header.parts = static_cast<std::uint8_t>(words.size());
  header.schema = own_schema;
  if (moment.wall_ms < first_ms_of_2025) header.clock_flags |= seal::clock_flag::before_2025;
  seal::Hlc hlc = seal::hlc_local({}, moment.wall_ms);
  for (const OwnWords& said : words) {
    seal::SealedEntry entry;
    entry.payload = said.payload;
    entry.salt = random.make<seal::Salt>();
    header.seq = place.seq++;
    header.prev_hash = place.prev_hash;
    header.hlc = hlc.packed();
    hlc = seal::hlc_local(hlc, moment.wall_ms);
    ++header.part;
    header.kind = said.kind;
    header.payload_bytes = static_cast<std::uint32_t>(entry.payload.size());
    header.payload_hash = seal::payload_hash(entry.salt, entry.payload);
    entry.header = header;
    entry.hash = seal::entry_hash(seal::encode(header));
    entry.signature = hub.sign(entry.hash);
    place.prev_hash = entry.hash;
    out.push_back(std::move(entry));
  }
  return out;
}

}  // namespace jambline::hub
