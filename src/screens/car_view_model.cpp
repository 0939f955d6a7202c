#include "screens/car_view_model.h"

#include <QDateTime>
#include <algorithm>

#include "folds/floor_view.h"
#include "screens/caution_words.h"
#include "screens/cure_words.h"
#include "screens/round_words.h"
#include "screens/text.h"
#include "screens/this_visit.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::Stage;
using job::Verdict;

int looked_at(const folds::CarView& car) {
  return static_cast<int>(
      std::count_if(car.panels.begin(), car.panels.end(),
                    [](const auto& panel) { return panel.verdict != Verdict::NotLookedAt; }));
}

int marks(const folds::CarView& car) {
  int all = 0;
  for (const auto& panel : car.panels) all += panel.open_marks();
  return all;
}

const folds::PanelView* next_panel(const folds::CarView& car) {
  for (const auto& panel : car.panels)
    if (panel.verdict == Verdict::NotLookedAt) return &panel;
  return nullptr;
}

bool sends(const folds::CarView& car, Stage stage) {
  return stage == Stage::Inspect && next_panel(car) != nullptr;
}

// Nothing was sprayed on it yet, as far as anybody said.
bool gun_is_next(const folds::CarView& car, Stage stage) {
  return (stage == Stage::BeforeTheGun || stage == Stage::Spray) && car.air.sprays.empty() &&
         car.air.without.empty();
}
}  // namespace

CarViewModel::CarViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      stages_({"key", "title", "state", "stateWords", "count", "chosen", "running"}, this),
      operations_({"key", "title", "hours", "who"}, this),
      conflicts_({"key", "title", "sides", "spoken"}, this),
      missing_({"key", "title"}, this) {
  connect(&session, &Session::snapshotChanged, this, &CarViewModel::refresh);
  connect(&session, &Session::secondPassed, this, [this] {
    if (++seconds_ % 30 == 0 && session_.car()) emit changed();  // glass whose time is over
  });
  refresh();
}

void CarViewModel::follow(CorrectionWork& work) {
  work_ = &work;
  connect(&work, &CorrectionWork::changed, this, &CarViewModel::changed);
}

bool CarViewModel::has_plan(Stage at) const {
  if (!work_ || at != work_->stage()) return false;
  return (work_->planned() && !work_->planned()->walk().steps.empty()) ||
         !work_->panels_done().empty();
}

std::optional<Stage> CarViewModel::stage() const {
  const auto* car = session_.car();
  if (!car) return std::nullopt;
  return picked_ ? picked_ : folds::floor_row(*car).next_stage;
}

bool CarViewModel::stage_done(Stage stage) const {
  for (const auto& one : session_.car()->stages)
    if (one.stage == stage) return one.done;
  return false;
}

const folds::OperationView* CarViewModel::operation(Stage stage) const {
  const auto* running = own_clock();
  const folds::OperationView* first = nullptr;
  for (const auto& one : session_.car()->operations) {
    if (one.stage != stage) continue;
    if (running && running->operation == one.operation) return &one;
    if (!first) first = &one;
  }
  return first;
}

const folds::RunningView* CarViewModel::own_clock() const {
  if (!session_.hasPerson()) return nullptr;
  for (const auto& one : session_.car()->running)
    if (one.person == session_.person()) return &one;
  return nullptr;
}

void CarViewModel::refresh() {
  const auto* car = session_.car();
  const JobId job = car ? car->job : JobId{};
  if (job != shown_) picked_.reset();
  shown_ = job;
  std::vector<QVariantList> rows;
  if (car) {
    const auto chosen = stage();
    const auto next = folds::floor_row(*car).next_stage;
    const bool disputed = std::any_of(car->panels.begin(), car->panels.end(),
                                      [](const auto& panel) { return panel.disputed; });
    for (const auto& one : car->stages) {
      State state = one.done ? State::Done : one.stage == next ? State::Waits : State::NotYet;
      QString count;
      for (const auto& running : car->running) {
        const auto* what = car->find(running.operation);
        if (!what || what->stage != one.stage || one.done) continue;
        if (state != State::Running) state = running.paused ? State::Paused : State::Running;
        count = session_.name_of(running.person);
      }
      if (one.stage == Stage::Inspect && disputed) state = State::Disputed;
      if (one.stage == Stage::Inspect && !car->panels.empty())
        count = tr("%1 of %2 panels").arg(looked_at(*car)).arg(car->panels.size());
      else if (one.stage == Stage::Correct && marks(*car) > 0 && !one.done)
        count = marks(*car) == 1 ? tr("1 mark") : tr("%1 marks").arg(marks(*car));
      std::int64_t clocked_ms = 0;
      std::int64_t estimate_min = 0;
      for (const auto& what : car->operations) {
        if (what.stage != one.stage) continue;
        clocked_ms += what.clocked_ms;
        estimate_min += what.estimate_min;
      }
      if (count.isEmpty() && clocked_ms > 0) count = hours_words(clocked_ms);
      if (count.isEmpty() && estimate_min > 0 && !one.done)
        count = tr("%1 planned").arg(hours_words(estimate_min * 60000));
      const QString state_words = state == State::Done       ? tr("done")
                                  : state == State::Running  ? tr("running")
                                  : state == State::Paused   ? tr("paused")
                                  : state == State::Disputed ? tr("disputed")
                                  : state == State::Waits    ? tr("next")
                                                             : tr("not yet");
      rows.push_back({text(std::string(word_of(one.stage))), sentence(words_of(one.stage)),
                      static_cast<int>(state), state_words, count, one.stage == chosen,
                      state == State::Running});
    }
  }
  stages_.set(std::move(rows));
  show_operations();
  show_missing();
  show_conflicts();
  emit changed();
}

void CarViewModel::show_operations() {
  std::vector<QVariantList> rows;
  const auto* car = session_.car();
  const auto at = stage();
  if (car && at)
    for (const auto& one : car->operations) {
      if (one.stage != *at) continue;
      const QString used = hours_words(one.clocked_ms);
      const QString planned = hours_words(one.estimate_min * 60000LL);
      QStringList who;
      for (const auto& running : car->running)
        if (running.operation == one.operation)
          who.append(running.paused ? tr("%1, paused").arg(session_.name_of(running.person))
                                    : tr("%1, running").arg(session_.name_of(running.person)));
      const QString hours = one.estimate_min == 0 ? used
                            : one.clocked_ms == 0 ? tr("%1 planned").arg(planned)
                                                  : tr("%1 of %2").arg(used, planned);
      rows.push_back({text(one.operation.hex()),
                      sentence(one.title.empty() ? words_of(one.stage) : text(one.title)), hours,
                      who.join(QStringLiteral(" · "))});
    }
  operations_.set(std::move(rows));
}

QString CarViewModel::stageTitle() const {
  const auto at = stage();
  return at ? sentence(words_of(*at)) : QString();
}

bool CarViewModel::own_clock_on(Stage stage) const {
  const auto* running = own_clock();
  const auto* what = running ? session_.car()->find(running->operation) : nullptr;
  return what && what->stage == stage;
}

QString CarViewModel::due() const {
  const auto* car = session_.car();
  if (!car) return {};
  const auto now_ms = session_.now().wall_ms;
  if (car->delivered_ms)
    return tr("Delivered %1").arg(time_words(*car->delivered_ms, now_ms, session_.zone()));
  if (!car->promised_ms) return tr("No time promised");
  const QString at = time_words(*car->promised_ms, now_ms, session_.zone());
  if (late()) return tr("Was due %1").arg(at);
  const bool today =
      day_words(*car->promised_ms, session_.zone()) == day_words(now_ms, session_.zone());
  return today ? tr("Due today %1").arg(at) : tr("Due %1").arg(at);
}

bool CarViewModel::late() const {
  const auto* car = session_.car();
  return car && car->promised_ms && !car->delivered_ms &&
         *car->promised_ms < session_.now().wall_ms;
}

QString CarViewModel::heldBy() const {
  const auto* car = session_.car();
  if (!car || car->delivered_ms) return {};
  for (const auto& panel : car->panels)
    if (panel.disputed)
      return tr("Held by: two verdicts, %1").arg(words_of(panel.plan.panel, car->body));
  for (const auto& panel : car->panels)
    if (panel.release.disputed)
      return tr("Held by: who has the %1?").arg(words_of(panel.plan.panel, car->body));
  if (car->car_release.disputed) return tr("Held by: who has the car?");
  for (const auto& panel : car->panels) {
    if (panel.verdict != Verdict::Redo) continue;
    const QString name = words_of(panel.plan.panel, car->body);
    const auto* has = panel.release.state == folds::ReleaseState::Taken      ? &panel.release
                      : car->car_release.state == folds::ReleaseState::Taken ? &car->car_release
                                                                             : nullptr;
    if (has && has->taker)
      return tr("Held by: redo of the %1, %2 has it").arg(name, session_.name_of(*has->taker));
    return tr("Held by: redo of the %1").arg(name);
  }
  QStringList waits;
  for (const auto reason : car->visit.waits_for) waits.append(words_of(reason));
  if (!waits.isEmpty()) return tr("Waits for %1").arg(waits.join(tr(", ")));
  QStringList left;
  for (const auto& one : car->stages)
    if (!one.done) left.append(words_of(one.stage));
  if (left.isEmpty()) return tr("All stages are done");
  if (left.size() == 1) return tr("Held by: %1").arg(left[0]);
  return tr("Held by: %1, then %2").arg(left[0], left[1]);
}

CarViewModel::Act CarViewModel::mainAct() const {
  const auto* car = session_.car();
  if (!car || !shutWords().isEmpty()) return Act::None;
  if (car->delivered_ms) return Act::ComeBack;
  const auto at = stage();
  if (!at) return Act::WalkAround;
  if (stage_done(*at)) return Act::Reopen;
  if (*at == Stage::CheckIn && !checked_in(*car)) return Act::CheckIn;
  if (*at == Stage::WalkAround) return Act::WalkAround;
  if (sends(*car, *at)) return Act::Inspect;
  if (has_plan(*at)) return Act::Correct;
  if (gun_is_next(*car, *at)) return Act::BeforeGun;
  if (*at == Stage::BeforeTheGun) return Act::Finish;
  const auto* what = operation(*at);
  const auto* running = own_clock();
  const bool runs = what && running && !running->paused && running->operation == what->operation;
  return what && !runs ? Act::Start : Act::Finish;
}

QString CarViewModel::mainText() const {
  const auto at = stage();
  const QString name = at ? sentence(words_of(*at)) : QString();
  switch (mainAct()) {
    case Act::Inspect:
      return name;
    case Act::Correct: {
      const auto* planned = work_->planned();
      const auto* now = planned ? planned->walk().now() : nullptr;
      if (now && !planned->walk().begun()) return tr("Plan the correction");
      if (now) return tr("Go on: %1").arg(round_title(now->round, now->marks).toLower());
      return planned && !planned->walk().asked.empty() ? tr("Go on: say what is gone")
                                                       : tr("Go on: say what is clean");
    }
    case Act::BeforeGun:
      return tr("Before the gun");
    case Act::Start:
      return tr("Start %1").arg(words_of(*at));
    case Act::Finish:
      return tr("%1 done").arg(name);
    case Act::Reopen:
      return tr("%1 is not done").arg(name);
    case Act::CheckIn:
      return tr("Check in");
    case Act::WalkAround:
      return tr("Walk-around");
    case Act::ComeBack:
      return tr("It came back");
    case Act::None:
      break;
  }
  return {};
}

QString CarViewModel::mainSecond() const {
  const auto* car = session_.car();
  switch (mainAct()) {
    case Act::Inspect:
      return tr("next: %1").arg(words_of(next_panel(*car)->plan.panel, car->body));
    case Act::Start: {
      if (mainWaits()) return tr("say who you are first");
      if (const QString film = work_ ? work_->stage_words(*stage()) : QString(); !film.isEmpty())
        return film;
      const auto* what = operation(*stage());
      return what->estimate_min > 0
                 ? tr("%1 planned").arg(hours_words(what->estimate_min * 60000LL))
                 : QString();
    }
    case Act::Correct: {
      const auto* planned = work_->planned();
      return planned && planned->walk().now() ? minutes_words(planned->walk().minutes_left())
                                              : QString();
    }
    case Act::BeforeGun:
      return tr("what is asked, then the spray clock");
    case Act::CheckIn:
      return tr("odometer, fuel, keys, old damage");
    case Act::WalkAround:
      return held_words().isEmpty() ? tr("open points, signature, delivery") : held_words();
    case Act::ComeBack:
      return tr("what the customer says, and who pays");
    case Act::Finish: {
      const QString clock = own_clock_on(*stage()) ? tr("stops your clock") : QString();
      if (missingCount() == 0) return clock;
      return clock.isEmpty() ? missingWords() : tr("%1 · %2").arg(clock, missingWords());
    }
    case Act::Reopen:
      return tr("takes the tick back");
    default:
      return {};
  }
}

QString CarViewModel::held_words() const {
  const auto* car = session_.car();
  if (!car || mainAct() != Act::WalkAround) return {};
  const Moment now = session_.now();
  return do_not_drive_words(folds::do_not_drive(*car, session_.shop(), now), now.wall_ms,
                            session_.zone());
}

bool CarViewModel::mainWaits() const {
  return mainAct() == Act::Start && !session_.hasPerson();
}

QString CarViewModel::partsWords() const {
  const auto* car = session_.car();
  if (!car) return {};
  const auto loose = std::count_if(car->panels.begin(), car->panels.end(),
                                   [](const auto& panel) { return !panel.plan.on_car; });
  return loose == 0 ? tr("none loose") : tr("%1 loose").arg(loose);
}

QString CarViewModel::timeLineWords() const {
  const auto* car = session_.car();
  return car ? tr("%1 entries").arg(car->entries) : QString();
}

QString CarViewModel::shutWords() const {
  const auto* car = session_.car();
  if (!car) return {};
  if (car->unknown_entries > 0)
    return tr("This car has entries from a newer version. You can read it.");
  return session_.readOnly() ? tr("This device can only read now.") : QString();
}

QStringList CarViewModel::cautions() const {
  const auto chosen = session_.car() ? stage() : std::nullopt;
  return chosen ? stage_cautions(*chosen) : QStringList();
}

void CarViewModel::start(const folds::CarView& car, Stage at) {
  const auto* what = operation(at);
  const auto* running = own_clock();
  const bool runs = running && !running->paused && what && running->operation == what->operation;
  if (what && !runs && session_.hasPerson())
    session_.post(acts::StartClock{session_.person(), car.job, what->operation});
}

void CarViewModel::act() {
  const auto* car = session_.car();
  if (!car || mainWaits()) return;
  const Act what = mainAct();
  const auto at = stage();
  const bool begins = what == Act::Inspect || what == Act::BeforeGun || what == Act::Start ||
                      what == Act::CheckIn || what == Act::WalkAround;
  if (begins && at) start(*car, *at);
  if (what == Act::Finish && missingCount() > 0) emit shotsMissing();
  if (what == Act::Finish && missingCount() == 0) finish({});
  if (what == Act::Reopen)
    session_.post(acts::FinishStage{car->job, *at, false},
                  [this](const Result<engine::Wrote>& wrote) {
                    if (!wrote) return;
                    picked_.reset();
                    refresh();
                  });
  if (what == Act::Inspect) emit inspectAsked();
  if (what == Act::Correct) emit planAsked();
  if (what == Act::BeforeGun) emit beforeGunAsked();
  if (what == Act::CheckIn) emit checkInAsked();
  if (what == Act::WalkAround) emit walkAroundAsked();
  if (what == Act::ComeBack) emit comebackAsked();
}

void CarViewModel::choose(const QString& stage_word) {
  const auto at = from_word<Stage>(stage_word.toStdString());
  const auto before = stage();
  picked_ = at == before ? std::nullopt : at;
  refresh();
}

void CarViewModel::writeNote(const QString& words) {
  const auto* car = session_.car();
  if (!car || words.trimmed().isEmpty()) return;
  session_.post(acts::WriteNote{car->job, words.trimmed().toStdString()},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit noteKept();
                });
}

}  // namespace jambline::screens
