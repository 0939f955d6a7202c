// folds/pictures_question.h: wanted pictures that were missing when a stage was ended.
//
// Counts:   a stage that is done and for which the shop wants pictures, in the time in which it was
//           ended; how many were missing then is what its entry says. What was taken afterwards
//           does not change that.
// Why:      as it was said: no camera at hand, not reachable, taken elsewhere, not needed.
// Cases:    stages of cars with pictures missing, `value` how many.
#pragma once

#include "folds/questions.h"
#include "folds/shop_view.h"

namespace jambline::folds {

struct MissingShotsRow {
  std::optional<job::Stage> stage = {};
  std::optional<job::WithoutShots> why = {};
  std::string month;
  int ended = 0;  // not of a reason
  int with_missing = 0;
  int missing = 0;  // pictures
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "why"}, self.why);
    visit(Field{.name = "month"}, self.month);
    visit(Field{.name = "ended"}, self.ended);
    visit(Field{.name = "with_missing"}, self.with_missing);
    visit(Field{.name = "missing"}, self.missing);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const MissingShotsRow&, const MissingShotsRow&) = default;
};

struct PicturesAnswer {
  MissingShotsRow all;
  std::vector<MissingShotsRow> stages;   // in the order of the work
  std::vector<MissingShotsRow> reasons;  // most often first
  std::vector<MissingShotsRow> months;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "all"}, self.all);
    visit(Field{.name = "stages"}, self.stages);
    visit(Field{.name = "reasons"}, self.reasons);
    visit(Field{.name = "months"}, self.months);
  }
};

PicturesAnswer pictures_question(const std::vector<Account>& accounts, const ShopView& shop,
                                 const Period& period);

}  // namespace jambline::folds
