#include "acts/decide.h"

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

bool Scene::is_manager() const {
  const folds::PersonView* person = world.shop.find(context.person);
  return person && person->role == job::Role::Manager;
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
  return std::visit([&](const auto& one) { return decide_one(scene, one); }, command);
}

}  // namespace jambline::acts
