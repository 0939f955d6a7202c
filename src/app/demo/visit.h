// app/demo/visit.h: one car's visit from check-in to delivery as a list of acts with their times.
//
// A Step's commands are decided against the car as it then is and written as one action.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "acts/commands.h"
#include "app/demo/dirt.h"
#include "app/demo/times.h"
#include "folds/car_view.h"

namespace jambline::demo {

using Commands = std::vector<acts::Command>;
using Crew = std::map<Who, PersonId>;

struct Step {
  std::int64_t at_ms{};
  PersonId person;
  std::function<Commands(const folds::CarView& car)> act;
  // What somebody on the shop's other device says of the same car without knowing of `act`.
  PersonId other_person = {};
  std::function<Commands(const folds::CarView& car)> other = {};
};

struct Visit {
  std::vector<Step> steps;   // the first one opens the car
  bool out_of_time = false;  // nobody had time before now: the rest is not done yet
};

struct VisitPlan {
  acts::OpenCar open;
  job::Stage until = job::Stage::Comeback;  // the first stage that is not done
  Booth booth;
};

// What is painted and how long it ought to take, for a new car.
acts::OpenCar invented_car(SeededRandom& random);

Visit visit_of(const VisitPlan& plan, const Crew& crew, const std::vector<RackId>& racks,
               Times& times, SeededRandom& random);

// The operation of a stage, or none.
OperationId operation_of(const folds::CarView& car, job::Stage stage);

}  // namespace jambline::demo
