// screens/cure_view_model.h: the cure clocks of the car: each mix on each group of panels with its
// milestones on a line, the panel temperatures, the thumbnail check; and whether the car may be
// driven.
//
// Clocks:  the newest coat first; what lies wholly under a later coat is not there. A role `steps`
// holds a model of its own with the milestones: key, title, words, shape
//          (ShapeKind), sheet (what the sheet says), spoken. Pot life is not there: it belongs to
//          the mix.
// Reading: a group is chosen, a whole number typed in the device's unit; after one is logged the
//          next group that has none since its last coat is chosen; none left: allRead().
// Glass:   doNotDrive stands until its time is over and has no way round.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <map>
#include <memory>
#include <qqmlregistration.h>

#include "screens/countdown_view_model.h"
#include "screens/cure_words.h"
#include "screens/cure_work.h"
#include "screens/row_list.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class CureViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, product, panels, surface, note, noteShape, asksThumbnail, thumbnail, steps,
  // hasSum, line, limit, lineWords (of SurfaceLineItem; line is empty without a reading).
  Q_PROPERTY(QAbstractItemModel* clocks READ clocks CONSTANT)
  Q_PROPERTY(int clockCount READ clockCount NOTIFY changed)
  // Roles: key, title, facts, words, shape, note, strength, hasSum.
  Q_PROPERTY(QAbstractItemModel* bonds READ bonds CONSTANT)
  Q_PROPERTY(int bondCount READ bondCount NOTIFY changed)
  Q_PROPERTY(QString doNotDrive READ doNotDrive NOTIFY changed)  // "" it may be driven
  Q_PROPERTY(QString keysWords READ keysWords CONSTANT)
  Q_PROPERTY(QString emptyWords READ emptyWords NOTIFY changed)
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)  // of all clocks, in the car
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)  // "" nothing can be logged
  Q_PROPERTY(bool readable READ readable NOTIFY changed)     // there is a film to read
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  // Where a temperature can be logged. Roles: key, title, facts, chosen.
  Q_PROPERTY(QAbstractItemModel* groups READ groups CONSTANT)
  Q_PROPERTY(QString groupTitle READ groupTitle NOTIFY changed)
  Q_PROPERTY(QString unit READ unit NOTIFY changed)  // "°C"
  Q_PROPERTY(QString refusal READ refusal NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)

 public:
  CureViewModel(Session& session, CureWork& work, QObject* parent = nullptr);

  QAbstractItemModel* clocks() { return &clocks_; }
  int clockCount() const { return clocks_.rowCount(); }
  QAbstractItemModel* bonds() { return &bonds_; }
  int bondCount() const { return bonds_.rowCount(); }
  QString doNotDrive() const;
  QString keysWords() const;
  QString emptyWords() const;
  QString rowWords() const;
  int rowShape() const;
  QString mainText() const;
  bool readable() const { return groups_.rowCount() > 0; }
  QString mainSecond() const;
  bool mainWaits() const { return !session_.hasPerson(); }
  bool writable() const;
  QAbstractItemModel* groups() { return &groups_; }
  QString groupTitle() const;
  QString unit() const { return temperature_unit(session_.units()); }
  QString refusal() const { return refusal_; }
  SumRows* sum() { return &sum_; }
  // The next milestone of each clock in its last half hour; for CountdownViewModel.
  std::vector<Countdown> countdowns() const;

  Q_INVOKABLE void startReading();  // chooses the group that waits for it longest
  Q_INVOKABLE void chooseGroup(const QString& group);
  Q_INVOKABLE QString logWords(int typed, bool minus) const;  // "Log 41 °C"; "" nothing typed
  Q_INVOKABLE void logTemperature(int typed, bool minus);
  Q_INVOKABLE void checkThumbnail(const QString& clock, bool firm);
  Q_INVOKABLE bool openSum(const QString& clock);  // false: there is none
  Q_INVOKABLE bool openBondSum(const QString& bond);

 signals:
  void changed();
  void logged();
  void allRead();

 private:
  void refresh();
  void show_clocks();
  void show_bonds();
  void show_groups();
  CureSeen seen() const;
  QString key_of(const folds::CureOfGroup& clock) const;
  const folds::CureOfGroup* clock(const QString& key) const;
  std::vector<const folds::CureOfGroup*> on_top() const;
  RowList* steps_of(const QString& key);
  std::optional<job::PanelGroup> waits_for_reading() const;
  StandingWords row() const;
  const trade::CureStanding* next_milestone(const folds::CureOfGroup& clock) const;

  Session& session_;
  CureWork& work_;
  RowList clocks_;
  RowList bonds_;
  RowList groups_;
  SumRows sum_;
  std::map<QString, std::unique_ptr<RowList>> steps_;
  std::optional<job::PanelGroup> group_;
  std::optional<JobId> job_;
  QString refusal_;
};

}  // namespace jambline::screens
