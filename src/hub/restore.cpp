#include <fstream>

#include "hub/backup.h"
#include "hub/manifest.h"
#include "hub/shop_schema.h"
#include "hub/small_file.h"
#include "sqlite/sqlite.h"

namespace jambline::hub {

namespace fs = std::filesystem;

namespace {
// Of SQLite's file header: 2 means that newer pages may stand in a -wal file beside it.
constexpr std::size_t write_version_at = 18;

bool wants_its_wal(const fs::path& database) {
  std::ifstream in(database, std::ios::binary);
  std::array<char, 20> head{};
  in.read(head.data(), head.size());
  return in.gcount() == static_cast<std::streamsize>(head.size()) && head[write_version_at] == 2;
}

// Says why a folder without a manifest is no backup.
Error no_backup(const fs::path& from) {
  std::error_code refused;
  for (const auto& shop : fs::directory_iterator(from / "shops", refused)) {
    const fs::path database = shop.path() / shop_file_name;
    if (!fs::exists(database, refused)) continue;
    const std::string name = "shops/" + shop.path().filename().string() + "/" + shop_file_name;
    const bool torn = wants_its_wal(database) && !fs::exists(database.string() + "-wal", refused);
    return Error{Code::Malformed, "restore", from.string(), {}}
        .with("file", name)
        .with("cause", torn ? "a copied hub folder, without the -wal file that belongs to it"
                            : "a copied hub folder, made by no backup");
  }
  return Error{Code::NoSuchFile, "restore", (from / manifest_file).string(), {}};
}

Status has_hash(const fs::path& file, const Hash& wanted) {
  JAMBLINE_ASSIGN(const Hash found, hash_of_file(file));
  if (found == wanted) return {};
  return fail(Error{Code::BadHash, "restore", file.string(), {{"found", found.hex()}}});
}

Result<std::vector<Hash>> read_list(const fs::path& file, std::uint64_t count) {
  std::ifstream in(file);
  std::vector<Hash> out;
  for (std::string line; std::getline(in, line);) {
    const auto hash = Hash::parse(line);
    if (!hash) return fail(Error{Code::Malformed, "restore", file.string(), {}});
    out.push_back(*hash);
  }
  if (out.size() != count) return fail(Error{Code::Malformed, "restore", file.string(), {}});
  return out;
}

Status copy_whole(const fs::path& from, const fs::path& to) {
  constexpr std::size_t piece_bytes = std::size_t{1} << 20U;
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(const auto in, files.open(from));
  JAMBLINE_ASSIGN(const auto out, files.create(to));
  std::vector<std::uint8_t> piece(piece_bytes);
  for (;;) {
    JAMBLINE_ASSIGN(const std::size_t got, in->read(piece));
    if (got == 0) break;
    JAMBLINE_TRY(out->write(std::span<const std::uint8_t>(piece).first(got)));
  }
  JAMBLINE_TRY(out->sync());
  return out->close();
}

// That the database is whole, a hub's, and of the shop and epoch that the manifest says.
Status check_database(const fs::path& file, const ManifestShop& named) {
  JAMBLINE_ASSIGN(auto database, sqlite::Database::open(file, sqlite::Database::Mode::Frozen, {}));
  JAMBLINE_TRY(check_shop_schema(database));
  JAMBLINE_ASSIGN(const std::string pages, database.text("PRAGMA quick_check(1)"));
  if (pages != "ok")
    return fail(Error{Code::DatabaseDamaged, "restore", file.string(), {{"cause", pages}}});
  const auto is = [&](const char* sql, const auto& wanted) -> Status {
    JAMBLINE_ASSIGN(auto row, database.prepare(sql));
    JAMBLINE_ASSIGN(const bool there, row.step());
    auto found = wanted;
    if (there && row.read(0, found) && found == wanted) return {};
    return fail(Error{Code::WrongShop, "restore", file.string(), {}});
  };
  JAMBLINE_TRY(is("SELECT value FROM about WHERE name = 'shop'", named.shop));
  return is("SELECT value FROM about WHERE name = 'epoch'", named.epoch);
}

Result<RestoredShop> restore_shop(const fs::path& from, const fs::path& to,
                                  const ManifestShop& named, const seal::SigningKey& key,
                                  Random& random) {
  JAMBLINE_ASSIGN(const auto list, read_list(from / named.list, named.files));
  JAMBLINE_TRY(make_folder(to));
  JAMBLINE_TRY(copy_whole(from / named.database, to / shop_file_name));
  blobs::PosixFiles disk;
  JAMBLINE_ASSIGN(const auto kept, blobs::BlobStore::open_read_only(disk, from / "blobs"));
  JAMBLINE_ASSIGN(const auto blobs, blobs::BlobStore::open(disk, to / "blobs"));
  JAMBLINE_ASSIGN(const auto copied, blobs::copy_blobs(*kept, *blobs, list, {}, {}));
  RestoredShop out{named.shop, random.make<seal::Epoch>(), named.entries, copied.copied,
                   copied.damaged};
  out.not_there.insert(out.not_there.end(), copied.missing.begin(), copied.missing.end());
  // Past every mark that devices may have seen since the backup.
  std::array<std::uint8_t, 4> drawn{};
  random.fill(drawn);
  std::uint64_t grows_by = 1;
  for (const std::uint8_t byte : drawn) grows_by = grows_by * 256 + byte;
  JAMBLINE_TRY(begin_new_epoch(to, out.epoch, grows_by, key));
  JAMBLINE_TRY(sync_folder(to));
  return out;
}
}  // namespace

Result<std::vector<RestoredShop>> restore(const fs::path& from, const fs::path& to,
                                          Random& random) {
  const auto manifest = read_manifest(from);
  if (!manifest && manifest.error().code == Code::NoSuchFile) return fail(no_backup(from));
  if (!manifest) return fail(manifest.error());
  JAMBLINE_ASSIGN(const auto key, seal::SigningKey::load(from / identity_file));
  if (key.key() != manifest->hub)
    return fail(Code::WrongKey, "restore", (from / identity_file).string());
  JAMBLINE_ASSIGN(const auto config, read_config(from));
  for (const auto& named : manifest->shops) {  // all of it, before anything is made
    const fs::path shop = from / "shops" / named.shop.hex();
    JAMBLINE_TRY(has_hash(shop / named.database, named.database_hash));
    JAMBLINE_TRY(has_hash(shop / named.list, named.list_hash));
    JAMBLINE_TRY(check_database(shop / named.database, named));
  }
  JAMBLINE_TRY(make_folder(to));
  std::error_code refused;
  if (!fs::is_empty(to, refused)) return fail(Code::AlreadyDone, "restore", to.string());

  JAMBLINE_TRY(make_folder(to / "shops"));
  std::vector<RestoredShop> out;
  for (const auto& named : manifest->shops) {
    const std::string name = named.shop.hex();
    JAMBLINE_ASSIGN(out.emplace_back(),
                    restore_shop(from / "shops" / name, to / "shops" / name, named, key, random));
  }
  JAMBLINE_TRY(sync_folder(to / "shops"));
  JAMBLINE_TRY(write_config(to, config));
  JAMBLINE_TRY(key.save(to / hub_key_file));  // last: now it is a hub
  return out;
}

}  // namespace jambline::hub
