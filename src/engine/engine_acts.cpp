#include "acts/decide.h"
#include "engine/clock_doubt.h"
#include "engine/erase.h"
#include "engine/local_engine.h"
#include "engine/read_entry.h"
#include "engine/work_again.h"

namespace jambline::engine {

void LocalEngine::post(acts::Command command, PersonId person, Done done) {
  work_->post([this, command = std::move(command), person, done = std::move(done)] {
    auto wrote = act(command, person);
    if (wrote) publish();
    if (done) done(std::move(wrote));
    if (record_wanted_ || lessons_wanted_) publish_lists_later();
  });
}

void LocalEngine::erase_name(PersonId person, PersonId by, std::function<void(Status)> done) {
  work_->post([this, person, by, done = std::move(done)] {
    Status erased = erase_names(person, by);
    publish();
    done(std::move(erased));
  });
}

void LocalEngine::admit_device(Admission admission, PersonId by, Done done) {
  say([this, admission = std::move(admission), by] { return append(draft_of(admission), by); },
      std::move(done));
}

void LocalEngine::admit_hub(ShopHub hub, PersonId by, Done done) {
  say([this, hub = std::move(hub), by] { return append(draft_of(hub), by); }, std::move(done));
}

void LocalEngine::revoke_device(DeviceId device, PersonId by, Done done) {
  say(
      [this, device, by]() -> Result<std::vector<log::Stored>> {
        JAMBLINE_ASSIGN(const log::Draft draft, revocation_of(*log_, device));
        return append(draft, by);
      },
      std::move(done));
}

void LocalEngine::take_over(std::vector<seal::SealedEntry> origins, entries::TakenOverWhy why,
                            PersonId by, Done done) {
  say(
      [this, origins = std::move(origins), why, by] {
        return say_work_again(*log_, *key_, origins, why, by, parts_.clock.now(), *parts_.random);
      },
      std::move(done));
}

void LocalEngine::hold_for_tail(bool hold) {
  work_->post([this, hold] {
    if (tail_is_missing_ == hold) return;
    tail_is_missing_ = hold;
    publish();
  });
}

Status LocalEngine::may_write() const {
  if (barred_) return fail(*barred_);
  if (tail_is_missing_) return fail(Code::NotYet, "write", "tail");
  return {};
}

// Decides, appends, folds. Nothing is written, folded or shown unless all of it is on disk.
Result<Wrote> LocalEngine::act(const acts::Command& command, const PersonId& person) {
  JAMBLINE_TRY(may_write());
  const Moment now = parts_.clock.now();
  std::optional<Error> unreadable;
  const acts::World world{*shop_view_,
                          [&](const JobId& job) -> const folds::CarView* {
                            auto known = jobs_->get(job);
                            if (known) return (*known)->view.get();
                            unreadable = std::move(known.error());
                            return nullptr;
                          },
                          [&](const PersonId& worker) { return floor_->clock_of(worker); },
                          [&](const JobId& job, const Hash& entry) {
                            if (!job) return shop_rights_.needed(entry);
                            const auto known = jobs_->get(job);
                            return known ? (*known)->rights.needed(entry) : entries::Right::Manager;
                          },
                          rights_.may({}, key_->device(), entries::Right::ManagerDevice)};
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
  auto last = std::make_shared<LastAct>(LastAct{command, person, 0, {}});
  for (const auto& one : *stored) {
    last->entries.emplace_back(one.entry.header.subject, one.entry.hash);
    last->wall_ms = one.entry.header.wall_ms;
  }
  Wrote wrote = written(*stored);
  if (command.is<acts::OpenCar>()) wrote.job = wrote.entries.front().subject;
  if (const auto* taken = command.get_if<acts::TakePicture>())
    forget_meant(taken->facts.file, taken->facts.preview);
  last_act_ = std::move(last);
  if (auto doubt = clock_doubt(stored->front().entry.header.clock_flags))
    trouble_ = std::move(doubt);
  return wrote;
}

// It is on the disk: what fails from here on is told, but the act stands.
Wrote LocalEngine::written(const std::vector<log::Stored>& stored) {
  trouble_.reset();
  Wrote wrote;
  for (const auto& one : stored) wrote.entries.push_back(read_entry(one.entry));
  if (auto folded = fold(wrote.entries, /*at_once=*/true); !folded)
    note_trouble(std::move(folded.error()));
  return wrote;
}

// Entries that no command makes.
void LocalEngine::say(std::function<Result<std::vector<log::Stored>>()> write, Done done) {
  work_->post([this, write = std::move(write), done = std::move(done)] {
    Result<std::vector<log::Stored>> stored = fail(Code::NotYet, "write", "log.db");
    if (const Status may = may_write(); may)
      stored = write();
    else
      stored = fail(may.error());
    Result<Wrote> wrote =
        stored ? Result<Wrote>(written(*stored)) : Result<Wrote>(fail(std::move(stored.error())));
    if (wrote)
      publish();
    else
      tell(wrote.error());
    if (done) done(std::move(wrote));
  });
}

Result<std::vector<log::Stored>> LocalEngine::append(const log::Draft& draft, const PersonId& by) {
  return log_->append(*key_, by, {&draft, 1}, parts_.clock.now(), *parts_.random);
}

Status LocalEngine::erase_names(const PersonId& person, const PersonId& by) {
  if (barred_) return fail(*barred_);
  JAMBLINE_TRY(acts::may_erase_name(*shop_view_, person, by));
  last_act_.reset();  // it may hold the name, and undoing it would make no sense
  const auto kinds = entries::erasable_kinds();
  JAMBLINE_ASSIGN(const auto said,
                  said_of_leaver(*log_, person, [this] { work_->let_urgent_work_through(); }));
  for (const Hash& one : said) {
    auto erased = log_->erase_payload(*key_, by, one, "left the shop", kinds, parts_.clock.now(),
                                      *parts_.random);
    if (!erased && erased.error().code == Code::AlreadyDone) continue;  // by the same act, twice
    if (!erased) {
      note_trouble(erased.error());
      return fail(std::move(erased.error()));
    }
    JAMBLINE_TRY(fold({read_entry(erased->entry)}, /*at_once=*/false));
    work_->let_urgent_work_through();
  }
  trouble_.reset();
  last_act_.reset();
  return {};
}

}  // namespace jambline::engine
