// hub/small_file.h: files of a few lines, whole or not at all, and the little that goes with them.
//
// Durable: what write_whole() has returned survives power loss; a reader finds the old bytes or the
//          new ones. Files are 0600.
// Errors:  those of blobs/file_layer.h; TooLarge (args: limit).
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/error.h"
#include "base/ids.h"

namespace jambline::hub {

Status write_whole(const std::filesystem::path& file, std::string_view bytes);
Result<std::string> read_whole(const std::filesystem::path& file, std::size_t most_bytes);
Status make_folder(const std::filesystem::path& folder);
Status sync_folder(const std::filesystem::path& folder);
Status rename_durably(const std::filesystem::path& from, const std::filesystem::path& to);
// Of a file of any size.
Result<Hash> hash_of_file(const std::filesystem::path& file);

}  // namespace jambline::hub
