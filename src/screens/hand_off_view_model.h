// screens/hand_off_view_model.h: parts of all cars in work: what is offered to the person who taps,
// and where any of them is.
//
// Offers:  those that name the person's role, the oldest first, not one's own. open() puts its car
//          on the tape; taking it is the main act there.
// Search:  words in any order, half a word is enough: of the part, the car (plate, color), the rack
//          place, who has it and how it stands. Nothing typed: all of them.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class HandOffViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // The first two. Roles: key, title ("Take the hood"), words ("K 41-206, from Ivo, rack 2").
  Q_PROPERTY(QAbstractItemModel* offers READ offers CONSTANT)
  Q_PROPERTY(int offerCount READ offerCount NOTIFY changed)
  Q_PROPERTY(int partCount READ partCount NOTIFY changed)  // of all cars
  Q_PROPERTY(QString query READ query WRITE setQuery NOTIFY changed)
  // Roles: key, title ("Hood, K 41-206"), words ("rack 2, from Ivo"), shape.
  Q_PROPERTY(QAbstractItemModel* found READ found CONSTANT)
  Q_PROPERTY(int foundCount READ foundCount NOTIFY changed)
  Q_PROPERTY(QString foundWords READ foundWords NOTIFY changed)  // "2 of 14 parts"

 public:
  static constexpr int offers_shown = 2;

  explicit HandOffViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* offers() { return &offers_; }
  int offerCount() const { return offer_count_; }
  int partCount() const { return part_count_; }
  QString query() const { return query_; }
  void setQuery(const QString& query);
  QAbstractItemModel* found() { return &found_; }
  int foundCount() const { return found_.rowCount(); }
  QString foundWords() const;

  Q_INVOKABLE void open(const QString& key);       // of an offer, or of what was found
  Q_INVOKABLE QString moreWords(int shown) const;  // "2 more parts are offered to you"; "" no more

 signals:
  void changed();

 private:
  void refresh();
  QString name_of(const folds::FloorRow& car, const folds::PartAt& part) const;
  QString place(const folds::PartAt& part, bool says_to) const;
  bool for_me(const folds::PartAt& part) const;

  Session& session_;
  RowList offers_;
  RowList found_;
  QString query_;
  int offer_count_ = 0;
  int part_count_ = 0;
};

}  // namespace jambline::screens
