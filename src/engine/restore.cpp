#include "engine/restore.h"

#include "engine/shop_copy.h"

namespace jambline::engine {

Result<log::Imported> restore_shop(const std::filesystem::path& from,
                                   const std::filesystem::path& to) {
  JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(to, log::OpenMode::Write));
  if (log->last_arrival() != 0) return fail(Error{Code::AlreadyDone, "restore", to.string(), {}});
  Pictures pictures(to);
  JAMBLINE_TRY(pictures.open(true));
  JAMBLINE_ASSIGN(auto imported, import_shop(*log, pictures, from, {}, {}));
  if (!imported.refused.empty()) return fail(imported.refused.front().second);
  return imported;
}

}  // namespace jambline::engine
