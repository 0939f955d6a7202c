#include "exchange/new_key.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/json.h"
#include "log/files.h"
#include "seal/digest.h"
#include "seal/pack.h"

namespace jambline::exchange {

namespace {
namespace fs = std::filesystem;
constexpr std::size_t entries_a_turn = 500;
constexpr std::size_t most_move_bytes = 4096;

struct Move {
  std::uint64_t common_seq{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "common_seq", .min = 0, .max = 9.2e18}, self.common_seq);
  }
};

Status rename_file(const fs::path& from, const fs::path& to) {
  std::error_code ec;
  fs::rename(from, to, ec);
  if (ec) return fail(log::file_error("rename", from, ec.value()));
  return log::sync_folder(to.parent_path());
}

// From which entry on each device's chain stays out of the new log: the own one after `common_seq`,
// and another one from where only an own later entry has erased a payload. They come again from
// the hub, with that payload.
Result<std::map<DeviceId, std::uint64_t>> left_out_from(log::EntryLog& from, const DeviceId& own,
                                                        std::uint64_t common_seq) {
  struct Erased {
    DeviceId device;
    std::uint64_t seq{};
    Hash hash;
  };
  std::vector<Erased> erased, erasures;  // of an erasure: the hash of what it erased
  JAMBLINE_TRY(from.read_after(0, [&](const log::Stored& stored) {
    const auto& header = stored.entry.header;
    if (stored.entry.erased) erased.push_back({header.device, header.seq, stored.entry.hash});
    if (header.kind == seal::kind::payload_erased)
      if (const auto said = from_json<seal::PayloadErased>(stored.entry.payload))
        erasures.push_back({header.device, header.seq, said->target});
    return true;
  }));
  std::map<DeviceId, std::uint64_t> out{{own, common_seq + 1}};
  const auto stays = [&out](const Erased& one) {
    const auto from_seq = out.find(one.device);
    return from_seq == out.end() || one.seq < from_seq->second;
  };
  for (bool changed = true; changed;) {
    changed = false;
    std::set<Hash> said;
    for (const auto& one : erasures)
      if (stays(one)) said.insert(one.hash);
    for (const auto& one : erased) {
      if (!stays(one) || said.count(one.hash)) continue;
      out[one.device] = one.seq;
      changed = true;
    }
  }
  return out;
}

// Whom only an entry that stays out had let in stays out, too.
Status copy_log(log::EntryLog& from, log::EntryLog& to, const DeviceId& own,
                std::uint64_t common_seq) {
  JAMBLINE_ASSIGN(auto left_out, left_out_from(from, own, common_seq));
  const auto stays_out = [&left_out](const DeviceId& device, std::uint64_t seq) {
    const auto from_seq = left_out.find(device);
    return from_seq != left_out.end() && seq >= from_seq->second;
  };
  std::vector<seal::SealedEntry> turn;
  Status added;
  const auto flush = [&]() -> Status {
    while (!turn.empty()) {
      const auto taken = to.add(turn);
      if (taken) break;
      const auto stranger = DeviceId::parse(taken.error().arg("device"));
      if (taken.error().code != Code::NotAdmitted || !stranger) return fail(taken.error());
      left_out[*stranger] = 1;
      std::erase_if(turn, [&](const auto& one) { return one.header.device == *stranger; });
    }
    turn.clear();
    return {};
  };
  JAMBLINE_TRY(from.read_after(0, [&](const log::Stored& stored) {
    if (stays_out(stored.entry.header.device, stored.entry.header.seq)) return true;
    turn.push_back(stored.entry);
    if (turn.size() == entries_a_turn) added = flush();
    return added.has_value();
  }));
  JAMBLINE_TRY(added);
  JAMBLINE_TRY(flush());
  JAMBLINE_ASSIGN(auto receipts, from.receipts());
  std::erase_if(receipts, [&](const auto& one) { return stays_out(one.device, one.seq); });
  if (!receipts.empty()) JAMBLINE_TRY(to.add_page({{}, receipts, std::nullopt}));
  return {};
}

Status keep_divergent(log::EntryLog& from, const fs::path& folder, const DeviceId& own,
                      std::uint64_t common_seq) {
  std::error_code ec;
  fs::create_directories(folder, ec);
  if (ec) return fail(log::file_error("make", folder, ec.value()));
  seal::Packer packer;
  int number = 0;
  Status written;
  const auto flush = [&]() -> Status {
    if (packer.count() == 0) return {};
    std::string name = std::to_string(++number);
    name.insert(0, 6 - std::min<std::size_t>(6, name.size()), '0');
    JAMBLINE_TRY(log::write_file(folder / (name + ".jle"), packer.bytes()));
    packer.clear();
    return {};
  };
  JAMBLINE_TRY(from.read_device(own, common_seq + 1, [&](const log::Stored& stored) {
    if (packer.add(stored.entry)) return true;
    written = flush();
    return written.has_value() && packer.add(stored.entry);
  }));
  JAMBLINE_TRY(written);
  JAMBLINE_TRY(flush());
  return log::sync_folder(folder);
}
}  // namespace

Result<seal::SigningKey> asking_key(const fs::path& folder, Random& random) {
  const auto file = folder / "device.key.new";
  auto known = seal::SigningKey::load(file);
  if (known || known.error().code != Code::NoSuchFile) return known;
  auto key = seal::SigningKey::make(random);
  JAMBLINE_TRY(key.save(file));
  return key;
}

Status note_new_key(const fs::path& folder, std::uint64_t common_seq) {
  return log::write_file(folder / "move.json", to_json(Move{common_seq}));
}

bool new_key_noted(const fs::path& folder) {
  std::error_code ignored;
  return fs::exists(folder / "move.json", ignored);
}

Status move_to_new_key(const fs::path& folder, const log::OpenOptions& options) {
  if (!new_key_noted(folder)) return {};
  JAMBLINE_ASSIGN(const std::string text, log::read_file(folder / "move.json", most_move_bytes));
  JAMBLINE_ASSIGN(const Move move, from_json<Move>(text));
  const auto made = folder / "moving";
  std::error_code ec;
  const auto there = [](const fs::path& file) {
    std::error_code ignored;
    return fs::exists(file, ignored);
  };
  if (there(folder / "log.db") && !there(folder / "log.forked.db")) {
    // Made whole first, however often it takes; only then does the old one step aside.
    fs::remove_all(made, ec);
    fs::create_directories(made, ec);
    if (ec) return fail(log::file_error("make", made, ec.value()));
    JAMBLINE_ASSIGN(const auto key, seal::SigningKey::load(folder / "device.key"));
    {
      JAMBLINE_ASSIGN(const auto from, log::EntryLog::open(folder, log::OpenMode::Write, options));
      JAMBLINE_ASSIGN(const auto to, log::EntryLog::open(made, log::OpenMode::Write, options));
      JAMBLINE_TRY(copy_log(*from, *to, key.device(), move.common_seq));
      JAMBLINE_TRY(keep_divergent(*from, folder / "divergent", key.device(), move.common_seq));
    }
    JAMBLINE_TRY(rename_file(folder / "log.db", folder / "log.forked.db"));
    for (const char* left :
         {"log.db-wal", "log.db-shm", "shelf.db", "shelf.db-wal", "shelf.db-shm"})
      fs::remove(folder / left, ec);
  }
  if (there(made / "log.db")) JAMBLINE_TRY(rename_file(made / "log.db", folder / "log.db"));
  if (there(folder / "device.key.new")) {
    if (!there(folder / "device.key.forked"))
      fs::copy_file(folder / "device.key", folder / "device.key.forked", ec);
    JAMBLINE_TRY(rename_file(folder / "device.key.new", folder / "device.key"));
  }
  fs::remove_all(made, ec);
  fs::remove(folder / "move.json", ec);
  return log::sync_folder(folder);
}

Result<std::vector<seal::SealedEntry>> divergent_entries(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code ec;
  for (auto file = fs::directory_iterator(folder / "divergent", ec);
       !ec && file != fs::directory_iterator(); file.increment(ec))
    files.push_back(file->path());
  std::sort(files.begin(), files.end());
  std::vector<seal::SealedEntry> out;
  for (const auto& file : files) {
    JAMBLINE_ASSIGN(const std::string bytes, log::read_file(file, seal::most_pack_bytes));
    JAMBLINE_ASSIGN(auto entries, seal::decode_pack(seal::bytes_of(bytes)));
    out.insert(out.end(), std::make_move_iterator(entries.begin()),
               std::make_move_iterator(entries.end()));
  }
  return out;
}

Status divergent_entries_said(const fs::path& folder) {
  const auto done = folder / "divergent.said";
  std::error_code ec;
  fs::remove_all(done, ec);
  return rename_file(folder / "divergent", done);
}

}  // namespace jambline::exchange
