// trade/ready_by.h: when will a car be ready, what holds it, how likely is the promised time?
//
// Network: operations with what has to be done before; earliest and latest times, total and free
//          float (critical path method). Every path without float is critical; there may be
//          several.
// Time:    work goes on in opening hours only; a wait (cure, bonding, glass) by the wall clock,
//          night and weekend too. Minutes since any common zero. Without hours everything is by the
//          wall.
// Chance:  each duration is drawn triangular (least, likely, most), seeded; the forecast is never
//          before the time that the least durations need. People and booths are not fought over
//          between cars here: each car is looked at alone (said in the basis).
// Errors:  OutOfRange, Missing, Unknown (a precedence that names nothing), Malformed (a cycle, a
//          name twice), NotYet (the hours end before the work does), TooLarge (500 operations,
//          10,000 opening hours). Hours that overlap are OutOfRange. Threads: pure.
#pragma once

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

struct WorkItem {
  std::string name;
  double least_min{};
  double likely_min{};
  double most_min{};
  bool wait = false;  // by the wall clock
  std::vector<std::string> after;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "least_min", .unit = "min", .min = 0, .max = 1e6}, self.least_min);
    visit(Field{.name = "likely_min", .unit = "min", .min = 0, .max = 1e6}, self.likely_min);
    visit(Field{.name = "most_min", .unit = "min", .min = 0, .max = 1e6}, self.most_min);
    visit(Field{.name = "wait", .doc = "goes on outside opening hours"}, self.wait);
    visit(Field{.name = "after", .doc = "names of what has to be done before"}, self.after);
  }
};

struct OpenHours {
  double from_min{};
  double to_min{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "from_min", .unit = "min"}, self.from_min);
    visit(Field{.name = "to_min", .unit = "min"}, self.to_min);
  }
};

struct ReadyBy {
  std::vector<WorkItem> work;
  std::vector<OpenHours> hours;  // rising; empty: always open
  double now_min{};
  std::optional<double> promised_min;
  int trials = 10000;
  std::uint64_t seed = 1;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "work"}, self.work);
    visit(Field{.name = "hours"}, self.hours);
    visit(Field{.name = "now_min", .unit = "min"}, self.now_min);
    visit(Field{.name = "promised_min", .unit = "min"}, self.promised_min);
    visit(Field{.name = "trials", .min = 0, .max = 1000000}, self.trials);
    visit(Field{.name = "seed"}, self.seed);
  }
};

struct WorkTimes {  // of likely durations; early and late in minutes of work from the start
  std::string name;
  double early_start_min{};
  double early_finish_min{};
  double late_start_min{};
  double late_finish_min{};
  double total_float_min{};
  double free_float_min{};
  bool critical = false;
  double finish_min{};  // on the calendar

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "early_start_min", .unit = "min"}, self.early_start_min);
    visit(Field{.name = "early_finish_min", .unit = "min"}, self.early_finish_min);
    visit(Field{.name = "late_start_min", .unit = "min"}, self.late_start_min);
    visit(Field{.name = "late_finish_min", .unit = "min"}, self.late_finish_min);
    visit(Field{.name = "total_float_min", .unit = "min"}, self.total_float_min);
    visit(Field{.name = "free_float_min", .unit = "min"}, self.free_float_min);
    visit(Field{.name = "critical"}, self.critical);
    visit(Field{.name = "finish_min", .unit = "min"}, self.finish_min);
  }
};

struct ReadyByResult {
  double length_min{};            // of the critical path, likely durations
  double earliest_min{};          // on the calendar, least durations
  double likely_min{};            // on the calendar, likely durations
  std::optional<double> p10_min;  // of the drawn finishes
  std::optional<double> p50_min;
  std::optional<double> p90_min;
  std::optional<double> promise_percent;  // drawn finishes not after the promise
  std::vector<WorkTimes> work;            // in the order given
  std::vector<std::string> next;          // can be begun now
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "length_min", .unit = "min"}, self.length_min);
    visit(Field{.name = "earliest_min", .unit = "min"}, self.earliest_min);
    visit(Field{.name = "likely_min", .unit = "min"}, self.likely_min);
    visit(Field{.name = "p10_min", .unit = "min"}, self.p10_min);
    visit(Field{.name = "p50_min", .unit = "min"}, self.p50_min);
    visit(Field{.name = "p90_min", .unit = "min"}, self.p90_min);
    visit(Field{.name = "promise_percent", .unit = "%"}, self.promise_percent);
    visit(Field{.name = "work"}, self.work);
    visit(Field{.name = "next"}, self.next);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ReadyByResult> ready_by(const ReadyBy& forecast);

}  // namespace jambline::trade
