// append_ratio  one action of one entry, committed, against a bare sqlite3 loop with the same
//               pragmas, columns, indexes, SHA-256 of payload and header, and Ed25519 signature.
// chain_ratio   the chain check of a whole log against SELECT in order + one SHA-256 a row.
#include <cstdlib>
#include <memory>
#include <sqlite3.h>

#include "base/clock.h"
#include "base/random.h"
#include "log/entry_log.h"
#include "seal/digest.h"
#include "tests/bench/figures.h"
#include "tests/bench/no_ballast.h"

namespace jambline::bench {
namespace {

constexpr int appends = 300;
constexpr int chain_actions = 400;
constexpr int chain_parts = 250;

template <class T>
T must(Result<T> result) {
  if (!result) {
    std::fprintf(stderr, "bench-log: %s\n", std::string(code_name(result.error().code)).c_str());
    std::exit(1);
  }
  return std::move(*result);
}
void must_be(bool good) {
  if (good) return;
  std::fprintf(stderr, "bench-log: the bare loop failed\n");
  std::exit(1);
}

std::string payload_text(std::int64_t number) {
  return R"({"panel":"left front door","x_mm":)" + std::to_string(number % 900) +
         R"(.5,"y_mm":312.25,"kind":"nib","size_mm":0.8,"layer":"clear","replaces":[]})";
}

Moment moment_at(std::int64_t ms) {
  Moment moment;
  moment.wall_ms = 1772438400000 + ms;
  moment.since_boot_ms = static_cast<std::uint64_t>(ms);
  return moment;
}

class PlainLoop {
 public:
  explicit PlainLoop(const std::filesystem::path& folder) {
    must_be(sqlite3_open((folder / "plain.db").c_str(), &raw_) == SQLITE_OK);
    run("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON;"
        "PRAGMA temp_store=MEMORY;"
        "CREATE TABLE rows(arrival INTEGER PRIMARY KEY, device BLOB, seq INTEGER, hash BLOB,"
        " subject BLOB, kind INTEGER, header BLOB, signature BLOB, salt BLOB, payload BLOB,"
        " erased INTEGER);"
        "CREATE UNIQUE INDEX by_device ON rows(device, seq);"
        "CREATE UNIQUE INDEX by_hash ON rows(hash);"
        "CREATE INDEX by_subject ON rows(subject)");
    must_be(sqlite3_prepare_v2(raw_, "INSERT INTO rows VALUES(NULL,?,?,?,?,?,?,?,?,?,0)", -1,
                               &insert_, nullptr) == SQLITE_OK);
    must_be(sqlite3_prepare_v2(raw_, "BEGIN IMMEDIATE", -1, &begin_, nullptr) == SQLITE_OK);
    must_be(sqlite3_prepare_v2(raw_, "COMMIT", -1, &commit_, nullptr) == SQLITE_OK);
  }
  ~PlainLoop() {
    for (sqlite3_stmt* statement : {insert_, begin_, commit_}) sqlite3_finalize(statement);
    sqlite3_close(raw_);
  }
  PlainLoop(const PlainLoop&) = delete;
  PlainLoop& operator=(const PlainLoop&) = delete;

  void append(const seal::SigningKey& key, Random& random, std::int64_t number) {
    const std::string payload = payload_text(number);
    const auto salt = random.make<seal::Salt>();
    seal::Header header;
    header.device = key.device();
    header.seq = ++seq_;
    header.prev_hash = last_;
    header.subject.bytes[0] = static_cast<std::uint8_t>(number % 20);
    header.payload_hash = seal::payload_hash(salt, payload);
    const auto bytes = seal::encode(header);
    last_ = seal::entry_hash(bytes);
    const auto signature = key.sign(last_);
    step(begin_);
    bind(1, header.device.bytes);
    sqlite3_bind_int64(insert_, 2, static_cast<std::int64_t>(seq_));
    bind(3, last_.bytes);
    bind(4, header.subject.bytes);
    sqlite3_bind_int64(insert_, 5, 700);
    bind(6, bytes);
    bind(7, signature.bytes);
    bind(8, salt.bytes);
    bind(9, seal::bytes_of(payload));
    step(insert_);
    step(commit_);
  }

 private:
  void run(const char* sql) {
    must_be(sqlite3_exec(raw_, sql, nullptr, nullptr, nullptr) == SQLITE_OK);
  }
  void bind(int place, std::span<const std::uint8_t> bytes) {
    sqlite3_bind_blob(insert_, place, bytes.data(), static_cast<int>(bytes.size()), SQLITE_STATIC);
  }
  void step(sqlite3_stmt* statement) {
    must_be(sqlite3_step(statement) == SQLITE_DONE);
    sqlite3_reset(statement);
  }

  sqlite3* raw_ = nullptr;
  sqlite3_stmt* insert_ = nullptr;
  sqlite3_stmt* begin_ = nullptr;
  sqlite3_stmt* commit_ = nullptr;
  std::uint64_t seq_ = 0;
  Hash last_;
};

void bench_append() {
  const BenchFolder folder;
  SeededRandom random(1);
  const auto key = seal::SigningKey::make(random);
  auto log = must(log::EntryLog::open(folder.path(), log::OpenMode::Write, no_ballast()));
  must(log->found_shop(key, "bench", moment_at(0), random));
  PlainLoop plain(folder.path());
  std::int64_t ours_count = 0, plain_count = 0;
  const auto ours = [&] {
    for (int i = 0; i < appends; ++i) {
      log::Draft draft{{}, 700, 1, payload_text(++ours_count)};
      draft.subject.bytes[0] = static_cast<std::uint8_t>(ours_count % 20);
      must(log->append(key, {}, {&draft, 1}, moment_at(ours_count), random));
    }
  };
  const auto bare = [&] {
    for (int i = 0; i < appends; ++i) plain.append(key, random, ++plain_count);
  };
  figure("append_ratio", rate_ratio(ours, bare), "ratio");
  figure("append_ms", 1000 * seconds(ours) / appends, "ms");
}

void bench_chain() {
  const BenchFolder folder;
  SeededRandom random(2);
  const auto key = seal::SigningKey::make(random);
  {
    auto log = must(log::EntryLog::open(folder.path(), log::OpenMode::Write, no_ballast()));
    must(log->found_shop(key, "bench", moment_at(0), random));
    std::vector<log::Draft> drafts(chain_parts);
    for (int action = 0; action < chain_actions; ++action) {
      for (auto& draft : drafts) draft = {{}, 700, 1, payload_text(action)};
      must(log->append(key, {}, drafts, moment_at(action), random));
    }
  }
  const auto check = [&] {
    const auto found = must(log::EntryLog::audit(folder.path(), {}, {}, log::AuditDepth::Chain));
    must_be(!found.first_bad && found.entries == 1U + chain_actions * chain_parts);
  };
  const auto select = [&] {
    sqlite3* raw = nullptr;
    sqlite3_stmt* rows = nullptr;
    must_be(sqlite3_open((folder.path() / "log.db").c_str(), &raw) == SQLITE_OK);
    must_be(sqlite3_prepare_v2(raw, "SELECT arrival, hash, header FROM entries ORDER BY arrival",
                               -1, &rows, nullptr) == SQLITE_OK);
    std::uint64_t good = 0;
    while (sqlite3_step(rows) == SQLITE_ROW) {
      const auto hash =
          seal::sha256({static_cast<const std::uint8_t*>(sqlite3_column_blob(rows, 2)),
                        static_cast<std::size_t>(sqlite3_column_bytes(rows, 2))});
      good += hash.none() ? 0U : 1U;
    }
    must_be(good == 1U + chain_actions * chain_parts);
    sqlite3_finalize(rows);
    sqlite3_close(raw);
  };
  figure("chain_ratio", rate_ratio(check, select), "ratio");
  figure("chain_rows_per_s", (1 + chain_actions * chain_parts) / seconds(check), "1/s");
}

const Part append_part(bench_append);
const Part chain_part(bench_chain);

}  // namespace
}  // namespace jambline::bench
