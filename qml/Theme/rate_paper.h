// RatePaper: counts over time as points, with axes and flags at events; and the outlines, in its
// own pixels, of the stepped band of limits and of the middle line by segments, for a Shape below
// it. The lists of points are equally long and in the order of days, as are those of the flags;
// what is too long is left out. days, rates, lows, highs, centers, looks (ChartLook); flagDays,
// flagWords, flagStrong (1: filled). chosen: a point, -1 none. View: fromDay, toDay; zoomBy,
// moveBy, whole. Colors and family, size (pixels of the words) come from the outside. Days since
// 1970-01-01, local, with parts.
#pragma once

#include <QColor>
#include <QFont>
#include <QList>
#include <QPolygonF>
#include <QStringList>
#include <QVariantList>

#include "chart_geometry.h"
#include "chart_look.h"
#include "paper.h"

class RatePaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QList<qreal> days MEMBER days_ NOTIFY daysChanged)
  Q_PROPERTY(QList<qreal> rates MEMBER rates_ NOTIFY ratesChanged)
  Q_PROPERTY(QList<qreal> lows MEMBER lows_ NOTIFY lowsChanged)
  Q_PROPERTY(QList<qreal> highs MEMBER highs_ NOTIFY highsChanged)
  Q_PROPERTY(QList<qreal> centers MEMBER centers_ NOTIFY centersChanged)
  Q_PROPERTY(QList<int> looks MEMBER looks_ NOTIFY looksChanged)
  Q_PROPERTY(QList<qreal> flagDays MEMBER flag_days_ NOTIFY flagDaysChanged)
  Q_PROPERTY(QStringList flagWords MEMBER flag_words_ NOTIFY flagWordsChanged)
  Q_PROPERTY(QList<int> flagStrong MEMBER flag_strong_ NOTIFY flagStrongChanged)
  Q_PROPERTY(int chosen MEMBER chosen_ NOTIFY chosenChanged)
  Q_PROPERTY(QString family MEMBER family_ NOTIFY familyChanged)
  Q_PROPERTY(int size MEMBER size_ NOTIFY sizeChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY inkChanged)
  Q_PROPERTY(QColor pencil MEMBER pencil_ NOTIFY pencilChanged)
  Q_PROPERTY(QColor grid MEMBER grid_ NOTIFY gridChanged)
  Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY edgeChanged)
  Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY groundChanged)
  Q_PROPERTY(QColor more MEMBER more_ NOTIFY moreChanged)
  Q_PROPERTY(QColor less MEMBER less_ NOTIFY lessChanged)
  Q_PROPERTY(QColor here MEMBER here_ NOTIFY hereChanged)
  Q_PROPERTY(QColor flag MEMBER flag_ NOTIFY flagChanged)
  Q_PROPERTY(double fromDay READ fromDay NOTIFY viewChanged)
  Q_PROPERTY(double toDay READ toDay NOTIFY viewChanged)
  Q_PROPERTY(bool near READ near NOTIFY viewChanged)  // not all of it is in view
  Q_PROPERTY(QRectF plot READ plot NOTIFY laidOut)
  Q_PROPERTY(QVariant bandOutline READ bandOutline NOTIFY laidOut)
  Q_PROPERTY(QVariantList middleLines READ middleLines NOTIFY laidOut)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

  double fromDay() const { return view_.from_day; }
  double toDay() const { return view_.to_day; }
  bool near() const { return view_ != all_; }
  QRectF plot() const { return plot_; }
  QVariant bandOutline() const;
  QVariantList middleLines() const;

  Q_INVOKABLE void zoomBy(double factor, double x);
  Q_INVOKABLE void moveBy(double dx);
  Q_INVOKABLE void whole();
  Q_INVOKABLE void show(int point);  // moves the view until it is in it
  Q_INVOKABLE int at(double x, double y) const;
  Q_INVOKABLE QPointF placeOf(int point) const;

 signals:
  void daysChanged();
  void ratesChanged();
  void lowsChanged();
  void highsChanged();
  void centersChanged();
  void looksChanged();
  void flagDaysChanged();
  void flagWordsChanged();
  void flagStrongChanged();
  void chosenChanged();
  void familyChanged();
  void sizeChanged();
  void inkChanged();
  void pencilChanged();
  void gridChanged();
  void edgeChanged();
  void groundChanged();
  void moreChanged();
  void lessChanged();
  void hereChanged();
  void flagChanged();
  void viewChanged();
  void laidOut();

 protected:
  void refresh() override;

 private:
  struct Label {
    QString words;
    double at{};
    double width{};
    bool strong = false;
    jambline::theme::LabelPlace place;
  };

  QFont font(bool bold) const;
  int count() const;
  void lay_out();
  void set_view(const jambline::theme::DayView& view);
  double x_of(double day) const;
  double y_of(double rate) const;
  std::pair<int, int> in_view() const;  // one before and one after it, too
  struct Steps {
    QPolygonF low;
    QPolygonF high;
    std::vector<QPolygonF> middle;
  };
  Steps steps() const;
  void paint_edges(QPainter& painter) const;
  void paint_axes(QPainter& painter) const;
  void paint_flags(QPainter& painter) const;
  void paint_points(QPainter& painter) const;

  QList<qreal> days_, rates_, lows_, highs_, centers_;
  QList<int> looks_;
  QList<qreal> flag_days_;
  QStringList flag_words_;
  QList<int> flag_strong_;
  int chosen_ = -1;
  QString family_;
  int size_ = 14;
  QColor ink_, pencil_, grid_, edge_, ground_, more_, less_, here_, flag_;
  jambline::theme::DayView all_;
  jambline::theme::DayView view_;
  QRectF plot_;
  double top_ = 1;
  std::vector<double> ticks_;
  std::vector<Label> labels_;
};
