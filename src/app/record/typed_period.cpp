#include "app/record/typed_period.h"

#include "app/record/typed_date.h"
#include "engine/rights_of_log.h"

namespace jambline::app {

Result<folds::Period> typed_period(const std::string& from, const std::string& to,
                                   const std::string& zone) {
  folds::Period out;
  if (!from.empty()) {
    JAMBLINE_ASSIGN(const auto date, typed_date(from, "--from"));
    JAMBLINE_ASSIGN(const auto day, local_day(zone, date));
    out.from_ms = day.start_ms;
  }
  if (!to.empty()) {
    JAMBLINE_ASSIGN(const auto date, typed_date(to, "--to"));
    JAMBLINE_ASSIGN(const auto day, local_day(zone, date));
    out.to_ms = day.end_ms;
  }
  if (out.from_ms >= out.to_ms) return fail(Code::OutOfRange, "read the days", to);
  return out;
}

Result<std::string> zone_of(const std::filesystem::path& folder) {
  JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(folder, log::OpenMode::ReadOnly));
  JAMBLINE_ASSIGN(const auto rights, engine::rights_of(*log));
  JAMBLINE_ASSIGN(const auto shop, engine::shop_of(*log, rights));
  const auto zone = shop.first.view().zone;
  return zone.empty() ? "UTC" : zone;
}

}  // namespace jambline::app
