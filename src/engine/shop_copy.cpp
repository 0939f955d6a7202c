#include "engine/shop_copy.h"

namespace jambline::engine {

namespace {
log::Progress first_half(const log::Progress& whole) {
  return [&whole](double part_done) {
    if (whole) whole(part_done / 2);
  };
}
log::Progress second_half(const log::Progress& whole) {
  return [&whole](double part_done) {
    if (whole) whole((1 + part_done) / 2);
  };
}
}  // namespace

Result<log::Exported> export_shop(log::EntryLog& log, const Pictures& pictures,
                                  const std::filesystem::path& folder, const std::stop_token& stop,
                                  const log::Progress& progress) {
  JAMBLINE_ASSIGN(auto exported, log::export_shop(log, folder, stop, first_half(progress)));
  JAMBLINE_TRY(pictures.copy_out(folder, stop, second_half(progress)));
  if (progress) progress(1);
  return exported;
}

Result<log::Imported> import_shop(log::EntryLog& log, Pictures& pictures,
                                  const std::filesystem::path& folder, const std::stop_token& stop,
                                  const log::Progress& progress) {
  JAMBLINE_ASSIGN(auto imported, log::import_shop(log, folder, stop, first_half(progress)));
  JAMBLINE_TRY(pictures.copy_in(folder, stop, second_half(progress), imported.refused));
  if (progress) progress(1);
  return imported;
}

}  // namespace jambline::engine
