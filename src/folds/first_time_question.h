// folds/first_time_question.h: which sprayed panels were through the first time, and what was done
// again and why.
//
// Counts:   a panel whose face was sprayed, in the time in which somebody first looked at it and
//           said more than "ask".
// Through:  the first time, when nobody ever sent it back: no standing word of it is "redo" or
// "back
//           to body". Dirt that was corrected is through; `clean_at_once` needed none of that.
// By kind:  of panels that were sent back, the kinds of marks on them; a panel with three kinds is
//           in three rows, one without a mark in the row without a kind.
// Redo:     operations of redo work that were clocked, by the reason that was written, in the time
//           in which their clock ended last; done or not. Came back: in the time in which it did.
// Cases:    panels and complaints with `value` 1; redo operations in minutes.
#pragma once

#include "folds/questions.h"

namespace jambline::folds {

struct FirstTimeMonth {
  std::string month;
  int panels = 0;
  int through = 0;
  int clean_at_once = 0;
  int sent_back = 0;
  std::vector<QuestionCase> cases;  // sent back
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "month"}, self.month);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "through"}, self.through);
    visit(Field{.name = "clean_at_once"}, self.clean_at_once);
    visit(Field{.name = "sent_back"}, self.sent_back);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const FirstTimeMonth&, const FirstTimeMonth&) = default;
};

struct SentBackKind {
  std::optional<job::DefectKind> defect = {};
  int panels = 0;
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "defect"}, self.defect);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const SentBackKind&, const SentBackKind&) = default;
};

struct RedoReason {
  std::string why;  // as it was written; empty: nothing was
  int operations = 0;
  int cars = 0;
  double clocked_min = 0;
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "why"}, self.why);
    visit(Field{.name = "operations"}, self.operations);
    visit(Field{.name = "cars"}, self.cars);
    visit(Field{.name = "clocked_min", .unit = "min"}, self.clocked_min);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const RedoReason&, const RedoReason&) = default;
};

struct FirstTimeAnswer {
  FirstTimeMonth all;
  std::vector<FirstTimeMonth> months;
  std::vector<SentBackKind> kinds;  // most panels first
  std::vector<RedoReason> redo;     // most minutes first
  std::vector<QuestionCase> came_back;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "all"}, self.all);
    visit(Field{.name = "months"}, self.months);
    visit(Field{.name = "kinds"}, self.kinds);
    visit(Field{.name = "redo"}, self.redo);
    visit(Field{.name = "came_back"}, self.came_back);
  }
};

FirstTimeAnswer first_time_question(const std::vector<Account>& accounts, const Period& period,
                                    const std::string& zone);

}  // namespace jambline::folds
