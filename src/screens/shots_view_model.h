// screens/shots_view_model.h: the pictures that a stage of the car wants: taken, missing, too poor.
//
// Stage:   begins with the one that the car is at; a chip chooses another for this car.
// Shape:   shots stand with what is missing first; the main act takes the first of these. Many
//          files at once go to the stage without a shot; they can be filed afterwards.
// Threads: GUI thread. Errors go to Session::failed; those of files to the intake's list.
#pragma once

#include <QList>
#include <QObject>
#include <QUrl>
#include <optional>
#include <qqmlregistration.h>

#include "folds/shots_of_car.h"
#include "screens/picture_intake.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class ShotsViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Shots")
  // Roles: key (the stage's word), title, words ("3 missing"), kind (a shape), here.
  Q_PROPERTY(QAbstractItemModel* stages READ stages CONSTANT)
  Q_PROPERTY(QString stage READ stage NOTIFY changed)
  Q_PROPERTY(QString stageTitle READ stageTitle NOTIFY changed)
  // Roles: key, title, stand, view, shape, words, wanted (missing), file and picture (of the newest
  // one to be looked at; "" none, or its edges are to be looked at first).
  Q_PROPERTY(QAbstractItemModel* shots READ shots CONSTANT)
  Q_PROPERTY(int shotCount READ shotCount NOTIFY changed)
  Q_PROPERTY(int missingCount READ missingCount NOTIFY changed)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)  // of the stage
  Q_PROPERTY(QString otherWords READ otherWords NOTIFY changed)  // of pictures without a shot
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)      // of the car, in one line
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)
  Q_PROPERTY(QString nextKey READ nextKey NOTIFY changed)  // the first that is missing; "" none
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(QString shutWords READ shutWords NOTIFY changed)  // why nothing can be taken; or ""
  Q_PROPERTY(jambline::screens::PictureIntake* intake READ intake CONSTANT)

 public:
  ShotsViewModel(Session& session, PictureIntake& intake, QObject* parent = nullptr);

  QAbstractItemModel* stages() { return &stages_; }
  QString stage() const;
  QString stageTitle() const;
  QAbstractItemModel* shots() { return &shots_; }
  int shotCount() const { return shots_.rowCount(); }
  int missingCount() const { return missing_; }
  QString countWords() const;
  QString otherWords() const;
  QString rowWords() const;
  int rowShape() const;
  QString nextKey() const { return next_key_; }
  QString mainText() const;
  QString mainSecond() const;
  QString shutWords() const;
  PictureIntake* intake() const { return &intake_; }

  Q_INVOKABLE void choose(const QString& stage);
  Q_INVOKABLE void takeIn(const QList<QUrl>& files);

 signals:
  void changed();

 private:
  std::optional<job::Stage> at() const;
  void refresh();

  Session& session_;
  PictureIntake& intake_;
  RowList stages_;
  RowList shots_;
  std::optional<job::Stage> picked_;
  JobId shown_;
  int missing_ = 0;
  int wanted_ = 0;
  int others_ = 0;
  QString next_key_;
  QString next_title_;
  QString next_stand_;
};

}  // namespace jambline::screens
