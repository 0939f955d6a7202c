// screens/leftovers_view_model.h: pictures that are on the disk and never got their entry, offered
// at the start: keep each where it was meant to go, or let it go.
//
// Shape:   rows of file (its key), title ("Left door, jamb"), line (car, who, size), canKeep, asked
//          (it is on its way). One whose place is not known is kept with the car on the tape.
// Promise: nothing goes without a press. Threads: GUI; files are looked at elsewhere.
#pragma once

#include <QObject>
#include <qqmlregistration.h>
#include <set>
#include <vector>

#include "screens/picture_store.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class LeftoversViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Floor")
  Q_PROPERTY(jambline::screens::PictureStore* store READ store CONSTANT)
  Q_PROPERTY(int count READ count NOTIFY changed)
  Q_PROPERTY(QString words READ words NOTIFY changed)  // "2 pictures were taken but not kept"
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)

 public:
  LeftoversViewModel(Session& session, PictureStore& store, QObject* parent = nullptr);

  PictureStore* store() const { return &store_; }
  int count() const { return rows_.rowCount(); }
  QString words() const;
  QAbstractItemModel* rows() { return &rows_; }

  Q_INVOKABLE void look();  // for what is left; at the start, once
  Q_INVOKABLE void keep(const QString& file);
  Q_INVOKABLE void letGo(const QString& file);

 signals:
  void changed();

 private:
  void show();
  const engine::LeftoverPicture* find(const QString& file) const;
  void keep_with_car(const engine::LeftoverPicture& left);
  void post(const acts::TakePicture& command, const PersonId& person);
  void gone(const Hash& file);

  Session& session_;
  PictureStore& store_;
  RowList rows_;
  std::vector<engine::LeftoverPicture> left_;
  std::set<Hash> asked_;
};

}  // namespace jambline::screens
