#include "tests/bench/record/ten_years.h"

#include "app/demo/demo_shop.h"
#include "tests/bench/log_rows.h"

namespace jambline::bench {

std::int64_t make_ten_years(const std::filesystem::path& folder, int cars) {
  if (std::filesystem::exists(folder / "log.db")) return 0;
  std::filesystem::create_directories(folder);
  LogRows rows(folder, 0);
  demo::DemoOptions options;
  options.delivered = cars;
  options.weeks = ten_years_weeks;
  demo::Sinks sinks;
  sinks.here = [&](const PersonId& person, const std::vector<acts::Draft>& drafts,
                   const Moment& moment) -> Result<std::vector<entries::Entry>> {
    return rows.write(person, drafts, moment);
  };
  must_be(demo::make_entries(options, sinks).has_value(), "the shop was not made");
  rows.keep();
  must_be(rows.key().save(folder / "device.key").has_value(), "no key");
  return rows.count();
}

}  // namespace jambline::bench
