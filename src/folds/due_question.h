// folds/due_question.h: fit tests and clearance (smoke) tests: expired, due soon, in date; and what
// was sprayed after they had expired.
//
// Tests:    of everybody who has not left, by respirator that is not retired and fits tightly; of
//           every booth in which it may be sprayed the last smoke test. One without any is
//           `Missing`.
// Due:      the day after which a test no longer holds, in days since 1970 UTC; the whole day
//           counts, as before the gun (gun_facts.h). `Soon`: 30 days or fewer.
// Sprayed:  starts in the time that is asked for, by that person with that respirator, or in that
//           booth, after the test that stands now had run out and before now. An older test that
//           was out then and was renewed since is not looked back at.
// Cases:    those starts, `value` in days over.
// Never:    a test in date says nothing about the air.
#pragma once

#include "folds/questions.h"
#include "folds/shop_view.h"

namespace jambline::folds {

enum class DueTest : std::uint8_t { Fit, Clearance };
enum class DueState : std::uint8_t { Expired, Missing, Soon, InDate };

struct DueRow {
  DueTest test{};
  DueState state{};
  std::optional<PersonId> person = {};
  std::optional<RespiratorId> respirator = {};
  std::optional<BoothId> booth = {};
  std::optional<int> due_day = {};
  int days_left = 0;               // negative: over
  int sprayed = 0;                 // since it expired
  std::optional<Hash> entry = {};  // of the test
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "test"}, self.test);
    visit(Field{.name = "state"}, self.state);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "due_day", .unit = "d"}, self.due_day);
    visit(Field{.name = "days_left", .unit = "d"}, self.days_left);
    visit(Field{.name = "sprayed"}, self.sprayed);
    visit(Field{.name = "entry"}, self.entry);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const DueRow&, const DueRow&) = default;
};

struct DueAnswer {
  int tests = 0;  // there are, of both kinds
  int expired = 0;
  int missing = 0;
  int soon = 0;
  int sprayed = 0;           // starts after a test had expired, each once
  std::vector<DueRow> rows;  // expired longest first, then missing, soon, in date
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "tests"}, self.tests);
    visit(Field{.name = "expired"}, self.expired);
    visit(Field{.name = "missing"}, self.missing);
    visit(Field{.name = "soon"}, self.soon);
    visit(Field{.name = "sprayed"}, self.sprayed);
    visit(Field{.name = "rows"}, self.rows);
  }
};

DueAnswer due_question(const std::vector<Account>& accounts, const ShopView& shop,
                       const Period& period, std::int64_t now_ms);

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::DueTest> =
    std::to_array<std::string_view>({"fit test", "clearance test"});
template <>
inline constexpr auto jambline::enum_words<jambline::folds::DueState> =
    std::to_array<std::string_view>({"expired", "missing", "due soon", "in date"});
