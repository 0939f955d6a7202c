// TimePaper: draws words with B612 digits, every colon as two squares in a slot of 0.26 em.
// words: what is drawn; implicit size and baseline follow from it, all digits are equally wide.
// size: pixels; bold; color; doubtful: a wavy line below (the clock it came from is in doubt).
// TimeWords below makes the words.
#pragma once

#include <QColor>
#include <QFont>

#include "paper.h"

class TimePaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString words MEMBER words_ NOTIFY wordsChanged)
  Q_PROPERTY(int size MEMBER size_ NOTIFY sizeChanged)
  Q_PROPERTY(bool bold MEMBER bold_ NOTIFY boldChanged)
  Q_PROPERTY(QString family MEMBER family_ NOTIFY familyChanged)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY colorChanged)
  Q_PROPERTY(bool doubtful MEMBER doubtful_ NOTIFY doubtfulChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 signals:
  void wordsChanged();
  void sizeChanged();
  void boldChanged();
  void familyChanged();
  void colorChanged();
  void doubtfulChanged();

 protected:
  void refresh() override;

 private:
  QFont font() const;

  QString words_;
  int size_ = 16;
  bool bold_ = false;
  QString family_;
  QColor color_;
  bool doubtful_ = false;
};
