#include "screens/forgotten_clock_view_model.h"

#include <algorithm>

#include "base/spans.h"
#include "base/zones.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr std::int64_t step_ms = 5 * minute_ms;
constexpr std::int64_t long_ms = 14LL * 3'600'000;

// The next multiple of the step, and on from there.
std::int64_t shifted(std::int64_t from_ms, std::int64_t by_ms) {
  const std::int64_t rest_ms = from_ms % step_ms;
  return from_ms - rest_ms + by_ms + (rest_ms != 0 && by_ms < 0 ? step_ms : 0);
}
}  // namespace

ForgottenClockViewModel::ForgottenClockViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session), chosen_(session.person()) {
  for (const auto& car : *session.snapshot().floor)
    for (const auto& running : car.running)
      if (!session.has_pin(running.person)) waiting_.push_back(running.person);
  connect(&session, &Session::personChanged, this, &ForgottenClockViewModel::person_chosen);
  connect(&session, &Session::snapshotChanged, this, &ForgottenClockViewModel::take_snapshot);
  next();
}

void ForgottenClockViewModel::person_chosen() {
  if (session_.person() == chosen_) return;
  chosen_ = session_.person();
  if (chosen_ && !asked_) look_at(chosen_);
}

void ForgottenClockViewModel::take_snapshot() {
  if (!asked_) return;
  const auto at = clock_of(*session_.snapshot().floor, asked_->person);
  if (!at || at->running->paused || at->running->start_ms != asked_->running.start_ms) next();
}

void ForgottenClockViewModel::next() {
  asked_.reset();
  while (!asked_ && !waiting_.empty()) {
    const PersonId person = waiting_.front();
    waiting_.erase(waiting_.begin());
    look_at(person);
  }
  emit changed();
}

void ForgottenClockViewModel::look_at(const PersonId& person) {
  const auto at = clock_of(*session_.snapshot().floor, person);
  if (!at || at->running->paused || !forgotten(*at->running)) return;
  const auto said = runs_on_.find(person);
  if (said != runs_on_.end() && said->second == today_ms()) return;
  const QString plate = QString::fromStdString(at->car->plate);
  QString work = tr("Work");
  if (at->operation)
    work = at->operation->title.empty() ? sentence(words_of(at->operation->stage))
                                        : QString::fromStdString(at->operation->title);
  Asked asked{person, *at->running,
              tr("%1 on %2").arg(work, plate.isEmpty() ? tr("a car without a plate") : plate),
              last_seen_ms(*at->running), 0};
  asked.end_ms = asked.seen_ms;
  asked_ = std::move(asked);
  emit changed();
}

std::int64_t ForgottenClockViewModel::today_ms() const {
  const std::string zone = session_.zone().toStdString();
  const auto date = local_date_at(zone, session_.now().wall_ms);
  if (!date) return 0;
  const auto day = local_day(zone, *date);
  return day ? day->start_ms : 0;
}

bool ForgottenClockViewModel::forgotten(const folds::RunningView& running) const {
  return running.start_ms < today_ms() || length_ms(running, session_.now()) > long_ms;
}

std::int64_t ForgottenClockViewModel::last_seen_ms(const folds::RunningView& running) const {
  std::int64_t most_ms = 0;
  for (const auto& car : *session_.snapshot().floor)
    for (const auto& seen : car.seen)
      if (seen.person == running.person)
        most_ms =
            std::max(most_ms, length_ms(running, {seen.wall_ms, seen.since_boot_ms, seen.boot, 0}));
  return running.start_ms + std::min(most_ms, length_ms(running, session_.now()));
}

std::int64_t ForgottenClockViewModel::latest_ms() const {
  return asked_->running.start_ms + length_ms(asked_->running, session_.now());
}

QString ForgottenClockViewModel::who() const {
  return asked_ ? session_.name_of(asked_->person) : QString();
}

QString ForgottenClockViewModel::what() const {
  return asked_ ? asked_->what : QString();
}

QString ForgottenClockViewModel::since() const {
  if (!asked_) return {};
  return tr("Runs since %1 %2, for %3")
      .arg(day_words(asked_->running.start_ms, session_.zone()),
           clock_words(asked_->running.start_ms, session_.zone()),
           duration_words(length_ms(asked_->running, session_.now())));
}

QString ForgottenClockViewModel::lastSeen() const {
  if (!asked_) return {};
  if (asked_->seen_ms - asked_->running.start_ms < minute_ms)
    return tr("%1 wrote nothing after the start.").arg(who());
  return tr("%1 last wrote something on %2 at %3.")
      .arg(who(), day_words(asked_->seen_ms, session_.zone()),
           clock_words(asked_->seen_ms, session_.zone()));
}

QString ForgottenClockViewModel::endDay() const {
  return asked_ ? day_words(asked_->end_ms, session_.zone()) : QString();
}

QString ForgottenClockViewModel::endTime() const {
  return asked_ ? clock_words(asked_->end_ms, session_.zone()) : QString();
}

QString ForgottenClockViewModel::counts() const {
  return asked_ ? duration_words(asked_->end_ms - asked_->running.start_ms) : QString();
}

bool ForgottenClockViewModel::mayEarlier() const {
  return asked_ && asked_->end_ms > asked_->running.start_ms;
}

bool ForgottenClockViewModel::mayLater() const {
  return asked_ && asked_->end_ms < latest_ms();
}

void ForgottenClockViewModel::shift(int minutes) {
  if (!asked_) return;
  asked_->end_ms = std::clamp(shifted(asked_->end_ms, minutes * minute_ms),
                              asked_->running.start_ms, latest_ms());
  emit changed();
}

void ForgottenClockViewModel::ended() {
  if (!asked_) return;
  const PersonId by = session_.person() ? session_.person() : asked_->person;
  session_.post_as(by, acts::StopClock{asked_->person, asked_->end_ms});
  next();
}

void ForgottenClockViewModel::stillRuns() {
  if (!asked_) return;
  runs_on_[asked_->person] = today_ms();
  next();
}

void ForgottenClockViewModel::putOff() {
  if (!asked_) return;
  waiting_.clear();
  next();
}

}  // namespace jambline::screens
