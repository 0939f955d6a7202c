// screens/compare_view_model.h: two pictures of the same thing, the earlier before the later.
//
// Same:    of the same shot and panel; of the same mark; of the same view and panel at any stage.
//          open(picture) holds it against the newest one before it, else the next one after it.
// Shape:   `others` are all that show the same, oldest first: picture, file, spoken, chosen.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>

#include "screens/picture_rows.h"
#include "screens/picture_store.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

// The others that show what this one shows, in the order in which they were kept.
std::vector<const folds::PictureView*> same_view(const folds::CarView& car,
                                                 const folds::ShopView& shop,
                                                 const folds::PictureView& picture);

class CompareViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Compare")
  Q_PROPERTY(jambline::screens::PictureStore* store READ store CONSTANT)
  Q_PROPERTY(bool ready READ ready NOTIFY changed)  // there are two
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString beforeFile READ beforeFile NOTIFY changed)
  Q_PROPERTY(QString afterFile READ afterFile NOTIFY changed)
  Q_PROPERTY(QString beforeWords READ beforeWords NOTIFY changed)  // stage, who, when
  Q_PROPERTY(QString afterWords READ afterWords NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* others READ others CONSTANT)
  Q_PROPERTY(int otherCount READ otherCount NOTIFY changed)

 public:
  CompareViewModel(Session& session, PictureStore& store, QObject* parent = nullptr);

  PictureStore* store() const { return &store_; }
  bool ready() const { return before() && after(); }
  QString title() const;
  QString beforeFile() const;
  QString afterFile() const;
  QString beforeWords() const;
  QString afterWords() const;
  QAbstractItemModel* others() { return &others_; }
  int otherCount() const { return others_.rowCount(); }

  Q_INVOKABLE void open(const QString& picture);
  Q_INVOKABLE void against(const QString& picture);

 signals:
  void changed();

 private:
  void refresh();
  const folds::PictureView* find(const std::optional<PictureId>& picture) const;
  const folds::PictureView* before() const;
  const folds::PictureView* after() const;
  QString words(const folds::PictureView* picture) const;

  Session& session_;
  PictureStore& store_;
  RowList others_;
  std::optional<PictureId> one_;
  std::optional<PictureId> other_;
};

}  // namespace jambline::screens
