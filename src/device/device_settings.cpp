#include "device/device_settings.h"

#include <QByteArray>
#include <QSaveFile>
#include <QString>
#include <array>
#include <optional>
#include <sstream>
#include <string_view>
#include <toml++/toml.h>

namespace jambline::device {

namespace {
constexpr std::array<std::string_view, 2> unit_words{"metric", "us"};
constexpr std::array<std::string_view, 3> look_words{"booth", "stall", "auto"};

std::filesystem::path file_of(const std::filesystem::path& folder) {
  return folder / "device.toml";
}

template <std::size_t N>
std::optional<std::size_t> place(const std::array<std::string_view, N>& words,
                                 std::string_view word) {
  for (std::size_t at = 0; at < N; ++at)
    if (words[at] == word) return at;
  return std::nullopt;
}

tl::unexpected<Error> malformed(const char* field) {
  return fail(Error{Code::Malformed, "read the settings", "device.toml", {{"field", field}}});
}
}  // namespace

Result<Settings> read_settings(const std::filesystem::path& folder) {
  std::error_code gone;
  if (!std::filesystem::exists(file_of(folder), gone)) return Settings{};
  toml::table table;
  try {
    table = toml::parse_file(file_of(folder).string());
  } catch (const toml::parse_error&) {
    return malformed("file");
  }
  Settings out;
  const auto units =
      place(unit_words, table["units"].value_or(unit_words[static_cast<std::size_t>(out.units)]));
  if (!units) return malformed("units");
  out.units = static_cast<UnitChoice>(*units);
  const auto look =
      place(look_words, table["theme"].value_or(look_words[static_cast<std::size_t>(out.look)]));
  if (!look) return malformed("theme");
  out.look = static_cast<Look>(*look);
  out.text_percent = table["text_scale"].value_or(100);
  if (out.text_percent != 100 && out.text_percent != 150) return malformed("text_scale");
  out.person = table["person"].value_or(std::string());
  return out;
}

Status write_settings(const std::filesystem::path& folder, const Settings& settings) {
  toml::table table;
  table.insert("units", unit_words[static_cast<std::size_t>(settings.units)]);
  table.insert("theme", look_words[static_cast<std::size_t>(settings.look)]);
  table.insert("text_scale", settings.text_percent);
  table.insert("person", settings.person);
  std::ostringstream text;
  text << table << "\n";
  QSaveFile file(QString::fromStdString(file_of(folder).string()));
  const bool written = file.open(QIODevice::WriteOnly) &&
                       file.write(QByteArray::fromStdString(text.str())) >= 0 && file.commit();
  if (!written)
    return fail(Error{Code::FileFailed,
                      "keep the settings",
                      "device.toml",
                      {{"cause", file.errorString().toStdString()}}});
  return {};
}

}  // namespace jambline::device
