// entries/car_kinds.h: a car is opened, its labels and operations, its end.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/shop_kinds.h"
#include "job/car.h"
#include "job/operation.h"
#include "job/shot.h"
#include "job/stage.h"

namespace jambline::entries {

struct CarOpened {
  static constexpr std::uint16_t kind = 100;
  static constexpr std::string_view name = "CarOpened";
  static constexpr bool erasable = false;
  job::BodyShape body{};
  job::Drive drive{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "body"}, self.body);
    visit(Field{.name = "drive"}, self.drive);
  }
};

struct PlateSet {
  static constexpr std::uint16_t kind = 101;
  static constexpr std::string_view name = "PlateSet";
  static constexpr bool erasable = false;
  std::string plate;  // or stock number
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "plate", .doc = "plate or stock number"}, self.plate);
    visit(replaces_field, self.replaces);
  }
};

struct VinSet {
  static constexpr std::uint16_t kind = 102;
  static constexpr std::string_view name = "VinSet";
  static constexpr bool erasable = false;
  std::string vin;
  bool passes = false;  // the check digit passed when it was set
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "vin"}, self.vin);
    visit(Field{.name = "passes", .doc = "check digit passed; false = used as typed"}, self.passes);
    visit(replaces_field, self.replaces);
  }
};

struct ColorSet {
  static constexpr std::uint16_t kind = 103;
  static constexpr std::string_view name = "ColorSet";
  static constexpr bool erasable = false;
  job::Color color;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "color"}, self.color);
    visit(replaces_field, self.replaces);
  }
};

struct PromiseSet {
  static constexpr std::uint16_t kind = 104;
  static constexpr std::string_view name = "PromiseSet";
  static constexpr bool erasable = false;
  std::int64_t promised_ms{};
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "promised_ms", .unit = "ms", .doc = "UTC since 1970"}, self.promised_ms);
    visit(replaces_field, self.replaces);
  }
};

struct PanelPlanned {
  static constexpr std::uint16_t kind = 105;
  static constexpr std::string_view name = "PanelPlanned";
  static constexpr bool erasable = false;
  job::PanelPlan plan;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "plan"}, self.plan);
    visit(replaces_field, self.replaces);
  }
};

struct SprayedIn {
  static constexpr std::uint16_t kind = 106;
  static constexpr std::string_view name = "SprayedIn";
  static constexpr bool erasable = false;
  BoothId booth;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(replaces_field, self.replaces);
  }
};

struct OperationPlanned {
  static constexpr std::uint16_t kind = 110;
  static constexpr std::string_view name = "OperationPlanned";
  static constexpr bool erasable = false;
  OperationId operation;
  job::Stage stage{};
  std::string title;     // empty: the stage's own name
  int estimate_min = 0;  // 0: none given
  std::vector<Hash> replaces;
  std::optional<job::WorkKind> work = {};  // absent: first time
  std::optional<std::string> why = {};     // of a supplement or redo
  std::optional<PictureId> picture = {};
  std::optional<job::Approval> approval = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "title"}, self.title);
    visit(Field{.name = "estimate_min", .unit = "min", .min = 0, .max = 60000}, self.estimate_min);
    visit(replaces_field, self.replaces);
    visit(Field{.name = "work", .doc = "absent: first time"}, self.work);
    visit(Field{.name = "why", .doc = "of a supplement, redo or comeback"}, self.why);
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "approval", .doc = "absent: not needed"}, self.approval);
  }
};

struct StageDone {
  static constexpr std::uint16_t kind = 112;
  static constexpr std::string_view name = "StageDone";
  static constexpr bool erasable = false;
  job::Stage stage{};
  bool done = true;  // false: opened again
  std::vector<Hash> replaces;
  // Wanted pictures were missing: how many, and why it was done without them.
  std::optional<job::WithoutShots> without_shots = {};
  std::optional<int> shots_missing = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "done"}, self.done);
    visit(replaces_field, self.replaces);
    visit(Field{.name = "without_shots", .doc = "why it was done though pictures were missing"},
          self.without_shots);
    visit(Field{.name = "shots_missing", .min = 1, .max = 10000}, self.shots_missing);
  }
};

struct NoteWritten {
  static constexpr std::uint16_t kind = 170;
  static constexpr std::string_view name = "NoteWritten";
  static constexpr bool erasable = true;
  std::string text;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "text"}, self.text);
  }
};

struct CarDelivered {
  static constexpr std::uint16_t kind = 180;
  static constexpr std::string_view name = "CarDelivered";
  static constexpr bool erasable = false;
  int open_points = 0;
  std::optional<ComebackId> comeback = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(
        Field{
            .name = "open_points", .doc = "points left open when it went", .min = 0, .max = 10000},
        self.open_points);
    visit(Field{.name = "comeback", .doc = "that it ends"}, self.comeback);
  }
};

}  // namespace jambline::entries
