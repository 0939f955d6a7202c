#include <algorithm>
#include <set>

#include "acts/decisions.h"
#include "folds/assembly_of_car.h"
#include "folds/fit_of_panel.h"
#include "job/body_shape.h"

namespace jambline::acts {

namespace {
constexpr std::size_t most_points = 60;

std::string in_words(const std::vector<job::Step>& cycle) {
  std::string out;
  for (const auto step : cycle) {
    if (!out.empty()) out += ", then ";
    out += word_of(step);
  }
  return out;
}
}  // namespace

std::vector<Hash> heads_of_step(const folds::CarView& car, job::Step step) {
  const auto* known = car.assembly.find(step);
  return known ? known->heads : std::vector<Hash>{};
}

Result<std::vector<entries::BrokenRule>> rules_broken(const Scene& scene, const folds::CarView& car,
                                                      job::Step step,
                                                      const std::optional<job::RuleReason>& reason,
                                                      const char* doing) {
  std::vector<entries::BrokenRule> out;
  for (const auto& rule : folds::in_the_way(car, scene.world.shop, step, scene.context.now)) {
    const std::string before(word_of(rule.said.before));
    if (rule.said.kind == job::RuleKind::NoOverride)
      return fail(Error{Code::NotAllowed, doing, before, {{"class", "stop"}}});
    if (rule.said.kind == job::RuleKind::Soft) continue;
    if (!reason) return fail(Error{Code::NotYet, doing, before, {{"what", "before"}}});
    out.push_back({rule.rule, *reason});
  }
  return out;
}

Drafts decide_one(const Scene& scene, const SayStep& command) {
  const char* const doing = "log a step";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const std::string subject(word_of(command.step));
  const auto steps = folds::steps_of_car(*car, scene.world.shop, scene.context.now);
  const auto found = std::find_if(steps.begin(), steps.end(),
                                  [&](const auto& one) { return one.step == command.step; });
  if (found == steps.end()) return fail(Code::Unknown, doing, subject);
  // What a clock or the car itself says is not tapped.
  if (found->by_itself) return fail(found->done ? Code::AlreadyDone : Code::NotYet, doing, subject);
  if (command.step == job::Step::Delivery) return fail(Code::NotAllowed, doing, subject);
  if (found->done == command.done) return fail(Code::AlreadyDone, doing, subject);
  std::vector<entries::BrokenRule> broken;
  if (command.done) {
    JAMBLINE_ASSIGN(broken, rules_broken(scene, *car, command.step, command.against_rules, doing));
  }
  return std::vector<Draft>{
      {command.job, entries::StepSaid{command.step, command.done, std::move(broken),
                                      heads_of_step(*car, command.step)}}};
}

Drafts decide_one(const Scene& scene, const MeasureFit& command) {
  const char* const doing = "measure a fit";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const auto* drawn = job::pattern(car->body).find(command.panel);
  if (!drawn) return fail(Code::Unknown, doing, std::string(word_of(command.panel)));
  if (command.points.empty()) return fail(Code::Missing, doing, "points");
  if (command.points.size() > most_points)
    return fail(Error{Code::TooLarge, doing, "points", {{"limit", std::to_string(most_points)}}});
  for (const auto& point : command.points) {
    JAMBLINE_TRY(in_range(point.gap_mm, 0, 50, doing, "gap"));
    JAMBLINE_TRY(in_range(point.wanted_gap_mm, 0, 50, doing, "wanted gap"));
    if (point.flush_mm) JAMBLINE_TRY(in_range(*point.flush_mm, -30, 30, doing, "flush"));
    JAMBLINE_TRY(in_range(point.wanted_flush_mm, -30, 30, doing, "wanted flush"));
    JAMBLINE_TRY(in_range(point.direction_deg, -360, 360, doing, "direction"));
    JAMBLINE_TRY(in_range(point.x_mm, -10'000, 10'000, doing, "place"));
    JAMBLINE_TRY(in_range(point.y_mm, -10'000, 10'000, doing, "place"));
  }
  return std::vector<Draft>{
      {command.job, entries::FitMeasured{scene.context.random.make<FitId>(),
                                         command.panel,
                                         command.round,
                                         job::datum_of(car->body, command.panel),
                                         command.points,
                                         {}}}};
}

Drafts decide_one(const Scene& scene, const MoveFasteners& command) {
  const char* const doing = "log what was moved";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const auto& fasteners = job::fasteners_of(car->body, command.panel);
  if (command.moves.empty()) return fail(Code::Missing, doing, "fastener");
  std::set<std::string> once;
  for (const auto& move : command.moves) {
    if (std::none_of(fasteners.begin(), fasteners.end(),
                     [&](const auto& one) { return one.fastener_name == move.fastener; }))
      return fail(Code::Unknown, doing, move.fastener);
    if (!once.insert(move.fastener).second) return fail(Code::AlreadyDone, doing, move.fastener);
    for (const double moved_mm : {move.x_mm, move.y_mm, move.lift_mm})
      JAMBLINE_TRY(in_range(moved_mm, -100, 100, doing, "move"));
  }
  return std::vector<Draft>{{command.job, entries::FastenersMoved{command.panel, command.moves}}};
}

Drafts decide_one(const Scene& scene, const SetCalendar& command) {
  const char* const doing = "set the calendar";
  if (!scene.may_say<entries::CalendarSet>()) return fail(Code::NotAllowed, doing, "calendar");
  job::Calendar calendar = command.calendar;
  if (calendar.week.size() != 7) return fail(Code::Malformed, doing, "week");
  int open_min = 0;
  for (const auto& day : calendar.week) {
    JAMBLINE_TRY(in_range(day.from_min, 0, 1440, doing, "opens"));
    JAMBLINE_TRY(in_range(day.to_min, day.from_min, 1440, doing, "closes"));
    open_min += day.to_min - day.from_min;
  }
  if (open_min == 0) return fail(Code::Missing, doing, "open hours");
  for (const int day : calendar.holidays) JAMBLINE_TRY(in_range(day, 0, 100'000, doing, "holiday"));
  std::sort(calendar.holidays.begin(), calendar.holidays.end());
  calendar.holidays.erase(std::unique(calendar.holidays.begin(), calendar.holidays.end()),
                          calendar.holidays.end());
  const auto& shop = scene.world.shop;
  if (shop.calendar == calendar && shop.calendar_heads.size() == 1)
    return fail(Code::AlreadyDone, doing, "calendar");
  return std::vector<Draft>{{{}, entries::CalendarSet{std::move(calendar), shop.calendar_heads}}};
}

Drafts decide_one(const Scene& scene, const SetRule& command) {
  const char* const doing = "set a rule";
  job::AssemblyRule said = command.said;
  const std::string subject =
      std::string(word_of(said.before)) + ", " + std::string(word_of(said.after));
  if (!scene.may_say<entries::RuleSet>()) return fail(Code::NotAllowed, doing, subject);
  JAMBLINE_ASSIGN(said.why, typed(said.why, doing, "why", most_text_bytes));
  RuleId id;
  std::vector<Hash> heads;
  std::vector<job::AssemblyRule> all{said};
  for (const auto& rule : scene.world.shop.rules) {
    if (command.rule == rule.rule) {
      if (rule.said == said) return fail(Code::AlreadyDone, doing, subject);
      id = rule.rule;
      heads = rule.heads;
      // Nobody who is held by it weakens what protects the car's occupants.
      if (rule.said.kind == job::RuleKind::NoOverride &&
          (said.kind != job::RuleKind::NoOverride || said.retired ||
           said.before != rule.said.before || said.after != rule.said.after))
        return fail(Code::NotAllowed, doing, subject);
      continue;
    }
    if (!command.rule && rule.said.before == said.before && rule.said.after == said.after &&
        !rule.said.retired)
      return fail(Code::AlreadyDone, doing, subject);
    all.push_back(rule.said);
  }
  if (command.rule && !id) return fail(Code::Unknown, doing, subject);
  if (const auto cycle = job::cycle_in(all); !cycle.empty())
    return fail(Error{Code::Malformed, doing, subject, {{"cycle", in_words(cycle)}}});
  if (!command.rule) id = scene.context.random.make<RuleId>();
  return std::vector<Draft>{{{}, entries::RuleSet{id, std::move(said), std::move(heads)}}};
}

}  // namespace jambline::acts
