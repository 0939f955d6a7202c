// screens/open_car_draft.h: the half-typed form of a new car, as it is kept against a kill.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "acts/work_template.h"
#include "base/describe.h"
#include "job/car.h"

namespace jambline::screens {

struct DraftOperation {
  job::Stage stage{};
  std::string title;
  int estimate_min = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "title"}, self.title);
    visit(Field{.name = "estimate_min", .unit = "min", .min = 0, .max = 60000}, self.estimate_min);
  }
};

struct OpenCarDraft {
  int page = 0;
  std::string plate;
  std::string vin;
  bool vin_as_typed = false;
  job::Color color;
  std::optional<job::BodyShape> body;
  job::Drive drive{};
  std::optional<acts::WorkTemplate> work;
  std::vector<job::PanelPlan> panels;
  std::vector<DraftOperation> operations;
  bool own_operations = false;  // typed or imported: no longer worked out of the panels
  std::optional<std::int64_t> promised_ms;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "page", .min = 0, .max = 5}, self.page);
    visit(Field{.name = "plate"}, self.plate);
    visit(Field{.name = "vin"}, self.vin);
    visit(Field{.name = "vin_as_typed"}, self.vin_as_typed);
    visit(Field{.name = "color"}, self.color);
    visit(Field{.name = "body"}, self.body);
    visit(Field{.name = "drive"}, self.drive);
    visit(Field{.name = "work"}, self.work);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "operations"}, self.operations);
    visit(Field{.name = "own_operations"}, self.own_operations);
    visit(Field{.name = "promised_ms", .unit = "ms"}, self.promised_ms);
  }
};

}  // namespace jambline::screens
