// folds/car_view.h: one car's visit as screens and acts see it.
//
// Shape:  values worked out of the job's folds; panels in walking order of the body's pattern,
// marks
//         in order of being found (their number is their place in it and includes withdrawn ones).
// Heads:  `..._heads` are the hashes that the next write of that value has to name in `replaces`.
//         `disputed` is several heads of a verdict or a release: a person has to settle it.
// Units:  ms UTC since 1970, mm on the panel laid flat, minutes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/clock.h"
#include "base/describe.h"
#include "entries/work_kinds.h"
#include "folds/assembly_view.h"
#include "folds/car_air_view.h"
#include "folds/correct_view.h"
#include "folds/picture_view.h"
#include "folds/visit_view.h"
#include "job/car.h"
#include "job/mark.h"
#include "job/person.h"
#include "job/stage.h"

namespace jambline::folds {

struct MarkView {
  MarkId mark;
  int number = 0;
  double x_mm{};
  double y_mm{};
  job::DefectKind defect{};
  int size = 1;
  job::Layer layer{};
  job::Stage stage{};
  PersonId by;
  std::int64_t wall_ms{};
  Hash placed;  // withdraw this to take the mark away
  std::vector<Hash> place_heads;
  std::vector<Hash> words_heads;
  std::optional<job::ParticleLook> look = {};
  std::optional<job::MarkEnd> end = {};  // of several a burn-through counts
  bool came_back = false;                // at any time
  std::vector<Hash> end_heads = {};
  std::optional<entries::Order> end_order = {};  // of the shown end; work before it is over
  // Still to be worked on.
  bool open() const { return !end || *end == job::MarkEnd::CameBack; }
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "number"}, self.number);
    visit(Field{.name = "x_mm", .unit = "mm"}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm"}, self.y_mm);
    visit(Field{.name = "defect"}, self.defect);
    visit(Field{.name = "size"}, self.size);
    visit(Field{.name = "layer"}, self.layer);
    visit(Field{.name = "look"}, self.look);
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "end"}, self.end);
    visit(Field{.name = "came_back"}, self.came_back);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const MarkView&, const MarkView&) = default;
};

struct VerdictView {
  job::Verdict verdict{};
  PersonId by;
  std::int64_t wall_ms{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "verdict"}, self.verdict);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const VerdictView&, const VerdictView&) = default;
};

// One look at a panel; later ones do not take it away.
struct LookView {
  job::Verdict verdict{};
  PersonId by;
  std::int64_t wall_ms{};
  Hash entry;
  friend bool operator==(const LookView&, const LookView&) = default;
};

enum class ReleaseState : std::uint8_t { None, Offered, Taken, Returned };

struct ReleaseView {
  ReleaseState state = ReleaseState::None;
  ReleaseId release;
  PersonId giver;
  std::optional<PersonId> taker;
  std::optional<job::Role> to;
  std::optional<RackId> rack;
  std::string reason;  // of a return
  std::optional<PictureId> picture = {};
  std::int64_t wall_ms{};
  bool disputed = false;
  std::vector<PersonId> takers = {};  // of a disputed one: who says that he has it
  std::vector<Hash> offer_heads;
  std::vector<Hash> answer_heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit);
  friend bool operator==(const ReleaseView&, const ReleaseView&) = default;
};

struct PanelView {
  PanelView();
  PanelView(const PanelView&);
  PanelView(PanelView&&) noexcept;
  PanelView& operator=(const PanelView&);
  PanelView& operator=(PanelView&&) noexcept;
  ~PanelView();
  job::PanelPlan plan;
  std::vector<Hash> plan_heads;
  job::Verdict verdict = job::Verdict::NotLookedAt;  // the shown one
  bool disputed = false;
  bool edges_and_back = false;
  std::vector<VerdictView> verdicts;  // all heads, when disputed more than one
  std::vector<Hash> verdict_heads;
  std::vector<LookView> looks;  // every one that stands, as they were said; not described
  job::DirtClass dirt{};
  std::vector<Hash> dirt_heads;
  std::vector<MarkView> marks;  // standing ones
  std::vector<FilmView> film;
  std::vector<RoundView> rounds;
  ReleaseView release;
  int open_marks() const {
    int open = 0;
    for (const auto& one : marks) open += one.open() ? 1 : 0;
    return open;
  }
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "plan"}, self.plan);
    visit(Field{.name = "verdict"}, self.verdict);
    visit(Field{.name = "disputed"}, self.disputed);
    visit(Field{.name = "edges_and_back"}, self.edges_and_back);
    visit(Field{.name = "verdicts"}, self.verdicts);
    visit(Field{.name = "dirt"}, self.dirt);
    visit(Field{.name = "marks"}, self.marks);
    visit(Field{.name = "film"}, self.film);
    visit(Field{.name = "rounds"}, self.rounds);
    visit(Field{.name = "release"}, self.release);
  }
  friend bool operator==(const PanelView&, const PanelView&) = default;
};

struct OperationView {
  OperationId operation;
  job::Stage stage{};
  std::string title;
  int estimate_min = 0;
  std::int64_t clocked_ms = 0;  // closed intervals only, all people
  std::vector<Hash> heads;
  job::WorkKind work{};
  std::string why = {};
  std::optional<PictureId> picture = {};
  job::Approval approval{};
  bool done = false;  // itself, or its stage
  std::optional<PersonId> done_by = {};
  std::vector<Hash> done_heads = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "title"}, self.title);
    visit(Field{.name = "estimate_min", .unit = "min"}, self.estimate_min);
    visit(Field{.name = "clocked_ms", .unit = "ms"}, self.clocked_ms);
    visit(Field{.name = "work"}, self.work);
    visit(Field{.name = "why"}, self.why);
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "approval"}, self.approval);
    visit(Field{.name = "done"}, self.done);
    visit(Field{.name = "done_by"}, self.done_by);
  }
  friend bool operator==(const OperationView&, const OperationView&) = default;
};

// The last entry that a person made on this car.
struct SeenView {
  PersonId person;
  std::int64_t wall_ms{};
  std::uint64_t since_boot_ms{};
  BootId boot;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
    visit(Field{.name = "since_boot_ms", .unit = "ms"}, self.since_boot_ms);
    visit(Field{.name = "boot"}, self.boot);
  }
  friend bool operator==(const SeenView&, const SeenView&) = default;
};

// A person's clock that runs or is paused on this car. One whose start was said afterwards has no
// boot: it goes by the wall clock.
struct RunningView {
  PersonId person;
  OperationId operation;
  bool paused = false;
  std::int64_t start_ms{};  // of what runs now; of the pause when paused
  std::uint64_t start_since_boot_ms{};
  BootId start_boot;
  bool clock_doubt = false;
  Hash act;  // the clock act that it began with
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "paused"}, self.paused);
    visit(Field{.name = "start_ms"}, self.start_ms);
    visit(Field{.name = "start_since_boot_ms"}, self.start_since_boot_ms);
    visit(Field{.name = "start_boot"}, self.start_boot);
    visit(Field{.name = "clock_doubt"}, self.clock_doubt);
    visit(Field{.name = "act"}, self.act);
  }
  friend bool operator==(const RunningView&, const RunningView&) = default;
};

// One person's closed interval, for sheets.
struct WorkedView {
  PersonId person;
  OperationId operation;
  std::int64_t start_ms{};
  std::int64_t end_ms{};
  bool clock_doubt = false;
  Hash from;  // the clock acts that it lies between; not described
  Hash to;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "start_ms"}, self.start_ms);
    visit(Field{.name = "end_ms"}, self.end_ms);
    visit(Field{.name = "clock_doubt"}, self.clock_doubt);
  }
  friend bool operator==(const WorkedView&, const WorkedView&) = default;
};

struct StageView {
  job::Stage stage{};
  bool done = false;
  std::vector<Hash> heads;
  std::optional<job::WithoutShots> without_shots = {};  // done though pictures were missing
  std::optional<int> shots_missing = {};
  std::int64_t said_ms{};  // by the shown head; not described
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "done"}, self.done);
    visit(Field{.name = "without_shots"}, self.without_shots);
    visit(Field{.name = "shots_missing"}, self.shots_missing);
  }
  friend bool operator==(const StageView&, const StageView&) = default;
};

// A label that two devices wrote without knowing of each other: the shown value and the others.
struct LabelConflict {
  std::string label;  // "plate", "vin", "color", "promise"
  std::vector<std::string> others;
  std::vector<Hash> other_hashes;
  std::vector<PersonId> others_by;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "label"}, self.label);
    visit(Field{.name = "others"}, self.others);
  }
  friend bool operator==(const LabelConflict&, const LabelConflict&) = default;
};

struct CarView {
  CarView();
  CarView(const CarView&);
  CarView(CarView&&) noexcept;
  CarView& operator=(const CarView&);
  CarView& operator=(CarView&&) noexcept;
  ~CarView();
  JobId job;
  bool opened = false;
  std::int64_t opened_ms{};
  job::BodyShape body{};
  job::Drive drive{};
  std::string plate;
  std::string vin;
  bool vin_passes = false;
  job::Color color;
  std::optional<std::int64_t> promised_ms;
  std::vector<Hash> plate_heads;
  std::vector<Hash> vin_heads;
  std::vector<Hash> color_heads;
  std::vector<Hash> promise_heads;
  std::vector<LabelConflict> conflicts;
  std::optional<BoothId> booth;  // where it was sprayed
  std::vector<Hash> booth_heads;
  std::vector<PanelView> panels;          // planned ones, in walking order
  std::vector<OperationView> operations;  // in stage order
  std::vector<StageView> stages;          // those that have an operation or were said to be done
  std::vector<RunningView> running;
  std::vector<WorkedView> worked;
  std::vector<SeenView> seen;             // by person; not described: it follows from the entries
  std::vector<BeforeCutView> before_cut;  // by person
  CarAirView air;
  std::vector<PictureView> pictures;
  VisitView visit;
  AssemblyView assembly;
  std::optional<CauseView> cause;  // none: nobody said anything
  ReleaseView car_release;
  std::optional<std::int64_t> delivered_ms;
  Hash delivered_entry;  // not described
  int entries = 0;
  int unknown_entries = 0;  // over 0: the job is read-only for this version
  int refused_entries = 0;  // in the time line, with the reason; nothing here comes from them
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "opened"}, self.opened);
    visit(Field{.name = "opened_ms"}, self.opened_ms);
    visit(Field{.name = "body"}, self.body);
    visit(Field{.name = "drive"}, self.drive);
    visit(Field{.name = "plate"}, self.plate);
    visit(Field{.name = "vin"}, self.vin);
    visit(Field{.name = "vin_passes"}, self.vin_passes);
    visit(Field{.name = "color"}, self.color);
    visit(Field{.name = "promised_ms"}, self.promised_ms);
    visit(Field{.name = "conflicts"}, self.conflicts);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "operations"}, self.operations);
    visit(Field{.name = "stages"}, self.stages);
    visit(Field{.name = "running"}, self.running);
    visit(Field{.name = "worked"}, self.worked);
    visit(Field{.name = "before_cut"}, self.before_cut);
    visit(Field{.name = "air"}, self.air);
    visit(Field{.name = "pictures"}, self.pictures);
    visit(Field{.name = "visit"}, self.visit);
    visit(Field{.name = "assembly"}, self.assembly);
    visit(Field{.name = "cause"}, self.cause);
    visit(Field{.name = "car_release"}, self.car_release);
    visit(Field{.name = "delivered_ms"}, self.delivered_ms);
    visit(Field{.name = "entries"}, self.entries);
    visit(Field{.name = "unknown_entries"}, self.unknown_entries);
    visit(Field{.name = "refused_entries"}, self.refused_entries);
  }
  const PictureView* find(const PictureId& picture) const {
    for (const auto& one : pictures)
      if (one.picture == picture) return &one;
    return nullptr;
  }
  const PanelView* find(job::Panel panel) const {
    for (const auto& one : panels)
      if (one.plan.panel == panel) return &one;
    return nullptr;
  }
  const BeforeCutView* before_cut_of(const PersonId& person) const {
    for (const auto& one : before_cut)
      if (one.person == person) return &one;
    return nullptr;
  }
  const OperationView* find(const OperationId& operation) const {
    for (const auto& one : operations)
      if (one.operation == operation) return &one;
    return nullptr;
  }
  friend bool operator==(const CarView&, const CarView&) = default;
};

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::ReleaseState> =
    std::to_array<std::string_view>({"none", "offered", "taken", "returned"});

template <class Self, class Visit>
void jambline::folds::ReleaseView::describe(Self& self, Visit& visit) {
  visit(Field{.name = "state"}, self.state);
  visit(Field{.name = "release"}, self.release);
  visit(Field{.name = "giver"}, self.giver);
  visit(Field{.name = "taker"}, self.taker);
  visit(Field{.name = "to"}, self.to);
  visit(Field{.name = "rack"}, self.rack);
  visit(Field{.name = "reason"}, self.reason);
  visit(Field{.name = "picture"}, self.picture);
  visit(Field{.name = "wall_ms"}, self.wall_ms);
  visit(Field{.name = "disputed"}, self.disputed);
  visit(Field{.name = "takers"}, self.takers);
}
