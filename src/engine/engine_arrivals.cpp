#include <algorithm>

#include "engine/local_engine.h"
#include "engine/read_entry.h"
#include "engine/rights_of_log.h"
#include "engine/shop_copy.h"

namespace jambline::engine {

namespace {
constexpr std::size_t entries_a_slice = 50;
constexpr std::size_t entries_a_look = 2000;
}  // namespace

void LocalEngine::take_page(std::shared_ptr<const ArrivedPage> page,
                            std::function<void(Status)> done) {
  work_->post(
      [this, page = std::move(page), done = std::move(done)] { take_slices(page, 0, done); },
      Lane::Haste::Later);
}

void LocalEngine::import_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                              std::function<void(Result<log::Imported>)> done) {
  work_->post(
      [this, folder = std::move(folder), stop = std::move(stop), progress = std::move(progress),
       done = std::move(done)] {
        auto imported = engine::import_shop(*log_, pictures_, folder, stop, [&](double part_done) {
          if (auto taken = take_in_arrivals(); !taken) note_trouble(std::move(taken.error()));
          if (progress) progress(part_done);
          work_->let_urgent_work_through();
        });
        if (auto taken = take_in_arrivals(); !taken) note_trouble(std::move(taken.error()));
        publish();
        take_up_changed_jobs();
        done(std::move(imported));
      },
      Lane::Haste::Later);
}

void LocalEngine::export_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                              std::function<void(Result<log::Exported>)> done) {
  work_->post(
      [this, folder = std::move(folder), stop = std::move(stop), progress = std::move(progress),
       done = std::move(done)] {
        done(engine::export_shop(*log_, pictures_, folder, stop, [&](double part_done) {
          if (progress) progress(part_done);
          work_->let_urgent_work_through();
        }));
      },
      Lane::Haste::Later);
}

// The next slice of a page, then the rest after what is urgent.
void LocalEngine::take_slices(const std::shared_ptr<const ArrivedPage>& page, std::size_t from,
                              const std::function<void(Status)>& done) {
  const std::span entries(page->entries);
  const std::size_t count = std::min(entries_a_slice, entries.size() - from);
  const bool last = from + count == entries.size();
  log::Page slice{entries.subspan(from, count), {}, {}};
  if (last) slice.receipts = page->receipts, slice.cursor = page->cursor;
  const auto stored = log_->add_page(slice);
  if (!stored) {
    note_trouble(stored.error());
    publish();
    return done(fail(stored.error()));
  }
  if (waits_for_admission() && key_ && log_->members().find(key_->device())) barred_.reset();
  if (auto taken = take_in_arrivals(); !taken) note_trouble(std::move(taken.error()));
  if (!last)
    return work_->post([this, page, next = from + count, done] { take_slices(page, next, done); },
                       Lane::Haste::Later);
  publish();
  if (!page->entries.empty()) take_up_changed_jobs();
  done({});
}

// What was erased is known by no fold any more.
Status LocalEngine::fold_shop_anew() {
  JAMBLINE_ASSIGN(auto anew, shop_of(*log_, rights_));
  std::tie(shop_, shop_rights_) = std::move(anew);
  shop_view_ = std::make_shared<const folds::ShopView>(shop_.view());
  return {};
}

// Takes written or arrived entries into shop, jobs and floor.
Status LocalEngine::fold(const std::vector<entries::Entry>& fresh, bool at_once) {
  JAMBLINE_ASSIGN(bool shop_anew, learn_rights(fresh));
  std::map<JobId, std::vector<entries::Entry>> by_job;
  bool shop_changed = false;
  for (const auto& entry : fresh) {
    if (entry.subject) {
      by_job[entry.subject].push_back(entry);
    } else {
      entries::Entry judged = entry;
      shop_anew = shop_rights_.judge(rights_, judged) || shop_anew;
      shop_.apply(judged);
      shop_changed = true;
      shop_anew = shop_anew || entry.kind == seal::kind::payload_erased;
    }
  }
  if (shop_anew)
    JAMBLINE_TRY(fold_shop_anew());
  else if (shop_changed)
    shop_view_ = std::make_shared<const folds::ShopView>(shop_.view());
  folded_ = log_->last_arrival();
  for (const auto& [job, entries] : by_job) {
    if (std::any_of(entries.begin(), entries.end(),
                    [](const auto& entry) { return entry.kind == seal::kind::payload_erased; })) {
      jobs_->forget(job);  // what it said before is read no more
      text_was_erased_ = true;
    }
    if (at_once || job == watched_) {
      JAMBLINE_ASSIGN(const auto* grown, jobs_->grow(job, entries));
      if (auto kept = floor_->change(*grown->view, folded_); !kept) tell(std::move(kept.error()));
    } else {
      JAMBLINE_TRY(jobs_->grow_if_known(job, entries));
      floor_->note_changed(job);
    }
  }
  if (text_was_erased_) take_up_changed_jobs_later();
  return {};
}

Status LocalEngine::take_in_arrivals() {
  std::vector<entries::Entry> fresh;
  JAMBLINE_TRY(log_->said_after(folded_, [&](const log::Said& said) {
    fresh.push_back(read_entry(said));
    return true;
  }));
  return fold(fresh, /*at_once=*/false);
}

Result<bool> LocalEngine::learn_rights(const std::vector<entries::Entry>& fresh) {
  const bool may_change = std::any_of(fresh.begin(), fresh.end(), [](const auto& entry) {
    return seal::is_membership(entry.kind) || entry.kind == entries::PersonAdded::kind;
  });
  if (!may_change) return false;
  folds::RightsFold before = rights_;
  rights_.set_devices(standings_of(log_->members()));
  for (const auto& entry : fresh)
    if (!entry.subject) rights_.apply(entry);
  if (stamp_of(before) == stamp_of(rights_)) return false;
  JAMBLINE_TRY(look_at_changed_devices(*log_, before.devices(), rights_.devices(),
                                       [this](const JobId& job) { fold_car_again(job); }));
  const auto others = people_with_other_rights(before, rights_);
  if (!others.empty()) {
    other_rights_.insert(others.begin(), others.end());
    looked_through_ = 0;
  }
  take_up_changed_jobs_later();
  return true;
}

Result<bool> LocalEngine::look_for_their_cars() {
  if (other_rights_.empty()) return false;
  std::size_t left = entries_a_look;
  JAMBLINE_TRY(log_->said_after(looked_through_, [&](const log::Said& said) {
    if (left-- == 0) return false;
    looked_through_ = said.arrival;
    // Of a car's entries these alone may need a right.
    const bool may_need = said.header.kind == entries::OperationPlanned::kind ||
                          said.header.kind == entries::Withdrawn::kind;
    if (may_need && said.header.subject && other_rights_.count(said.header.person) != 0)
      fold_car_again(said.header.subject);
    return true;
  }));
  if (looked_through_ < folded_) return true;
  other_rights_.clear();
  return false;
}

void LocalEngine::fold_car_again(const JobId& job) {
  if (!job) return;
  jobs_->forget(job);
  floor_->note_changed(job);
}

void LocalEngine::take_up_changed_jobs_later() {
  work_->post([this] { take_up_changed_jobs(); }, Lane::Haste::Later);
}

void LocalEngine::take_up_changed_jobs() {
  auto more = look_for_their_cars();
  if (more && !*more) more = floor_->take_up_one(*jobs_, folded_);
  if (!more) return tell(std::move(more.error()));
  if (*more) return take_up_changed_jobs_later();
  if (auto kept = floor_->keep_rights(stamp_of(rights_)); !kept)
    note_trouble(std::move(kept.error()));
  if (text_was_erased_) {
    text_was_erased_ = false;
    if (auto gone = floor_->forget_erased(); !gone) note_trouble(std::move(gone.error()));
  }
  publish_lists();
}

}  // namespace jambline::engine
