#include "shelf/accounts.h"

#include <algorithm>
#include <tuple>

#include "base/json.h"
#include "shelf/open_reading.h"

namespace jambline::shelf {

Result<Accounts> Accounts::open(const Whereabouts& where) {
  Accounts out;
  JAMBLINE_ASSIGN(auto database, open_reading(where));
  out.database_ = std::make_unique<sqlite::Database>(std::move(database));
  JAMBLINE_ASSIGN(out.read_, out.database_->prepare(
                                 "SELECT account FROM account WHERE last >= ? AND opened < ?"));
  return out;
}

Result<std::vector<folds::Account>> Accounts::read(std::int64_t from_ms, std::int64_t to_ms,
                                                   const std::stop_token& stop) {
  std::vector<folds::Account> out;
  read_.bind(1, from_ms);
  read_.bind(2, to_ms);
  const auto rows = [&]() -> Status {
    while (true) {
      JAMBLINE_ASSIGN(const bool more, read_.step());
      if (!more) return {};
      if (stop.stop_requested()) return fail(Code::Stopped, "read accounts", "shelf.db");
      JAMBLINE_ASSIGN(auto account, from_json<folds::Account>(read_.text(0)));
      out.push_back(std::move(account));
    }
  };
  const Status done = rows();
  read_.reset();
  JAMBLINE_TRY(done);
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
    return std::tie(a.opened_ms, a.job) < std::tie(b.opened_ms, b.job);
  });
  return out;
}

}  // namespace jambline::shelf
