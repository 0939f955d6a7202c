#include "log/chain_check.h"

#include <algorithm>
#include <atomic>
#include <thread>

#include "log/sqlite_log.h"

namespace jambline::log {

namespace {
using Links = seal::ChainWalk::Links;
constexpr Arrival entries_between_looks = 4096;

// Both halves, as far as they are known to each other.
struct Halves {
  ShopId shop;
  const std::stop_token& stop;
  std::atomic<bool> broken{false};
};

struct Half {
  Arrival first{};
  Arrival last{};
  Links begins;  // what the first entry of each device hangs on
  Links heads;
};

// Marks the halves as broken at the first entry that is not as it should be.
Status walk_half(Database& database, Halves& halves, Half& half,
                 const std::function<void(double part_done)>& progress) {
  // Each page is read once: a few that stay near the processor do better than many.
  JAMBLINE_TRY(database.run("PRAGMA cache_size = -256"));
  seal::ChainWalk walk{seal::ChainWalk::OfStretch()};
  JAMBLINE_ASSIGN(Statement rows, database.prepare("SELECT arrival, hash, header FROM entries "
                                                   "WHERE arrival >= ? ORDER BY arrival"));
  rows.bind(1, half.first);
  for (Arrival expected = half.first; expected <= half.last; ++expected) {
    const Arrival done = expected - half.first;
    if (done % entries_between_looks == 0) {
      if (halves.stop.stop_requested()) return fail(Code::Stopped, "check", "log.db");
      if (halves.broken) return {};
      if (progress)
        progress(static_cast<double>(done) / static_cast<double>(half.last - half.first + 1));
    }
    if (const auto more = rows.step(); !more || !*more) break;
    const auto bytes = rows.bytes(2);
    const auto header = seal::decode_header(bytes);
    if (!header || header->shop != halves.shop || rows.number(0) != expected) break;
    const Hash hash = seal::entry_hash(bytes.first<seal::header_bytes>());
    Hash stored;
    if (!rows.read(1, stored) || stored != hash || !walk.next(*header, hash)) break;
    if (expected < half.last) continue;
    half.begins = walk.begins();
    half.heads = walk.heads();
    return {};
  }
  halves.broken = true;
  return {};
}

Status walk_half_of(const std::filesystem::path& folder, Halves& halves, Half& half) {
  JAMBLINE_ASSIGN(OpenFile file, open_file(folder, OpenMode::ReadOnly, {}));
  return walk_half(file.database, halves, half, {});
}

// `later` goes on where `before` ends; a device that is not in it begins there, by its admission.
bool goes_on(const seal::Members& members, const Links& before, const Links& later) {
  return std::all_of(later.begin(), later.end(), [&](const auto& begin) {
    const auto& [device, link] = begin;
    const auto known = before.find(device);
    return known == before.end() ? link.seq == 0 && members.first_link(device, link.hash)
                                 : known->second == link;
  });
}
}  // namespace

Result<seal::Members> members_of(Database& database) {
  seal::Members members;
  JAMBLINE_ASSIGN(Statement rows, database.prepare("SELECT " JAMBLINE_ENTRY_COLUMNS
                                                   " FROM entries WHERE kind BETWEEN 1 AND 4 "
                                                   "ORDER BY kind, arrival"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return members;
    Stored stored;
    if (read_row(rows, stored)) {
      stored.entry.hash = seal::entry_hash(seal::encode(stored.entry.header));
      (void)members.apply(stored.entry);
    }
  }
}

std::vector<Head> heads_of(const Links& links) {
  std::vector<Head> heads;
  heads.reserve(links.size());
  for (const auto& [device, link] : links) heads.push_back({device, link.seq, link.hash});
  std::sort(heads.begin(), heads.end(),
            [](const Head& a, const Head& b) { return a.device < b.device; });
  return heads;
}

Result<std::optional<Audit>> chain_that_holds(
    const std::filesystem::path& folder, Database& database, const std::stop_token& stop,
    const std::function<void(double part_done)>& progress) {
  JAMBLINE_ASSIGN(const auto members, members_of(database));
  JAMBLINE_ASSIGN(const Arrival last, database.number("SELECT max(arrival) FROM entries"));
  if (last < 2) return std::optional<Audit>();
  Halves halves{members.shop(), stop};
  Half first{1, last / 2, {}, {}};
  Half second{last / 2 + 1, last, {}, {}};
  Status of_second;
  std::thread other([&] {
    of_second = walk_half_of(folder, halves, second);
    if (!of_second) halves.broken = true;
  });
  const Status of_first = walk_half(database, halves, first, progress);
  if (!of_first) halves.broken = true;
  other.join();
  if (stop.stop_requested()) return fail(Code::Stopped, "check", "log.db");
  if (halves.broken || !goes_on(members, {}, first.begins) ||
      !goes_on(members, first.heads, second.begins))
    return std::optional<Audit>();
  for (const auto& [device, link] : second.heads) first.heads[device] = link;
  Audit found;
  found.shop = members.shop();
  found.entries = static_cast<std::uint64_t>(last);
  found.heads = heads_of(first.heads);
  return std::optional<Audit>(std::move(found));
}

}  // namespace jambline::log
