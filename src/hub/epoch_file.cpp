#include "hub/epoch_file.h"

#include "base/json.h"
#include "hub/small_file.h"

namespace jambline::hub {

Result<EpochFile> read_epoch(const std::filesystem::path& shop_folder) {
  constexpr std::size_t most_bytes = 1024;
  JAMBLINE_ASSIGN(const std::string text, read_whole(shop_folder / epoch_file_name, most_bytes));
  return from_json<EpochFile>(text);
}

Status write_epoch(const std::filesystem::path& shop_folder, const EpochFile& said) {
  return write_whole(shop_folder / epoch_file_name, to_json(said) + "\n");
}

}  // namespace jambline::hub
