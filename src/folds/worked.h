// folds/worked.h: who worked on what and from when to when, one row a span, and what cars waited
// for, for day and week sheets.
//
// Shape:  closed spans of one car, as the clock counts them (trade/hours.h). An end that counts at
//         another time than the clock said has both. A wait without an end goes on; that of a
//         delivered car ended with the delivery. Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/car_view.h"

namespace jambline::folds {

// One end of a span: the clock act that made it, and what stands beside the time that counts.
struct SpanEnd {
  Hash act;
  std::optional<std::int64_t> clock_ms = {};  // what the clock said, when that is another time
  std::string reason;                         // of an amendment
  std::optional<PersonId> by = {};            // who amended it; none: said with the tap itself
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "act"}, self.act);
    visit(Field{.name = "clock_ms", .unit = "ms"}, self.clock_ms);
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "by"}, self.by);
  }
  friend bool operator==(const SpanEnd&, const SpanEnd&) = default;
};

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
  SpanEnd from;
  SpanEnd to;
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
    visit(Field{.name = "from"}, self.from);
    visit(Field{.name = "to"}, self.to);
  }
  friend bool operator==(const WorkedRow&, const WorkedRow&) = default;
};

struct WaitedRow {
  JobId job;
  std::string plate;
  job::WaitReason reason{};
  std::int64_t start_ms{};
  std::optional<std::int64_t> end_ms = {};
  std::optional<std::int64_t> expected_ms = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "plate"}, self.plate);
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "start_ms", .unit = "ms"}, self.start_ms);
    visit(Field{.name = "end_ms", .unit = "ms"}, self.end_ms);
    visit(Field{.name = "expected_ms", .unit = "ms"}, self.expected_ms);
  }
  friend bool operator==(const WaitedRow&, const WaitedRow&) = default;
};

struct Worked {
  std::vector<WorkedRow> spans;
  std::vector<WaitedRow> waits;
};

Worked worked_of(const CarView& car);

}  // namespace jambline::folds
