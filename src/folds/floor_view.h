// folds/floor_view.h: one row of the floor: a car in the shop, what is next and how it stands.
//
// Source: what comes next is the first planned stage that is not done, in the usual order.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/car_view.h"
#include "folds/set_glass.h"

namespace jambline::folds {

// What a car in work waits for, and from which stage on it cannot go on.
struct HoldView {
  job::WaitReason reason{};
  std::string name;  // of the part, of who has it, of the supplement
  job::Stage from_stage{};
  std::optional<std::int64_t> until_ms = {};  // none: nobody said
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "from_stage"}, self.from_stage);
    visit(Field{.name = "until_ms", .unit = "ms"}, self.until_ms);
  }
  friend bool operator==(const HoldView&, const HoldView&) = default;
};

// Where a part of a car in work is; no panel: the car as a whole.
struct PartAt {
  std::optional<job::Panel> panel = {};
  bool clean = false;
  ReleaseState state{};
  PersonId giver;
  std::optional<PersonId> taker = {};
  std::optional<job::Role> to = {};
  std::optional<RackId> rack = {};
  std::int64_t wall_ms{};
  bool disputed = false;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "clean"}, self.clean);
    visit(Field{.name = "state"}, self.state);
    visit(Field{.name = "giver"}, self.giver);
    visit(Field{.name = "taker"}, self.taker);
    visit(Field{.name = "to"}, self.to);
    visit(Field{.name = "rack"}, self.rack);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
    visit(Field{.name = "disputed"}, self.disputed);
  }
  friend bool operator==(const PartAt&, const PartAt&) = default;
};

struct FloorRow {
  JobId job;
  std::string plate;
  std::string vin;
  job::Color color;
  job::BodyShape body{};
  std::optional<std::int64_t> promised_ms;
  std::optional<std::int64_t> delivered_ms;
  std::int64_t opened_ms{};
  std::optional<job::Stage> next_stage;  // none: all planned stages are done
  int stages_done = 0;
  int stages = 0;
  int panels = 0;
  int panels_looked_at = 0;
  int marks_open = 0;
  bool disputed = false;
  bool read_only = false;             // entries of a newer version
  std::vector<job::Role> offered_to;  // releases that wait for someone to take them
  std::vector<RunningView> running;
  std::vector<OperationView> operations;
  std::vector<SeenView> seen;   // of a car in work
  std::vector<HoldView> holds;  // of a car in work
  std::vector<PartAt> parts;    // of a car in work: what is loose, and what was handed on
  std::vector<SetGlass> glass;  // of a car in work
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "plate"}, self.plate);
    visit(Field{.name = "vin"}, self.vin);
    visit(Field{.name = "color"}, self.color);
    visit(Field{.name = "body"}, self.body);
    visit(Field{.name = "promised_ms"}, self.promised_ms);
    visit(Field{.name = "delivered_ms"}, self.delivered_ms);
    visit(Field{.name = "opened_ms"}, self.opened_ms);
    visit(Field{.name = "next_stage"}, self.next_stage);
    visit(Field{.name = "stages_done"}, self.stages_done);
    visit(Field{.name = "stages"}, self.stages);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "panels_looked_at"}, self.panels_looked_at);
    visit(Field{.name = "marks_open"}, self.marks_open);
    visit(Field{.name = "disputed"}, self.disputed);
    visit(Field{.name = "read_only"}, self.read_only);
    visit(Field{.name = "offered_to"}, self.offered_to);
    visit(Field{.name = "running"}, self.running);
    visit(Field{.name = "operations"}, self.operations);
    visit(Field{.name = "seen"}, self.seen);
    visit(Field{.name = "holds"}, self.holds);
    visit(Field{.name = "parts"}, self.parts);
    visit(Field{.name = "glass"}, self.glass);
  }
  friend bool operator==(const FloorRow&, const FloorRow&) = default;
};

FloorRow floor_row(const CarView& car);

}  // namespace jambline::folds
