// fold_ratio    a million entries of the demo shop read, decoded and folded into every car's fold,
//               against SELECT in order + simdjson reading every field of the payload. The entries
//               of a car lie together, as after an import or a snapshot of one car after the other.
// fold_ratio_scattered   the same where they lie as they were written, hundreds of cars mixed.
//
// The entries are decided by the acts and sealed with the log's own header codec; signatures, which
// reading does not look at, are left zero but for the last ones, and the rows are put into the
// log's own tables directly.
#include <map>
#include <memory>
#include <simdjson.h>
#include <sqlite3.h>
#include <unordered_map>

#include "app/demo/demo_shop.h"
#include "engine/read_entry.h"
#include "engine/whole_log.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"
#include "log/entry_log.h"
#include "tests/bench/figures.h"
#include "tests/bench/no_ballast.h"

namespace jambline::bench {
namespace {

constexpr std::int64_t wanted_entries = 1'000'000;
constexpr std::int64_t signed_at_end = 300;  // opening a log checks the last one
constexpr int cars_at_most = 40'000;

void must_be(bool good, const char* what) {
  if (good) return;
  std::fprintf(stderr, "bench-log: %s\n", what);
  std::exit(1);
}

class Rows {
 public:
  explicit Rows(const std::filesystem::path& folder)
      : random_(5), key_(seal::SigningKey::make(random_)) {
    {
      auto log = log::EntryLog::open(folder, log::OpenMode::Write, no_ballast());
      must_be(log.has_value(), "no log");
      const auto first =
          (*log)->found_shop(key_, "bench", Moment{1'700'000'000'000, 0, {}, 0}, random_);
      must_be(first.has_value(), "no shop");
      last_ = first->entry;
    }
    must_be(sqlite3_open((folder / "log.db").c_str(), &raw_) == SQLITE_OK, "open");
    run("PRAGMA synchronous=OFF");
    run("BEGIN");
    must_be(sqlite3_prepare_v2(
                raw_,
                "INSERT INTO entries(device, seq, hash, subject, kind, header, signature, "
                "salt, payload, erased) VALUES(?,?,?,?,?,?,?,?,?,0)",
                -1, &insert_, nullptr) == SQLITE_OK,
            "insert");
  }
  ~Rows() {
    sqlite3_finalize(insert_);
    sqlite3_close(raw_);
  }
  Rows(const Rows&) = delete;
  Rows& operator=(const Rows&) = delete;

  std::vector<entries::Entry> write(const PersonId& person, const std::vector<acts::Draft>& drafts,
                                    const Moment& moment) {
    std::vector<entries::Entry> out;
    for (const auto& draft : drafts) {
      auto text = entries::write(draft.payload);
      seal::SealedEntry sealed;
      seal::Header& header = sealed.header;
      header = last_.header;
      header.seq = last_.header.seq + 1;
      header.prev_hash = last_.hash;
      header.subject = draft.subject;
      header.hlc =
          std::max(static_cast<std::uint64_t>(moment.wall_ms) << 16U, last_.header.hlc + 1);
      header.wall_ms = moment.wall_ms;
      header.boot = moment.boot;
      header.boottime_ms = moment.since_boot_ms;
      header.person = person;
      header.part = static_cast<std::uint8_t>(out.size() + 1);
      header.parts = static_cast<std::uint8_t>(drafts.size());
      header.kind = text.kind;
      header.schema = text.schema;
      header.payload_bytes = static_cast<std::uint32_t>(text.payload.size());
      sealed.salt = random_.make<seal::Salt>();
      header.payload_hash = seal::payload_hash(sealed.salt, text.payload);
      const auto bytes = seal::encode(header);
      sealed.hash = seal::entry_hash(bytes);
      sealed.payload = std::move(text.payload);
      if (count_ + signed_at_end >= wanted_entries) sealed.signature = key_.sign(sealed.hash);
      bind(1, header.device.bytes);
      sqlite3_bind_int64(insert_, 2, static_cast<std::int64_t>(header.seq));
      bind(3, sealed.hash.bytes);
      bind(4, header.subject.bytes);
      sqlite3_bind_int64(insert_, 5, header.kind);
      bind(6, bytes);
      bind(8, sealed.salt.bytes);
      bind(7, sealed.signature.bytes);
      sqlite3_bind_blob(insert_, 9, sealed.payload.data(), static_cast<int>(sealed.payload.size()),
                        SQLITE_STATIC);
      must_be(sqlite3_step(insert_) == SQLITE_DONE, sqlite3_errmsg(raw_));
      sqlite3_reset(insert_);
      out.push_back(engine::read_entry(sealed));
      last_ = std::move(sealed);
      ++count_;
    }
    return out;
  }

  std::int64_t count() const { return count_; }
  void keep() { run("COMMIT"); }
  // Lays the rows car by car, each car's in the order in which they were written.
  void lay_by_car() {
    std::string guards;
    const auto add = [](void* to, int, char** sql, char**) {
      *static_cast<std::string*>(to) += std::string(sql[0]) + ";";
      return 0;
    };
    must_be(sqlite3_exec(raw_,
                         "SELECT sql FROM sqlite_master WHERE name IN "
                         "('entries_stay', 'entries_never_change')",
                         add, &guards, nullptr) == SQLITE_OK,
            "guards");
    run("BEGIN; CREATE TEMP TABLE laid AS SELECT arrival FROM entries WHERE arrival > 1"
        " ORDER BY subject, arrival; CREATE INDEX temp.by_arrival ON laid(arrival);"
        "DROP TRIGGER entries_stay; DROP TRIGGER entries_never_change;"
        "UPDATE entries SET arrival = -arrival WHERE arrival > 1;"
        "UPDATE entries SET arrival = (SELECT laid.rowid + 1 FROM laid"
        " WHERE laid.arrival = -entries.arrival) WHERE arrival < 0");
    run((guards + "COMMIT").c_str());
  }

 private:
  void run(const char* sql) {
    must_be(sqlite3_exec(raw_, sql, nullptr, nullptr, nullptr) == SQLITE_OK, sqlite3_errmsg(raw_));
  }
  template <std::size_t N>
  void bind(int place, const std::array<std::uint8_t, N>& bytes) {
    sqlite3_bind_blob(insert_, place, bytes.data(), static_cast<int>(N), SQLITE_STATIC);
  }

  SeededRandom random_;
  seal::SigningKey key_;
  sqlite3* raw_ = nullptr;
  sqlite3_stmt* insert_ = nullptr;
  seal::SealedEntry last_;
  std::int64_t count_ = 1;
};

void touch(simdjson::dom::element element, std::uint64_t& sum) {
  switch (element.type()) {
    case simdjson::dom::element_type::OBJECT:
      for (const auto field : simdjson::dom::object(element)) {
        sum += field.key.size();
        touch(field.value, sum);
      }
      break;
    case simdjson::dom::element_type::ARRAY:
      for (const auto item : simdjson::dom::array(element)) touch(item, sum);
      break;
    case simdjson::dom::element_type::STRING:
      sum += std::string_view(element).size();
      break;
    case simdjson::dom::element_type::INT64:
      sum += static_cast<std::uint64_t>(std::int64_t(element));
      break;
    case simdjson::dom::element_type::DOUBLE:
      sum += double(element) > 0 ? 1 : 0;
      break;
    default:
      ++sum;
  }
}

void compare(const std::filesystem::path& folder, std::int64_t count, const char* name) {
  const auto log = log::EntryLog::open(folder, log::OpenMode::ReadOnly, no_ballast());
  must_be(log.has_value(), "the made log does not open");
  sqlite3* raw = nullptr;
  must_be(sqlite3_open((folder / "log.db").c_str(), &raw) == SQLITE_OK, "open");
  std::uint64_t sum = 0;
  const auto plain = [&] {
    sqlite3_stmt* rows = nullptr;
    must_be(sqlite3_prepare_v2(raw, "SELECT header, payload FROM entries ORDER BY arrival", -1,
                               &rows, nullptr) == SQLITE_OK,
            "select");
    simdjson::dom::parser parser;
    std::int64_t seen = 0;
    while (sqlite3_step(rows) == SQLITE_ROW) {
      sum += static_cast<const std::uint8_t*>(sqlite3_column_blob(rows, 0))[0];
      touch(parser
                .parse(static_cast<const char*>(sqlite3_column_blob(rows, 1)),
                       static_cast<std::size_t>(sqlite3_column_bytes(rows, 1)))
                .value(),
            sum);
      ++seen;
    }
    sqlite3_finalize(rows);
    must_be(seen == count, "rows are missing");
  };
  std::size_t cars = 0;
  const auto ours = [&] {
    const auto whole = engine::fold_whole_log(**log);
    must_be(whole && whole->entries == count, "entries are missing");
    cars = whole->jobs.size();
  };
  figure(name, rate_ratio(ours, plain), "ratio");
  std::printf("%s: %lld entries of %zu cars, checksum %llu\n", name, static_cast<long long>(count),
              cars, static_cast<unsigned long long>(sum));
  sqlite3_close(raw);
}

void bench_fold() {
  const BenchFolder folder;
  Rows rows(folder.path());
  demo::DemoOptions options;
  options.delivered = cars_at_most;
  options.in_work = 0;
  const double made_s = seconds([&] {
    demo::Sinks sinks;
    sinks.here = [&](const PersonId& person, const std::vector<acts::Draft>& drafts,
                     const Moment& moment) -> Result<std::vector<entries::Entry>> {
      if (rows.count() >= wanted_entries) return fail(Code::Stopped, "bench", "enough");
      return rows.write(person, drafts, moment);
    };
    const auto made = demo::make_entries(options, sinks);
    must_be(!made && made.error().code == Code::Stopped, "the demo shop is too small");
  });
  rows.keep();
  figure("fold_made_s", made_s, "s");
  compare(folder.path(), rows.count(), "fold_ratio_scattered");
  rows.lay_by_car();
  compare(folder.path(), rows.count(), "fold_ratio");
}

const Part fold_part(bench_fold);

}  // namespace
}  // namespace jambline::bench
