// screens/shot_list_view_model.h: which pictures the shop wants at each stage.
//
// Who:     anybody reads it; a manager (`manager`) takes a shot out, puts it back and adds one of
//          the shop's own. Each act is one entry that can be undone.
// Shape:   `stage` is the stage whose page is open, "" for none.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "job/shot.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class ShotListViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to ShopSheet")
  Q_PROPERTY(bool manager READ manager NOTIFY changed)
  // Roles: key (the stage's word), title, words ("4 shots").
  Q_PROPERTY(QAbstractItemModel* stages READ stages CONSTANT)
  Q_PROPERTY(QString stage READ stage NOTIFY changed)
  Q_PROPERTY(QString stageTitle READ stageTitle NOTIFY changed)
  // Of the open stage. Roles: key, title, stand, view, often.
  Q_PROPERTY(QAbstractItemModel* shots READ shots CONSTANT)
  Q_PROPERTY(QAbstractItemModel* away READ away CONSTANT)  // usual ones taken out; same roles
  Q_PROPERTY(int awayCount READ awayCount NOTIFY changed)
  Q_PROPERTY(QStringList views READ views CONSTANT)    // in the order of job::ShotView
  Q_PROPERTY(QStringList oftens READ oftens CONSTANT)  // in the order of job::ShotWanted

 public:
  explicit ShotListViewModel(Session& session, QObject* parent = nullptr);

  bool manager() const;
  QAbstractItemModel* stages() { return &stages_; }
  QString stage() const;
  QString stageTitle() const;
  QAbstractItemModel* shots() { return &shots_; }
  QAbstractItemModel* away() { return &away_; }
  int awayCount() const { return away_.rowCount(); }
  QStringList views() const;
  QStringList oftens() const;

  Q_INVOKABLE void open(const QString& stage);  // "" closes the page
  Q_INVOKABLE void takeOut(const QString& key);
  Q_INVOKABLE void putBack(const QString& key);
  Q_INVOKABLE void add(const QString& name, int view, int often);

 signals:
  void changed();
  void added();

 private:
  void refresh();
  void set(std::vector<job::Shot> shots, bool own = false);
  const std::vector<job::Shot>& list() const;

  Session& session_;
  RowList stages_;
  RowList shots_;
  RowList away_;
  std::optional<job::Stage> open_;
};

}  // namespace jambline::screens
