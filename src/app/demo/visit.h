// app/demo/visit.h: one car's visit from check-in to delivery as a list of acts with their times.
//
// A Step's commands are decided against the car as it then is and written as one action.
#pragma once

#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "acts/commands.h"
#include "app/demo/correction.h"
#include "app/demo/dirt.h"
#include "app/demo/times.h"
#include "base/error.h"
#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::demo {

using Crew = std::map<Who, PersonId>;

// What is said of a picture or with one; takes it first, which may fail. Its randomness is of its
// own.
using PictureAct = std::function<Result<Commands>(
    const folds::CarView& car, const folds::ShopView& shop, SeededRandom& random)>;

// About the air of the shop, what is sprayed on a car or what it waits for; its randomness is of
// its own.
using AirAct = std::function<Commands(const folds::CarView& car, const folds::ShopView& shop,
                                      const Moment& now)>;

struct Step {
  std::int64_t at_ms{};
  PersonId person;
  CarAct act;
  // What somebody on the shop's other device says of the same car without knowing of `act`.
  PersonId other_person = {};
  CarAct other = {};
  PictureAct picture = {};  // instead of `act`
  AirAct air = {};          // instead of `act`
  std::optional<job::Stage> finishes = {};
};

struct Visit {
  std::vector<Step> steps;   // the first one opens the car
  bool out_of_time = false;  // nobody had time before now: the rest is not done yet
};

struct VisitPlan {
  acts::OpenCar open;
  job::Stage until = job::Stage::Comeback;  // the first stage that is not done
  Booth booth;
  SeededRandom story;  // of its own: what is done with the dirt changes nothing of the dirt
  bool burns_through = false;
  bool says_cause = true;
  // Stages that are finished before have no pictures; later ones lack some.
  std::int64_t camera_from_ms = std::numeric_limits<std::int64_t>::max();
};

struct House {
  std::vector<RackId> racks;
  std::vector<BoothId> booths;
};

// What is painted and how long it ought to take, for a new car.
acts::OpenCar invented_car(SeededRandom& random);

Visit visit_of(VisitPlan plan, const Crew& crew, const House& house, Times& times,
               SeededRandom& random);

// The operation of a stage, or none.
OperationId operation_of(const folds::CarView& car, job::Stage stage);

}  // namespace jambline::demo
