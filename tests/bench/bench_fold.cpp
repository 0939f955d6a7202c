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
#include "tests/bench/log_rows.h"
#include "tests/bench/no_ballast.h"

namespace jambline::bench {
namespace {

constexpr std::int64_t wanted_entries = 1'000'000;
constexpr std::int64_t first_signed = wanted_entries - 300;  // opening a log checks the last ones
constexpr int cars_at_most = 40'000;

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
  LogRows rows(folder.path(), first_signed);
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
