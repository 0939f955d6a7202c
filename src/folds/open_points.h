// folds/open_points.h: what is still missing on a car before it goes.
//
// Shape:  one point a thing, in the order of a walk-around. The walk-around itself is none: it ends
//         with the delivery. Pictures that somebody called not needed, or taken elsewhere, are
//         none either. Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::folds {

enum class OpenPointKind : std::uint8_t {
  PanelNotClean,
  StageOpen,
  PartNotHere,
  SubletNotBack,
  ApprovalOpen,
  LatchNotChecked,
  ShotsMissing,
};

struct OpenPoint {
  OpenPointKind kind{};
  std::optional<job::Panel> panel = {};
  std::optional<job::Stage> stage = {};
  std::string name = {};  // of a part, a sublet, a supplement
  int count = 0;          // marks, pictures
};

std::vector<OpenPoint> open_points(const CarView& car, const ShopView& shop, const Moment& now);

}  // namespace jambline::folds
