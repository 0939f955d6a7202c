// screens/parts_view_model.h: the loose parts of the car and the car as a whole: where each hangs,
// who has it, and handing it on.
//
// Rows:    a row's key is the panel's word; the whole car has the empty key. Only a clean part can
//          be offered; an offer waits until someone takes it or sends it back with a reason.
// Main:    "take" for a person whose role an offer names (or who is named by none), else "offer" of
//          the next clean loose part, by one press to whom and where the last one of this car went
//          (else to whoever has the next stage of putting it together, at the first rack place).
// Dispute: two took it, or offered it, without knowing of each other: `takers` says who has it by
//          his own word; settle() takes one of them, and ends it.
// Return:  startReturn(), then sendBack(); a picture taken in between goes with it.
// Soft:    what the cure clock does not let be handled yet is hung, not stacked; `place` says so.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <qqmlregistration.h>
#include <set>

#include "screens/cure_work.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class PartsViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, verdict, place, state (State), stateWords, canOffer, canTake, mine, takers,
  // canSay (that somebody else has it), file (of the picture that came back with it).
  Q_PROPERTY(QAbstractItemModel* parts READ parts CONSTANT)
  Q_PROPERTY(int partCount READ partCount NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* roles READ roles CONSTANT)  // key, title
  Q_PROPERTY(QAbstractItemModel* racks READ racks CONSTANT)  // key, title
  Q_PROPERTY(int rackCount READ rackCount NOTIFY changed)
  Q_PROPERTY(QStringList reasons READ reasons CONSTANT)
  Q_PROPERTY(QString carPlace READ carPlace NOTIFY changed)
  Q_PROPERTY(State carState READ carState NOTIFY changed)
  Q_PROPERTY(bool carCanOffer READ carCanOffer NOTIFY changed)
  Q_PROPERTY(bool carCanTake READ carCanTake NOTIFY changed)
  Q_PROPERTY(bool carCanSay READ carCanSay NOTIFY changed)
  Q_PROPERTY(QStringList carTakers READ carTakers NOTIFY changed)
  Q_PROPERTY(QString carFile READ carFile NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* people READ people CONSTANT)  // key, title, words, chosen
  Q_PROPERTY(bool returns READ returns NOTIFY changed)         // something is being sent back
  Q_PROPERTY(QString returnKey READ returnKey NOTIFY changed)
  Q_PROPERTY(QString returnFile READ returnFile NOTIFY changed)  // its picture; "" none
  Q_PROPERTY(Act mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainKey READ mainKey NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)

 public:
  enum class State { NotClean, Ready, Offered, Taken, Returned, Disputed };
  Q_ENUM(State)
  enum class Act { None, Offer, Take };
  Q_ENUM(Act)

  explicit PartsViewModel(Session& session, QObject* parent = nullptr);

  void follow_cure(CureWork& cure);

  QAbstractItemModel* parts() { return &parts_; }
  int partCount() const { return parts_.rowCount(); }
  QAbstractItemModel* roles() { return &roles_; }
  QAbstractItemModel* racks() { return &racks_; }
  int rackCount() const { return racks_.rowCount(); }
  QStringList reasons() const;
  QString carPlace() const;
  State carState() const;
  bool carCanOffer() const;
  bool carCanTake() const;
  bool carCanSay() const;
  QStringList carTakers() const;
  QString carFile() const;
  QAbstractItemModel* people() { return &people_; }
  bool returns() const { return returning_.has_value(); }
  QString returnKey() const { return returning_.value_or(QString()); }
  QString returnFile() const;
  Act mainAct() const;
  QString mainKey() const;
  QString mainText() const;
  QString mainSecond() const;

  Q_INVOKABLE QString titleOf(const QString& key) const;
  Q_INVOKABLE void act();  // what mainText says
  Q_INVOKABLE void offerTo(const QString& key, const QString& role);
  Q_INVOKABLE void hang(const QString& key, const QString& rack);
  Q_INVOKABLE void take(const QString& key);
  Q_INVOKABLE void startReturn(const QString& key);
  Q_INVOKABLE void stopReturn();
  Q_INVOKABLE void willTakePicture();
  Q_INVOKABLE void dropPicture();
  Q_INVOKABLE void sendBack(const QString& key, const QString& reason);
  Q_INVOKABLE void settle(const QString& key, int taker);             // of takers
  Q_INVOKABLE void hasIt(const QString& key, const QString& person);  // of people
  Q_INVOKABLE void addRack(const QString& name);

 signals:
  void changed();

 private:
  void refresh();
  const folds::ReleaseView* release(const QString& key) const;
  QString place(const folds::ReleaseView& release, State state) const;
  QString name_of(const QString& key) const;
  bool writable() const;
  bool for_me(const folds::ReleaseView& release) const;
  void offer(const QString& key, std::optional<job::Role> to, std::optional<RackId> rack);
  const folds::PanelView* first(bool to_take) const;
  struct Way {
    job::Role to{};
    std::optional<RackId> rack;
  };
  Way usual_way() const;
  QString rack_name(const RackId& rack) const;
  QStringList takers(const folds::ReleaseView& release,
                     const std::optional<job::Panel>& panel) const;
  QString file_of(const std::optional<PictureId>& picture) const;
  void take_new_picture();
  void stop_return();

  QString not_handled(job::Panel panel) const;  // "" it may be

  Session& session_;
  CureWork* cure_ = nullptr;
  RowList parts_;
  RowList roles_;
  RowList racks_;
  RowList people_;
  std::optional<JobId> job_;
  std::optional<QString> returning_;
  std::optional<PictureId> return_picture_;
  std::optional<std::set<PictureId>> pictures_before_;
};

}  // namespace jambline::screens
