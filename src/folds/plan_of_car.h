// folds/plan_of_car.h: the open marks of a car as trade/correction_plan.h takes them, what is left
// out and why, and how far the work on them has come.
//
// In:      panels with the verdict "to correct"; open marks whose kind sanding and polishing may
//          fix. A panel with dirt all over is worked on whole, its marks with it.
// Out:     every other open mark is named in `left_out` with the reason. Matte, textured and filmed
//          panels, and spots with a clear fade (where it runs is not on record), never get in.
// Steps:   in the order of work. A mark is done in a round when a round on it was finished or
//          skipped after it last came back.
// Kinds:   which may be fixed and where they start: common practice, no source.
// Errors:  NotYet (`what` verdict: no panel was looked over; `what` marks: no open mark), those of
//          trade/correction_plan.h. Threads: pure.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/error.h"
#include "folds/car_view.h"
#include "folds/learned.h"
#include "trade/film.h"

namespace jambline::folds {

enum class NotPlanned : std::uint8_t {
  DoNotCut,    // matte, textured, film or wrap
  FilmSaysNo,  // the film word of the panel is "do not cut"
  ClearFade,
  PanelWaits,   // its verdict is another one, or two verdicts stand
  Redo,         // polishing opens it or never reaches it
  BackToPrep,   // a hole in what lies below
  LongerRest,   // heavy or soft film: not before somebody says that it is hard
  Tint,         // the color itself
  StripIfSoft,  // heat and test it; what stays soft is stripped
  NoRound,
};

struct PlanChoice {
  job::Stage stage = job::Stage::Correct;  // or LastPolish
  bool one_panel_at_a_time = false;
  bool heavy_film_is_hard = false;  // somebody looked: runs and what needs a longer rest are hard
  std::map<job::DefectKind, job::Round> proved_start;  // on a test spot
  std::map<job::Panel, trade::FilmWord> film;
};

struct PlanLeft {
  job::Panel panel{};
  MarkId mark;
  NotPlanned why{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "why"}, self.why);
  }
  friend bool operator==(const PlanLeft&, const PlanLeft&) = default;
};

// Dirt all over: sanded and polished whole, by the same rounds.
struct WholePanel {
  job::Panel panel{};
  double area_mm2{};
  bool plastic = false;
  trade::Point_mm stands_at;
  std::vector<MarkId> marks;
};

struct PlanOfCar {
  job::Stage stage{};
  trade::CorrectionPlan plan;  // without panels: nothing to work on mark by mark
  std::vector<WholePanel> whole;
  std::vector<PlanLeft> left_out;
};

Result<PlanOfCar> plan_of_car(const CarView& car, const std::vector<LearnedTime>& own,
                              const PlanChoice& choice);

// The plan worked out; empty stations when nothing is worked on mark by mark.
Result<trade::CorrectionPlanResult> work_out(const PlanOfCar& of);

struct WalkStation {
  job::Panel panel{};
  std::vector<MarkId> marks;           // all of the round
  std::vector<MarkId> left;            // of them still to be worked on
  std::vector<trade::PlanArea> areas;  // those that hold one of `left`; all when none is left
  double area_mm2{};                   // of these areas
  double minutes{};
  bool whole = false;
  bool done = false;
  bool tape_edges = false;
  bool clean_down = false;
};

struct WalkStep {
  job::Round round{};
  std::vector<WalkStation> stations;
  int marks = 0;
  int areas = 0;
  double area_mm2{};
  double minutes{};  // with the change of pad or tool before it, and cleaning down
  int pads = 0;
  int towels = 0;
  bool done = false;
};

struct Walk {
  std::vector<WalkStep> steps;
  std::vector<MarkId> asked;       // open marks whose rounds are all done: gone, or not
  std::vector<PlanLeft> left_out;  // all of them
  const WalkStep* now() const {    // null: all rounds are done
    for (const auto& step : steps)
      if (!step.done) return &step;
    return nullptr;
  }
  bool begun() const {
    for (const auto& step : steps)
      for (const auto& station : step.stations)
        if (station.done || station.left.size() < station.marks.size()) return true;
    return false;
  }
  double minutes_left() const {
    double sum = 0;
    for (const auto& step : steps) sum += step.done ? 0 : step.minutes;
    return sum;
  }
};

Walk walk_of(const CarView& car, const PlanOfCar& of, const trade::CorrectionPlanResult& plan);

// Where work on a kind begins; none: sanding and polishing do not fix it, with `why`.
struct WorkOnKind {
  std::optional<trade::MarkWork> work;
  NotPlanned why{};
  bool rests_longer = false;
};
WorkOnKind work_on(job::DefectKind kind, int size, job::Layer layer);

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::NotPlanned> =
    std::to_array<std::string_view>({"do not cut", "film says no", "clear fade", "panel waits",
                                     "redo", "back to prep", "longer rest", "tint", "strip if soft",
                                     "no round"});
