// screens/sum_rows.h: a computed number opened to its sum: what it came from as rows, the method,
// the seed where chance was drawn.
//
// Shape:   a view model owns one, shows a number's trade::Basis in it and hands it to SumSheet.
//          Rows: key, name, value ("1.5 µm"), source ("measured", an authority and its year).
// Units:   temperatures in the device's unit; film in µm with one place or mils with two, one place
// more than on the screen; chances
//          as counts ("1 in 40"), never 0.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/row_list.h"
#include "screens/units.h"
#include "trade/basis.h"

namespace jambline::screens {

class SumRows final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Owned by a view model")
  Q_PROPERTY(QString title READ title NOTIFY changed)    // what the number is
  Q_PROPERTY(QString figure READ figure NOTIFY changed)  // the number as the screen showed it
  Q_PROPERTY(QString note READ note NOTIFY changed)      // what is to be said with it; "" nothing
  Q_PROPERTY(QString method READ method NOTIFY changed)
  Q_PROPERTY(QString seed READ seed NOTIFY changed)  // "" no chance was drawn
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)

 public:
  explicit SumRows(QObject* parent);

  void show(const QString& title, const QString& figure, const trade::Basis& basis, Units units,
            const QString& note = {});
  // Of words: what is no plain number.
  struct Line {
    QString name;
    QString value;
    QString source;
  };
  void show_lines(const QString& title, const QString& figure, const trade::Basis& basis,
                  const std::vector<Line>& lines, const QString& note);

  QString title() const { return title_; }
  QString figure() const { return figure_; }
  QString note() const { return note_; }
  QString method() const { return method_; }
  QString seed() const { return seed_; }
  QAbstractItemModel* rows() { return &rows_; }

 signals:
  void changed();

 private:
  QString title_;
  QString figure_;
  QString note_;
  QString method_;
  QString seed_;
  RowList rows_;
};

QString chance_words(
    double percent);  // "1 in 300", "4 in 10", "under 1 in 1,000", "nearly certain"

}  // namespace jambline::screens
