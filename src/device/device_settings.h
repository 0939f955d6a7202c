// device/device_settings.h: how this one device shows things; never part of the log.
//
// Shape:   device.toml beside the log: units = "metric" | "us", theme = "booth" | "stall" | "auto",
//          text_scale = 100 | 150, person = hex id of who was chosen last (empty: nobody).
// Errors:  a file that is not there gives the defaults; one that cannot be read, or a value that is
//          none of these, gives Malformed (args: field). write() gives FileFailed.
// Durable: written to a file beside it and renamed over the old one. Any thread; a write blocks.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>

#include "base/error.h"

namespace jambline::device {

enum class UnitChoice : std::uint8_t { Metric, Us };
enum class Look : std::uint8_t { Booth, Stall, Device };  // light, dark, as the device

struct Settings {
  UnitChoice units = UnitChoice::Us;
  Look look = Look::Device;
  int text_percent = 100;
  std::string person;
  friend bool operator==(const Settings&, const Settings&) = default;
};

Result<Settings> read_settings(const std::filesystem::path& folder);
Status write_settings(const std::filesystem::path& folder, const Settings& settings);

}  // namespace jambline::device
