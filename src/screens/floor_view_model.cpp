#include "screens/floor_view_model.h"

#include <algorithm>
#include <limits>
#include <tuple>

#include "screens/clocks.h"
#include "screens/cure_words.h"
#include "screens/stage_roles.h"
#include "screens/state_kind.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QString text(const std::string& words) {
  return QString::fromStdString(words);
}

std::vector<RowModel<FloorLine>::Column> columns() {
  return {
      {"jobId", [](const FloorLine& row) { return row.key; }},
      {"group", [](const FloorLine& row) { return row.group; }},
      {"plate", [](const FloorLine& row) { return row.plate; }},
      {"carWords", [](const FloorLine& row) { return row.car; }},
      {"next", [](const FloorLine& row) { return row.next; }},
      {"who", [](const FloorLine& row) { return row.who; }},
      {"due", [](const FloorLine& row) { return row.due; }},
      {"promised", [](const FloorLine& row) { return row.promised; }},
      {"late", [](const FloorLine& row) { return row.late; }},
      {"held", [](const FloorLine& row) { return row.held; }},
      {"shape", [](const FloorLine& row) { return row.state; }},
      {"done", [](const FloorLine& row) { return row.done; }},
      {"progress", [](const FloorLine& row) { return row.progress; }},
      {"stages", [](const FloorLine& row) { return row.stages; }},
      {"hours", [](const FloorLine& row) { return row.hours; }},
      {"disputed", [](const FloorLine& row) { return row.disputed; }},
      {"readOnly", [](const FloorLine& row) { return row.read_only; }},
      {"onTape", [](const FloorLine& row) { return row.on_tape; }},
  };
}

bool has_clock_of(const folds::FloorRow& car, const PersonId& person) {
  return std::any_of(car.running.begin(), car.running.end(),
                     [&](const auto& running) { return running.person == person; });
}

// By the clock, by what is offered to the role, by whose work the next stage usually is; what is
// disputed waits for the manager too.
bool waits_for(const folds::FloorRow& car, const folds::PersonView* person) {
  if (!person) return false;
  if (has_clock_of(car, person->person)) return true;
  const auto& offers = car.offered_to;
  if (std::find(offers.begin(), offers.end(), person->role) != offers.end()) return true;
  if (person->role == job::Role::Manager && (car.disputed || !car.next_stage)) return true;
  return car.next_stage && usually_does(person->role, *car.next_stage);
}
}  // namespace

FloorViewModel::FloorViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session), model_(new RowModel<FloorLine>(columns(), this)) {
  connect(&session, &Session::snapshotChanged, this, &FloorViewModel::rebuild);
  connect(&session, &Session::secondPassed, this, &FloorViewModel::second_passed);
  rebuild();
}

// "Late" and the times of today move with the wall clock.
void FloorViewModel::second_passed() {
  if (++seconds_ % 30 == 0) rebuild();
}

QString FloorViewModel::countWords() const {
  if (cars() == 0) return tr("no cars yet");
  const QString all = cars() == 1 ? tr("1 car") : tr("%1 cars").arg(cars());
  if (!session_.hasPerson() || for_you_ == 0) return all;
  const QString yours = for_you_ == 1 ? tr("1 waits for you") : tr("%1 wait for you").arg(for_you_);
  return all + QStringLiteral(" \u00b7 ") + yours;
}

namespace {
QString next_words(const folds::FloorRow& car) {
  if (car.disputed) return FloorViewModel::tr("Two verdicts stand");
  if (!car.next_stage) return FloorViewModel::tr("Every stage is done");
  const int panels = car.panels - car.panels_looked_at;
  if (*car.next_stage == job::Stage::Inspect && panels > 0)
    return panels == 1 ? FloorViewModel::tr("Look over 1 panel")
                       : FloorViewModel::tr("Look over %1 panels").arg(panels);
  if (*car.next_stage == job::Stage::Correct && car.marks_open > 0)
    return car.marks_open == 1 ? FloorViewModel::tr("Correct 1 mark")
                               : FloorViewModel::tr("Correct %1 marks").arg(car.marks_open);
  return sentence(words_of(*car.next_stage));
}

QString short_words(job::BodyShape body) {
  switch (body) {
    case job::BodyShape::TwoDoorHatchback:
      return FloorViewModel::tr("hatch");
    case job::BodyShape::FourDoorSedan:
      return FloorViewModel::tr("sedan");
    case job::BodyShape::SuvWagon:
      return FloorViewModel::tr("wagon");
    case job::BodyShape::CrewCabPickup:
      return FloorViewModel::tr("pickup");
    case job::BodyShape::CargoVan:
      return FloorViewModel::tr("van");
  }
  return words_of(body);
}

QString who_words(const folds::FloorRow& car, const Session& session, bool for_you) {
  QStringList others;
  for (const auto& running : car.running) {
    const bool you = running.person == session.person();
    const QString name = you ? FloorViewModel::tr("you") : session.name_of(running.person);
    others << (running.paused ? FloorViewModel::tr("%1 paused").arg(name) : name);
  }
  if (!others.isEmpty()) return others.join(QStringLiteral(", "));
  if (car.disputed) return FloorViewModel::tr("a person has to settle it");
  if (car.read_only) return FloorViewModel::tr("entries of a newer version");
  if (for_you) return FloorViewModel::tr("you");
  if (!car.offered_to.empty())
    return FloorViewModel::tr("offered to: %1").arg(words_of(car.offered_to.front()));
  return words_of(car.next_stage ? usual_role(*car.next_stage) : job::Role::Manager);
}

StateKind state_of(const folds::FloorRow& car, bool late, bool for_you) {
  if (car.disputed) return StateKind::Disputed;
  if (late) return StateKind::Must;
  bool paused = false;
  for (const auto& running : car.running) {
    if (!running.paused) return StateKind::Running;
    paused = true;
  }
  if (paused) return StateKind::Paused;
  if (!car.next_stage) return StateKind::Done;
  return for_you ? StateKind::Waits : StateKind::NotYet;
}

QString worked_words(const folds::FloorRow& car) {
  std::int64_t clocked_ms = 0, planned_ms = 0;
  for (const auto& one : car.operations) {
    clocked_ms += one.clocked_ms;
    planned_ms += one.estimate_min * 60'000LL;
  }
  if (planned_ms == 0) return hours_words(clocked_ms);
  return FloorViewModel::tr("%1 of %2").arg(hours_words(clocked_ms), hours_words(planned_ms));
}

QString late_words(std::int64_t ms) {
  constexpr std::int64_t day_ms = 86'400'000;
  if (ms < day_ms) return FloorViewModel::tr("%1 late").arg(duration_words(ms));
  const auto days = ms / day_ms;
  return days == 1 ? FloorViewModel::tr("1 day late")
                   : FloorViewModel::tr("%1 days late").arg(days);
}
}  // namespace

QString FloorViewModel::jobIdAt(int row) const {
  return row >= 0 && row < cars() ? model_->rows()[static_cast<std::size_t>(row)].key : QString();
}

void FloorViewModel::rebuild() {
  const auto& floor = *session_.snapshot().floor;
  const auto* person = session_.shop().find(session_.person());
  const std::int64_t now_ms = session_.now().wall_ms;
  const QString zone = session_.zone();

  struct Sorted {
    FloorLine line;
    bool others;
    bool calm;
    bool settled;
    std::int64_t promised_ms;
  };
  std::vector<Sorted> all;
  for_you_ = 0;
  for (const auto& car : floor) {
    if (car.delivered_ms) continue;
    const bool for_you = waits_for(car, person);
    const bool late = car.promised_ms && *car.promised_ms < now_ms;
    for_you_ += for_you ? 1 : 0;
    FloorLine line;
    line.key = text(car.job.hex());
    line.group = !person   ? tr("In the shop")
                 : for_you ? tr("Waits for you")
                           : tr("Waits for others");
    line.plate = car.plate.empty() ? text(car.vin).right(8) : text(car.plate);
    line.car = (text(car.color.name).section(QChar(','), 0, 0) + QChar(' ') + short_words(car.body))
                   .trimmed();
    line.next = next_words(car);
    line.who = who_words(car, session_, for_you);
    line.promised = car.promised_ms ? time_words(*car.promised_ms, now_ms, zone) : tr("no promise");
    line.due = car.promised_ms ? tr("due %1").arg(line.promised) : line.promised;
    if (late) line.late = late_words(now_ms - *car.promised_ms);
    line.held = do_not_drive_words(folds::do_not_drive(car.glass, session_.shop(), session_.now()),
                                   now_ms, zone);
    const bool held = !line.held.isEmpty() && !car.disputed;
    line.state = shape_of(held ? StateKind::Must : state_of(car, late, for_you));
    line.done = car.stages > 0 ? double(car.stages_done) / car.stages : 0.0;
    line.progress = tr("%1 of %2 stages").arg(car.stages_done).arg(car.stages);
    line.stages = tr("%1/%2", "stages done of stages").arg(car.stages_done).arg(car.stages);
    line.hours = worked_words(car);
    line.disputed = car.disputed;
    line.read_only = car.read_only;
    line.on_tape = session_.job() == car.job;
    all.push_back({std::move(line), !for_you, !late, !car.disputed,
                   car.promised_ms.value_or(std::numeric_limits<std::int64_t>::max())});
  }
  std::stable_sort(all.begin(), all.end(), [](const Sorted& a, const Sorted& b) {
    return std::tie(a.others, a.calm, a.settled, a.promised_ms) <
           std::tie(b.others, b.calm, b.settled, b.promised_ms);
  });
  std::vector<FloorLine> lines;
  for (auto& one : all) lines.push_back(std::move(one.line));
  model_->set_rows(std::move(lines));
  emit changed();
}

}  // namespace jambline::screens
