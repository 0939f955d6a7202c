// folds/lesson.h: what one car teaches its shop: how much dirt fell on how much area, under whose
// gun, in which booth, what a person said threw it, and how long the work on it took.
//
// Dirt:    as in folds/dirt_of_car.h: nibs and craters found when it was looked over; those of
//          handling and of later stages are not among them. "Dirt all over" counts as the least of
//          its class (10, 20, 50) and says so.
// Counted: a car when every panel that was sprayed has been looked at; before that its dirt teaches
//          nothing.
// Areas:   m2 of the panel's outline as drawn; panels whose face was not sprayed (not refinished,
//          edges or jambs only) are left out. Flat and upright as in trade/dirt_pattern.h, panels
//          with dirt all over in neither, as there; what slopes is in the whole only.
// Sprayed: when the last clock on the spraying ended; without one the first look; 0 without either.
// Cause:   one that is disputed is not said yet.
// Rounds:  those that a clock timed on spots, by round and person; none of a panel that was worked
//          on whole, with dirt all over. Ends and sequences as in folds/learned.h.
// Films:   thumbnail checks by product and panel group; those whose clock did not count teach
//          nothing.
// Threads: pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/car_view.h"

namespace jambline::folds {

struct LessonRound {
  job::Round round{};
  PersonId by;
  int areas = 0;
  double area_mm2 = 0;
  double work_min = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "areas"}, self.areas);
    visit(Field{.name = "area_mm2", .unit = "mm2"}, self.area_mm2);
    visit(Field{.name = "work_min", .unit = "min"}, self.work_min);
  }
  friend bool operator==(const LessonRound&, const LessonRound&) = default;
};

struct LessonEnds {
  job::DefectKind defect{};
  int ended = 0;  // gone or came back
  int came_back = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "defect"}, self.defect);
    visit(Field{.name = "ended"}, self.ended);
    visit(Field{.name = "came_back"}, self.came_back);
  }
  friend bool operator==(const LessonEnds&, const LessonEnds&) = default;
};

struct LessonSequence {
  std::vector<job::Round> rounds;
  double taken_um = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rounds"}, self.rounds);
    visit(Field{.name = "taken_um", .unit = "um"}, self.taken_um);
  }
  friend bool operator==(const LessonSequence&, const LessonSequence&) = default;
};

// First-time work of a stage that is done, all its operations together.
struct LessonDuration {
  job::Stage stage{};
  int estimate_min = 0;
  double clocked_min = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "estimate_min", .unit = "min"}, self.estimate_min);
    visit(Field{.name = "clocked_min", .unit = "min"}, self.clocked_min);
  }
  friend bool operator==(const LessonDuration&, const LessonDuration&) = default;
};

struct LessonFilm {
  ProductId product;
  job::PanelGroup group{};
  double soft_percent = 0;  // of the sheet's time at which it was soft last; 0 never
  std::optional<double> firm_percent = {};  // at which it was found firm first after that
  std::int64_t checked_ms = 0;              // last
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "group"}, self.group);
    visit(Field{.name = "soft_percent", .unit = "%"}, self.soft_percent);
    visit(Field{.name = "firm_percent", .unit = "%"}, self.firm_percent);
    visit(Field{.name = "checked_ms", .unit = "ms"}, self.checked_ms);
  }
  friend bool operator==(const LessonFilm&, const LessonFilm&) = default;
};

struct Lesson {
  JobId job;
  bool counted = false;
  std::int64_t sprayed_ms = 0;
  std::optional<BoothId> booth;
  std::vector<PersonId> painters;  // whose clock ran on the spraying, by id
  std::int64_t nibs = 0;           // of all that was sprayed
  bool all_over = false;           // a class is among them
  double sprayed_m2 = 0;
  std::int64_t flat_nibs = 0;
  double flat_m2 = 0;
  std::int64_t upright_nibs = 0;
  double upright_m2 = 0;
  bool cause_said = false;
  std::optional<job::DirtCause> cause;  // none: left open
  std::vector<LessonRound> rounds;
  std::vector<LessonEnds> ends;
  std::vector<LessonSequence> sequences;
  std::vector<LessonFilm> films;
  std::vector<LessonDuration> durations;  // by stage; none without an estimate or a clock
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "counted"}, self.counted);
    visit(Field{.name = "sprayed_ms", .unit = "ms"}, self.sprayed_ms);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "painters"}, self.painters);
    visit(Field{.name = "nibs"}, self.nibs);
    visit(Field{.name = "all_over"}, self.all_over);
    visit(Field{.name = "sprayed_m2", .unit = "m2"}, self.sprayed_m2);
    visit(Field{.name = "flat_nibs"}, self.flat_nibs);
    visit(Field{.name = "flat_m2", .unit = "m2"}, self.flat_m2);
    visit(Field{.name = "upright_nibs"}, self.upright_nibs);
    visit(Field{.name = "upright_m2", .unit = "m2"}, self.upright_m2);
    visit(Field{.name = "cause_said"}, self.cause_said);
    visit(Field{.name = "cause"}, self.cause);
    visit(Field{.name = "rounds"}, self.rounds);
    visit(Field{.name = "ends"}, self.ends);
    visit(Field{.name = "sequences"}, self.sequences);
    visit(Field{.name = "films"}, self.films);
    visit(Field{.name = "durations"}, self.durations);
  }
  friend bool operator==(const Lesson&, const Lesson&) = default;
};

Lesson lesson_of(const CarView& car);

}  // namespace jambline::folds
