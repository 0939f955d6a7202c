// folds/shots_of_car.h: which pictures a stage of a car wants, and which of them are there.
//
// Shape:  the stage's list in its order, each shot once or once for each panel (in walking order)
// or
//         kind of mark it is wanted for. A shot "as found" is there to be offered and is missing
//         never. A poor picture stands for its shot only when a person said to keep it, and
//         then its state says so.
// Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::folds {

enum class ShotState : std::uint8_t { Missing, Taken, KeptThoughPoor, Offered };

struct WantedShot {
  job::Shot shot;
  std::optional<job::Panel> panel;      // of EachPanel and EachOpening
  std::optional<job::DefectKind> mark;  // of EachMarkKind
  ShotState state{};
  std::vector<PictureId> pictures;  // oldest first
};

// The shop's own list of the stage, or the usual one.
const std::vector<job::Shot>& shots_of(const ShopView& shop, job::Stage stage);

std::vector<WantedShot> shots_of_car(const CarView& car, const ShopView& shop, job::Stage stage);

int missing_shots(const CarView& car, const ShopView& shop, job::Stage stage);

// The picture to be held against what is taken now: of the same shot and panel at an earlier time,
// or of the same view and panel at an earlier stage; the newest. Null: none.
const PictureView* picture_before(const CarView& car, const ShopView& shop, job::Stage stage,
                                  const job::Shot& shot, std::optional<job::Panel> panel);

}  // namespace jambline::folds
