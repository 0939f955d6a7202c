#include "engine/engine.h"

#include <latch>

#include "engine/clock_doubt.h"
#include "engine/device_key.h"
#include "engine/local_engine.h"
#include "engine/read_entry.h"
#include "engine/rights_of_log.h"

namespace jambline::engine {

Status LocalEngine::start() {
  if (!parts_.log) {
    log::OpenOptions options;
    options.erasable = may_be_erased;
    std::error_code ignored;  // if the folder cannot be made, opening it says so
    std::filesystem::create_directories(parts_.folder, ignored);
    auto opened = log::EntryLog::open(parts_.folder, log::OpenMode::Write, options);
    if (!opened &&
        (opened.error().code == Code::ReadOnly || opened.error().code == Code::DiskFull)) {
      // What cannot be written is still shown.
      auto to_read = log::EntryLog::open(parts_.folder, log::OpenMode::ReadOnly, options);
      if (to_read)
        barred_ = Error{opened.error().code, "open", "log.db", {}};
      else if (to_read.error().code == Code::NoSuchFile)
        to_read = fail(Error{opened.error().code, "make", "log.db", opened.error().args});
      opened = std::move(to_read);
    }
    if (!opened) return fail(std::move(opened.error()));
    parts_.log = std::move(*opened);
  }
  log_ = parts_.log.get();
  if (log_->newer_schema())
    barred_ = Error{Code::NewerSchema, "open", "log.db", {}};
  else if (!log_->writable() && !barred_)
    barred_ = Error{Code::ReadOnly, "open", "log.db", {}};
  if (log_->writable()) {
    const bool fresh = log_->last_arrival() == 0;
    JAMBLINE_TRY(take_key(fresh));
    if (fresh && !parts_.awaits_admission)
      JAMBLINE_TRY(log_->found_shop(*key_, parts_.device_name, parts_.clock.now(), *parts_.random));
    if (key_)
      if (auto doubt = clock_doubt_at_start(*log_, key_->device(), parts_.clock.now()))
        trouble_ = std::move(doubt);
  }
  JAMBLINE_ASSIGN(rights_, rights_of(*log_));
  jobs_.emplace(*log_, rights_);
  JAMBLINE_ASSIGN(floor_, Floor::open(parts_.folder, *log_, *jobs_, stamp_of(rights_)));
  shelf_where_ = floor_->where();
  finder_ = Finder(shelf_where_);
  JAMBLINE_TRY(fold_shop_anew());
  folded_ = log_->last_arrival();
  if (auto drafts = shelf::Drafts::open(parts_.folder)) {
    drafts_ = std::move(*drafts);
    if (auto all = drafts_->all())
      draft_texts_ = std::move(*all);
    else
      note_trouble(std::move(all.error()));
  } else if (!barred_) {
    note_trouble(std::move(drafts.error()));
  }
  open_pins();
  barred_at_start_ = barred_ && !waits_for_admission();
  if (auto opened = pictures_.open(!barred_at_start_); !opened)
    note_trouble(std::move(opened.error()));
  publish();
  return {};
}

LocalEngine::~LocalEngine() {
  stop_audit();
  drain();  // a picture that is on its way goes from lane to lane
  find_lane_.reset();
  files_lane_.reset();  // before the work lane: its work posts there
  pin_lane_.reset();    // before the work lane: its work posts there
  calc_.reset();        // first: its work may post to the work lane
  work_.reset();
}

void LocalEngine::watch(std::optional<JobId> job) {
  work_->post([this, job] {
    watched_ = job;
    publish();
  });
}

void LocalEngine::want_record() {
  work_->post([this] {
    record_wanted_ = true;
    publish_lists();
  });
}

void LocalEngine::want_lessons() {
  work_->post([this] {
    lessons_wanted_ = true;
    take_lessons();
  });
}

void LocalEngine::worked(std::int64_t from_ms, std::int64_t to_ms,
                         std::function<void(Result<folds::Worked>)> done) {
  work_->post(
      [this, from_ms, to_ms, done = std::move(done)] { done(floor_->worked(from_ms, to_ms)); });
}

void LocalEngine::find(shelf::FindAsked asked, std::shared_ptr<const shelf::Names> kinds,
                       std::stop_token stop, std::function<void(Result<shelf::Found>)> done) {
  find_lane_->post([this, asked = std::move(asked), kinds = std::move(kinds),
                    stop = std::move(stop), done = std::move(done)]() mutable {
    asked.now_ms = parts_.clock.now().wall_ms;
    done(finder_.find(asked, kinds, snapshot()->shop, stop));
  });
}

void LocalEngine::accounts(std::int64_t from_ms, std::int64_t to_ms, std::stop_token stop,
                           std::function<void(Result<std::vector<folds::Account>>)> done) {
  const auto read = [this, from_ms, to_ms,
                     stop = std::move(stop)]() -> Result<std::vector<folds::Account>> {
    if (!accounts_) {
      if (!shelf_where_) return fail(Code::NoSuchFile, "read accounts", "shelf.db");
      JAMBLINE_ASSIGN(accounts_, shelf::Accounts::open(*shelf_where_));
    }
    return accounts_->read(from_ms, to_ms, stop);
  };
  find_lane_->post([read, done = std::move(done)] { done(read()); });
}

void LocalEngine::drain() {
  // A picture goes from lane to lane: work, work behind its drafts, files, work.
  for (Lane* lane : {work_.get(), work_.get(), files_lane_.get(), work_.get(), pin_lane_.get(),
                     calc_.get(), find_lane_.get()}) {
    std::latch over(1);
    lane->post([&over] { over.count_down(); });
    over.wait();
  }
  std::latch reached(1);
  work_->post([&reached] { reached.count_down(); }, Lane::Haste::Later);
  reached.wait();
}

std::shared_ptr<const Snapshot> LocalEngine::snapshot() const {
  const std::lock_guard lock(mutex_);
  return snapshot_;
}

void LocalEngine::take_lessons() {
  auto more = floor_->take_lessons();
  if (!more) return tell(std::move(more.error()));
  if (*more)
    work_->post([this] { take_lessons(); }, Lane::Haste::Later);
  else
    publish_lists();
}

void LocalEngine::publish_lists_later() {
  if (lists_queued_) return;
  lists_queued_ = true;
  work_->post(
      [this] {
        lists_queued_ = false;
        publish_lists();
      },
      Lane::Haste::Later);
}

// The record and the lessons, as far as screens want them.
void LocalEngine::publish_lists() {
  if (record_wanted_) {
    auto all = floor_->all();
    if (!all) return tell(std::move(all.error()));
    record_ = std::move(*all);
  }
  if (lessons_wanted_) lessons_ = floor_->lessons();
  publish();
}

// Without the device's own key nothing is written; what is there is shown. Nor before the device
// is admitted.
Status LocalEngine::take_key(bool fresh) {
  const bool joins = parts_.awaits_admission;
  auto key = device_key(parts_.folder, *log_, fresh || joins, *parts_.random);
  if (key)
    key_ = *key;
  else if (fresh)
    return fail(std::move(key.error()));
  else
    barred_ = std::move(key.error());
  if (key_ && joins && !log_->members().find(key_->device()))
    barred_ = Error{Code::NotYet, "write", "admission", {}};
  return {};
}

bool LocalEngine::waits_for_admission() const {
  return barred_ && barred_->code == Code::NotYet && barred_->subject == "admission";
}

void LocalEngine::note_trouble(Error error) {
  // A log that was found damaged is not written to any more.
  const bool damage = error.code == Code::DatabaseDamaged && error.subject == "log.db";
  (damage ? barred_ : trouble_) = std::move(error);
}

// Something failed; the banner shows it.
void LocalEngine::tell(Error error) {
  note_trouble(std::move(error));
  publish();
}

void LocalEngine::publish() {
  auto next = std::make_shared<Snapshot>();
  next->with_pin = with_pin_;
  next->number = ++published_;
  next->shop = shop_view_;
  next->floor = floor_->in_work();
  next->record = record_;
  next->lessons = lessons_;
  if (watched_) {
    if (auto job = jobs_->get(*watched_)) {
      next->car = (*job)->view;
      next->timeline = (*job)->timeline;
    } else {
      note_trouble(std::move(job.error()));
    }
  }
  next->last_act = last_act_;
  const Status may = may_write();
  next->read_only = !may;
  next->trouble = may ? trouble_ : may.error();
  next->devices = shop_devices(*log_, *shop_view_, key_ ? key_->device() : DeviceId{});
  next->hubs = shop_hubs(*log_);
  for (const auto& head : log_->heads())
    if (key_ && head.device == key_->device()) next->own_entries = head.seq;
  {
    const std::lock_guard lock(mutex_);
    snapshot_ = next;
  }
  if (parts_.published) parts_.published(std::move(next));
}

Result<std::unique_ptr<Engine>> Engine::open(Parts parts) {
  auto engine = std::make_unique<LocalEngine>(std::move(parts));
  JAMBLINE_TRY(engine->start());
  return engine;
}

}  // namespace jambline::engine
