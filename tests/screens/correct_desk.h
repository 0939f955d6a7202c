// A car of which the hood has two nibs: looked over, ready to be corrected; and how to press on.
#pragma once

#include "screens/plan_view_model.h"
#include "screens/walk_view_model.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {

class CorrectDesk : public ShopDesk {
 protected:
  void begin_shop() {
    ivo_ = add("Ivo", job::Role::Painter);
    be(ivo_);
    open_car();
    mark(500);
    mark(800);
    act(acts::GiveVerdict{car().job, job::Panel::FrontBumper, job::Verdict::Clean, true, {}});
  }
  MarkId mark(double x_mm, job::DefectKind kind = job::DefectKind::Nib,
              job::Panel panel = job::Panel::Hood) {
    act(acts::PlaceMark{.job = car().job,
                        .panel = panel,
                        .x_mm = x_mm,
                        .y_mm = panel == job::Panel::Hood ? 700.0 : 250.0,
                        .defect = kind});
    return car().find(panel)->marks.back().mark;
  }
  void answer_before_cut() {
    acts::AnswerBeforeCut said{car().job, {}};
    for (std::size_t i = 0; i < enum_words<job::CutItem>.size(); ++i)
      said.checks.push_back({static_cast<job::CutItem>(i), job::CutAnswer::Yes, {}});
    act(said);
  }
  const folds::PanelView& hood() { return *car().find(job::Panel::Hood); }
  static QVariant at(QAbstractItemModel* rows, int row, const char* role) {
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }

  // How often a signal was sent.
  template <class Sender, class Signal>
  static std::shared_ptr<int> heard(Sender* sender, Signal signal) {
    auto count = std::make_shared<int>(0);
    QObject::connect(sender, signal, sender, [count] { ++*count; });
    return count;
  }

  PersonId ivo_;
};

}  // namespace jambline::screens
