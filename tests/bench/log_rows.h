// tests/bench/log_rows.h: a log of many entries, made quickly: sealed with the log's own header
// codec and put into its own tables directly, in one transaction.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <sqlite3.h>
#include <string>
#include <vector>

#include "acts/decide.h"
#include "engine/read_entry.h"
#include "entries/entry.h"
#include "log/entry_log.h"
#include "tests/bench/no_ballast.h"

namespace jambline::bench {

inline void must_be(bool good, const char* what) {
  if (good) return;
  std::fprintf(stderr, "bench: %s\n", what);
  std::exit(1);
}

class LogRows {
 public:
  // Entries before the `first_signed`-th have signatures of zeros.
  LogRows(const std::filesystem::path& folder, std::int64_t first_signed)
      : random_(5), key_(seal::SigningKey::make(random_)), first_signed_(first_signed) {
    {
      auto log = log::EntryLog::open(folder, log::OpenMode::Write, no_ballast());
      must_be(log.has_value(), "no log");
      const auto first =
          (*log)->found_shop(key_, "bench", Moment{1'480'000'000'000, 0, {}, 0}, random_);
      must_be(first.has_value(), "no shop");
      last_ = first->entry;
    }
    must_be(sqlite3_open((folder / "log.db").c_str(), &raw_) == SQLITE_OK, "open");
    run("PRAGMA synchronous=OFF; PRAGMA cache_size=-800000");
    run("BEGIN");
    must_be(sqlite3_prepare_v2(
                raw_,
                "INSERT INTO entries(device, seq, hash, subject, kind, header, signature, "
                "salt, payload, erased) VALUES(?,?,?,?,?,?,?,?,?,0)",
                -1, &insert_, nullptr) == SQLITE_OK,
            "insert");
  }
  ~LogRows() {
    sqlite3_finalize(insert_);
    sqlite3_close(raw_);
  }
  LogRows(const LogRows&) = delete;
  LogRows& operator=(const LogRows&) = delete;

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
      if (count_ >= first_signed_) sealed.signature = key_.sign(sealed.hash);
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
  const seal::SigningKey& key() const { return key_; }
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
  std::int64_t first_signed_;
  sqlite3* raw_ = nullptr;
  sqlite3_stmt* insert_ = nullptr;
  seal::SealedEntry last_;
  std::int64_t count_ = 1;
};

}  // namespace jambline::bench
