#include "acts/decisions.h"
#include "job/body_shape.h"

namespace jambline::acts {

Status on_panel(const folds::CarView& car, job::Panel panel, double x_mm, double y_mm,
                const char* operation) {
  const auto* placed = job::pattern(car.body).find(panel);
  if (placed && trade::contains(placed->shape.outline, {x_mm, y_mm})) return {};
  Error error{Code::OutsidePanel, operation, std::string(word_of(panel)), {}};
  error.args = {{"x_mm", number_text(x_mm)}, {"y_mm", number_text(y_mm)}};
  return fail(std::move(error));
}

Result<FoundMark> find_mark(const folds::CarView& car, const MarkId& mark, const char* operation) {
  for (const auto& panel : car.panels)
    for (const auto& one : panel.marks)
      if (one.mark == mark) return FoundMark{&panel, &one};
  return fail(Code::Unknown, operation, "mark");
}

job::Stage stage_of_looking(const folds::CarView& car) {
  for (const auto& one : car.stages)
    if (one.stage == job::Stage::Assemble && one.done) return job::Stage::LastPolish;
  return job::Stage::Inspect;
}

void say_to_correct(const JobId& job, const folds::PanelView& panel, std::vector<Draft>& out) {
  if (panel.verdict != job::Verdict::NotLookedAt && panel.verdict != job::Verdict::Clean) return;
  out.push_back({job, entries::VerdictGiven{panel.plan.panel, job::Verdict::ToCorrect, false,
                                            panel.verdict_heads}});
}

namespace {

Status size_fits(int size, const char* operation) {
  if (size >= job::smallest_size && size <= job::largest_size) return {};
  return fail(Error{Code::OutOfRange,
                    operation,
                    "size",
                    {{"value", std::to_string(size)}, {"min", "1"}, {"max", "4"}}});
}

}  // namespace

Drafts decide_one(const Scene& scene, const PlaceMark& command) {
  const char* const operation = "place a mark";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const auto* panel, scene.panel(*car, command.panel, operation));
  JAMBLINE_TRY(on_panel(*car, command.panel, command.x_mm, command.y_mm, operation));
  JAMBLINE_TRY(size_fits(command.size, operation));
  std::vector<Draft> out{
      {command.job, entries::MarkPlaced{scene.context.random.make<MarkId>(), command.panel,
                                        command.x_mm, command.y_mm, command.defect, command.size,
                                        command.layer, stage_of_looking(*car), command.look}}};
  say_to_correct(command.job, *panel, out);
  return out;
}

Drafts decide_one(const Scene& scene, const MoveMark& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "move a mark"));
  JAMBLINE_ASSIGN(const FoundMark found, find_mark(*car, command.mark, "move a mark"));
  JAMBLINE_TRY(on_panel(*car, found.panel->plan.panel, command.x_mm, command.y_mm, "move a mark"));
  return std::vector<Draft>{
      {command.job,
       entries::MarkMoved{command.mark, command.x_mm, command.y_mm, found.mark->place_heads}}};
}

Drafts decide_one(const Scene& scene, const DescribeMark& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "describe a mark"));
  JAMBLINE_ASSIGN(const FoundMark found, find_mark(*car, command.mark, "describe a mark"));
  JAMBLINE_TRY(size_fits(command.size, "describe a mark"));
  std::optional<job::ParticleLook> look = command.look;
  if (!look && command.defect == found.mark->defect) look = found.mark->look;
  return std::vector<Draft>{
      {command.job, entries::MarkDescribed{command.mark, command.defect, command.size,
                                           command.layer, found.mark->words_heads, look}}};
}

Drafts decide_one(const Scene& scene, const WithdrawMark& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "withdraw a mark"));
  JAMBLINE_ASSIGN(const FoundMark found, find_mark(*car, command.mark, "withdraw a mark"));
  return std::vector<Draft>{{command.job, entries::Withdrawn{found.mark->placed, ""}}};
}

Drafts decide_one(const Scene& scene, const SayDirtAllOver& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "say dirt all over"));
  JAMBLINE_ASSIGN(const auto* panel, scene.panel(*car, command.panel, "say dirt all over"));
  std::vector<Draft> out{
      {command.job, entries::DirtAllOver{command.panel, command.dirt, panel->dirt_heads}}};
  if (command.dirt != job::DirtClass::None) say_to_correct(command.job, *panel, out);
  return out;
}

Drafts decide_one(const Scene& scene, const GiveVerdict& command) {
  const char* const operation = "give a verdict";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const auto* panel, scene.panel(*car, command.panel, operation));
  const std::string subject(word_of(command.panel));
  if (command.verdict == job::Verdict::NotLookedAt) return fail(Code::Missing, operation, subject);
  if (panel->verdict == command.verdict && !panel->disputed && !command.rack)
    return fail(Code::AlreadyDone, operation, subject);
  std::vector<Draft> out{
      {command.job, entries::VerdictGiven{command.panel, command.verdict, command.edges_and_back,
                                          panel->verdict_heads}}};
  if (command.rack) {
    if (command.verdict != job::Verdict::Clean || panel->plan.on_car || !command.edges_and_back)
      return fail(Code::NotYet, "release a part", subject);
    out.push_back({command.job, entries::ReleaseOffered{scene.context.random.make<ReleaseId>(),
                                                        command.panel, job::Role::BodyTechnician,
                                                        command.rack, panel->release.offer_heads}});
  }
  return out;
}

}  // namespace jambline::acts
