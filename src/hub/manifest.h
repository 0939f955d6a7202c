// hub/manifest.h: manifest.json of a backup: every file of it, and what it has to be.
//
// Errors: those of hub/small_file.h; Malformed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/describe.h"
#include "base/error.h"
#include "seal/receipt.h"

namespace jambline::hub {

inline constexpr int manifest_format = 1;
inline constexpr const char* manifest_file = "manifest.json";
inline constexpr const char* identity_file = "identity.key";

struct ManifestShop {
  ShopId shop;
  seal::Epoch epoch;
  std::uint64_t entries{};
  std::string database;  // file names in shops/<shop>/
  Hash database_hash;
  std::string list;
  Hash list_hash;
  std::uint64_t files{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "epoch"}, self.epoch);
    visit(Field{.name = "entries", .min = 0, .max = 9.2e18}, self.entries);
    visit(Field{.name = "database"}, self.database);
    visit(Field{.name = "database_hash", .doc = "SHA-256"}, self.database_hash);
    visit(Field{.name = "list", .doc = "hashes of the files in blobs/"}, self.list);
    visit(Field{.name = "list_hash", .doc = "SHA-256"}, self.list_hash);
    visit(Field{.name = "files", .min = 0, .max = 9.2e18}, self.files);
  }
};

struct Manifest {
  int format = manifest_format;
  std::int64_t made_ms{};
  seal::Key hub;
  std::vector<ManifestShop> shops;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "format", .min = 1, .max = 1000}, self.format);
    visit(Field{.name = "made_ms", .unit = "ms"}, self.made_ms);
    visit(Field{.name = "hub", .doc = "identity key"}, self.hub);
    visit(Field{.name = "shops"}, self.shops);
  }
};

Result<Manifest> read_manifest(const std::filesystem::path& folder);
Status write_manifest(const std::filesystem::path& folder, const Manifest& manifest);

}  // namespace jambline::hub
