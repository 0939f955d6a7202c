#include "exchange/hub_note.h"

#include "base/json.h"
#include "log/files.h"

namespace jambline::exchange {

namespace {
constexpr std::size_t most_note_bytes = 64U << 10U;

std::filesystem::path note_file(const std::filesystem::path& folder) {
  return folder / "hub.json";
}
}  // namespace

Result<std::optional<HubNote>> read_hub_note(const std::filesystem::path& folder) {
  const auto text = log::read_file(note_file(folder), most_note_bytes);
  if (!text) {
    if (text.error().code == Code::NoSuchFile) return std::optional<HubNote>();
    return fail(text.error());
  }
  auto note = from_json<HubNote>(*text);
  if (!note)
    return fail(Error{Code::Malformed, "read", "hub.json", {{"field", note.error().subject}}});
  return std::optional<HubNote>(std::move(*note));
}

Status write_hub_note(const std::filesystem::path& folder, const HubNote& note) {
  const auto fresh = folder / "hub.json.new";
  JAMBLINE_TRY(log::write_file(fresh, to_json(note)));
  std::error_code ec;
  std::filesystem::rename(fresh, note_file(folder), ec);
  if (ec) return fail(log::file_error("write", note_file(folder), ec.value()));
  return log::sync_folder(folder);
}

Status forget_hub_note(const std::filesystem::path& folder) {
  std::error_code ec;
  std::filesystem::remove(note_file(folder), ec);
  if (ec) return fail(log::file_error("remove", note_file(folder), ec.value()));
  return log::sync_folder(folder);
}

std::vector<sync::Address> addresses_of(const HubNote& note) {
  std::vector<sync::Address> out;
  for (const auto& text : note.at)
    if (auto address = sync::parse_address(text)) out.push_back(std::move(*address));
  return out;
}

}  // namespace jambline::exchange
