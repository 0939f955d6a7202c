// folds/account.h: what one car says to a manager's questions, put down once when the car changes,
// so that years can be asked without folding any car again (questions.h and its neighbours).
//
// Clocked:  closed spans only, by person, as the clock counts them (trade/hours.h); `last_ms` is
//           when the last of them ended, 0 where nobody clocked.
// Panels:   those whose face was sprayed (dirt_of_car.h), with what was said of them in the order
//           in which it was said; withdrawn words are none.
// Sprays:   `passed_over` are musts that were answered "no"; `not_met` are shoulds answered "no".
// Waits:    as in folds/worked.h; that of a delivered car ended with the delivery.
// In shop:  from `opened_ms` to `last_ms`, which a car that is still in work does not have: the
//           delivery, or what was clocked or sprayed on it later.
// Size:     one to three KiB of JSON a car. Nothing of it is a name of a person.
// Threads:  pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/car_view.h"

namespace jambline::folds {

struct AccountClock {
  PersonId person;
  std::int64_t ms{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "ms", .unit = "ms"}, self.ms);
  }
  friend bool operator==(const AccountClock&, const AccountClock&) = default;
};

struct AccountOperation {
  OperationId operation;
  job::Stage stage{};
  std::string title;
  job::WorkKind work{};
  int estimate_min = 0;
  bool done = false;
  std::int64_t last_ms = 0;
  std::vector<AccountClock> clocked;    // by person
  std::optional<std::string> why = {};  // of what is no first-time work
  std::optional<Hash> entry = {};       // the same: the word that planned it
  std::int64_t clocked_ms() const {
    std::int64_t sum = 0;
    for (const auto& one : clocked) sum += one.ms;
    return sum;
  }
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "title"}, self.title);
    visit(Field{.name = "work"}, self.work);
    visit(Field{.name = "estimate_min", .unit = "min"}, self.estimate_min);
    visit(Field{.name = "done"}, self.done);
    visit(Field{.name = "last_ms", .unit = "ms"}, self.last_ms);
    visit(Field{.name = "clocked"}, self.clocked);
    visit(Field{.name = "why"}, self.why);
    visit(Field{.name = "entry"}, self.entry);
  }
  friend bool operator==(const AccountOperation&, const AccountOperation&) = default;
};

struct AccountWait {
  job::WaitReason reason{};
  std::int64_t start_ms{};
  std::optional<std::int64_t> end_ms = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "start_ms", .unit = "ms"}, self.start_ms);
    visit(Field{.name = "end_ms", .unit = "ms"}, self.end_ms);
  }
  friend bool operator==(const AccountWait&, const AccountWait&) = default;
};

struct AccountLook {
  job::Verdict verdict{};
  std::int64_t at_ms{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "verdict"}, self.verdict);
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "entry"}, self.entry);
  }
  friend bool operator==(const AccountLook&, const AccountLook&) = default;
};

struct AccountPanel {
  job::Panel panel{};
  std::vector<AccountLook> looks;
  std::vector<job::DefectKind> defects;  // of one that had to be done again: the kinds on it
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "looks"}, self.looks);
    visit(Field{.name = "defects"}, self.defects);
  }
  friend bool operator==(const AccountPanel&, const AccountPanel&) = default;
};

struct AccountPassedOver {
  job::GunItem item{};
  std::optional<job::GunReason> reason = {};
  std::string note;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "item"}, self.item);
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "note"}, self.note);
  }
  friend bool operator==(const AccountPassedOver&, const AccountPassedOver&) = default;
};

struct AccountSpray {
  BoothId booth;
  RespiratorId respirator;
  PersonId by;
  std::int64_t at_ms{};
  Hash entry;
  std::vector<AccountPassedOver> passed_over;
  std::vector<job::GunItem> not_met;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "entry"}, self.entry);
    visit(Field{.name = "passed_over"}, self.passed_over);
    visit(Field{.name = "not_met"}, self.not_met);
  }
  friend bool operator==(const AccountSpray&, const AccountSpray&) = default;
};

struct AccountWithout {
  BoothId booth;
  PersonId by;
  std::int64_t at_ms{};
  std::vector<job::GunItem> items;
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "items"}, self.items);
    visit(Field{.name = "entry"}, self.entry);
  }
  friend bool operator==(const AccountWithout&, const AccountWithout&) = default;
};

struct AccountComeback {
  std::string complaint;
  std::int64_t at_ms{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "complaint"}, self.complaint);
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "entry"}, self.entry);
  }
  friend bool operator==(const AccountComeback&, const AccountComeback&) = default;
};

// A stage that is done; `missing` pictures then, and the word that ended it where some were.
struct AccountStage {
  job::Stage stage{};
  std::int64_t at_ms{};
  int missing = 0;
  std::optional<job::WithoutShots> why = {};
  std::optional<Hash> entry = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "missing"}, self.missing);
    visit(Field{.name = "why"}, self.why);
    visit(Field{.name = "entry"}, self.entry);
  }
  friend bool operator==(const AccountStage&, const AccountStage&) = default;
};

struct Account {
  JobId job;
  std::string plate;
  std::int64_t opened_ms{};
  std::optional<std::int64_t> promised_ms = {};
  std::optional<Hash> promised_entry = {};
  std::optional<std::int64_t> delivered_ms = {};
  std::optional<Hash> delivered_entry = {};
  std::optional<std::int64_t> last_ms = {};
  std::optional<job::Stage> next_stage = {};  // none: all planned stages are done
  std::vector<AccountOperation> operations;
  std::vector<AccountWait> waits;
  std::vector<AccountPanel> panels;
  std::vector<AccountSpray> sprays;
  std::vector<AccountWithout> without;
  std::vector<AccountComeback> comebacks;
  std::vector<AccountStage> stages;  // done ones
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "plate"}, self.plate);
    visit(Field{.name = "opened_ms", .unit = "ms"}, self.opened_ms);
    visit(Field{.name = "promised_ms", .unit = "ms"}, self.promised_ms);
    visit(Field{.name = "promised_entry"}, self.promised_entry);
    visit(Field{.name = "delivered_ms", .unit = "ms"}, self.delivered_ms);
    visit(Field{.name = "delivered_entry"}, self.delivered_entry);
    visit(Field{.name = "last_ms", .unit = "ms"}, self.last_ms);
    visit(Field{.name = "next_stage"}, self.next_stage);
    visit(Field{.name = "operations"}, self.operations);
    visit(Field{.name = "waits"}, self.waits);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "sprays"}, self.sprays);
    visit(Field{.name = "without"}, self.without);
    visit(Field{.name = "comebacks"}, self.comebacks);
    visit(Field{.name = "stages"}, self.stages);
  }
  friend bool operator==(const Account&, const Account&) = default;
};

Account account_of(const CarView& car);

// Was in the shop, or worked on, at some time in [from, to).
bool reaches_into(const Account& account, std::int64_t from_ms, std::int64_t to_ms);

}  // namespace jambline::folds
