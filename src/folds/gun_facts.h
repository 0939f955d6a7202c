// folds/gun_facts.h: before the gun: what applies to this person, car and booth, and what the
// shop's own records say of each.
//
// Shape:  every item of job/gun_check.h that applies, in its order. Items of now have no answer. Of
//         the others `known` is what the records say, with the time of the record and when it is
//         due; no record is no answer, and then a must counts as not met. The stricter way in
//         doubt.
// Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/booth_state.h"
#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::folds {

struct GunScene {
  const ShopView& shop;
  const CarView& car;
  BoothId booth;
  PersonId person;
  std::optional<RespiratorId> respirator;  // none chosen yet
  bool activated = true;
  Moment now;
};

struct GunFact {
  job::GunItem item{};
  std::optional<bool> known;             // of items that rest on records
  std::optional<std::int64_t> as_of_ms;  // how old it is
  std::optional<std::int64_t> due_ms;
};

std::vector<GunFact> gun_facts(const GunScene& scene);

}  // namespace jambline::folds
