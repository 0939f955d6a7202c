// hub/backup.h: a hub copied into a folder while it serves, and a hub made again from one.
//
// Shape:   shops/<shop>/shop-<hash>.db (VACUUM INTO), files-<hash>.txt (one file's hash a line) and
//          blobs/; identity.key (0600: who has it can be the hub), hub.json, README.txt and, last,
//          manifest.json, which names every file and its hash. Into the same folder again only new
//          files are copied; until the new manifest stands the old backup is whole.
// Restore: refuses what a manifest does not name to the byte, and any copy of a hub's folder: a
//          database in use that is copied as a file is torn. The restored hub keeps its identity,
//          draws a new epoch for each shop and asks devices for all files again, so that they send
//          what came after the backup. Files that are damaged or missing in the backup are named
//          and left out: devices send them again.
// Errors:  of restore(): NoSuchFile (manifest.json), Malformed (cause: a copied hub folder),
//          BadHash (subject: the file), WrongKey, NewerSchema, AlreadyDone (the place is not
//          empty); of both: those of files and databases, Stopped.
// Threads: any. Nobody of a shop waits for a backup.
#pragma once

#include "hub/hub.h"

namespace jambline::hub {

struct BackedUpShop {
  ShopId shop;
  std::uint64_t entries{};
  std::uint64_t files{};         // in the backup
  std::uint64_t files_copied{};  // that were not there before
  std::vector<Hash> damaged;     // here: not copied
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "entries"}, self.entries);
    visit(Field{.name = "files"}, self.files);
    visit(Field{.name = "files_copied"}, self.files_copied);
    visit(Field{.name = "damaged"}, self.damaged);
  }
};
Result<std::vector<BackedUpShop>> back_up(Hub& hub, const std::filesystem::path& to,
                                          const std::stop_token& stop);

struct RestoredShop {
  ShopId shop;
  seal::Epoch epoch;  // the new one
  std::uint64_t entries{};
  std::uint64_t files{};
  std::vector<Hash> not_there;  // damaged or missing in the backup
};
Result<std::vector<RestoredShop>> restore(const std::filesystem::path& from,
                                          const std::filesystem::path& to, Random& random);

}  // namespace jambline::hub
