#include "engine/engine.h"

#include <algorithm>
#include <atomic>
#include <latch>
#include <map>
#include <mutex>
#include <set>

#include "acts/decide.h"
#include "engine/device_key.h"
#include "engine/erase.h"
#include "engine/floor.h"
#include "engine/job_cache.h"
#include "engine/lane.h"
#include "engine/pictures.h"
#include "engine/read_entry.h"
#include "engine/shop_copy.h"
#include "folds/shop_fold.h"
#include "shelf/drafts.h"

namespace jambline::engine {

namespace {
constexpr std::int64_t start_of_2025_ms = 1735689600000;

class LocalEngine final : public Engine {
 public:
  explicit LocalEngine(Parts parts) : parts_(std::move(parts)), pictures_(parts_.folder) {}

  Status start() {
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
      if (fresh)
        JAMBLINE_TRY(
            log_->found_shop(*key_, parts_.device_name, parts_.clock.now(), *parts_.random));
      look_at_clock();
    }
    jobs_.emplace(*log_);
    JAMBLINE_ASSIGN(floor_, Floor::open(parts_.folder, *log_, *jobs_));
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
    if (auto opened = pictures_.open(!barred_); !opened) note_trouble(std::move(opened.error()));
    publish();
    return {};
  }

  ~LocalEngine() override {
    stop_audit();
    files_lane_.reset();  // before the work lane: its work posts there
    pin_lane_.reset();    // before the work lane: its work posts there
    calc_.reset();        // first: its work may post to the work lane
    work_.reset();
  }

  void post(acts::Command command, PersonId person, Done done) override {
    work_->post([this, command = std::move(command), person, done = std::move(done)] {
      auto wrote = act(command, person);
      if (wrote) publish();
      if (done) done(std::move(wrote));
      if (record_wanted_ || lessons_wanted_) publish_lists_later();
    });
  }

  void watch(std::optional<JobId> job) override {
    work_->post([this, job] {
      watched_ = job;
      publish();
    });
  }

  void want_record() override {
    work_->post([this] {
      record_wanted_ = true;
      publish_lists();
    });
  }

  void want_lessons() override {
    work_->post([this] {
      lessons_wanted_ = true;
      take_lessons();
    });
  }

  void worked(std::int64_t from_ms, std::int64_t to_ms,
              std::function<void(Result<folds::Worked>)> done) override {
    work_->post(
        [this, from_ms, to_ms, done = std::move(done)] { done(floor_->worked(from_ms, to_ms)); });
  }

  void keep_draft(const std::string& form, const std::string& json) override {
    {
      const std::lock_guard lock(mutex_);
      if (json.empty())
        draft_texts_.erase(form);
      else
        draft_texts_[form] = json;
    }
    work_->post([this, form, json] {
      if (!drafts_) return;
      if (auto kept = drafts_->keep(form, json); !kept) tell(std::move(kept.error()));
    });
  }

  std::string draft(const std::string& form) const override {
    const std::lock_guard lock(mutex_);
    const auto found = draft_texts_.find(form);
    return found == draft_texts_.end() ? std::string() : found->second;
  }

  void set_pin(PersonId person, std::string pin, std::function<void(Status)> done) override {
    pin_lane_->post([this, person, pin = std::move(pin), done = std::move(done)] {
      Status changed = pins_ ? pin.empty() ? pins_->remove(person) : pins_->set(person, pin)
                             : Status(fail(Error{Code::Malformed, "read", "people.secret", {}}));
      if (changed) publish_pins();
      done(std::move(changed));
    });
  }

  void try_pin(PersonId person, std::string pin,
               std::function<void(Result<seal::PinTry>)> done) override {
    pin_lane_->post([this, person, pin = std::move(pin), done = std::move(done)] {
      if (pins_)
        done(pins_->attempt(person, pin, parts_.clock.now().wall_ms));
      else
        done(seal::PinTry{seal::PinAnswer::NoPin, 0});
    });
  }

  void erase_name(PersonId person, PersonId by, std::function<void(Status)> done) override {
    work_->post([this, person, by, done = std::move(done)] {
      Status erased = erase_names(person, by);
      publish();
      done(std::move(erased));
    });
  }

  void audit(std::function<void(double)> progress,
             std::function<void(Result<log::Audit>)> done) override {
    calc_->post([this, stop = new_stop(), progress = std::move(progress), done = std::move(done)] {
      done(log::EntryLog::audit(parts_.folder, stop, progress));
    });
  }

  void stop_audit() override {
    const std::lock_guard lock(mutex_);
    audit_stop_.request_stop();
  }

  void keep_picture(PictureBytes bytes, acts::TakePicture command, PersonId person,
                    Done done) override {
    work_->post([this, bytes = std::move(bytes), command = std::move(command), person,
                 done = std::move(done)]() mutable {
      if (barred_) return done(fail(*barred_));
      pictures_.begin_keeping(command.facts.file);
      keep_draft(meant_form(command.facts.file), meant_text(command, person));
      files_lane_->post([this, bytes = std::move(bytes), command = std::move(command), person,
                         done = std::move(done)]() mutable {
        Status put = pictures_.put(*bytes, command.facts.file);
        work_->post([this, put = std::move(put), command = std::move(command), person,
                     done = std::move(done)] { name_picture(put, command, person, done); });
      });
    });
  }

  const blobs::BlobStore* blobs() const override { return pictures_.store(); }

  void leftovers(std::function<void(Result<std::vector<LeftoverPicture>>)> done) override {
    calc_->post([this, done = std::move(done)] {
      done(pictures_.leftovers([this](const std::string& form) { return draft(form); }));
    });
  }

  void drop_leftover(Hash file, std::function<void(Status)> done) override {
    calc_->post([this, file, done = std::move(done)] {
      Status dropped = pictures_.drop(file);
      if (dropped) keep_draft(meant_form(file), "");
      done(std::move(dropped));
    });
  }

  void check_pictures(std::function<void(double)> progress,
                      std::function<void(Result<PictureCheck>)> done) override {
    calc_->post([this, stop = new_stop(), progress = std::move(progress), done = std::move(done)] {
      done(engine::check_pictures(parts_.folder, pictures_.store(), stop, progress));
    });
  }

  void calculate(std::function<void()> work) override { calc_->post(std::move(work)); }

  void export_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                   std::function<void(Result<log::Exported>)> done) override {
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

  void import_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                   std::function<void(Result<log::Imported>)> done) override {
    work_->post(
        [this, folder = std::move(folder), stop = std::move(stop), progress = std::move(progress),
         done = std::move(done)] {
          auto imported =
              engine::import_shop(*log_, pictures_, folder, stop, [&](double part_done) {
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

  std::shared_ptr<const Snapshot> snapshot() const override {
    const std::lock_guard lock(mutex_);
    return snapshot_;
  }

  void drain() override {
    // A picture goes over three lanes: work, files, work.
    for (Lane* lane : {work_.get(), files_lane_.get(), work_.get(), pin_lane_.get(), calc_.get()}) {
      std::latch over(1);
      lane->post([&over] { over.count_down(); });
      over.wait();
    }
    std::latch reached(1);
    work_->post([&reached] { reached.count_down(); }, Lane::Haste::Later);
    reached.wait();
  }

 private:
  // Decides, appends, folds. Nothing is written, folded or shown unless all of it is on disk.
  Result<Wrote> act(const acts::Command& command, const PersonId& person) {
    if (barred_) return fail(*barred_);
    const Moment now = parts_.clock.now();
    std::optional<Error> unreadable;
    const acts::World world{*shop_view_,
                            [&](const JobId& job) -> const folds::CarView* {
                              auto known = jobs_->get(job);
                              if (known) return (*known)->view.get();
                              unreadable = std::move(known.error());
                              return nullptr;
                            },
                            [&](const PersonId& worker) { return floor_->clock_of(worker); }};
    auto drafts = acts::decide(world, command, {person, *parts_.random, now.wall_ms, now});
    if (unreadable) {
      tell(*unreadable);
      return fail(std::move(*unreadable));
    }
    if (!drafts) return fail(std::move(drafts.error()));

    if (auto there = pictures_.are_there(*drafts); !there) return fail(std::move(there.error()));
    std::vector<log::Draft> bytes;
    bytes.reserve(drafts->size());
    for (const auto& draft : *drafts) {
      entries::Written written = entries::write(draft.payload);
      bytes.push_back({draft.subject, written.kind, written.schema, std::move(written.payload)});
    }
    auto stored = log_->append(*key_, person, bytes, parts_.clock.now(), *parts_.random);
    if (!stored) {
      tell(stored.error());
      return fail(std::move(stored.error()));
    }
    trouble_.reset();
    Wrote wrote;
    auto last = std::make_shared<LastAct>(LastAct{command, person, 0, {}});
    for (const auto& one : *stored) {
      wrote.entries.push_back(read_entry(one.entry));
      last->entries.emplace_back(one.entry.header.subject, one.entry.hash);
      last->wall_ms = one.entry.header.wall_ms;
    }
    if (std::holds_alternative<acts::OpenCar>(command)) wrote.job = wrote.entries.front().subject;
    last_act_ = std::move(last);
    note_clock(stored->front().entry.header.clock_flags);
    // It is on the disk: what fails from here on is told, but the act stands.
    if (auto folded = fold(wrote.entries, /*at_once=*/true); !folded)
      note_trouble(std::move(folded.error()));
    return wrote;
  }

  // The file is on the disk or could not be put there. Where it was meant to go is kept until its
  // entry is.
  void name_picture(const Status& put, const acts::TakePicture& command, const PersonId& person,
                    const Done& done) {
    Result<Wrote> wrote = put ? act(command, person) : Result<Wrote>(fail(put.error()));
    if (wrote || !put) keep_draft(meant_form(command.facts.file), "");
    pictures_.end_keeping(command.facts.file);
    if (wrote)
      publish();
    else if (!put)
      tell(put.error());
    done(std::move(wrote));
    if (record_wanted_ || lessons_wanted_) publish_lists_later();
  }

  std::stop_token new_stop() {
    const std::lock_guard lock(mutex_);
    audit_stop_ = {};
    return audit_stop_.get_token();
  }

  Status erase_names(const PersonId& person, const PersonId& by) {
    if (barred_) return fail(*barred_);
    JAMBLINE_TRY(acts::may_erase_name(*shop_view_, person, by));
    Status erased = erase_said_of(*log_, *key_, person, by, parts_.clock.now(), *parts_.random);
    if (!erased) note_trouble(erased.error());
    if (erased) trouble_.reset();
    last_act_.reset();  // it may hold the name, and undoing it would make no sense
    JAMBLINE_TRY(fold_shop_anew());
    folded_ = log_->last_arrival();
    return erased;
  }

  // What was erased is known by no fold any more.
  Status fold_shop_anew() {
    folds::ShopFold anew;
    JAMBLINE_TRY(log_->said_of({}, [&](const log::Said& said) {
      anew.apply(read_entry(said));
      return true;
    }));
    shop_ = std::move(anew);
    shop_view_ = std::make_shared<const folds::ShopView>(shop_.view());
    return {};
  }

  // Takes written or arrived entries into shop, jobs and floor.
  Status fold(const std::vector<entries::Entry>& fresh, bool at_once) {
    std::map<JobId, std::vector<entries::Entry>> by_job;
    bool shop_changed = false;
    bool name_erased = false;
    for (const auto& entry : fresh) {
      if (entry.subject) {
        by_job[entry.subject].push_back(entry);
      } else {
        shop_.apply(entry);
        shop_changed = true;
        name_erased = name_erased || entry.kind == seal::kind::payload_erased;
      }
    }
    if (name_erased)
      JAMBLINE_TRY(fold_shop_anew());
    else if (shop_changed)
      shop_view_ = std::make_shared<const folds::ShopView>(shop_.view());
    folded_ = log_->last_arrival();
    for (const auto& [job, entries] : by_job) {
      if (at_once || job == watched_) {
        JAMBLINE_ASSIGN(const auto* grown, jobs_->grow(job, entries));
        if (auto kept = floor_->change(*grown->view, folded_); !kept) tell(std::move(kept.error()));
      } else {
        JAMBLINE_TRY(jobs_->grow_if_known(job, entries));
        floor_->note_changed(job);
      }
    }
    return {};
  }

  Status take_in_arrivals() {
    std::vector<entries::Entry> fresh;
    JAMBLINE_TRY(log_->said_after(folded_, [&](const log::Said& said) {
      fresh.push_back(read_entry(said));
      return true;
    }));
    return fold(fresh, /*at_once=*/false);
  }

  void take_up_changed_jobs() {
    auto more = floor_->take_up_one(*jobs_, folded_);
    if (!more) return tell(std::move(more.error()));
    if (*more)
      work_->post([this] { take_up_changed_jobs(); }, Lane::Haste::Later);
    else
      publish_lists();
  }

  void take_lessons() {
    auto more = floor_->take_lessons();
    if (!more) return tell(std::move(more.error()));
    if (*more)
      work_->post([this] { take_lessons(); }, Lane::Haste::Later);
    else
      publish_lists();
  }

  void publish_lists_later() {
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
  void publish_lists() {
    if (record_wanted_) {
      auto all = floor_->all();
      if (!all) return tell(std::move(all.error()));
      record_ = std::move(*all);
    }
    if (lessons_wanted_) lessons_ = floor_->lessons();
    publish();
  }

  // Without the device's own key nothing is written; what is there is shown.
  Status take_key(bool fresh) {
    auto key = device_key(parts_.folder, *log_, fresh, *parts_.random);
    if (key)
      key_ = *key;
    else if (fresh)
      return fail(std::move(key.error()));
    else
      barred_ = std::move(key.error());
    return {};
  }

  // A device that woke up in the past says so before the first act does.
  void look_at_clock() {
    const Moment now = parts_.clock.now();
    std::uint8_t flags = now.wall_ms < start_of_2025_ms ? seal::clock_flag::before_2025 : 0;
    for (const auto& head : log_->heads())
      if (key_ && head.device == key_->device())
        (void)log_->read_device(head.device, head.seq, [&](const log::Stored& last) {
          if (now.wall_ms < last.entry.header.wall_ms) flags |= seal::clock_flag::stepped_back;
          return false;
        });
    note_clock(flags);
  }

  // The entry is saved with its mark; the person hears of the clock.
  void note_clock(std::uint8_t flags) {
    const char* flag = (flags & seal::clock_flag::before_2025)    ? "before_2025"
                       : (flags & seal::clock_flag::stepped_back) ? "stepped_back"
                       : (flags & seal::clock_flag::jumped)       ? "jumped"
                                                                  : nullptr;
    if (flag) trouble_ = Error{Code::OutOfRange, "look at the clock", "clock", {{"flag", flag}}};
  }

  void note_trouble(Error error) {
    // A log that was found damaged is not written to any more.
    const bool damage = error.code == Code::DatabaseDamaged && error.subject == "log.db";
    (damage ? barred_ : trouble_) = std::move(error);
  }

  // Something failed; the banner shows it.
  void tell(Error error) {
    note_trouble(std::move(error));
    publish();
  }

  void open_pins() {
    auto opened = seal::PeopleSecret::open(parts_.folder);
    if (opened)
      pins_ = std::move(*opened);
    else
      note_trouble(std::move(opened.error()));
    with_pin_ = pins_ ? pins_->people() : std::vector<PersonId>();
  }

  // On the lane of the PINs, which owns the file; the work lane owns what is published.
  void publish_pins() {
    work_->post([this, people = pins_->people()] {
      with_pin_ = people;
      publish();
    });
  }

  void publish() {
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
    next->read_only = barred_.has_value();
    next->trouble = barred_ ? barred_ : trouble_;
    for (const auto& head : log_->heads())
      if (key_ && head.device == key_->device()) next->own_entries = head.seq;
    {
      const std::lock_guard lock(mutex_);
      snapshot_ = next;
    }
    if (parts_.published) parts_.published(std::move(next));
  }

  Parts parts_;
  log::EntryLog* log_ = nullptr;
  std::optional<seal::SigningKey> key_;
  std::optional<JobCache> jobs_;
  std::optional<Floor> floor_;
  std::optional<shelf::Drafts> drafts_;
  Pictures pictures_;
  folds::ShopFold shop_;
  std::shared_ptr<const folds::ShopView> shop_view_;
  std::shared_ptr<const LastAct> last_act_;
  std::shared_ptr<const std::vector<folds::FloorRow>> record_;
  std::shared_ptr<const std::vector<folds::Lesson>> lessons_;
  std::optional<JobId> watched_;
  std::optional<Error> trouble_;  // until the next act that is saved
  std::optional<Error> barred_;   // why nothing may be written; as long as the engine lives
  log::Arrival folded_ = 0;
  std::uint64_t published_ = 0;
  bool record_wanted_ = false;
  bool lessons_wanted_ = false;
  bool lists_queued_ = false;

  std::vector<PersonId> with_pin_;

  std::optional<seal::PeopleSecret> pins_;  // the lane of the PINs

  mutable std::mutex mutex_;  // guards the three below
  std::shared_ptr<const Snapshot> snapshot_;
  std::map<std::string, std::string> draft_texts_;
  std::stop_source audit_stop_;

  // Last: the lanes end before what they use.
  std::unique_ptr<Lane> work_ = std::make_unique<Lane>();
  std::unique_ptr<Lane> calc_ = std::make_unique<Lane>(Lane::Place::Background);
  std::unique_ptr<Lane> pin_lane_ = std::make_unique<Lane>();
  std::unique_ptr<Lane> files_lane_ = std::make_unique<Lane>();
};

}  // namespace

Result<std::unique_ptr<Engine>> Engine::open(Parts parts) {
  auto engine = std::make_unique<LocalEngine>(std::move(parts));
  JAMBLINE_TRY(engine->start());
  return engine;
}

}  // namespace jambline::engine
