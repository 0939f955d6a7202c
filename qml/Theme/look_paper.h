// LookPaper: one ChartLook alone, beside the words that explain it. look; plain, more, less,
// ground: its colors.
#pragma once

#include "chart_look.h"
#include "paper.h"

class LookPaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int look MEMBER look_ NOTIFY lookChanged)
  Q_PROPERTY(QColor plain MEMBER plain_ NOTIFY plainChanged)
  Q_PROPERTY(QColor more MEMBER more_ NOTIFY moreChanged)
  Q_PROPERTY(QColor less MEMBER less_ NOTIFY lessChanged)
  Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY groundChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();
  void plainChanged();
  void moreChanged();
  void lessChanged();
  void groundChanged();

 private:
  int look_ = 0;
  QColor plain_;
  QColor more_;
  QColor less_;
  QColor ground_;
};
