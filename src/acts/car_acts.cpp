#include <algorithm>
#include <set>

#include "acts/decisions.h"
#include "folds/cure_of_car.h"
#include "folds/shots_of_car.h"
#include "job/body_shape.h"
#include "trade/vin.h"

namespace jambline::acts {

namespace {
constexpr std::size_t most_plate_bytes = 24;
constexpr std::size_t most_title_bytes = 80;
constexpr std::size_t most_note_bytes = 4000;
constexpr int most_estimate_min = 60000;

// The VIN as it is to be kept, with what the check said; refused when it fails and nobody said "use
// it as typed".
Result<entries::VinSet> vin_of(const std::string& vin, bool as_typed, const char* operation) {
  const trade::VinCheck check = trade::check_vin(vin);
  if (!check.passes && !as_typed) {
    Error error{Code::VinCheckFails, operation, check.text, {}};
    if (!check.length_right) {
      error.args.emplace_back("length", std::to_string(check.text.size()));
    } else if (!check.forbidden_places.empty()) {
      error.args.emplace_back("place", std::to_string(check.forbidden_places.front()));
    } else {
      error.args.emplace_back("place", "9");
      error.args.emplace_back("expected", std::string(1, check.expected));
    }
    return fail(std::move(error));
  }
  if (check.text.empty() || check.text.size() > 32) return fail(Code::OutOfRange, operation, "VIN");
  return entries::VinSet{check.text, check.passes, {}};
}

Status color_fits(const job::Color& color, const char* operation) {
  if (color.hex.empty()) return {};
  const bool right = color.hex.size() == 7 && color.hex[0] == '#' &&
                     color.hex.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string::npos;
  if (!right) return fail(Code::Malformed, operation, "color");
  return {};
}

Status estimate_fits(int estimate_min, const char* operation) {
  if (estimate_min < 0 || estimate_min > most_estimate_min)
    return fail(Error{Code::OutOfRange,
                      operation,
                      "estimate",
                      {{"value", std::to_string(estimate_min)},
                       {"min", "0"},
                       {"max", std::to_string(most_estimate_min)}}});
  return {};
}

// What is not said needs no words in the record.
template <class T>
std::optional<T> unless(const T& value, const T& usual) {
  return value == usual ? std::nullopt : std::optional(value);
}

// Anybody asks; a manager answers, and what was answered is said anew by a manager only.
Status may_answer(const Scene& scene, job::Approval approval, const char* operation) {
  const bool answer = approval == job::Approval::Given || approval == job::Approval::Refused;
  if (answer && !scene.may(entries::Right::Manager))
    return fail(Code::NotAllowed, operation, "approval");
  return {};
}

// Work that is not first-time work says why.
Result<entries::OperationPlanned> planned_entry(const Scene& scene, const PlannedOperation& planned,
                                                const char* operation) {
  JAMBLINE_TRY(estimate_fits(planned.estimate_min, operation));
  JAMBLINE_TRY(may_answer(scene, planned.approval, operation));
  if (planned.title.size() > most_title_bytes) return fail(Code::TooLarge, operation, "title");
  std::string why = planned.why;
  if (planned.work == job::WorkKind::Supplement || planned.work == job::WorkKind::Redo) {
    JAMBLINE_ASSIGN(why, typed(planned.why, operation, "why", most_text_bytes));
  }
  return entries::OperationPlanned{scene.context.random.make<OperationId>(),
                                   planned.stage,
                                   planned.title,
                                   planned.estimate_min,
                                   {},
                                   unless(planned.work, job::WorkKind::FirstTime),
                                   unless(why, std::string()),
                                   planned.picture,
                                   unless(planned.approval, job::Approval::NotNeeded)};
}

// An operation as it stands, to be said anew.
entries::OperationPlanned said_of(const folds::OperationView& operation) {
  return {operation.operation,
          operation.stage,
          operation.title,
          operation.estimate_min,
          operation.heads,
          unless(operation.work, job::WorkKind::FirstTime),
          unless(operation.why, std::string()),
          operation.picture,
          unless(operation.approval, job::Approval::NotNeeded)};
}

Status on_this_body(job::BodyShape body, job::Panel panel, const char* operation) {
  if (!job::pattern(body).find(panel))
    return fail(Code::Unknown, operation, std::string(word_of(panel)));
  return {};
}
}  // namespace

Drafts decide_one(const Scene& scene, const OpenCar& command) {
  const char* const operation = "open a car";
  JAMBLINE_ASSIGN(std::string plate, typed(command.plate, operation, "plate", most_plate_bytes));
  JAMBLINE_TRY(color_fits(command.color, operation));
  if (command.panels.empty()) return fail(Code::Missing, operation, "panels");
  const auto job = scene.context.random.make<JobId>();
  std::vector<Draft> out{{job, entries::CarOpened{command.body, command.drive}},
                         {job, entries::PlateSet{std::move(plate), {}}},
                         {job, entries::ColorSet{command.color, {}}}};
  if (!command.vin.empty()) {
    JAMBLINE_ASSIGN(entries::VinSet vin, vin_of(command.vin, command.vin_as_typed, operation));
    out.push_back({job, std::move(vin)});
  }
  if (command.promised_ms) out.push_back({job, entries::PromiseSet{*command.promised_ms, {}}});
  std::set<job::Panel> once;
  for (const auto& plan : command.panels) {
    JAMBLINE_TRY(on_this_body(command.body, plan.panel, operation));
    if (!once.insert(plan.panel).second)
      return fail(Code::AlreadyDone, operation, std::string(word_of(plan.panel)));
    out.push_back({job, entries::PanelPlanned{plan, {}}});
  }
  for (const auto& planned : command.operations) {
    JAMBLINE_ASSIGN(auto said, planned_entry(scene, planned, operation));
    out.push_back({job, std::move(said)});
  }
  return out;
}

Drafts decide_one(const Scene& scene, const SetPlate& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "set the plate"));
  JAMBLINE_ASSIGN(std::string plate,
                  typed(command.plate, "set the plate", "plate", most_plate_bytes));
  return std::vector<Draft>{{command.job, entries::PlateSet{std::move(plate), car->plate_heads}}};
}

Drafts decide_one(const Scene& scene, const SetVin& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "set the VIN"));
  JAMBLINE_ASSIGN(entries::VinSet vin, vin_of(command.vin, command.as_typed, "set the VIN"));
  vin.replaces = car->vin_heads;
  return std::vector<Draft>{{command.job, std::move(vin)}};
}

Drafts decide_one(const Scene& scene, const SetColor& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "set the color"));
  JAMBLINE_TRY(color_fits(command.color, "set the color"));
  return std::vector<Draft>{{command.job, entries::ColorSet{command.color, car->color_heads}}};
}

Drafts decide_one(const Scene& scene, const SetPromise& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "set the promise"));
  return std::vector<Draft>{
      {command.job, entries::PromiseSet{command.promised_ms, car->promise_heads}}};
}

Drafts decide_one(const Scene& scene, const PlanPanel& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "plan a panel"));
  JAMBLINE_TRY(on_this_body(car->body, command.plan.panel, "plan a panel"));
  const auto* known = car->find(command.plan.panel);
  return std::vector<Draft>{
      {command.job,
       entries::PanelPlanned{command.plan, known ? known->plan_heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const PlanOperation& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "plan an operation"));
  JAMBLINE_ASSIGN(auto planned, planned_entry(scene, command.operation, "plan an operation"));
  if (planned.picture && !car->find(*planned.picture))
    return fail(Code::Unknown, "plan an operation", "picture");
  return std::vector<Draft>{{command.job, std::move(planned)}};
}

Drafts decide_one(const Scene& scene, const AnswerSupplement& command) {
  const char* const doing = "answer a supplement";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  JAMBLINE_TRY(may_answer(scene, command.approval, doing));
  const auto* operation = car->find(command.operation);
  if (!operation) return fail(Code::Unknown, doing, "operation");
  if (operation->approval == command.approval)
    return fail(Code::AlreadyDone, doing, operation->title);
  auto said = said_of(*operation);
  said.approval = command.approval;
  return std::vector<Draft>{{command.job, std::move(said)}};
}

Drafts decide_one(const Scene& scene, const FinishOperation& command) {
  const char* const doing = "finish an operation";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const auto* operation = car->find(command.operation);
  if (!operation) return fail(Code::Unknown, doing, "operation");
  if (operation->done == command.done) return fail(Code::AlreadyDone, doing, operation->title);
  std::vector<Draft> out;
  for (const auto& running : car->running)
    if (command.done && running.person == scene.context.person &&
        running.operation == command.operation)
      out.push_back({command.job, entries::ClockActed{running.person, entries::ClockActKind::Stop,
                                                      running.operation}});
  out.push_back({command.job,
                 entries::OperationDone{command.operation, command.done, operation->done_heads}});
  return out;
}

Drafts decide_one(const Scene& scene, const ChangeEstimate& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "change an estimate"));
  JAMBLINE_TRY(estimate_fits(command.estimate_min, "change an estimate"));
  const auto* operation = car->find(command.operation);
  if (!operation) return fail(Code::Unknown, "change an estimate", "operation");
  JAMBLINE_TRY(may_answer(scene, operation->approval, "change an estimate"));
  auto said = said_of(*operation);
  said.estimate_min = command.estimate_min;
  return std::vector<Draft>{{command.job, std::move(said)}};
}

// Who finishes a stage is no longer at it: the own clock on it stops by the same act. The clocks of
// others run on, since they may still be at work there.
Drafts decide_one(const Scene& scene, const FinishStage& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "finish a stage"));
  std::vector<Hash> heads;
  for (const auto& stage : car->stages) {
    if (stage.stage != command.stage) continue;
    if (stage.done == command.done)
      return fail(Code::AlreadyDone, "finish a stage", std::string(word_of(command.stage)));
    heads = stage.heads;
  }
  const int missing =
      command.done ? folds::missing_shots(*car, scene.world.shop, command.stage) : 0;
  if (missing > 0 && !command.without_shots)
    return fail(Error{Code::NotYet,
                      "finish a stage",
                      std::string(word_of(command.stage)),
                      {{"what", "pictures"}, {"missing", std::to_string(missing)}}});
  std::vector<Draft> out;
  for (const auto& running : car->running) {
    const auto* operation = car->find(running.operation);
    if (command.done && running.person == scene.context.person && operation &&
        operation->stage == command.stage)
      out.push_back({command.job, entries::ClockActed{running.person, entries::ClockActKind::Stop,
                                                      running.operation}});
  }
  out.push_back(
      {command.job, entries::StageDone{command.stage, command.done, std::move(heads),
                                       missing > 0 ? command.without_shots : std::nullopt,
                                       missing > 0 ? std::optional(missing) : std::nullopt}});
  return out;
}

Drafts decide_one(const Scene& scene, const WriteNote& command) {
  JAMBLINE_TRY(scene.car(command.job, "write a note"));
  JAMBLINE_ASSIGN(std::string text, typed(command.text, "write a note", "note", most_note_bytes));
  return std::vector<Draft>{{command.job, entries::NoteWritten{std::move(text)}}};
}

}  // namespace jambline::acts
