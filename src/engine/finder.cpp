#include "engine/finder.h"

#include "engine/rights_of_log.h"
#include "engine/whole_log.h"

namespace jambline::engine {

Result<shelf::Found> Finder::find(const shelf::FindAsked& asked,
                                  const std::shared_ptr<const shelf::Names>& kinds,
                                  const std::shared_ptr<const folds::ShopView>& shop,
                                  const std::stop_token& stop) {
  if (!where_) return fail(Code::NoSuchFile, "search", "shelf.db");
  if (!find_) {
    JAMBLINE_ASSIGN(find_, shelf::Find::open(*where_));
  }
  if (shop != shop_) {
    auto names = std::make_shared<const shelf::Names>(folds::named_of_shop(*shop));
    if (!of_shop_ || *names != *of_shop_) of_shop_ = std::move(names);
    shop_ = shop;
  }
  find_->know(kinds, of_shop_);
  return find_->find(asked, stop);
}

namespace {
bool knows_all(const shelf::Whereabouts& where, const log::EntryLog& log,
               const std::string& rights) {
  auto find = shelf::Find::open(where);
  if (!find) return false;
  const auto stamp = find->stamp();
  return stamp && stamp->shop == log.shop().hex() && stamp->version == shelf::fold_version &&
         stamp->arrival == log.last_arrival() && stamp->rights == rights;
}
}  // namespace

Result<FolderToFind> folder_to_find(const std::filesystem::path& folder) {
  FolderToFind out;
  JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(folder, log::OpenMode::ReadOnly));
  JAMBLINE_ASSIGN(const auto rights, rights_of(*log));
  JAMBLINE_ASSIGN(const auto shop, shop_of(*log, rights));
  out.shop = std::make_shared<const folds::ShopView>(shop.first.view());
  const shelf::Whereabouts there{folder / "shelf.db", {}};
  if (knows_all(there, *log, stamp_of(rights))) {
    out.finder = Finder(there);
    return out;
  }
  JAMBLINE_ASSIGN(out.in_memory, shelf::Shelf::in_memory(log->shop()));
  const auto arrival = log->last_arrival();
  JAMBLINE_ASSIGN(const WholeLog whole, fold_whole_log(*log));
  std::vector<shelf::Car> cars;
  for (const auto& [job, fold] : whole.jobs)
    if (const auto view = fold.view(); view.opened) cars.push_back(shelf::car_of(view));
  JAMBLINE_TRY(out.in_memory->put(cars, arrival));
  out.finder = Finder(out.in_memory->where());
  return out;
}

}  // namespace jambline::engine
