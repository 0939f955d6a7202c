// tests/evidence/bundle_parts.h: a bundle taken apart and put together again, as somebody does who
// wants to change it and knows the format.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "evidence/chain_reader.h"
#include "evidence/layout.h"
#include "evidence/zip_reader.h"
#include "evidence/zip_writer.h"
#include "seal/digest.h"
#include "tests/log/log_folder.h"

namespace jambline::evidence {

struct BundleParts {
  std::vector<std::pair<std::string, std::string>> members;  // name, bytes

  static BundleParts of(const std::filesystem::path& file) {
    BundleParts out;
    const auto zip = log::must(ZipReader::open(file));
    for (std::size_t i = 0; i < zip.members().size(); ++i) {
      auto reader = log::must(zip.read(i));
      std::string bytes;
      std::array<std::uint8_t, 4096> piece;
      while (const std::size_t got = log::must(reader.read(piece)))
        bytes.append(reinterpret_cast<const char*>(piece.data()), got);
      out.members.emplace_back(zip.members()[i].name, std::move(bytes));
    }
    return out;
  }
  void write(const std::filesystem::path& file) const {
    auto zip = log::must(ZipWriter::create(file));
    for (const auto& [name, bytes] : members) log::must(zip.add_text(name, bytes));
    log::must(zip.close({}, {}));
  }
  std::string& bytes(const std::string& name) {
    for (auto& [member, found] : members)
      if (member == name) return found;
    ADD_FAILURE() << "no member " << name;
    std::abort();
  }
  std::vector<std::string> names(std::string_view front) const {
    std::vector<std::string> out;
    for (const auto& [name, bytes] : members)
      if (name.starts_with(front)) out.push_back(name);
    return out;
  }
  void remove(const std::string& name) {
    std::erase_if(members, [&](const auto& member) { return member.first == name; });
  }
};

// The records of a chain, each without its length.
inline std::vector<std::string> records_of(const std::string& chain) {
  std::vector<std::string> out;
  for (std::size_t at = 0; at < chain.size();) {
    const auto* length = reinterpret_cast<const std::uint8_t*>(chain.data() + at);
    const std::size_t count = std::size_t{length[0]} << 24U | std::size_t{length[1]} << 16U |
                              std::size_t{length[2]} << 8U | length[3];
    out.push_back(chain.substr(at + 4, count));
    at += 4 + count;
  }
  return out;
}
inline std::string chain_of(const std::vector<std::string>& records) {
  std::string out;
  for (const auto& record : records) {
    for (int shift = 24; shift >= 0; shift -= 8)
      out.push_back(static_cast<char>(record.size() >> static_cast<unsigned>(shift) & 0xffU));
    out += record;
  }
  return out;
}
inline Record decoded(const std::string& record) {
  return log::must(decode_record(seal::bytes_of(record)));
}

}  // namespace jambline::evidence
