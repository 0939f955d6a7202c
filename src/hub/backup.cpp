#include "hub/backup.h"

#include <set>

#include "hub/manifest.h"
#include "hub/operator_acts.h"
#include "hub/small_file.h"
#include "sqlite/sqlite.h"

namespace jambline::hub {

namespace fs = std::filesystem;

namespace {
constexpr std::size_t hash_signs_in_names = 16;
constexpr std::string_view backup_readme =
    R"(This is a backup of a Jambline hub, made by `jambline-hub backup`.

It can be made again into this folder: only new files are copied.
It becomes a hub again by `jambline-hub restore THIS_FOLDER --to AN_EMPTY_FOLDER`, and by nothing
else: do not copy files out of it, or into it.

identity.key is the hub's secret key. Whoever has it can pass for this hub. Keep this folder as you
keep the keys of the shop.
)";

Status take_away(const fs::path& file) {
  blobs::PosixFiles files;
  if (Status gone = files.remove(file); !gone && gone.error().code != Code::NoSuchFile) return gone;
  return {};
}

// A whole copy of the database as it stands at one commit, on the disk.
Status copy_database(const fs::path& shop_folder, const fs::path& to) {
  JAMBLINE_TRY(take_away(to));
  JAMBLINE_ASSIGN(auto database, sqlite::Database::open(shop_folder / shop_file_name,
                                                        sqlite::Database::Mode::ReadOnly, {}));
  {
    JAMBLINE_ASSIGN(auto vacuum, database.prepare("VACUUM INTO ?"));
    const std::string name = to.string();
    vacuum.bind_text(1, name);
    JAMBLINE_TRY(vacuum.finish());
  }
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(const auto out, files.append(to));
  JAMBLINE_TRY(out->sync());
  return out->close();
}

Result<Hash> named_by_hash(const fs::path& made, const fs::path& folder, const std::string& start,
                           const std::string& ending, std::string& name) {
  JAMBLINE_ASSIGN(const Hash hash, hash_of_file(made));
  name = start + hash.hex().substr(0, hash_signs_in_names) + ending;
  JAMBLINE_TRY(rename_durably(made, folder / name));
  return hash;
}

Status look_into_copy(const fs::path& file, ManifestShop& out) {
  JAMBLINE_ASSIGN(auto database, sqlite::Database::open(file, sqlite::Database::Mode::Frozen, {}));
  JAMBLINE_ASSIGN(auto epoch, database.prepare("SELECT value FROM about WHERE name = 'epoch'"));
  JAMBLINE_ASSIGN(const bool there, epoch.step());
  if (!there || !epoch.read(0, out.epoch))
    return fail(Code::DatabaseDamaged, "back up", shop_file_name);
  JAMBLINE_ASSIGN(const std::int64_t last, database.number("SELECT max(hub_seq) FROM entries"));
  out.entries = static_cast<std::uint64_t>(last);
  return {};
}

Result<BackedUpShop> back_up_shop(ShopPlace& place, blobs::Files& disk, const fs::path& to,
                                  ManifestShop& named, const std::stop_token& stop) {
  JAMBLINE_TRY(make_folder(to));
  named.shop = place.id();
  JAMBLINE_TRY(copy_database(place.folder(), to / "shop.db.new"));
  JAMBLINE_ASSIGN(named.database_hash,
                  named_by_hash(to / "shop.db.new", to, "shop-", ".db", named.database));
  JAMBLINE_TRY(look_into_copy(to / named.database, named));

  JAMBLINE_ASSIGN(const auto kept, blobs::BlobStore::open(disk, to / "blobs"));
  JAMBLINE_ASSIGN(const auto here, place.files().blobs().list());
  JAMBLINE_ASSIGN(const auto copied,
                  blobs::copy_blobs(place.files().blobs(), *kept, here, stop, {}));
  if (copied.stopped) return fail(Code::Stopped, "back up", place.id().hex());
  JAMBLINE_ASSIGN(const auto all, kept->list());
  std::string list;
  for (const Hash& file : all) list += file.hex() + "\n";
  JAMBLINE_TRY(write_whole(to / "files.txt", list));
  JAMBLINE_ASSIGN(named.list_hash,
                  named_by_hash(to / "files.txt", to, "files-", ".txt", named.list));
  named.files = all.size();
  return BackedUpShop{place.id(), named.entries, all.size(), copied.copied, copied.damaged};
}

Status put_identity(const Hub& hub, const fs::path& to) {
  const auto there = seal::SigningKey::load(to / identity_file);
  if (there && there->key() != hub.key().key())
    return fail(Code::WrongKey, "back up", (to / identity_file).string());
  if (there) return {};
  if (there.error().code != Code::NoSuchFile) return fail(there.error());
  return hub.key().save(to / identity_file);
}

// What the manifest before named and this one does not.
Status take_older_away(const fs::path& folder, const ManifestShop& named) {
  JAMBLINE_ASSIGN(const auto items, blobs::PosixFiles().list(folder));
  for (const auto& item : items)
    if (item.kind == blobs::FolderItem::Kind::File && item.name != named.database &&
        item.name != named.list)
      JAMBLINE_TRY(take_away(folder / item.name));
  return {};
}
}  // namespace

Result<std::vector<BackedUpShop>> back_up(Hub& hub, const fs::path& to,
                                          const std::stop_token& stop) {
  const auto shut = hub.shut();
  if (!shut.empty()) return fail(shut.begin()->second);  // it would be missing in the backup
  if (fs::exists(to / hub_key_file)) return fail(Code::NotAllowed, "back up", to.string());
  JAMBLINE_TRY(make_folder(to));
  JAMBLINE_ASSIGN(const log::FolderLock lock, log::FolderLock::take(to));
  JAMBLINE_TRY(put_identity(hub, to));
  JAMBLINE_TRY(make_folder(to / "shops"));
  blobs::PosixFiles disk;
  Manifest manifest;
  manifest.made_ms = hub.clock().now().wall_ms;
  manifest.hub = hub.key().key();
  std::vector<BackedUpShop> out;
  for (const auto& place : hub.shops()) {
    ManifestShop& named = manifest.shops.emplace_back();
    JAMBLINE_ASSIGN(out.emplace_back(),
                    back_up_shop(*place, disk, to / "shops" / place->id().hex(), named, stop));
    JAMBLINE_TRY(sync_folder(to / "shops"));
  }
  JAMBLINE_TRY(write_config(to, hub.config()));
  JAMBLINE_TRY(write_whole(to / "README.txt", backup_readme));
  JAMBLINE_TRY(write_manifest(to, manifest));
  for (const auto& named : manifest.shops)
    JAMBLINE_TRY(take_older_away(to / "shops" / named.shop.hex(), named));
  return out;
}

}  // namespace jambline::hub
