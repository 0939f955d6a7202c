// tests/demo/made_shop.h: a demo shop in a folder, read back from its log.
#pragma once

#include <map>
#include <vector>

#include "app/demo/demo_shop.h"
#include "engine/read_entry.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"
#include "tests/log/log_folder.h"

namespace jambline::demo {

struct Made {
  explicit Made(const DemoOptions& options = {}) {
    log::must(make_shop(folder.path(), options));
    auto log = log::open_log(folder.path(), log::OpenMode::ReadOnly);
    log::must(log->read_after(0, [&](const log::Stored& stored) {
      all.push_back(stored.entry);
      auto entry = engine::read_entry(stored.entry);
      if (entry.subject)
        folds.try_emplace(entry.subject, entry.subject).first->second.apply(entry);
      else
        shop.apply(entry);
      entries.push_back(std::move(entry));
      return true;
    }));
    for (const auto& [job, fold] : folds) cars.push_back(fold.view());
  }
  const log::TempFolder folder;
  std::vector<seal::SealedEntry> all;
  std::vector<entries::Entry> entries;  // the same, read
  std::map<JobId, folds::JobFold> folds;
  std::vector<folds::CarView> cars;
  folds::ShopFold shop;
};

}  // namespace jambline::demo
