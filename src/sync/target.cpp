#include "sync/target.h"

#include <array>
#include <charconv>
#include <vector>

namespace jambline::sync {

namespace {
constexpr std::size_t most_target_signs = 300;

bool plain_hex(std::string_view text) {
  for (const char sign : text)
    if (!((sign >= '0' && sign <= '9') || (sign >= 'a' && sign <= 'f'))) return false;
  return true;
}

template <class Name>
bool read_name(std::string_view text, Name& out) {
  return plain_hex(text) && from_hex(text, out.bytes);
}

bool read_count(std::string_view text, std::uint64_t& out) {
  if (text.empty() || (text.size() > 1 && text.front() == '0')) return false;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), out);
  return read.ec == std::errc{} && read.ptr == text.data() + text.size() && out <= seal::last_seq;
}

std::vector<std::string_view> parts_of(std::string_view path) {
  std::vector<std::string_view> out;
  while (true) {
    const auto end = path.find('/');
    out.push_back(path.substr(0, end));
    if (end == std::string_view::npos) return out;
    path.remove_prefix(end + 1);
  }
}

struct Shape {
  Path path;
  std::string_view word;
  enum class Then : std::uint8_t { Nothing, Device, Upload, Blob, DeviceSettled } then;
  std::string_view query;  // the name of its one number, or empty
};
using Then = Shape::Then;
constexpr auto shapes = std::to_array<Shape>({
    {Path::AskChallenge, "challenge", Then::Nothing, ""},
    {Path::Session, "session", Then::Nothing, ""},
    {Path::Enrol, "enrol", Then::Nothing, ""},
    {Path::EnrolState, "enrol", Then::Device, ""},
    {Path::Invite, "invite", Then::Nothing, ""},
    {Path::Pending, "pending", Then::Nothing, ""},
    {Path::Refuse, "refuse", Then::Device, ""},
    {Path::Log, "log", Then::Device, "from"},
    {Path::Pull, "pull", Then::Nothing, ""},
    {Path::Quarantine, "quarantine", Then::Nothing, ""},
    {Path::Kept, "quarantine", Then::Device, "from"},
    {Path::Settle, "quarantine", Then::DeviceSettled, "through"},
    {Path::Devices, "devices", Then::Nothing, ""},
    {Path::Have, "have", Then::Nothing, ""},
    {Path::Files, "files", Then::Nothing, ""},
    {Path::File, "files", Then::Upload, ""},
    {Path::Blob, "blobs", Then::Blob, ""},
});

bool read_rest(const Shape& shape, const std::vector<std::string_view>& parts, Target& out) {
  const std::size_t wanted = shape.then == Then::Nothing         ? 3
                             : shape.then == Then::DeviceSettled ? 5
                                                                 : 4;
  if (parts.size() != wanted || parts[2] != shape.word) return false;
  switch (shape.then) {
    case Then::Nothing:
      return true;
    case Then::Device:
      return read_name(parts[3], out.device);
    case Then::DeviceSettled:
      return parts[4] == "settled" && read_name(parts[3], out.device);
    case Then::Blob:
      return read_name(parts[3], out.blob);
    case Then::Upload: {
      const auto upload = parse_upload(parts[3]);
      if (upload) out.upload = *upload;
      return upload.has_value();
    }
  }
  return false;
}
}  // namespace

std::string UploadId::text() const {
  return blob.hex() + "-" + std::to_string(size_bytes) + "-" + random.hex();
}

std::optional<UploadId> parse_upload(std::string_view text) {
  constexpr std::size_t hash_signs = 2 * Hash::size;
  constexpr std::size_t random_signs = 16;
  if (text.size() < hash_signs + 1 + 1 + 1 + random_signs) return std::nullopt;
  UploadId out;
  const std::string_view size =
      text.substr(hash_signs + 1, text.size() - hash_signs - random_signs - 2);
  if (text[hash_signs] != '-' || text[text.size() - random_signs - 1] != '-') return std::nullopt;
  if (!read_name(text.substr(0, hash_signs), out.blob)) return std::nullopt;
  if (!read_name(text.substr(text.size() - random_signs), out.random)) return std::nullopt;
  if (!read_count(size, out.size_bytes)) return std::nullopt;
  return out;
}

std::optional<Target> parse_target(std::string_view text) {
  if (text.size() > most_target_signs || text.empty() || text.front() != '/') return std::nullopt;
  const auto question = text.find('?');
  const std::string_view query =
      question == std::string_view::npos ? std::string_view() : text.substr(question + 1);
  const auto parts = parts_of(
      text.substr(1, question == std::string_view::npos ? std::string_view::npos : question - 1));
  Target out;
  if (parts.front() != "v1") return std::nullopt;
  if (parts.size() == 1)
    return question == std::string_view::npos ? std::optional(out) : std::nullopt;
  if (!read_name(parts[1], out.shop)) return std::nullopt;
  for (const Shape& shape : shapes) {
    if (!read_rest(shape, parts, out)) continue;
    if (shape.query.empty()) {
      if (question != std::string_view::npos) return std::nullopt;
    } else {
      const auto equals = query.find('=');
      if (equals == std::string_view::npos || query.substr(0, equals) != shape.query ||
          !read_count(query.substr(equals + 1), out.number))
        return std::nullopt;
    }
    out.path = shape.path;
    return out;
  }
  return std::nullopt;
}

std::string target_of(const Target& target) {
  if (target.path == Path::About) return "/v1";
  for (const Shape& shape : shapes) {
    if (shape.path != target.path) continue;
    std::string out = "/v1/" + target.shop.hex() + "/" + std::string(shape.word);
    if (shape.then == Then::Device || shape.then == Then::DeviceSettled)
      out += "/" + target.device.hex();
    if (shape.then == Then::DeviceSettled) out += "/settled";
    if (shape.then == Then::Upload) out += "/" + target.upload.text();
    if (shape.then == Then::Blob) out += "/" + target.blob.hex();
    if (!shape.query.empty())
      out += "?" + std::string(shape.query) + "=" + std::to_string(target.number);
    return out;
  }
  return {};
}

}  // namespace jambline::sync
