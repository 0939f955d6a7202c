#include "hub/manifest.h"

#include "base/json.h"
#include "hub/small_file.h"

namespace jambline::hub {

Result<Manifest> read_manifest(const std::filesystem::path& folder) {
  constexpr std::size_t most_bytes = 16U << 20U;
  JAMBLINE_ASSIGN(const std::string text, read_whole(folder / manifest_file, most_bytes));
  JAMBLINE_ASSIGN(auto out, from_json<Manifest>(text));
  if (out.format > manifest_format) return fail(Code::NewerSchema, "restore", manifest_file);
  for (const auto& shop : out.shops)
    for (const std::string& name : {shop.database, shop.list})
      if (name.empty() || name.find('/') != std::string::npos || name.front() == '.')
        return fail(Error{Code::Malformed, "restore", manifest_file, {}}.with("field", "name"));
  return out;
}

Status write_manifest(const std::filesystem::path& folder, const Manifest& manifest) {
  return write_whole(folder / manifest_file, to_json(manifest) + "\n");
}

}  // namespace jambline::hub
