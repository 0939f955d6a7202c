#include "screens/floor_view_model.h"

#include <algorithm>

#include "screens/clocks.h"
#include "screens/cure_words.h"
#include "screens/forecast_words.h"
#include "screens/plate.h"
#include "screens/stage_roles.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
std::vector<RowModel<FloorLine>::Column> floor_columns() {
  return {
      {"jobId", [](const FloorLine& row) { return row.key; }},
      {"group", [](const FloorLine& row) { return row.group; }},
      {"plate", [](const FloorLine& row) { return row.plate; }},
      {"carWords", [](const FloorLine& row) { return row.car; }},
      {"next", [](const FloorLine& row) { return row.next; }},
      {"who", [](const FloorLine& row) { return row.who; }},
      {"due", [](const FloorLine& row) { return row.due; }},
      {"promised", [](const FloorLine& row) { return row.promised; }},
      {"chance", [](const FloorLine& row) { return row.chance; }},
      {"about", [](const FloorLine& row) { return row.about; }},
      {"percent", [](const FloorLine& row) { return row.percent; }},
      {"outlook", [](const FloorLine& row) { return row.outlook; }},
      {"ready", [](const FloorLine& row) { return row.ready; }},
      {"earliest", [](const FloorLine& row) { return row.earliest; }},
      {"holds", [](const FloorLine& row) { return row.holds; }},
      {"slack", [](const FloorLine& row) { return row.slack; }},
      {"waits", [](const FloorLine& row) { return row.waits; }},
      {"line", [](const FloorLine& row) { return row.line; }},
      {"nextText", [](const FloorLine& row) { return row.nextText; }},
      {"nextWhy", [](const FloorLine& row) { return row.nextWhy; }},
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
}  // namespace

FloorViewModel::FloorViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session), model_(new RowModel<FloorLine>(floor_columns(), this)) {
  connect(&session, &Session::snapshotChanged, this, &FloorViewModel::rebuild);
  connect(&session, &Session::secondPassed, this, &FloorViewModel::second_passed);
  rebuild();
}

void FloorViewModel::follow(FloorForecasts& forecasts) {
  forecasts_ = &forecasts;
  connect(&forecasts, &FloorForecasts::changed, this, &FloorViewModel::rebuild);
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
  for (const auto& part : car.parts)
    if (part.disputed)
      return FloorViewModel::tr("Who has the %1?")
          .arg(part.panel ? words_of(*part.panel, car.body) : FloorViewModel::tr("car"));
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

StateKind state_of(const folds::FloorRow& car, int outlook, bool for_you) {
  if (car.disputed) return StateKind::Disputed;
  if (outlook == static_cast<int>(Outlook::Trouble)) return StateKind::Must;
  bool paused = false;
  for (const auto& running : car.running) {
    if (!running.paused) return StateKind::Running;
    paused = true;
  }
  if (paused) return StateKind::Paused;
  if (!car.next_stage) return StateKind::Done;
  const bool careful = outlook == static_cast<int>(Outlook::Careful);
  return for_you || careful ? StateKind::Waits : StateKind::NotYet;
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

QString next_words(job::Stage stage, NextWhy why) {
  if (why == NextWhy::Paused) return FloorViewModel::tr("Go on: %1").arg(words_of(stage));
  if (stage == job::Stage::BeforeTheGun || stage == job::Stage::Spray)
    return FloorViewModel::tr("Before the gun");
  return FloorViewModel::tr("Start %1").arg(words_of(stage));
}

}  // namespace

QString FloorViewModel::jobIdAt(int row) const {
  return row >= 0 && row < cars() ? model_->rows()[static_cast<std::size_t>(row)].key : QString();
}

void FloorViewModel::say_ready(const folds::FloorRow& car, FloorLine& line) const {
  const auto* known = forecasts_ ? forecasts_->of(car.job) : nullptr;
  FloorForecasts::Known unknown;
  unknown.row.promised_ms = car.promised_ms;
  const ForecastWords said =
      words_of(known ? *known : unknown, session_.now().wall_ms, session_.zone());
  line.chance = said.chance;
  line.about = said.about;
  line.percent = said.percent;
  line.outlook = static_cast<int>(said.outlook);
  if (!said.likely.isEmpty()) line.ready = tr("likely %1").arg(said.likely);
  if (!said.earliest.isEmpty()) line.earliest = tr("earliest %1").arg(said.earliest);
  line.waits = said.waits;
  line.holds = said.holds;
  line.slack = said.slack;
  const bool held = said.waits || line.ready.isEmpty();
  QStringList said_short{held ? line.ready : said.span, held ? said.holds : QString()};
  said_short.removeAll(QString());
  line.line = sentence(said_short.join(QStringLiteral(" \u00b7 ")));
}

FloorLine FloorViewModel::line_of(const folds::FloorRow& car, bool for_you) const {
  const std::int64_t now_ms = session_.now().wall_ms;
  const QString zone = session_.zone();
  FloorLine line;
  line.key = text(car.job.hex());
  line.plate = plate_of(car);
  line.car = (text(car.color.name).section(QChar(','), 0, 0) + QChar(' ') + short_words(car.body))
                 .trimmed();
  line.next = next_words(car);
  line.who = who_words(car, session_, for_you);
  line.promised = car.promised_ms ? time_words(*car.promised_ms, now_ms, zone) : tr("no promise");
  line.due = car.promised_ms ? tr("due %1").arg(line.promised) : line.promised;
  line.held = do_not_drive_words(folds::do_not_drive(car.glass, session_.shop(), session_.now()),
                                 now_ms, zone);
  say_ready(car, line);
  const bool held = !line.held.isEmpty() && !car.disputed;
  line.state = shape_of(held ? StateKind::Must : state_of(car, line.outlook, for_you));
  line.done = car.stages > 0 ? double(car.stages_done) / car.stages : 0.0;
  line.progress = tr("%1 of %2 stages").arg(car.stages_done).arg(car.stages);
  line.stages = tr("%1/%2", "stages done of stages").arg(car.stages_done).arg(car.stages);
  line.hours = worked_words(car);
  line.disputed = car.disputed;
  line.read_only = car.read_only;
  line.on_tape = session_.job() == car.job;
  return line;
}

void FloorViewModel::rebuild() {
  const auto& floor = *session_.snapshot().floor;
  const auto* person = session_.shop().find(session_.person());
  const std::int64_t now_ms = session_.now().wall_ms;
  struct Placed {
    FloorPlace place;
    const folds::FloorRow* car;
    const folds::Forecast* forecast;
  };
  std::vector<Placed> all;
  for_you_ = 0;
  for (const auto& car : floor) {
    if (car.delivered_ms) continue;
    const bool for_you = waits_for(car, person);
    for_you_ += for_you ? 1 : 0;
    const auto* known = forecasts_ ? forecasts_->of(car.job) : nullptr;
    const auto* forecast = known && known->forecast ? &*known->forecast : nullptr;
    all.push_back({place_of(car, forecast, for_you, now_ms), &car, forecast});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Placed& a, const Placed& b) { return a.place < b.place; });
  std::vector<FloorLine> lines;
  std::vector<std::pair<const folds::FloorRow*, const folds::Forecast*>> in_order;
  for (const auto& one : all) {
    lines.push_back(line_of(*one.car, !one.place.others));
    lines.back().group = !person            ? tr("In the shop")
                         : one.place.others ? tr("Waits for others")
                                            : tr("Waits for you");
    in_order.emplace_back(one.car, one.forecast);
  }
  next_.reset();
  if (person) next_ = next_for(*person, in_order, now_ms);
  say_next(in_order, lines);
  emit aboutToChange();
  model_->set_rows(std::move(lines));
  emit changed();
}

void FloorViewModel::say_next(
    const std::vector<std::pair<const folds::FloorRow*, const folds::Forecast*>>& cars,
    std::vector<FloorLine>& lines) {
  next_text_.clear();
  next_why_.clear();
  next_car_.clear();
  if (!next_) return;
  const auto at = std::find_if(cars.begin(), cars.end(),
                               [&](const auto& one) { return one.first->job == next_->job; });
  auto& line = lines[static_cast<std::size_t>(at - cars.begin())];
  line.nextText = next_words(next_->stage, next_->why);
  switch (next_->why) {
    case NextWhy::Paused:
      line.nextWhy = tr("you paused it");
      break;
    case NextWhy::Late:
      line.nextWhy = tr("first, for it is late");
      break;
    case NextWhy::Unlikely:
      line.nextWhy = tr("first, at %1 on time").arg(line.chance);
      break;
    case NextWhy::Promised:
      line.nextWhy = tr("first, promised %1").arg(line.promised);
      break;
    case NextWhy::Alone:
      line.nextWhy = tr("nothing else waits for you");
      break;
  }
  next_text_ = line.nextText;
  next_why_ = line.nextWhy;
  next_car_ = line.plate;
}

void FloorViewModel::startNext() {
  if (!next_) return;
  const QString job = text(next_->job.hex());
  if (next_->why != NextWhy::Paused &&
      (next_->stage == job::Stage::BeforeTheGun || next_->stage == job::Stage::Spray)) {
    emit gunAsked(job);
    return;
  }
  session_.post(acts::StartClock{session_.person(), next_->job, next_->operation},
                [this, job](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit nextStarted(job);
                });
}

}  // namespace jambline::screens
