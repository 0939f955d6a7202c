#include <algorithm>
#include <cmath>

#include "acts/decisions.h"
#include "folds/assembly_of_car.h"
#include "folds/cure_of_car.h"
#include "folds/open_points.h"
#include "folds/shots_of_car.h"

namespace jambline::acts {

namespace {
constexpr std::size_t most_stroke_points = 5000;
constexpr std::int64_t farthest_ms = 3LL * 365 * 86'400'000;

// What is still to come: not before yesterday, not years away.
Status to_come(const std::optional<std::int64_t>& at_ms, const Scene& scene, const char* doing) {
  if (!at_ms) return {};
  const std::int64_t now_ms = scene.context.now_ms;
  if (*at_ms < now_ms - 86'400'000 || *at_ms > now_ms + farthest_ms)
    return fail(Code::OutOfRange, doing, "expected");
  return {};
}

Status short_text(const std::string& text, const char* doing, const char* field) {
  if (text.size() > most_text_bytes)
    return fail(Error{Code::TooLarge, doing, field, {{"limit", std::to_string(most_text_bytes)}}});
  return {};
}

template <class T, class Id>
const T* find_in(const std::vector<T>& list, const Id& id, Id T::*which) {
  for (const auto& one : list)
    if (one.*which == id) return &one;
  return nullptr;
}
}  // namespace

Drafts decide_one(const Scene& scene, const SayCheckIn& command) {
  const char* const doing = "check in";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const auto& said = command.said;
  if (said.odometer) JAMBLINE_TRY(in_range(*said.odometer, 0, 9'999'999, doing, "odometer"));
  if (said.fuel_percent) JAMBLINE_TRY(in_range(*said.fuel_percent, 0, 100, doing, "fuel"));
  JAMBLINE_TRY(in_range(said.keys, 0, 20, doing, "keys"));
  JAMBLINE_TRY(short_text(said.warning_lamps, doing, "warning lamps"));
  JAMBLINE_TRY(short_text(said.old_damage, doing, "old damage"));
  JAMBLINE_TRY(short_text(said.state_of_pack, doing, "pack"));
  const auto& known = car->visit.check_in;
  if (known && known->said == said && known->heads.size() == 1)
    return fail(Code::AlreadyDone, doing, car->plate);
  return std::vector<Draft>{
      {command.job, entries::CheckedIn{said, known ? known->heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const SayPart& command) {
  const char* const doing = "log a part";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  job::OrderedPart said = command.said;
  JAMBLINE_ASSIGN(said.part_name, typed(said.part_name, doing, "name", most_text_bytes));
  if (said.state == job::PartState::Ordered) JAMBLINE_TRY(to_come(said.expected_ms, scene, doing));
  PartId id;
  std::vector<Hash> heads;
  if (command.part) {
    const auto* known = find_in(car->visit.parts, *command.part, &folds::PartView::part);
    if (!known) return fail(Code::Unknown, doing, "part");
    if (known->said == said && known->heads.size() == 1)
      return fail(Code::AlreadyDone, doing, said.part_name);
    id = known->part;
    heads = known->heads;
  } else {
    id = scene.context.random.make<PartId>();
  }
  return std::vector<Draft>{
      {command.job, entries::PartSaid{id, std::move(said), std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const SaySublet& command) {
  const char* const doing = "log work outside";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  job::Sublet said = command.said;
  JAMBLINE_ASSIGN(said.who, typed(said.who, doing, "who", most_text_bytes));
  if (said.state != job::SubletState::Back) JAMBLINE_TRY(to_come(said.expected_ms, scene, doing));
  SubletId id;
  std::vector<Hash> heads;
  if (command.sublet) {
    const auto* known = find_in(car->visit.sublets, *command.sublet, &folds::SubletView::sublet);
    if (!known) return fail(Code::Unknown, doing, "work outside");
    if (known->said == said && known->heads.size() == 1)
      return fail(Code::AlreadyDone, doing, said.who);
    id = known->sublet;
    heads = known->heads;
  } else {
    id = scene.context.random.make<SubletId>();
  }
  return std::vector<Draft>{
      {command.job, entries::SubletSaid{id, std::move(said), std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const SayWait& command) {
  const char* const doing = command.waits ? "say that it waits" : "say that it goes on";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const auto& now = car->visit.waits_for;
  const bool waits = std::find(now.begin(), now.end(), command.reason) != now.end();
  if (!waits && !command.waits)
    return fail(Code::NotRunning, doing, std::string(word_of(command.reason)));
  JAMBLINE_TRY(to_come(command.expected_ms, scene, doing));
  const auto heads = car->visit.wait_heads.find(command.reason);
  return std::vector<Draft>{
      {command.job,
       entries::WaitSaid{
           command.reason, command.waits, command.waits ? command.expected_ms : std::nullopt,
           heads == car->visit.wait_heads.end() ? std::vector<Hash>{} : heads->second}}};
}

Drafts decide_one(const Scene& scene, const Sign& command) {
  const char* const doing = "sign";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  JAMBLINE_ASSIGN(std::string signer, typed(command.signer, doing, "name", most_text_bytes));
  std::size_t points = 0;
  for (const auto& stroke : command.strokes)
    for (const auto& point : stroke.points) {
      if (!(point.x >= 0 && point.x <= 1 && point.y >= 0 && point.y <= 1))
        return fail(Code::OutOfRange, doing, "signature");
      ++points;
    }
  if (points < 2) return fail(Code::Missing, doing, "signature");
  if (points > most_stroke_points) return fail(Code::TooLarge, doing, "signature");
  const int open =
      command.what == job::SignedFor::Delivery
          ? static_cast<int>(folds::open_points(*car, scene.world.shop, scene.context.now).size())
          : 0;
  return std::vector<Draft>{
      {command.job, entries::Signed{command.what, std::move(signer), command.strokes, open}}};
}

Drafts decide_one(const Scene& scene, const SayCameBack& command) {
  const char* const doing = "take a car back in";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  if (!car->delivered_ms) return fail(Code::NotYet, doing, car->plate);
  JAMBLINE_ASSIGN(std::string complaint,
                  typed(command.complaint, doing, "complaint", most_text_bytes));
  JAMBLINE_TRY(short_text(command.who_pays, doing, "who pays"));
  if (command.panel) JAMBLINE_TRY(scene.panel(*car, *command.panel, doing));
  return std::vector<Draft>{
      {command.job, entries::CameBack{scene.context.random.make<ComebackId>(), std::move(complaint),
                                      command.panel, command.who_pays, car->delivered_entry}},
      {command.job, entries::OperationPlanned{scene.context.random.make<OperationId>(),
                                              job::Stage::Comeback,
                                              "",
                                              0,
                                              {},
                                              job::WorkKind::Comeback}}};
}

// The car goes; whoever still runs a clock on it is stopped by the same act, and a walk-around with
// all its pictures is done by it.
Drafts decide_one(const Scene& scene, const Deliver& command) {
  const char* const doing = "deliver";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  if (car->delivered_ms) return fail(Code::AlreadyDone, doing, car->plate);
  if (folds::do_not_drive(*car, scene.world.shop, scene.context.now))
    return fail(Error{Code::NotYet, doing, car->plate, {{"what", "drive-away"}}});
  for (const auto& panel : car->panels)
    if (panel.disputed) return fail(Code::Disputed, doing, std::string(word_of(panel.plan.panel)));
  const auto points = folds::open_points(*car, scene.world.shop, scene.context.now);
  const std::int64_t visit_ms =
      car->visit.comebacks.empty() ? car->opened_ms : car->visit.comebacks.back().wall_ms;
  const bool is_signed =
      std::any_of(car->visit.signatures.begin(), car->visit.signatures.end(), [&](const auto& one) {
        return one.what == job::SignedFor::Delivery && one.wall_ms >= visit_ms &&
               one.open_points >= static_cast<int>(points.size());
      });
  if (!points.empty() && !is_signed)
    return fail(Error{Code::NotYet,
                      doing,
                      car->plate,
                      {{"what", "signature"}, {"points", std::to_string(points.size())}}});
  std::vector<Draft> out;
  JAMBLINE_ASSIGN(auto broken,
                  rules_broken(scene, *car, job::Step::Delivery, command.against_rules, doing));
  if (!broken.empty())
    out.push_back({command.job, entries::StepSaid{job::Step::Delivery, true, std::move(broken),
                                                  heads_of_step(*car, job::Step::Delivery)}});
  for (const auto& running : car->running)
    if (!running.paused)
      out.push_back({command.job, entries::ClockActed{running.person, entries::ClockActKind::Stop,
                                                      running.operation}});
  for (const auto& stage : car->stages)
    if (stage.stage == job::Stage::WalkAround && !stage.done &&
        folds::missing_shots(*car, scene.world.shop, stage.stage) == 0)
      out.push_back({command.job, entries::StageDone{stage.stage, true, stage.heads, {}, {}}});
  const auto* comeback = car->visit.open_comeback();
  out.push_back({command.job, entries::CarDelivered{
                                  static_cast<int>(points.size()),
                                  comeback ? std::optional(comeback->comeback) : std::nullopt}});
  return out;
}

}  // namespace jambline::acts
