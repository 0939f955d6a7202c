// folds/questions.h: what the questions of a manager have in common. Each question has a file of
// its own beside this one, with its words defined in its head.
//
// Asked:    of a time [from, to) in UTC ms, and of the shop's zone: a month is one of that zone.
// Cases:    what a row opens to: a car, and the entry or the operation that it rests on where there
//           is one. `value` is what the case adds to the row, in the row's own unit.
// Spread:   quartiles of skewed numbers with how many there are: by linear interpolation between
//           the sorted ones (R's type 7, Python's "inclusive"). No middle stands without its `n`.
// Threads:  pure; for the calc lane.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/error.h"
#include "folds/account.h"

namespace jambline::folds {

enum class Question : std::uint8_t { Hours, Flow, FirstTime, Dirt, Sprays, Due, Late, Pictures };

struct Period {
  std::int64_t from_ms = 0;
  std::int64_t to_ms = INT64_MAX;
  bool holds(std::int64_t ms) const { return from_ms <= ms && ms < to_ms; }
};

struct QuestionCase {
  JobId job;
  std::string plate;
  std::int64_t at_ms{};
  double value = 0;
  std::optional<Hash> entry = {};
  std::optional<OperationId> operation = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "plate"}, self.plate);
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "value"}, self.value);
    visit(Field{.name = "entry"}, self.entry);
    visit(Field{.name = "operation"}, self.operation);
  }
  friend bool operator==(const QuestionCase&, const QuestionCase&) = default;
};

struct Quartiles {
  int n = 0;
  double least = 0;
  double lower = 0;
  double median = 0;
  double upper = 0;
  double most = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "n"}, self.n);
    visit(Field{.name = "least"}, self.least);
    visit(Field{.name = "lower"}, self.lower);
    visit(Field{.name = "median"}, self.median);
    visit(Field{.name = "upper"}, self.upper);
    visit(Field{.name = "most"}, self.most);
  }
  friend bool operator==(const Quartiles&, const Quartiles&) = default;
};

// None of nothing.
std::optional<Quartiles> quartiles(std::vector<double> values);

// "2026-09" by the shop's zone; UTC where that is not known.
class Months {
 public:
  explicit Months(std::string zone) : zone_(zone.empty() ? "UTC" : std::move(zone)) {}
  std::string of(std::int64_t ms);

 private:
  std::string zone_;
  std::int64_t from_ms_ = 0;  // of the day that was asked last
  std::int64_t to_ms_ = 0;
  std::string month_;
};

// Cases of a row by what they add, most first; then by car and time.
void most_first(std::vector<QuestionCase>& cases);
int cars_of(const std::vector<QuestionCase>& cases);

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::Question> =
    std::to_array<std::string_view>({"hours", "flow", "first-time", "dirt", "sprays", "due", "late",
                                     "pictures"});
