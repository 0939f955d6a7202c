// chain_ratio            the chain check against SELECT of the same rows in order and one SHA-256
// of
//                        each header; chain_ratio_in_memory: against SHA-256 of headers that lie in
//                        memory already.
// verify_ratio           the whole check against libsodium's verify of the same signatures on two
//                        threads; verify_ratio_of_pass: the same without SQLite's own look at its
//                        pages (PRAGMA quick_check), which comes before.
#include <sqlite3.h>
#include <thread>

#include "log/entry_log.h"
#include "seal/digest.h"
#include "tests/bench/figures.h"
#include "tests/bench/log_rows.h"
#include "tests/bench/record/record_parts.h"

namespace jambline::bench {

namespace {

struct Rows {
  std::vector<std::uint8_t> headers;
  std::vector<Hash> hashes;
  std::vector<seal::Signature> signatures;
};

sqlite3* open_log(const std::filesystem::path& folder) {
  sqlite3* raw = nullptr;
  must_be(sqlite3_open_v2((folder / "log.db").c_str(), &raw, SQLITE_OPEN_READONLY, nullptr) ==
              SQLITE_OK,
          "open");
  return raw;
}

Rows read_rows(const std::filesystem::path& folder) {
  Rows out;
  sqlite3* raw = open_log(folder);
  sqlite3_stmt* rows = nullptr;
  must_be(sqlite3_prepare_v2(raw, "SELECT hash, header, signature FROM entries ORDER BY arrival",
                             -1, &rows, nullptr) == SQLITE_OK,
          "select");
  while (sqlite3_step(rows) == SQLITE_ROW) {
    const auto* header = static_cast<const std::uint8_t*>(sqlite3_column_blob(rows, 1));
    out.headers.insert(out.headers.end(), header, header + seal::header_bytes);
    std::memcpy(out.hashes.emplace_back().bytes.data(), sqlite3_column_blob(rows, 0), 32);
    std::memcpy(out.signatures.emplace_back().bytes.data(), sqlite3_column_blob(rows, 2), 64);
  }
  sqlite3_finalize(rows);
  sqlite3_close(raw);
  return out;
}

}  // namespace

void bench_audit(const std::filesystem::path& folder) {
  const Rows rows = read_rows(folder);
  const auto count = rows.hashes.size();
  const auto chain = [&] {
    const auto found = log::EntryLog::audit(folder, {}, {}, log::AuditDepth::Chain);
    must_be(found && !found->first_bad && found->entries == count, "the chain is bad");
  };
  figure("chain_ratio",
         rate_ratio(chain,
                    [&] {
                      sqlite3* raw = open_log(folder);
                      sqlite3_stmt* all = nullptr;
                      must_be(sqlite3_prepare_v2(raw,
                                                 "SELECT arrival, hash, header FROM "
                                                 "entries ORDER BY arrival",
                                                 -1, &all, nullptr) == SQLITE_OK,
                              "select");
                      std::size_t good = 0;
                      while (sqlite3_step(all) == SQLITE_ROW)
                        good += seal::sha256(
                                    {static_cast<const std::uint8_t*>(sqlite3_column_blob(all, 2)),
                                     seal::header_bytes})
                                        .none()
                                    ? 0U
                                    : 1U;
                      must_be(good == count, "rows are missing");
                      sqlite3_finalize(all);
                      sqlite3_close(raw);
                    }),
         "ratio");
  figure("chain_ratio_in_memory",
         rate_ratio(chain,
                    [&] {
                      std::size_t good = 0;
                      for (std::size_t i = 0; i < count; ++i)
                        good += seal::sha256({rows.headers.data() + i * seal::header_bytes,
                                              seal::header_bytes})
                                        .none()
                                    ? 0U
                                    : 1U;
                      must_be(good == count, "rows are missing");
                    }),
         "ratio");
  figure("chain_entries_per_s", static_cast<double>(count) / seconds(chain), "1/s");

  const auto log = log::EntryLog::open(folder, log::OpenMode::ReadOnly, no_ballast());
  must_be(log.has_value(), "the log does not open");
  const seal::Member* member = (*log)->members().find((*log)->heads().front().device);
  must_be(member != nullptr, "no member");
  const auto verify_half = [&](std::size_t from) {
    for (std::size_t i = from; i < count; i += 2)
      must_be(seal::verify(member->key, rows.hashes[i].bytes, rows.signatures[i]), "signature");
  };
  std::vector<double> whole_ratios, pass_ratios;
  for (int round = 0; round < 3; ++round) {
    const double bare_s = seconds([&] {
      std::thread other(verify_half, 1);
      verify_half(0);
      other.join();
    });
    const double pages_s = seconds([&] {
      sqlite3* raw = open_log(folder);
      must_be(sqlite3_exec(raw, "PRAGMA quick_check(1)", nullptr, nullptr, nullptr) == SQLITE_OK,
              "quick_check");
      sqlite3_close(raw);
    });
    const double whole_s = seconds([&] {
      const auto found = log::EntryLog::audit(folder, {}, {});
      must_be(found && !found->first_bad && found->entries == count, "the log is bad");
    });
    whole_ratios.push_back(bare_s / whole_s);
    pass_ratios.push_back(bare_s / (whole_s - pages_s));
    std::printf("whole check %.1f s, of it pages %.1f s; bare verify %.1f s\n", whole_s, pages_s,
                bare_s);
  }
  figure("verify_ratio", median(whole_ratios), "ratio");
  figure("verify_ratio_of_pass", median(pass_ratios), "ratio");
}

}  // namespace jambline::bench
