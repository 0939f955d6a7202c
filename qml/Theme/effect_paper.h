// EffectPaper: a ratio with its interval on a logarithmic line from 1/reach to reach, 1 in the
// middle. What lies outside ends in an arrow. ratio 0: nothing left; unbounded: no upper end.
// tooFew: dashed, nothing is said. strong: dot and interval are full, else hollow.
#pragma once

#include <QColor>

#include "paper.h"

class EffectPaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(double ratio MEMBER ratio_ NOTIFY ratioChanged)
  Q_PROPERTY(double low MEMBER low_ NOTIFY lowChanged)
  Q_PROPERTY(double high MEMBER high_ NOTIFY highChanged)
  Q_PROPERTY(double reach MEMBER reach_ NOTIFY reachChanged)
  Q_PROPERTY(bool unbounded MEMBER unbounded_ NOTIFY unboundedChanged)
  Q_PROPERTY(bool tooFew MEMBER too_few_ NOTIFY tooFewChanged)
  Q_PROPERTY(bool strong MEMBER strong_ NOTIFY strongChanged)
  Q_PROPERTY(QColor tone MEMBER tone_ NOTIFY toneChanged)
  Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY edgeChanged)
  Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY groundChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 signals:
  void ratioChanged();
  void lowChanged();
  void highChanged();
  void reachChanged();
  void unboundedChanged();
  void tooFewChanged();
  void strongChanged();
  void toneChanged();
  void edgeChanged();
  void groundChanged();

 private:
  double ratio_ = 1;
  double low_ = 1;
  double high_ = 1;
  double reach_ = 8;
  bool unbounded_ = false;
  bool too_few_ = false;
  bool strong_ = false;
  QColor tone_;
  QColor edge_;
  QColor ground_;
};
