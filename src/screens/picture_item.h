// screens/picture_item.h: one picture of the record, drawn whole or filling its place; hatched
// until it has come, and with words for the screen to show when it does not.
//
// Shape:   `file` is the hash of the file in hex; "" shows the hatch only. The side that is asked
//          for follows the size of the item on its screen.
// Threads: GUI; painting as QQuickPaintedItem. Hidden items take their ask back.
#pragma once

#include <QColor>
#include <QPointer>
#include <QQuickPaintedItem>
#include <qqmlregistration.h>

#include "screens/picture_store.h"

namespace jambline::screens {

class PictureItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::PictureStore* store READ store WRITE set_store NOTIFY askChanged)
  Q_PROPERTY(QString file READ file WRITE set_file NOTIFY askChanged)
  Q_PROPERTY(bool whole MEMBER whole_ NOTIFY lookChanged)  // all of it; else it fills its place
  // The file is hashed again before it is shown, also when a small picture of it is at hand.
  Q_PROPERTY(bool checked MEMBER checked_ NOTIFY askChanged)
  Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY lookChanged)
  Q_PROPERTY(QColor hatch MEMBER hatch_ NOTIFY lookChanged)
  Q_PROPERTY(bool here READ here NOTIFY stateChanged)
  Q_PROPERTY(bool standsIn READ standsIn NOTIFY stateChanged)   // its preview is shown instead
  Q_PROPERTY(QString trouble READ trouble NOTIFY stateChanged)  // "" it is here, or on its way

 public:
  explicit PictureItem(QQuickItem* parent = nullptr);
  ~PictureItem() override;
  void paint(QPainter* painter) override;

  PictureStore* store() const { return store_; }
  void set_store(PictureStore* store);
  QString file() const { return file_; }
  void set_file(const QString& file);
  bool here() const { return got_.state == PictureStore::State::Here; }
  bool standsIn() const { return !here() && !got_.image.isNull(); }
  QString trouble() const;

 signals:
  void askChanged();
  void lookChanged();
  void stateChanged();

 protected:
  virtual QRectF place() const;  // where the whole picture lies, in the item
  virtual void paint_over(QPainter*) {}
  virtual void came_in() {}  // something of this file was made
  void ask();
  const QImage& image() const { return got_.image; }
  Hash hash() const { return hash_; }
  qreal px_per_dp() const;
  void itemChange(ItemChange change, const ItemChangeData& data) override;
  void geometryChange(const QRectF& now, const QRectF& before) override;

 private:
  void take(PictureStore::Got got);

  QPointer<PictureStore> store_;
  QString file_;
  Hash hash_;
  bool whole_ = false;
  bool checked_ = false;
  bool waits_ = false;
  QColor ground_;
  QColor hatch_;
  PictureStore::Got got_;
};

}  // namespace jambline::screens
