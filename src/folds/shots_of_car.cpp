#include "folds/shots_of_car.h"

#include <algorithm>
#include <set>

namespace jambline::folds {

namespace {

const MarkView* mark_of(const CarView& car, const MarkId& mark) {
  for (const auto& panel : car.panels)
    for (const auto& one : panel.marks)
      if (one.mark == mark) return &one;
  return nullptr;
}

bool fits(const CarView& car, const PictureView& picture, const WantedShot& wanted) {
  if (picture.place.shot != wanted.shot.shot) return false;
  if (wanted.panel && picture.place.panel != wanted.panel) return false;
  if (!wanted.mark) return true;
  const MarkView* mark = picture.place.mark ? mark_of(car, *picture.place.mark) : nullptr;
  return mark && mark->defect == *wanted.mark;
}

void take_pictures(const CarView& car, job::Stage stage, WantedShot& wanted) {
  bool good = false;
  for (const auto& picture : car.pictures) {
    if (picture.place.stage != stage || !fits(car, picture, wanted)) continue;
    wanted.pictures.push_back(picture.picture);
    good = good || picture.facts.word == trade::PhotoWord::Good;
  }
  if (!wanted.pictures.empty())
    wanted.state = good ? ShotState::Taken : ShotState::KeptThoughPoor;
  else
    wanted.state =
        wanted.shot.wanted == job::ShotWanted::AsFound ? ShotState::Offered : ShotState::Missing;
}

std::vector<WantedShot> wanted_of(const CarView& car, const job::Shot& shot) {
  std::vector<WantedShot> out;
  switch (shot.wanted) {
    case job::ShotWanted::OnceACar:
    case job::ShotWanted::AsFound:
      out.push_back({shot, {}, {}, {}, {}});
      break;
    case job::ShotWanted::EachPanel:
    case job::ShotWanted::EachOpening:
      for (const auto& panel : car.panels)
        if (shot.wanted == job::ShotWanted::EachPanel || job::opens(panel.plan.panel))
          out.push_back({shot, panel.plan.panel, {}, {}, {}});
      break;
    case job::ShotWanted::EachMarkKind: {
      std::set<job::DefectKind> kinds;
      for (const auto& panel : car.panels)
        for (const auto& mark : panel.marks) kinds.insert(mark.defect);
      for (const auto kind : kinds) out.push_back({shot, {}, kind, {}, {}});
      break;
    }
  }
  return out;
}

}  // namespace

const std::vector<job::Shot>& shots_of(const ShopView& shop, job::Stage stage) {
  for (const auto& list : shop.shot_lists)
    if (list.stage == stage) return list.shots;
  return job::usual_shots(stage);
}

std::vector<WantedShot> shots_of_car(const CarView& car, const ShopView& shop, job::Stage stage) {
  std::vector<WantedShot> out;
  for (const auto& shot : shots_of(shop, stage))
    for (auto& wanted : wanted_of(car, shot)) {
      take_pictures(car, stage, wanted);
      out.push_back(std::move(wanted));
    }
  return out;
}

int missing_shots(const CarView& car, const ShopView& shop, job::Stage stage) {
  const auto shots = shots_of_car(car, shop, stage);
  return static_cast<int>(std::count_if(shots.begin(), shots.end(), [](const auto& shot) {
    return shot.state == ShotState::Missing;
  }));
}

const PictureView* picture_before(const CarView& car, const ShopView& shop, job::Stage stage,
                                  const job::Shot& shot, std::optional<job::Panel> panel) {
  const auto same_view = [&](const PictureView& picture) {
    const auto& list = shots_of(shop, picture.place.stage);
    return std::any_of(list.begin(), list.end(), [&](const job::Shot& one) {
      return one.shot == picture.place.shot && one.view == shot.view;
    });
  };
  const PictureView* same_shot = nullptr;
  const PictureView* earlier = nullptr;
  for (const auto& picture : car.pictures) {
    if (picture.place.panel != panel) continue;
    if (picture.place.stage == stage && picture.place.shot == shot.shot)
      same_shot = &picture;
    else if (picture.place.stage < stage && same_view(picture))
      earlier = &picture;
  }
  return same_shot ? same_shot : earlier;
}

}  // namespace jambline::folds
