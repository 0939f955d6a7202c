#include <algorithm>
#include <unordered_set>

#include "base/json.h"
#include "log/chain_check.h"
#include "log/open_file.h"
#include "log/signature_checks.h"
#include "log/sqlite_log.h"
#include "seal/chain.h"

namespace jambline::log {

namespace {
constexpr std::uint64_t entries_between_reports = 4096;

class Auditing {
 public:
  // Signatures are checked by `signatures`; without it, as it is known that the first bad one
  // is that of entry `bad_signature`, they are believed up to there.
  Auditing(Database& database, SignatureChecks* signatures, Arrival bad_signature)
      : database_(database),
        walk_(&members_),
        signatures_(signatures),
        bad_signature_(bad_signature) {}

  Status load_members() {
    JAMBLINE_ASSIGN(members_, members_of(database_));
    found_.shop = members_.shop();
    return {};
  }

  // Returns false at the first entry that is not as it should be.
  bool next(const Statement& row, AuditDepth depth) {
    const Arrival arrival = row.number(0);
    const auto bytes = row.bytes(2);
    const auto header = seal::decode_header(bytes);
    if (!header) {
      found_.first_bad = header.error();
      found_.first_bad->args.emplace_back("place", std::to_string(arrival));
      return false;
    }
    const Hash hash = seal::entry_hash(bytes.first<seal::header_bytes>());
    Hash stored;
    if (!row.read(1, stored) || stored != hash) return bad(*header, Code::BadHash, "header");
    if (arrival != ++last_) return bad(*header, Code::ChainBroken, "an entry before it is gone");
    if (const Status linked = walk_.next(*header, hash); !linked) {
      found_.first_bad = linked.error();
      return false;
    }
    if (depth == AuditDepth::Whole && !check_rest(row, *header, hash)) return false;
    ++found_.entries;
    return true;
  }

  Status check_erasures() {
    for (const auto& [hash, header] : erased_)
      if (!targets_.contains(hash)) {
        bad(header, Code::BadHash, "its payload is gone and no entry says so");
        return {};
      }
    return {};
  }

  Status check_receipts() {
    JAMBLINE_ASSIGN(Statement rows, database_.prepare("SELECT bytes FROM receipts"));
    JAMBLINE_ASSIGN(Statement entry,
                    database_.prepare("SELECT hash FROM entries WHERE device=? AND seq=?"));
    for (;;) {
      JAMBLINE_ASSIGN(const bool more, rows.step());
      if (!more) return {};
      const auto receipt = seal::decode_receipt(rows.bytes(0));
      if (!receipt) {
        found_.first_bad = receipt.error();
        return {};
      }
      seal::Header named;
      named.device = receipt->device;
      named.seq = receipt->seq;
      if (!seal::verify(*receipt) || receipt->shop != found_.shop ||
          !members_.hubs().contains(receipt->hub)) {
        bad(named, Code::BadSignature, "its receipt is of no hub of this shop");
        return {};
      }
      entry.bind(1, receipt->device.bytes);
      entry.bind(2, static_cast<std::int64_t>(receipt->seq));
      JAMBLINE_ASSIGN(const bool there, entry.step());
      Hash hash;
      if (!there || !entry.read(0, hash) || hash != receipt->hash) {
        bad(named, Code::ChainBroken, "a hub's receipt names it and it is not here");
        return {};
      }
      entry.reset();
      ++found_.receipts;
    }
  }

  Audit result() {
    found_.heads = heads_of(walk_.heads());
    return std::move(found_);
  }
  bool good() const { return !found_.first_bad; }
  void set_bad(Error error) { found_.first_bad = std::move(error); }

 private:
  bool bad(const seal::Header& header, Code code, std::string cause) {
    found_.first_bad = Error{code, "check", "entry", {}}
                           .with("device", header.device.hex())
                           .with("seq", std::to_string(header.seq))
                           .with("cause", std::move(cause));
    return false;
  }

  bool check_rest(const Statement& row, const seal::Header& header, const Hash& hash) {
    DeviceId device;
    JobId subject;
    if (!row.read(7, device) || device != header.device || !row.read(9, subject) ||
        subject != header.subject || static_cast<std::uint64_t>(row.number(8)) != header.seq ||
        row.number(10) != header.kind)
      return bad(header, Code::DatabaseDamaged, "its columns are not those of its header");
    if (!read_row(row, stored_)) return bad(header, Code::DatabaseDamaged, "its columns");
    auto& entry = stored_.entry;
    const seal::Member* member = members_.find(header.device);
    if (!member) return bad(header, Code::NotAdmitted, "no member of the shop");
    if (signatures_)
      signatures_->add(row.number(0), member->key, hash, entry.signature);
    else if (row.number(0) == bad_signature_)
      return bad(header, Code::BadSignature, "signature");
    if (const Status payload = seal::check_payload(entry); !payload)
      return bad(header, Code::BadHash, "payload");
    if (const Status may = members_.may(header.device, header.seq, hash); !may) {
      if (may.error().code != Code::Revoked) return bad(header, may.error().code, "cut");
      ++found_.after_cut;
    }
    if (entry.erased) {
      if (seal::is_membership(header.kind) || header.kind == seal::kind::payload_erased)
        return bad(header, Code::NotErasable, "payload");
      if (entry.salt || !entry.payload.empty()) return bad(header, Code::BadHash, "payload");
      erased_.emplace_back(hash, header);
      ++found_.erased;
    } else if (header.kind == seal::kind::payload_erased) {
      if (const auto named = from_json<seal::PayloadErased>(entry.payload))
        targets_.insert(named->target);
    }
    return true;
  }

  Database& database_;
  seal::Members members_;
  seal::ChainWalk walk_;
  SignatureChecks* signatures_;
  Arrival bad_signature_;
  Audit found_;
  Arrival last_ = 0;
  Stored stored_;
  std::vector<std::pair<Hash, seal::Header>> erased_;
  std::unordered_set<Hash> targets_;
};

using AuditProgress = std::function<void(double part_done)>;

Result<Audit> audit_once(Database& database, const std::stop_token& stop,
                         const AuditProgress& progress, AuditDepth depth,
                         SignatureChecks* signatures, Arrival bad_signature) {
  Auditing auditing(database, signatures, bad_signature);
  JAMBLINE_TRY(auditing.load_members());
  JAMBLINE_ASSIGN(const std::int64_t all, database.number("SELECT max(arrival) FROM entries"));
  JAMBLINE_ASSIGN(
      Statement rows,
      database.prepare(depth == AuditDepth::Chain
                           ? "SELECT arrival, hash, header FROM entries ORDER BY arrival"
                           : "SELECT " JAMBLINE_ENTRY_COLUMNS ", device, seq, subject, kind "
                             "FROM entries ORDER BY arrival"));
  for (std::uint64_t done = 0;; ++done) {
    if (done % entries_between_reports == 0) {
      if (stop.stop_requested()) return fail(Code::Stopped, "check", "log.db");
      if (progress && all > 0) progress(static_cast<double>(done) / static_cast<double>(all));
      if (signatures && signatures->first_bad()) break;
    }
    auto more = rows.step();
    if (!more) {
      auditing.set_bad(std::move(more.error()));
      break;
    }
    if (!*more || !auditing.next(rows, depth)) break;
  }
  if (auditing.good() && depth == AuditDepth::Whole) JAMBLINE_TRY(auditing.check_erasures());
  if (auditing.good() && depth == AuditDepth::Whole) JAMBLINE_TRY(auditing.check_receipts());
  return auditing.result();
}
}  // namespace

Result<Audit> EntryLog::audit(const std::filesystem::path& folder, const std::stop_token& stop,
                              const std::function<void(double part_done)>& progress,
                              AuditDepth depth) {
  JAMBLINE_ASSIGN(OpenFile file, open_file(folder, OpenMode::ReadOnly, {}));
  Database& database = file.database;
  JAMBLINE_TRY(database.run("BEGIN"));  // one view from the first row to the last
  Result<Audit> found = Audit{};
  if (depth == AuditDepth::Chain) {
    JAMBLINE_ASSIGN(auto whole, chain_that_holds(folder, database, stop, progress));
    // Where it does not hold, one walk from the first entry on says which entry it is.
    found = whole ? Result<Audit>(std::move(*whole))
                  : audit_once(database, stop, {}, depth, nullptr, 0);
  } else {
    JAMBLINE_ASSIGN(const std::string pages, database.text("PRAGMA quick_check(1)"));
    if (pages != "ok")
      return fail(Error{Code::DatabaseDamaged, "check", "log.db", {}}.with("cause", pages));
    SignatureChecks signatures;
    found = audit_once(database, stop, progress, depth, &signatures, 0);
    signatures.finish();
    // What was looked at since went beyond it: once more, up to the bad entry and no further.
    if (const auto bad = signatures.first_bad(); found && bad)
      found = audit_once(database, stop, {}, depth, nullptr, *bad);
  }
  if (found && progress) progress(1.0);
  return found;
}

}  // namespace jambline::log
