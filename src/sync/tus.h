// sync/tus.h: the few header values of tus 1.0 that are not just numbers.
//
// Source:  tus resumable upload protocol 1.0.0, sections Core Protocol and Creation.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/ids.h"

namespace jambline::sync {

inline constexpr std::string_view tus_version = "1.0.0";
inline constexpr std::string_view tus_extensions = "creation,termination";
inline constexpr std::string_view tus_media_type = "application/offset+octet-stream";

// A whole number of decimal digits and nothing else.
std::optional<std::uint64_t> decimal(std::string_view text);
// Upload-Metadata is "key base64,key base64"; the value of one key, decoded.
std::optional<std::string> metadata_value(std::string_view header, std::string_view key);
std::string metadata_of(std::string_view key, std::string_view value);
// "bytes=100-": from where on; nothing for any other range.
std::optional<std::uint64_t> range_start(std::string_view header);

}  // namespace jambline::sync
