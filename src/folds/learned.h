// folds/learned.h: what the cars of a shop teach its next plan: own times, what came back, what
// whole sequences took.
//
// Shape:  sums over cars; a car's lesson is added whole, so who wants a car left out or in anew
//         makes a new one. Rounds that were skipped, that no clock timed or that have no area teach
//         no time (folds/lesson.h).
// Shown:  nothing under ten: `shown` says so for each. The prior stands beside it elsewhere.
// Units:  minutes of 300 x 300 mm, as trade/correction_plan.h takes them; um.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "folds/lesson.h"

namespace jambline::folds {

inline constexpr int shown_from = 10;

struct LearnedTime {
  job::Round round{};
  int areas = 0;
  double area_mm2 = 0;
  double work_min = 0;
  bool shown() const { return areas >= shown_from; }
  std::optional<double> min_per_area() const;  // none: nothing was timed
  friend bool operator==(const LearnedTime&, const LearnedTime&) = default;
};

struct LearnedReturns {
  job::DefectKind defect{};
  int ended = 0;  // marks that were gone or came back; no burn-through
  int came_back = 0;
  bool shown() const { return ended >= shown_from; }
  friend bool operator==(const LearnedReturns&, const LearnedReturns&) = default;
};

struct LearnedSequence {
  std::vector<job::Round> rounds;
  std::vector<double> taken_um;
  bool shown() const { return taken_um.size() >= static_cast<std::size_t>(shown_from); }
  friend bool operator==(const LearnedSequence&, const LearnedSequence&) = default;
};

class Learned {
 public:
  // The shop's, or with a person only that person's rounds.
  explicit Learned(std::optional<PersonId> person = std::nullopt) : person_(person) {}
  void add(const Lesson& car);
  std::vector<LearnedTime> times() const;          // in the order of rounds
  std::vector<LearnedReturns> returns() const;     // in the order of kinds; of all people
  std::vector<LearnedSequence> sequences() const;  // of all people

 private:
  std::optional<PersonId> person_;
  std::map<job::Round, LearnedTime> times_;
  std::map<job::DefectKind, LearnedReturns> returns_;
  std::map<std::vector<job::Round>, std::vector<double>> sequences_;
};

}  // namespace jambline::folds
