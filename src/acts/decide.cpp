#include "acts/decide.h"

#include <cmath>

#include "acts/decisions.h"
#include "base/json.h"

namespace jambline::acts {

Result<const folds::CarView*> Scene::car(const JobId& job, const char* operation) const {
  const folds::CarView* car = world.car(job);
  if (!car || !car->opened) return fail(Code::Unknown, operation, "car");
  if (car->unknown_entries > 0) return fail(Code::NewerSchema, operation, car->plate);
  return car;
}

Result<const folds::PanelView*> Scene::panel(const folds::CarView& car, job::Panel panel,
                                             const char* operation) const {
  const folds::PanelView* found = car.find(panel);
  if (!found) return fail(Code::Unknown, operation, std::string(word_of(panel)));
  return found;
}

bool Scene::may(entries::Right right) const {
  if (right == entries::Right::Technician) return true;
  if (right == entries::Right::ManagerDevice) return world.manager_device;
  const folds::PersonView* person = world.shop.find(context.person);
  return person && entries::has_right(person->role, right);
}

Result<std::string> typed(const std::string& text, const char* operation, const char* field,
                          std::size_t most) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == std::string::npos) return fail(Code::Missing, operation, field);
  const auto last = text.find_last_not_of(" \t\r\n");
  std::string out = text.substr(first, last - first + 1);
  if (out.size() > most)
    return fail(Error{Code::TooLarge, operation, field, {{"limit", std::to_string(most)}}});
  return out;
}

std::string number_text(double number) {
  std::string out;
  json::write_number(out, number);
  return out;
}

Result<std::vector<Draft>> decide(const World& world, const Command& command,
                                  const Context& context) {
  const Scene scene{world, context};
  JAMBLINE_ASSIGN(auto drafts,
                  command.visit([&](const auto& one) { return decide_one(scene, one); }));
  for (const Draft& draft : drafts)
    if (!scene.may(entries::right_of(draft.payload)))
      return fail(Code::NotAllowed, "say", entries::kind_name(entries::write(draft.payload).kind));
  return drafts;
}

Status in_range(double value, double least, double most, const char* operation, const char* field) {
  if (value >= least && value <= most) return {};
  return fail(Error{Code::OutOfRange,
                    operation,
                    field,
                    {{"value", std::isfinite(value) ? number_text(value) : "no number"},
                     {"min", number_text(least)},
                     {"max", number_text(most)}}});
}

Status not_to_come(const std::optional<std::int64_t>& at_ms, const Scene& scene,
                   const char* operation) {
  constexpr std::int64_t year_2020_ms = 1'577'836'800'000;
  constexpr std::int64_t clocks_differ_ms = 600'000;  // of two devices of a shop
  if (at_ms && *at_ms < year_2020_ms) return fail(Code::OutOfRange, operation, "time");
  if (at_ms && *at_ms > scene.context.now_ms + clocks_differ_ms)
    return fail(Code::NotYet, operation, "time");
  return {};
}

}  // namespace jambline::acts
