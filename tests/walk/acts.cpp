#include "acts.h"

#include "rules.h"

namespace jambline::walk {

bool act(Shop& shop, acts::Command command, const PersonId& by) {
  bool good = false;
  auto& engine = shop.program().engine();
  engine.post(std::move(command), by,
              [&](const Result<engine::Wrote>& wrote) { good = wrote.has_value(); });
  engine.drain();
  settle(shop.window());
  return good;
}

const folds::ShopView& shop_of(Shop& shop) {
  return *shop.program().engine().snapshot()->shop;
}

std::optional<PersonId> manager_of(Shop& shop) {
  for (const auto& person : shop_of(shop).people)
    if (person.role == job::Role::Manager && !person.left) return person.person;
  return std::nullopt;
}

}  // namespace jambline::walk
