#include "engine/local_engine.h"

namespace jambline::engine {

void LocalEngine::keep_draft(const std::string& form, const std::string& json) {
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

std::string LocalEngine::draft(const std::string& form) const {
  const std::lock_guard lock(mutex_);
  const auto found = draft_texts_.find(form);
  return found == draft_texts_.end() ? std::string() : found->second;
}

void LocalEngine::set_pin(PersonId person, std::string pin, std::function<void(Status)> done) {
  pin_lane_->post([this, person, pin = std::move(pin), done = std::move(done)] {
    Status changed = pins_ ? pin.empty() ? pins_->remove(person) : pins_->set(person, pin)
                           : Status(fail(Error{Code::Malformed, "read", "people.secret", {}}));
    if (changed) publish_pins();
    done(std::move(changed));
  });
}

void LocalEngine::try_pin(PersonId person, std::string pin,
                          std::function<void(Result<seal::PinTry>)> done) {
  pin_lane_->post([this, person, pin = std::move(pin), done = std::move(done)] {
    if (pins_)
      done(pins_->attempt(person, pin, parts_.clock.now().wall_ms));
    else
      done(seal::PinTry{seal::PinAnswer::NoPin, 0});
  });
}

void LocalEngine::open_pins() {
  auto opened = seal::PeopleSecret::open(parts_.folder);
  if (opened)
    pins_ = std::move(*opened);
  else
    note_trouble(std::move(opened.error()));
  with_pin_ = pins_ ? pins_->people() : std::vector<PersonId>();
}

// On the lane of the PINs, which owns the file; the work lane owns what is published.
void LocalEngine::publish_pins() {
  work_->post([this, people = pins_->people()] {
    with_pin_ = people;
    publish();
  });
}

void LocalEngine::audit(std::function<void(double)> progress,
                        std::function<void(Result<log::Audit>)> done) {
  calc_->post([this, stop = new_stop(), progress = std::move(progress), done = std::move(done)] {
    done(log::EntryLog::audit(parts_.folder, stop, progress));
  });
}

void LocalEngine::stop_audit() {
  const std::lock_guard lock(mutex_);
  audit_stop_.request_stop();
}

std::stop_token LocalEngine::new_stop() {
  const std::lock_guard lock(mutex_);
  audit_stop_ = {};
  return audit_stop_.get_token();
}

void LocalEngine::keep_picture(PictureBytes bytes, PictureBytes preview, acts::TakePicture command,
                               PersonId person, Done done) {
  command.facts.preview.reset();
  if (preview) command.facts.preview = seal::sha256(*preview);
  work_->post([this, bytes = std::move(bytes), preview = std::move(preview),
               command = std::move(command), person, done = std::move(done)]() mutable {
    if (barred_) return done(fail(*barred_));
    pictures_.begin_keeping(command.facts);
    keep_draft(meant_form(command.facts.file), meant_text(command, person));
    if (command.facts.preview) keep_draft(preview_form(*command.facts.preview), "preview");
    // Behind the drafts on this lane: no file is there before it is known where it was meant to go.
    work_->post([this, bytes = std::move(bytes), preview = std::move(preview),
                 command = std::move(command), person, done = std::move(done)]() mutable {
      put_picture(std::move(bytes), std::move(preview), std::move(command), person,
                  std::move(done));
    });
  });
}

void LocalEngine::put_picture(PictureBytes bytes, PictureBytes preview, acts::TakePicture command,
                              PersonId person, Done done) {
  files_lane_->post([this, bytes = std::move(bytes), preview = std::move(preview),
                     command = std::move(command), person, done = std::move(done)]() mutable {
    Status put = pictures_.put(*bytes, preview.get(), command.facts);
    work_->post([this, put = std::move(put), command = std::move(command), person,
                 done = std::move(done)] { name_picture(put, command, person, done); });
  });
}

// The file is on the disk or could not be put there. Where it was meant to go is kept until its
// entry is.
void LocalEngine::name_picture(const Status& put, const acts::TakePicture& command,
                               const PersonId& person, const Done& done) {
  Result<Wrote> wrote = put ? act(command, person) : Result<Wrote>(fail(put.error()));
  if (!put) forget_meant(command.facts.file, command.facts.preview);
  pictures_.end_keeping(command.facts);
  if (wrote)
    publish();
  else if (!put)
    tell(put.error());
  done(std::move(wrote));
  if (record_wanted_ || lessons_wanted_) publish_lists_later();
}

void LocalEngine::forget_meant(const Hash& file, const std::optional<Hash>& preview) {
  keep_draft(meant_form(file), "");
  if (preview) keep_draft(preview_form(*preview), "");
}

void LocalEngine::leftovers(std::function<void(Result<std::vector<LeftoverPicture>>)> done) {
  calc_->post([this, done = std::move(done)] {
    done(pictures_.leftovers([this](const std::string& form) { return draft(form); }));
  });
}

void LocalEngine::drop_leftover(Hash file, std::function<void(Status)> done) {
  calc_->post([this, file, done = std::move(done)] {
    const std::string meant = draft(meant_form(file));
    Status dropped = pictures_.drop(file, meant);
    if (dropped) forget_meant(file, meant_preview(meant));
    done(std::move(dropped));
  });
}

void LocalEngine::check_pictures(std::function<void(double)> progress,
                                 std::function<void(Result<PictureCheck>)> done) {
  calc_->post([this, stop = new_stop(), progress = std::move(progress), done = std::move(done)] {
    done(engine::check_pictures(parts_.folder, pictures_.store(), stop, progress));
  });
}

}  // namespace jambline::engine
