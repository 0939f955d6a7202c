// log/files.h: the few file acts of this folder, every return checked.
//
// Errors: by errno: DiskFull, ReadOnly, NoSuchFile, otherwise FileFailed; args: cause.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/error.h"

namespace jambline::log {

Error file_error(std::string operation, const std::filesystem::path& file, int reason);

// Makes what was made or renamed in the folder survive power loss.
Status sync_folder(const std::filesystem::path& folder);
// A new file with these bytes, synced; an old one of that name is replaced.
Status write_file(const std::filesystem::path& file, std::string_view bytes);
// TooLarge when the file is over `most_bytes`.
Result<std::string> read_file(const std::filesystem::path& file, std::size_t most_bytes);

}  // namespace jambline::log
