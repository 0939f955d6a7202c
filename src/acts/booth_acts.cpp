#include "acts/decisions.h"

namespace jambline::acts {

namespace {
constexpr std::size_t most_booth_name_bytes = 80;

Result<std::string> free_name(const folds::ShopView& shop, const std::string& text,
                              const BoothId& own, const char* operation) {
  JAMBLINE_ASSIGN(std::string name, typed(text, operation, "name", most_booth_name_bytes));
  for (const auto& booth : shop.booths)
    if (booth.name == name && booth.booth != own) return fail(Code::AlreadyDone, operation, name);
  return name;
}

Status event_fits(const Scene& scene, const BoothId& booth, job::BoothEvent what,
                  const std::optional<std::int64_t>& happened_ms,
                  const std::optional<bool>& old_filters_out, const char* operation) {
  if (!scene.world.shop.find(booth)) return fail(Code::Unknown, operation, "booth");
  JAMBLINE_TRY(not_to_come(happened_ms, scene, operation));
  if (old_filters_out && what != job::BoothEvent::FiltersChanged)
    return fail(Code::Malformed, operation, "filters");
  return {};
}
}  // namespace

Drafts decide_one(const Scene& scene, const AddBooth& command) {
  JAMBLINE_ASSIGN(std::string name, free_name(scene.world.shop, command.name, {}, "add a booth"));
  return std::vector<Draft>{
      {{},
       entries::BoothSet{scene.context.random.make<BoothId>(), std::move(name), command.kind, {}}}};
}

Drafts decide_one(const Scene& scene, const ChangeBooth& command) {
  const char* const operation = "change a booth";
  const auto* booth = scene.world.shop.find(command.booth);
  if (!booth) return fail(Code::Unknown, operation, "booth");
  JAMBLINE_ASSIGN(std::string name,
                  free_name(scene.world.shop, command.name, command.booth, operation));
  if (name == booth->name && command.kind == booth->kind && booth->heads.size() == 1)
    return fail(Code::AlreadyDone, operation, name);
  return std::vector<Draft>{
      {{}, entries::BoothSet{command.booth, std::move(name), command.kind, booth->heads}}};
}

Drafts decide_one(const Scene& scene, const LogBoothEvent& command) {
  JAMBLINE_TRY(event_fits(scene, command.booth, command.what, command.happened_ms,
                          command.old_filters_out, "log a booth event"));
  return std::vector<Draft>{
      {{},
       entries::BoothEventLogged{scene.context.random.make<BoothEventId>(), command.booth,
                                 command.what, command.happened_ms, command.old_filters_out}}};
}

Drafts decide_one(const Scene& scene, const CorrectBoothEvent& command) {
  const char* const operation = "correct a booth event";
  const auto* event = scene.world.shop.find(command.event);
  if (!event) return fail(Code::Unknown, operation, "booth event");
  JAMBLINE_TRY(event_fits(scene, command.booth, command.what, command.happened_ms,
                          command.old_filters_out, operation));
  return std::vector<Draft>{
      {{},
       entries::BoothEventLogged{command.event, command.booth, command.what,
                                 command.happened_ms.value_or(event->happened_ms),
                                 command.old_filters_out, event->heads}}};
}

Drafts decide_one(const Scene& scene, const SayBooth& command) {
  const char* const operation = "say the booth";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  const auto* booth = scene.world.shop.find(command.booth);
  if (!booth) return fail(Code::Unknown, operation, "booth");
  if (car->booth == command.booth && car->booth_heads.size() == 1)
    return fail(Code::AlreadyDone, operation, booth->name);
  return std::vector<Draft>{{command.job, entries::SprayedIn{command.booth, car->booth_heads}}};
}

}  // namespace jambline::acts
