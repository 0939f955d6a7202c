// engine/finder.h: asks a shelf, with the names that the shop gives its people and things now.
//
// Threads: one at a time; the shelf's owner goes on meanwhile.
// Errors:  those of shelf/find.h.
#pragma once

#include <memory>
#include <optional>
#include <stop_token>

#include "folds/shop_view.h"
#include "log/entry_log.h"
#include "shelf/find.h"
#include "shelf/shelf.h"

namespace jambline::engine {

class Finder {
 public:
  explicit Finder(std::optional<shelf::Whereabouts> where = {}) : where_(std::move(where)) {}
  // `kinds`: what the kinds of the record are called (folds::named_kinds); null: not looked for.
  Result<shelf::Found> find(const shelf::FindAsked& asked,
                            const std::shared_ptr<const shelf::Names>& kinds,
                            const std::shared_ptr<const folds::ShopView>& shop,
                            const std::stop_token& stop);

 private:
  std::optional<shelf::Whereabouts> where_;
  std::optional<shelf::Find> find_;  // once somebody asked
  std::shared_ptr<const folds::ShopView> shop_;
  std::shared_ptr<const shelf::Names> of_shop_;
};

// The shelf of a folder that somebody else may be writing to, or of a folder that may not be
// written at all. Where it does not know all of the log, one in memory is folded from the log.
struct FolderToFind {
  std::shared_ptr<const folds::ShopView> shop;
  std::optional<shelf::Shelf> in_memory;
  Finder finder;
};
Result<FolderToFind> folder_to_find(const std::filesystem::path& folder);

}  // namespace jambline::engine
