#include "log/sqlite_log.h"

#include <algorithm>

#include "log/schema.h"

namespace jambline::log {

namespace {
constexpr std::int64_t links_at_open = 1000;

Error broken(const DeviceId& device, std::uint64_t seq, std::string cause) {
  return Error{Code::ChainBroken, "open", "log.db", {}}
      .with("device", device.hex())
      .with("seq", std::to_string(seq))
      .with("cause", std::move(cause));
}
}  // namespace

Error damaged_row(Arrival arrival) {
  return Error{Code::DatabaseDamaged, "read", "log.db", {}}.with("place", std::to_string(arrival));
}

bool read_row(const Statement& row, Stored& out) {
  out.arrival = row.number(0);
  auto& entry = out.entry;
  const auto header = seal::decode_header(row.bytes(2));
  if (!header || !row.read(1, entry.hash) || !row.read(3, entry.signature) ||
      !row.read(4, entry.salt))
    return false;
  entry.header = *header;
  entry.payload.assign(row.text(5));
  entry.erased = row.number(6) != 0;
  return true;
}

SqliteLog::SqliteLog(const std::filesystem::path& folder, const OpenOptions& options, OpenFile file)
    : options_(options), file_(std::move(file)), ballast_(folder, options.ballast_bytes) {}

Result<std::unique_ptr<SqliteLog>> SqliteLog::make(const std::filesystem::path& folder,
                                                   const OpenOptions& options, OpenFile file) {
  std::unique_ptr<SqliteLog> log(new SqliteLog(folder, options, std::move(file)));
  JAMBLINE_TRY(log->load());
  JAMBLINE_TRY(log->check_own_links());
  if (log->writable()) {
    JAMBLINE_TRY(set_durable(log->file_.database));
    log->file_.database.checkpoint_on_close(true);
    log->ballast_.keep();
  }
  return log;
}

Result<Statement*> SqliteLog::kept(const char* sql) {
  auto found = statements_.find(sql);
  if (found == statements_.end()) {
    JAMBLINE_ASSIGN(Statement statement, file_.database.prepare(sql));
    found = statements_.emplace(sql, std::move(statement)).first;
  }
  found->second.reset();
  return &found->second;
}

Status SqliteLog::load() {
  JAMBLINE_ASSIGN(data_version_, file_.database.number("PRAGMA data_version"));
  JAMBLINE_ASSIGN(Statement about, file_.database.prepare("SELECT name, value FROM about"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, about.step());
    if (!more) break;
    if (about.text(0) == "shop" && !about.read(1, shop_)) return fail(damaged_row(0));
    if (about.text(0) == "device" && !about.read(1, device_)) return fail(damaged_row(0));
  }
  seal::Members members;
  JAMBLINE_TRY(read_with(
      "SELECT " JAMBLINE_ENTRY_COLUMNS
      " FROM entries WHERE kind BETWEEN 1 AND 4 ORDER BY kind, arrival",
      [](Statement&) {},
      [&members](const Stored& stored) {
        // What a member wrote badly stays in the log and admits nobody.
        (void)members.apply(stored.entry);
        return true;
      }));
  members_ = std::move(members);
  return load_tails();
}

Status SqliteLog::load_tails() {
  Tails tails;
  JAMBLINE_ASSIGN(Statement next,
                  file_.database.prepare("SELECT min(device) FROM entries WHERE device > ?"));
  JAMBLINE_ASSIGN(Statement last,
                  file_.database.prepare("SELECT " JAMBLINE_ENTRY_COLUMNS " FROM entries "
                                         "WHERE device=? ORDER BY seq DESC LIMIT 1"));
  DeviceId before;
  next.bind(1, std::span<const std::uint8_t>());  // the empty blob sorts before every device
  for (;;) {
    JAMBLINE_TRY(next.step());
    if (next.bytes(0).empty()) break;
    if (!next.read(0, before)) return fail(damaged_row(0));
    next.reset();
    next.bind(1, before.bytes);
    last.bind(1, before.bytes);
    JAMBLINE_ASSIGN(const bool there, last.step());
    Stored stored;
    if (!there || !read_row(last, stored)) return fail(damaged_row(0));
    last.reset();
    const auto& header = stored.entry.header;
    tails[before] = {header.seq,     stored.entry.hash, header.hlc,
                     header.wall_ms, header.boot,       header.boottime_ms};
  }
  tails_ = std::move(tails);
  JAMBLINE_ASSIGN(last_, file_.database.number("SELECT max(arrival) FROM entries"));
  return {};
}

Status SqliteLog::check_own_links() {
  const auto tail = tails_.find(device_);
  if (tail == tails_.end())
    return device_ ? Status(fail(broken(device_, 1, "its entries are gone"))) : Status();
  const std::int64_t last = static_cast<std::int64_t>(tail->second.seq);
  const std::int64_t first = std::max<std::int64_t>(1, last - links_at_open);
  seal::ChainWalk walk(&members_);
  std::int64_t seq = first;
  Status found;
  const auto check = [&](const Stored& stored) {
    const auto& entry = stored.entry;
    if (seal::entry_hash(seal::encode(entry.header)) != entry.hash)
      found = fail(broken(device_, entry.header.seq, "its hash is another one"));
    else if (entry.header.device != device_ || entry.header.seq != static_cast<std::uint64_t>(seq))
      found = fail(
          broken(device_, static_cast<std::uint64_t>(seq), "another entry stands in its place"));
    else if (seq == first && first > 1)
      walk.start_at(device_, {entry.header.seq, entry.hash});
    else
      found = walk.next(entry.header, entry.hash);
    if (found && seq == last) {  // the last signature speaks for all before it
      const seal::Member* member = members_.find(device_);
      if (member && !seal::verify(member->key, entry.hash.bytes, entry.signature))
        found = fail(broken(device_, entry.header.seq, "its signature does not verify"));
    }
    ++seq;
    return found.has_value();
  };
  JAMBLINE_TRY(read_device(device_, static_cast<std::uint64_t>(first), check));
  JAMBLINE_TRY(found);
  if (seq != last + 1)
    return fail(broken(device_, static_cast<std::uint64_t>(seq), "entries are missing"));
  return {};
}

void SqliteLog::refresh() const {
  if (writable()) return;
  auto* self = const_cast<SqliteLog*>(this);  // a cache of what the file says
  const auto version = self->file_.database.number("PRAGMA data_version");
  if (version && *version != data_version_) (void)self->load();
}

std::vector<Head> SqliteLog::heads() const {
  refresh();
  std::vector<Head> out;
  out.reserve(tails_.size());
  for (const auto& [device, tail] : tails_) out.push_back({device, tail.seq, tail.hash});
  return out;
}

Arrival SqliteLog::last_arrival() const {
  refresh();
  return last_;
}

Status SqliteLog::read(Statement& rows, const Visit& visit) {
  Stored stored;
  for (;;) {
    auto more = rows.step();
    if (!more) return fail(std::move(more.error()));
    if (!*more) break;
    if (!read_row(rows, stored)) {
      rows.reset();
      return fail(damaged_row(stored.arrival));
    }
    if (!visit(stored)) break;
  }
  rows.reset();
  return {};
}

Status SqliteLog::read_with(const char* sql, const std::function<void(Statement&)>& bind,
                            const Visit& visit) {
  const auto found = statements_.find(sql);
  if (found != statements_.end() && found->second.busy()) {  // a read inside a read
    JAMBLINE_ASSIGN(Statement own, file_.database.prepare(sql));
    bind(own);
    return read(own, visit);
  }
  JAMBLINE_ASSIGN(Statement * rows, kept(sql));
  bind(*rows);
  return read(*rows, visit);
}

Status SqliteLog::read_after(Arrival arrival, const Visit& visit) {
  return read_with(
      "SELECT " JAMBLINE_ENTRY_COLUMNS " FROM entries WHERE arrival > ? ORDER BY arrival",
      [&](Statement& rows) { rows.bind(1, arrival); }, visit);
}

namespace {
Status read_said(Statement& rows, const EntryLog::VisitSaid& visit) {
  Said said;
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return {};
    said.arrival = rows.number(0);
    auto header = seal::decode_header(rows.bytes(2));
    if (!header || !rows.read(1, said.hash)) return fail(damaged_row(said.arrival));
    said.header = *header;
    said.payload = rows.text(3);
    said.erased = rows.number(4) != 0;
    if (!visit(said)) return {};
  }
}
}  // namespace

Status SqliteLog::said_after(Arrival arrival, const VisitSaid& visit) {
  JAMBLINE_ASSIGN(Statement rows,
                  file_.database.prepare("SELECT arrival, hash, header, payload, erased"
                                         " FROM entries WHERE arrival > ? ORDER BY arrival"));
  rows.bind(1, arrival);
  return read_said(rows, visit);
}

Status SqliteLog::said_of(const JobId& subject, const VisitSaid& visit) {
  JAMBLINE_ASSIGN(Statement rows,
                  file_.database.prepare("SELECT arrival, hash, header, payload, erased"
                                         " FROM entries WHERE subject=? ORDER BY arrival"));
  rows.bind(1, subject.bytes);
  return read_said(rows, visit);
}

Status SqliteLog::read_device(const DeviceId& device, std::uint64_t from_seq, const Visit& visit) {
  return read_with(
      "SELECT " JAMBLINE_ENTRY_COLUMNS " FROM entries WHERE device=? AND seq >= ? ORDER BY seq",
      [&](Statement& rows) {
        rows.bind(1, device.bytes);
        rows.bind(2, static_cast<std::int64_t>(std::min(from_seq, seal::last_seq)));
      },
      visit);
}

Result<std::optional<Stored>> SqliteLog::find(const Hash& hash) {
  std::optional<Stored> out;
  JAMBLINE_TRY(read_with(
      "SELECT " JAMBLINE_ENTRY_COLUMNS " FROM entries WHERE hash=?",
      [&](Statement& rows) { rows.bind(1, hash.bytes); },
      [&out](const Stored& stored) {
        out = stored;
        return false;
      }));
  return out;
}

Result<std::vector<seal::Receipt>> SqliteLog::receipts() {
  std::vector<seal::Receipt> out;
  JAMBLINE_ASSIGN(
      Statement rows,
      file_.database.prepare("SELECT bytes FROM receipts ORDER BY device, seq, hub, epoch"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) break;
    JAMBLINE_ASSIGN(out.emplace_back(), seal::decode_receipt(rows.bytes(0)));
  }
  return out;
}

Result<std::optional<seal::Receipt>> SqliteLog::last_receipt(const DeviceId& device,
                                                             const seal::Key& hub,
                                                             const seal::Epoch& epoch) {
  JAMBLINE_ASSIGN(Statement row,
                  file_.database.prepare("SELECT bytes FROM receipts WHERE device=? AND hub=? AND "
                                         "epoch=? ORDER BY seq DESC LIMIT 1"));
  row.bind(1, device.bytes);
  row.bind(2, hub.bytes);
  row.bind(3, epoch.bytes);
  JAMBLINE_ASSIGN(const bool there, row.step());
  if (!there) return std::optional<seal::Receipt>();
  JAMBLINE_ASSIGN(const seal::Receipt receipt, seal::decode_receipt(row.bytes(0)));
  return std::optional<seal::Receipt>(receipt);
}

Result<std::optional<std::string>> SqliteLog::cursor(const std::string& peer) {
  JAMBLINE_ASSIGN(Statement row, file_.database.prepare("SELECT value FROM cursors WHERE peer=?"));
  row.bind_text(1, peer);
  JAMBLINE_ASSIGN(const bool there, row.step());
  return there ? std::optional<std::string>(row.text(0)) : std::nullopt;
}

}  // namespace jambline::log
