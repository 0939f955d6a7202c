// folds/worked.h: who worked on what and from when to when, one row a span, for day and week
// sheets.
//
// Shape: closed spans of one car, as the clock counts them (trade/hours.h). Pure.
#pragma once

#include <string>
#include <vector>

#include "folds/car_view.h"

namespace jambline::folds {

struct WorkedRow {
  JobId job;
  std::string plate;
  PersonId person;
  OperationId operation;
  job::Stage stage{};
  std::string title;
  job::WorkKind work{};
  std::int64_t start_ms{};
  std::int64_t end_ms{};
  bool clock_doubt = false;
  bool amended = false;  // one of its ends counts at another time than the clock said
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "plate"}, self.plate);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "title"}, self.title);
    visit(Field{.name = "work"}, self.work);
    visit(Field{.name = "start_ms", .unit = "ms"}, self.start_ms);
    visit(Field{.name = "end_ms", .unit = "ms"}, self.end_ms);
    visit(Field{.name = "clock_doubt"}, self.clock_doubt);
    visit(Field{.name = "amended"}, self.amended);
  }
  friend bool operator==(const WorkedRow&, const WorkedRow&) = default;
};

std::vector<WorkedRow> worked_of(const CarView& car);

}  // namespace jambline::folds
