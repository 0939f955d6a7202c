// The hours of trade/hours.h with names in place of ids.
#include "trade/hours.h"

#include <map>

#include "app/calc/calculation.h"
#include "trade/refusal.h"

template <>
inline constexpr auto jambline::enum_words<jambline::trade::ClockActKind> =
    std::to_array<std::string_view>({"start", "pause", "switch", "stop"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::Measured> =
    std::to_array<std::string_view>({"boot clock", "wall clock", "amended"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::ClockProblem::Kind> =
    std::to_array<std::string_view>({"nothing ran", "already ran", "ran backwards", "very long",
                                     "moved", "year unbelieved"});

namespace jambline::app {

std::vector<Calculation> hours_calculations();

namespace {
constexpr double most_wall_ms = 1e13;
constexpr double most_boot_ms = 1e12;

struct Act {
  std::string person;
  trade::ClockActKind kind{};
  std::string operation;
  std::int64_t wall_ms{};
  std::int64_t since_boot_ms{};
  std::string boot;
  std::optional<std::int64_t> amended_wall_ms;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "operation", .doc = "of start and switch"}, self.operation);
    visit(Field{.name = "wall_ms",
                .unit = "ms",
                .doc = "UTC since 1970",
                .min = 0,
                .max = most_wall_ms},
          self.wall_ms);
    visit(Field{.name = "since_boot_ms", .unit = "ms", .min = 0, .max = most_boot_ms},
          self.since_boot_ms);
    visit(Field{.name = "boot", .doc = "any name of the time between two starts of the device"},
          self.boot);
    visit(Field{.name = "amended_wall_ms", .unit = "ms", .min = 0, .max = most_wall_ms},
          self.amended_wall_ms);
  }
};

struct Day {
  std::int64_t start_ms{};
  std::int64_t end_ms{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "start_ms", .unit = "ms", .min = 0, .max = most_wall_ms}, self.start_ms);
    visit(Field{.name = "end_ms", .unit = "ms", .min = 0, .max = most_wall_ms}, self.end_ms);
  }
};

struct Clock {
  std::vector<Act> acts;
  std::vector<Day> days;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "acts", .doc = "in the order in which they were made"}, self.acts);
    visit(Field{.name = "days", .doc = "not overlapping; what lies in none is day -1"}, self.days);
  }
};

struct ClockedInterval {
  std::string person;
  std::string operation;
  std::int64_t start_ms{};
  std::optional<std::int64_t> end_ms;
  std::int64_t length_ms{};
  trade::Measured measured{};
  bool clock_doubt = false;
  std::int64_t disagreement_ms{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "start_ms", .unit = "ms"}, self.start_ms);
    visit(Field{.name = "end_ms", .unit = "ms", .doc = "none: open"}, self.end_ms);
    visit(Field{.name = "length_ms", .unit = "ms"}, self.length_ms);
    visit(Field{.name = "measured"}, self.measured);
    visit(Field{.name = "clock_doubt"}, self.clock_doubt);
    visit(Field{.name = "disagreement_ms", .unit = "ms"}, self.disagreement_ms);
  }
};

struct Problem {
  trade::ClockProblem::Kind kind{};
  std::string person;
  std::int64_t act{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "act", .doc = "place in the list, from 0"}, self.act);
  }
};

struct Sum {
  std::string person;
  std::string operation;
  int day{};
  std::int64_t ms{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "day"}, self.day);
    visit(Field{.name = "ms", .unit = "ms"}, self.ms);
  }
};

struct ClockResult {
  std::vector<ClockedInterval> intervals;
  std::vector<Problem> problems;
  std::vector<Sum> sums;
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "intervals"}, self.intervals);
    visit(Field{.name = "problems"}, self.problems);
    visit(Field{.name = "sums"}, self.sums);
    visit(Field{.name = "basis"}, self.basis);
  }
};

template <class Id>
Id id_of(std::size_t number) {
  Id out{};
  for (std::size_t i = 0; i < sizeof(number); ++i)
    out.bytes[i] = static_cast<std::uint8_t>(number >> (8 * i));
  return out;
}

template <class Id>
class Names {
 public:
  Id id(const std::string& name) {
    const auto [at, fresh] = ids_.try_emplace(name, id_of<Id>(names_.size() + 1));
    if (fresh) names_[at->second] = name;
    return at->second;
  }
  std::string name(const Id& id) const {
    const auto found = names_.find(id);
    return found == names_.end() ? "" : found->second;
  }

 private:
  std::map<std::string, Id> ids_;
  std::map<Id, std::string> names_;
};

Status checked(const Clock& in) {
  if (in.acts.empty()) return fail(trade::refusal(Code::Missing, "acts", "none"));
  if (in.acts.size() > 10000) return fail(trade::refusal(Code::TooLarge, "acts", "10,000 at most"));
  if (in.days.size() > 400) return fail(trade::refusal(Code::TooLarge, "days", "400 at most"));
  for (std::size_t i = 0; i < in.days.size(); ++i) {
    if (in.days[i].end_ms <= in.days[i].start_ms)
      return fail(
          trade::refusal(Code::OutOfRange, trade::item("days", i, "end_ms"), "not after start_ms"));
    if (i > 0 && in.days[i].start_ms < in.days[i - 1].end_ms)
      return fail(trade::refusal(Code::Malformed, trade::item("days", i, "start_ms"),
                                 "before the end of the one before"));
  }
  return {};
}

Result<ClockResult> hours(const Clock& in) {
  JAMBLINE_TRY(checked(in));
  Names<PersonId> people;
  Names<OperationId> operations;
  Names<BootId> boots;
  std::map<Hash, std::size_t> places;
  std::vector<trade::ClockAct> acts;
  for (std::size_t i = 0; i < in.acts.size(); ++i) {
    const Act& one = in.acts[i];
    trade::ClockAct act;
    act.kind = one.kind;
    act.person = people.id(one.person);
    act.operation = operations.id(one.operation);
    act.wall_ms = one.wall_ms;
    act.since_boot_ms = static_cast<std::uint64_t>(one.since_boot_ms);
    act.boot = boots.id(one.boot);
    act.hlc = act.seq = i + 1;
    act.entry = id_of<Hash>(i + 1);
    act.amended_wall_ms = one.amended_wall_ms;
    places[act.entry] = i;
    acts.push_back(act);
  }
  std::vector<trade::DaySpan> days;
  for (const Day& one : in.days) days.push_back({one.start_ms, one.end_ms});
  const trade::Hours found = trade::count_hours(acts);

  ClockResult out;
  for (const auto& one : found.intervals)
    out.intervals.push_back({people.name(one.person), operations.name(one.operation), one.start_ms,
                             one.end_ms, one.length_ms(), one.measured, one.clock_doubt,
                             one.disagreement_ms});
  for (const auto& one : found.problems)
    out.problems.push_back(
        {one.kind, people.name(one.person), static_cast<std::int64_t>(places[one.entry])});
  for (const auto& one : trade::sum_hours(found.intervals, days))
    out.sums.push_back({people.name(one.person), operations.name(one.operation), one.day, one.ms});
  out.basis.method =
      "Two acts of one boot by the boot clock, other ones by the wall clock; an open clock is in "
      "no sum; nothing is rounded.";
  out.basis.term("acts", static_cast<double>(acts.size()), "", trade::measured);
  out.basis.term("days", static_cast<double>(days.size()), "", trade::entered);
  return out;
}

// Two people on one tablet; its battery ran empty after the third act.
Clock shift_example() {
  using enum trade::ClockActKind;
  constexpr std::int64_t day = 1'795'582'800'000;
  constexpr std::int64_t eight = day + 28'800'000;
  return {{{"Ivo", Start, "inspect", eight, 500'000, "first", {}},
           {"Mara", Start, "hang the hood", eight + 300'000, 800'000, "first", {}},
           {"Ivo", Switch, "correct", eight + 1'380'000, 1'880'000, "first", {}},
           {"Ivo", Pause, "", eight + 6'900'000, 90'000, "second", {}},
           {"Mara", Stop, "", eight + 7'140'000, 330'000, "second", {}}},
          {{day, day + 86'400'000}}};
}
}  // namespace

std::vector<Calculation> hours_calculations() {
  return {calculation<&hours, &shift_example>(
      "hours", "exact hours a person and operation from the taps on a clock")};
}

}  // namespace jambline::app
