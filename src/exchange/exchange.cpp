#include "exchange/exchange.h"

#include "engine/read_entry.h"
#include "exchange/hub_note.h"
#include "exchange/local_exchange.h"
#include "exchange/new_key.h"

namespace jambline::exchange {

namespace {
namespace fs = std::filesystem;

// An own shop that holds nothing but its founding steps aside for the one that is joined.
Result<bool> put_empty_shop_aside(const fs::path& folder, const ShopId& joined) {
  std::error_code ec;
  if (!fs::exists(folder / "log.db", ec)) return true;
  {
    JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(folder, log::OpenMode::Write));
    if (!log->shop() || log->shop() == joined) return true;
    if (log->last_arrival() > 1) return false;
  }
  fs::path aside;
  for (int number = 1; aside.empty() || fs::exists(aside, ec); ++number)
    aside = folder / ("log.unused-" + std::to_string(number) + ".db");
  fs::rename(folder / "log.db", aside, ec);
  if (ec) return fail(Error{Code::FileFailed, "join", "log.db", {{"cause", ec.message()}}});
  for (const char* left : {"log.db-wal", "log.db-shm", "shelf.db", "shelf.db-wal", "shelf.db-shm"})
    fs::remove(folder / left, ec);
  return true;
}
}  // namespace

Result<bool> Exchange::awaits_admission(const fs::path& folder) {
  log::OpenOptions options;
  options.erasable = engine::may_be_erased;
  JAMBLINE_TRY(move_to_new_key(folder, options));
  const auto note = read_hub_note(folder);
  if (!note) return false;  // open() says it
  if (!*note) return false;
  if ((*note)->new_key) return true;
  if (!(*note)->joins) return false;
  JAMBLINE_ASSIGN(const bool ready, put_empty_shop_aside(folder, (*note)->shop));
  if (!ready) return false;
  const auto key = seal::SigningKey::load(folder / "device.key");
  const auto log = log::EntryLog::open(folder, log::OpenMode::ReadOnly);
  if (!log || (*log)->last_arrival() == 0) return true;
  return key && !(*log)->members().find(key->device());
}

Result<std::unique_ptr<Exchange>> Exchange::open(Parts parts) {
  JAMBLINE_ASSIGN(auto note, read_hub_note(parts.folder));
  return std::make_unique<LocalExchange>(std::move(parts), std::move(note));
}

}  // namespace jambline::exchange
