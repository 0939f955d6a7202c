// RulePaper: the upper edge of the steel rule: ticks, the bar of hours used, the flag at the hours
// allotted. used, allotted: hours (allotted 0 = no flag). The flag stands at 0.74 of the width
// until the bar needs more room. A tick is 0.1 h, coarser where ticks would stand closer than 12 dp
// (tick_h says how many hours one is); every fifth is long.
#pragma once

#include <QColor>

#include "paper.h"

class RulePaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(double used MEMBER used_ NOTIFY usedChanged)
  Q_PROPERTY(double allotted MEMBER allotted_ NOTIFY allottedChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY inkChanged)
  Q_PROPERTY(QColor bar MEMBER bar_ NOTIFY barChanged)
  Q_PROPERTY(QColor flag MEMBER flag_ NOTIFY flagChanged)
  Q_PROPERTY(double flagX READ flagX NOTIFY scaleChanged)
  Q_PROPERTY(double usedX READ usedX NOTIFY scaleChanged)
  Q_PROPERTY(double tick_h READ tick_h NOTIFY scaleChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;
  double flagX() const { return allotted_ * dpPerHour(); }
  double usedX() const { return used_ * dpPerHour(); }
  double tick_h() const;

 signals:
  void usedChanged();
  void allottedChanged();
  void inkChanged();
  void barChanged();
  void flagChanged();
  void scaleChanged();

 protected:
  void refresh() override;

 private:
  double dpPerHour() const;

  double used_ = 0.0;
  double allotted_ = 0.0;
  QColor ink_;
  QColor bar_;
  QColor flag_;
};
